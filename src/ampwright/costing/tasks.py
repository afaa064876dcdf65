"""The tasks of an option: which, and how often or over how many metres."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.design.route import LegRun
from ampwright.foundations.quantity import Millimetres
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
SOFT: Final = "lawn"
HARD: Final = frozenset({"paving", "concrete", "tarmac"})
STONE: Final = ("stone", "rubble stone")
LIKE_STONE_MM: Final = Millimetres(400.0)
"""A wall thicker than this is drilled like stone."""


@dataclass(frozen=True, slots=True)
class Task:
    """One task, by its id among the firm's times, and how much of it: times or metres."""

    task: str
    quantity: float


@dataclass(frozen=True, slots=True)
class Tasks:
    """The tasks of an option, in the order of the work; those of its remedies are not here."""

    each: tuple[Task, ...]


def tasks(
    home: Home,
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
    """Return the tasks of an option for one electrician; no travel, nothing at the office.

    A trench is dug by hand, as in a lawn where nobody has said what is above it; a cable in a
    duct is drawn through one that is there.
    """
    on_post = home.places[place].on == "post"
    found = [
        *((task, 1.0) for task in FIRST),
        ("set-post" if on_post else "mount-point", 1.0),
        *along(home, legs),
        *extras(tap, phases, family, earthing, house_limit),
        *((("rcd-beside", 1.0),) if rcd_beside else ()),
        *((("isolator-by-point", 1.0),) if isolator_by_point else ()),
        *((task, 1.0) for task in LAST),
    ]
    return Made(Tasks(tuple(Task(task, quantity) for task, quantity in found)))


def along(home: Home, legs: tuple[LegRun, ...]) -> Iterator[tuple[str, float]]:
    """Yield the tasks of running the cable, leg by leg."""
    for leg in legs:
        if leg.how == "through wall":
            yield hole(home.property.wall_kind, home.legs[leg.id].wall_mm), 1.0
        elif leg.how == "buried":
            yield trench(home, leg.id), leg.length_m
        else:
            yield ALONG[leg.how], leg.length_m


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
