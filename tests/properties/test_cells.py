"""Homes gone through whole and homes drawn, beside the plain loop over every home."""

from __future__ import annotations

from itertools import product
from math import sqrt
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ampwright.foundations.checks import Outcome
from ampwright.options.cells import Cells, error_of, unseen_of
from ampwright.options.homes import Drawing, Homes
from ampwright.options.lifting import Lifter
from ampwright.options.spread import Spread
from ampwright.options.truth import OUTCOMES, truth_of

ANSWERS = {"a": (0, 1, 2), "b": (0, 1), "c": (5, 7, 9, 11), "d": (False, True)}
WHOLE = Drawing(most=10_000, draws=500, seed=3)
DRAWN = Drawing(most=1, draws=500, seed=3)

shares = st.integers(1, 9).map(float)


class View:
    """A home of a few numbers, read through whatever reader it is given."""

    def __init__(self, reader: Any) -> None:
        self._reader = reader

    def __getattr__(self, name: str) -> Any:
        return self._reader.read(name)


def homes_with(chances: Any, drawing: Drawing) -> Homes:
    return Homes({}, ANSWERS, chances, View, drawing)  # type: ignore[arg-type]


@st.composite
def chances(draw: st.DrawFn) -> dict[str, tuple[float, ...]]:
    """Draw how common each answer is."""
    return {key: tuple(draw(shares) for _ in values) for key, values in ANSWERS.items()}


def weight(chances: Any, fixed: dict[str, Any]) -> float:
    """Return how likely one home is: the product of the shares of its answers."""
    each = (
        chances[key][ANSWERS[key].index(value)] / sum(chances[key]) for key, value in fixed.items()
    )
    return float(np.prod(list(each)))


def spreads_of(homes: Homes) -> tuple[Spread[Any], ...]:
    """Lift three small stages: over no fact, over one, over two that are read by turns."""
    lifter = Lifter(homes)
    return (
        lifter.lift(lambda _home: 7),
        lifter.lift(lambda home: home.c % 4),
        lifter.lift(lambda home: home.a if home.d else -home.b),
    )


@settings(max_examples=60, deadline=None)
@given(chances(), st.sets(st.sampled_from(list(ANSWERS))))
def test_whole_cells_are_every_home_with_its_weight(chances, keys):
    homes = homes_with(chances, WHOLE)
    cells = Cells.over(homes, keys)
    facts = [key for key in ANSWERS if key in keys]
    expected = [
        dict(zip(facts, each, strict=True)) for each in product(*(ANSWERS[f] for f in facts))
    ]
    assert [cells.home(i) for i in range(cells.count)] == expected
    assert cells.weights == pytest.approx([weight(chances, fixed) for fixed in expected])
    assert cells.draws == 0
    assert error_of(0.5, cells.draws) == unseen_of(cells.draws) == 0.0


@pytest.mark.parametrize("drawing", [WHOLE, DRAWN])
@settings(max_examples=30, deadline=None)
@given(chances=chances())
def test_in_every_cell_a_spread_is_what_it_is_in_that_home(drawing, chances):
    homes = homes_with(chances, drawing)
    cells = Cells.over(homes, ANSWERS)
    assert cells.weights.sum() == pytest.approx(1.0)
    for spread in spreads_of(homes):
        numbers = np.broadcast_to(cells.at(spread), cells.count).tolist()
        for cell, number in enumerate(numbers):
            assert spread.values[number] == spread.in_home(cells.home(cell))


@settings(max_examples=60, deadline=None)
@given(chances())
def test_a_chance_over_drawn_homes_is_the_true_one_within_its_error(chances):
    exact, homes = homes_with(chances, WHOLE), homes_with(chances, DRAWN)
    for level in (Outcome.PASS, Outcome.UNDETERMINED, Outcome.FAIL):
        truth, guess = (truth_of(each, outcomes(each)) for each in (exact, homes))
        chance, near = truth.chance(level), guess.chance(level)
        assert abs(near - chance) <= 6 * sqrt(max(chance * (1 - chance), 1e-9) / DRAWN.draws)
        assert error_of(near, guess.cells.draws) == pytest.approx(
            sqrt(near * (1 - near) / DRAWN.draws)
        )


def outcomes(homes: Homes) -> list[Spread[Outcome]]:
    """Return two checks that hang on different facts."""
    _, one, two = spreads_of(homes)
    first = one.part("first", lambda n: Outcome.FAIL if n == 3 else Outcome.PASS)
    second = two.part("second", lambda n: Outcome.UNDETERMINED if n < 0 else Outcome.PASS)
    return [first, second]


@settings(max_examples=30, deadline=None)
@given(chances())
def test_the_average_over_drawn_homes_is_the_true_one_within_its_error(chances):
    exact, homes = homes_with(chances, WHOLE), homes_with(chances, DRAWN)
    averages = []
    for each in (exact, homes):
        cells, spread = Cells.over(each, ANSWERS), spreads_of(each)[2]
        values = np.asarray(spread.values, float)[cells.at(spread)]
        mean = cells.mean(values)
        averages.append((mean, sqrt(cells.mean((values - mean) ** 2) / DRAWN.draws)))
    (true, _), (near, error) = averages
    assert abs(near - true) <= 7 * error + 0.05


@settings(max_examples=30, deadline=None)
@given(chances())
def test_checks_are_as_bad_in_a_drawn_home_as_in_that_home_alone(chances):
    homes = homes_with(chances, DRAWN)
    truth = truth_of(homes, outcomes(homes))
    assert truth.cells.draws == DRAWN.draws
    for cell, severity in enumerate(truth.severity.tolist()):
        assert truth.in_home(truth.cells.home(cell)) is OUTCOMES[severity]


def test_the_same_seed_draws_the_same_homes_and_another_seed_others():
    even = {key: (1.0,) * len(values) for key, values in ANSWERS.items()}
    one, same, other = (
        Cells.over(homes_with(even, DRAWN._replace(seed=seed)), ANSWERS).weights.tolist()
        for seed in (3, 3, 4)
    )
    assert one == same != other


def test_what_is_drawn_over_some_facts_agrees_with_what_is_drawn_over_more():
    even = {key: (1.0,) * len(values) for key, values in ANSWERS.items()}
    homes = homes_with(even, DRAWN)
    few, many = Cells.over(homes, ["a", "b"]), Cells.over(homes, ANSWERS)
    for number in range(3):
        assert few.chance(few.number("a") == number) == pytest.approx(
            many.chance(many.number("a") == number)
        )


@settings(max_examples=30, deadline=None)
@given(chances(), st.integers(1, 30))
def test_beside_stand_the_cells_with_one_fact_changed(chances, most):
    cells = Cells.over(homes_with(chances, DRAWN), ANSWERS)
    changed, of, facts = cells.beside(most)
    ways = sum(len(values) - 1 for values in ANSWERS.values())
    assert changed.count == min(most, cells.count) * ways
    for cell in range(changed.count):
        before, after = cells.home(int(of[cell])), changed.home(cell)
        differ = [key for key in ANSWERS if before[key] != after[key]]
        assert differ == [cells.facts[int(facts[cell])]]
