"""Volts at the origin of a home while the point charges: as read, or the declared floor."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.quantity import Amperes, Kiloamperes, Ohms, Volts
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.wiring.fault import loop_of_fault_current
from ampwright.standards.wiring.voltage_drop import source_drop, volts_after
from ampwright.survey.home import Home
from ampwright.tables.supply_limits import highest_legal_v, lowest_legal_v, nominal_v

METHOD: Final = Place("Ampwright", at="method, volts at the origin", trust=Trust.DERIVED)


@computes("Ipf", "A", formula="1000 * Ipf_ka", place=METHOD)
def in_amperes(Ipf_ka: Kiloamperes) -> Amperes:  # noqa: N803 - as printed
    """Return a fault current in amperes."""
    return Amperes(1000 * Ipf_ka)


@computes("Ulow", "V", formula="min(U)", place=METHOD)
def lowest(U: tuple[Volts, ...]) -> Volts:  # noqa: N803
    """Return the lowest of several readings."""
    return Volts(min(U))


@computes("Uhigh", "V", formula="max(U)", place=METHOD)
def highest(U: tuple[Volts, ...]) -> Volts:  # noqa: N803
    """Return the highest of several readings."""
    return Volts(max(U))


@dataclass(frozen=True, slots=True)
class AtHour:
    """Volts at the origin at one time of day, with the point charging."""

    at: str
    volts_v: Volts


@dataclass(frozen=True, slots=True)
class Origin:
    """Volts at the origin, line to neutral.

    ``lowest_v`` is with the point charging, ``highest_v`` with it idle. ``read`` and
    ``high_read`` say whether an instrument stands behind each; without one it is what the law
    allows at the terminals. ``hours`` holds each reading that was taken, in the order of the day.
    """

    lowest_v: Volts
    highest_v: Volts
    read: bool
    high_read: bool
    within_law: bool
    hours: tuple[AtHour, ...]


def origin_voltage(home: Home, basis: Basis, setting_a: Amperes) -> Made[Origin]:
    """Return the volts at the origin while the point draws its setting.

    Readings are taken to be of a lightly loaded house: the point's current then costs the drop
    of the service itself, through line and neutral, which errs on the safe side for a point on
    three lines. Where nothing was read the legal floor stands in, and holds at the terminals
    under load.
    """
    supply, floor_v = home.supply, lowest_legal_v(basis.book)
    readings = sorted((each.at, each.volts_v) for _, each in supply.readings.so_far())
    volts = tuple(each for _, each in readings)
    lows = (*volts, *_unless(supply.lowest_v, floor_v))
    highs = (*volts, *_unless(supply.highest_v, highest_legal_v(basis.book)))
    low_v = supply.lowest_v
    hours: tuple[AtHour, ...] = ()
    if lows:
        lost = service_drop(home, basis, setting_a)
        low_v = volts_after(lowest(lows), lost)
        hours = tuple(AtHour(at, volts_after(each, lost)) for at, each in readings)
    high_v = highest(highs) if highs else supply.highest_v
    within = bool(low_v >= floor_v)
    return Made(Origin(low_v, high_v, bool(lows), bool(highs), within, hours))


def _unless(read_v: Volts, stand_in_v: Volts) -> tuple[Volts, ...]:
    """Return a figure as a reading, unless it is what stands in where none was read."""
    return () if read_v == stand_in_v else (read_v,)


def service_drop(home: Home, basis: Basis, setting_a: Amperes) -> Volts:
    """Return the volts that the service loses under the point's current."""
    return source_drop(setting_a, service_loop(home, basis))


def service_loop(home: Home, basis: Basis) -> Ohms:
    """Return the loop of line and neutral behind the origin, from the fault current read there."""
    return loop_of_fault_current(nominal_v(basis.book), in_amperes(home.supply.fault_current_ka))
