"""Homes drawn from the chances of their facts, gone through together.

Where the open facts are too many for all their combinations, homes are drawn. They are numbered,
and the number stands as the one open fact: a spread over it holds one result for each drawn
home. A stage is still run once for each distinct thing it could be given.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, Final, TypeVar, cast

import numpy as np

from ampwright.foundations.answers import Missing, Unanswered, Value

from ..homes import Changes, Fork, ForkingReader, Homes
from ..memory import BLANK
from ..spread import NOWHERE, Index, Lifter, Spread, filled, in_order, trimmed

T = TypeVar("T")
HOME: Final = "(home)"
"""The fact that stands for all others: which of the drawn homes it is."""


@dataclass(frozen=True, eq=False)
class DrawnHomes(Homes):
    """So many homes, each with its own values of the facts that are open.

    ``among`` gives the possible values of each open fact and ``numbers`` which of them each home
    has. ``reads`` gathers which facts each stage has read in a run.
    """

    among: Mapping[str, tuple[Value, ...]] = field(default_factory=dict)
    numbers: Mapping[str, Index] = field(default_factory=dict)
    reads: set[tuple[Any, frozenset[str]]] = field(default_factory=set)

    @property
    def read(self) -> frozenset[str]:
        """The facts that some stage has read."""
        return frozenset(key for _, keys in self.reads for key in keys)

    def answers(self, key: str) -> tuple[Value, ...]:
        """Return every value that a fact may have; none for one that is blank."""
        return (self.known[key],) if key in self.known else self.among.get(key, ())

    def values_in(self, number: int) -> dict[str, Value]:
        """Return the values of the open facts in one of the homes."""
        return {key: self.among[key][int(each[number])] for key, each in self.numbers.items()}

    def one(self, fixed: Mapping[str, Value], changes: Mapping[str, Value] | None = None) -> Any:
        """Return one of the drawn homes, after some work."""
        return super().one(self.values_in(int(fixed[HOME])), changes)


class DrawnReader(ForkingReader):
    """Gives the value that a fact has in all of some drawn homes, and forks where they differ.

    ``cells`` are the homes it stands for, and ``apart`` how they differ in the fact that forked.
    """

    __slots__ = ("apart", "cells", "homes")

    def __init__(self, homes: DrawnHomes, changes: Changes) -> None:
        super().__init__(homes.known, {}, changes)
        self.homes = homes
        self.cells = self.apart = NOWHERE

    def read(self, key: str) -> Any:
        """Return the value of a fact; ``Fork`` where homes differ, ``Unanswered`` if blank."""
        seen = self.seen
        seen[key] = BLANK
        if key in self.changes:
            changed = cast(Spread[Any], self.changes[key])
            change = changed.values[self._alike(changed.index)]
            if change is not None:
                seen[key] = change.value
                return change.value
        if key in self.known:
            value = seen[key] = self.known[key]
            return value
        if key in self.homes.numbers:
            value = seen[key] = self.homes.among[key][self._alike(self.homes.numbers[key])]
            return value
        raise Unanswered(key)

    def _alike(self, numbers: Index) -> int:
        """Return the number that all of these homes have; raises ``Fork`` where they differ."""
        if not numbers.ndim:
            return int(numbers)
        here = numbers[self.cells]
        if bool((here != here[0]).any()):
            self.apart = here
            raise Fork
        return int(here[0])


class DrawnLifter(Lifter):
    """Runs plain stages over drawn homes; each only for the homes in which it is given another."""

    homes: DrawnHomes
    _reader: DrawnReader

    def __init__(
        self, homes: DrawnHomes, changes: Changes | None = None, near: Iterable[Lifter] = ()
    ) -> None:
        super().__init__(homes, changes, near)
        self.asked = np.ones(len(homes.open[HOME]), bool)
        self._reader = DrawnReader(homes, self.changes)
        self.view = homes.build(self._reader)

    def _lift(self, stage: Callable[..., T], args: tuple[object, ...]) -> Spread[T]:
        spreads = [arg for arg in args if isinstance(arg, Spread)]
        facts = in_order(self.homes, (fact for each in spreads for fact in each.facts))
        inverse, combinations = self._combinations(spreads, facts)
        size = len(self.homes.open[HOME])
        found = np.zeros(size, np.int64)
        values: dict[Any, int] = {}
        for cells, combination in zip(_groups(inverse, size), combinations, strict=True):
            cells = cells[self.asked[cells]]
            if not cells.size:
                continue
            for here, result in self._runs(stage, filled(args, combination), cells):
                found[here] = values.setdefault(result, len(values))
        self.homes.reads.add((stage, frozenset(self._reads)))
        return trimmed(self.homes, (HOME,), found, cast(tuple[T, ...], tuple(values)))

    def _runs(
        self, stage: Callable[..., T], args: tuple[object, ...], cells: Index
    ) -> Iterator[tuple[Index, T | Missing]]:
        """Yield what a stage makes in some homes, run once for those in which it reads the same."""
        lacking = tuple(key for arg in args if isinstance(arg, Missing) for key in arg.keys)
        if lacking:
            yield cells, Missing(tuple(dict.fromkeys(lacking)))
            return
        waiting = [cells]
        memory = self.homes.memory
        while waiting:
            here = self._reader.cells = waiting.pop()
            self._reader.seen = {}
            self.calls += 1
            try:
                result = memory.made(stage, self.view, self._reader, args)
            except Fork:
                apart = self._reader.apart
                waiting += (here[apart == number] for number in np.unique(apart))
                result = None
            except Unanswered as blank:
                result = Missing((blank.key,))
            self._reads.update(self._reader.seen)
            if result is not None:
                yield here, result


def _groups(inverse: Index, size: int) -> list[Index]:
    """Return the homes of each combination, in the order of the combinations."""
    if not inverse.ndim:
        return [np.arange(size)]
    order = np.argsort(inverse, kind="stable")
    ends = np.cumsum(np.bincount(inverse))[:-1]
    return np.split(order, ends)
