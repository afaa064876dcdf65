"""Two ways to run one description of the work: over all homes at once, or in one home.

The description calls ``run(stage, …)`` and is typed as if every result were plain. While
exploring, a result is in truth a spread: it may be handed on and its attributes read, and
nothing else. A branch on a result belongs inside a stage.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Concatenate, Final, NamedTuple, ParamSpec, Protocol, TypeVar, cast

from ampwright.foundations.answers import Missing, Unanswered
from ampwright.foundations.checks import Check, Outcome, verdict
from ampwright.foundations.notes import Note
from ampwright.foundations.stages import Made
from ampwright.survey.home import Home

from .choices import Choosing
from .lifting import Lifter
from .spread import Spread

P = ParamSpec("P")
T = TypeVar("T")
Stage = Callable[..., Made[Any]]
FAILS: Final = (Outcome.FAIL,)
"""What a spread of outcomes is where every home fails."""


class Run(Protocol):
    """Runs one stage of the work and keeps its checks."""

    def __call__(
        self,
        stage: Callable[Concatenate[Home, P], Made[T]],
        /,
        *args: P.args,
        **kwargs: P.kwargs,
    ) -> T:
        """Return what the stage hands on."""
        ...

    def aside(
        self,
        stage: Callable[Concatenate[Home, P], Made[T]],
        /,
        *args: P.args,
        **kwargs: P.kwargs,
    ) -> T:
        """Return what a stage hands on that no soundness hangs on: use, time, comparison."""
        ...

    def note(
        self,
        stage: Callable[Concatenate[Home, P], Made[T]],
        /,
        *args: P.args,
        **kwargs: P.kwargs,
    ) -> None:
        """Note what is only told beside an option that holds; nothing that follows may use it."""
        ...


class Cut(Exception):  # noqa: N818 - not an error: this branch of the choices is closed
    """A stage fails in every home, whatever is chosen after it; carries that stage."""

    def __init__(self, stage: Ran) -> None:
        self.stage = stage
        super().__init__(name_of(stage.stage))


class Ran(NamedTuple):
    """A stage that was run over all homes, with all it can have made.

    ``outcome`` is what its checks come to in each home; ``asked`` lists the choices that had been
    asked for by then.
    """

    stage: Stage
    made: Spread[Made[Any]]
    outcome: Spread[Outcome]
    asked: tuple[str, ...]


def outcome_of(made: Made[Any]) -> Outcome:
    """Return what the checks of a result come to."""
    return verdict(made.checks)


def name_of(stage: Stage) -> str:
    """Return the plain name of a stage."""
    return str(getattr(stage, "__name__", stage)).replace("_", " ")


class Step(NamedTuple):
    """One call of the work while exploring: what it handed on, and the stage if it is judged."""

    out: Any
    ran: Ran | None


class Exploring:
    """Runs stages over all homes; stops at the first that fails in every one.

    ``before`` are the steps of the same work up to the choice it asked for and did not have yet:
    they are taken over, one by one, as they came.
    """

    def __init__(self, lifter: Lifter, choice: Choosing, before: Sequence[Step] = ()) -> None:
        self.lifter, self.choice = lifter, choice
        self.steps = list(before)
        self._taken_over = len(before)
        self._at = 0

    @property
    def ran(self) -> list[Ran]:
        """Every stage that is judged, in order."""
        return [step.ran for step in self.steps if step.ran]

    @property
    def new(self) -> list[Ran]:
        """Every stage that is judged and was not taken over."""
        return [step.ran for step in self.steps[self._taken_over :] if step.ran]

    def __call__(
        self,
        stage: Callable[Concatenate[Home, P], Made[T]],
        /,
        *args: P.args,
        **kwargs: P.kwargs,
    ) -> T:
        """Return the spread of what the stage hands on; raises ``Cut``."""
        at = self._at
        self._at = at + 1
        if at < self._taken_over:
            return cast(T, self.steps[at].out)
        made = self.lifter.lift(stage, *args, *kwargs.values())
        outcome = made.part("(outcome)", outcome_of)
        here = Ran(stage, made, outcome, self.choice.asked)
        out = made.out
        self.steps.append(Step(out, here))
        if outcome.values == FAILS:
            raise Cut(here)
        return cast(T, out)

    def aside(
        self,
        stage: Callable[Concatenate[Home, P], Made[T]],
        /,
        *args: P.args,
        **kwargs: P.kwargs,
    ) -> T:
        """Return the spread of what the stage hands on; nothing is judged by it."""
        at = self._at
        self._at = at + 1
        if at < self._taken_over:
            return cast(T, self.steps[at].out)
        out = self.lifter.lift(stage, *args, *kwargs.values()).out
        self.steps.append(Step(out, None))
        return cast(T, out)

    def note(
        self,
        stage: Callable[Concatenate[Home, P], Made[T]],
        /,
        *args: P.args,
        **kwargs: P.kwargs,
    ) -> None:
        """Leave out what is only told beside an option."""


@dataclass(frozen=True, slots=True)
class StageRun:
    """What one stage made in one home, or the facts it lacked.

    ``aside`` marks what no soundness hangs on.
    """

    stage: Stage
    out: Any
    checks: tuple[Check, ...]
    lacking: tuple[str, ...] = ()
    aside: bool = False
    notes: tuple[Note, ...] = ()

    @property
    def title(self) -> str:
        """The plain name of the stage."""
        return name_of(self.stage)


class InOneHome:
    """Runs stages in one home, plainly; keeps everything for the working."""

    def __init__(self, home: Home) -> None:
        self.home = home
        self.stages: list[StageRun] = []

    def __call__(
        self,
        stage: Callable[Concatenate[Home, P], Made[T]],
        /,
        *args: P.args,
        **kwargs: P.kwargs,
    ) -> T:
        """Return what the stage hands on, or ``Missing`` when it lacks facts."""
        return self.one(stage, args, kwargs, aside=False)

    def aside(
        self,
        stage: Callable[Concatenate[Home, P], Made[T]],
        /,
        *args: P.args,
        **kwargs: P.kwargs,
    ) -> T:
        """Return the same of a stage that no soundness hangs on."""
        return self.one(stage, args, kwargs, aside=True)

    def note(
        self,
        stage: Callable[Concatenate[Home, P], Made[T]],
        /,
        *args: P.args,
        **kwargs: P.kwargs,
    ) -> None:
        """Run the stage and keep what it made, to be told beside the option."""
        self.one(stage, args, kwargs, aside=True)

    def one(
        self,
        stage: Callable[..., Made[T]],
        args: tuple[Any, ...],
        kwargs: dict[str, Any],
        *,
        aside: bool,
    ) -> T:
        """Run one stage and keep what it made, or the facts it lacked."""
        keys = tuple(key for arg in args if isinstance(arg, Missing) for key in arg.keys)
        if not keys:
            try:
                made = stage(self.home, *args, **kwargs)
            except Unanswered as blank:
                keys = (blank.key,)
            else:
                self.stages.append(StageRun(stage, made.out, made.checks, (), aside, made.notes))
                return made.out
        missing = Gap(tuple(dict.fromkeys(keys)))
        self.stages.append(StageRun(stage, missing, (), missing.keys, aside))
        return cast(T, missing)


class Gap(Missing):
    """A missing result whose every attribute is missing for the same facts."""

    def __getattr__(self, name: str) -> Gap:
        """Return the same gap: a part of what is missing is missing."""
        if name.startswith("__"):
            raise AttributeError(name)
        return self
