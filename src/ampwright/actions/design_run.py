"""One option run in one home on numbers that keep their working, stage by stage."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from typing import Any, TypeVar

from ampwright.costing.lines import Amount
from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Missing, Value
from ampwright.foundations.checks import Check, Outcome, verdict
from ampwright.foundations.stages import Made, cautions
from ampwright.foundations.working import Worked, walk
from ampwright.options.documented import with_sources
from ampwright.options.held import most_usual_home
from ampwright.options.open_homes import documented_home
from ampwright.options.runs import InOneHome, StageRun
from ampwright.options.search import Option
from ampwright.options.work import Design, work_of
from ampwright.survey.folding import FoldedHome
from ampwright.survey.home import Home
from ampwright.survey.views import DocumentedReader, Rest

T = TypeVar("T")


class Noting(InOneHome):
    """Runs stages in one home and notes which facts each was the first to read."""

    def __init__(self, home: Home, reader: DocumentedReader) -> None:
        super().__init__(home)
        self._reader = reader
        self.first_read: list[tuple[Rest, ...]] = []

    def one(
        self,
        stage: Callable[..., Made[T]],
        args: tuple[Any, ...],
        kwargs: dict[str, Any],
        *,
        aside: bool,
    ) -> T:
        """Return what the stage hands on, or ``Missing`` when it lacks facts."""
        before = set(self._reader.reads)
        out = super().one(stage, args, kwargs, aside=aside)
        reads = self._reader.reads
        self.first_read.append(tuple(rest for key, rest in reads.items() if key not in before))
        return out


@dataclass(frozen=True, eq=False)
class StageNoted:
    """One stage as it ran, and the facts it was the first to read."""

    run: StageRun
    read: tuple[Rest, ...]

    @property
    def checks(self) -> tuple[Check, ...]:
        """The stage's checks, then those that its result holds."""
        inside = (each for _, each in own_numbers(self.run.out) if isinstance(each, Check))
        return (*self.run.checks, *inside)

    @property
    def cautions(self) -> Iterator[str]:
        """What somebody must see to: what a pass leans on, and what notes ask for."""
        return cautions(self.checks, self.run.notes)

    @property
    def figures(self) -> tuple[tuple[str, float], ...]:
        """The numbers that the stage came to and no check or note of it leads to, each named.

        Only those of the result itself, not of the parts it lists.
        """
        sides = (
            *(side for check in self.checks for side in (check.actual, check.limit)),
            *(number for note in self.run.notes for number in note.numbers),
        )
        told = {id(node) for node in walk(sides)}
        return tuple(
            (name, each)
            for name, value in own_numbers(self.run.out)
            for each in sides_of(value)
            if isinstance(each, Worked) and id(each) not in told
        )


@dataclass(frozen=True, eq=False)
class DesignRun:
    """An option worked out in one home; ``fixed`` are the open facts and the values taken."""

    option: Option[Any]
    fixed: Mapping[str, Value]
    design: Design
    stages: tuple[StageNoted, ...]
    reads: Mapping[str, Rest]
    home: Home

    @property
    def outcome(self) -> Outcome:
        """What the checks come to; a stage that lacks facts leaves it undetermined."""
        found = verdict(check for stage in self.stages for check in stage.run.checks)
        lacking = any(stage.run.lacking and not stage.run.aside for stage in self.stages)
        return Outcome.UNDETERMINED if found is Outcome.PASS and lacking else found

    @property
    def taken(self) -> dict[str, Value]:
        """The open facts that were read, and what they were taken to be."""
        return {key: value for key, value in self.fixed.items() if key in self.reads}

    def numbers(self) -> Iterator[Worked]:
        """Yield every worked number behind the checks and figures, each once."""
        ends = [side for stage in self.stages for check in stage.checks
                for side in (check.actual, check.limit)]  # fmt: skip
        ends += [number for stage in self.stages for note in stage.run.notes
                 for number in note.numbers]  # fmt: skip
        ends += [figure for stage in self.stages for _, figure in stage.figures]
        yield from (node for node in walk(tuple(ends)) if isinstance(node, Worked))


def run_design(folded: FoldedHome, basis: Basis, option: Option[Any]) -> DesignRun:
    """Run an option in the most usual of the homes in which it holds."""
    fixed = most_usual_home(option)
    home, reader = documented_home(folded, basis, fixed, option.choice.remedies)
    run = Noting(home, reader)
    design = work_of(basis.documented())(run, with_sources(option.choice))
    stages = tuple(
        StageNoted(ran, read) for ran, read in zip(run.stages, run.first_read, strict=True)
    )
    return DesignRun(option, fixed, design, stages, reader.reads, home)


def sides_of(value: Any) -> tuple[Any, ...]:
    """Return the numbers of a value: of each line, the usual one of an amount, or itself."""
    if isinstance(value, Amount):
        return (value.usual_p,)
    return value if isinstance(value, tuple) else (value,)


def own_numbers(out: Any) -> Iterator[tuple[str, Any]]:
    """Yield the fields of a result that are its own: numbers, numbers of each line, checks."""
    if is_dataclass(out) and not isinstance(out, type | Missing):
        yield from ((each.name, getattr(out, each.name)) for each in fields(out))
