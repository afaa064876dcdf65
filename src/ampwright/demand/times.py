"""Times as meters and loggers write them, as minutes that can be told apart and put in order."""

from __future__ import annotations

import calendar
import re
from dataclasses import dataclass
from datetime import date
from typing import Final

from ampwright.foundations.quantity import Count, Minutes
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

METHOD: Final = Place("Ampwright", at="method, readings by time", trust=Trust.DERIVED)
ISO: Final = re.compile(
    r"(?P<y>\d{4})-(?P<m>\d\d?)-(?P<d>\d\d?)[T ]+(?P<h>\d\d?):(?P<min>\d\d)"
    r"(?::\d\d(?:\.\d+)?)?\s*(?P<zone>Z|UTC|(?P<sign>[+-])(?P<oh>\d\d):?(?P<om>\d\d))?"
)
BRITISH: Final = re.compile(
    r"(?P<d>\d\d?)/(?P<m>\d\d?)/(?P<y>\d{4})[T ]+(?P<h>\d\d?):(?P<min>\d\d)(?::\d\d)?"
)
EXPECTED: Final = "a date and time such as 2026-01-31 17:30 or 31/01/2026 17:30"
SUNDAY: Final = 6
FORWARD_MONTH: Final = 3
BACK_MONTH: Final = 10
TWICE: Final = (1, 2)
BEFORE_THE_GAP: Final = (0, 1)
"""The clocks of Great Britain jump over, or go twice through, the hour from one o'clock.

Readings are labelled by their start or by their end, so two hours may hold such a label.
"""


@computes("t", "min", formula="24 * 60 * day + 60 * hour + minute", place=METHOD)
def minute_number(day: Count, hour: Count, minute: Count) -> Minutes:
    """Return the number of a minute, counted from the first day of the calendar."""
    return Minutes(24 * 60 * day + 60 * hour + minute)


@computes("t", "min", formula="t - sign * (60 * hour + minute)", place=METHOD)
def in_universal(t: Minutes, sign: Count, hour: Count, minute: Count) -> Minutes:
    """Return a minute of a zone as one of universal time."""
    return Minutes(t - sign * (60 * hour + minute))


@computes("t", "min", formula="t2 - t1", place=METHOD)
def elapsed(t1: Minutes, t2: Minutes) -> Minutes:
    """Return the minutes from one time to another."""
    return Minutes(t2 - t1)


@computes("t", "min", formula="step + 60", place=METHOD)
def with_an_hour(step: Minutes) -> Minutes:
    """Return how far readings lie apart across an hour that the clock leaves out."""
    return Minutes(step + 60)


@dataclass(frozen=True, slots=True)
class Moment:
    """One time: its number of minutes, its day and hour on the clock it was written by.

    ``universal`` says that it was written with its zone, so that no clock change touches it.
    """

    minutes: Minutes
    day: date
    hour: int
    universal: bool


def read_time(text: str) -> Moment:
    """Return a time; raises ``ValueError`` with what was expected.

    Day before month where they are written with strokes. A day's end may be written 24:00.

    Examples
    --------
    >>> a, b = read_time("2026-06-30 24:00"), read_time("2026-07-01T01:00+01:00")
    >>> a.minutes == b.minutes, a.universal, b.universal
    (True, False, True)
    """
    found = ISO.fullmatch(text.strip()) or BRITISH.fullmatch(text.strip())
    if found is None:
        raise ValueError(EXPECTED)
    hour, minute = int(found["h"]), int(found["min"])
    try:
        day = date(int(found["y"]), int(found["m"]), int(found["d"]))
    except ValueError:
        raise ValueError(f"{EXPECTED}, day before month") from None
    if hour > 24 or minute > 59:
        raise ValueError(EXPECTED)
    at = minute_number(Count(day.toordinal()), Count(hour), Count(minute))
    zone = found.groupdict().get("zone")
    if zone and found["sign"]:
        sign = Count(1 if found["sign"] == "+" else -1)
        at = in_universal(at, sign, Count(int(found["oh"])), Count(int(found["om"])))
    return Moment(at, day, hour, bool(zone))


def is_time(text: str) -> bool:
    """Say whether a text is a whole date and time.

    Examples
    --------
    >>> is_time("31/01/2026 17:30"), is_time("17:30")
    (True, False)
    """
    return bool(ISO.fullmatch(text.strip()) or BRITISH.fullmatch(text.strip()))


def clocks_go_back(at: Moment) -> bool:
    """Say whether a time may stand twice on the clock: after one on a night in October.

    Of Great Britain; never for a time written with its zone.

    Examples
    --------
    >>> clocks_go_back(read_time("2026-10-25 01:30")), clocks_go_back(read_time("2026-10-24 01:30"))
    (True, False)
    """
    return at.hour in TWICE and _is_change(at, BACK_MONTH)


def clocks_go_forward(at: Moment) -> bool:
    """Say whether the clock leaves out the hour after a time: early on a night in March.

    Of Great Britain; never for a time written with its zone.

    Examples
    --------
    >>> clocks_go_forward(read_time("2026-03-29 00:30"))
    True
    """
    return at.hour in BEFORE_THE_GAP and _is_change(at, FORWARD_MONTH)


def _is_change(at: Moment, month: int) -> bool:
    """Say whether a time lies on the day of a change of clocks."""
    if at.universal or at.day.month != month:
        return False
    weeks = calendar.monthcalendar(at.day.year, month)
    sundays = [week[SUNDAY] for week in weeks if week[SUNDAY]]
    return at.day.day == sundays[-1]
