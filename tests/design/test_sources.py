"""Beside sun and battery: sensors, devices, bars and export."""

from __future__ import annotations

import pytest

from ampwright.design.sources import backed_up, export_limits, sensor_order, source_ways
from ampwright.foundations.stages import Made
from ampwright.foundations.stages import cautions as cautions_in

from .homes import SEMI, SUNNY, YARD, basis, changed, plain
from .work import failed, outcome_of


def order(facts, tap, limited=True):
    return sensor_order(plain(facts), basis(), tap, limited)


def mended(facts, check):
    """The facts with each remedy of a check laid over them in turn."""
    return [{**facts, **dict(remedy.changes)} for remedy in check.remedies]


def cautions(made):
    return list(cautions_in(made.checks, made.notes))


class TestSensors:
    # The answer sheet of the worked home with sun and battery: the tap on the meter side of the
    # battery's sensor stops the battery seeing the car; the point's own sensor is ahead of all.
    def test_at_the_meter_the_battery_does_not_see_the_car(self):
        made = order(SUNNY, "meter")
        assert not failed(made.checks)
        assert made.out.batteries_see_car == ()
        assert made.out.along == (
            "meter", "the point's sensor", "the point", "the sensor of store", "the board",
        )  # fmt: skip
        assert any("meter side of the sensor of store" in each for each in cautions(made))
        assert any("one clip never serves two devices" in each for each in cautions(made))

    def test_on_the_board_it_does(self):
        made = order(SUNNY, "main")
        assert made.out.batteries_see_car == ("store",)
        assert made.out.along[-1] == "the point"
        assert failed(made.checks) == ["battery_leaves_car"]
        (facts,) = mended(SUNNY, made.checks[0])
        assert not failed(order(facts, "main").checks)

    def test_a_sensor_at_the_meter_is_moved_or_the_battery_held_off(self):
        facts = changed(SUNNY, sources__store__sensor_at="at the meter")
        made = order(facts, "meter")
        assert failed(made.checks) == ["battery_leaves_car"]
        slugs = [remedy.slug for remedy in made.checks[0].remedies]
        assert slugs == ["move-sensor-store", "hold-off-store"]
        for after in mended(facts, made.checks[0]):
            assert not failed(order(after, "meter").checks)

    def test_a_sensor_in_the_board_sees_only_what_the_board_feeds(self):
        facts = changed(SUNNY, sources__store__sensor_at="in the board")
        assert not failed(order(facts, "meter").checks)
        assert failed(order(facts, "main").checks) == ["battery_leaves_car"]

    def test_sun_alone_takes_nothing_for_a_load(self):
        facts = changed(SUNNY, sources__store__present=False)
        made = order(facts, "main", limited=False)
        assert made.checks == ()

    def test_three_tails_want_three_sensors(self):
        # never one sensor on one line of three
        (words,) = cautions(order(YARD, "meter"))
        assert "each on its own line" in words
        assert "one clip" not in words

    def test_without_sources_a_limit_needs_no_word_on_them(self):
        made = order(SEMI, "main")
        assert cautions(made) == []
        assert made.out.along.index("the point's sensor") < made.out.along.index("the point")
        assert "sees every load" in made.notes[0].says
        assert order(SEMI, "main", limited=False).notes == ()


class TestWays:
    def test_the_board_that_is_left_is_told_of(self):
        # 80 A fuse + 16 A sun + 16 A battery = 112 A on a board rated 100 A
        made = source_ways(plain(SUNNY), basis(), "meter")
        assert not failed(made.checks)
        told = made.notes[0]
        assert told.about == ("main", 112.0, 100.0)
        assert "112 A" in told.caution and "customer is told" in told.caution

    def test_a_board_that_bears_them_needs_no_word(self):
        facts = changed(SUNNY, boards__main__rated_a=125.0)
        made = source_ways(plain(facts), basis(), "meter")
        assert cautions(made) == []
        assert "rated 125 A" in made.notes[0].says

    def test_devices_for_one_way_are_changed_on_the_points_board_and_noted_elsewhere(self):
        facts = changed(SUNNY, sources__sun__way_both_ways=False)
        here = source_ways(plain(facts), basis(), "main")
        assert failed(here.checks) == ["device_suits_both_ways"]
        assert here.notes == ()
        (check,) = [each for each in here.checks if each.outcome.value == "fail"]
        (after,) = mended(facts, check)
        assert not failed(source_ways(plain(after), basis(), "main").checks)
        there = source_ways(plain(facts), basis(), "meter")
        assert not failed(there.checks)
        assert any("feeds sun: record" in each for each in cautions(there))

    def test_nothing_to_say_without_sources(self):
        assert source_ways(plain(SEMI), basis(), "main") == Made(None)

    def test_line_by_line(self):
        facts = changed(YARD, boards__main__rated_a=100.0)
        facts |= {"sources.sun.present": True, "sources.sun.amps_a": 21.0,
                  "sources.sun.board": "main", "sources.sun.phase": "L2",
                  "sources.sun.way_both_ways": True}  # fmt: skip
        made = source_ways(plain(facts), basis(), "meter")
        assert [each.about for each in made.notes] == [("main", 101.0, 100.0)]
        assert len(cautions(made)) == 1


class TestPowerCut:
    @pytest.mark.parametrize(("backs_up", "tap", "says"), [
        ("nothing", "main", []), ("a few circuits", "main", ["pass"]),
        ("the whole house", "main", ["fail"]), ("the whole house", "meter", ["pass"]),
    ])  # fmt: skip
    def test_the_point_stays_off_the_backed_side(self, backs_up, tap, says):
        facts = changed(SUNNY, sources__store__backs_up=backs_up)
        made = backed_up(plain(facts), tap)
        assert [each.outcome.value for each in made.checks] == says

    def test_at_the_meter_the_tap_goes_ahead_of_the_changeover(self):
        facts = changed(SUNNY, sources__store__backs_up="the whole house")
        (check,) = backed_up(plain(facts), "meter").checks
        assert "network's side of the changeover" in check.caution


class TestExport:
    @pytest.mark.parametrize(("limited", "tap", "told"), [
        (False, "meter", 0), (True, "meter", 1), (True, "main", 0),
    ])  # fmt: skip
    def test_the_operator_is_told_where_the_sensor_is_no_longer_in_front(self, limited, tap, told):
        facts = changed(SUNNY, sources__sun__export_limited=limited)
        made = export_limits(plain(facts), tap)
        assert len(cautions(made)) == told
        assert all("tell the operator" in each for each in cautions(made))


def test_a_new_board_takes_devices_for_both_ways():
    from ampwright.design.board.mending import new_board

    facts = changed(SUNNY, sources__sun__way_both_ways=False)
    after = {**facts, **dict(new_board(plain(facts), basis(), "main").changes)}
    made = source_ways(plain(after), basis(), "main")
    assert outcome_of(made.checks[:1], "device_suits_both_ways") == "pass"
