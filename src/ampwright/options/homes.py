"""The homes that the facts allow: what is known, what is open, and the view that forks.

A complete home is the case with nothing open; the same reader serves both.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import product
from typing import Any

from ampwright.foundations.answers import Unanswered, Value
from ampwright.survey.home import Home

Build = Callable[[Any], Home]
"""Makes the typed view of a home over a reader."""


class Fork(Exception):  # noqa: N818 - not an error: the reader asks for one value to be fixed
    """A stage read a fact that is still open."""


class ForkingReader:
    """Gives values of a partly fixed home; the first read of a still open fact forks.

    ``seen`` gathers every fact that was read, whether it has a value or not.
    """

    __slots__ = ("asked", "fixed", "known", "open", "seen")

    def __init__(self, known: Mapping[str, Value], open_: Mapping[str, tuple[Value, ...]]) -> None:
        self.known = known
        self.open = open_
        self.fixed: Mapping[str, Value] = {}
        self.asked = ""
        self.seen: set[str] = set()

    def read(self, key: str) -> Any:
        """Return the value of a fact; raises ``Fork`` when open, ``Unanswered`` when blank."""
        self.seen.add(key)
        if key in self.known:
            return self.known[key]
        if key in self.fixed:
            return self.fixed[key]
        if key in self.open:
            self.asked = key
            raise Fork
        raise Unanswered(key)


@dataclass(frozen=True, eq=False)
class Homes:
    """All homes the facts allow: one value for each open fact, beside what is known.

    ``open`` gives the possible values of each open fact and ``chances`` how common each is,
    in the same order. ``pool`` holds each result over these homes once, also with changes laid
    over them, so that equal results are the same result.
    """

    known: Mapping[str, Value]
    open: Mapping[str, tuple[Value, ...]]
    chances: Mapping[str, tuple[float, ...]]
    build: Build
    pool: dict[Any, Any] = field(default_factory=dict, repr=False)
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

    def with_changes(self, changes: Mapping[str, Value]) -> Homes:
        """Return the same homes with some facts laid over: what a remedy would leave."""
        if not changes:
            return self
        still = {key: values for key, values in self.open.items() if key not in changes}
        chances = {key: self.chances[key] for key in still}
        return Homes({**self.known, **changes}, still, chances, self.build, self.pool)

    def narrowed_to(self, keys: Iterable[str]) -> Homes:
        """Return homes in which only some of the open facts are open; the rest are blank."""
        wanted = set(keys)
        still = {key: values for key, values in self.open.items() if key in wanted}
        return Homes(self.known, still, {key: self.chances[key] for key in still}, self.build)

    def each(self) -> Iterator[tuple[dict[str, Value], Home]]:
        """Yield every home as its fixed values and its view: the plain loop."""
        for combination in product(*self.open.values()):
            fixed = dict(zip(self.open, combination, strict=True))
            yield fixed, self.one(fixed)

    def one(self, fixed: Mapping[str, Value]) -> Home:
        """Return the view of the one home in which the open facts have these values."""
        return self.build(ForkingReader({**self.known, **fixed}, {}))
