"""What there is to choose from: nothing that is known to be gone."""

from __future__ import annotations

import pytest
from tests.journeys.homes import adding, basis, journey, saying, without

from ampwright.options.lifting import Lifter
from ampwright.options.suiting import kept_by_volts

NAME = "quillbrook-close"
WEAK = "fellside-cottage"


@pytest.mark.parametrize(("present", "places"), [(True, 2), (False, 1)])
def test_a_place_that_is_gone_is_not_offered(present, places):
    home = journey(
        NAME, change=adding({"places.side.outdoors": True, "places.side.present": present})
    )
    rejected = {each.made.get("place") for each in home.outlook.searched.rejections} - {None}
    offered = {option.choice.place for option in home.outlook.ranking.options}
    assert len(rejected | offered) == places


def test_a_board_that_is_gone_is_no_tap():
    said = {"boards.annexe.from_meter_m": 2.0, "boards.annexe.present": False}
    home = journey(NAME, change=adding(said))
    taps = {each.made.get("tap") for each in home.outlook.searched.rejections}
    taps |= {option.choice.tap for option in home.outlook.ranking.options}
    assert taps - {None} == {"main", "meter"}


def kept(home, tap, hours):
    rests = basis("demo")
    return list(kept_by_volts(Lifter(home.outlook.homes), rests, ((tap, "end-wall"),), (hours,)))


# By hand, worked home 11: a loop of 230 V over 420 A = 0.5476 Ω and 15 m of 6 mm² at 7.9 mV, an
# ampere and a metre = 0.1185 Ω from the meter; (217 − 210) / 0.6661 = 10.5 A at tea time,
# (228 − 210) / 0.6661 = 27.02 A in the small hours.
@pytest.mark.parametrize(
    ("tap", "hours", "most"),
    [("meter", "any", 10.0), ("meter", "night", 27.0), ("main", "any", 10.0)],
)
def test_the_greatest_setting_that_keeps_the_volts_is_offered(tap, hours, most):
    assert kept(journey(WEAK), tap, hours) == [most]


def test_a_lower_reading_leaves_less():
    lower = journey(WEAK, change=saying({"supply.readings.tea-time.volts_v": 215.0}))
    # (215 − 210) / 0.6661 = 7.5 A
    assert kept(lower, "meter", "any") == [7.0]
    assert 7.0 in {option.choice.setting_a for option in lower.options(hours="any")}


def test_without_a_reading_no_setting_comes_of_the_volts():
    names = ("small-hours", "midday", "tea-time")
    keys = [f"supply.readings.{name}.{part}" for name in names for part in ("at", "volts_v")]
    unread = journey(WEAK, change=without("supply.lowest_v", *keys))
    assert kept(unread, "meter", "any") == []


def test_a_cable_that_lies_there_is_tried_at_the_ratings_of_devices():
    # cinder-lane: 23.5 A by hand, so the device of 20 A and the setting with it
    settings = {o.choice.setting_a for o in journey("cinder-lane").options(needing="use-half-done")}
    assert 20.0 in settings
    assert not settings & {25.0, 32.0}


def test_where_none_lies_there_they_are_not():
    settings = {o.choice.setting_a for o in journey(NAME, profile="demo").options()}
    assert 20.0 not in settings


def test_what_an_old_point_leaves_when_it_goes_is_offered():
    # marl-house: 47.64 + 12 = 59.64 A is under the 60 A that is told after; 13 A are not
    settings = {o.choice.setting_a for o in journey("marl-house", profile="demo").options()}
    assert 12.0 in settings
    assert 13.0 not in settings
