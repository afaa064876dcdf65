"""The tasks that an option takes and the minutes of each, from the firm's usual times."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.design.route import LegRun
from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import Task
from ampwright.foundations.quantity import Hours, Millimetres, Minutes
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.source import Place, SetBy, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes, given, has_working
from ampwright.survey.home import Home
from ampwright.tables.capacity import CableFamily

METHOD: Final = Place("Ampwright", at="method, time of the work", trust=Trust.DERIVED)
ONCE: Final = ("arrive", "make-dead", "mount-point", "test", "commission", "hand-over")
ALONG: Final = {
    "clipped inside": "cable-clipped",
    "clipped outside": "cable-clipped",
    "trunking": "cable-trunking",
    "conduit": "cable-trunking",
    "tray": "cable-trunking",
    "loft void": "cable-void",
    "stud wall": "cable-void",
    "in insulation": "cable-void",
    "duct": "cable-void",
    "under floor": "cable-under-boards",
    "buried": "dig-lawn",
}
"""The task that runs a metre of cable, by how the leg runs."""
STONE: Final = ("stone", "rubble stone")


@dataclass(frozen=True, slots=True)
class TaskTime:
    """One task of an option: how much of it, and its minutes when all goes well to when not."""

    task: str
    does: str
    quantity: float
    low_min: Minutes
    usual_min: Minutes
    high_min: Minutes


@dataclass(frozen=True, slots=True)
class Labour:
    """The tasks of an option in the order of the work, and their usual minutes together."""

    tasks: tuple[TaskTime, ...]
    usual_min: Minutes


@computes("T", "min", formula="60 * t * n", place=METHOD)
def minutes_of(t: Hours, n: float) -> Minutes:
    """Return the minutes of a task done so many times, or over so many metres."""
    return Minutes(60 * t * n)


@computes("T", "min", formula="sum(T)", place=METHOD)
def together(T: tuple[Minutes, ...]) -> Minutes:  # noqa: N803 - as printed
    """Return the minutes of several pieces of work."""
    return Minutes(float(sum(T)))


def labour(
    home: Home,
    basis: Basis,
    legs: tuple[LegRun, ...],
    tap: str,
    phases: int,
    family: CableFamily,
    earthing: str,
    house_limit: bool,
    remedies: tuple[Remedy, ...],
) -> Made[Labour]:
    """Return the tasks of an option and their minutes; one electrician, no travel."""
    found = [
        *((task, 1.0) for task in ONCE[:3]),
        *along(home, legs),
        *extras(tap, phases, family, earthing, house_limit),
        *((task, 1.0) for task in ONCE[3:]),
    ]
    times = tuple(timed(basis, basis.task(task), quantity) for task, quantity in found)
    mending = (minutes_to_mend(basis, remedy) for remedy in remedies)
    return Made(Labour(times, together((*(each.usual_min for each in times), *mending))))


def minutes_to_mend(basis: Basis, remedy: Remedy) -> Minutes:
    """Return the usual minutes of a remedy, which were worked out where it was named."""
    usual = Minutes(remedy.minutes[1])
    if not basis.keeps_working:
        return usual
    return given("T", usual, "min", SetBy("work of this option", remedy.does))


def along(home: Home, legs: tuple[LegRun, ...]) -> Iterator[tuple[str, float]]:
    """Yield the tasks of running the cable, leg by leg."""
    for leg in legs:
        if leg.how == "through wall":
            yield hole(home.property.wall_kind, leg.wall_mm), 1.0
        else:
            yield ALONG[leg.how], leg.length_m


def hole(wall: str, wall_mm: Millimetres) -> str:
    """Return the task that makes a hole; a wall over 400 mm is drilled like stone.

    Examples
    --------
    >>> hole("brick cavity", Millimetres(270.0)), hole("solid brick", Millimetres(230.0))
    ('hole-cavity', 'hole-solid')
    """
    if wall in STONE or wall_mm > 400:
        return "hole-stone"
    return "hole-cavity" if wall == "brick cavity" else "hole-solid"


def extras(
    tap: str, phases: int, family: CableFamily, earthing: str, house_limit: bool
) -> Iterator[tuple[str, float]]:
    """Yield the tasks that some choices bring and others do not."""
    yield ("own-board" if tap == "meter" else "land-on-way"), 1.0
    if family is CableFamily.ARMOURED:
        yield "gland-pair", 1.0
    if earthing == "rod":
        yield "rod-first", 1.0
    if house_limit:
        yield "sensor", 1.0
    if phases > 1:
        yield "three-phase-extra", 1.0


def timed(basis: Basis, task: Task, quantity: float) -> TaskTime:
    """Return a task with its minutes; a quantity that was counted is named as such."""
    row = basis.cited(task)
    amount = quantity
    if basis.keeps_working and not has_working(quantity):
        amount = given("n", quantity, "", SetBy("this option", f"{task.id}, counted"))
    return TaskTime(
        task.id,
        task.does,
        amount,
        minutes_of(row.low_h, amount),
        minutes_of(row.usual_h, amount),
        minutes_of(row.high_h, amount),
    )
