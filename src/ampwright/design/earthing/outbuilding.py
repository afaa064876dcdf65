"""A point on an outbuilding: its own metal shares the house's earth, or is kept apart from it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Finding, holds, requires
from ampwright.foundations.notes import tells
from ampwright.foundations.quantity import Metres, SquareMm
from ampwright.foundations.remedies import Part, Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.wiring.earthing import bond_present_and_sized
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said

from ..work import run_minutes
from .bonding import doubted_earthing, required_bond
from .point import OWN_ROD

PRACTICE: Final = Place(
    "usual practice for charge points", at="an earth taken to another building",
    trust=Trust.COMMON_PRACTICE,
)  # fmt: skip
METHOD: Final = Place("Ampwright", at="method, the length of a bond", trust=Trust.DERIVED)
METER: Final = "meter"
OUTBUILDING: Final = "outbuilding"


@dataclass(frozen=True, slots=True)
class Outbuilding:
    """What an outbuilding's own metal needs; ``None`` where there is none, or no outbuilding."""

    bond_mm2: SquareMm | None


NOTHING: Final = Outbuilding(None)


@tells(PRACTICE, caution=True)
def frame_on_points_rod(place: str) -> str:
    """Say that the metal of a building whose point has a rod of its own goes with that rod.

    Examples
    --------
    >>> frame_on_points_rod("barn").caution[:43]
    'join the frame or pipe of barn to the point'
    """
    return (
        f"join the frame or pipe of {place} to the point's own rod, and keep whatever there hangs "
        "on the house's earth out of reach of it"
    )


@computes("L", "m", formula="feed + way", place=METHOD)
def from_the_earth_bar(feed: Metres, way: Metres) -> Metres:
    """Return how far a bond runs from the main earth bar: along the board's feed, and the way.

    Examples
    --------
    >>> from_the_earth_bar(Metres(20.0), Metres(3.0))
    23.0
    """
    return Metres(feed + way)


def outbuilding(
    home: Home, basis: Basis, tap: str, place: str, earthing: str, way_m: Metres
) -> Made[Outbuilding]:
    """Return the bond that an outbuilding's frame or own pipe needs if the earth is taken there.

    ``way_m`` is the way of the cable from the tap; the bond runs beside it, and along the feed of
    a board before that. On a combined earth it is a main bond, by the neutral of the supply; a
    point on its own rod takes the building's metal with it.
    """
    if home.places[place].on != OUTBUILDING or not home.places[place].metal_building:
        return Made(NOTHING)
    if earthing == OWN_ROD:
        return Made(NOTHING, notes=(frame_on_points_rod(place),))
    required_mm2 = required_bond(home, basis.book, doubted_earthing(home))
    found_mm2 = home.places[place].building_bond_mm2
    length_m = way_m
    if tap != METER:
        length_m = from_the_earth_bar(home.boards[tap].from_meter_m, way_m)
    check = bond_present_and_sized(found_mm2, found_mm2 > 0, required_mm2)
    return Made(
        Outbuilding(required_mm2),
        (check.mended_by(_bonded(basis, place, required_mm2, length_m)),),
    )


@requires("the point takes the earth that its board has", place=PRACTICE)
def board_earth_suits(board: str, on_a_rod: bool, earthing: str) -> Finding:
    """A board that was set apart on a rod of its own gives no earth of the network's.

    Boards near the meter have the house's earth; of those far off somebody looks.

    Examples
    --------
    >>> board_earth_suits("barn", True, "pme").why
    'barn stands on a rod of its own: it has no earth of the network to give'
    """
    mixed = on_a_rod and earthing != OWN_ROD
    return holds(not mixed, f"{board} stands on a rod of its own: it has no earth of the network "
                 "to give" if mixed else "")  # fmt: skip


def board_earth(home: Home, basis: Basis, tap: str, earthing: str) -> Made[None]:
    """Return whether the earth chosen for the point is the one that a far board has."""
    if tap == METER or home.boards[tap].from_meter_m <= basis.rules.own_device_over_m:
        return Made(None)
    said = if_said(lambda: home.boards[tap].own_rod, None)
    check = board_earth_suits(tap, bool(said), earthing)
    if said is None:
        check = check.with_caution(f"see whether {tap} has a rod of its own")
    elif said:
        check = check.with_caution(f"read the rod of {tap}: the point leans on it")
    return Made(None, (check,))


def _bonded(basis: Basis, place: str, size_mm2: SquareMm, length_m: Metres) -> Remedy:
    """Return the work of a bond along the cable to the metal of an outbuilding."""
    return Remedy(
        slug=f"bond-{place}",
        does=f"Run a {size_mm2:g} mm² bond beside the cable from the main earth bar to the frame "
        f"or pipe of {place}",
        changes=((f"places.{place}.building_bond_mm2", float(size_mm2)),),
        parts=(
            Part(f"earth wire {size_mm2:g} mm², green-and-yellow", float(length_m), "m"),
            Part("earth clamp with label", 1.0),
        ),
        minutes=run_minutes(basis, "bond-set-up", "bond-run", length_m),
    )
