"""The smart charging law of Great Britain: hours, delay and what the buyer is told."""

from __future__ import annotations

from ampwright.foundations.checks import Finding, at_least, at_most, holds, requires
from ampwright.foundations.quantity import Hours, Seconds
from ampwright.foundations.source import Place
from ampwright.foundations.working import computes


def _law(regulation: str, read_in: str) -> Place:
    """Return a place in the regulations and where its text was read."""
    return Place("SI 2021/1467", "", f"regulation {regulation}, {read_in}")


HOURS = _law("10", "as reproduced in support articles")
PEAKS = _law("2", "as quoted in notes of public repositories")


@computes("h", "h", formula="max(0, min(end, peak_end) - max(start, peak_start))", place=PEAKS)
def hours_in_peak(start: Hours, end: Hours, peak_start: Hours, peak_end: Hours) -> Hours:
    """Hours of a charging window that fall in one peak of a weekday.

    All counted from the same midnight; a window past midnight is two, one each side.

    Examples
    --------
    >>> hours_in_peak(Hours(21.0), Hours(24.0), Hours(16.0), Hours(22.0))
    1.0
    """
    return Hours(max(0, min(end, peak_end) - max(start, peak_start)))


@requires("default hours outside the peaks", unit="h", place=HOURS)
def default_hours_off_peak(hours_in_peaks: Hours) -> Finding:
    """The hours a point is delivered with stay out of the peaks of weekdays.

    The owner is offered to keep, change or remove them at first use, and may do so later.

    Examples
    --------
    >>> default_hours_off_peak(Hours(0.0)).outcome.value
    'pass'
    """
    return at_most(hours_in_peaks, 0)


@requires(
    "random delay can reach the least",
    unit="s",
    place=_law("11", "as reproduced in support articles"),
)
def delay_long_enough(longest: Seconds, least: Seconds) -> Finding:
    """A point can be told to wait at random up to so long before it starts or changes.

    What it can be set to, not what it is set to; the owner may override each one.

    Examples
    --------
    >>> delay_long_enough(Seconds(1800.0), Seconds(1800.0)).outcome.value
    'pass'
    """
    return at_least(longest, least)


@requires(
    "a statement of compliance goes with the sale",
    place=_law("13", "as told by a trade association"),
)
def statement_given(given: bool) -> Finding:
    """Whoever supplies the point hands the buyer its statement of compliance.

    A firm that fits what it supplies is a seller too; it may stand on the invoice.

    Examples
    --------
    >>> statement_given(True).outcome.value
    'pass'
    """
    return holds(given, "" if given else "no statement of compliance")


@requires("the point is a smart one", place=_law("5", "explanatory note"))
def point_is_smart(smart: bool) -> Finding:
    """The point can send and take data and move its charging in time.

    For private points sold in Great Britain; Northern Ireland is outside this law.

    Examples
    --------
    >>> point_is_smart(True).outcome.value
    'pass'
    """
    return holds(smart, "" if smart else "it cannot answer signals")
