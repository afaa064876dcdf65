"""One option in one home, run plainly on numbers that keep their working."""

from __future__ import annotations

from dataclasses import dataclass, replace

from ampwright.foundations.checks import Check, Outcome, verdict
from ampwright.foundations.notes import Note
from ampwright.foundations.source import SetBy
from ampwright.foundations.working import given
from ampwright.survey.home import Home

from .choices import Choice
from .runs import InOneHome, StageRun
from .search import Work
from .work import Design


@dataclass(frozen=True, eq=False)
class Documented:
    """An option with its whole working: the stages in the order of the work."""

    choice: Choice
    design: Design
    stages: tuple[StageRun, ...]

    @property
    def checks(self) -> tuple[Check, ...]:
        """Every check, in the order of the work."""
        return tuple(check for stage in self.stages for check in stage.checks)

    @property
    def notes(self) -> tuple[Note, ...]:
        """Every note, in the order of the work."""
        return tuple(note for stage in self.stages for note in stage.notes)

    @property
    def outcome(self) -> Outcome:
        """What the checks come to; a stage that lacks facts leaves it undetermined."""
        found = verdict(self.checks)
        if found is Outcome.PASS and any(
            stage.lacking and not stage.aside for stage in self.stages
        ):
            return Outcome.UNDETERMINED
        return found


def documented(home: Home, work: Work[Design], choice: Choice) -> Documented:
    """Run one option in one home whose view keeps working.

    ``home`` must already have the facts that the choice's remedies change laid over it.
    """
    run = InOneHome(home)
    design = work(run, with_sources(choice))
    return Documented(choice, design, tuple(run.stages))


def with_sources(choice: Choice) -> Choice:
    """Return a choice whose numbers say that they were chosen."""
    setting_a = given("Ib", choice.setting_a, "A", SetBy("this option", "the setting of the point"))
    return replace(choice, setting_a=setting_a)
