"""Volts at the origin: read, or the declared floor."""

from __future__ import annotations

import pytest

from ampwright.foundations.quantity import Amperes, Ohms, Volts
from ampwright.foundations.working import orphans
from ampwright.standards.wiring.voltage_drop import source_drop
from ampwright.supply.hours import ANY, NIGHT
from ampwright.supply.voltage import (
    most_current,
    origin_voltage,
    service_loop,
)

from ..demand.homes import PLAIN, TOLERANCE, WEAK_LINE, home_of
from .given_basis import BASIS


def origin(facts, setting, hours=ANY):
    return origin_voltage(home_of(facts), BASIS, Amperes(setting), hours).out


class TestUnread:
    def test_the_legal_floor_stands_at_the_terminals_and_loses_nothing_more(self):
        # Electricity Safety, Quality and Continuity Regulations 2002, reg. 27: 230 V less 6 %.
        made = origin(PLAIN, 32.0)
        assert (made.lowest_v, made.highest_v) == (216.2, 253.0)
        assert (made.read, made.high_read) == (False, False)
        assert (made.within_law, made.strained) == (True, False)

    def test_no_reading_needs_no_fault_current(self):
        facts = {key: value for key, value in PLAIN.items() if "fault_current" not in key}
        assert origin(facts, 32.0).lowest_v == 216.2

    def test_one_lowest_figure_counts_as_read(self):
        made = origin({**PLAIN, "supply.lowest_v": 225.0}, 32.0)
        assert made.read
        assert made.lowest_v == pytest.approx(225.0 - 32.0 * 230.0 / 1300.0)


class TestWeakLine:
    # Worked home 11: 230 V over 420 A is a loop of 0.548 ohm; 32 A lose 17.6 V in the service.
    def test_loop_and_drop_of_the_service(self):
        home = home_of(WEAK_LINE)
        assert service_loop(home, BASIS) == pytest.approx(0.548, abs=0.0005)
        assert source_drop(Amperes(32.0), service_loop(home, BASIS)) == pytest.approx(
            17.6, rel=TOLERANCE
        )

    def test_each_hour_is_kept(self):
        made = origin(WEAK_LINE, 16.0)
        assert [hour.at for hour in made.hours] == ["01:00", "12:00", "18:30"]
        # 217.4 V at the point by night, 206.4 V in the evening, through a cable of 0.111 ohm.
        cable = 16.0 * 0.111
        night, _, evening = (float(hour.volts_v) - cable for hour in made.hours)
        assert night == pytest.approx(217.4, abs=0.1)
        assert evening == pytest.approx(206.4, abs=0.1)
        assert made.lowest_v == made.hours[2].volts_v

    def test_the_evening_at_full_current(self):
        assert origin(WEAK_LINE, 32.0).lowest_v - 32.0 * 0.111 == pytest.approx(195.9, abs=0.1)

    def test_readings_show_a_supply_below_the_law(self):
        assert not origin(WEAK_LINE, 16.0).within_law

    def test_the_highest_reading_is_of_the_idle_point(self):
        made = origin(WEAK_LINE, 16.0)
        assert (made.highest_v, made.high_read) == (228.0, True)

    def test_at_the_floor_it_is_within_the_law(self):
        facts = {**WEAK_LINE, "supply.fault_current_ka": 1.0}
        for id_, volts in (("night", 228.0), ("noon", 224.0), ("evening", 216.2 + 16 * 0.23)):
            facts[f"supply.readings.{id_}.volts_v"] = volts
        assert origin(facts, 15.9).within_law
        assert not origin(facts, 16.1).within_law

    def test_a_lower_figure_beside_the_readings_stands(self):
        made = origin({**WEAK_LINE, "supply.lowest_v": 215.0, "supply.highest_v": 252.0}, 16.0)
        assert made.lowest_v == pytest.approx(215.0 - 16.0 * 230.0 / 420.0)
        assert made.highest_v == 252.0
        assert len(made.hours) == 3


class TestNight:
    # Worked home 11: 228 V at one in the morning, 217 V at tea time; cheap hours from 00:30.
    def test_only_the_readings_of_the_cheap_hours_are_charged_at(self):
        made = origin(WEAK_LINE, 16.0, NIGHT)
        assert [hour.allowed for hour in made.hours] == [True, False, False]
        assert float(made.lowest_v) - 16.0 * 0.111 == pytest.approx(217.4, abs=0.1)
        assert made.highest_v == 228.0

    def test_a_lowest_figure_without_its_hour_is_not_the_nights(self):
        made = origin({**WEAK_LINE, "supply.lowest_v": 217.0}, 16.0, NIGHT)
        assert float(made.lowest_v) - 16.0 * 0.111 == pytest.approx(217.4, abs=0.1)

    def test_without_a_reading_in_those_hours_every_reading_counts(self):
        facts = {**WEAK_LINE, "supply.readings.night.present": False}
        assert origin(facts, 16.0, NIGHT).lowest_v == origin(facts, 16.0).lowest_v

    def test_where_nothing_was_read_the_tariff_is_not_asked_for(self):
        facts = {key: value for key, value in PLAIN.items() if "night" not in key}
        assert origin(facts, 32.0, NIGHT).lowest_v == 216.2


class TestWithinTheLaw:
    def test_a_kettle_at_tea_time_shows_the_network_is_at_fault_today(self):
        # 217 − 13 × 0.55 = 209.9 V, under 216.2: whatever the point does, and at any setting.
        assert not origin(WEAK_LINE, 6.0).within_law
        assert not origin(WEAK_LINE, 6.0, NIGHT).within_law

    @pytest.mark.parametrize(("volts", "lawful"), [(219.19, True), (219.18, False)])
    def test_at_the_floor_under_an_ordinary_load(self, volts, lawful):
        # 216.2 + 13 × 0.23 = 219.19 V behind a loop of 230 V over 1 kA.
        facts = {
            **PLAIN, "supply.fault_current_ka": 1.0, "supply.readings.tea.present": True,
            "supply.readings.tea.at": "18:00", "supply.readings.tea.volts_v": volts,
        }  # fmt: skip
        assert origin(facts, 6.0).within_law is lawful
        assert origin(facts, 6.0, NIGHT).within_law is lawful


class TestOneHourAlone:
    def facts(self, at, volts):
        return {
            **PLAIN, "supply.fault_current_ka": 1.0, "supply.readings.one.present": True,
            "supply.readings.one.at": at, "supply.readings.one.volts_v": volts,
            "tariff.night_from": "00:30", "tariff.night_h": 5.0,
        }  # fmt: skip

    # Homes draw most between four and nine in the evening; the register asks for a reading
    # between five and eight. Without one the legal floor of 216.2 V stands in.
    @pytest.mark.parametrize(
        ("at", "known"),
        [("15:59", False), ("16:00", True), ("20:59", True), ("21:00", False), ("12:00", False)],
    )
    def test_only_an_evening_tells_how_low_a_line_goes(self, at, known):
        made = origin(self.facts(at, 240.0), 10.0)
        assert made.read is known
        assert made.lowest_v == pytest.approx(237.7 if known else 216.2)
        assert (made.within_law, made.strained) == (True, False)
        assert (made.highest_v, made.high_read) == (240.0, True)
        assert [hour.at for hour in made.hours] == [at]

    def test_a_night_reading_is_enough_for_a_point_held_to_the_night(self):
        facts = self.facts("01:00", 240.0)
        assert origin(facts, 10.0, NIGHT).lowest_v == pytest.approx(237.7)
        assert origin(facts, 10.0, ANY).lowest_v == 216.2
        assert not origin(self.facts("12:00", 240.0), 10.0, NIGHT).read

    @pytest.mark.parametrize(("volts", "known"), [(216.1, True), (216.2, False)])
    def test_volts_under_the_law_count_whatever_the_hour(self, volts, known):
        assert origin(self.facts("12:00", volts), 10.0).read is known


class TestWhatTheHouseDrew:
    # By hand, behind a loop of 230 V over 1 kA = 0.23 Ω: 220 V read with 3 A drawn is 220.69 V
    # with nothing on, and 217.70 V under an ordinary load of 13 A.
    def facts(self, volts, drew):
        return {
            **PLAIN, "supply.fault_current_ka": 1.0, "supply.readings.tea.present": True,
            "supply.readings.tea.at": "18:00", "supply.readings.tea.volts_v": volts,
            "supply.readings.tea.house_a": drew, "tariff.night_from": "17:00",
            "tariff.night_h": 5.0,
        }  # fmt: skip

    def test_a_reading_of_a_quiet_house_is_lowered_to_an_ordinary_load(self):
        assert origin(self.facts(220.0, 3.0), 10.0).lowest_v == pytest.approx(217.70 - 2.3)

    def test_a_reading_under_more_than_an_ordinary_load_stands(self):
        made = origin(self.facts(220.0, 20.0), 10.0)
        assert made.lowest_v == pytest.approx(220.0 - 2.3)

    def test_where_the_point_is_held_to_those_hours_the_reading_stands(self):
        assert origin(self.facts(220.0, 3.0), 10.0, NIGHT).lowest_v == pytest.approx(217.7)

    # The kettle that was on at the reading is not taken off twice: 216.2 V with 13 A on is the
    # floor itself, where 216.2 V of a house at rest is 2.99 V under it.
    @pytest.mark.parametrize(
        ("volts", "drew", "lawful"),
        [(216.21, 13.0, True), (216.19, 13.0, False), (219.2, 0.0, True), (219.18, 0.0, False)],
    )
    def test_the_law_is_kept_under_an_ordinary_load_counted_once(self, volts, drew, lawful):
        assert origin(self.facts(volts, drew), 0.0, NIGHT).within_law is lawful


class TestStrained:
    # Worked home 11 by night: 228 V less 16 A × 0.548 Ω leaves 219.24 V, the firm's 3 V above
    # the floor of 216.2 V; 17 A leave 218.69 V.
    @pytest.mark.parametrize(("setting", "strained"), [(16.0, False), (17.0, True)])
    def test_a_line_in_doubt_is_spent_by_the_point_itself(self, setting, strained):
        assert origin(WEAK_LINE, setting, NIGHT).strained is strained

    @pytest.mark.parametrize(("volts", "strained"), [(219.201, False), (219.199, True)])
    def test_at_the_margin_above_the_floor(self, volts, strained):
        # an evening already under the law, and a night without a load of its own
        facts = {**WEAK_LINE, "supply.readings.night.volts_v": volts}
        assert origin(facts, 0.0, NIGHT).strained is strained

    def test_a_line_within_the_law_is_not_in_doubt_for_want_of_a_margin(self):
        # 218 V and no loop to speak of: 0.1 V lost
        facts = {**PLAIN, "supply.lowest_v": 218.0, "supply.fault_current_ka": 50.0}
        made = origin(facts, 32.0)
        assert (made.within_law, made.strained) == (True, False)

    def test_it_is_said_with_both_numbers(self):
        _, note = origin_voltage(home_of(WEAK_LINE), BASIS, Amperes(32.0), NIGHT).notes
        assert note.about[0] == pytest.approx(210.5, abs=0.05)
        assert note.about[1] == pytest.approx(219.2)
        assert "at 32 A the terminals would stand at 210.5 V" in note.caution
        _, note = origin_voltage(home_of(WEAK_LINE), BASIS, Amperes(16.0), NIGHT).notes
        assert "a line in doubt keeps" in note.says
        assert note.caution == ""


class TestToday:
    # Worked home 11: a kettle takes 217 V to 217 − 13 × 0.548 = 209.9 V, before any point.
    def test_a_network_under_the_law_is_reported_with_both_numbers(self):
        today, _ = origin_voltage(home_of(WEAK_LINE), BASIS, Amperes(16.0), NIGHT).notes
        assert today.about == (pytest.approx(209.9, abs=0.05), 216.2)
        assert "209.9 V at the terminals under an ordinary load" in today.caution

    def test_one_within_it_is_not(self):
        facts = {**PLAIN, "supply.lowest_v": 225.0, "supply.fault_current_ka": 1.0}
        (today,) = origin_voltage(home_of(facts), BASIS, Amperes(6.0), ANY).notes
        # 225 − 13 × 0.23 = 222.0 V
        assert (today.about[0], today.caution) == (pytest.approx(222.01), "")
        assert "keep 222.0 V" in today.says

    def test_at_the_floor_itself(self):
        facts = {**PLAIN, "supply.lowest_v": 219.2, "supply.fault_current_ka": 0.9967}
        (today, *_) = origin_voltage(home_of(facts), BASIS, Amperes(6.0), ANY).notes
        # 13 × 230 / 996.7 = 3.0 V
        assert today.about[0] == pytest.approx(216.2, abs=0.001)

    def test_where_nothing_was_read_nothing_is_said(self):
        assert origin_voltage(home_of(PLAIN), BASIS, Amperes(32.0), ANY).notes == ()


class TestMostCurrent:
    # Worked home 11: 10.6 A in the evening and 27.2 A by night keep 210 V at the point, through
    # a cable of 0.111 ohm; none where the volts are under it with the point idle.
    @pytest.mark.parametrize(("volts", "most"), [(228.0, 27.2), (217.0, 10.6), (209.0, 0.0)])
    def test_of_the_worked_home(self, volts, most):
        service_ohm = service_loop(home_of(WEAK_LINE), BASIS)
        most_a = most_current(Volts(volts), Volts(210.0), service_ohm, Ohms(0.111))
        assert most_a == pytest.approx(most, rel=TOLERANCE)


def test_documented_agrees_and_every_number_has_a_source():
    made = origin_voltage(
        home_of(WEAK_LINE, documented=True), BASIS.documented(), Amperes(16.0), ANY
    ).out
    assert made == origin(WEAK_LINE, 16.0)
    assert list(map(float, orphans(made.lowest_v))) == [16.0]  # the setting, which is a choice
