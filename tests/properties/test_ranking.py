"""The front and its winners against brute force over drawn options and homes."""

from __future__ import annotations

from datetime import date
from types import SimpleNamespace
from typing import Any

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from ampwright.firm.basis import load_basis
from ampwright.foundations.quantity import Amperes
from ampwright.options.choices import Choice
from ampwright.options.criteria import Criteria
from ampwright.options.homes import Homes
from ampwright.options.ranking import MATTERS, PRIORITY, rank
from ampwright.options.spread import Spread
from ampwright.options.truth import OUTCOMES, Truth
from ampwright.tables.capacity import CableFamily

HOMES = Homes({}, {"a": (0, 1), "b": (0, 1, 2)}, {"a": (1.0, 1.0), "b": (1.0,) * 3}, lambda r: r)
SHAPE = (2, 3)
POINT = load_basis(design_date=date(2026, 11, 25), profile="neutral").catalogue.points[0]

few = st.integers(0, 2).map(float)
criteria = st.builds(Criteria, *(few for _ in Criteria._fields))
cells = st.lists(criteria, min_size=6, max_size=6)
severities = st.lists(st.sampled_from((0, 0, 0, 1, 2)), min_size=6, max_size=6)


def option(name: int, severity: list[int], each: list[Criteria]) -> Any:
    """Build the parts of an option that ranking looks at."""
    index = np.arange(6).reshape(SHAPE)
    spread = Spread(HOMES, ("a", "b"), index, tuple(each))
    levels = np.asarray(severity).reshape(SHAPE)
    truth = Truth(HOMES, ("a", "b"), 0, (Spread(HOMES, ("a", "b"), levels, OUTCOMES),))
    choice = Choice(
        earthing=str(name), tap="meter", place="drive", point=POINT, setting_a=Amperes(16.0),
        house_limit=False, hours="any", family=CableFamily.FLAT,
    )  # fmt: skip
    design = SimpleNamespace(criteria=spread)
    return SimpleNamespace(id=name, choice=choice, sound=truth, design=design)


COMPARED = ("wait", "slowness_kw", "price_p", "seen", "cramped")


def loses(loser: Any, to: Any) -> bool:
    """Whether one option loses to another, home by home: the rule of the front in plain words.

    It loses to what is at least as sound and nowhere worse wherever it holds, and somewhere
    better; of two that are alike in all, to the one that is nowhere later in the firm's order.
    """
    better = earlier = False
    for cell in range(6):
        mine, theirs = int(loser.sound.severity[cell]), int(to.sound.severity[cell])
        if mine == 2:
            continue
        if theirs > mine:
            return False
        a, b = loser.design.criteria.values[cell], to.design.criteria.values[cell]
        for name in COMPARED:
            if getattr(b, name) > getattr(a, name):
                return False
            better |= getattr(b, name) < getattr(a, name)
    if better:
        return True
    for cell in range(6):
        if int(loser.sound.severity[cell]) < 2:
            a, b = loser.design.criteria.values[cell], to.design.criteria.values[cell]
            if b.order > a.order:
                return False
            earlier |= b.order < a.order
    return earlier


@st.composite
def options(draw: st.DrawFn) -> list[Any]:
    drawn = draw(st.lists(st.tuples(severities, cells), min_size=1, max_size=6))
    sound = [(s, c) for s, c in drawn if any(level < 2 for level in s)]
    return [option(i, s, c) for i, (s, c) in enumerate(sound)]


@settings(max_examples=200, deadline=None)
@given(options())
def test_the_front_is_what_nothing_beats(found: list[Any]) -> None:
    if not found:
        return
    ranking = rank(HOMES, found)
    expected = {a.id for a in found if not any(loses(a, to=b) for b in found if b is not a)}
    assert {o.id for o in ranking.front} == expected
    assert {loss.option.id for loss in ranking.losses} == {o.id for o in found} - expected
    for loss in ranking.losses:
        assert loss.winner.id in expected
        assert loses(loss.option, to=loss.winner)
        assert loss.better_in


@settings(max_examples=200, deadline=None)
@given(options(), st.randoms())
def test_the_order_in_which_options_come_changes_nothing(found: list[Any], chance: Any) -> None:
    if not found:
        return
    shuffled = list(found)
    chance.shuffle(shuffled)
    first, second = rank(HOMES, found), rank(HOMES, shuffled)
    assert {o.id for o in first.front} == {o.id for o in second.front}
    assert {o.option.id for o in first.losses} == {o.option.id for o in second.losses}
    for cell in range(6):
        home = {"a": cell // 3, "b": cell % 3}
        one, two = first.best_in(home), second.best_in(home)
        assert (one is None) is (two is None)
        if one is not None and two is not None:
            both = [each.design.criteria.values[cell] for each in (one, two)]
            assert both[0] == both[1]


@settings(max_examples=200, deadline=None)
@given(options())
def test_the_best_in_each_home_is_the_least_among_the_soundest(found: list[Any]) -> None:
    if not found:
        return
    ranking = rank(HOMES, found)
    for a in (0, 1):
        for b in (0, 1, 2):
            cell = a * 3 + b
            here = [
                (int(o.sound.severity[cell]), o.design.criteria.values[cell])
                for o in found
                if o.sound.severity[cell] < 2
            ]
            best = ranking.best_in({"a": a, "b": b})
            if not here:
                assert best is None
                continue
            assert best is not None
            got = (int(best.sound.severity[cell]), best.design.criteria.values[cell])
            assert got == min(here)


@settings(max_examples=100, deadline=None)
@given(options(), st.sampled_from(sorted(MATTERS)))
def test_what_the_customer_said_matters_most_comes_after_the_need_alone(
    found: list[Any], stated: str
) -> None:
    if not found:
        return
    told = Homes({PRIORITY: stated}, HOMES.open, HOMES.chances, HOMES.build)
    ranking = rank(told, found)
    assert {o.id for o in ranking.front} == {o.id for o in rank(HOMES, found).front}
    for cell in range(6):
        here = [
            (int(o.sound.severity[cell]), each.uncovered, getattr(each, MATTERS[stated]), *each)
            for o in found
            for each in (o.design.criteria.values[cell],)
            if o.sound.severity[cell] < 2
        ]
        best = ranking.best_in({"a": cell // 3, "b": cell % 3})
        if here:
            assert best is not None
            assert best.design.criteria.values[cell] == min(here)[3:]
