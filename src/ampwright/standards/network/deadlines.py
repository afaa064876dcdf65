"""Until when a notice must be in."""

from __future__ import annotations

from datetime import date

from ampwright.foundations.quantity import Count
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

COUNTED = Place("operators' practice", "", "counted from the day after the event", Trust.MEMORY)


@computes("D", "", formula="D0 + n", place=COUNTED)
def last_day_number(D0: Count, n: Count) -> Count:
    """Return the last day on which a notice is in time, so many days after an event.

    Both days as numbered on one calendar without gaps. Calendar days; not for working days.

    Examples
    --------
    >>> last_day_number(Count(730120), Count(28))
    730148
    """
    return Count(D0 + n)


@computes("n", "", formula="D - D0", place=COUNTED)
def days_gone(D0: Count, D: Count) -> Count:
    """Return how many days have gone by since an event.

    Both days as numbered on one calendar without gaps; on the day itself none has.

    Examples
    --------
    >>> days_gone(Count(730120), Count(730148))
    28
    """
    return Count(D - D0)


def last_day(event: date, days: Count) -> date:
    """Return the date of that day.

    Examples
    --------
    >>> last_day(date(2026, 11, 25), Count(28)).isoformat()
    '2026-12-23'
    """
    return date.fromordinal(int(last_day_number(Count(event.toordinal()), days)))
