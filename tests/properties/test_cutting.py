"""Ranges cut where the failed checks change, beside every step of the range by itself."""

from __future__ import annotations

from itertools import pairwise
from math import ceil
from types import SimpleNamespace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.journeys.homes import basis, records_of

from ampwright.foundations.checks import Finding, Outcome, at_most, requires
from ampwright.foundations.source import Place
from ampwright.foundations.stages import Made
from ampwright.options.cutting import finer
from ampwright.options.homes import Homes
from ampwright.options.lifting import Lifter
from ampwright.options.open_homes import homes_of
from ampwright.options.outlook import outlook
from ampwright.survey.folding import as_found
from ampwright.survey.states import by_length

LENGTH = "legs.along-the-ceiling.length_m"
STEP = 0.5


@requires("x ≤ limit", place=Place("an example"))
def short_enough(x: float, limit: float) -> Finding:
    """Nothing is longer than it may be."""
    return at_most(x, limit)


def limited(limit: float) -> Any:
    """Return a stage that fails past a length."""

    def stage(home: Any) -> Made[float]:
        x = home.read("x")
        return Made(x, (short_enough(x, limit),))

    return stage


def cut(limits: list[float], high: float) -> tuple[Homes, int]:
    """Cut a range from nought for some limits; also return in how many rounds."""
    homes = Homes({}, {"x": (0.0, high)}, {"x": (0.5, 0.5)}, lambda read: read, steps={"x": STEP})  # type: ignore[arg-type]
    for rounds in range(20):
        lifter = Lifter(homes)
        ran = [SimpleNamespace(made=lifter.lift(limited(each))) for each in limits]
        decision = lifter.lift(lambda _home: "same")
        option: Any = SimpleNamespace(ran=ran, design=SimpleNamespace(decision=decision))
        more = finer(homes, [option])
        if more is None:
            return homes, rounds
        homes = more
    raise AssertionError("it does not end")


@settings(max_examples=80, deadline=None)
@given(st.lists(st.floats(0.6, 49.4), min_size=1, max_size=3), st.integers(100, 800))
def test_each_change_is_found_to_the_step_and_nothing_is_looked_for_elsewhere(
    limits: list[float], half: int
) -> None:
    high = half / 2
    homes, rounds = cut(limits, high)
    points = homes.open["x"]
    for low, up in pairwise(points):
        inside = [limit for limit in limits if low <= limit < up]
        if inside:
            assert float(up) - float(low) <= STEP + 1e-9
    assert len(points) <= 2 + 3 * len(limits) * ceil(rounds)
    assert rounds <= 6


@settings(max_examples=80, deadline=None)
@given(st.floats(0.6, 49.4), st.integers(100, 400))
def test_the_pieces_are_as_likely_as_they_are_long(limit: float, half: int) -> None:
    high = half / 2
    homes, _ = cut([limit], high)
    points, chances = homes.open["x"], homes.chances["x"]
    assert sum(chances) == pytest.approx(1.0)
    over = sum(c for point, c in zip(points, chances, strict=True) if float(point) > limit)
    assert abs(over - (high - limit) / high) <= STEP / high


@given(st.lists(st.floats(0, 100), min_size=2, max_size=9, unique=True))
def test_shares_by_length_are_whole(points: list[float]) -> None:
    assert sum(by_length(tuple(sorted(points)))) == pytest.approx(1.0)


def test_a_leg_of_unknown_length_is_cut_where_options_stop_to_hold() -> None:
    whole = homes_of(as_found(records_of("quillbrook-close")), basis("demo"))
    first = {key: values[0] for key, values in whole.open.items()}
    known = {key: value for key, value in {**whole.known, **first}.items() if key != LENGTH}
    ends = (2.0, 90.0)
    homes = Homes(known, {LENGTH: ends}, {LENGTH: (0.5, 0.5)}, whole.build, steps={LENGTH: 1.0})
    seen = outlook(homes, basis("demo"))
    points = seen.homes.open[LENGTH]
    assert len(points) > 2

    def holding(at: Any) -> set[str]:
        options = seen.searched.options
        return {each.id for each in options if each.sound.in_home({LENGTH: at}) is not Outcome.FAIL}

    def alone(at: float) -> set[str]:
        one = outlook(Homes({**known, LENGTH: at}, {}, {}, whole.build), basis("demo"))
        return {each.id for each in one.searched.options}

    for low, up in pairwise(points):
        if float(up) - float(low) > 1:
            assert holding(low) == holding(up)
            assert alone(float(round((float(low) + float(up)) / 2))) == holding(low)
        else:
            assert alone(float(low)) == holding(low)
