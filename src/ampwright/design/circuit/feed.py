"""What the existing feeds of a board add: volts lost and loop, before the point's own circuit."""

from __future__ import annotations

from collections.abc import Iterator
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
from ampwright.foundations.source import Place
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
from .capacity import ACTS_IN_TIME, REWIREABLE, LegCapacity, leg_capacity, may_protect
from .chain import (
    MAIN,
    METER,
    METHOD,
    Link,
    chain_in_order,
    chain_to,
    fed_from,
    links_to,
    load_on,
)

CORES: Final = {1: 2, 3: 4}
"""Cores of an armoured feed by the lines of the supply, its armour being the earth."""
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


@computes("L", "m", formula="sum(links)", place=METHOD)
def length_of_all(links: tuple[Metres, ...]) -> Metres:
    """Return the length of the feeds of a chain of boards together.

    Examples
    --------
    >>> length_of_all((Metres(45.0), Metres(15.0)))
    60.0
    """
    return Metres(float(sum(links)))


@computes("ΔU", "V", formula="sum(links)", place=METHOD)
def drop_of_all(links: tuple[Volts, ...]) -> Volts:
    """Return what the feeds of a chain of boards lose together; their angles taken as one.

    Examples
    --------
    >>> drop_of_all((Volts(3.5), Volts(1.5)))
    5.0
    """
    return Volts(float(sum(links)))


@computes("R1R2", "Ω", formula="sum(links)", place=METHOD)
def loop_of_all(links: tuple[Ohms, ...]) -> Ohms:
    """Return line and earth of the feeds of a chain of boards together.

    Examples
    --------
    >>> loop_of_all((Ohms(0.25), Ohms(0.5)))
    0.75
    """
    return Ohms(float(sum(links)))


@requires("what the feed of the board carries and adds is known", place=METHOD)
def feed_known(tap: str, found: str) -> Finding:
    """A table says what a feed of this size carries, what it loses and how much its loop is.

    Only for sizes and kinds that the tables do not reach.

    Examples
    --------
    >>> feed_known("main", "no row for 70 mm²").why
    'ask the maker what the feed of main carries, and measure what it adds: no row for 70 mm²'
    """
    return undetermined(
        f"ask the maker what the feed of {tap} carries, and measure what it adds: {found}"
    )


@requires("feed: load ≤ its own device", unit="A", place=wiring("433.1.1 (i)"))
def feed_device_carries(board: str, load: Amperes, device: Amperes) -> Finding:
    """The device at the head of a feed does not open at what the boards behind it draw.

    By the demand of the whole house where the main board is behind it, else by their loads in
    full, with the point.

    Examples
    --------
    >>> feed_device_carries("shed", Amperes(25.0), Amperes(20.0)).outcome.value
    'fail'
    """
    return at_most(load, device, f"the feed of {board}")


@requires("feed: its own device ≤ what its cable carries", unit="A", place=wiring("433.1.1 (ii)"))
def feed_cable_carries(board: str, device: Amperes, capacity: Amperes, refused: str) -> Finding:
    """The device at the head of a feed opens before its cable runs hot.

    As the worst stretch of it lies; ``refused`` says why the cable may not lie so, if it may not.

    Examples
    --------
    >>> feed_cable_carries("shed", Amperes(40.0), Amperes(27.0), "").outcome.value
    'fail'
    """
    return at_most(device, capacity, f"the feed of {board}{f': {refused}' if refused else ''}")


@requires("load ≤ main switch of a board on the way", unit="A", place=METHOD)
def switch_on_way_carries(board: str, load: Amperes, switch: Amperes) -> Finding:
    """The main switch of a lesser board carries what passes through it.

    That of the main board is among what the supply can carry.

    Examples
    --------
    >>> switch_on_way_carries("shed", Amperes(45.0), Amperes(40.0)).outcome.value
    'fail'
    """
    return at_most(load, switch, f"the switch of {board}")


def feed(
    home: Home, basis: Basis, tap: str, demand_a: tuple[Amperes, ...], setting_a: Amperes
) -> Made[Feed]:
    """Return what the feeds to the tap lose and add to the loop before the point's circuit.

    A board fed through others has a feed from each of them. ``demand_a`` is what the supply must
    carry on each line with the point, which the feed of the main board carries too; that of a
    lesser board carries its own loads and those behind it in full and the point. A board on tails
    of its own is taken to lose nothing on them. The earth of an armoured feed is its armour, of
    another its core. Lights share them, so their own share stays within the one for lights.
    """
    if tap == METER:
        return Made(NO_FEED)
    book, phases, parts = basis.book, home.supply.phases, []
    for link in links_to(home, basis, tap):
        load_a = load_on(home, link.board, demand_a, setting_a)
        try:
            parts.append(_reckoned(book, phases, home.boards[link.board], link, load_a))
        except OutOfTableError as outside:
            return Made(NO_FEED, (feed_known(link.board, str(outside)),))
    if not parts:
        return Made(NO_FEED)
    out = _together(book, phases, parts)
    return Made(out, (drop_within_limit(out.drop_share, basis.rules.drop_share_lights),))


def feed_bears(
    home: Home, basis: Basis, tap: str, demand_a: tuple[Amperes, ...], setting_a: Amperes
) -> Made[None]:
    """Return whether devices, cables and switches on the way to the tap bear the point.

    The loads are as in ``feed``. Whether a feed has a device of its own at all is judged with
    the other feeds of the house.
    """
    if tap == METER:
        return Made(None)
    checks: list[Check] = []
    first, *_ = chain_to(home, tap)
    if fed_from(home, first) != METER:
        checks.append(chain_in_order(first, fed_from(home, first), False))
    for link in links_to(home, basis, tap):
        load_a = load_on(home, link.board, demand_a, setting_a)
        if link.begins != METER:
            checks.append(chain_in_order(link.board, link.begins, bool(link.length_m > 0)))
        checks.extend(_device_bears(home, basis, link.board, load_a))
        if link.board != MAIN:
            main_a = home.boards[link.board].main_switch_a
            checks.append(switch_on_way_carries(link.board, load_a, main_a))
    return Made(None, tuple(checks))


def _device_bears(home: Home, basis: Basis, id_: str, load_a: Amperes) -> Iterator[Check]:
    """Yield whether the device at the head of a feed bears the load, and its cable the device.

    Of a cable that no table holds nothing is said but that.
    """
    board, book = home.boards[id_], basis.book
    device_a = board.feed_device_a
    if not device_a:
        return
    carried = feed_capacity(book, home.supply.phases, board)
    carried_a = carried.capacity_a
    kind = if_said(lambda: board.feed_device_kind, "")
    late = REWIREABLE if kind == REWIREABLE else ACTS_IN_TIME
    bears = may_protect(book, carried_a, board.feed_lies, late)
    yield feed_device_carries(id_, load_a, device_a)
    if carried.unlisted:
        yield feed_known(id_, carried.refused)
        return
    yield feed_cable_carries(id_, device_a, bears, carried.refused).with_caution(UNSURVEYED)
    if kind:
        yield _ends_in_time(book, device_a, carried_a, kind)


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
    return tap == METER or not links_to(home, basis, tap)


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


def _reckoned(book: Book, phases: int, board: Board, link: Link, load_a: Amperes) -> Feed:
    """Return what a feed comes to; ``OutOfTableError`` where no table has its size."""
    family, size_mm2, length_m = CableFamily(board.feed_kind), board.feed_mm2, link.length_m
    lost_v = drop(drop_mv(book, family, phases, size_mm2), load_a, length_m)
    return Feed(
        length_m,
        lost_v,
        drop_share(lost_v, nominal(book, phases)),
        drop(drop_mv(book, family, 1, size_mm2), load_a, length_m),
        loop_of_feed(book, phases, family, size_mm2, length_m),
    )


def _together(book: Book, phases: int, parts: list[Feed]) -> Feed:
    """Return what the feeds of a chain come to; one alone as it is."""
    if len(parts) == 1:
        return parts[0]
    lost_v = drop_of_all(tuple(each.drop_v for each in parts))
    return Feed(
        length_of_all(tuple(each.length_m for each in parts)),
        lost_v,
        drop_share(lost_v, nominal(book, phases)),
        drop_of_all(tuple(each.drop_to_neutral_v for each in parts)),
        loop_of_all(tuple(each.r1r2_ohm for each in parts)),
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
