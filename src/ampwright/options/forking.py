"""For which values of the open facts a stage must be run, so that every home has its result.

A stage is run until it reads an open fact, then once for each value that this fact can have
beside what the stage was handed. Values that occur nowhere beside it are not tried.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from itertools import product
from typing import Any

import numpy as np
from numpy.typing import NDArray

from ampwright.foundations.answers import Value

from .homes import Homes

Leaf = tuple[Mapping[str, Value], Any]
"""The facts a run looked at with their values, and what it came to."""

Can = Callable[[str], tuple[Value, ...]]
"""The values that a fact can have here."""


class Held:
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


class Tree:
    """The runs of one stage on one set of arguments: where it forked and where it ended."""

    __slots__ = ("_can", "_ended", "_fixed", "_forked", "_sure", "_waiting", "leaves")

    def __init__(self, can: Can, guess: tuple[str, ...]) -> None:
        self._can = can
        self._sure = not guess
        self._waiting = [dict(zip(guess, each, strict=True)) for each in product(*map(can, guess))]
        self._forked = Runs()
        self._ended = Runs()
        self.leaves: list[Leaf] = []

    def next(self) -> dict[str, Value] | None:
        """Return the facts to fix for the next run; nothing when every home has its result.

        Without a guess each run asks for what it needs, so that none is like another.
        """
        while self._waiting:
            fixed = self._waiting.pop()
            if self._sure:
                self._fixed = fixed
                return fixed
            if self._ended.found(fixed) is not None:
                continue
            asked = self._forked.found(fixed)
            if asked is None:
                self._fixed = fixed
                return fixed
            self._fork(fixed, asked)
        return None

    def forks(self, asked: str, used: set[str]) -> None:
        """Note that the run ended at a fact that is open, after it looked at some others."""
        self._forked.note(self._looked_at(used), asked)
        self._fork(self._fixed, asked)

    def ends(self, result: Any, used: set[str]) -> None:
        """Note what the run came to, for every value of what it did not look at."""
        looked = self._looked_at(used)
        self._ended.note(looked, "")
        self.leaves.append((looked, result))

    @property
    def always(self) -> tuple[str, ...]:
        """The facts that every run looked at."""
        first, *rest = self._ended.facts
        return tuple(fact for fact in first if all(fact in facts for facts in rest))

    def _fork(self, fixed: dict[str, Value], asked: str) -> None:
        self._waiting += ({**fixed, asked: value} for value in self._can(asked))

    def _looked_at(self, used: set[str]) -> dict[str, Value]:
        return {fact: value for fact, value in self._fixed.items() if fact in used}


class Runs:
    """What runs came to, by the facts they looked at and the values of these."""

    __slots__ = ("_by_facts",)

    def __init__(self) -> None:
        self._by_facts: dict[tuple[str, ...], dict[tuple[Value, ...], str]] = {}

    @property
    def facts(self) -> tuple[tuple[str, ...], ...]:
        """Each set of facts that some run looked at."""
        return tuple(self._by_facts)

    def note(self, looked: Mapping[str, Value], asked: str) -> None:
        """Note a run: what it looked at, and the fact it asked for, if it forked."""
        self._by_facts.setdefault(tuple(looked), {})[tuple(looked.values())] = asked

    def found(self, fixed: Mapping[str, Value]) -> str | None:
        """Return what a run came to that looked at nothing but these facts; it may ask anew.

        A fact that is fixed already is not asked for again.
        """
        for facts, runs in self._by_facts.items():
            if all(fact in fixed for fact in facts):
                asked = runs.get(tuple(fixed[fact] for fact in facts))
                if asked is not None and asked not in fixed:
                    return asked
        return None
