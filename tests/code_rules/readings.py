"""One option read twice: over all homes at once, and in one home with its whole working.

Both run the same description of the work, stage by stage; what they come to is set side by side.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass
from typing import Any

from ampwright.foundations.answers import Missing
from ampwright.foundations.checks import Check
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.working import orphans
from ampwright.options.choices import DIMENSIONS, Choosing
from ampwright.options.documented import Documented, documented
from ampwright.options.held import most_usual_home
from ampwright.options.laying import left_by
from ampwright.options.lifting import Lifter
from ampwright.options.open_homes import documented_home
from ampwright.options.runs import Exploring
from ampwright.options.search import Option
from ampwright.options.spread import Spread, everywhere
from ampwright.options.work import Design, work_of
from tests.journeys.homes import Journey


class Keeping(Exploring):
    """Runs stages over all homes and keeps what each made, asides and notes too."""

    def __init__(self, lifter: Lifter, choice: Choosing) -> None:
        super().__init__(lifter, choice)
        self.made: list[tuple[Any, Spread[Any]]] = []

    def __call__(self, stage, /, *args, **kwargs):
        made = self.lifter.lift(stage, *args, *kwargs.values())
        self.made.append((stage, made))
        return made.out

    aside = __call__
    note = __call__


@dataclass(frozen=True)
class Read:
    """An option with its working, and what exploring says of the same home, stage by stage."""

    option: Option[Design]
    documented: Documented
    explored: tuple[tuple[Any, Any], ...]


def readings(home: Journey, options: list[Option[Design]]) -> Iterator[Read]:
    """Yield each option read both ways, in the most usual of the homes in which it holds."""
    kept = home.basis.documented()
    exploring, documenting = work_of(home.basis), work_of(kept)
    lifters: dict[tuple[Remedy, ...], Lifter] = {}
    homes: dict[Any, Any] = {}
    for option in options:
        remedies, fixed = option.choice.remedies, most_usual_home(option)
        if remedies not in lifters:
            over = home.outlook.homes
            lifters[remedies] = Lifter(over, everywhere(over, left_by(remedies)))
        which = (remedies, tuple(fixed.items()))
        if which not in homes:
            homes[which] = documented_home(home.folded, kept, fixed, remedies)[0]
        made = {name: getattr(option.choice, name) for name in DIMENSIONS}
        run = Keeping(lifters[remedies], Choosing(made, remedies))
        exploring(run, run.choice.as_choice)
        explored = tuple((stage, spread.in_home(fixed)) for stage, spread in run.made)
        yield Read(option, documented(homes[which], documenting, option.choice), explored)


def differences(read: Read) -> Iterator[str]:
    """Yield the stages in which the working comes to something else than exploring did."""
    for ran, (stage, made) in zip(read.documented.stages, read.explored, strict=True):
        if isinstance(made, Missing):
            same = ran.stage is stage and ran.lacking == made.keys
        else:
            same = ran.stage is stage and not ran.lacking and ran.out == made.out
            same = same and told(ran.checks) == told(made.checks)
            same = same and [each.says for each in ran.notes] == [each.says for each in made.notes]
        if not same:
            yield f"{read.option.id}: {ran.title}"


def told(checks: tuple[Check, ...]) -> list[Any]:
    """What checks say: of which requirement, with which numbers and words."""
    return [
        (each.requirement, each.outcome, each.actual, each.limit, each.why, each.caution)
        for each in checks
    ]


def sourceless(run: Documented) -> Iterator[tuple[str, Any]]:
    """Yield every number of a stage's result or check that leans on one without a source.

    Each with its name, such as ``cable.drop_v`` or ``way_free.limit``, and the one that it
    leans on.
    """
    for ran in run.stages:
        found = [] if ran.lacking else [*numbers(ran.out, ran.title)]
        for check in ran.checks:
            found += numbers(check, check.requirement.id)
        for note in ran.notes:
            found += numbers(note.about, note.telling.id)
        if orphans(tuple(value for _, value in found)):
            yield from ((name, each) for name, value in found for each in orphans(value))


def numbers(value: Any, name: str) -> Iterator[tuple[str, float]]:
    """Yield the numbers in a result with their names; of a work item only its facts count."""
    if value is None or isinstance(value, bool | str | Remedy):
        return
    if isinstance(value, int | float):
        yield name, value
    elif isinstance(value, Check):
        yield from numbers(value.actual, f"{value.requirement.id}.actual")
        yield from numbers(value.limit, f"{value.requirement.id}.limit")
    elif is_dataclass(value):
        for each in fields(value):
            yield from numbers(getattr(value, each.name), f"{name}.{each.name}")
    elif isinstance(value, tuple):
        parts = getattr(value, "_fields", None) or ["[]"] * len(value)
        for part, each in zip(parts, value, strict=True):
            yield from numbers(each, f"{name}{part}" if part == "[]" else f"{name}.{part}")
