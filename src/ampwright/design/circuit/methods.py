"""How each way of running a cable is read in the capacity tables: family, method, neighbours.

The survey says how a leg runs; the tables know reference methods. Where no method fits a way
of running, the nearest that carries less is taken, and where a family is not made for it, none.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from ampwright.foundations.rulings import Row, Ruling
from ampwright.foundations.source import Place, Trust
from ampwright.tables.capacity import CableFamily

METHODS: Final = Place("BS 7671", "2018+A2:2022", "Appendix 4, Table 4A2", Trust.MEMORY)
FLAT_METHODS: Final = Place("BS 7671", "2018+A2:2022", "Appendix 4, Table 4D5, notes", Trust.MEMORY)
NEAREST: Final = Place(
    "usual reading of the methods", at="the nearest that carries less", trust=Trust.COMMON_PRACTICE
)
UNSUITED: Final = Place("BS 7671", "2018+A2:2022", "522.6, 522.8, 522.11", Trust.MEMORY)


class Beside(StrEnum):
    """How other loaded circuits lie beside a cable, as the grouping tables name it."""

    BUNCHED = "bunched or enclosed"
    ON_WALL = "single layer on a wall or floor"
    ON_TRAY = "single layer on a perforated tray"
    IN_GROUND = "in the ground"
    IN_DUCTS = "in ducts"


class Soaked(StrEnum):
    """What of a leg lies wholly in thermal insulation, beyond what its method counts."""

    NONE = "none"
    PART = "the length told"
    ALL = "the whole leg"


@dataclass(frozen=True, slots=True)
class Lay:
    """How one leg lies: family, way of running, and whether any of it lies in insulation."""

    family: CableFamily
    how: str
    insulated: bool


@dataclass(frozen=True, slots=True)
class Read:
    """How a leg is read: by which method, how grouped, how soaked, and in whose table.

    ``method`` is empty where the family is not made to be run that way; ``table`` is ``None``
    for the family's own. ``within`` is the method, as of a cable without armour, that holds
    where the leg lies bare: it can carry no more than that either.
    """

    method: str
    beside: Beside
    soaked: Soaked = Soaked.NONE
    table: CableFamily | None = None
    within: str = ""


FLAT, SHEATHED, ARMOURED = CableFamily.FLAT, CableFamily.SHEATHED, CableFamily.ARMOURED
VOIDS: Final = frozenset({"loft void", "under floor"})
ENCLOSED: Final = frozenset({"trunking", "conduit"})
GROUND: Final = frozenset({"buried", "duct"})
NEVER: Final = Read("", Beside.BUNCHED)


HOW_READ: Final[Ruling[Lay, Read]] = Ruling(
    "reference method of a leg",
    (
        Row(
            "flat cable out of doors or in the ground: it is not made for sun or wet",
            lambda lay: lay.family is FLAT and lay.how in {"clipped outside", *GROUND},
            NEVER,
            UNSUITED,
        ),
        Row(
            "flat cable in trunking or conduit: as in an insulated wall, the least it carries",
            lambda lay: lay.family is FLAT and lay.how in ENCLOSED,
            Read("A", Beside.BUNCHED),
            NEAREST,
        ),
        Row(
            "flat cable in a void, insulation on it: taken as deeper than 100 mm",
            lambda lay: lay.family is FLAT and lay.how in VOIDS and lay.insulated,
            Read("101", Beside.BUNCHED),
            FLAT_METHODS,
        ),
        Row(
            "flat cable in a void, no insulation on it: as under up to 100 mm",
            lambda lay: lay.family is FLAT and lay.how in VOIDS,
            Read("100", Beside.BUNCHED),
            FLAT_METHODS,
        ),
        Row(
            "flat cable in a filled stud wall, taken as not touching the lining",
            lambda lay: lay.family is FLAT and lay.how == "stud wall" and lay.insulated,
            Read("103", Beside.BUNCHED),
            FLAT_METHODS,
        ),
        Row(
            "flat cable in an empty stud wall, taken as if filled and touching the lining",
            lambda lay: lay.family is FLAT and lay.how == "stud wall",
            Read("102", Beside.BUNCHED),
            NEAREST,
        ),
        Row(
            "armoured cable laid in the ground",
            lambda lay: lay.family is ARMOURED and lay.how == "buried",
            Read("D", Beside.IN_GROUND),
            METHODS,
        ),
        Row(
            "armoured cable in a duct in the ground",
            lambda lay: lay.family is ARMOURED and lay.how == "duct",
            Read("D", Beside.IN_DUCTS),
            METHODS,
        ),
        Row(
            "cable without armour in the ground: nothing guards it there",
            lambda lay: lay.how in GROUND,
            NEVER,
            UNSUITED,
        ),
        Row(
            "in trunking or conduit, as a cable without armour",
            lambda lay: lay.how in ENCLOSED,
            Read("B", Beside.BUNCHED, table=SHEATHED),
            METHODS,
        ),
        Row(
            "in a filled stud wall: as wholly in insulation there, and as in it in conduit",
            lambda lay: lay.how == "stud wall" and lay.insulated,
            Read("C", Beside.BUNCHED, Soaked.PART, within="A"),
            NEAREST,
        ),
        Row(
            "in a void, part of it in insulation: as wholly in it there, and bare elsewhere",
            lambda lay: lay.how in VOIDS and lay.insulated,
            Read("C", Beside.BUNCHED, Soaked.PART, within="B"),
            NEAREST,
        ),
        Row(
            "in an empty stud wall: as in conduit in an insulated one",
            lambda lay: lay.how == "stud wall",
            Read("A", Beside.BUNCHED, table=SHEATHED),
            NEAREST,
        ),
        Row(
            "in a void, no insulation on it",
            lambda lay: lay.how in VOIDS,
            Read("B", Beside.BUNCHED, table=SHEATHED),
            METHODS,
        ),
        Row(
            "wholly in insulation",
            lambda lay: lay.how == "in insulation",
            Read("C", Beside.BUNCHED, Soaked.ALL),
            METHODS,
        ),
        Row(
            "through a wall, insulation in it",
            lambda lay: lay.how == "through wall" and lay.insulated,
            Read("C", Beside.BUNCHED, Soaked.PART),
            METHODS,
        ),
        Row(
            "through a wall of masonry, nothing in it",
            lambda lay: lay.how == "through wall",
            Read("C", Beside.BUNCHED),
            METHODS,
        ),
        Row(
            "sheathed or armoured cable on a perforated tray",
            lambda lay: lay.family is not FLAT and lay.how == "tray",
            Read("E", Beside.ON_TRAY),
            METHODS,
        ),
        Row(
            "clipped to a surface, or flat cable on a tray",
            lambda lay: lay.how in {"clipped inside", "clipped outside", "tray"},
            Read("C", Beside.ON_WALL),
            METHODS,
        ),
        Row("a way of running that no table knows", lambda lay: True, NEVER, NEAREST),  # noqa: ARG005
    ),
)
