"""The current that a point is set to, against what it can be set to."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.checks import Check, Finding, at_least, at_most, requires
from ampwright.foundations.quantity import Amperes, Count, Kilowatts, Share, Volts
from ampwright.foundations.source import Place, SetBy, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.building.notice import new_home_point_large_enough
from ampwright.standards.charging.pilot import (
    pilot_current,
    pilot_current_high,
    pilot_duty,
    pilot_duty_high,
    setting_not_below_floor,
)
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.book import Book
from ampwright.tables.charging import least_charging_a, pilot_bands, pilot_slope
from ampwright.tables.regulation import new_home_kw
from ampwright.tables.supply_limits import nominal_v

from ..noted import noted

METHOD: Final = Place("Ampwright", at="method, the power of a point", trust=Trust.DERIVED)
LINES: Final = SetBy("catalogue", "lines of the point")
ENGLAND: Final = "England"

INSTRUCTIONS: Final = Place("maker's instructions of the point", at="current setting")


@dataclass(frozen=True, slots=True)
class Setting:
    """The current a point is held to, on each line, and the duty of the pilot that offers it."""

    setting_a: Amperes
    duty: Share


@requires("setting ≤ the most the point can be set to", unit="A", place=INSTRUCTIONS)
def setting_not_above(setting_a: Amperes, most_a: Amperes) -> Finding:
    """A point gives no more than it is made for.

    As its maker gives it for each line; heat may lower it.

    Examples
    --------
    >>> setting_not_above(Amperes(32.0), Amperes(16.0)).outcome.value
    'fail'
    """
    return at_most(setting_a, most_a)


@requires("setting ≥ the least the point can be set to", unit="A", place=INSTRUCTIONS)
def setting_not_below(setting_a: Amperes, least_a: Amperes) -> Finding:
    """A point cannot be turned down below its floor.

    As its maker gives it for each line; below it a car pauses.

    Examples
    --------
    >>> setting_not_below(Amperes(6.0), Amperes(6.0)).outcome.value
    'pass'
    """
    return at_least(setting_a, least_a)


@computes("P", "kW", formula="lines * U0 * Imax / 1000", place=METHOD)
def rated_power(lines: Count, U0: Volts, Imax: Amperes) -> Kilowatts:  # noqa: N803 - as printed
    """Return the power a point is made for, whatever it is set to.

    Examples
    --------
    >>> rated_power(Count(1), Volts(230.0), Amperes(32.0))
    7.36
    """
    return Kilowatts(lines * U0 * Imax / 1000)


def point_setting(
    home: Home, basis: Basis, point: ChargePoint, setting_a: Amperes
) -> Made[Setting]:
    """Return the setting, whether the point can be set to it, and whether it suits a new home.

    A point that the rules for new homes ask for gives the least they ask; any other is the
    customer's own choice.
    """
    kind = basis.cited(point)
    checks = (
        setting_not_above(setting_a, kind.max_a),
        setting_not_below(setting_a, kind.least_a),
        setting_not_below_floor(setting_a, least_charging_a(basis.book)),
    )
    out = Setting(setting_a, duty_of(basis.book, setting_a))
    return Made(out, (*checks, *_for_new_home(home, basis, kind)))


def duty_of(book: Book, setting_a: Amperes) -> Share:
    """Return the duty of the pilot that offers a car so much current, in whichever band it lies.

    Examples
    --------
    >>> duty_of(Book(), Amperes(30.0)), duty_of(Book(), Amperes(60.0))
    (0.5, 0.88)
    """
    low, high = pilot_bands(book)
    slope, _ = pilot_slope(book, low)
    duty = pilot_duty(setting_a, slope)
    if duty <= low:
        return duty
    return pilot_duty_high(setting_a, *pilot_slope(book, high))


def _for_new_home(home: Home, basis: Basis, point: ChargePoint) -> Iterator[Check]:
    """Yield whether a point that comes with a new home in England is large enough for it."""
    if not if_said(lambda: home.property.new_home, False) or home.property.country != ENGLAND:
        return
    book = basis.book
    kw = rated_power(noted(book, "lines", point.phases, "", LINES), nominal_v(book), point.max_a)
    yield new_home_point_large_enough(kw, new_home_kw(book))


def offered(book: Book, duty: Share) -> Amperes:
    """Return the current that a duty of the pilot offers a car.

    Examples
    --------
    >>> offered(Book(), Share(0.5)), offered(Book(), Share(0.88))
    (30.0, 60.0)
    """
    low, high = pilot_bands(book)
    if duty <= low:
        return pilot_current(duty, pilot_slope(book, low)[0])
    return pilot_current_high(duty, *pilot_slope(book, high))
