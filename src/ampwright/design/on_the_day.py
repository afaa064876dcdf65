"""What only an instrument on the finished work can prove, each with what it is held to.

An option is sound without it: nothing here passes or fails before somebody has read it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint, Detection
from ampwright.foundations.checks import Requirement, clause_of
from ampwright.foundations.quantity import Amperes, Celsius, Ohms, Share
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.charging.pilot import pilot_within_setting
from ampwright.standards.network.limiter import limiter_proved, limiter_quick_enough
from ampwright.standards.wiring.earthing import rod_stable
from ampwright.standards.wiring.fault import (
    conductor_resistance,
    loop_within_limit,
    measured_loop_limit,
    reference_factor,
)
from ampwright.standards.wiring.open_pen_device import open_pen_device_quick
from ampwright.standards.wiring.rcd import rcd_trips_in_time
from ampwright.survey.home import Home
from ampwright.tables.charging import open_pen_time
from ampwright.tables.conductors import resistance_20, temperature_coefficient
from ampwright.tables.devices import rcd_time_ms
from ampwright.tables.network import limiting_time
from ampwright.tables.verification import cold_loop_share

from .board.front import GENERAL
from .circuit.cable import Cable
from .circuit.setting import duty_of, offered
from .earthing.point import NETWORK_EARTH
from .noted import noted
from .residual import in_seconds

METHOD: Final = Place("Ampwright", at="method, readings to expect", trust=Trust.DERIVED)
COLD_DAY: Final = Place("a cold day", at="10 °C in the cable", trust=Trust.COMMON_PRACTICE)
REFERENCE: Final = Place("IEC 60228", at="reference temperature, 20 °C", trust=Trust.PUBLISHED)
LOOP: Final = "read at the point with the conductors cold"
ROD: Final = "read apart from the house, before the point is used"
RCD: Final = "tested at its rated residual current, its button afterwards"
PEN: Final = "tried as its maker says"
STEP: Final = "with a load switched on that takes the house over the limit"
LOST: Final = "sensor unplugged, link cut and power cut, each tried with its time written down"
COLD_C, REFERENCE_C = Celsius(10.0), Celsius(20.0)


@dataclass(frozen=True, slots=True)
class ToProve:
    """One thing to prove: what, the clause and its limit, and how it is tried.

    ``limit`` is ``None`` where the clause holds no number to one.
    """

    what: str
    clause: Requirement
    limit: float | None
    how: str


@dataclass(frozen=True, slots=True)
class OnTheDay:
    """What is proved when the work is done, and what the readings should come to.

    ``r1r2_ohm`` is line and protective conductor together at 20 °C and ``r1r2_cold_ohm`` on a
    cold day, as a reading with everything dead should give it; ``offered_a`` is what the pilot
    says at the duty of the setting.
    """

    r1r2_ohm: Ohms
    r1r2_cold_ohm: Ohms
    offered_a: Amperes
    each: tuple[ToProve, ...]


@computes("R1R2", "Ω", formula="R1 + R2", place=METHOD)
def both_cores(R1: Ohms, R2: Ohms) -> Ohms:  # noqa: N803 - as printed
    """Return line and protective conductor together.

    Examples
    --------
    >>> both_cores(Ohms(0.03), Ohms(0.05))
    0.08
    """
    return Ohms(R1 + R2)


@computes("R1R2", "Ω", formula="R1R2 / kt", place=METHOD)
def as_read(R1R2: Ohms, kt: Share) -> Ohms:  # noqa: N803 - as printed
    """Return what a resistance of the reference temperature reads at another.

    Examples
    --------
    >>> as_read(Ohms(0.08), Share(1.0409))
    0.0769
    """
    return Ohms(R1R2 / kt)


def on_the_day(
    _home: Home,
    basis: Basis,
    point: ChargePoint,
    setting_a: Amperes,
    cable: Cable,
    earthing: str,
    house_limit: bool,
) -> Made[OnTheDay]:
    """Return what is proved when the work is done, in the order of the tests."""
    book = basis.book
    r1 = conductor_resistance(resistance_20(book, cable.size_mm2), cable.length_m)
    r2 = conductor_resistance(resistance_20(book, cable.earth_mm2), cable.length_m)
    r1r2_ohm = both_cores(r1, r2)
    duty = duty_of(book, setting_a)
    found = (
        *_earth(basis, cable, earthing),
        rcd_time(basis),
        _pilot(setting_a, duty),
        *_guard(basis, point, earthing),
        *(_limiter(basis) if house_limit else ()),
    )
    offered_a = offered(book, duty)
    return Made(OnTheDay(r1r2_ohm, as_read(r1r2_ohm, _cold(basis)), offered_a, found))


def _cold(basis: Basis) -> Share:
    """Return what brings a reading of a cold day to the reference temperature."""
    book = basis.book
    day = noted(book, "t", COLD_C, "°C", COLD_DAY)
    reference = noted(book, "t20", REFERENCE_C, "°C", REFERENCE)
    return reference_factor(day, reference, temperature_coefficient(book))


def _earth(basis: Basis, cable: Cable, earthing: str) -> Iterator[ToProve]:
    """Yield the loop at the point, cold, and the electrode that it leans on."""
    book = basis.book
    if earthing == NETWORK_EARTH:
        cold_ohm = measured_loop_limit(cable.zs_limit_ohm, cold_loop_share(book))
        yield ToProve("loop at the point", clause_of(loop_within_limit), cold_ohm, LOOP)
        return
    steady_ohm = basis.rules.stable_rod_ohm
    yield ToProve("electrode", clause_of(rod_stable), steady_ohm, ROD)


def rcd_time(basis: Basis) -> ToProve:
    """Return how soon the residual current device of the point must open."""
    limit_s = in_seconds(rcd_time_ms(basis.book, GENERAL))
    return ToProve(
        "residual current device of the point", clause_of(rcd_trips_in_time), limit_s, RCD
    )


def _pilot(setting_a: Amperes, duty: Share) -> ToProve:
    """Return what the pilot must not offer more than."""
    how = f"with a tester in the place of the car: a duty of {duty:.1%} at most"
    return ToProve("current that the pilot offers", clause_of(pilot_within_setting), setting_a, how)


def _guard(basis: Basis, point: ChargePoint, earthing: str) -> Iterator[ToProve]:
    """Yield what a device against a lost neutral is tried for, where the point leans on one."""
    if earthing == NETWORK_EARTH and point.detection is not Detection.NONE:
        limit_s = open_pen_time(basis.book)
        yield ToProve(
            "device against a broken neutral", clause_of(open_pen_device_quick), limit_s, PEN
        )


def _limiter(basis: Basis) -> Iterator[ToProve]:
    """Yield what a limit on the house is tried for before anybody relies on it."""
    limit_s = limiting_time(basis.book)
    yield ToProve("limit on the house", clause_of(limiter_quick_enough), limit_s, STEP)
    yield ToProve("limit on the house, with something lost", clause_of(limiter_proved), None, LOST)
