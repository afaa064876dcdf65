"""Sums of several cars, done by hand."""

from __future__ import annotations

import pytest

from ampwright.energy.need import charging_time, cheap_nights, yearly_need
from ampwright.energy.sums import in_minutes, one_or_two, sizes, unused
from ampwright.foundations.quantity import Amperes, Count, Hours

from ..demand.homes import PLAIN, THREE_PHASE, TOLERANCE, car, home_of
from ..supply.given_basis import BASIS


def test_two_cars_need_what_each_needs():
    # twice 8,000 miles at 3.5 miles a kWh and 0.9 at the wall: 2 × 2,540 kWh
    second = {key.replace("cars.a.", "cars.b."): v for key, v in car(7.4, 1, 40, 8000.0).items()}
    need = yearly_need(home_of({**PLAIN, **second}), BASIS).out
    assert need.kwh_a_year == pytest.approx(5080, rel=TOLERANCE)
    assert need.kwh_a_day == pytest.approx(13.92, rel=TOLERANCE)


def both(three_lines, slow):
    second = {key.replace("cars.a.", "cars.b."): v for key, v in slow.items()}
    return {**three_lines, **second}


TWO_CARS = both({**THREE_PHASE, **car(11.0, 3, 75, 8000.0)}, car(3.7, 1, 40, 4000.0))


def test_an_hour_and_a_half_is_ninety_minutes():
    assert in_minutes(Hours(1.5)) == 90


def test_a_car_of_one_line_takes_one_line_of_three():
    # 16 A at 230 V: 3.68 kW on one line, 11.04 kW offered on three
    facts = {**THREE_PHASE, **car(7.4, 1, 60, 8000.0)}
    need = yearly_need(home_of(facts), BASIS).out
    made = sizes(home_of(facts), BASIS, need, "a").out
    kw = [pytest.approx(each, rel=TOLERANCE) for each in (3.68, 7.36, 3.68, 7.36)]
    assert [each.taken_kw for each in made] == kw
    assert made[0].offered_kw == pytest.approx(3.68, rel=TOLERANCE)
    assert made[2].offered_kw == pytest.approx(11.04, rel=TOLERANCE)


def test_of_two_cars_the_quicker_says_what_is_unused_and_the_slower_how_far_a_night_goes():
    home = home_of(TWO_CARS)
    need = yearly_need(home, BASIS).out
    charging = charging_time(home, BASIS, need, Amperes(32.0), Count(3)).out
    nights = cheap_nights(home, BASIS, charging.hours_a_day).out
    # 22.08 kW offered, 11 taken by the quicker; 3.7 kW for 5 h at 0.9 and 3.5 miles a kWh
    assert unused(home, charging).out == pytest.approx(11.08, abs=0.01)
    made = one_or_two(home, BASIS, charging, nights).out
    assert made.miles == pytest.approx(3.7 * nights.cheap_h * 0.9 * 3.5, rel=TOLERANCE)
