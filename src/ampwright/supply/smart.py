"""The smart charging law of Great Britain, held against what the point is able to do."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.notes import tells
from ampwright.foundations.quantity import Hours
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.charging.smart import (
    default_hours_off_peak,
    delay_long_enough,
    hours_in_peak,
    point_is_smart,
    statement_given,
)
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.book import Book
from ampwright.tables.charging import peak_hours, random_delay

METHOD: Final = Place("Ampwright", at="method, hours of smart charging", trust=Trust.DERIVED)
SCOPE: Final = Place("SI 2021/1467", at="regulation 1, extent: not Northern Ireland",
                     trust=Trust.MEMORY)  # fmt: skip
MIDNIGHT: Final = Hours(24.0)
OUTSIDE: Final = "Northern Ireland"
TELL: Final = (
    "hand over the statement of compliance; show the customer the default hours and the random "
    "delay, and how to change or override them"
)


@dataclass(frozen=True, slots=True)
class SmartHours:
    """How many of the point's default hours fall in the peaks of a weekday."""

    in_peaks_h: Hours


@computes("tto", "h", formula="tfrom + tdefault", place=METHOD)
def until(tfrom: Hours, tdefault: Hours) -> Hours:
    """Return when hours end that begin at one; past 24 it is the next day.

    Examples
    --------
    >>> until(Hours(22.0), Hours(7.0))
    29.0
    """
    return Hours(tfrom + tdefault)


@computes("h", "h", formula="sum(h)", place=METHOD)
def hours_together(h: tuple[Hours, ...]) -> Hours:
    """Return the hours of several stretches together.

    Examples
    --------
    >>> hours_together((Hours(1.0), Hours(0.5)))
    1.5
    """
    return Hours(sum(h))


@computes("t", "h", formula="t + 24", place=METHOD)
def next_day(t: Hours) -> Hours:
    """Return the same hour of the day after.

    Examples
    --------
    >>> next_day(Hours(8.0))
    32.0
    """
    return Hours(t + 24)


@tells(SCOPE)
def outside_the_law(country: str) -> str:
    """Say that the smart charging law is of Great Britain alone.

    Examples
    --------
    >>> outside_the_law("Northern Ireland").says[:36]
    'the home is in Northern Ireland, out'
    """
    return f"the home is in {country}, outside the smart charging law of Great Britain"


def smart_charging(home: Home, basis: Basis, point: ChargePoint) -> Made[SmartHours | None]:
    """Return whether the point is one that may be sold for a home of Great Britain.

    Its default hours are those it is delivered with. A home whose country nobody has said is
    taken to lie in Great Britain, where the law asks more.
    """
    country = if_said(lambda: home.property.country, "")
    if country == OUTSIDE:
        return Made(None, notes=(outside_the_law(country),))
    kind, book = basis.cited(point), basis.book
    in_peaks_h = in_peaks(book, kind.default_from_h, kind.default_h)
    checks = (
        point_is_smart(point.smart),
        default_hours_off_peak(in_peaks_h),
        delay_long_enough(kind.delay_to_s, random_delay(book)),
        statement_given(point.statement).with_caution(TELL),
    )
    return Made(SmartHours(in_peaks_h), checks)


def in_peaks(book: Book, start: Hours, length: Hours) -> Hours:
    """Return how many hours of a window fall in the peaks of a weekday; it may pass midnight."""
    end = until(start, length)
    found = []
    for low, high in peak_hours(book):
        found.append(hours_in_peak(start, end, low, high))
        if end > MIDNIGHT:
            found.append(hours_in_peak(start, end, next_day(low), next_day(high)))
    return hours_together(tuple(found))
