"""Which values an open fact can have beside what a stage is handed."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from ampwright.foundations.answers import Value

from .homes import Homes
from .values import Can


class Handed:
    """The values that open facts have where a stage is handed one combination or another.

    Only the facts on which the combinations hang have fewer than all of theirs.
    """

    __slots__ = ("_count", "_facts", "_homes", "_inverse", "_kept")

    def __init__(
        self, homes: Homes, facts: tuple[str, ...], inverse: NDArray[np.int64], count: int
    ) -> None:
        self._homes, self._facts, self._inverse, self._count = homes, facts, inverse, count
        self._kept: dict[str, list[tuple[Value, ...]]] = {}

    def of(self, number: int) -> Can:
        """Return the values that a fact can have where this combination is handed on."""

        def can(fact: str) -> tuple[Value, ...]:
            if fact not in self._facts:
                return self._homes.open[fact]
            if fact not in self._kept:
                self._kept[fact] = self._values(fact)
            return self._kept[fact][number]

        return can

    def _values(self, fact: str) -> list[tuple[Value, ...]]:
        """Return, for each combination, the values of a fact that occur beside it."""
        values = self._homes.open[fact]
        rows = np.moveaxis(self._inverse, self._facts.index(fact), 0).reshape(len(values), -1)
        there = np.zeros((self._count, len(values)), bool)
        for number, row in enumerate(rows):
            there[row, number] = True
        return [tuple(values[i] for i in np.flatnonzero(row).tolist()) for row in there]
