"""In which of the possible homes something passes, fails or cannot be said yet."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import reduce

import numpy as np
from numpy.typing import NDArray

from ampwright.foundations.answers import Missing, Value
from ampwright.foundations.checks import Outcome

from .homes import Homes
from .spread import Spread, in_order

SEVERITY = {Outcome.PASS: 0, Outcome.NOT_APPLICABLE: 0, Outcome.UNDETERMINED: 1, Outcome.FAIL: 2}
OUTCOMES = (Outcome.PASS, Outcome.UNDETERMINED, Outcome.FAIL)


@dataclass(frozen=True, slots=True, eq=False)
class Truth:
    """The worst outcome of some checks in each home, over only the facts that matter.

    ``severity`` has one axis for each fact: 0 passes, 1 cannot be said yet, 2 fails.
    """

    homes: Homes
    facts: tuple[str, ...]
    severity: NDArray[np.int8]

    @property
    def never(self) -> bool:
        """Whether it fails in every home."""
        return bool((self.severity == 2).all())

    @property
    def always(self) -> bool:
        """Whether it passes in every home."""
        return bool((self.severity == 0).all())

    @property
    def possible(self) -> frozenset[Outcome]:
        """Every outcome that some home gives."""
        return frozenset(OUTCOMES[int(level)] for level in np.unique(self.severity))

    def in_home(self, fixed: dict[str, Value]) -> Outcome:
        """Return the outcome in the home where the open facts have these values."""
        at = tuple(self.homes.at[fact][fixed[fact]] for fact in self.facts)
        return OUTCOMES[int(self.severity[at])]

    def chance(self, outcome: Outcome) -> float:
        """Return how likely an outcome is, from how common each value of the facts is."""
        hit = (self.severity == SEVERITY[outcome]).astype(np.float64)
        for fact in reversed(self.facts):
            weights = np.asarray(self.homes.chances[fact], np.float64)
            hit = hit @ (weights / weights.sum())
        return float(hit)

    def most_usual_home(self) -> dict[str, Value]:
        """Return a value for each open fact: the likeliest of the homes where it is soundest.

        Facts that do not bear on it take their own most common value.
        """
        homes = self.homes
        usual = {
            fact: homes.open[fact][int(np.argmax(np.asarray(homes.chances[fact])))]
            for fact in homes.open
        }
        if not self.facts:
            return usual
        weight = np.ones(self.severity.shape)
        for axis, fact in enumerate(self.facts):
            shape = tuple(-1 if i == axis else 1 for i in range(len(self.facts)))
            weight = weight * np.asarray(homes.chances[fact]).reshape(shape)
        best = np.where(self.severity == self.severity.min(), weight, -1.0)
        where = np.unravel_index(int(np.argmax(best)), best.shape)
        chosen = zip(self.facts, where, strict=True)
        return {**usual, **{fact: homes.open[fact][int(at)] for fact, at in chosen}}

    def over(self, facts: tuple[str, ...]) -> NDArray[np.int8]:
        """Return the severities laid out over more facts, in their order."""
        shape = tuple(len(self.homes.open[f]) if f in self.facts else 1 for f in facts)
        return self.severity.reshape(shape)


def truth_of(homes: Homes, outcomes: Iterable[Spread[Outcome]]) -> Truth:
    """Combine outcomes: the worst in each home, each over its own facts only."""
    plain, spread = 0, []
    for each in outcomes:
        if each.facts:
            spread.append(each)
        else:
            plain = max(plain, severity_of(each.only))
    if not spread:
        return Truth(homes, (), np.asarray(plain, np.int8))
    facts = in_order(homes, (fact for each in spread for fact in each.facts))
    start = np.full((1,) * len(facts), plain, np.int8)
    laid = (severities(each).reshape(shape_over(homes, each, facts)) for each in spread)
    joint = reduce(np.maximum, sorted(laid, key=lambda array: array.size), start)
    sizes = tuple(len(homes.open[fact]) for fact in facts)
    return Truth(homes, facts, np.ascontiguousarray(np.broadcast_to(joint, sizes)))


def severity_of(outcome: Outcome | Missing) -> int:
    """Return 0, 1 or 2; what is missing cannot be said yet."""
    return 1 if isinstance(outcome, Missing) else SEVERITY[outcome]


def severities(spread: Spread[Outcome]) -> NDArray[np.int8]:
    """Return the severity in each home, over the facts of the spread."""
    return np.asarray([severity_of(value) for value in spread.values], np.int8)[spread.index]


def shape_over(homes: Homes, spread: Spread[Outcome], facts: tuple[str, ...]) -> tuple[int, ...]:
    """Return the shape of a spread laid out over more facts."""
    return tuple(len(homes.open[f]) if f in spread.facts else 1 for f in facts)
