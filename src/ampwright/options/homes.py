"""The homes that the facts allow: what is known, what is open, and the view of one.

A complete home is the case with nothing open.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from itertools import product
from typing import Any, NamedTuple

from ampwright.firm.together import GoesWith
from ampwright.foundations.answers import Value
from ampwright.survey.home import Home

from .memory import Memory
from .values import Fixed, Forking, HomeReader

Build = Callable[[Any], Home]
"""Makes the typed view of a home over a reader."""


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
        return self.build(self.reader({**fixed, **(changes or {})}))

    def reader(self, fixed: Mapping[str, Value]) -> HomeReader[Fixed]:
        """Return what reads the one home in which some facts have these values."""
        return HomeReader(Forking({**self.known, **fixed}, {}, {}), {})
