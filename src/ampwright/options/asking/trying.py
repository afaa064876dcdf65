"""Drawn homes tried with the choices that lead most often, until one holds in each.

Where homes differ in a hundred facts, all options of all of them are too many. What leads is
mostly the same: the setting that the network and the cars ask for, on the home's own earth, from
its board, by the first cable that suits. Those are tried in the firm's order, and what each
home's own checks name is mended. Good enough for a range and a question; a design is never made
of it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Missing
from ampwright.foundations.checks import Outcome, verdict
from ampwright.foundations.stages import Made

from ..choices import DIMENSIONS, Choice, Choosing
from ..laying import Laid, Remedies, changes_of, mended
from ..outlook import NUMBERS
from ..runs import Cut, Exploring, Ran
from ..search import MOST_REMEDIES, weighty
from ..spread import NOWHERE, Index, Spread, trimmed
from ..supply_side import Decision
from ..truth import levels
from .drawn import HOME, DrawnHomes, DrawnLifter, homes_in
from .remaining import SAYS, Remaining, Said

Numbers = NDArray[np.float64]
Where = NDArray[np.bool_]
HOLDS: Final = (Outcome.PASS,)
MOST_ROUNDS: Final = 8
"""How often what failed is mended and run again."""


@dataclass(slots=True)
class Found:
    """What was found in each of the drawn homes; no price where no choice holds.

    ``lacking`` gives, for each blank fact, the homes in which something cannot be said for it.
    """

    decision: Index
    low_p: Numbers
    usual_p: Numbers
    high_p: Numbers
    choice: list[Choice | None]
    says: dict[str, list[Any]]
    lacking: dict[str, Where]
    sound: NDArray[np.bool_]
    calls: int = 0


def nothing_found(count: int) -> Found:
    """Return the start: a stop in every home, until some choice holds."""
    return Found(
        decision=np.full(count, NUMBERS[Decision.STOP_UNTIL], np.int64),
        low_p=np.full(count, np.nan),
        usual_p=np.full(count, np.nan),
        high_p=np.full(count, np.nan),
        choice=[None] * count,
        says={name: [None] * count for name in SAYS},
        lacking={},
        sound=np.zeros(count, bool),
    )


def laid_over(spread: Spread[Any], count: int) -> Index:
    """Return which of its values a spread has in each drawn home."""
    return np.broadcast_to(spread.index, (count,)) if spread.index.ndim == 0 else spread.index


class Trying:
    """Some drawn homes with the work that was laid over each, as far as it went."""

    def __init__(self, homes: DrawnHomes, basis: Basis) -> None:
        self.homes, self.basis = homes, basis
        self.count = len(homes.open[HOME])
        self.base = DrawnLifter(homes)
        nothing: Laid = Spread.of(homes, (), NOWHERE, ((),))
        self._lifters: dict[Any, DrawnLifter] = {nothing: self.base}
        self.nothing = nothing

    def beside(self, laid: Laid) -> Trying:
        """Return a trial of the same homes from some work on; takes over what all homes share."""
        other = Trying(self.homes, self.basis)
        start = DrawnLifter(self.homes, changes_of(laid), (self._lifters[laid], self.base))
        other._lifters[laid] = start
        return other

    def ask_only(self, wanted: NDArray[np.bool_]) -> None:
        """Leave homes out of all that is run from now on."""
        cells = sum(1 << home for home in np.flatnonzero(wanted).tolist())
        for lifter in self._lifters.values():
            lifter.asked = cells

    def mended(
        self, choice: Choice, work: Callable[[Exploring, Any], Any], laid: Laid
    ) -> tuple[Any, list[Ran], Laid]:
        """Return what some work makes once each home's own failures are mended as it names.

        Nothing where it fails in every home all the same.
        """
        for _ in range(MOST_ROUNDS):
            lifter = self._lifters[laid]
            made = {name: getattr(choice, name) for name in DIMENSIONS}
            run = Exploring(lifter, Choosing(made, laid.part("(work)", lambda each: each or ())))
            try:
                out = work(run, run.choice.as_choice)
            except Cut:
                out = None
            further = self._further(run.ran, laid, lifter.asked)
            if further is None:
                break
            if further not in self._lifters:
                new = DrawnLifter(self.homes, changes_of(further), (lifter, self.base))
                new.asked = lifter.asked
                self._lifters[further] = new
            laid = further
        return out, run.ran, laid

    @property
    def calls(self) -> int:
        """How often a stage was run."""
        return sum(each.calls for each in self._lifters.values())

    def _further(self, ran: list[Ran], laid: Laid, asked: int) -> Laid | None:
        """Return the work with what failed checks name besides; nothing if no home names more.

        Of each home the first stage that fails counts: what comes after it stands on that.
        """
        wanted: list[dict[str, Any] | None] = [None] * self.count
        for each in ran:
            if Outcome.FAIL not in each.outcome.values:
                continue
            apart = self.homes.apart_in(each.made)
            for number, value in enumerate(each.made.values):
                if isinstance(value, Missing) or verdict(value.checks) is not Outcome.FAIL:
                    continue
                failing = asked if apart is None else asked & apart.having.get(number, 0)
                work = first_mending(value)
                for cell in homes_in(failing):
                    wanted[cell] = work
                asked &= ~failing
        return self._with(laid, wanted)

    def _with(self, laid: Laid, wanted: list[dict[str, Any] | None]) -> Laid | None:
        if not any(wanted):
            return None
        before = [laid.values[i] or () for i in laid_over(laid, self.count).tolist()]
        after = [
            has if more is None else with_more(has, more)
            for has, more in zip(before, wanted, strict=True)
        ]
        if after == before:
            return None
        numbers = {work: number for number, work in enumerate(dict.fromkeys(after))}
        index = np.asarray([numbers[work] for work in after], np.int64)
        return trimmed(self.homes, (HOME,), index, tuple(numbers))


def with_more(has: Remedies, more: Mapping[str, Any]) -> Remedies:
    """Return some work with more of it, by slug; as it was where that is more than one job."""
    slugs = {remedy.slug for remedy in has}
    new = [each for slug, each in more.items() if slug not in slugs]
    if not new or weighty(slugs.union(more)) > MOST_REMEDIES:
        return has
    return tuple(sorted((*has, *new), key=lambda remedy: remedy.slug))


def first_mending(made: Made[Any]) -> dict[str, Any] | None:
    """Return the first work that mends a result whole, by slug; nothing where none does."""
    sets = list(mended(made))[len(made.offers) :]
    return {remedy.slug: remedy for remedy in sets[0]} if sets else None


def severity(ran: list[Ran], count: int) -> Index:
    """Return the worst outcome of some stages in each home: 0 holds, 1 cannot be said, 2 fails."""
    worst = np.zeros(count, np.int64)
    for each in ran:
        if each.outcome.values != HOLDS:
            worst = np.maximum(worst, levels(each.outcome)[laid_over(each.outcome, count)])
    return worst


def numbers_of(spread: Any, count: int, missing: float = np.nan) -> Numbers:
    """Return a number in each home; what is missing is as it says."""
    values = [missing if isinstance(each, Missing) else float(each) for each in spread.values]
    return np.asarray(values)[laid_over(spread, count)]


def remaining_of(homes: DrawnHomes, found: Found) -> Remaining:
    """Return drawn homes with what leads in each."""
    count = len(found.sound)
    return Remaining(
        values=homes.among,
        numbers=homes.numbers,
        weights=np.full(count, 1 / count),
        decision=found.decision,
        low_p=found.low_p,
        usual_p=found.usual_p,
        high_p=found.high_p,
        says={name: numbered(each) for name, each in found.says.items()},
        lacking={key: float(where.mean()) for key, where in found.lacking.items()},
        draws=count,
    )


def numbered(each: list[Any]) -> Said:
    """Return the distinct ones of something in each home, and which of them each has."""
    numbers: dict[Any, int] = {}
    at = [numbers.setdefault(value, len(numbers)) for value in each]
    return tuple(numbers), np.asarray(at)
