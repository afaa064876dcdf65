"""How soon a fault to earth at the point is cut off, by whichever of its devices opens first."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from ampwright.foundations.checks import Check
from ampwright.foundations.quantity import Amperes, Ohms, Seconds, Share
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes
from ampwright.standards.wiring.disconnection import CUT_OFF, CircuitCase, CutOff, cut_off_in_time
from ampwright.standards.wiring.fault import fault_current
from ampwright.standards.wiring.overload import operating_current
from ampwright.tables.book import Book
from ampwright.tables.devices import (
    disconnection_time,
    disconnection_time_beyond,
    opens_at_once_s,
    overload_multiple,
    overload_trips_within,
    rcd_tests,
    rcd_time_ms,
    short_time_covers_a,
    trip_multiple,
)
from ampwright.tables.supply_limits import nominal_v

from ..residual import in_amperes, in_seconds
from .device import Guard

METHOD: Final = Place("Ampwright", at="method, which device opens first", trust=Trust.DERIVED)
SOON_BY_HEAT: Final = "must trip between"
BY_HEAT: Final = "must trip"
NETWORK_EARTH: Final = "pme"
WITH_SOCKETS: Final = "final, with sockets"
FIXED: Final = "final, fixed equipment only"
PLAIN_RCD: Final = "general"


@computes("t", "s", formula="min(devices)", place=METHOD)
def first_to_open(devices: tuple[Seconds, ...]) -> Seconds:
    """Return the time of the device that opens first.

    Examples
    --------
    >>> first_to_open((Seconds(0.1), Seconds(0.04)))
    0.04
    """
    return Seconds(min(devices))


def cut_off(book: Book, earthing: str, guard: Guard, zs_ohm: Ohms) -> Check:
    """Return whether a fault to earth at the point is cut off within the time allowed.

    Every point counts as a socket, which asks for the short time up to the larger rating. A
    device that only the point has inside sees no fault of the cable before it.
    """
    fault_a = fault_current(nominal_v(book), zs_ohm)
    times = tuple(times_of(book, guard, fault_a))
    return cut_off_in_time(first_to_open(times), time_allowed(book, earthing, guard.rating_a))


def time_allowed(book: Book, earthing: str, rating_a: Amperes) -> Seconds:
    """Return the longest time that a fault of a point's circuit may last."""
    system = "TN" if earthing == NETWORK_EARTH else "TT"
    case = CircuitCase(
        final=True,
        has_sockets=True,
        In=rating_a,
        socket_a=short_time_covers_a(book, WITH_SOCKETS),
        fixed_a=short_time_covers_a(book, FIXED),
    )
    if CUT_OFF.decide(case).outcome is CutOff.SHORT:
        return disconnection_time(book, system, nominal_v(book))
    return disconnection_time_beyond(book, system)


def times_of(book: Book, guard: Guard, fault_a: Amperes) -> Iterator[Seconds]:
    """Yield within what time each device opens at a fault current; the breaker is always one."""
    at_once_a = operating_current(guard.rating_a, Share(trip_multiple(book, guard.curve)))
    if fault_a >= at_once_a:
        yield opens_at_once_s(book)
    else:
        soon_a = operating_current(
            guard.rating_a, overload_multiple(book, guard.rating_a, SOON_BY_HEAT)
        )
        test = SOON_BY_HEAT if fault_a >= soon_a else BY_HEAT
        yield overload_trips_within(book, guard.rating_a, test)
    if not guard.rcd_in_point:
        residual_a = in_amperes(guard.rcd_ma)
        for times, test in rcd_tests(book, PLAIN_RCD):
            if fault_a >= operating_current(residual_a, times):
                yield in_seconds(rcd_time_ms(book, PLAIN_RCD, test))
                return
