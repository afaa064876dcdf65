"""Demand three ways beside each other, and the one that counts."""

from __future__ import annotations

import pytest

from ampwright.demand.compare import (
    HALF_HOURS,
    LOGGER,
    TABLE,
    Way,
    beside_files,
    compared,
    counted_demand,
    from_half_hours,
    from_log,
)
from ampwright.demand.half_hours import read_half_hours
from ampwright.demand.household import household_demand
from ampwright.demand.logger import read_log
from ampwright.demand.moving import load_moves
from ampwright.foundations.answers import Unanswered
from ampwright.foundations.quantity import Amperes, Kilowatts, Volts
from ampwright.foundations.working import orphans, working

from ..supply.given_basis import BASIS
from .homes import HALF_SPEED, THREE_PHASE, home_of
from .test_half_hours import LONDON
from .test_logger import one

NO_SOURCE = {"sources.all_listed": True}
SUN = {"sources.all_listed": True, "sources.sun.present": True}
# Worked home 21: the meter's highest half-hour is 4.6 kW, 20 A at 230 V, beside 37.88 by the table.
METERED = {**HALF_SPEED, **NO_SOURCE, "supply.highest_half_hour_kw": 4.6}


def made(facts, documented=False):
    home = home_of(facts, documented=documented)
    basis = BASIS.documented() if documented else BASIS
    return counted_demand(home, basis, household_demand(home, basis.book).out)


def counted(facts, **how):
    return made(facts, **how).out


class TestWhichCounts:
    def test_the_table_unless_another_is_stated(self):
        out = counted(METERED)
        assert (out.by, out.reason) == (TABLE, "nothing else is stated")
        assert out.now_a == pytest.approx((37.88,))
        assert [(way.by, way.counts) for way in out.ways] == [(TABLE, True), (HALF_HOURS, False)]

    def test_half_hours_where_they_are_stated(self):
        out = counted({**METERED, "supply.demand_by": HALF_HOURS})
        assert (out.by, out.reason) == (HALF_HOURS, "stated")
        assert out.now_a == pytest.approx((20.0,))

    def test_a_logger_where_it_is_stated(self):
        out = counted({**METERED, "supply.demand_by": LOGGER, "supply.logged_l1_a": 24.5})
        assert (out.by, out.now_a) == (LOGGER, (24.5,))
        assert len(out.ways) == 3

    @pytest.mark.parametrize(
        ("by", "key"),
        [(HALF_HOURS, r"supply\.highest_half_hour_kw"), (LOGGER, r"supply\.logged_l1_a")],
    )
    def test_a_stated_way_without_its_figure_is_asked_for(self, by, key):
        with pytest.raises(Unanswered, match=key):
            made({**HALF_SPEED, **NO_SOURCE, "supply.demand_by": by})

    def test_behind_sources_a_meter_does_not_count(self):
        out = counted({**METERED, **SUN, "supply.demand_by": HALF_HOURS})
        assert out.by == TABLE
        assert "net of what sun and battery give" in out.reason

    def test_with_the_table_alone_sources_are_not_asked_after(self):
        assert counted(HALF_SPEED).by == TABLE


class TestThreeLines:
    def test_a_meters_sum_is_shared_as_the_table_is(self):
        out = counted({**THREE_PHASE, **NO_SOURCE, "supply.highest_half_hour_kw": 11.5})
        (way,) = out.ways[1:]
        assert sum(way.line_a) == pytest.approx(50.0)
        assert way.line_a[1] / way.line_a[0] == pytest.approx(49.6 / 33.64)

    def test_a_logger_wants_every_line(self):
        logged = {"supply.logged_l1_a": 20.0, "supply.logged_l2_a": 30.0}
        assert len(counted({**THREE_PHASE, **logged}).ways) == 1
        out = counted({**THREE_PHASE, **logged, "supply.logged_l3_a": 10.0})
        assert out.ways[1].line_a == (20.0, 30.0, 10.0)

    def test_what_was_measured_moves_no_load(self):
        home = home_of(THREE_PHASE)
        assert load_moves(home, BASIS, TABLE).out.each
        assert load_moves(home, BASIS, LOGGER).out.each == ()


class TestBeaten:
    def test_a_house_that_draws_more_than_its_table_is_looked_at(self):
        (note,) = made({**METERED, "supply.highest_half_hour_kw": 9.2}).notes
        assert "L1 drew more" in note.caution

    def test_one_that_draws_less_is_not(self):
        assert made(METERED).notes == ()


class TestFiles:
    def test_files_beside_the_table(self):
        home = home_of({**HALF_SPEED, **NO_SOURCE, "supply.demand_by": LOGGER})
        demand = household_demand(home, BASIS.book).out
        meter = read_half_hours("m.csv", LONDON, Volts(230.0), Kilowatts(23.0))
        log = read_log("l.csv", one([12.0] * 40), 1)
        out = compared(
            home, demand,
            (from_half_hours(BASIS, demand, "m.csv", meter), from_log(BASIS, "l.csv", log)),
        ).out  # fmt: skip
        assert out.by == LOGGER
        assert [way.line_a[0] for way in out.ways] == pytest.approx([37.88, 20.09, 12.0], abs=0.01)
        assert "less than a year" in out.ways[1].words
        assert "peaks L1 12 A" in out.ways[2].words

    def test_a_figure_of_a_file_has_the_file_for_its_source(self):
        basis = BASIS.documented()
        home = home_of({**HALF_SPEED, **NO_SOURCE}, documented=True)
        demand = household_demand(home, basis.book).out
        meter = read_half_hours("m.csv", LONDON, Volts(230.0), Kilowatts(23.0))
        (amps,) = from_half_hours(basis, demand, "m.csv", meter).line_a
        assert not orphans(amps)
        assert any("m.csv" in str(line) for line in working(amps))


@pytest.mark.parametrize("by", [TABLE, HALF_HOURS])
def test_documented_agrees_and_every_number_has_a_source(by):
    facts = {**METERED, "supply.demand_by": by}
    shown = counted(facts, documented=True)
    assert shown.now_a == counted(facts).now_a
    assert not orphans(shown.now_a)


class TestFilesAndNotes:
    METER = Way(HALF_HOURS, (Amperes(18.0),), "m.csv")
    LOG = Way(LOGGER, (Amperes(24.5),), "l.csv")

    def found(self, facts, *files):
        home = home_of(facts)
        return beside_files(home, BASIS, household_demand(home, BASIS.book).out, files).out

    def test_a_file_stands_before_what_was_noted_of_it(self):
        out = self.found(METERED, self.METER)
        assert [(way.by, way.line_a) for way in out.ways][1:] == [(HALF_HOURS, (18.0,))]

    def test_what_was_noted_stands_beside_a_file_of_another_way(self):
        out = self.found(METERED, self.LOG)
        assert [way.by for way in out.ways] == [TABLE, HALF_HOURS, LOGGER]
        assert out.ways[1].line_a == pytest.approx((20.0,))

    def test_a_stated_way_may_stand_in_its_file_alone(self):
        facts = {**HALF_SPEED, **NO_SOURCE, "supply.demand_by": LOGGER}
        out = self.found(facts, self.LOG)
        assert (out.by, out.now_a) == (LOGGER, (24.5,))
        with pytest.raises(Unanswered):
            self.found(facts, self.METER)
