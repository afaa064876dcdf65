"""Days of a notice against the calendar: four weeks end on the weekday they began on."""

from __future__ import annotations

from datetime import date

import pytest

from ampwright.standards.network.deadlines import last_day
from ampwright.tables.book import Book
from ampwright.tables.network import days_are, notice_days

TOLD = "demand told after"


@pytest.mark.parametrize(
    ("fitted", "latest"),
    [
        # the Gregorian calendar: a week later four times; February of a leap year and of none
        (date(2026, 11, 25), date(2026, 12, 23)),
        (date(2027, 2, 1), date(2027, 3, 1)),
        (date(2028, 2, 1), date(2028, 2, 29)),
        (date(2026, 12, 10), date(2027, 1, 7)),
    ],
)
def test_four_weeks_from_the_day_after(fitted, latest):
    assert last_day(fitted, notice_days(Book(), TOLD)) == latest
    assert latest.weekday() == fitted.weekday()


def test_the_days_are_calendar_days():
    assert days_are(Book(), TOLD) == "calendar"
