"""The homes that the facts allow: what is known, what is open, and the view of one.

A complete home is the case with nothing open; the same reader serves both.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from itertools import product
from typing import Any, NamedTuple, Protocol

from ampwright.firm.together import GoesWith
from ampwright.foundations.answers import Unanswered, Value
from ampwright.survey.home import Home

from .memory import BLANK, Memory

Build = Callable[[Any], Home]
"""Makes the typed view of a home over a reader."""


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

Can = Callable[[str], tuple[Value, ...]]
"""The values that an open fact can have."""


class HomeReader:
    """Gives values of a partly known home; takes the first of a fact that is still open.

    ``changes`` are laid over the homes and ``can`` gives the values that an open fact can have.
    ``fixed`` holds those taken so, beside the ones it began with; ``seen`` every fact that was
    read with its value, whether it has one or not, in order.
    """

    __slots__ = ("can", "changes", "fixed", "known", "open", "seen")

    def __init__(
        self,
        known: Mapping[str, Value],
        open_: Mapping[str, tuple[Value, ...]],
        changes: Changes | None = None,
    ) -> None:
        self.known = known
        self.open = open_
        self.changes = changes or {}
        self.can: Can = open_.__getitem__
        self.fixed: dict[str, Value] = {}
        self.seen: dict[str, Any] = {}

    def read(self, key: str) -> Any:
        """Return the value of a fact; raises ``Unanswered`` when blank."""
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
        if key in self.open:
            if key not in self.fixed:
                self.fixed[key] = self.can(key)[0]
            value = seen[key] = self.fixed[key]
            return value
        raise Unanswered(key)

    def _change(self, changed: Changed) -> Change | None:
        """Return what becomes of a fact here."""
        for fact in changed.facts:
            if fact not in self.fixed:
                self.fixed[fact] = self.can(fact)[0]
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

    def knowing(self, answers: Mapping[str, Value]) -> Homes:
        """Return the homes that are left where some facts are known."""
        still = {key: values for key, values in self.open.items() if key not in answers}
        return replace(
            self,
            known={**self.known, **answers},
            open=still,
            chances={key: self.chances[key] for key in still},
            pool={},
        )

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
        return self.build(HomeReader({**self.known, **fixed, **(changes or {})}, {}))
