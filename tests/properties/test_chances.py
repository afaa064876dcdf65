"""Facts that go together: the exact chances and the drawn homes beside a plain loop.

The oracle is Bayes' rule spelled out: every combination of answers, each weighed by the product
of its shares, those that differ from what is known left out.
"""

from __future__ import annotations

from itertools import product
from typing import Any

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from ampwright.firm.together import Case, Condition, GoesWith
from ampwright.foundations.checks import Outcome
from ampwright.options.cells import Cells
from ampwright.options.chances import joint, most_usual
from ampwright.options.homes import Drawing, Homes
from ampwright.options.lifting import Lifter
from ampwright.options.truth import truth_of

KEYS = ("a", "b", "c", "d", "e")
ANSWERS = (1, 2, 3)
WHOLE, DRAWN = Drawing(10_000, 2_000, 7), Drawing(1, 2_000, 7)

shares = st.lists(st.integers(0, 6), min_size=3, max_size=3).filter(any)


def case(given: tuple[Condition, ...], weights: list[int]) -> Case:
    total = sum(weights)
    told = zip(ANSWERS, weights, strict=True)
    return Case(given, {str(answer): each / total for answer, each in told})  # type: ignore[arg-type]


@st.composite
def tables(draw: st.DrawFn) -> tuple[GoesWith, ...]:
    """Draw tables in which each fact hangs only on facts before it."""
    found = []
    for i, fact in enumerate(KEYS[1:], 1):
        if draw(st.booleans()):
            cases = []
            for _ in range(draw(st.integers(1, 2))):
                on = draw(st.lists(st.sampled_from(KEYS[:i]), min_size=1, max_size=2, unique=True))
                signs = st.sampled_from(("=", "<"))
                conditions = tuple(
                    Condition(each, draw(signs), str(draw(st.sampled_from(ANSWERS)))) for each in on
                )
                cases.append(case(conditions, draw(shares)))
            found.append(GoesWith(fact, (*cases, case((), draw(shares)))))
    return tuple(found)


def true_of(condition: Condition, home: dict[str, int]) -> bool:
    mine, told = home[condition.fact], int(condition.answer)
    return mine < told if condition.sign == "<" else mine == told


def weight(home: dict[str, int], chances: Any, found: tuple[GoesWith, ...]) -> float:
    """Return how likely one set of answers is, fact by fact."""
    total = 1.0
    hanging = {each.fact: each for each in found}
    for fact, answer in home.items():
        if fact in hanging:
            cases = hanging[fact].cases
            first = next(c for c in cases if all(true_of(each, home) for each in c.given))
            total *= first.shares[str(answer)]
        else:
            total *= chances[fact][ANSWERS.index(answer)] / sum(chances[fact])
    return total


@st.composite
def worlds(draw: st.DrawFn) -> tuple[Any, tuple[GoesWith, ...], dict[str, int]]:
    """Draw chances, tables and what is known."""
    chances = {key: tuple(float(each) for each in draw(shares)) for key in KEYS}
    known = draw(st.dictionaries(st.sampled_from(KEYS), st.sampled_from(ANSWERS), max_size=2))
    return chances, draw(tables()), known


def homes_of(world: Any, drawing: Drawing = WHOLE) -> Homes:
    chances, found, known = world
    still = {key: ANSWERS for key in KEYS if key not in known}
    return Homes(known, still, chances, lambda read: read, drawing, found)  # type: ignore[arg-type]


def by_the_rule(world: Any) -> dict[tuple[int, ...], float]:
    """Return the chance of every combination of the open facts."""
    chances, found, known = world
    still = [key for key in KEYS if key not in known]
    weights = {}
    for values in product(ANSWERS, repeat=len(still)):
        home = {**dict(zip(still, values, strict=True)), **known}
        weights[values] = weight({key: home[key] for key in KEYS}, chances, found)
    total = sum(weights.values())
    return {values: each / total for values, each in weights.items()} if total else {}


@settings(max_examples=150, deadline=None)
@given(worlds())
def test_the_chances_of_facts_together_are_those_of_the_plain_loop(world: Any) -> None:
    chances, _, known = world
    assume(all(chances[key][ANSWERS.index(value)] for key, value in known.items()))
    expected = by_the_rule(world)
    assume(expected)
    homes = homes_of(world)
    got = joint(homes, tuple(homes.open))
    assert got.reshape(-1) == pytest.approx(list(expected.values()), abs=1e-9)


@settings(max_examples=100, deadline=None)
@given(worlds(), st.sets(st.sampled_from(KEYS)))
def test_facts_left_out_are_summed_out(world: Any, keys: set[str]) -> None:
    homes = homes_of(world)
    whole = joint(homes, tuple(homes.open))
    facts = tuple(key for key in homes.open if key in keys)
    others = tuple(i for i, key in enumerate(homes.open) if key not in keys)
    assert joint(homes, facts) == pytest.approx(whole.sum(others), abs=1e-9)


@settings(max_examples=100, deadline=None)
@given(worlds())
def test_homes_that_a_nought_rules_out_are_no_cells(world: Any) -> None:
    homes = homes_of(world)
    cells = Cells.over(homes, homes.open)
    whole = joint(homes, tuple(homes.open))
    assert cells.count == int((whole > 0).sum())
    assert cells.weights.sum() == pytest.approx(1.0)
    for cell in range(cells.count):
        at = tuple(ANSWERS.index(value) for value in cells.home(cell).values())  # type: ignore[arg-type]
        assert cells.weights[cell] == pytest.approx(whole[at])


@settings(max_examples=60, deadline=None)
@given(worlds())
def test_drawn_homes_are_as_common_as_their_chances(world: Any) -> None:
    homes = homes_of(world, DRAWN)
    whole = joint(homes, tuple(homes.open))
    cells = Cells.over(homes, homes.open)
    found = np.zeros(whole.shape)
    for cell in range(cells.count):
        at = tuple(ANSWERS.index(value) for value in cells.home(cell).values())  # type: ignore[arg-type]
        found[at] = cells.weights[cell]
    assert (found[whole == 0] == 0).all()
    error = np.sqrt(whole * (1 - whole) / DRAWN.draws)
    assert (abs(found - whole) <= 7 * error + 2 / DRAWN.draws).all()


@settings(max_examples=100, deadline=None)
@given(worlds())
def test_the_most_usual_home_is_never_one_that_is_ruled_out(world: Any) -> None:
    homes = homes_of(world)
    whole = joint(homes, tuple(homes.open))
    usual = most_usual(homes, {})
    at = tuple(ANSWERS.index(usual[key]) for key in homes.open)  # type: ignore[arg-type]
    assert whole[at] > 0


@settings(max_examples=100, deadline=None)
@given(worlds())
def test_what_holds_in_every_home_that_is_left_holds_always(world: Any) -> None:
    homes = homes_of(world)
    assume("a" in homes.open and "b" in homes.open)
    fails = Lifter(homes).lift(
        lambda home: Outcome.FAIL if home.read("a") == home.read("b") else Outcome.PASS
    )
    truth = truth_of(homes, [fails])
    chance = float(np.trace(joint(homes, ("a", "b"))))
    assert truth.chance(Outcome.FAIL) == pytest.approx(chance)
    assert truth.always == (chance < 1e-12)


def test_an_answer_that_is_held_stands_before_a_share_of_nought() -> None:
    never = (Case((), {"1": 1.0, "2": 0.0, "3": 0.0}),)  # type: ignore[dict-item]
    open_ = {"a": (1, 2, 3)}
    hangs = GoesWith("b", (Case((Condition("a", "=", "1"),), never[0].shares), *never))
    homes = Homes({"b": 2}, open_, {"a": (2.0, 1.0, 1.0)}, lambda read: read, together=(hangs,))  # type: ignore[arg-type]
    assert joint(homes, ("a",)) == pytest.approx([0.5, 0.25, 0.25])


def test_points_of_a_range_that_no_share_is_told_of_tell_nothing_of_other_facts() -> None:
    cases = (
        Case((Condition("a", "=", "1"),), {"1": 0.9, "2": 0.1}),
        Case((), {"1": 0.1, "2": 0.9}),
    )  # type: ignore[dict-item]
    answers = {"a": (1, 2), "b": (1, 1.5, 2)}
    even = {"a": (1.0, 1.0), "b": (1.0, 1.0, 1.0)}
    homes = Homes({}, answers, even, lambda read: read, together=(GoesWith("b", cases),))  # type: ignore[arg-type]
    assert joint(homes, ("a", "b")) == pytest.approx(np.full((2, 3), 1 / 6))
