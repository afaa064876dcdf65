"""The homes that the facts allow: what is known, what is open, and the view that forks.

A complete home is the case with nothing open; the same reader serves both.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import product
from typing import Any, NamedTuple, Protocol

from ampwright.firm.together import GoesWith
from ampwright.foundations.answers import Unanswered, Value
from ampwright.survey.home import Home

from .memory import BLANK, Memory

Build = Callable[[Any], Home]
"""Makes the typed view of a home over a reader."""


class Fork(Exception):  # noqa: N818 - not an error: the reader asks for one value to be fixed
    """A stage read a fact that is still open."""


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


Changes = Mapping[str, Changed]
"""By the fact, what work leaves of it in each home."""


class ForkingReader:
    """Gives values of a partly fixed home; the first read of a still open fact forks.

    ``changes`` are laid over the homes. ``seen`` gathers every fact that was read, whether it
    has a value or not, and ``used`` those whose fixed value was looked at.
    """

    __slots__ = ("asked", "changes", "fixed", "known", "open", "seen", "used")

    def __init__(
        self,
        known: Mapping[str, Value],
        open_: Mapping[str, tuple[Value, ...]],
        changes: Changes | None = None,
    ) -> None:
        self.known = known
        self.open = open_
        self.changes = changes or {}
        self.fixed: Mapping[str, Value] = {}
        self.asked = ""
        self.seen: dict[str, Any] = {}
        self.used: set[str] = set()

    def read(self, key: str) -> Any:
        """Return the value of a fact; raises ``Fork`` when open, ``Unanswered`` when blank."""
        seen = self.seen
        seen[key] = BLANK
        if key in self.changes:
            change = self._change(self.changes[key])
            if change is not None:
                seen[key] = change.value
                return change.value
        if key in self.known:
            value = seen[key] = self.known[key]
            return value
        if key in self.fixed:
            self.used.add(key)
            value = seen[key] = self.fixed[key]
            return value
        if key in self.open:
            self.asked = key
            raise Fork
        raise Unanswered(key)

    def _change(self, changed: Changed) -> Change | None:
        """Return what becomes of a fact here; raises ``Fork`` where that is still open."""
        for fact in changed.facts:
            if fact not in self.fixed:
                self.asked = fact
                raise Fork
            self.used.add(fact)
        return changed.in_home(self.fixed)


class Drawing(NamedTuple):
    """Up to how many homes are gone through whole, how many are drawn past that, by what seed."""

    most: int = 1 << 15
    draws: int = 1 << 12
    seed: int = 1


@dataclass(frozen=True, eq=False)
class Homes:
    """All homes the facts allow: one value for each open fact, beside what is known.

    ``open`` gives the possible values of each open fact and ``chances`` how common each is by
    itself, in the same order; ``together`` which facts go together, and counts before it.
    ``steps`` names the open facts of which the values are points of a range, and how fine they
    may become. ``drawing`` says when homes are too many to be gone through one by one.
    ``pool`` holds each result over these homes once, so that equal results are the same result.
    """

    known: Mapping[str, Value]
    open: Mapping[str, tuple[Value, ...]]
    chances: Mapping[str, tuple[float, ...]]
    build: Build
    drawing: Drawing = Drawing()
    together: tuple[GoesWith, ...] = ()
    steps: Mapping[str, float] = field(default_factory=dict)
    pool: dict[Any, Any] = field(default_factory=dict, repr=False)
    memory: Memory = field(default_factory=Memory, repr=False)
    order: Mapping[str, int] = field(init=False)
    at: Mapping[str, Mapping[Value, int]] = field(init=False)

    def __post_init__(self) -> None:
        """Work out once where each open fact and each of its values stands."""
        object.__setattr__(self, "order", {key: i for i, key in enumerate(self.open)})
        object.__setattr__(
            self,
            "at",
            {key: {v: i for i, v in enumerate(values)} for key, values in self.open.items()},
        )

    @property
    def count(self) -> int:
        """How many homes the facts allow."""
        size = 1
        for values in self.open.values():
            size *= len(values)
        return size

    def answers(self, key: str) -> tuple[Value, ...]:
        """Return every value that a fact may have; none for one that is blank."""
        return (self.known[key],) if key in self.known else self.open.get(key, ())

    def there(self, path: str, ids: Iterable[str]) -> tuple[str, ...]:
        """Return the ids of the things of a list that may be there: all but those known gone."""
        return tuple(id_ for id_ in ids if self.answers(f"{path}.{id_}.present") != (False,))

    def narrowed_to(self, keys: Iterable[str]) -> Homes:
        """Return homes in which only some of the open facts are open; the rest are blank."""
        wanted = set(keys)
        still = {key: values for key, values in self.open.items() if key in wanted}
        return self.with_values(still, {key: self.chances[key] for key in still})

    def with_values(
        self, still: Mapping[str, tuple[Value, ...]], chances: Mapping[str, tuple[float, ...]]
    ) -> Homes:
        """Return homes in which other facts are open, or may have other values."""
        return Homes(
            self.known,
            still,
            chances,
            self.build,
            self.drawing,
            self.together,
            self.steps,
            memory=self.memory,
        )

    def each(self) -> Iterator[tuple[dict[str, Value], Home]]:
        """Yield every home as its fixed values and its view: the plain loop."""
        for combination in product(*self.open.values()):
            fixed = dict(zip(self.open, combination, strict=True))
            yield fixed, self.one(fixed)

    def one(self, fixed: Mapping[str, Value], changes: Mapping[str, Value] | None = None) -> Home:
        """Return the one home in which the open facts have these values, after some work."""
        return self.build(ForkingReader({**self.known, **fixed, **(changes or {})}, {}))
