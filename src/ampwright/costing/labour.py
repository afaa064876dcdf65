"""How long the work of an option takes, task by task and by whom, from the firm's usual times."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import Hands
from ampwright.firm.times import task_minutes
from ampwright.foundations.quantity import Minutes
from ampwright.foundations.source import Place, SetBy, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes, given, has_working
from ampwright.survey.home import Home

from .tasks import Task, Tasks

METHOD: Final = Place("Ampwright", at="method, time of the work", trust=Trust.DERIVED)


@dataclass(frozen=True, slots=True)
class TaskTime:
    """One task of an option: how much of it, and its minutes when all goes well to when not.

    The minutes are those of each who does it. A work item stands here whole, by its slug, once.
    """

    task: str
    does: str
    why: str
    hands: Hands
    quantity: float
    low_min: Minutes
    usual_min: Minutes
    high_min: Minutes


@dataclass(frozen=True, slots=True)
class Labour:
    """The time of an option: its tasks in the order of the work, its work items, the sums.

    The sums are the electrician's minutes; ``mate_min`` are the usual ones of a second person.
    """

    tasks: tuple[TaskTime, ...]
    mending: tuple[TaskTime, ...]
    low_min: Minutes
    usual_min: Minutes
    high_min: Minutes
    mate_min: Minutes

    @property
    def each(self) -> tuple[TaskTime, ...]:
        """Every task, then every work item."""
        return (*self.tasks, *self.mending)


@computes("T", "min", formula="sum(T)", place=METHOD)
def together(T: tuple[Minutes, ...]) -> Minutes:  # noqa: N803 - as printed
    """Return the minutes of several pieces of work."""
    return Minutes(float(sum(T)))


def labour(_home: Home, basis: Basis, work: Tasks, mending: tuple[TaskTime, ...]) -> Made[Labour]:
    """Return the minutes of an option; one electrician on site, a mate for some tasks, no travel.

    ``mending`` are the times of its work items. The tasks have read the home.
    """
    tasks = tuple(timed(basis, each) for each in work.each)
    times = (*tasks, *mending)
    own = tuple(each for each in times if each.hands is not Hands.MATE)
    mates = tuple(each.usual_min for each in times if each.hands is not Hands.ELECTRICIAN)
    alone = Minutes(0.0)
    if basis.keeps_working:
        alone = given("T", alone, "min", SetBy("this option", "no task for a second person"))
    return Made(
        Labour(
            tasks,
            mending,
            together(tuple(each.low_min for each in own)),
            together(tuple(each.usual_min for each in own)),
            together(tuple(each.high_min for each in own)),
            together(mates) if mates else alone,
        )
    )


def timed(basis: Basis, task: Task) -> TaskTime:
    """Return a task with its minutes; a quantity that was counted is named as such."""
    row = basis.cited(basis.task(task.task))
    amount = task.quantity
    if basis.keeps_working and not has_working(amount):
        amount = given("n", amount, "", SetBy("this option", f"{task.task}, counted"))
    return TaskTime(
        row.id,
        row.does,
        task.why,
        row.hands,
        amount,
        *task_minutes(row, amount),
    )
