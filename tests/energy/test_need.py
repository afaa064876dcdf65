"""Energy, hours and pounds for the cars of a home, against homes worked by hand."""

from __future__ import annotations

import pytest

from ampwright.energy.need import (
    charging_time,
    cheap_nights,
    night_alone,
    running_cost,
    yearly_need,
)
from ampwright.foundations.answers import Unanswered
from ampwright.foundations.checks import Outcome, verdict
from ampwright.foundations.quantity import Amperes, Count, Hours
from ampwright.foundations.working import orphans

from ..demand.homes import HALF_SPEED, PLAIN, THREE_PHASE, TOLERANCE, WEAK_LINE, car, home_of
from ..supply.given_basis import BASIS

HOMES = [PLAIN, THREE_PHASE, WEAK_LINE, HALF_SPEED]


def close(value):
    return pytest.approx(value, rel=TOLERANCE)


@pytest.mark.parametrize(
    ("facts", "year", "day", "night_pounds", "day_pounds"),
    [
        (PLAIN, 2540, 6.96, 203, 663),
        (THREE_PHASE, 4762, 13.05, 381, 1243),
        (WEAK_LINE, 2222, 6.09, 178, 580),
        (HALF_SPEED, 2349, 6.44, 188, 613),
    ],
    ids=["1", "8", "11", "21"],
)
def test_worked_homes_need_and_cost(facts, year, day, night_pounds, day_pounds):
    home = home_of(facts)
    need = yearly_need(home, BASIS).out
    assert (need.kwh_a_year, need.kwh_a_day) == (close(year), close(day))
    cost = running_cost(home, need.kwh_a_year).out
    assert cost.at_night_p / 100 == close(night_pounds)
    assert cost.by_day_p / 100 == close(day_pounds)


def test_a_day_is_an_even_share_of_a_year_of_365():
    need = yearly_need(home_of(PLAIN), BASIS).out
    assert need.kwh_a_day * 365 == pytest.approx(need.kwh_a_year)


def charging(facts, setting, phases):
    home = home_of(facts)
    need = yearly_need(home, BASIS).out
    return charging_time(home, BASIS, need, Amperes(setting), Count(phases)).out


@pytest.mark.parametrize(
    ("facts", "setting", "phases", "hours"),
    [
        (PLAIN, 32.0, 1, 0.95),
        (THREE_PHASE, 16.0, 3, 1.18),
        (THREE_PHASE, 32.0, 1, 1.77),
        (WEAK_LINE, 16.0, 1, 1.65),
        (HALF_SPEED, 16.0, 1, 105 / 60),
        (HALF_SPEED, 32.0, 1, 52 / 60),
    ],
)
def test_worked_homes_hours_a_day(facts, setting, phases, hours):
    assert charging(facts, setting, phases).hours_a_day == close(hours)


@pytest.mark.parametrize(
    ("setting", "phases", "hours"), [(16.0, 3, 7.6), (32.0, 1, 11.3)], ids=["11 kW", "7 kW"]
)
def test_worked_home_8_from_empty_to_full(setting, phases, hours):
    assert charging(THREE_PHASE, setting, phases).cars[0].full_h == close(hours)


class TestPower:
    @pytest.mark.parametrize(
        ("setting", "phases", "kw"), [(32.0, 1, 7.36), (16.0, 3, 11.04), (6.0, 1, 1.38)]
    )
    def test_offered(self, setting, phases, kw):
        assert charging(PLAIN, setting, phases).offered_kw == pytest.approx(kw)

    def test_a_car_for_one_phase_takes_one_of_three(self):
        assert charging(PLAIN, 32.0, 3).cars[0].power_kw == pytest.approx(7.36)

    def test_a_car_takes_no_more_than_it_can(self):
        facts = {**THREE_PHASE, **car(11.0, 3, 75.0, 15000.0)}
        assert charging(facts, 32.0, 3).cars[0].power_kw == 11.0


def test_two_cars_charge_one_after_another():
    second = {key.replace("cars.a.", "cars.b."): v for key, v in car(7.4, 1, 40, 8000.0).items()}
    both = charging({**PLAIN, **second}, 32.0, 1)
    assert both.hours_a_day == close(2 * 0.95)
    assert [each.car for each in both.cars] == ["a", "b"]


def test_no_need_while_not_every_car_is_listed():
    with pytest.raises(Unanswered, match=r"cars\.all_listed"):
        yearly_need(home_of({**PLAIN, "cars.all_listed": False}), BASIS)


@pytest.mark.parametrize(("hours", "covers"), [(4.0, True), (4.01, False)])
def test_cheap_nights_hold_the_need_with_the_firms_margin(hours, covers):
    nights = cheap_nights(home_of(PLAIN), BASIS, Hours(hours)).out
    assert nights.covers is covers
    assert nights.needed_h == pytest.approx(1.25 * hours)


@pytest.mark.parametrize(("hours", "outcome"), [(4.0, Outcome.PASS), (4.01, Outcome.FAIL)])
def test_a_point_locked_to_the_night_must_still_give_what_is_needed(hours, outcome):
    nights = cheap_nights(home_of(PLAIN), BASIS, Hours(hours)).out
    assert verdict(night_alone(home_of(PLAIN), nights).checks) is outcome


def test_half_speed_by_night_is_enough_on_the_weak_line():
    # Worked home 11: 1.65 h a day at 16 A, in five cheap hours.
    home = home_of(WEAK_LINE)
    need = yearly_need(home, BASIS).out
    time = charging_time(home, BASIS, need, Amperes(16.0), Count(1)).out
    nights = cheap_nights(home, BASIS, time.hours_a_day).out
    assert time.hours_a_day == close(1.65)
    assert verdict(night_alone(home, nights).checks) is Outcome.PASS


@pytest.mark.parametrize("facts", HOMES)
def test_documented_agrees_and_only_the_choice_lacks_a_source(facts):
    basis, home = BASIS.documented(), home_of(facts, documented=True)
    need = yearly_need(home, basis).out
    time = charging_time(home, basis, need, Amperes(16.0), Count(1)).out
    nights = cheap_nights(home, basis, time.hours_a_day).out
    cost = running_cost(home, need.kwh_a_year).out
    plain_need = yearly_need(home_of(facts), BASIS).out
    assert need == plain_need
    assert time == charging_time(home_of(facts), BASIS, plain_need, Amperes(16.0), Count(1)).out
    shown = (nights.needed_h, cost.at_night_p, cost.by_day_p, time.cars[0].full_h)
    assert set(map(float, orphans(shown))) == {16.0}
