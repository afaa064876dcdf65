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

from .hours import ANY, within_hours

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


@computes("Zpoint", "Ω", formula="dU / Ib", place=METHOD)
def loop_of_drop(dU: Volts, Ib: Amperes) -> Ohms:  # noqa: N803
    """Return the loop of line and neutral that loses so many volts under a current."""
    return Ohms(dU / Ib)


@computes("Imost", "A", formula="max(0, U - Ukeep) / (Zln + Zpoint)", place=METHOD)
def most_current(U: Volts, Ukeep: Volts, Zln: Ohms, Zpoint: Ohms) -> Amperes:  # noqa: N803
    """Return the most current under which so many volts are left at the end of two loops."""
    return Amperes(max(0, U - Ukeep) / (Zln + Zpoint))


@dataclass(frozen=True, slots=True)
class AtHour:
    """Volts at the origin at one time of day, if the point charges then, and if it may."""

    at: str
    volts_v: Volts
    allowed: bool


@dataclass(frozen=True, slots=True)
class Origin:
    """Volts at the origin, line to neutral.

    ``lowest_v`` is with the point charging at the hours allowed to it, ``highest_v`` with it
    idle. ``read`` and ``high_read`` say whether an instrument stands behind each; without one it
    is what the law allows at the terminals. ``within_law``: the supply keeps the legal floor
    with the point charging, and at every hour under an ordinary load of the house.
    ``hours`` holds each reading that was taken, in the order of the day.
    """

    lowest_v: Volts
    highest_v: Volts
    read: bool
    high_read: bool
    within_law: bool
    hours: tuple[AtHour, ...]


@dataclass(frozen=True, slots=True)
class ReadAt:
    """Volts read at one time of day, and whether the point may charge then."""

    at: str
    volts_v: Volts
    allowed: bool


def origin_voltage(home: Home, basis: Basis, setting_a: Amperes, hours: str) -> Made[Origin]:
    """Return the volts at the origin while the point draws its setting, at the hours allowed.

    Readings are taken to be of a lightly loaded house: the point's current then costs the drop
    of the service itself, through line and neutral, which errs on the safe side for a point on
    three lines. A lowest figure noted without its hour counts unless the hours are limited and
    one was read within them. Where nothing was read the legal floor stands in, and holds at the
    terminals under load.
    """
    supply, floor_v = home.supply, lowest_legal_v(basis.book)
    readings = read_by_hour(home, hours)
    noted = _unless(supply.lowest_v, floor_v)
    volts = tuple(each.volts_v for each in readings)
    highs = (*volts, *_unless(supply.highest_v, highest_legal_v(basis.book)))
    high_v = highest(highs) if highs else supply.highest_v
    if not (volts or noted):
        return Made(Origin(supply.lowest_v, high_v, False, bool(highs), True, ()))
    lost = service_drop(home, basis, setting_a)
    low_v = volts_after(lowest(_lows(readings, noted, hours)), lost)
    usual_v = volts_after(lowest((*volts, *noted)), _usual_drop(home, basis))
    out = Origin(
        lowest_v=low_v,
        highest_v=high_v,
        read=True,
        high_read=bool(highs),
        within_law=bool(low_v >= floor_v and usual_v >= floor_v),
        hours=tuple(
            AtHour(each.at, volts_after(each.volts_v, lost), each.allowed) for each in readings
        ),
    )
    return Made(out)


def read_by_hour(home: Home, hours: str) -> tuple[ReadAt, ...]:
    """Return every reading in the order of the day, and whether the point may charge then."""
    found = sorted((each.at, each.volts_v) for _, each in home.supply.readings.so_far())
    return tuple(ReadAt(at, volts, within_hours(home, at, hours)) for at, volts in found)


def _lows(readings: tuple[ReadAt, ...], noted: tuple[Volts, ...], hours: str) -> tuple[Volts, ...]:
    """Return the readings that the charging point must bear.

    All of them where none was taken within the hours allowed: nobody knows those hours better.
    """
    within = tuple(each.volts_v for each in readings if each.allowed)
    if hours != ANY and within:
        return within
    return (*(each.volts_v for each in readings), *noted)


def _usual_drop(home: Home, basis: Basis) -> Volts:
    """Return the volts that the service loses under an ordinary load of the house."""
    return source_drop(basis.rules.ordinary_load_a, service_loop(home, basis))


@dataclass(frozen=True, slots=True)
class MostAt:
    """The most current at one time of day under which the point keeps its volts."""

    at: str
    volts_v: Volts
    most_a: Amperes


def most_current_keeping(
    home: Home, basis: Basis, keep_v: Volts, drop_v: Volts, setting_a: Amperes
) -> Made[tuple[MostAt, ...]]:
    """Return the most current at each hour that was read which leaves so many volts at the point.

    ``keep_v`` is what the point needs, such as the low end of its window with the firm's margin;
    ``drop_v`` is what the cable from origin to point loses at ``setting_a``, to neutral. Empty
    where no reading has its hour.
    """
    readings = read_by_hour(home, ANY)
    if not readings:
        return Made(())
    service_ohm, cable_ohm = service_loop(home, basis), loop_of_drop(drop_v, setting_a)
    return Made(
        tuple(
            MostAt(
                each.at, each.volts_v, most_current(each.volts_v, keep_v, service_ohm, cable_ohm)
            )
            for each in readings
        )
    )


def _unless(read_v: Volts, stand_in_v: Volts) -> tuple[Volts, ...]:
    """Return a figure as a reading, unless it is what stands in where none was read."""
    return () if read_v == stand_in_v else (read_v,)


def service_drop(home: Home, basis: Basis, setting_a: Amperes) -> Volts:
    """Return the volts that the service loses under the point's current."""
    return source_drop(setting_a, service_loop(home, basis))


def service_loop(home: Home, basis: Basis) -> Ohms:
    """Return the loop of line and neutral behind the origin, from the fault current read there."""
    return loop_of_fault_current(nominal_v(basis.book), in_amperes(home.supply.fault_current_ka))
