"""Volts at the origin: read, or the declared floor."""

from __future__ import annotations

import pytest

from ampwright.foundations.quantity import Amperes
from ampwright.foundations.working import orphans
from ampwright.supply.voltage import origin_voltage, service_drop, service_loop

from ..demand.homes import PLAIN, TOLERANCE, WEAK_LINE, home_of
from .given_basis import BASIS


def origin(facts, setting):
    return origin_voltage(home_of(facts), BASIS, Amperes(setting)).out


class TestUnread:
    def test_the_legal_floor_stands_at_the_terminals_and_loses_nothing_more(self):
        # Electricity Safety, Quality and Continuity Regulations 2002, reg. 27: 230 V less 6 %.
        made = origin(PLAIN, 32.0)
        assert (made.lowest_v, made.highest_v) == (216.2, 253.0)
        assert (made.read, made.high_read, made.within_law) == (False, False, True)

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
        assert service_drop(home, BASIS, Amperes(32.0)) == pytest.approx(17.6, rel=TOLERANCE)

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


def test_documented_agrees_and_every_number_has_a_source():
    made = origin_voltage(
        home_of(WEAK_LINE, documented=True), BASIS.documented(), Amperes(16.0)
    ).out
    assert made == origin(WEAK_LINE, 16.0)
    assert list(map(float, orphans(made.lowest_v))) == [16.0]  # the setting, which is a choice
