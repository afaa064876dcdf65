"""The spread engine gives, in every home, exactly what the plain loop gives.

The oracle is the plain loop: each stage called once in each home. Homes, stages and their
order of reading are drawn, with up to four open facts and now and then a blank one.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from ampwright.foundations.answers import Missing, Unanswered
from ampwright.foundations.checks import Outcome
from ampwright.options.homes import Homes
from ampwright.options.lifting import Lifter
from ampwright.options.spread import Spread, everywhere
from ampwright.options.truth import truth_of

KEYS = ("a", "b", "c", "d", "e")


class View:
    """A home of five numbers, read through whatever reader it is given."""

    def __init__(self, reader: Any) -> None:
        self._reader = reader

    def __getattr__(self, name: str) -> Any:
        return self._reader.read(name)


@dataclass(frozen=True, slots=True)
class Out:
    """A result of two parts, one of them coarse, so that equal parts fall together."""

    number: int
    parity: int


@dataclass(frozen=True, slots=True)
class Recipe:
    """A drawn stage: which facts it reads, when, and which earlier results it is handed."""

    first: str
    then: str
    otherwise: str
    upstream: tuple[int, ...]
    part: bool

    def stage(self) -> Callable[..., Out]:
        """Return the stage: what it reads second depends on what it read first."""

        def run(home: Any, *earlier: int) -> Out:
            base = getattr(home, self.first)
            more = getattr(home, self.then if base % 2 else self.otherwise)
            number = base * 7 + more * 3 + sum(earlier)
            return Out(number, number % 2)

        return run


values = st.integers(0, 3)
recipe = st.builds(
    Recipe,
    st.sampled_from(KEYS),
    st.sampled_from(KEYS),
    st.sampled_from(KEYS),
    st.lists(st.integers(0, 3), max_size=2).map(tuple),
    st.booleans(),
)


@st.composite
def homes(draw: st.DrawFn) -> Homes:
    """Draw homes with up to four open facts, the rest known or now and then blank."""
    open_ = draw(
        st.dictionaries(
            st.sampled_from(KEYS), st.lists(values, min_size=2, max_size=3, unique=True), max_size=4
        )
    )
    known = {k: draw(values) for k in KEYS if k not in open_ and draw(st.integers(0, 9)) < 9}
    chances = {k: tuple(1.0 for _ in vs) for k, vs in open_.items()}
    return Homes(known, {k: tuple(vs) for k, vs in open_.items()}, chances, View)  # type: ignore[arg-type]


def lifted(homes: Homes, recipes: list[Recipe]) -> list[Spread[Out]]:
    """Run the drawn stages over all homes at once."""
    lifter = Lifter(homes)
    made: list[Spread[Out]] = []
    for each in recipes:
        ups = [made[i % len(made)] for i in each.upstream] if made else []
        args = [up.parity if each.part else up.number for up in ups]
        made.append(lifter.lift(each.stage(), *args))
    return made


def plainly(homes: Homes, fixed: Mapping[str, Any], recipes: list[Recipe]) -> list[Out | Missing]:
    """Run the drawn stages in one home."""
    view = homes.one(fixed)
    made: list[Out | Missing] = []
    for each in recipes:
        ups = [made[i % len(made)] for i in each.upstream] if made else []
        lacking = [key for up in ups if isinstance(up, Missing) for key in up.keys]
        if lacking:
            made.append(Missing(tuple(dict.fromkeys(lacking))))
            continue
        args = [up.parity if each.part else up.number for up in ups if isinstance(up, Out)]
        try:
            made.append(each.stage()(view, *args))
        except Unanswered as blank:
            made.append(Missing((blank.key,)))
    return made


@settings(max_examples=150, deadline=None)
@given(homes(), st.lists(recipe, min_size=1, max_size=5))
def test_in_every_home_the_spread_is_what_the_plain_loop_gives(
    homes: Homes, recipes: list[Recipe]
) -> None:
    spreads = lifted(homes, recipes)
    for fixed, _ in homes.each():
        assert [s.in_home(fixed) for s in spreads] == plainly(homes, fixed, recipes)


@settings(max_examples=80, deadline=None)
@given(homes(), st.lists(recipe, min_size=1, max_size=3))
def test_a_spread_names_only_facts_that_change_it(homes: Homes, recipes: list[Recipe]) -> None:
    for spread in lifted(homes, recipes):
        for axis in range(len(spread.facts)):
            first = spread.index.take([0], axis)
            assert (spread.index != first).any()


@settings(max_examples=80, deadline=None)
@given(homes(), st.lists(recipe, min_size=1, max_size=4), st.data())
def test_checks_combine_to_the_worst_in_each_home(
    homes: Homes, recipes: list[Recipe], data: st.DataObject
) -> None:
    levels = (Outcome.PASS, Outcome.UNDETERMINED, Outcome.FAIL, Outcome.NOT_APPLICABLE)
    pick = data.draw(st.permutations(levels))
    outcomes = [s.part("level", lambda out: pick[out.number % 4]) for s in lifted(homes, recipes)]
    truth = truth_of(homes, outcomes)
    rank = {Outcome.PASS: 0, Outcome.NOT_APPLICABLE: 0, Outcome.UNDETERMINED: 1, Outcome.FAIL: 2}
    total = 0.0
    for fixed, _ in homes.each():
        here = [each.in_home(fixed) for each in outcomes]
        worst = max(1 if isinstance(o, Missing) else rank[o] for o in here)
        assert rank[truth.in_home(fixed)] == worst
        total += worst == 2
    assert abs(truth.chance(Outcome.FAIL) - total / homes.count) < 1e-9


def test_facts_that_no_stage_reads_cost_no_call() -> None:
    def stage(home: Any) -> Out:
        return Out(home.a, 0)

    small = Homes({"a": 1}, {"b": (1, 2)}, {"b": (1.0, 1.0)}, View)  # type: ignore[arg-type]
    few = Lifter(small)
    few.lift(stage)
    wide = dict.fromkeys("bcde", (1, 2, 3, 4))
    many = Lifter(Homes({"a": 1}, wide, dict.fromkeys(wide, (1.0,) * 4), View))  # type: ignore[arg-type]
    many.lift(stage)
    assert few.calls == many.calls == 1


@settings(max_examples=120, deadline=None)
@given(
    homes(),
    st.lists(recipe, min_size=1, max_size=5),
    st.dictionaries(st.sampled_from(KEYS), values),
)
def test_work_taken_over_from_a_near_lifter_is_what_it_would_have_done(
    homes: Homes, recipes: list[Recipe], changes: dict[str, Any]
) -> None:
    stages = [each.stage() for each in recipes]

    def run(lifter: Lifter) -> list[Spread[Out]]:
        made: list[Spread[Out]] = []
        for each, stage in zip(recipes, stages, strict=True):
            ups = [made[i % len(made)] for i in each.upstream] if made else []
            args = [up.parity if each.part else up.number for up in ups]
            made.append(lifter.lift(stage, *args))
        return made

    base = Lifter(homes)
    run(base)
    laid = everywhere(homes, changes)
    taken = run(Lifter(homes, laid, (base,)))
    alone = run(Lifter(homes, laid))
    for fixed, _ in homes.each():
        assert [s.in_home(fixed) for s in taken] == [s.in_home(fixed) for s in alone]


def counting(calls: list[tuple[Any, ...]], *names: str) -> Callable[..., Any]:
    """Return a stage that reads some facts in turn and notes what it was run on."""

    def stage(home: Any, *earlier: Any) -> Any:
        got = (*earlier, *(getattr(home, name) for name in names))
        calls.append(got)
        return got

    return stage


def test_a_stage_is_run_once_for_each_home_it_can_tell_apart() -> None:
    calls: list[tuple[Any, ...]] = []
    wide = {"a": (1, 2, 3), "b": (4, 5)}
    lifter = Lifter(Homes({}, wide, {"a": (1.0,) * 3, "b": (1.0,) * 2}, View))  # type: ignore[arg-type]
    first = lifter.lift(lambda home: home.a)
    found = lifter.lift(counting(calls, "a", "b"), first)
    assert set(calls) == {(a, a, b) for a in wide["a"] for b in wide["b"]} == set(found.values)
    assert len(calls) == 6


def test_no_run_is_made_in_vain() -> None:
    calls: list[int] = []

    def stage(home: Any, which: int) -> int:
        calls.append(which)
        return int(home.b) if which == 2 else 0

    wide = {"a": (1, 2), "b": (4, 5, 6)}
    lifter = Lifter(Homes({}, wide, {"a": (1.0,) * 2, "b": (1.0,) * 3}, View))  # type: ignore[arg-type]
    lifter.lift(stage, lifter.lift(lambda home: home.a))
    assert sorted(calls) == [1, 2, 2, 2]
