"""What the cars of a home need, how long that takes at a power, and what it costs to run."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Finding, at_most, requires
from ampwright.foundations.quantity import (
    Amperes,
    Count,
    ExactPence,
    Hours,
    KilowattHours,
    Kilowatts,
    Miles,
    MilesPerKwh,
    PencePerKwh,
    Share,
    Volts,
)
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.survey.home import Home
from ampwright.tables.supply_limits import nominal_v

METHOD: Final = Place("Ampwright", at="method, energy for a car", trust=Trust.DERIVED)


@computes("Eyear", "kWh", formula="miles / (e * eta)", place=METHOD)
def yearly_energy(miles: Miles, e: MilesPerKwh, eta: Share) -> KilowattHours:
    """Return what a car draws at the wall in a year of average weather."""
    return KilowattHours(miles / (e * eta))


@computes("Eday", "kWh", formula="Eyear / 365", place=METHOD)
def daily_energy(Eyear: KilowattHours) -> KilowattHours:  # noqa: N803 - as printed
    """Return what a car draws at the wall on an average day."""
    return KilowattHours(Eyear / 365)


@computes("Eyear", "kWh", formula="sum(E)", place=METHOD)
def all_cars(E: tuple[KilowattHours, ...]) -> KilowattHours:  # noqa: N803
    """Return the energy of all cars together."""
    return KilowattHours(sum(E))


@computes("P", "kW", formula="I * U0 / 1000", place=METHOD)
def power_on_one_line(I: Amperes, U0: Volts) -> Kilowatts:  # noqa: E741, N803
    """Return the power of a current on one line at nominal voltage."""
    return Kilowatts(I * U0 / 1000)


@computes("P", "kW", formula="3 * I * U0 / 1000", place=METHOD)
def power_on_three_lines(I: Amperes, U0: Volts) -> Kilowatts:  # noqa: E741, N803
    """Return the power of the same current on three lines at nominal voltage."""
    return Kilowatts(3 * I * U0 / 1000)


@computes("Pcar", "kW", formula="min(P, Pmax)", place=METHOD)
def power_taken(P: Kilowatts, Pmax: Kilowatts) -> Kilowatts:  # noqa: N803
    """Return what a car takes of what a point offers: the less of the two."""
    return Kilowatts(min(P, Pmax))


@computes("t", "h", formula="E / P", place=METHOD)
def hours_at(E: KilowattHours, P: Kilowatts) -> Hours:  # noqa: N803
    """Return how long an energy takes at a power."""
    return Hours(E / P)


@computes("tfull", "h", formula="C / eta / P", place=METHOD)
def full_charge(C: KilowattHours, eta: Share, P: Kilowatts) -> Hours:  # noqa: N803
    """Return how long a battery takes from empty to full, without the slow last part."""
    return Hours(C / eta / P)


@computes("t", "h", formula="sum(t)", place=METHOD)
def one_after_another(t: tuple[Hours, ...]) -> Hours:
    """Return how long several cars take at one point."""
    return Hours(sum(t))


@computes("tneed", "h", formula="t * margin", place=METHOD)
def with_margin(t: Hours, margin: Share) -> Hours:
    """Return the hours to have in hand, with the firm's margin."""
    return Hours(t * margin)


@computes("K", "p", formula="E * p", place=METHOD)
def yearly_cost(E: KilowattHours, p: PencePerKwh) -> ExactPence:  # noqa: N803
    """Return the cost of an energy in pence, not yet rounded."""
    return ExactPence(E * p)


@requires("what the cars need, with the margin ≤ the hours allowed", unit="h", place=METHOD)
def need_within_hours(needed: Hours, allowed: Hours) -> Finding:
    """A point that may only charge at some hours still covers an average day.

    For an average day with the firm's margin; a long drive the day before is another matter.

    Examples
    --------
    >>> need_within_hours(Hours(2.1), Hours(5.0)).outcome.value
    'pass'
    """
    return at_most(needed, allowed)


@dataclass(frozen=True, slots=True)
class CarNeed:
    """What one car needs at the wall."""

    car: str
    kwh_a_year: KilowattHours
    kwh_a_day: KilowattHours


@dataclass(frozen=True, slots=True)
class Need:
    """What all cars of a home need at the wall, and each of them."""

    kwh_a_year: KilowattHours
    kwh_a_day: KilowattHours
    cars: tuple[CarNeed, ...]


def yearly_need(home: Home, basis: Basis) -> Made[Need]:
    """Return the energy the cars of a home draw at the wall, all charged at home.

    From miles alone: an average year. Raises ``Unanswered`` while not every car is listed.
    """
    cars = tuple(_car_need(id_, car.miles_a_year, basis) for id_, car in home.cars.listed())
    years = tuple(each.kwh_a_year for each in cars)
    year = years[0] if len(years) == 1 else all_cars(years)
    return Made(Need(year, daily_energy(year), cars))


def _car_need(id_: str, miles: Miles, basis: Basis) -> CarNeed:
    """Return what one car needs."""
    driving = basis.driving
    year = yearly_energy(miles, driving.miles_per_kwh, driving.charging_efficiency)
    return CarNeed(id_, year, daily_energy(year))


@dataclass(frozen=True, slots=True)
class CarCharging:
    """How one car charges at a point: its power, an average day's hours, empty to full."""

    car: str
    power_kw: Kilowatts
    hours_a_day: Hours
    full_h: Hours


@dataclass(frozen=True, slots=True)
class Charging:
    """How the cars of a home charge at one point, one after another."""

    offered_kw: Kilowatts
    hours_a_day: Hours
    cars: tuple[CarCharging, ...]


def charging_time(
    home: Home, basis: Basis, need: Need, setting_a: Amperes, phases: Count
) -> Made[Charging]:
    """Return how long the cars take at a point set to a current on so many phases.

    At nominal voltage; a car for one phase takes one of three. The slow last part of a charge
    and a cold battery are left out.
    """
    days = {each.car: each.kwh_a_day for each in need.cars}
    cars = []
    for id_, car in home.cars.listed():
        offered = offered_power(basis, setting_a, phases > 1 and car.takes_phases > 1)
        taken = power_taken(offered, car.takes_kw)
        full = full_charge(car.usable_kwh, basis.driving.charging_efficiency, taken)
        cars.append(CarCharging(id_, taken, hours_at(days[id_], taken), full))
    hours = tuple(each.hours_a_day for each in cars)
    day = hours[0] if len(hours) == 1 else one_after_another(hours)
    return Made(Charging(offered_power(basis, setting_a, phases > 1), day, tuple(cars)))


def offered_power(basis: Basis, setting_a: Amperes, three_phase: bool) -> Kilowatts:
    """Return the power a point offers at its setting and nominal voltage."""
    power = power_on_three_lines if three_phase else power_on_one_line
    return power(setting_a, nominal_v(basis.book))


@dataclass(frozen=True, slots=True)
class Nights:
    """Whether the cheap hours hold an average day's charging with the firm's margin."""

    needed_h: Hours
    cheap_h: Hours
    covers: bool


def cheap_nights(home: Home, basis: Basis, hours_a_day: Hours) -> Made[Nights]:
    """Return whether the cheap hours of the tariff cover what the cars need."""
    needed = with_margin(hours_a_day, basis.rules.need_margin)
    cheap = home.tariff.night_h
    return Made(Nights(needed, cheap, bool(needed <= cheap)))


def night_alone(_home: Home, nights: Nights) -> Made[Nights]:
    """Return whether a point that is locked to the cheap hours still gives the cars their need.

    No fact of the home bears on it beyond what was handed on.
    """
    return Made(nights, (need_within_hours(nights.needed_h, nights.cheap_h),))


@dataclass(frozen=True, slots=True)
class Cost:
    """What a year's charging costs at the two rates of a tariff, in pence not yet rounded."""

    at_night_p: ExactPence
    by_day_p: ExactPence


def running_cost(home: Home, kwh_a_year: KilowattHours) -> Made[Cost]:
    """Return what a year's charging costs, all of it at one rate or at the other."""
    tariff = home.tariff
    night, day = yearly_cost(kwh_a_year, tariff.night_p), yearly_cost(kwh_a_year, tariff.day_p)
    return Made(Cost(night, day))
