"""Whether the earth of a board's feed bears a fault behind the fuse at its head."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check, Finding, Outcome, at_least, requires
from ampwright.foundations.errors import OutOfTableError
from ampwright.foundations.quantity import AdiabaticK, Amperes, Seconds, Share, SquareMm
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.places import wiring
from ampwright.standards.wiring.fault import (
    adiabatic_size,
    adiabatic_time,
    earth_core_withstands,
    equivalent_size,
    fault_current,
    fault_energy,
    loop,
)
from ampwright.standards.wiring.protective import (
    PROTECTIVE_SIZE,
    ByRule,
    LineConductor,
)
from ampwright.survey.home import Home
from ampwright.survey.home_boards import Board
from ampwright.tables.book import Book
from ampwright.tables.capacity import CableFamily
from ampwright.tables.conductors import armour_mm2, earth_core_mm2, k_factor, k_of_family
from ampwright.tables.devices import disconnection_time_beyond, fuse_loop_limit
from ampwright.tables.earthing import (
    protective_bounds,
    protective_least_mm2,
    protective_share,
)
from ampwright.tables.supply_limits import nominal_v

from .feed import CORES, feed_known, loop_of_feed, near

TABLE: Final = Place("BS 7671", "2018+A2:2022", "Table 54.7", Trust.PUBLISHED)
CROSS_LINKED: Final = "90 °C thermosetting"
ROD: Final = "TT"
FUSE: Final = Place(
    "time and current of a fuse",
    at="the energy it passes falls as the fault grows",
    trust=Trust.COMMON_PRACTICE,
)
FUSES: Final = ("BS 1361", "BS 88-2.2 and 88-6", "BS 88-3")


@computes("S", "mm²", formula="share * S", place=TABLE)
def share_of(share: Share, S: SquareMm) -> SquareMm:  # noqa: N803 - as printed
    """Return a share of a conductor's size.

    Examples
    --------
    >>> share_of(Share(0.5), SquareMm(50.0))
    25.0
    """
    return SquareMm(share * S)


@computes("I", "A", formula="min(If, Ia)", place=FUSE)
def hottest(If: Amperes, Ia: Amperes) -> Amperes:  # noqa: N803 - as printed
    """Return the fault current, or that which opens the fuse in the longest time if less.

    Examples
    --------
    >>> hottest(Amperes(920.0), Amperes(484.0))
    484.0
    """
    return Amperes(min(If, Ia))


@requires("a line of the feed bears a fault for as long as its fuse may take", unit="s",
          place=wiring("434.5.2"))  # fmt: skip
def feed_line_outlasts(t: Seconds, fuse: Seconds) -> Finding:
    """The line conductors of a feed do not reach their highest temperature before the fuse opens.

    At a fault to earth at its far end, the longest there is.

    Examples
    --------
    >>> feed_line_outlasts(Seconds(9.0), Seconds(5.0)).outcome.value
    'pass'
    """
    return at_least(t, fuse)


def feed_earth(home: Home, basis: Basis, tap: str) -> Made[None]:
    """Return whether earth and line of the tap's feed bear a fault to earth at its far end.

    By the rule of thumb for sizes, and where that is not met by the sum for the longest that a
    fuse may take. A board on tails of its own has no feed; in a house on a rod the electrode
    keeps a fault to earth small.
    """
    if near(home, basis, tap) or home.supply.earthing == ROD:
        return Made(None)
    board = home.boards[tap]
    try:
        return Made(None, tuple(_checks(home, basis, board)))
    except OutOfTableError as outside:
        return Made(None, (feed_known(tap, str(outside)),))


def _checks(home: Home, basis: Basis, board: Board) -> Iterator[Check]:
    """Yield what the conductors of a feed must bear."""
    book, family, phases = basis.book, CableFamily(board.feed_kind), home.supply.phases
    earth_mm2, earth_k = _earth(book, family, phases, board.feed_mm2)
    line_k, longest_s = k_of_family(book, family), disconnection_time_beyond(book, "TN")
    own_ohm = loop_of_feed(book, phases, family, board.feed_mm2, board.from_meter_m)
    fault_a = fault_current(nominal_v(book), loop(home.supply.ze_ohm, own_ohm))
    fuse_a = board.feed_device_a or home.supply.main_fuse_a
    worst_a = _worst(book, fault_a, fuse_a, longest_s)
    by_rule_mm2 = equivalent_size(by_rule(book, board.feed_mm2), line_k, earth_k)
    check = earth_core_withstands(by_rule_mm2, earth_mm2)
    if check.outcome is Outcome.FAIL:
        needed_mm2 = adiabatic_size(fault_energy(worst_a, longest_s), earth_k)
        check = earth_core_withstands(needed_mm2, earth_mm2)
    yield check
    yield feed_line_outlasts(adiabatic_time(line_k, board.feed_mm2, worst_a), longest_s)


def _worst(book: Book, fault_a: Amperes, fuse_a: Amperes, longest_s: Seconds) -> Amperes:
    """Return the current that heats a feed most before its fuse opens.

    A fuse lets most energy through where it takes longest: at the current that opens it in the
    longest time allowed. A fuse that no table holds is taken to need that time at the fault
    current itself.
    """
    for kind in FUSES:
        with suppress(OutOfTableError):
            limit_ohm = fuse_loop_limit(book, kind, fuse_a, longest_s)
            return hottest(fault_a, fault_current(nominal_v(book), limit_ohm))
    return fault_a


def _earth(
    book: Book, family: CableFamily, phases: int, line_mm2: SquareMm
) -> tuple[SquareMm, AdiabaticK]:
    """Return the earth of a feed and its factor k: the armour, or the core."""
    if family is CableFamily.ARMOURED:
        armour = armour_mm2(book, CORES[phases], line_mm2)
        return armour, k_factor(book, "steel armour", CROSS_LINKED)
    return earth_core_mm2(book, family, line_mm2), k_of_family(book, family)


def by_rule(book: Book, line_mm2: SquareMm) -> SquareMm:
    """Return the protective conductor that goes with a line by rule, of the same metal."""
    small, large = protective_bounds(book)
    case = LineConductor(line_mm2=line_mm2, small_mm2=small, large_mm2=large)
    decided = PROTECTIVE_SIZE.decide(case).outcome
    if decided is ByRule.SAME:
        return line_mm2
    if decided is ByRule.MIDDLE:
        return protective_least_mm2(book, line_mm2)
    return share_of(protective_share(book, line_mm2), line_mm2)
