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
from ampwright.options.homes import Homes
from ampwright.options.ranking import Criteria, Laid, beats, rank
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


def laid(each: Any) -> Laid:
    """Lay an option out by hand, cell by cell."""
    spread = each.design.criteria
    parts = (np.asarray([v[i] for v in spread.values]) for i in range(len(Criteria._fields)))
    return Laid(each.sound.severity, tuple(parts))


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
    expected = {
        a.id for a in found if not any(beats(laid(b), laid(a)) for b in found if b is not a)
    }
    assert {o.id for o in ranking.front} == expected
    assert {loss.option.id for loss in ranking.losses} == {o.id for o in found} - expected
    for loss in ranking.losses:
        assert loss.winner.id in expected
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
