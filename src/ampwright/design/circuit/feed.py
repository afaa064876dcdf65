"""What the existing feed of a board adds: volts lost and loop, before the point's own circuit."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Finding, requires, undetermined
from ampwright.foundations.errors import OutOfTableError
from ampwright.foundations.quantity import Amperes, Metres, Ohms, OhmsPerKm, Share, SquareMm, Volts
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.wiring.fault import line_and_earth, resistance_hot
from ampwright.standards.wiring.voltage_drop import drop, drop_share, drop_within_limit
from ampwright.survey.home import Home
from ampwright.tables.book import Book
from ampwright.tables.capacity import CableFamily, used_at_c
from ampwright.tables.conductors import armour_resistance_20, resistance_20, temperature_multiplier
from ampwright.tables.supply_limits import nominal_between_lines_v, nominal_v
from ampwright.tables.voltage_drop import drop_mv

METHOD: Final = Place("Ampwright", at="method, the feed of the board", trust=Trust.DERIVED)
CORES: Final = {1: 2, 3: 4}
"""Cores of a feed by the lines of the supply, its armour being the earth."""


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


@requires("what the feed of the board adds is known", place=METHOD)
def feed_known(tap: str, found: str) -> Finding:
    """A table says what a feed of this size loses and how much its loop is.

    Only for sizes that the tables do not reach.

    Examples
    --------
    >>> feed_known("main", "no row for 70 mm²").why
    'measure at main what its feed adds: no row for 70 mm²'
    """
    return undetermined(f"measure at {tap} what its feed adds: {found}")


def feed(home: Home, basis: Basis, tap: str, demand_a: tuple[Amperes, ...]) -> Made[Feed]:
    """Return what the feed of a board adds under the demand with the point, line by line.

    A board within the firm's limit of the meter hangs on tails, which count for nothing. Every
    longer feed is reckoned as armoured cable whose armour is its earth, hot, with all the
    house's demand on it: more is lost and the loop is larger than in any other feed of its
    size. Lights share it, so its own share stays within the one for lights.
    """
    if tap == "meter":
        return Made(NO_FEED)
    board = home.boards[tap]
    length_m = board.from_meter_m
    if length_m <= basis.rules.own_device_over_m:
        return Made(NO_FEED)
    try:
        out = _reckoned(basis.book, home.supply.phases, board.feed_mm2, length_m, demand_a)
    except OutOfTableError as outside:
        return Made(NO_FEED, (feed_known(tap, str(outside)),))
    return Made(out, (drop_within_limit(out.drop_share, basis.rules.drop_share_lights),))


def _reckoned(
    book: Book, phases: int, size_mm2: SquareMm, length_m: Metres, demand_a: tuple[Amperes, ...]
) -> Feed:
    """Return what a feed of one size comes to; ``OutOfTableError`` where no table has it."""
    load_a = worst_line(demand_a)
    lost_v = drop(drop_mv(book, CableFamily.ARMOURED, phases, size_mm2), load_a, length_m)
    return Feed(
        length_m,
        lost_v,
        drop_share(lost_v, nominal(book, phases)),
        drop(drop_mv(book, CableFamily.ARMOURED, 1, size_mm2), load_a, length_m),
        _loop(book, phases, size_mm2, length_m),
    )


def nominal(book: Book, phases: int) -> Volts:
    """Return the nominal voltage that a drop is a share of: between lines on three phases."""
    return nominal_v(book) if phases == 1 else nominal_between_lines_v(book)


def _loop(book: Book, phases: int, size_mm2: SquareMm, length_m: Metres) -> Ohms:
    """Return line and earth of the feed together, hot."""
    hot = temperature_multiplier(book, used_at_c(book, CableFamily.ARMOURED))

    def at_work(cold: OhmsPerKm) -> OhmsPerKm:
        return resistance_hot(cold, hot)

    line = at_work(resistance_20(book, size_mm2))
    return line_and_earth(
        line, at_work(armour_resistance_20(book, CORES[phases], size_mm2)), length_m
    )
