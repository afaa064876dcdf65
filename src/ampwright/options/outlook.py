"""What can be said of a job: the decision, the options, every rejection, what is still open."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np

from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Missing
from ampwright.foundations.checks import Check, Requirement

from .homes import Homes
from .menu import menu_of
from .ranking import NONE, Ranking, bare, rank, weights_over
from .search import Option, Rejection, Searched, Walk
from .spread import Lifter
from .staged import Staged, staged
from .supply_side import Decision
from .work import Design, work_of


@dataclass(frozen=True, slots=True)
class Reason:
    """Why choices were rejected: the requirement, one failed check of it, and how many."""

    requirement: Requirement
    example: Check
    choices: int


@dataclass(frozen=True, eq=False)
class Outlook:
    """All that follows from the facts held so far.

    ``decisions`` gives each decision that some home leads to, with its chance; ``deciding`` the
    open facts on which it turns; ``lacking`` the blank facts in the way.
    """

    basis: Basis
    homes: Homes
    searched: Searched[Design]
    ranking: Ranking
    decisions: Mapping[Decision, float]
    deciding: tuple[str, ...]
    lacking: tuple[str, ...]

    @property
    def decision(self) -> Decision:
        """The decision, if every home leads to the same one; else undetermined."""
        if len(self.decisions) == 1:
            return next(iter(self.decisions))
        return Decision.UNDETERMINED

    @property
    def recommended(self) -> Option[Design] | None:
        """The option that serves best on the whole of the homes, or none.

        Of its variants with and without remedies, the one that is likeliest to be right.
        """
        leading = self.ranking.leading
        weights = weights_over(self.homes, self.ranking.facts)
        chances = {
            number: float(weights[leading == number].sum())
            for number in np.unique(leading).tolist()
            if number != NONE
        }
        first = {bare(option.choice): None for option in self.ranking.options[:1]}
        own = {n: c for n, c in chances.items() if bare(self.ranking.options[n].choice) in first}
        return self.ranking.options[max(own, key=own.__getitem__)] if own else None

    @cached_property
    def staged(self) -> tuple[Staged, ...]:
        """Each way to fit now and turn up when the network has answered, the best first."""
        return staged(self.ranking)

    @property
    def reasons(self) -> tuple[Reason, ...]:
        """Every requirement that rejected a choice, the most rejecting first."""
        return reasons(self.searched.rejections)


def outlook(homes: Homes, basis: Basis) -> Outlook:
    """Work out everything that follows from the facts of a home."""
    lifter = Lifter(homes)
    searched = Walk(lifter, menu_of(lifter, basis), work_of(basis)).run()
    ranking = rank(homes, searched.options)
    decisions, deciding = decide(homes, ranking)
    return Outlook(basis, homes, searched, ranking, decisions, deciding, lacking(ranking.front))


def decide(homes: Homes, ranking: Ranking) -> tuple[dict[Decision, float], tuple[str, ...]]:
    """Return the chance of each decision some home leads to, and the facts it turns on.

    The decision of a home is that of the leading choice there, or of the best where that choice
    does not hold.
    """
    names = tuple(Decision)
    numbers = {decision: i for i, decision in enumerate(names)}
    found = np.full(ranking.leading.shape, numbers[Decision.STOP_UNTIL], np.int64)
    for i, option in enumerate(ranking.options):
        here = ranking.leading == i
        if here.any():
            each = decisions_of(option, ranking.facts, numbers)
            found = np.where(here, each, found)
    weights = weights_over(homes, ranking.facts)
    turning = tuple(
        fact
        for axis, fact in enumerate(ranking.facts)
        if bool((found != found.take([0], axis)).any())
    )
    chances = {
        names[number]: float(weights[found == number].sum()) for number in np.unique(found).tolist()
    }
    return chances, turning


def decisions_of(
    option: Option[Design], facts: tuple[str, ...], numbers: Mapping[Decision, int]
) -> Any:
    """Return the decision that an option means in each home."""
    spread: Any = option.design.decision
    known = [numbers[Decision.UNDETERMINED if isinstance(v, Missing) else v] for v in spread.values]
    shape = tuple(len(spread.homes.open[f]) if f in spread.facts else 1 for f in facts)
    decided = np.asarray(known)[spread.index].reshape(shape)
    unsure = option.sound.over(facts) == 1
    return np.where(unsure, numbers[Decision.UNDETERMINED], decided)


def lacking(options: Iterable[Option[Any]]) -> tuple[str, ...]:
    """Return the blank facts that some option needs, each once."""
    keys: dict[str, None] = {}
    for option in options:
        for ran in option.ran:
            values: tuple[Any, ...] = ran.made.values
            for value in values:
                if isinstance(value, Missing):
                    keys.update(dict.fromkeys(value.keys))
    return tuple(keys)


def reasons(rejections: Iterable[Rejection]) -> tuple[Reason, ...]:
    """Sum up rejections by requirement; a choice with several failed checks counts for each."""
    counts: defaultdict[Requirement, int] = defaultdict(int)
    examples: dict[Requirement, Check] = {}
    for rejection in rejections:
        for requirement in {check.requirement: None for check in rejection.checks}:
            counts[requirement] += rejection.stands_for
        for check in rejection.checks:
            examples.setdefault(check.requirement, check)
    ordered = sorted(counts, key=lambda requirement: -counts[requirement])
    return tuple(Reason(each, examples[each], counts[each]) for each in ordered)
