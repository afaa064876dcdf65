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

from ..homes import Changes, HomeReader, Homes
from ..memory import BLANK, Reads
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


class DrawnReader(HomeReader):
    """Gives the values of one of the drawn homes, which is the one numbered ``first``."""

    __slots__ = ("first", "homes")

    def __init__(self, homes: DrawnHomes, changes: Changes) -> None:
        super().__init__(homes.known, {}, changes)
        self.homes = homes
        self.first = 0

    def read(self, key: str) -> Any:
        """Return the value of a fact; raises ``Unanswered`` when blank."""
        value = self.seen[key] = self._value(key)
        if value is BLANK:
            raise Unanswered(key)
        return value

    def _value(self, key: str) -> Any:
        if key in self.changes:
            changed = cast(Spread[Any], self.changes[key])
            apart = self.homes.apart_in(changed)
            change = changed.values[0 if apart is None else apart.numbers[self.first]]
            if change is not None:
                return change.value
        if key in self.known:
            return self.known[key]
        if key in self.homes.numbers:
            return self.homes.among[key][self.homes.told_by(key).numbers[self.first]]
        return BLANK


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
        memory, reader = self.homes.memory, self._reader
        then, at = memory.start(stage, args)
        waiting = [(then, at, cells)]
        while waiting:
            then, at, here = waiting.pop()
            node = then.get(at)
            if node is None:
                reader.first, reader.seen = (here & -here).bit_length() - 1, {}
                self.calls += 1
                memory.run(stage, args, self.view, reader, once=False)
                node = then[at]
            if type(node) is Reads:
                self._reads.add(node.fact)
                waiting += ((node.then, *each) for each in self._by_value(node.fact, here))
            else:
                yield here, node.result

    def _by_value(self, fact: str, cells: int) -> Iterator[tuple[Any, int]]:
        """Yield each value that a fact has in some homes, and in which of them."""
        if fact in self.changes:
            changed = cast(Spread[Any], self.changes[fact])
            for number, here in self._parted(self.homes.apart_in(changed), cells):
                change = changed.values[number]
                if change is not None:
                    yield change.value, here
                    cells &= ~here
        if not cells:
            return
        if fact in self.homes.known:
            yield self.homes.known[fact], cells
        elif fact in self.homes.numbers:
            for number, here in self._parted(self.homes.told_by(fact), cells):
                yield self.homes.among[fact][number], here
        else:
            yield BLANK, cells

    @staticmethod
    def _parted(apart: Parted | None, cells: int) -> list[tuple[int, int]]:
        """Return the numbers that some homes have, and which of them have each."""
        if apart is None:
            return [(0, cells)]
        number = apart.numbers[(cells & -cells).bit_length() - 1]
        if not cells & ~apart.having[number]:
            return [(number, cells)]
        return [(n, both) for n, each in apart.having.items() if (both := cells & each)]
