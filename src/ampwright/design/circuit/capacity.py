"""What a cable can carry for hours on each leg of its way; the worst leg rules."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.foundations.checks import Finding, holds, requires
from ampwright.foundations.errors import OutOfTableError
from ampwright.foundations.quantity import Amperes, Celsius, Count, Metres, Millimetres, Share
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes
from ampwright.standards.wiring.overload import (
    capacity_behind_device,
    corrected_capacity,
    corrected_capacity_buried,
)
from ampwright.survey.home_legs import USUAL_AMBIENT
from ampwright.tables.book import Book
from ampwright.tables.capacity import CableFamily, tabulated_capacity, used_at_c
from ampwright.tables.factors import (
    ambient_factor,
    buried_grouping_factor,
    device_factor,
    ground_factor,
    grouping_factor,
    insulation_factor,
    soil_factor,
)

from ..noted import noted
from ..route import IN_GROUND, LegRun
from .methods import HOW_READ, UNSUITED, Beside, Lay, Read, Soaked

METHOD: Final = Place("Ampwright", at="method, capacity leg by leg", trust=Trust.DERIVED)
GROUND: Final = Place(
    "design temperature of the ground", at="20 °C, the base of the tables",
    trust=Trust.COMMON_PRACTICE,
)  # fmt: skip
NOTHING: Final = Amperes(0.0)
GROUND_C: Final = Celsius(20.0)
AIR_C: Final = Celsius(30.0)
SOIL: Final = Place(
    "design resistivity of the soil", at="2.5 K·m/W, the base of the tables",
    trust=Trust.COMMON_PRACTICE,
)  # fmt: skip
DEPTH: Final = Place(
    "design depth of burial", at="that of the tables; the trade's factors differ by one per cent",
    trust=Trust.COMMON_PRACTICE,
)  # fmt: skip
BASE_SOIL: Final = 2.5
LAID_AS: Final = {"duct": "duct", "buried": "direct"}
ACTS_IN_TIME: Final = "breaker or cartridge fuse"
REWIREABLE: Final = "rewireable fuse"
GROUND_GAP: Final = "touching"
"""Nobody measures the gap in a trench before it is dug; the least is taken."""
LOADED: Final = {1: 2, 3: 3}
"""Loaded conductors by the lines of a circuit; a balanced neutral is not one."""


@dataclass(frozen=True, slots=True)
class LegCapacity:
    """What a cable can carry on one leg, by which method.

    ``refused`` says why it may not be run so, or why no table says what it carries there; the
    capacity is then nought.
    """

    leg: str
    method: str
    capacity_a: Amperes
    refused: str = ""

    @property
    def unlisted(self) -> bool:
        """Whether it may be run so, but no table says what it carries there."""
        return bool(self.method and self.refused)


@requires("a cable made for how each leg is run", place=UNSUITED)
def family_suits_way(leg: str, refused: str) -> Finding:
    """The cable bears sun, wet, ground and knocks on each leg, and a table says what it carries.

    By family and way of running only; the maker's instructions say more.

    Examples
    --------
    >>> family_suits_way("garden", "flat cable is not made to be run buried").why
    'leg garden: flat cable is not made to be run buried'
    """
    return holds(not refused, f"leg {leg}: {refused}" if refused else "")


@computes("n", "", formula="others + 1", place=METHOD)
def circuits_together(others: Count) -> Count:
    """Return the circuits that lie together, the point's own counted in.

    Examples
    --------
    >>> circuits_together(Count(2))
    3
    """
    return Count(others + 1)


@computes("l", "mm", formula="1000 * L", place=METHOD)
def in_millimetres(L: Metres) -> Millimetres:  # noqa: N803 - as printed
    """Return a length in millimetres.

    Examples
    --------
    >>> in_millimetres(Metres(0.27))
    270.0
    """
    return Millimetres(1000 * L)


@computes("Iz", "A", formula="min(legs)", place=METHOD)
def least_capacity(legs: tuple[Amperes, ...]) -> Amperes:
    """Return what the worst leg lets the whole cable carry.

    Examples
    --------
    >>> least_capacity((Amperes(47.0), Amperes(34.0)))
    34.0
    """
    return Amperes(min(legs))


def read_leg(family: CableFamily, leg: LegRun) -> Read:
    """Return how a leg is read in the capacity tables."""
    return HOW_READ.decide(Lay(family, leg.how, bool(leg.insulation_mm))).outcome


def leg_capacity(
    book: Book, family: CableFamily, phases: int, size_mm2: float, leg: LegRun
) -> LegCapacity:
    """Return what a cable of one size can carry on one leg.

    Capacity and factors at the temperature its terminals bear, grouping with every other loaded
    circuit counted, insulation over the length that lies in it. The insulation table is for
    cables up to 10 mm²; it is used above as well, where it is not printed.
    """
    read = read_leg(family, leg)
    if not read.method:
        refused = f"{family.value} cable is not made to be run {leg.how}"
        return LegCapacity(leg.id, "", _nothing(book), refused)
    try:
        capacity_a = _carried(book, family, phases, size_mm2, leg, read)
    except OutOfTableError as outside:
        return LegCapacity(leg.id, read.method, _nothing(book), str(outside))
    return LegCapacity(leg.id, read.method, capacity_a)


def _nothing(book: Book) -> Amperes:
    """Return the capacity of a cable that may not be run so, or that no table gives."""
    return noted(book, "Iz", NOTHING, "A", METHOD)


def _carried(
    book: Book, family: CableFamily, phases: int, size_mm2: float, leg: LegRun, read: Read
) -> Amperes:
    """Return what the cable carries as the leg is read, and no more than where it lies bare."""
    warmth, beside = _warmth(book, family, leg), _grouping(book, read.beside, leg)
    if leg.how in IN_GROUND:
        tabulated = tabulated_capacity(book, family, read.method, LOADED[phases], size_mm2)
        resistivity = noted(book, "soil", BASE_SOIL, "K·m/W", SOIL)
        soil = soil_factor(book, LAID_AS[leg.how], resistivity)
        deep = noted(book, "Cd", Share(1.0), "", DEPTH)
        return corrected_capacity_buried(tabulated, warmth, soil, deep, beside)

    def carries(table: CableFamily, method: str, length_mm: Millimetres) -> Amperes:
        tabulated = tabulated_capacity(book, table, method, LOADED[phases], size_mm2)
        return corrected_capacity(tabulated, warmth, beside, insulation_factor(book, length_mm))

    soaked = carries(read.table or family, read.method, soaked_mm(book, read.soaked, leg))
    if not read.within:
        return soaked
    bare = carries(CableFamily.SHEATHED, read.within, soaked_mm(book, Soaked.NONE, leg))
    return least_capacity((soaked, bare))


def may_protect(book: Book, capacity_a: Amperes, how: str, device: str = ACTS_IN_TIME) -> Amperes:
    """Return the largest rating that may protect a cable, by the kind of device and where it lies.

    Less than it carries where the device acts late, and where the ground warms in the end.
    """
    if how not in IN_GROUND and device == ACTS_IN_TIME:
        return capacity_a
    laid = "ground" if how in IN_GROUND else "air"
    return capacity_behind_device(capacity_a, device_factor(book, device, laid))


def soaked_mm(book: Book, soaked: Soaked, leg: LegRun) -> Millimetres:
    """Return the length of a leg that lies wholly in insulation."""
    if soaked is Soaked.ALL:
        return in_millimetres(leg.length_m)
    if soaked is Soaked.PART and leg.insulation_mm is not None:
        return leg.insulation_mm
    return noted(book, "l", Millimetres(0.0), "mm", METHOD)


def _warmth(book: Book, family: CableFamily, leg: LegRun) -> Share:
    """Return the factor for the temperature round the cable."""
    cable_c = used_at_c(book, family)
    if leg.how in IN_GROUND:
        return ground_factor(book, cable_c, noted(book, "tg", GROUND_C, "°C", GROUND))
    if leg.ambient_c is not None:
        return ambient_factor(book, cable_c, leg.ambient_c)
    return ambient_factor(book, cable_c, noted(book, "ambient", AIR_C, "°C", USUAL_AMBIENT))


def _grouping(book: Book, beside: Beside, leg: LegRun) -> Share:
    """Return the factor for the circuits that lie beside the cable."""
    circuits = circuits_together(leg.grouped_with)
    if beside in (Beside.IN_GROUND, Beside.IN_DUCTS):
        ducts = beside is Beside.IN_DUCTS
        return buried_grouping_factor(book, GROUND_GAP, circuits, ducts)
    return grouping_factor(book, beside.value, circuits)
