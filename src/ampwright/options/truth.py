"""In which of the possible homes something passes, fails or cannot be said yet."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property, reduce

import numpy as np
from numpy.typing import NDArray

from ampwright.foundations.answers import Missing, Value
from ampwright.foundations.checks import Outcome

from .cells import Cells, size_of
from .chances import most_usual
from .homes import Homes
from .spread import Spread, in_order

SEVERITY = {Outcome.PASS: 0, Outcome.NOT_APPLICABLE: 0, Outcome.UNDETERMINED: 1, Outcome.FAIL: 2}
OUTCOMES = (Outcome.PASS, Outcome.UNDETERMINED, Outcome.FAIL)
Severities = NDArray[np.int8]


@dataclass(frozen=True, eq=False)
class Truth:
    """The worst outcome of some checks in each home, over only the facts that matter.

    ``plain`` is what the checks come to that are alike in every home, and ``parts`` the others:
    0 passes, 1 cannot be said yet, 2 fails.
    """

    homes: Homes
    facts: tuple[str, ...]
    plain: int
    parts: tuple[Spread[Outcome], ...]

    @cached_property
    def cells(self) -> Cells:
        """The homes told apart by the facts that matter."""
        return Cells.over(self.homes, self.facts)

    @cached_property
    def severity(self) -> Severities:
        """The worst outcome in each of the cells."""
        return np.broadcast_to(self.at(self.cells), (self.cells.count,))

    @cached_property
    def _laid_out(self) -> Severities | None:
        """The worst outcome with an axis for each fact; nothing where that is too much."""
        if size_of(self.homes, self.facts) > self.homes.drawing.most:
            return None
        start = np.full((1,) * len(self.facts), self.plain, np.int8)
        laid = (severities(each).reshape(shape_over(each, self.facts)) for each in self.parts)
        joint = reduce(np.maximum, sorted(laid, key=lambda array: array.size), start)
        sizes = tuple(len(self.homes.open[fact]) for fact in self.facts)
        return np.ascontiguousarray(np.broadcast_to(joint, sizes)).reshape(-1)

    def at(self, cells: Cells) -> Severities:
        """Return the worst outcome in each of some cells; a single one if all are alike."""
        if not self.facts:
            return np.asarray(self.plain, np.int8)
        if self._laid_out is not None:
            return self._laid_out[cells.place(self.facts)]
        each = (levels(part)[cells.at(part)] for part in self.parts)
        return reduce(np.maximum, each, np.asarray(self.plain, np.int8))

    @property
    def never(self) -> bool:
        """Whether it fails in every home."""
        if not self.facts:
            return self.plain == 2
        return bool((self.severity == 2).all())

    @property
    def always(self) -> bool:
        """Whether it passes in every home."""
        return bool((self.severity == 0).all())

    @property
    def possible(self) -> frozenset[Outcome]:
        """Every outcome that some home gives."""
        return frozenset(OUTCOMES[int(level)] for level in np.unique(self.severity))

    def in_home(self, fixed: Mapping[str, Value]) -> Outcome:
        """Return the outcome in the home where the open facts have these values."""
        here = [severity_of(part.in_home(fixed)) for part in self.parts]
        return OUTCOMES[max([self.plain, *here])]

    def chance(self, outcome: Outcome) -> float:
        """Return how likely an outcome is, from how common each value of the facts is."""
        return self.cells.chance(self.severity == SEVERITY[outcome])

    def most_usual_home(self) -> dict[str, Value]:
        """Return a value for each open fact: the likeliest of the homes where it is soundest.

        Facts that do not bear on it take the value that is most common beside the others.
        """
        soundest = self.severity == self.severity.min()
        likeliest = int(np.argmax(np.where(soundest, self.cells.weights, -1.0)))
        return most_usual(self.homes, self.cells.home(likeliest))


def truth_of(homes: Homes, outcomes: Iterable[Spread[Outcome]]) -> Truth:
    """Combine outcomes: the worst in each home, each over its own facts only; kept."""
    return truth_from(homes, 0, outcomes)


def truth_from(homes: Homes, plain: int, outcomes: Iterable[Spread[Outcome]]) -> Truth:
    """Combine outcomes with what others come to that are alike in every home; kept."""
    parts: dict[Spread[Outcome], None] = {}
    for each in dict.fromkeys(outcomes):
        if each.facts:
            parts[each] = None
        else:
            plain = max(plain, severity_of(each.only))
    key = (truth_from, plain, frozenset(parts))
    made: Truth | None = homes.pool.get(key)
    if made is None:
        facts = in_order(homes, (fact for each in parts for fact in each.facts))
        made = homes.pool[key] = Truth(homes, facts, plain, tuple(parts))
    return made


def severity_of(outcome: Outcome | Missing) -> int:
    """Return 0, 1 or 2; what is missing cannot be said yet."""
    return 1 if isinstance(outcome, Missing) else SEVERITY[outcome]


def levels(spread: Spread[Outcome]) -> Severities:
    """Return the severity of each value of a spread."""
    return np.asarray([severity_of(value) for value in spread.values], np.int8)


def severities(spread: Spread[Outcome]) -> Severities:
    """Return the severity in each home, over the facts of the spread."""
    return levels(spread)[spread.index]


def shape_over(spread: Spread[Outcome], facts: tuple[str, ...]) -> tuple[int, ...]:
    """Return the shape of a spread laid out over more facts."""
    return tuple(len(spread.homes.open[f]) if f in spread.facts else 1 for f in facts)
