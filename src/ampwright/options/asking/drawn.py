"""Homes drawn from the chances of their facts, gone through together.

Where the open facts are too many for all their combinations, homes are drawn. They are numbered,
and the number stands as the one open fact: a spread over it holds one result for each drawn
home. A stage is still run once for each distinct thing it could be given.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final, TypeVar, cast

import numpy as np

from ampwright.foundations.answers import Value

from ..homes import Homes
from ..lifting import Lifter, filled
from ..spread import NOWHERE, Changes, Index, Spread, trimmed
from ..values import Change, Values

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


class DrawnValues(Values[int, Spread[Any]]):
    """Parts sets of drawn homes by the values of their facts."""

    __slots__ = ("homes",)

    def __init__(self, homes: DrawnHomes, changes: Changes) -> None:
        super().__init__(homes.known, changes)
        self.homes = homes

    def first(self, here: int) -> int:
        """Return the set of the first of some homes."""
        return here & -here

    def _changed(self, changed: Spread[Any], here: int) -> Iterator[tuple[Change | None, int]]:
        for number, there in parted(self.homes.apart_in(changed), here):
            yield changed.values[number], there

    def _open(self, fact: str, here: int) -> Sequence[tuple[Any, int]]:
        if fact not in self.homes.numbers:
            return ()
        values = self.homes.among[fact]
        return [(values[n], there) for n, there in parted(self.homes.told_by(fact), here)]


def parted(apart: Parted | None, cells: int) -> Iterable[tuple[int, int]]:
    """Return the numbers that some homes have, and which of them have each."""
    if apart is None:
        return ((0, cells),)
    number = apart.numbers[(cells & -cells).bit_length() - 1]
    if not cells & ~apart.having[number]:
        return ((number, cells),)
    return [(n, both) for n, each in apart.having.items() if (both := cells & each)]


class DrawnLifter(Lifter):
    """Runs plain stages over drawn homes; each only for the homes in which it is given another.

    ``asked`` is the set of homes for which anything is run at all.
    """

    homes: DrawnHomes

    def __init__(
        self, homes: DrawnHomes, changes: Changes | None = None, near: Iterable[Lifter] = ()
    ) -> None:
        super().__init__(homes, changes, near)
        self.asked = homes.all
        self._drawn = DrawnValues(homes, self.changes)

    def _lift(self, stage: Callable[..., T], args: tuple[object, ...]) -> Spread[T]:
        homes, asked = self.homes, self.asked
        size = len(homes.open[HOME])
        found = np.zeros(size, np.int64)
        values: dict[Any, int] = {}
        for cells, handed in self._handed(args):
            if here := cells & asked:
                for mine, result in self._ends(stage, handed, self._drawn, here):
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
