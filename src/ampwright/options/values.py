"""The value that a fact has in some homes: the one order in which it is looked for.

What work laid over the homes leaves of it comes first, then what is known, then its value in each
home where it is open. A fact with none of these is blank. Homes of which only some have a value
are parted from the rest; how, hangs on how they are told apart.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from itertools import product
from typing import Any, Generic, NamedTuple, Protocol, TypeVar

from ampwright.foundations.answers import Unanswered, Value

from .memory import BLANK


class Change(NamedTuple):
    """What work leaves a fact at; the kind tells yes from one, which are equal numbers."""

    kind: type
    value: Value


class Changed(Protocol):
    """What becomes of one fact in each home: a change, or nothing where it stays as it was."""

    @property
    def facts(self) -> tuple[str, ...]:
        """The open facts on which that depends."""
        ...

    def in_home(self, fixed: Mapping[str, Value], /) -> Change | None:
        """Return what becomes of it in the home where the open facts have these values."""
        ...


Can = Callable[[str], tuple[Value, ...]]
"""The values that an open fact can have."""

C = TypeVar("C", bound=Changed)
H = TypeVar("H")
"""Some of the homes, by whatever sets them apart from the others."""


class Values(ABC, Generic[H, C]):
    """Gives the values that facts have in some homes, and which of them have each.

    ``known`` are the facts that have one value in all homes, ``changes`` what work leaves of some.
    """

    __slots__ = ("changes", "known")

    def __init__(self, known: Mapping[str, Value], changes: Mapping[str, C]) -> None:
        self.known, self.changes = known, changes

    def of(self, fact: str, here: H) -> Iterable[tuple[Any, H]]:
        """Return each value of a fact in some homes, blank as well, and the homes that have it."""
        if fact in self.changes:
            return self._after_work(fact, here)
        return self._before_work(fact, here)

    def _after_work(self, fact: str, here: H) -> Iterator[tuple[Any, H]]:
        for change, there in self._changed(self.changes[fact], here):
            if change is not None:
                yield change.value, there
            else:
                yield from self._before_work(fact, there)

    def _before_work(self, fact: str, here: H) -> Iterable[tuple[Any, H]]:
        if fact in self.known:
            return ((self.known[fact], here),)
        return self._open(fact, here) or ((BLANK, here),)

    @abstractmethod
    def first(self, here: H) -> H:
        """Return the first of some homes, or all where nothing tells them apart yet."""

    @abstractmethod
    def _changed(self, changed: C, here: H) -> Iterable[tuple[Change | None, H]]:
        """Return what becomes of a fact in some homes, and in which of them."""

    @abstractmethod
    def _open(self, fact: str, here: H) -> Sequence[tuple[Any, H]]:
        """Return the values of an open fact in some homes; none of a fact that is not open."""


Fixed = Mapping[str, Value]
"""The homes in which some open facts have these values."""


class Forking(Values[Fixed, Changed]):
    """Fixes open facts one after the other, each when it is looked at.

    ``can`` gives the values that an open fact can have; without it, all of ``open``.
    """

    __slots__ = ("can", "open")

    def __init__(
        self,
        known: Mapping[str, Value],
        open_: Mapping[str, tuple[Value, ...]],
        changes: Mapping[str, Changed],
        can: Can | None = None,
    ) -> None:
        super().__init__(known, changes)
        self.open, self.can = open_, can or open_.__getitem__

    def where(self, can: Can) -> Forking:
        """Return the same for a place where open facts can have fewer values."""
        return Forking(self.known, self.open, self.changes, can)

    def first(self, here: Fixed) -> Fixed:
        """Return the homes as they are: which is the first shows as facts are looked at."""
        return here

    def _changed(self, changed: Changed, here: Fixed) -> Iterator[tuple[Change | None, Fixed]]:
        wanted = [fact for fact in changed.facts if fact not in here]
        for values in product(*map(self.can, wanted)):
            there = {**here, **dict(zip(wanted, values, strict=True))} if wanted else here
            yield changed.in_home(there), there

    def _open(self, fact: str, here: Fixed) -> Sequence[tuple[Any, Fixed]]:
        if fact in here:
            return ((here[fact], here),)
        if fact in self.open:
            return [(value, {**here, fact: value}) for value in self.can(fact)]
        return ()


class HomeReader(Generic[H]):
    """Reads the facts of one home: of homes that differ in a fact, of the first of them.

    ``here`` are the homes in which all is as it was read so far, and ``seen`` every fact that was
    read with its value, whether it has one or not, in order.
    """

    __slots__ = ("here", "seen", "values")

    def __init__(self, values: Values[H, Any], here: H) -> None:
        self.begin(values, here)

    def begin(self, values: Values[H, Any], here: H) -> None:
        """Begin anew, in the first of some homes."""
        self.values, self.here = values, values.first(here)
        self.seen: dict[str, Any] = {}

    def read(self, key: str) -> Any:
        """Return the value of a fact; raises ``Unanswered`` when blank."""
        value, self.here = next(iter(self.values.of(key, self.here)))
        self.seen[key] = value
        if value is BLANK:
            raise Unanswered(key)
        return value
