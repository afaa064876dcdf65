"""The sums a customer is shown, against worked homes and the worked examples of the trade.

The trade's examples are in a compilation of November 2026, each worked there by hand: 116 miles a
night at 32 A in five hours, two cars of 7,400 miles needing 12.9 kWh, 2.5 p and 8.3 p a mile, 35
minutes a day saved by 11 kW, following the sun from 1.38 kW on one line and 4.14 kW on three.
"""

from __future__ import annotations

import pytest

from ampwright.energy.need import charging_time, cheap_nights, running_cost, yearly_need
from ampwright.energy.sums import (
    cost_a_mile,
    lost_by_keeping,
    moved,
    one_or_two,
    sizes,
    sun_or_sold,
    unused,
)
from ampwright.foundations.quantity import Amperes, Count, KilowattHours, PencePerKwh

from ..demand.homes import PLAIN, THREE_PHASE, TOLERANCE, car, home_of
from ..supply.given_basis import BASIS

SIX = Amperes(6.0)
ELEVEN = {**THREE_PHASE, **car(11.0, 3, 75, 15000.0)}
PANELS = {
    **PLAIN,
    **car(11.0, 3, 77, 9000.0),
    "tariff.export_p": 15.0,
    "sources.all_listed": True,
    "sources.roof.present": True,
    "sources.roof.kind": "solar",
    "sources.roof.yearly_export_kwh": 1700.0,
}


def close(value):
    return pytest.approx(value, rel=TOLERANCE)


def need_of(facts):
    return yearly_need(home_of(facts), BASIS).out


def charged(facts, setting, phases):
    home = home_of(facts)
    return charging_time(home, BASIS, need_of(facts), Amperes(setting), Count(phases)).out


def test_sun_in_the_car_costs_seven_pence_a_unit_where_export_pays_15_and_night_costs_8():
    # Home 03: "every unit of sun you put in the car instead of exporting costs you 7p", and
    # 1,200 kWh of it £84.
    made = sun_or_sold(home_of(PANELS), BASIS, need_of(PANELS).kwh_a_year, SIX, Count(1)).out
    assert made.lost_p == 7
    assert moved(KilowattHours(1200.0), made.lost_p) / 100 == close(84)
    # All it sells would fit in the car's 2,857 kWh: 1,700 × 7 p.
    assert (made.most_kwh, made.lost_a_year_p) == (1700, 11_900)
    assert made.least_kw == close(1.38)


def test_at_four_pence_export_it_saves_four():
    assert lost_by_keeping(PencePerKwh(4.0), PencePerKwh(8.0)) == -4


def test_the_car_takes_no_more_sun_than_it_needs():
    lots = {**PANELS, "sources.roof.yearly_export_kwh": 5000.0}
    made = sun_or_sold(home_of(lots), BASIS, need_of(lots).kwh_a_year, SIX, Count(3)).out
    assert made.most_kwh == close(2857)
    assert made.least_kw == close(4.14)


def test_without_panels_there_is_no_such_sum():
    bare = {**PLAIN, "sources.all_listed": True}
    assert sun_or_sold(home_of(bare), BASIS, need_of(bare).kwh_a_year, SIX, Count(1)).out is None
    windy = {**bare, "sources.store.present": True, "sources.store.kind": "battery"}
    assert sun_or_sold(home_of(windy), BASIS, need_of(windy).kwh_a_year, SIX, Count(1)).out is None


def test_each_size_beside_the_others_for_a_car_of_eleven_kilowatts():
    # Home 08: 1.18 h a day at 11 kW, 1.77 at 7.4; empty to full 7.6 and 11.3 h.
    made = sizes(home_of(ELEVEN), BASIS, need_of(ELEVEN), "a").out
    assert [(each.setting_a, each.phases) for each in made] == [(16, 1), (32, 1), (16, 3), (32, 3)]
    assert [each.taken_kw for each in made] == [close(3.68), close(7.36), close(11.0), 11.0]
    assert made[1].day_min == close(60 * 1.77)
    assert made[2].day_min == close(60 * 1.18)
    assert made[3].day_min == close(60 * 1.18)
    assert made[1].day_min - made[2].day_min == pytest.approx(35, abs=0.5)
    assert [round(each.full_h, 1) for each in made[1:]] == [11.3, 7.6, 7.6]
    assert made[3].offered_kw == close(22.1)


def test_one_line_has_no_sizes_of_three():
    made = sizes(home_of(PLAIN), BASIS, need_of(PLAIN), "a").out
    assert [each.phases for each in made] == [1, 1]


def test_what_a_larger_point_offers_beyond_the_cars_buys_nothing():
    assert unused(home_of(ELEVEN), charged(ELEVEN, 32, 3)).out == close(11.1)
    # 11.04 kW against the car's 11
    assert unused(home_of(ELEVEN), charged(ELEVEN, 16, 3)).out == pytest.approx(0.04, abs=0.001)


def points(facts, setting):
    home, charging = home_of(facts), charged(facts, setting, 1)
    return one_or_two(
        home, BASIS, charging, cheap_nights(home, BASIS, charging.hours_a_day).out
    ).out


def test_one_point_serves_two_cars_and_five_hours_hold_116_miles():
    both = {
        **PLAIN,
        **car(7.4, 1, 60, 7400.0),
        **{key.replace("cars.a.", "cars.b."): v for key, v in car(7.4, 1, 60, 7400.0).items()},
    }
    assert need_of(both).kwh_a_day == close(12.9)
    made = points(both, 32)
    assert made.miles == close(116)
    assert made.one_is_enough
    assert made.needed_h == close(12.9 / 7.36 * 1.25)


def test_a_slow_point_does_not_serve_two_long_drives():
    far = {
        **PLAIN,
        **car(7.4, 1, 60, 18000.0),
        **{key.replace("cars.a.", "cars.b."): v for key, v in car(7.4, 1, 60, 18000.0).items()},
    }
    assert not points(far, 16).one_is_enough


def test_a_mile_costs_two_and_a_half_pence_at_night_and_eight_by_day():
    home = home_of(PLAIN)
    cost = running_cost(home, need_of(PLAIN).kwh_a_year).out
    made = cost_a_mile(home, cost.at_night_p, cost.by_day_p).out
    assert (round(made.at_night_p, 1), round(made.by_day_p, 1)) == (2.5, 8.3)
