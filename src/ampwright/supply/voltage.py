"""Volts at the origin of a home while the point charges: as read, or the declared floor."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.quantity import Amperes, Kiloamperes, Ohms, Volts
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.wiring.fault import loop_of_fault_current
from ampwright.standards.wiring.voltage_drop import source_drop, volts_after
from ampwright.survey.home import Home
from ampwright.survey.home_readings import Reading
from ampwright.survey.if_said import if_said
from ampwright.tables.supply_limits import highest_legal_v, lowest_legal_v, nominal_v

from .hours import ANY, clock, within_hours

EVENING: Final = (clock("16:00", "evening"), clock("21:00", "evening"))
"""Minutes of the day between which homes draw most: tea time, with an hour to each side;
*common practice*."""
METHOD: Final = Place("Ampwright", at="method, volts at the origin", trust=Trust.DERIVED)


@computes("Ipf", "A", formula="1000 * Ipf_ka", place=METHOD)
def in_amperes(Ipf_ka: Kiloamperes) -> Amperes:  # noqa: N803 - as printed
    """Return a fault current in amperes."""
    return Amperes(1000 * Ipf_ka)


@computes("Ulow", "V", formula="min(U)", place=METHOD)
def lowest(U: tuple[Volts, ...]) -> Volts:  # noqa: N803
    """Return the lowest of several readings."""
    return Volts(min(U))


def least_of(volts: tuple[Volts, ...]) -> Volts:
    """Return the lowest of several readings; of a single one there is nothing to work out."""
    return volts[0] if len(volts) == 1 else lowest(volts)


@computes("Uhigh", "V", formula="max(U)", place=METHOD)
def highest(U: tuple[Volts, ...]) -> Volts:  # noqa: N803
    """Return the highest of several readings."""
    return Volts(max(U))


@computes("Ihouse", "A", formula="max(Iread, Iordinary)", place=METHOD)
def house_load(Iread: Amperes, Iordinary: Amperes) -> Amperes:  # noqa: N803
    """Return the home's own load beside the charging car: what was noted, or an ordinary one.

    Examples
    --------
    >>> house_load(Amperes(2.0), Amperes(13.0)), house_load(Amperes(20.0), Amperes(13.0))
    (13.0, 20.0)
    """
    return Amperes(max(Iread, Iordinary))


@computes("Uhouse", "V", formula="U + Zln * (Iread - Ihouse)", place=METHOD)
def under_load(U: Volts, Zln: Ohms, Iread: Amperes, Ihouse: Amperes) -> Volts:  # noqa: N803
    """Return volts that were read under one load of the house as they are under another.

    Examples
    --------
    >>> under_load(Volts(217.0), Ohms(0.5), Amperes(2.0), Amperes(12.0))
    212.0
    """
    return Volts(U + Zln * (Iread - Ihouse))


@computes("Ukeep", "V", formula="floor + margin", place=METHOD)
def floor_kept(floor: Volts, margin: Volts) -> Volts:
    """Return the least volts that keep the firm's margin above the legal floor.

    Examples
    --------
    >>> floor_kept(Volts(216.2), Volts(3.0))
    219.2
    """
    return Volts(floor + margin)


@tells(METHOD)
def floor_left(low: Volts, keep: Volts) -> str:
    """Say what a line in doubt is left with while the point charges.

    Examples
    --------
    >>> floor_left(Volts(220.0), Volts(219.2)).says
    'a line in doubt keeps 220.0 V at the origin under the point, 219.2 V with the margin'
    """
    return (
        f"a line in doubt keeps {low:.1f} V at the origin under the point, {keep:g} V with the "
        "margin"
    )


@tells(METHOD, caution=True)
def floor_spent(low: Volts, keep: Volts, setting: Amperes) -> str:
    """Say that a setting spends what a line in doubt has left, and waits for a stronger one.

    To keep the terminals within the law is the operator's duty, not the point's.

    Examples
    --------
    >>> floor_spent(Volts(210.4), Volts(219.2), Amperes(32.0)).caution[:44]
    'at 32 A the terminals would stand at 210.4 V'
    """
    return (
        f"at {setting:g} A the terminals would stand at {low:.1f} V, by what was read, where "
        f"{keep:g} V keep the margin: the operator strengthens the line before the point draws so "
        "much at these hours"
    )


@tells(METHOD)
def kept_today(usual: Volts, floor: Volts) -> str:
    """Say what the terminals stand at with a kettle on, before anything is added.

    Examples
    --------
    >>> kept_today(Volts(222.0), Volts(216.2)).says
    'the terminals keep 222.0 V under an ordinary load, by what was read; the law asks for 216.2 V'
    """
    return (
        f"the terminals keep {usual:.1f} V under an ordinary load, by what was read; the law asks "
        f"for {floor:g} V"
    )


@tells(METHOD, caution=True)
def under_law_today(usual: Volts, floor: Volts) -> str:
    """Ask for a report of a network that is under the law before anything is added.

    That is for its operator to mend and no reason to refuse a point. The readings behind it go
    with the form.

    Examples
    --------
    >>> under_law_today(Volts(209.9), Volts(216.2)).caution[-27:]
    'report it with the readings'
    """
    return (
        f"the network is under the law today, whatever is fitted: {usual:.1f} V at the "
        f"terminals under an ordinary load, {floor:g} V asked for; report it with the readings"
    )


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
    ``strained``: it does not, and the point's own current spends what the hours allowed to it
    leave above that floor, the firm's margin with it: the line wants strengthening first.
    ``hours`` holds each reading that was taken, in the order of the day.
    """

    lowest_v: Volts
    highest_v: Volts
    read: bool
    high_read: bool
    within_law: bool
    strained: bool
    hours: tuple[AtHour, ...]


@dataclass(frozen=True, slots=True)
class ReadAt:
    """Volts read at one time of day, and whether the point may charge then.

    ``house_a`` is what the house drew at that moment, ``None`` where nobody noted it.
    """

    at: str
    volts_v: Volts
    allowed: bool
    house_a: Amperes | None


def origin_voltage(home: Home, basis: Basis, setting_a: Amperes, hours: str) -> Made[Origin]:
    """Return the volts at the origin while the point draws its setting, at the hours allowed.

    Readings are of the house as it was: the point's current then costs the drop of the service
    itself, through line and neutral, which errs on the safe side for a point on three lines.
    Where what the house drew was noted, a reading at an hour that is not night alone counts as
    it would be under an ordinary load, if that is more. A lowest figure noted without its hour
    counts unless the hours are limited and one was read within them. Where nobody read in the
    evening, when lines are lowest, the legal floor stands in, and holds at the terminals under
    load; readings that are under it all the same count.
    """
    supply, floor_v = home.supply, lowest_legal_v(basis.book)
    readings = read_by_hour(home, hours)
    noted = _unless(supply.lowest_v, floor_v)
    volts = tuple(each.volts_v for each in readings)
    highs = (*volts, *_unless(supply.highest_v, highest_legal_v(basis.book)))
    high_v = highest(highs) if highs else supply.highest_v
    if not (volts or noted):
        return Made(Origin(supply.lowest_v, high_v, False, bool(highs), True, False, ()))
    if not (noted or lowest_known(readings, hours, floor_v)):
        idle = tuple(AtHour(each.at, each.volts_v, each.allowed) for each in readings)
        return Made(Origin(supply.lowest_v, high_v, False, True, True, False, idle))
    loop_ohm = service_loop(home, basis)
    lost = source_drop(setting_a, loop_ohm)
    beside = tuple(beside_house(each, basis, loop_ohm, hours) for each in readings)
    low_v = volts_after(least_of(_lows(beside, noted, hours)), lost)
    usual_v = least_of(_usual(readings, noted, basis, loop_ohm))
    within_law = bool(low_v >= floor_v and usual_v >= floor_v)
    keep_v = floor_kept(floor_v, basis.rules.voltage_margin_v)
    strained = not within_law and bool(low_v < keep_v)
    out = Origin(
        lowest_v=low_v,
        highest_v=high_v,
        read=True,
        high_read=bool(highs),
        within_law=within_law,
        strained=strained,
        hours=tuple(
            AtHour(each.at, volts_after(each.volts_v, lost), each.allowed) for each in beside
        ),
    )
    told = _told(usual_v, floor_v, low_v, keep_v, strained, setting_a)
    return Made(out, notes=tuple(told))


def _told(
    usual_v: Volts, floor_v: Volts, low_v: Volts, keep_v: Volts, strained: bool, setting_a: Amperes
) -> Iterator[Note]:
    """Yield what the network keeps today, and what a line in doubt is left with."""
    kept = usual_v >= floor_v
    yield kept_today(usual_v, floor_v) if kept else under_law_today(usual_v, floor_v)
    if strained:
        yield floor_spent(low_v, keep_v, setting_a)
    elif not (kept and low_v >= floor_v):
        yield floor_left(low_v, keep_v)


def read_by_hour(home: Home, hours: str) -> tuple[ReadAt, ...]:
    """Return every reading in the order of the day, and whether the point may charge then."""
    found = sorted(
        (each.at, each.volts_v, if_said(_drawn(each), None))
        for _, each in home.supply.readings.so_far()
    )
    return tuple(
        ReadAt(at, volts, within_hours(home, at, hours), house_a) for at, volts, house_a in found
    )


def lowest_known(readings: tuple[ReadAt, ...], hours: str, floor_v: Volts) -> bool:
    """Say whether the readings tell how low the line goes while the point charges.

    One within the hours of a point that is held to some, one of an evening, or any under the
    law: a noon alone says nothing of tea time.
    """
    if hours != ANY and any(each.allowed for each in readings):
        return True
    return any(in_the_evening(each.at) or each.volts_v < floor_v for each in readings)


def in_the_evening(at: str) -> bool:
    """Say whether a time of day lies in the hours at which a line is at its lowest.

    Examples
    --------
    >>> in_the_evening("18:30"), in_the_evening("12:00"), in_the_evening("21:00")
    (True, False, False)
    """
    return EVENING[0] <= clock(at, "supply.readings") < EVENING[1]


def _drawn(reading: Reading) -> Callable[[], Amperes | None]:
    """Return how to read what the house drew at a reading."""
    return lambda: reading.house_a


def beside_house(reading: ReadAt, basis: Basis, loop_ohm: Ohms, hours: str) -> ReadAt:
    """Return a reading as the charging point meets it, the house drawing its own.

    By night alone the house sleeps and what was read stands; so does what was read under a load
    that nobody noted.
    """
    if reading.house_a is None or hours != ANY:
        return reading
    return replace(reading, volts_v=_ordinary(reading.volts_v, reading.house_a, basis, loop_ohm))


def _ordinary(volts_v: Volts, house_a: Amperes, basis: Basis, loop_ohm: Ohms) -> Volts:
    """Return volts that were read under a known load as they are under an ordinary one."""
    load_a = house_load(house_a, basis.rules.ordinary_load_a)
    return under_load(volts_v, loop_ohm, house_a, load_a)


def _lows(readings: tuple[ReadAt, ...], noted: tuple[Volts, ...], hours: str) -> tuple[Volts, ...]:
    """Return the readings that the charging point must bear.

    All of them where none was taken within the hours allowed: nobody knows those hours better.
    """
    within = tuple(each.volts_v for each in readings if each.allowed)
    if hours != ANY and within:
        return within
    return (*(each.volts_v for each in readings), *noted)


def _usual(
    readings: tuple[ReadAt, ...], noted: tuple[Volts, ...], basis: Basis, loop_ohm: Ohms
) -> tuple[Volts, ...]:
    """Return every reading under an ordinary load of the house, the point idle.

    One whose load nobody noted is taken to be of a lightly loaded house.
    """
    light = tuple(each.volts_v for each in readings if each.house_a is None)
    unloaded = (*light, *noted)
    found = [
        _ordinary(each.volts_v, each.house_a, basis, loop_ohm)
        for each in readings
        if each.house_a is not None
    ]
    if unloaded:
        drop_v = source_drop(basis.rules.ordinary_load_a, loop_ohm)
        found.append(volts_after(least_of(unloaded), drop_v))
    return tuple(found)


def _unless(read_v: Volts, stand_in_v: Volts) -> tuple[Volts, ...]:
    """Return a figure as a reading, unless it is what stands in where none was read."""
    return () if read_v == stand_in_v else (read_v,)


def service_loop(home: Home, basis: Basis) -> Ohms:
    """Return the loop of line and neutral behind the origin, from the fault current read there."""
    return loop_of_fault_current(nominal_v(basis.book), in_amperes(home.supply.fault_current_ka))
