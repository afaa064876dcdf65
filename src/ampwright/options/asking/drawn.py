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
from ..spread import NOWHERE, Index, Lifter, Spread, filled, trimmed

T = TypeVar("T")
HOME: Final = "(home)"
"""The fact that stands for all others: which of the drawn homes it is."""


@dataclass(frozen=True, eq=False)
class DrawnHomes(Homes):
    """So many homes, each with its own values of the facts that are open.

    ``among`` gives the possible values of each open fact and ``numbers`` which of them each home
    has. ``reads`` gathers which facts each stage has read in a run; ``parted`` keeps how the homes
    differ in a fact.
    """

    among: Mapping[str, tuple[Value, ...]] = field(default_factory=dict)
    numbers: Mapping[str, Index] = field(default_factory=dict)
    reads: set[tuple[Any, frozenset[str]]] = field(default_factory=set)
    parted: dict[Any, Parted] = field(default_factory=dict)

    @property
    def all(self) -> int:
        """The set of all homes."""
        return (1 << len(self.open[HOME])) - 1

    def told_by(self, key: str) -> Parted:
        """Return how the homes differ in a fact."""
        made = self.parted.get(key)
        if made is None:
            made = self.parted[key] = Parted(self.numbers[key])
        return made

    def apart_in(self, spread: Spread[Any]) -> Parted | None:
        """Return how the homes differ in a result; nothing where it is one in all of them."""
        if not spread.facts:
            return None
        made = self.parted.get(spread)
        if made is None:
            made = self.parted[spread] = Parted(spread.index)
        return made

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


class Parted:
    """Homes told apart by a number that each has; sets of homes are the bits of whole numbers."""

    __slots__ = ("having", "numbers")

    def __init__(self, numbers: Index) -> None:
        self.numbers: list[int] = numbers.tolist()
        self.having: dict[int, int] = {}
        for home, number in enumerate(self.numbers):
            self.having[number] = self.having.get(number, 0) | 1 << home


def homes_in(cells: int) -> list[int]:
    """Return the homes of a set, by their numbers.

    Examples
    --------
    >>> homes_in(0b1010)
    [1, 3]
    """
    found = []
    while cells:
        least = cells & -cells
        found.append(least.bit_length() - 1)
        cells ^= least
    return found


class DrawnReader(ForkingReader):
    """Gives the value that a fact has in all of some drawn homes, and forks where they differ.

    ``cells`` is the set of homes it stands for, ``first`` one of them, and ``apart`` how they
    differ in the fact that forked.
    """

    __slots__ = ("apart", "cells", "first", "homes")

    def __init__(self, homes: DrawnHomes, changes: Changes) -> None:
        super().__init__(homes.known, {}, changes)
        self.homes = homes
        self.stand_for(1)
        self.apart: Parted

    def stand_for(self, cells: int) -> None:
        """Stand for some of the homes, of which nothing has been read yet."""
        self.cells, self.first = cells, (cells & -cells).bit_length() - 1
        self.seen = {}

    def read(self, key: str) -> Any:
        """Return the value of a fact; ``Fork`` where homes differ, ``Unanswered`` if blank."""
        seen = self.seen
        seen[key] = BLANK
        if key in self.changes:
            changed = cast(Spread[Any], self.changes[key])
            change = changed.values[self._alike(self.homes.apart_in(changed))]
            if change is not None:
                seen[key] = change.value
                return change.value
        if key in self.known:
            value = seen[key] = self.known[key]
            return value
        if key in self.homes.numbers:
            value = seen[key] = self.homes.among[key][self._alike(self.homes.told_by(key))]
            return value
        raise Unanswered(key)

    def _alike(self, apart: Parted | None) -> int:
        """Return the number that all of these homes have; raises ``Fork`` where they differ."""
        if apart is None:
            return 0
        number = apart.numbers[self.first]
        if self.cells & ~apart.having[number]:
            self.apart = apart
            raise Fork
        return number


class DrawnLifter(Lifter):
    """Runs plain stages over drawn homes; each only for the homes in which it is given another.

    ``asked`` is the set of homes for which anything is run at all.
    """

    homes: DrawnHomes
    _reader: DrawnReader

    def __init__(
        self, homes: DrawnHomes, changes: Changes | None = None, near: Iterable[Lifter] = ()
    ) -> None:
        super().__init__(homes, changes, near)
        self.asked = homes.all
        self._reader = DrawnReader(homes, self.changes)
        self.view = homes.build(self._reader)

    def _lift(self, stage: Callable[..., T], args: tuple[object, ...]) -> Spread[T]:
        homes, asked = self.homes, self.asked
        size = len(homes.open[HOME])
        found = np.zeros(size, np.int64)
        values: dict[Any, int] = {}
        for cells, handed in self._handed(args):
            if here := cells & asked:
                for mine, result in self._runs(stage, handed, here):
                    number = values.setdefault(result, len(values))
                    if number:
                        found[homes_in(mine)] = number
        homes.reads.add((stage, frozenset(self._reads)))
        made = cast(tuple[T, ...], tuple(values))
        if len(made) == 1:
            return Spread.of(homes, (), NOWHERE, made)
        return trimmed(homes, (HOME,), found, made)

    def _handed(self, args: tuple[object, ...]) -> Iterator[tuple[int, tuple[object, ...]]]:
        """Yield each distinct set of what a stage is handed, and in which homes it is."""
        spreads = [arg for arg in args if isinstance(arg, Spread)]
        parted = [self.homes.apart_in(each) for each in spreads]
        alone = [each for each in parted if each is not None]
        if not alone:
            yield self.homes.all, filled(args, tuple(each.values[0] for each in spreads))
            return
        sets: dict[tuple[int, ...], int] = {}
        if len(alone) == 1:
            sets = {(number,): cells for number, cells in alone[0].having.items()}
        else:
            for home, numbers in enumerate(zip(*(each.numbers for each in alone), strict=True)):
                sets[numbers] = sets.get(numbers, 0) | 1 << home
        for numbers, cells in sets.items():
            rest = iter(numbers)
            at = [0 if each is None else next(rest) for each in parted]
            yield cells, filled(args, tuple(s.values[n] for s, n in zip(spreads, at, strict=True)))

    def _runs(
        self, stage: Callable[..., T], args: tuple[object, ...], cells: int
    ) -> Iterator[tuple[int, T | Missing]]:
        """Yield what a stage makes in some homes, run once for those in which it reads the same."""
        lacking = tuple(key for arg in args if isinstance(arg, Missing) for key in arg.keys)
        if lacking:
            yield cells, Missing(tuple(dict.fromkeys(lacking)))
            return
        waiting = [cells]
        memory, reader = self.homes.memory, self._reader
        while waiting:
            here = waiting.pop()
            reader.stand_for(here)
            self.calls += 1
            try:
                result = memory.made(stage, self.view, reader, args)
            except Fork:
                waiting += (both for each in reader.apart.having.values() if (both := here & each))
                result = None
            except Unanswered as blank:
                result = Missing((blank.key,))
            self._reads.update(reader.seen)
            if result is not None:
                yield here, result
