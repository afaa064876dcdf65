"""What a result can be, over only the open facts on which it depends.

A spread without facts is one plain result; equal results are the same one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from operator import attrgetter
from typing import Any, Generic, TypeVar

import numpy as np
from numpy.typing import NDArray

from ampwright.foundations.answers import Missing, Value

from .homes import Homes
from .values import Change

T = TypeVar("T")
Index = NDArray[np.int64]

NOWHERE: Index = np.zeros((), np.int64)


class Spread(Generic[T]):
    """``values[index]``, where ``index`` has one axis for each fact in ``facts``.

    Without facts there is one value. An attribute of a spread is the spread of that
    attribute, made when it is first read; equal parts fall together, so what comes after runs
    once for each distinct part.
    """

    def __init__(
        self, homes: Homes, facts: tuple[str, ...], index: Index, values: tuple[T, ...]
    ) -> None:
        self.homes, self.facts, self.index, self.values = homes, facts, index, values
        self._parts: dict[str, Spread[Any]] = {}

    def __getattr__(self, name: str) -> Any:
        """Return the spread of one attribute of every value; missing stays missing."""
        if name[0] == "_":
            raise AttributeError(name)
        made = self.part(name, attrgetter(name))
        setattr(self, name, made)
        return made

    def part(self, name: str, get: Callable[[T], Any]) -> Spread[Any]:
        """Return the spread of something got from each value, kept under a name."""
        made = self._parts.get(name)
        if made is None:
            made = self.with_values(v if isinstance(v, Missing) else get(v) for v in self.values)
            self._parts[name] = made
        return made

    def with_values(self, values: Iterable[Any]) -> Spread[Any]:
        """Return the spread with another value in the place of each, in their order."""
        numbers: dict[Any, int] = {}
        new = [numbers.setdefault(value, len(numbers)) for value in values]
        if not self.facts:
            return Spread.of(self.homes, (), NOWHERE, tuple(numbers))
        return trimmed(
            self.homes, self.facts, np.asarray(new, np.int64)[self.index], tuple(numbers)
        )

    @classmethod
    def of(
        cls, homes: Homes, facts: tuple[str, ...], index: Index, values: tuple[T, ...]
    ) -> Spread[T]:
        """Return the spread of some values, the same one each time they are the same."""
        key = (facts, index.tobytes(), index.shape, values)
        made: Spread[T] | None = homes.pool.get(key)
        if made is None:
            made = homes.pool[key] = cls(homes, facts, index, values)
        return made

    @property
    def only(self) -> T:
        """The one value of a spread that depends on no open fact; else ``LookupError``."""
        if self.facts:
            raise LookupError(f"depends on {', '.join(self.facts)}")
        return self.values[int(self.index)]

    def in_home(self, fixed: Mapping[str, Value]) -> T:
        """Return the value in the home where the open facts have these values."""
        at = tuple(self.homes.at[fact][fixed[fact]] for fact in self.facts)
        return self.values[int(self.index[at])]

    @property
    def key(self) -> tuple[object, ...]:
        """What it is in every home, in a form that can be compared."""
        return (self.facts, *(self.values[number] for number in self.index.ravel().tolist()))

    def over(self, facts: tuple[str, ...]) -> Index:
        """Return the index laid out over more facts, in their order; a view, no copy."""
        sizes = (len(self.homes.open[f]) if f in self.facts else 1 for f in facts)
        return self.index.reshape(tuple(sizes))

    def __repr__(self) -> str:
        """Render what it can be and on what that depends."""
        return f"Spread({list(self.values)!r} over {list(self.facts)!r})"


def trimmed(homes: Homes, facts: tuple[str, ...], index: Index, values: tuple[T, ...]) -> Spread[T]:
    """Return a spread without the facts along which nothing changes."""
    kept: list[str] = []
    for axis in reversed(range(len(facts))):
        first = index.take([0], axis)
        if bool((index == first).all()):
            index = first.squeeze(axis)
        else:
            kept.append(facts[axis])
    if not kept:
        return Spread.of(homes, (), NOWHERE, (values[int(index)],))
    return Spread.of(homes, tuple(reversed(kept)), index, values)


def in_order(homes: Homes, facts: Iterable[str]) -> tuple[str, ...]:
    """Return facts, each once, in the order in which the homes list them."""
    return tuple(sorted(set(facts), key=homes.order.__getitem__))


Changes = Mapping[str, Spread[Change | None]]
"""By the fact, what work leaves of it in each home; nothing where it stays as it was."""


def everywhere(homes: Homes, changes: Mapping[str, Value]) -> Changes:
    """Return changes that are the same in every home."""
    return {
        key: Spread.of(homes, (), NOWHERE, (Change(type(value), value),))
        for key, value in changes.items()
    }
