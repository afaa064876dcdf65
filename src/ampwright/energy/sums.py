"""Honest sums for those who pay: sun in the car or sold, one point or two, what more speed buys."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.quantity import (
    Amperes,
    Count,
    ExactPence,
    Hours,
    KilowattHours,
    Kilowatts,
    Miles,
    MilesPerKwh,
    Minutes,
    PencePerKwh,
    Share,
)
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.survey.home import Home

from .need import Charging, Need, Nights, full_charge, hours_at, offered_power, power_taken

METHOD: Final = Place("Ampwright", at="method, honest sums", trust=Trust.DERIVED)
SUN: Final = "solar"


@computes("T", "min", formula="60 * t", place=METHOD)
def in_minutes(t: Hours) -> Minutes:
    """Return hours as minutes."""
    return Minutes(60 * t)


@computes("p", "p/kWh", formula="pexport - pnight", place=METHOD)
def lost_by_keeping(pexport: PencePerKwh, pnight: PencePerKwh) -> PencePerKwh:
    """Return what a unit of sun put in the car costs, against selling it and buying at night.

    Below nought it saves. For a car that can wait for the cheap hours.

    Examples
    --------
    >>> lost_by_keeping(PencePerKwh(15.0), PencePerKwh(8.0))
    7.0
    """
    return PencePerKwh(pexport - pnight)


@computes("E", "kWh", formula="min(Eexport, Eyear)", place=METHOD)
def sun_for_the_car(Eexport: KilowattHours, Eyear: KilowattHours) -> KilowattHours:  # noqa: N803
    """Return the most of what is sold that the cars could take: an upper end, not a forecast."""
    return KilowattHours(min(Eexport, Eyear))


@computes("K", "p", formula="E * p", place=METHOD)
def moved(E: KilowattHours, p: PencePerKwh) -> ExactPence:  # noqa: N803 - as printed
    """Return what some units come to at so much each, in pence not yet rounded.

    Examples
    --------
    >>> moved(KilowattHours(1200.0), PencePerKwh(7.0))
    8400.0
    """
    return ExactPence(E * p)


@computes("p", "p", formula="K / miles", place=METHOD)
def a_mile(K: ExactPence, miles: Miles) -> ExactPence:  # noqa: N803 - as printed
    """Return what a mile costs.

    Examples
    --------
    >>> a_mile(ExactPence(20318.0), Miles(8000.0))
    2.53975
    """
    return ExactPence(K / miles)


@computes("miles", "miles", formula="P * t * e * eta", place=METHOD)
def miles_a_night(P: Kilowatts, t: Hours, e: MilesPerKwh, eta: Share) -> Miles:  # noqa: N803
    """Return the miles that the cheap hours of a night hold at a power.

    Examples
    --------
    >>> miles_a_night(Kilowatts(7.36), Hours(5.0), MilesPerKwh(3.5), Share(0.9))
    115.92
    """
    return Miles(P * t * e * eta)


@computes("P", "kW", formula="P - Pcar", place=METHOD)
def beyond_the_cars(P: Kilowatts, Pcar: Kilowatts) -> Kilowatts:  # noqa: N803 - as printed
    """Return what a point offers that no car of the home takes.

    Examples
    --------
    >>> round(beyond_the_cars(Kilowatts(22.08), Kilowatts(11.0)), 2)
    11.08
    """
    return Kilowatts(P - Pcar)


@dataclass(frozen=True, slots=True)
class Sun:
    """Sun in the car or sold: pence lost on a unit kept, the most units, the least power."""

    lost_p: PencePerKwh
    most_kwh: KilowattHours
    lost_a_year_p: ExactPence
    least_kw: Kilowatts


def sun_or_sold(
    home: Home, basis: Basis, kwh_a_year: KilowattHours, least_a: Amperes, phases: Count
) -> Made[Sun | None]:
    """Return what sun in the car comes to beside selling it; nothing without solar panels.

    A point follows the sun from the least current it can be set to, on all its lines.
    """
    panels = [each for _, each in home.sources.listed() if each.kind == SUN]
    if not panels:
        return Made(None)
    lost = lost_by_keeping(home.tariff.export_p, home.tariff.night_p)
    most = sun_for_the_car(panels[0].yearly_export_kwh, kwh_a_year)
    least = offered_power(basis, least_a, phases > 1)
    return Made(Sun(lost, most, moved(most, lost), least))


@dataclass(frozen=True, slots=True)
class Size:
    """What a size of point gives one car: power taken, minutes a day, hours from empty to full."""

    setting_a: Amperes
    phases: Count
    offered_kw: Kilowatts
    taken_kw: Kilowatts
    day_min: Minutes
    full_h: Hours


SIZES: Final = (
    (Amperes(16.0), Count(1)),
    (Amperes(32.0), Count(1)),
    (Amperes(16.0), Count(3)),
    (Amperes(32.0), Count(3)),
)
"""The usual sizes: 3.7, 7.4, 11 and 22 kW at nominal voltage; *common practice*."""


def sizes(home: Home, basis: Basis, need: Need, car_id: str) -> Made[tuple[Size, ...]]:
    """Return what each usual size gives a car, whether or not this home's supply carries it.

    Three lines only where the supply has them. At nominal voltage; without the slow last part
    of a charge.
    """
    car = home.cars[car_id]
    (a_day,) = (each.kwh_a_day for each in need.cars if each.car == car_id)
    found = []
    for setting_a, phases in SIZES:
        if phases > home.supply.phases:
            continue
        offered = offered_power(basis, setting_a, phases > 1)
        three = phases > 1 and car.takes_phases > 1
        taken = power_taken(offered_power(basis, setting_a, three), car.takes_kw)
        full = full_charge(car.usable_kwh, basis.driving.charging_efficiency, taken)
        day = in_minutes(hours_at(a_day, taken))
        found.append(Size(setting_a, phases, offered, taken, day, full))
    return Made(tuple(found))


def unused(_home: Home, charging: Charging) -> Made[Kilowatts]:
    """Return what the point offers beyond the most that any car takes; nothing without a car."""
    if not charging.cars:
        return Made(Kilowatts(0.0))
    return Made(beyond_the_cars(charging.offered_kw, max(each.power_kw for each in charging.cars)))


@dataclass(frozen=True, slots=True)
class Points:
    """One point or two: hours wanted a night with the margin, hours there are, miles they hold."""

    needed_h: Hours
    cheap_h: Hours
    miles: Miles
    one_is_enough: bool


def one_or_two(_home: Home, basis: Basis, charging: Charging, nights: Nights) -> Made[Points]:
    """Return whether one point gives all cars of the home their need in the cheap hours.

    The cars charge one after another, the slowest of them as the measure of a night's miles.
    """
    slowest = min((each.power_kw for each in charging.cars), default=charging.offered_kw)
    driving = basis.driving
    miles = miles_a_night(
        slowest, nights.cheap_h, driving.miles_per_kwh, driving.charging_efficiency
    )
    return Made(Points(nights.needed_h, nights.cheap_h, miles, nights.covers))


@dataclass(frozen=True, slots=True)
class Mile:
    """What a mile costs, all charged at night or all by day."""

    at_night_p: ExactPence
    by_day_p: ExactPence


def cost_a_mile(home: Home, at_night_p: ExactPence, by_day_p: ExactPence) -> Made[Mile]:
    """Return what a mile of the cars costs at each rate, from a year's charging and its miles."""
    miles = driven(tuple(car.miles_a_year for _, car in home.cars.listed()))
    return Made(Mile(a_mile(at_night_p, miles), a_mile(by_day_p, miles)))


@computes("miles", "miles", formula="sum(miles)", place=METHOD)
def driven(miles: tuple[Miles, ...]) -> Miles:
    """Return the miles of all cars in a year."""
    return Miles(float(sum(miles)))
