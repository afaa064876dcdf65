"""Ranges cut where the set of failed checks changes: found by bisection, not sampled.

A range starts as a few points. Between two points at which the same checks fail in every home,
nothing is looked for; where they differ, points come between them, down to the step of the
register. Each point stands for what lies nearer to it than to its neighbours.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise
from math import ceil, floor
from typing import Any, Final

import numpy as np

from ampwright.foundations.answers import Value
from ampwright.foundations.checks import Outcome
from ampwright.foundations.stages import Made
from ampwright.survey.states import by_length

from .homes import Homes
from .search import Option
from .spread import Spread

BETWEEN: Final = 3
"""How many points come at once between two that differ: each walk quarters the gaps."""
NEAR: Final = 1e-9


def finer(homes: Homes, options: Iterable[Option[Any]]) -> Homes | None:
    """Return the homes with more points where options change between two; nothing if none does.

    ``options`` are what was found over the homes as they are.
    """
    if not homes.steps:
        return None
    bearing = tuple({spread: None for option in options for spread in bearing_on(option)})
    still = dict(homes.open)
    for fact, step in homes.steps.items():
        if fact in still:
            still[fact] = tuple(with_points(still[fact], changes_along(bearing, fact), step))
    if still == homes.open:
        return None
    chances = {
        fact: by_length(values) if fact in homes.steps else homes.chances[fact]
        for fact, values in still.items()
    }
    return homes.with_values(still, chances)


def bearing_on(option: Option[Any]) -> Iterator[Spread[Any]]:
    """Yield what an option comes to in each home: its decision, and what fails at each stage."""
    yield option.design.decision
    for ran in option.ran:
        yield ran.made.part("(failed)", failed)


def failed(made: Made[Any]) -> frozenset[str]:
    """Return the requirements that a stage fails."""
    return frozenset(check.requirement.id for check in made.checks if check.outcome is Outcome.FAIL)


def changes_along(bearing: Iterable[Spread[Any]], fact: str) -> frozenset[int]:
    """Return after which points of a range something changes in some home."""
    found: set[int] = set()
    for spread in bearing:
        if fact in spread.facts:
            index = np.moveaxis(spread.index, spread.facts.index(fact), 0)
            unlike = (index[1:] != index[:-1]).reshape(len(index) - 1, -1).any(axis=1)
            found.update(np.flatnonzero(unlike).tolist())
    return frozenset(found)


def with_points(values: tuple[Value, ...], changes: frozenset[int], step: float) -> Iterator[Value]:
    """Yield the points of a range with others in the gaps in which something changes."""
    for i, (low, high) in enumerate(pairwise(values)):
        yield low
        if i in changes:
            yield from (type(low)(each) for each in between(float(low), float(high), step))
    yield values[-1]


def between(low: float, high: float, step: float) -> Iterator[float]:
    """Yield at most three multiples of a step that lie evenly between two points.

    Examples
    --------
    >>> list(between(1.0, 9.0, 0.5)), list(between(1.0, 2.0, 0.5)), list(between(1.0, 1.5, 0.5))
    ([3.0, 5.0, 7.0], [1.5], [])
    """
    first, last = floor(low / step + NEAR) + 1, ceil(high / step - NEAR) - 1
    count = last - first + 1
    if count <= BETWEEN:
        chosen = list(range(first, last + 1))
    else:
        apart = (last - first + 2) / (BETWEEN + 1)
        chosen = [first - 1 + round(apart * each) for each in range(1, BETWEEN + 1)]
    yield from (round(number * step, 9) for number in chosen)
