"""What the existing feed of a board adds: volts lost and loop, before the point's own circuit."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check, Finding, at_most, requires, undetermined
from ampwright.foundations.errors import OutOfTableError
from ampwright.foundations.quantity import (
    Amperes,
    Count,
    Metres,
    Ohms,
    OhmsPerKm,
    Share,
    SquareMm,
    Volts,
)
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.places import wiring
from ampwright.standards.wiring.fault import line_and_earth, resistance_hot
from ampwright.standards.wiring.overload import (
    operating_current,
    overload_ends_in_time,
    overload_limit,
)
from ampwright.standards.wiring.voltage_drop import drop, drop_share, drop_within_limit
from ampwright.survey.home import Home
from ampwright.survey.home_boards import Board
from ampwright.survey.if_said import if_said
from ampwright.tables.book import Book
from ampwright.tables.capacity import CableFamily, used_at_c
from ampwright.tables.conductors import (
    armour_resistance_20,
    earth_core_mm2,
    resistance_20,
    temperature_multiplier,
)
from ampwright.tables.devices import overload_multiple
from ampwright.tables.supply_limits import nominal_between_lines_v, nominal_v
from ampwright.tables.voltage_drop import drop_mv

from ..noted import noted
from ..route import LegRun
from ..sources import LINES
from .capacity import ACTS_IN_TIME, REWIREABLE, LegCapacity, leg_capacity, may_protect

METHOD: Final = Place("Ampwright", at="method, the feed of the board", trust=Trust.DERIVED)
CORES: Final = {1: 2, 3: 4}
"""Cores of an armoured feed by the lines of the supply, its armour being the earth."""
METER: Final = "meter"
MAIN: Final = "main"
WIRE: Final = Place("online electricians' handbook", "5", "4.3.8, rewireable fuses")
UNSURVEYED: Final = "what lies beside it and in insulation was not surveyed: look along it"


@dataclass(frozen=True, slots=True)
class Feed:
    """What lies between the meter and the tap; all nought where the tap is at the meter.

    ``drop_v`` is between lines on three phases and to neutral on one, ``drop_share`` its share
    of that nominal voltage; ``drop_to_neutral_v`` is with one line loaded, the neutral with it.
    """

    length_m: Metres
    drop_v: Volts
    drop_share: Share
    drop_to_neutral_v: Volts
    r1r2_ohm: Ohms


NO_FEED: Final = Feed(Metres(0.0), Volts(0.0), Share(0.0), Volts(0.0), Ohms(0.0))


@computes("Ifeed", "A", formula="max(lines)", place=METHOD)
def worst_line(lines: tuple[Amperes, ...]) -> Amperes:
    """Return the current of the most loaded line.

    Examples
    --------
    >>> worst_line((Amperes(33.6), Amperes(36.6), Amperes(30.0)))
    36.6
    """
    return Amperes(max(lines))


@computes("Iline", "A", formula="sum(loads) + Ipoint", place=METHOD)
def on_the_line(loads: tuple[Amperes, ...], Ipoint: Amperes) -> Amperes:  # noqa: N803
    """Return what one line of a lesser board carries: its loads in full, and the point.

    Examples
    --------
    >>> on_the_line((Amperes(6.0), Amperes(3.0)), Amperes(16.0))
    25.0
    """
    return Amperes(float(sum(loads)) + Ipoint)


@requires("what the feed of the board adds is known", place=METHOD)
def feed_known(tap: str, found: str) -> Finding:
    """A table says what a feed of this size loses and how much its loop is.

    Only for sizes and kinds that the tables do not reach.

    Examples
    --------
    >>> feed_known("main", "no row for 70 mm²").why
    'measure at main what its feed adds: no row for 70 mm²'
    """
    return undetermined(f"measure at {tap} what its feed adds: {found}")


@requires("feed: load ≤ its own device", unit="A", place=wiring("433.1.1 (i)"))
def feed_device_carries(load: Amperes, device: Amperes) -> Finding:
    """The device at the head of the feed does not open at what the board draws with the point.

    By the demand of the whole house for the main board, by its loads in full for a lesser one.

    Examples
    --------
    >>> feed_device_carries(Amperes(25.0), Amperes(20.0)).outcome.value
    'fail'
    """
    return at_most(load, device)


@requires("feed: its own device ≤ what its cable carries", unit="A", place=wiring("433.1.1 (ii)"))
def feed_cable_carries(device: Amperes, capacity: Amperes) -> Finding:
    """The device at the head of the feed opens before its cable runs hot.

    As the worst stretch of it lies.

    Examples
    --------
    >>> feed_cable_carries(Amperes(40.0), Amperes(27.0)).outcome.value
    'fail'
    """
    return at_most(device, capacity)


def feed(
    home: Home, basis: Basis, tap: str, demand_a: tuple[Amperes, ...], setting_a: Amperes
) -> Made[Feed]:
    """Return what the feed of the tap loses and adds to the loop before the point's circuit.

    ``demand_a`` is what the supply must carry on each line with the point, which a main board's
    feed carries too; a lesser board's carries its own loads in full and the point. A board on
    tails of its own is taken to lose nothing on them. The earth of an armoured feed is its
    armour, of another its core. Lights share it, so its own share stays within the one for
    lights.
    """
    if near(home, basis, tap):
        return Made(NO_FEED)
    board, book, phases = home.boards[tap], basis.book, home.supply.phases
    try:
        out = _reckoned(book, phases, board, load_on(home, tap, demand_a, setting_a))
    except OutOfTableError as outside:
        return Made(NO_FEED, (feed_known(tap, str(outside)),))
    return Made(out, (drop_within_limit(out.drop_share, basis.rules.drop_share_lights),))


def feed_bears(
    home: Home, basis: Basis, tap: str, demand_a: tuple[Amperes, ...], setting_a: Amperes
) -> Made[None]:
    """Return whether the device and the cable of the tap's feed bear the point.

    The load is as in ``feed``. Whether there is a device of its own at all is judged with the
    other feeds of the house.
    """
    if near(home, basis, tap) or not home.boards[tap].feed_device_a:
        return Made(None)
    board, book, phases = home.boards[tap], basis.book, home.supply.phases
    load_a, device_a = load_on(home, tap, demand_a, setting_a), board.feed_device_a
    carried_a = feed_capacity(book, phases, board).capacity_a
    kind = if_said(lambda: board.feed_device_kind, "")
    late = REWIREABLE if kind == REWIREABLE else ACTS_IN_TIME
    bears = feed_cable_carries(device_a, may_protect(book, carried_a, board.feed_lies, late))
    return Made(
        None,
        (
            feed_device_carries(load_a, device_a),
            bears.with_caution(UNSURVEYED),
            *(() if not kind else (_ends_in_time(book, device_a, carried_a, kind),)),
        ),
    )


def _ends_in_time(book: Book, device_a: Amperes, carried_a: Amperes, kind: str) -> Check:
    """Return whether a small overload opens the feed's device before it harms the cable.

    By the figure of the device's own standard; what a cable bears is the breaker's figure. A
    cartridge fuse is proved in open air, where it acts later than in its case, and counts as a
    breaker.
    """
    bears = overload_multiple(book, device_a)
    acts = noted(book, "k2", Share(2.0), "", WIRE) if kind == REWIREABLE else bears
    return overload_ends_in_time(
        operating_current(device_a, acts), overload_limit(carried_a, bears)
    )


def near(home: Home, basis: Basis, tap: str) -> bool:
    """Say whether a tap is the meter itself, or a board on tails of its own."""
    return tap == METER or home.boards[tap].from_meter_m <= basis.rules.own_device_over_m


def load_on(home: Home, tap: str, demand_a: tuple[Amperes, ...], setting_a: Amperes) -> Amperes:
    """Return what the most loaded line of a board's feed carries with the point."""
    return worst_line(demand_a if tap == MAIN else board_load(home, tap, setting_a))


def board_load(home: Home, tap: str, setting_a: Amperes) -> tuple[Amperes, ...]:
    """Return what each line of a lesser board carries with the point on it."""
    phases = home.supply.phases
    here = [each for _, each in home.loads.listed() if each.board == tap]
    return tuple(
        on_the_line(
            tuple(each.amps_a for each in here if phases == 1 or each.phase in (line, "all")),
            setting_a,
        )
        for line in LINES[:phases]
    )


def feed_capacity(book: Book, phases: int, board: Board) -> LegCapacity:
    """Return what the cable of a feed carries as its worst stretch lies, nothing beside it."""
    leg = LegRun(
        id="feed",
        how=board.feed_lies,
        length_m=board.from_meter_m,
        insulation_mm=None,
        ambient_c=None,
        grouped_with=Count(0),
    )
    return leg_capacity(book, CableFamily(board.feed_kind), phases, board.feed_mm2, leg)


def _reckoned(book: Book, phases: int, board: Board, load_a: Amperes) -> Feed:
    """Return what a feed comes to; ``OutOfTableError`` where no table has its size."""
    family, size_mm2, length_m = CableFamily(board.feed_kind), board.feed_mm2, board.from_meter_m
    lost_v = drop(drop_mv(book, family, phases, size_mm2), load_a, length_m)
    return Feed(
        length_m,
        lost_v,
        drop_share(lost_v, nominal(book, phases)),
        drop(drop_mv(book, family, 1, size_mm2), load_a, length_m),
        loop_of_feed(book, phases, family, size_mm2, length_m),
    )


def nominal(book: Book, phases: int) -> Volts:
    """Return the nominal voltage that a drop is a share of: between lines on three phases."""
    return nominal_v(book) if phases == 1 else nominal_between_lines_v(book)


def loop_of_feed(
    book: Book, phases: int, family: CableFamily, size_mm2: SquareMm, length_m: Metres
) -> Ohms:
    """Return line and earth of the feed together, hot."""
    hot = temperature_multiplier(book, used_at_c(book, family))

    def at_work(cold: OhmsPerKm) -> OhmsPerKm:
        return resistance_hot(cold, hot)

    if family is CableFamily.ARMOURED:
        earth = armour_resistance_20(book, CORES[phases], size_mm2)
    else:
        earth = resistance_20(book, earth_core_mm2(book, family, size_mm2))
    return line_and_earth(at_work(resistance_20(book, size_mm2)), at_work(earth), length_m)
