"""A board as a rack, the small board instead, what an old point leaves: limits and edges."""

from __future__ import annotations

import pytest

from ampwright.design.board.extra import extra_board, front_a, small_board
from ampwright.design.board.rack import Rack, rack_of, spot_of
from ampwright.foundations.quantity import Count
from ampwright.survey.home_loads import STANDARD_LOADS

from .homes import PACKED, SEMI, YARD, basis, board, changed, flat, packed, plain, supply
from .test_board import room
from .test_ways import TWO, WHOLE, moves_in, row, way
from .work import failed, outcome_of


class TestRack:
    def test_what_touches_along_the_bars_and_across_them(self):
        assert set(Rack({}, (), True, frozenset()).beside((3, 1))) == {
            (2, 1), (4, 1), (3, 0), (3, 2),
        }  # fmt: skip
        assert set(Rack({}, (), False, frozenset()).beside((3, 0))) == {(2, 0), (4, 0)}

    @pytest.mark.parametrize(("here", "there", "parted"), [
        (1, 4, True), (4, 1, True), (3, 5, False), (1, 3, False), (1, 2, False),
    ])  # fmt: skip
    def test_what_lies_between_two_ways_and_cuts_the_bars(self, here, there, parted):
        assert Rack({}, (), False, frozenset({3})).parted(here, there) is parted

    @pytest.mark.parametrize(("outlet", "three", "spot"), [
        ("3-L2", True, (3, 1)), ("3-L2", False, (3, 0)), ("3", False, (3, 0)),
        ("3", True, None), ("spare", False, None),
    ])  # fmt: skip
    def test_where_an_outlet_is(self, outlet, three, spot):
        assert spot_of(outlet, three) == spot

    def test_what_nobody_noted_stays_and_is_named(self):
        facts = changed(packed("a . .\n. b c", {"a": 27}))
        facts["boards.main.devices.b.present"] = False
        (unnoted,) = [seat for seat in rack_of(plain(facts), "main").seats if not seat.device]
        assert (unnoted.spots, unnoted.warm) == (((2, 1),), False)
        assert unnoted.stays == "nobody noted what is on 2-L2"
        assert moves_in(way(facts).remedy) == {"1-L1": "2-L1"}
        assert way(facts).remedy.chart[2] == ("2", "a", "not noted", "c")

    def test_of_two_circuits_on_one_device_the_shorter_wire(self):
        facts = changed(packed("a . .\n. b c", {"a": 27}))
        facts |= {"boards.main.circuits.more.device": "a", "boards.main.circuits.more.slack_mm": 26}
        assert way(facts).remedy is None

    def test_nothing_goes_where_the_board_ends(self):
        # d one further would leave 2 and 3, but there is no fifth place
        assert way(row("a . d d", {"d": 18}), phases=1, positions=TWO).remedy is None

    def test_a_wide_device_needs_no_wire_across(self):
        facts = changed(packed("w w .\na b c\n. . d", {"w": 54}))
        facts["boards.main.line_pitch_mm"] = 18.0
        assert moves_in(way(facts).remedy) == {"1-L1 and 1-L2": "3-L1 and 3-L2"}


class TestWords:
    def test_where_it_is_made(self):
        assert way(PACKED).remedy.does.startswith("Make way 6 of main free by 2 moves on the same")
        one = way(row("a . b . c", {"b": 18}), phases=1, positions=TWO).remedy
        assert one.does.startswith("Make a place of main free by 1 move on the same lines: b from")
        assert one.steps[2].startswith("2 and 3 is empty now")

    def test_what_was_said_of_whole_ways_is_not_for_a_point_or_a_board_on_one_line(self):
        facts = changed(PACKED, boards__main__whole_ways_spare=1)
        assert way(facts, phases=1, positions=1).why == "outlet 3-L1 is free"
        one = row("a . b", {}, **{"boards.main.whole_ways_spare": 1})
        assert way(one, phases=3, positions=WHOLE).free is False

    def test_without_a_chart_only_a_whole_way_waits_for_one(self):
        assert (way(YARD, phases=1).free, way(YARD, phases=1).why) == (True, "")
        one = flat({"supply": supply(), "boards": {"main": board()}})
        assert (way(one, phases=3).free, way(one, phases=3).why) == (True, "")

    def test_no_place_at_all(self):
        found = way(row("a", {}), phases=1, positions=TWO)
        assert "needs 2 places, 1 line and a switch of 80 A" in found.why


class TestTheSmallBoardInstead:
    # The catalogue has one of four places on one line, and one of eight on three, both 100 A.
    @pytest.mark.parametrize(("needed", "fuse", "found"), [
        (8, 100.0, True), (9, 100.0, False), (8, 101.0, False),
    ])  # fmt: skip
    def test_its_places_and_its_switch(self, needed, fuse, found):
        home = plain(changed(PACKED, supply__main_fuse_a=fuse))
        assert (small_board(home, basis(), "main", Count(needed)) is not None) is found

    @pytest.mark.parametrize(("metres", "device", "front"), [
        (3.0, 63.0, 80.0), (12.0, 63.0, 63.0), (12.0, 0.0, 80.0),
    ])  # fmt: skip
    def test_what_stands_in_front_of_it(self, metres, device, front):
        facts = changed(SEMI, boards__main__from_meter_m=metres, boards__main__feed_device_a=device)
        assert front_a(plain(facts), basis(), "main") == front

    def test_at_the_meter_end_it_is_a_choice_of_its_own(self):
        assert list(extra_board(plain(PACKED), basis(), "main", Count(3))) == []

    def test_beside_a_far_board_it_mends(self):
        facts = changed(PACKED, boards__main__from_meter_m=12.0, boards__main__feed_device_a=63.0)
        (remedy,) = extra_board(plain(facts), basis(), "main", Count(3))
        changes = dict(remedy.changes)
        assert changes["boards.main.spare_ways"] == 8
        assert changes["boards.main.whole_ways_spare"] == 1
        assert changes["boards.main.outlets.1-L1.present"] is False
        assert "of 8 places and 100 A beside main, on the same feed" in remedy.does
        assert way({**facts, **changes}).free

    def test_on_one_line_it_has_no_whole_way(self):
        facts = changed(SEMI, boards__main__from_meter_m=12.0, boards__main__feed_device_a=63.0,
                        boards__main__spare_ways=0)  # fmt: skip
        made = room(facts)
        (check,) = [each for each in made.checks if each.requirement.id == "way_free"]
        (remedy,) = check.remedies
        assert dict(remedy.changes) == {
            "boards.main.spare_ways": 4, "boards.main.spare_behind_rcd": "none",
            "boards.main.surge_protection": True,
        }  # fmt: skip
        assert failed(room({**facts, **dict(remedy.changes)}).checks) == []


class TestInTheRoom:
    def test_the_way_that_an_old_point_leaves_counts(self):
        facts = {**changed(SEMI, boards__main__spare_ways=1), "loads.old.kind": "charge point",
                 "loads.old.goes": True, "loads.old.board": "main"}  # fmt: skip
        assert outcome_of(room({**facts, "loads.old.present": True}).checks, "way_free") == "fail"
        made = room({**facts, "loads.old.present": False})
        (check,) = [each for each in made.checks if each.requirement.id == "way_free"]
        assert (check.outcome.value, check.actual, check.limit) == ("pass", 2, 2)

    def test_one_that_nobody_said_goes_leaves_nothing(self):
        facts = {**changed(SEMI, boards__main__spare_ways=1), "loads.old.kind": "charge point",
                 "loads.old.present": False, "loads.old.board": "main"}  # fmt: skip
        assert outcome_of(room(facts).checks, "way_free") == "fail"

    def test_what_runs_warm_beside_it_is_a_caution(self):
        facts = changed(
            packed("h h h\n. . .\na b c", {}), boards__main__circuits__h__for_hours=True
        )
        (check,) = [each for each in room(facts, point="three-socket", setting_a=16.0).checks
                    if each.requirement.id == "place_free"]  # fmt: skip
        assert check.outcome.value == "pass"
        assert check.caution.startswith("the point beside h: both are loaded for hours")

    @pytest.mark.parametrize("warm", [True, False])
    def test_only_where_something_does_and_it_is_free(self, warm):
        rows = "h h h\na . .\n. b c" if warm else "h h h\n. . .\na b c"
        facts = changed(packed(rows, {"a": 27}), boards__main__circuits__h__for_hours=warm)
        (check,) = [each for each in room(facts, point="three-socket", setting_a=16.0).checks
                    if each.requirement.id == "place_free"]  # fmt: skip
        assert check.caution == ""

    def test_the_device_in_front_of_a_board_on_the_way_is_in_front_of_the_point(self):
        facts = changed(SEMI, boards__main__front_rcd="AC", boards__main__front_rcd_ma=100.0,
                        boards__main__front_delayed=True)  # fmt: skip
        facts |= flat({"boards": {"shed": board(fed_from="main", from_meter_m=20.0)}})
        facts |= {f"loads.{id_}.present": False for id_ in STANDARD_LOADS}
        made = room(facts, tap="shed")
        assert made.out.front_rcd == "AC"
        assert failed(made.checks) == ["no_blind_rcd_upstream"]
        (blind,) = [each for each in made.checks if each.outcome.value == "fail"]
        assert [each.slug for each in blind.remedies] == ["front-rcd-main"]
