"""The tasks of an option: which, and how often or over how many metres."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from typing import Final

from ampwright.design.route import LegRun
from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ISOLATOR_BY_POINT
from ampwright.foundations.quantity import Metres, Millimetres
from ampwright.foundations.stages import Made
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.capacity import CableFamily

FIRST: Final = ("arrive", "make-dead")
LAST: Final = ("test", "commission", "hand-over")
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
}
"""The task that runs a metre of cable, by how the leg runs; a buried one is dug for."""
HIGH: Final = frozenset({"clipped outside", "trunking", "conduit", "tray", "through wall"})
"""How a leg runs that somebody stands before with both hands, at whatever height it is."""
SOFT: Final = "lawn"
HARD: Final = frozenset({"paving", "concrete", "tarmac"})
STONE: Final = ("stone", "rubble stone")
LIKE_STONE_MM: Final = Millimetres(400.0)
"""A wall thicker than this is drilled like stone: *memory*."""
WITHIN_REACH: Final = Metres(0.0)
"""Stands for the height of a leg while nobody has said it: one ladder is enough."""
EVERY_JOB: Final = "every job"


@dataclass(frozen=True, slots=True)
class Task:
    """One task by its id among the firm's times, how much of it (times or metres), and why."""

    task: str
    quantity: float
    why: str


@dataclass(frozen=True, slots=True)
class Tasks:
    """The tasks of an option, in the order of the work; those of its remedies are not here."""

    each: tuple[Task, ...]


def tasks(
    home: Home,
    basis: Basis,
    legs: tuple[LegRun, ...],
    tap: str,
    place: str,
    phases: int,
    family: CableFamily,
    earthing: str,
    house_limit: bool,
    rcd_beside: bool,
    isolator_by_point: bool,
) -> Made[Tasks]:
    """Return the tasks of an option; no travel, nothing at the office.

    A trench is dug by hand, as in a lawn where nobody has said what is above it; a cable in a
    duct is drawn through one that is there. Where nobody has said how high a leg runs, a ladder
    is enough.
    """
    found = [
        *(Task(task, 1.0, EVERY_JOB) for task in FIRST),
        *access(home, basis, legs),
        *fixing(home, place),
        *along(home, legs),
        *extras(tap, phases, family, earthing, house_limit),
    ]
    if rcd_beside:
        found.append(
            Task("rcd-beside", 1.0, "the board has no place for the residual current device")
        )
    if isolator_by_point:
        found.append(Task(ISOLATOR_BY_POINT, 1.0, "its device leaves the neutral joined"))
    found.extend(Task(task, 1.0, EVERY_JOB) for task in LAST)
    return Made(Tasks(tuple(found)))


def fixing(home: Home, place: str) -> Iterator[Task]:
    """Yield the tasks of fixing the point: to a wall, or to a post with its footing."""
    if home.places[place].on == "post":
        why = f"{place} is on a post"
        yield Task("post-footing", 1.0, why)
        yield Task("set-post", 1.0, why)
    else:
        yield Task("mount-point", 1.0, f"the point hangs at {place}")


def access(home: Home, basis: Basis, legs: tuple[LegRun, ...]) -> Iterator[Task]:
    """Yield what must be put up to reach the highest leg, where a ladder does not do."""
    high = [leg.id for leg in legs if leg.how in HIGH]
    heights = [if_said(partial(highest, home, leg), WITHIN_REACH) for leg in high]
    if any(each > basis.rules.tower_to_m for each in heights):
        yield Task("scaffold", 1.0, "part of the way runs higher than a tower is for")
    elif any(each > basis.rules.ladder_to_m for each in heights):
        yield Task("tower", 1.0, "part of the way runs higher than a ladder is for")


def highest(home: Home, leg: str) -> Metres:
    """Return how high a leg runs; raises ``Unanswered`` while nobody has said it."""
    return home.legs[leg].highest_m


def along(home: Home, legs: tuple[LegRun, ...]) -> Iterator[Task]:
    """Yield the tasks of running the cable, leg by leg."""
    for leg in legs:
        if leg.how == "through wall":
            drilled = hole(home.property.wall_kind, home.legs[leg.id].wall_mm)
            yield Task(drilled, 1.0, f"{leg.id}: through the wall")
        elif leg.how == "buried":
            yield Task(trench(home, leg.id), leg.length_m, f"{leg.id}: buried")
        else:
            yield Task(ALONG[leg.how], leg.length_m, f"{leg.id}: {leg.how}")


def trench(home: Home, leg: str) -> str:
    """Return the task that digs for a leg, by what is above it."""
    above = if_said(lambda: home.legs[leg].surface, SOFT)
    return "dig-paving" if above in HARD else "dig-lawn"


def hole(wall: str, wall_mm: Millimetres) -> str:
    """Return the task that makes a hole; a wall over 400 mm is drilled like stone.

    Examples
    --------
    >>> hole("brick cavity", Millimetres(270.0)), hole("solid brick", Millimetres(230.0))
    ('hole-cavity', 'hole-solid')
    """
    if wall in STONE or wall_mm > LIKE_STONE_MM:
        return "hole-stone"
    return "hole-cavity" if wall == "brick cavity" else "hole-solid"


def extras(
    tap: str, phases: int, family: CableFamily, earthing: str, house_limit: bool
) -> Iterator[Task]:
    """Yield the tasks that some choices bring and others do not."""
    if tap == "meter":
        yield Task("own-board", 1.0, "fed from the meter")
    else:
        yield Task("land-on-way", 1.0, f"fed from board {tap}")
    if family is CableFamily.ARMOURED:
        yield Task("gland-pair", 1.0, "armoured cable")
    if earthing == "rod":
        yield Task("rod-first", 1.0, "the point has an earth of its own")
    if house_limit:
        yield Task("sensor", 1.0, "the whole house is held to a limit")
    if phases > 1:
        yield Task("three-phase-extra", 1.0, "a point for three lines")
