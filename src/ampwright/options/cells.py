"""The homes over some of the open facts, each with its weight: all of them, or a drawn sample.

Up to so many cells the homes are gone through whole. Past that they are drawn from their exact
chances with a given seed, and whatever is weighed over them has a standard error. Homes that the
chances rule out are no cells.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import prod, sqrt
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from ampwright.foundations.answers import Value

from .chances import drawn, joint
from .homes import Homes
from .spread import Index, Spread, in_order

Numbers = NDArray[np.float64]
Where = NDArray[np.bool_]

UNSEEN: Final = 3.0
"""What none of n draws shows has, in 95 of 100 samples, a chance below 3/n."""


class Cells:
    """Homes that differ in some facts: how likely each is, and what any spread is in each.

    ``facts`` are those told apart, in the order of the homes; ``weights`` sum to one. ``draws``
    is nought where the cells are all the homes there are.
    """

    def __init__(
        self, homes: Homes, facts: tuple[str, ...], numbers: Index, weights: Numbers, draws: int = 0
    ) -> None:
        self.homes, self.facts, self.weights, self.draws = homes, facts, weights, draws
        self._numbers: dict[str, Index] = dict(zip(facts, numbers, strict=True))
        self._places: dict[tuple[str, ...], Index] = {}

    @classmethod
    def over(cls, homes: Homes, facts: Iterable[str]) -> Cells:
        """Return the homes over some facts, whole if they are few enough, else drawn; kept."""
        key = in_order(homes, facts)
        made: Cells | None = homes.pool.get((cls, key))
        if made is None:
            few = size_of(homes, key) <= homes.drawing.most
            made = homes.pool[cls, key] = whole(homes, key) if few else sampled(homes, key)
        return made

    @classmethod
    def one(cls, homes: Homes, fixed: Mapping[str, Value]) -> Cells:
        """Return the single home in which some facts have these values."""
        facts = in_order(homes, fixed)
        numbers = [[homes.at[fact][fixed[fact]]] for fact in facts]
        return cls(homes, facts, np.asarray(numbers, np.int64).reshape(-1, 1), np.ones(1))

    @property
    def count(self) -> int:
        """How many cells there are."""
        return len(self.weights)

    def number(self, fact: str) -> Index:
        """Return which of its values a fact has in each cell, by its place among them."""
        return self._numbers[fact]

    def at(self, spread: Spread[Any]) -> Index:
        """Return which of its values a spread has in each cell; a single number if all alike.

        Raises ``KeyError`` for a spread over a fact that the cells do not tell apart.
        """
        if not spread.facts:
            return spread.index
        laid_out: Index = spread.index.ravel()
        return laid_out[self.place(spread.facts)]

    def place(self, facts: tuple[str, ...]) -> Index:
        """Return where each cell stands in an array over some facts, laid out flat."""
        found = self._places.get(facts)
        if found is None:
            found = np.zeros(self.count, np.int64)
            for fact in facts:
                found = found * len(self.homes.open[fact]) + self._numbers[fact]
            self._places[facts] = found
        return found

    def home(self, cell: int) -> dict[str, Value]:
        """Return the values of the facts in one cell."""
        return {fact: self.homes.open[fact][int(self._numbers[fact][cell])] for fact in self.facts}

    def chance(self, where: Where) -> float:
        """Return how likely the cells are in which something holds."""
        return float(self.weights[np.broadcast_to(where, self.weights.shape)].sum())

    def mean(self, values: NDArray[Any]) -> float:
        """Return the average of something that has a number for each cell."""
        return float(values @ self.weights)

    def beside(self, most: int) -> tuple[Cells, Index, Index]:
        """Return cells like the likeliest of these but for one fact, every other value of it.

        With the cell from which each was made, and the place of the fact that was changed.
        """
        of = np.argsort(-self.weights, kind="stable")[:most]
        here = np.stack([self._numbers[fact][of] for fact in self.facts])
        sizes = [len(self.homes.open[fact]) for fact in self.facts]
        steps = [(i, further) for i, size in enumerate(sizes) for further in range(1, size)]
        numbers = np.tile(here, len(steps))
        for at, (i, further) in enumerate(steps):
            mine = slice(at * len(of), (at + 1) * len(of))
            numbers[i, mine] = (here[i] + further) % sizes[i]
        even = np.full(numbers.shape[1], 1 / numbers.shape[1])
        changed = np.repeat([i for i, _ in steps], len(of))
        return Cells(self.homes, self.facts, numbers, even), np.tile(of, len(steps)), changed

    def unruled(self) -> Cells:
        """Return these cells with those that the chances rule out, at a weight of nought."""
        if self.count == size_of(self.homes, self.facts):
            return self
        return Cells(self.homes, self.facts, *everything(self.homes, self.facts))


def size_of(homes: Homes, facts: Iterable[str]) -> int:
    """Return how many combinations of values some facts have."""
    return prod(len(homes.open[fact]) for fact in facts)


def everything(homes: Homes, facts: tuple[str, ...]) -> tuple[Index, Numbers]:
    """Return the value numbers and the weight of every combination, the ruled out as well."""
    sizes = tuple(len(homes.open[fact]) for fact in facts)
    weights = joint(homes, facts).reshape(-1)
    return np.indices(sizes, np.int64).reshape(len(facts), weights.size), weights


def whole(homes: Homes, facts: tuple[str, ...]) -> Cells:
    """Return every home over some facts but those that the chances rule out."""
    numbers, weights = everything(homes, facts)
    likely = weights > 0
    if not likely.all():
        numbers, weights = numbers[:, likely], weights[likely]
    return Cells(homes, facts, numbers, weights)


def sampled(homes: Homes, facts: tuple[str, ...]) -> Cells:
    """Return the drawn homes over some facts; those drawn more than once weigh so much more.

    The same draws serve every set of facts, so that what is said over one set agrees with what
    is said over another.
    """
    draws = homes.drawing.draws
    numbers = np.stack([drawn(homes)[fact] for fact in facts])
    distinct, times = np.unique(numbers, axis=1, return_counts=True)
    return Cells(homes, facts, distinct, times / draws, draws)


def error_of(chance: float, draws: int) -> float:
    """Return the standard error of a chance over so many draws; nought where nothing was drawn.

    Examples
    --------
    >>> error_of(0.5, 100), error_of(0.5, 0)
    (0.05, 0.0)
    """
    return sqrt(max(0.0, chance * (1 - chance)) / draws) if draws else 0.0


def unseen_of(draws: int) -> float:
    """Return the most that is likely of what no draw shows; nought where nothing was drawn.

    Examples
    --------
    >>> unseen_of(300), unseen_of(0)
    (0.01, 0.0)
    """
    return min(1.0, UNSEEN / draws) if draws else 0.0
