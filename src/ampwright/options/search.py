"""The walk through the tree of choices, with every rejection counted and its mending tried.

A branch that fails in every home is cut at the stage that fails, and stands for every full
choice beneath it. When all the failed checks of a home name remedies, the same branch is walked
again with those remedies laid over that home. Work is told apart by what is done, not by how
much of it: branches with less work are walked first, so that every way to the same work is known
when its turn comes.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final, Generic, TypeVar

from ampwright.foundations.checks import Check, Outcome
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.stages import Made
from ampwright.supply.larger import FUSE

from .choices import DIMENSIONS, Choice, Choosing, Menu, leaves_under
from .laying import Laid, Slugs, called_for, changes_of, laid_further, named, together
from .lifting import Lifter
from .runs import Cut, Exploring, Ran, Run, Step
from .spread import NOWHERE, Spread
from .truth import Truth, truth_of

D = TypeVar("D")
Work = Callable[[Run, Choice], D]
"""A description of the work: runs stages, asks for choices, returns what it made."""

Prefix = frozenset[tuple[str, Any]]
"""The choices made so far; those of one full choice lie one in the other."""

MOST_REMEDIES: Final = 4
"""How many remedies may be laid over one branch; more means another job, not this one."""
BY_THE_WAY: Final = ("notices-", FUSE)
"""How the slugs of work begin that makes no other job of ours: notices, a fuse by the network."""


@dataclass(frozen=True, slots=True, eq=False)
class Option(Generic[D]):
    """One full choice that holds in at least one home, with what it comes to in each.

    ``laid`` is the work it takes in each home; the choice carries that of the most usual home.
    """

    choice: Choice
    design: D
    ran: Sequence[Ran]
    sound: Truth
    laid: Laid

    @property
    def id(self) -> str:
        """The choice as a slug."""
        return self.choice.slug


@dataclass(frozen=True, slots=True, eq=False)
class Rejection:
    """A branch that was closed: what was chosen so far, what failed, how much it stood for.

    ``checks`` holds each failed check once; a choice that fails here in some homes and there
    in the others names both. ``remedies`` are the slugs of the work that was laid.
    """

    made: Mapping[str, Any]
    remedies: Slugs
    checks: tuple[Check, ...]
    stands_for: int


@dataclass(slots=True)
class Searched(Generic[D]):
    """Everything the walk found; ``considered`` counts full choices, also those with remedies.

    A choice with work that none of the homes calls for is not considered. ``menu`` is what there
    was to choose from.
    """

    menu: Menu
    options: list[Option[D]] = field(default_factory=list)
    rejections: list[Rejection] = field(default_factory=list)
    considered: int = 0
    calls: int = 0


@dataclass(frozen=True, slots=True, eq=False)
class Branch:
    """A place to walk from: the choices made, the work laid over the homes, and in which."""

    start: Prefix
    slugs: Slugs
    laid: Laid
    lifter: Lifter


class Elsewhere(Exception):  # noqa: N818 - not an error: this branch is left to another walk
    """What is chosen is walked from deeper down, or there is nothing to choose from."""


class Ways:
    """The ways through the choices from one branch that are still to be walked, the next last.

    Where the work asks for a choice, the first of its values is taken there and then; the others
    wait, each with the steps that were run by then. ``deeper`` are choices from which another
    walk sets out.
    """

    def __init__(self, menu: Menu, start: dict[str, Any], deeper: list[Prefix]) -> None:
        self.menu, self.deeper = menu, deeper
        self.waiting: list[tuple[dict[str, Any], tuple[Step, ...]]] = [(start, ())]
        self.run: Exploring
        self._made: dict[str, Any] = {}

    def next(self) -> tuple[dict[str, Any], tuple[Step, ...]]:
        """Return the choices of the next way, which grow as it is walked, and its steps so far."""
        self._made, before = self.waiting.pop()
        return self._made, before

    def choose(self, dimension: str) -> None:
        """Take the first value of a choice and let the others wait; raises ``Elsewhere``."""
        if not self.menu[dimension]:
            raise Elsewhere
        first, *others = self.menu[dimension]
        steps = tuple(self.run.steps)
        self.waiting += (({**self._made, dimension: each}, steps) for each in reversed(others))
        self._made[dimension] = first
        self.look_deeper()

    def look_deeper(self) -> None:
        """Raise ``Elsewhere`` where another walk sets out from what is chosen by now."""
        if any(start <= self._made.items() for start in self.deeper):
            raise Elsewhere


class Walk(Generic[D]):
    """One walk through all choices over all homes."""

    def __init__(self, lifter: Lifter, menu: Menu, work: Work[D]) -> None:
        self.homes, self.menu, self.work = lifter.homes, menu, work
        self.found: Searched[D] = Searched(menu)
        self._base = lifter
        nothing: Laid = Spread.of(self.homes, (), NOWHERE, ((),))
        self._lifters: dict[Laid, Lifter] = {nothing: lifter}
        self._ways: defaultdict[Slugs, dict[Prefix, list[Laid]]] = defaultdict(dict)
        self._ways[frozenset()] = {frozenset(): [nothing]}

    def run(self) -> Searched[D]:
        """Walk from the root, then all branches that remedies open, those with less work first."""
        while self._ways:
            slugs = min(self._ways, key=lambda each: (len(each), sorted(each)))
            ways = self._ways.pop(slugs)
            for start in sorted(ways, key=len):
                self._walk(self._branch(start, slugs, ways), [p for p in ways if p > start])
        self.found.calls = sum(lifter.calls for lifter in self._lifters.values())
        return self.found

    def _branch(self, start: Prefix, slugs: Slugs, ways: Mapping[Prefix, list[Laid]]) -> Branch:
        """Return the branch at some choices, with all ways that lead there or further up."""
        above = [laid for prefix, each in ways.items() if prefix <= start for laid in each]
        laid = together(self._base, above)
        if laid not in self._lifters:
            near = tuple(self._lifters.values())
            self._lifters[laid] = self._base.like(changes_of(laid), near)
        return Branch(start, slugs, laid, self._lifters[laid])

    def _walk(self, branch: Branch, deeper: list[Prefix]) -> None:
        """Walk one branch, leaving out what is walked from deeper down with the same work."""
        self.found.considered += leaves_under(self.menu, dict(branch.start))
        remedies = branch.laid.part("(work)", lambda work: work or ())
        ways = Ways(self.menu, dict(branch.start), deeper)
        while ways.waiting:
            made, before = ways.next()
            choice = Choosing(made, remedies, ways.choose)
            run = ways.run = Exploring(branch.lifter, choice, before)
            try:
                ways.look_deeper()
                design = self.work(run, choice.as_choice)
            except Elsewhere:
                self.found.considered -= leaves_under(self.menu, made)
            except Cut:
                self._reject(made, branch, run.ran[-1:])
            else:
                self._keep(made, branch, run, design)
            self._note(made, branch, run.new)

    def _keep(self, made: dict[str, Any], branch: Branch, run: Exploring, design: D) -> None:
        unread = [name for name in DIMENSIONS if name not in made]
        if unread:
            raise AssertionError(f"the work never asks for {', '.join(unread)}")
        outcomes = [each.outcome for each in run.ran]
        sound = truth_of(self.homes, [called_for(branch.laid), *outcomes])
        if sound.never:
            self._reject(made, branch, run.ran)
            return
        choice = Choice(**made, remedies=usual_work(branch.laid, sound))
        self.found.options.append(Option(choice, design, tuple(run.ran), sound, branch.laid))

    def _reject(self, made: dict[str, Any], branch: Branch, ran: list[Ran]) -> None:
        checks: dict[Check, None] = {}
        for each in ran:
            for value in each.made.values:
                if isinstance(value, Made):
                    checks.update(
                        (check, None) for check in value.checks if check.outcome is Outcome.FAIL
                    )
        stands_for = leaves_under(self.menu, made)
        if checks:
            self.found.rejections.append(Rejection(made, branch.slugs, tuple(checks), stands_for))
        else:
            self.found.considered -= stands_for

    def _note(self, made: dict[str, Any], branch: Branch, ran: list[Ran]) -> None:
        """Note the same branch with what would mend each way in which it fails."""
        for each in ran:
            wanted = named(each.made, branch.slugs)
            if not wanted:
                continue
            start = branch.start | {(name, made[name]) for name in each.asked}
            for slugs, work in wanted.items():
                if weighty(branch.slugs | slugs) > MOST_REMEDIES:
                    continue
                laid: Laid = self._base.lift(laid_further, branch.laid, work)
                if any(value is not None for value in laid.values):
                    self._ways[branch.slugs | slugs].setdefault(start, []).append(laid)


def usual_work(laid: Laid, sound: Truth) -> tuple[Remedy, ...]:
    """Return the work of the most usual of the homes where it is soundest."""
    work = laid.in_home(sound.most_usual_home()) if laid.facts else laid.only
    return work or ()


def weighty(slugs: Iterable[str]) -> int:
    """Return how many remedies count against the most that one job takes.

    Examples
    --------
    >>> weighty(("bond-water", "notices-main"))
    1
    """
    return sum(not slug.startswith(BY_THE_WAY) for slug in slugs)
