"""What can be said of a job: the decision, the options, every rejection, what is still open."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Final

import numpy as np

from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Missing
from ampwright.foundations.checks import Check, Requirement

from .cells import Cells
from .criteria import NONE
from .cutting import finer
from .homes import Homes
from .lifting import Lifter
from .menu import menu_of
from .ranking import Ranking, bare, rank
from .search import Option, Rejection, Searched, Walk
from .spread import Index, Spread
from .staged import Staged, staged
from .supply_side import Decision
from .work import Design, work_of

DECISIONS: Final = tuple(Decision)
NUMBERS: Final = {decision: i for i, decision in enumerate(DECISIONS)}
MOST_CHANGED: Final = 200
"""Of how many drawn homes each fact is changed alone, to see whether it decides."""


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
    open facts on which it turns; ``lacking`` the blank facts in the way. What the chances are
    worth where homes were drawn, the cells of the ranking say.
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
        leading, cells = self.ranking.leading, self.ranking.cells
        chances = {
            number: cells.chance(leading == number)
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
    """Work out everything that follows from the facts of a home.

    Ranges are cut until nothing changes between two of their points that could be cut further.
    """
    searched = walked(homes, basis)
    while (more := finer(homes, searched.options)) is not None:
        homes, searched = more, walked(more, basis)
    ranking = rank(homes, searched.options)
    decisions, deciding = decide(ranking)
    return Outlook(basis, homes, searched, ranking, decisions, deciding, lacking(ranking.front))


def walked(homes: Homes, basis: Basis) -> Searched[Design]:
    """Return what one walk through every choice finds over the homes."""
    lifter = Lifter(homes)
    return Walk(lifter, menu_of(lifter, basis), work_of(basis)).run()


def decide(ranking: Ranking) -> tuple[dict[Decision, float], tuple[str, ...]]:
    """Return the chance of each decision some home leads to, and the facts it turns on.

    The decision of a home is that of the leading choice there, or of the best where that choice
    does not hold.
    """
    cells = ranking.cells
    found = decided(ranking, cells, ranking.leading)
    chances = {
        DECISIONS[number]: cells.chance(found == number) for number in np.unique(found).tolist()
    }
    return chances, turning(ranking, found)


def decided(ranking: Ranking, cells: Cells, leading: Index) -> Index:
    """Return the decision of each cell by its number, from the option that leads there."""
    found = np.full(cells.count, NUMBERS[Decision.STOP_UNTIL], np.int64)
    for i in np.unique(leading[leading != NONE]).tolist():
        here = leading == i
        found = np.where(here, decisions_of(ranking.options[i], cells), found)
    return found


def turning(ranking: Ranking, found: Index) -> tuple[str, ...]:
    """Return the facts of which a change alone changes the decision of some home.

    Of drawn homes only some are changed: a fact that decides in few of them may be missed.
    """
    cells = ranking.cells
    if cells.draws:
        changed, of, facts = cells.beside(MOST_CHANGED)
        unlike = decided(ranking, changed, ranking.leading_in(changed)) != found[of]
        return tuple(fact for i, fact in enumerate(cells.facts) if bool(unlike[facts == i].any()))
    sizes = tuple(len(cells.homes.open[fact]) for fact in cells.facts)
    every = cells.unruled()
    likely = (every.weights > 0).reshape(sizes)
    if every is not cells:
        found = decided(ranking, every, ranking.leading_in(every))
    found = found.reshape(sizes)
    return tuple(
        fact
        for axis, fact in enumerate(cells.facts)
        if bool(((found.min(axis) != found.max(axis)) & likely.any(axis)).any())
    )


def decisions_of(option: Option[Design], cells: Cells) -> Index:
    """Return the number of the decision that an option means in each home."""
    spread: Any = option.design.decision
    unsure = option.sound.at(cells) == 1
    return np.where(
        unsure, NUMBERS[Decision.UNDETERMINED], decision_numbers(spread)[cells.at(spread)]
    )


def decision_numbers(decision: Spread[Decision]) -> Index:
    """Return the number of each decision that some home leads to; missing is undetermined."""
    values: tuple[Decision | Missing, ...] = decision.values
    known = (Decision.UNDETERMINED if isinstance(each, Missing) else each for each in values)
    return np.asarray([NUMBERS[each] for each in known], np.int64)


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
