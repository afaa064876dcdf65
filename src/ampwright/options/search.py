"""The walk through the tree of choices, with every rejection counted and its mending tried.

A branch that fails in every home is cut at the stage that fails, and stands for every full
choice beneath it. When all the failed checks name remedies, the same branch is walked again
with those remedies laid over the homes.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from itertools import product
from typing import Any, Generic, TypeVar

from ampwright.foundations.answers import Missing
from ampwright.foundations.checks import Check, Outcome
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.stages import Made

from .choices import DIMENSIONS, Choice, Choosing, Menu, Pick, leaves_under
from .runs import Cut, Exploring, Ran, Run
from .spread import Lifter
from .truth import Truth, truth_of

D = TypeVar("D")
Work = Callable[[Run, Choice], D]
"""A description of the work: runs stages, asks for choices, returns what it made."""

MOST_REMEDIES = 4
"""How many remedies may be laid over one branch; more means another job, not this one."""


@dataclass(frozen=True, slots=True, eq=False)
class Option(Generic[D]):
    """One full choice that holds in at least one home, with what it comes to in each."""

    choice: Choice
    design: D
    ran: tuple[Ran, ...]
    sound: Truth

    @property
    def id(self) -> str:
        """The choice as a slug."""
        return self.choice.slug


@dataclass(frozen=True, slots=True, eq=False)
class Rejection:
    """A branch that was closed: what was chosen so far, what failed, how much it stood for.

    ``checks`` holds each failed check once; a choice that fails here in some homes and there
    in the others names both.
    """

    made: Mapping[str, Any]
    remedies: tuple[Remedy, ...]
    checks: tuple[Check, ...]
    stands_for: int


@dataclass(slots=True)
class Searched(Generic[D]):
    """Everything the walk found; ``considered`` counts full choices, also those with remedies."""

    options: list[Option[D]] = field(default_factory=list)
    rejections: list[Rejection] = field(default_factory=list)
    considered: int = 0
    calls: int = 0


@dataclass(frozen=True, slots=True)
class Branch:
    """A place to walk from: the choices made, and the remedies laid over the homes."""

    made: tuple[tuple[str, Any], ...] = ()
    remedies: tuple[Remedy, ...] = ()

    @property
    def laid(self) -> frozenset[str]:
        """The slugs of the remedies laid over the homes."""
        return frozenset(remedy.slug for remedy in self.remedies)


class Walk(Generic[D]):
    """One walk through all choices over all homes."""

    def __init__(self, lifter: Lifter, menu: Menu, work: Work[D]) -> None:
        self.homes, self.menu, self.work = lifter.homes, menu, work
        self.found: Searched[D] = Searched()
        self._lifters: dict[tuple[Remedy, ...], Lifter] = {(): lifter}
        self._seen: set[tuple[frozenset[tuple[str, Any]], frozenset[str]]] = set()
        self._branches: list[Branch] = []
        self._walked: dict[frozenset[str], list[frozenset[tuple[str, Any]]]] = {}

    def run(self) -> Searched[D]:
        """Walk from the root, then along every branch that a remedy opens."""
        self._queue(Branch())
        while self._branches:
            branch = self._branches.pop(0)
            self.found.considered += leaves_under(self.menu, dict(branch.made))
            self._walk(branch)
        self.found.calls = sum(lifter.calls for lifter in self._lifters.values())
        return self.found

    def _queue(self, branch: Branch) -> None:
        key = (frozenset(branch.made), branch.laid)
        if key not in self._seen:
            self._seen.add(key)
            self._branches.append(branch)

    def _lifter(self, remedies: tuple[Remedy, ...]) -> Lifter:
        if remedies not in self._lifters:
            changes = {key: value for remedy in remedies for key, value in remedy.changes}
            laid = self.homes.with_changes(changes)
            self._lifters[remedies] = Lifter(laid, changes, tuple(self._lifters.values()))
        return self._lifters[remedies]

    def _walk(self, branch: Branch) -> None:
        """Walk one branch, leaving out what was walked with the same remedies from elsewhere."""
        lifter = self._lifter(branch.remedies)
        earlier = self._walked.setdefault(branch.laid, [])
        waiting: list[dict[str, Any]] = [dict(branch.made)]
        while waiting:
            made = waiting.pop()
            if any(start <= made.items() for start in earlier):
                self.found.considered -= leaves_under(self.menu, made)
                continue
            choice = Choosing(made, branch.remedies)
            run = Exploring(lifter, choice)
            try:
                design = self.work(run, choice.as_choice)
            except Pick as pick:
                values = reversed(self.menu[pick.dimension])
                waiting += ({**made, pick.dimension: value} for value in values)
            except Cut:
                self._reject(made, branch, run.ran[-1:])
                self._mend(made, branch, run.ran)
            else:
                self._keep(made, branch, run, design)
                self._mend(made, branch, run.ran)
        earlier.append(frozenset(branch.made))

    def _keep(self, made: dict[str, Any], branch: Branch, run: Exploring, design: D) -> None:
        unread = [name for name in DIMENSIONS if name not in made]
        if unread:
            raise AssertionError(f"the work never asks for {', '.join(unread)}")
        sound = truth_of(run.lifter.homes, [each.outcome for each in run.ran])
        if sound.never:
            self._reject(made, branch, run.ran)
            return
        self.found.options.append(
            Option(Choice(**made, remedies=branch.remedies), design, tuple(run.ran), sound)
        )

    def _reject(self, made: dict[str, Any], branch: Branch, ran: list[Ran]) -> None:
        checks: dict[Check, None] = {}
        for each in ran:
            for value in each.made.values:
                if isinstance(value, Made):
                    checks.update(
                        (check, None) for check in value.checks if check.outcome is Outcome.FAIL
                    )
        self.found.rejections.append(
            Rejection(made, branch.remedies, tuple(checks), leaves_under(self.menu, made))
        )

    def _mend(self, made: dict[str, Any], branch: Branch, ran: list[Ran]) -> None:
        """Queue the same branch with what would mend each way in which it fails."""
        for each in ran:
            for value in each.made.values:
                for remedies in mended(value):
                    new = [r for r in remedies if r not in branch.remedies]
                    laid = tuple(sorted((*branch.remedies, *new), key=lambda r: r.slug))
                    if new and len(laid) <= MOST_REMEDIES:
                        prefix = tuple((name, made[name]) for name in each.asked)
                        self._queue(Branch(prefix, laid))


def mended(value: Made[Any] | Missing) -> Iterator[tuple[Remedy, ...]]:
    """Yield each set of remedies that would mend one result whole, or better it."""
    if isinstance(value, Missing):
        return
    yield from ((offer,) for offer in value.offers)
    failed = [check for check in value.checks if check.outcome is Outcome.FAIL]
    if failed and all(check.remedies for check in failed):
        for chosen in product(*(check.remedies for check in failed)):
            yield tuple({remedy.slug: remedy for remedy in chosen}.values())
