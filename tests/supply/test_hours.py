"""The hours at which a point may charge: locked to the night, or any."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ampwright.foundations.answers import Unanswered
from ampwright.foundations.checks import Outcome, verdict
from ampwright.foundations.errors import InputError
from ampwright.supply.hours import ANY, NIGHT, allowed_hours, clock, within_hours

from ..demand.homes import home_of
from .given_basis import LEAD, OPEN_SETTING

HOME = home_of({})


def tariff(starts, hours):
    return home_of({"tariff.night_from": starts, "tariff.night_h": hours})


@pytest.mark.parametrize(
    ("point", "hours", "outcome"),
    [(LEAD, ANY, Outcome.PASS), (OPEN_SETTING, ANY, Outcome.PASS), (LEAD, NIGHT, Outcome.PASS),
     (OPEN_SETTING, NIGHT, Outcome.FAIL)],
)  # fmt: skip
def test_only_a_point_that_can_be_locked_is_held_to_the_night(point, hours, outcome):
    assert verdict(allowed_hours(HOME, point, hours).checks) is outcome


@pytest.mark.parametrize(
    ("starts", "hours", "at", "inside"),
    [("00:30", 5.0, "00:29", False), ("00:30", 5.0, "00:30", True), ("00:30", 5.0, "05:29", True),
     ("00:30:00", 5.0, "05:30:00", False), ("00:30", 5.0, "18:30", False),
     ("23:30", 6.0, "23:30", True), ("23:30", 6.0, "05:29", True), ("23:30", 6.0, "05:30", False),
     ("23:30", 6.0, "23:29", False), ("09:00", 24.0, "08:59", True)],
)  # fmt: skip
def test_the_cheap_hours_with_their_first_minute_and_without_the_one_after(
    starts, hours, at, inside
):
    assert within_hours(tariff(starts, hours), at, NIGHT) is inside


def test_any_hour_asks_nothing():
    assert within_hours(HOME, "18:30", ANY)
    with pytest.raises(Unanswered, match=r"tariff\.night_from"):
        within_hours(HOME, "18:30", NIGHT)


@pytest.mark.parametrize("text", ["half past six", "1830", "18:3", ""])
def test_what_is_no_time_is_named(text):
    with pytest.raises(InputError, match=r"tariff\.night_from"):
        clock(text, "tariff.night_from")


@given(st.times(), st.integers(0, 24), st.times())
def test_agrees_with_counting_minutes_round_the_clock(starts, hours, at):
    home = tariff(f"{starts:%H:%M}", float(hours))
    since = (at.hour * 60 + at.minute - starts.hour * 60 - starts.minute) % 1440
    assert within_hours(home, f"{at:%H:%M}", NIGHT) is (since < hours * 60)
