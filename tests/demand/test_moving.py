"""One load on another line: what is offered, to where, and what it leaves."""

from __future__ import annotations

from itertools import combinations, product

import pytest

from ampwright.demand.compare import TABLE
from ampwright.demand.household import household_demand
from ampwright.demand.moving import EASIEST_FIRST, load_moves, remedy_of
from ampwright.survey.home_loads import LoadKind

from ..supply.given_basis import BASIS
from .homes import PLAIN, THREE_PHASE, home_of, loads

SPARE = {"boards.main.spare_phases": "L3 L3"}


def moves(facts):
    """The moves of one load."""
    return [each for each in all_moves(facts) if len(each.going) == 1]


def all_moves(facts):
    return load_moves(home_of(facts), BASIS, TABLE).out.each


def pair(facts):
    """The move of two loads, if there is one."""
    return next((each for each in all_moves(facts) if len(each.going) == 2), None)


def going(move):
    return {each.load: each.to_line for each in move.going}


def to_l3(facts):
    return {move.load: move for move in moves(facts) if move.to_line == "L3"}


class TestWhere:
    def test_one_line_has_no_other(self):
        assert all_moves({**PLAIN, **SPARE}) == ()

    def test_the_worked_three_phase_home(self):
        # Worked home 8: the immersion on L3 gives 33.64, 36.6 and 29.98 A.
        assert to_l3(THREE_PHASE)["immersion"].now_a == pytest.approx((33.64, 36.6, 29.98))

    def test_sockets_join_those_of_the_other_line(self):
        # 20 A in full beside 13 A at 40 %, where 13 A stood in full: 16.98 + 12.2.
        assert to_l3(THREE_PHASE)["utility-sockets"].now_a[2] == pytest.approx(29.18)

    def test_only_to_lines_noted_to_have_a_free_outlet(self):
        assert {move.to_line for move in moves({**THREE_PHASE, **SPARE})} == {"L3"}
        assert {move.to_line for move in moves(THREE_PHASE)} == {"L1", "L2", "L3"}

    def test_a_full_board_has_none(self):
        facts = {**THREE_PHASE, "boards.main.spare_ways": 0}
        assert moves(facts) == []
        # only two that change places: what one leaves the other takes
        assert sorted(going(pair(facts)).values()) == sorted(
            facts[f"loads.{each.load}.phase"] for each in pair(facts).going
        )

    def test_what_is_on_all_lines_or_another_board_stays(self):
        more = {
            **loads(("kiln", "fixed", 13.0, "all")), "loads.immersion.board": "annexe",
            "loads.cooker.board": "main",
        }  # fmt: skip
        left = to_l3({**THREE_PHASE, **more})
        assert "kiln" not in left
        assert "immersion" not in left
        assert "hob" in left

    def test_each_move_is_the_demand_of_the_home_so_changed(self):
        for move in moves(THREE_PHASE):
            changed = {**THREE_PHASE, f"loads.{move.load}.phase": move.to_line}
            assert household_demand(home_of(changed), BASIS.book).out.now_a == move.now_a


class TestOrder:
    def test_a_circuit_of_its_own_before_one_that_people_notice(self):
        kinds = [THREE_PHASE[f"loads.{move.load}.kind"] for move in moves(THREE_PHASE)]
        assert kinds == sorted(kinds, key=EASIEST_FIRST.index)

    def test_of_one_load_the_line_that_leaves_least_on_the_heaviest(self):
        first = [move for move in moves(THREE_PHASE) if move.load == "immersion"]
        assert [move.to_line for move in first] == ["L3", "L1"]

    def test_what_the_network_agreed_to_stays(self):
        assert set(LoadKind.__args__) - set(EASIEST_FIRST) == {
            "heat pump", "battery charging", "charge point",
        }  # fmt: skip


class TestRemedy:
    def test_names_the_work_and_what_it_changes(self):
        remedy = remedy_of(to_l3({**THREE_PHASE, **SPARE})["immersion"], BASIS)
        assert remedy.slug == "move-immersion-to-L3"
        assert remedy.changes == (
            ("loads.immersion.phase", "L3"), ("boards.main.spare_phases", "L2 L3"),
        )  # fmt: skip
        assert remedy.minutes == (24.0, 30.0, 48.0)
        assert "worked out again" in remedy.does
        assert remedy.by == ""

    def test_says_that_the_free_outlet_is_yet_to_be_seen(self):
        remedy = remedy_of(to_l3(THREE_PHASE)["immersion"], BASIS)
        assert "a free outlet, which nobody has noted yet, on L3" in remedy.does
        assert remedy.changes == (("loads.immersion.phase", "L3"),)


class TestTwoTogether:
    def test_the_most_even_where_no_single_one_comes_up_to_it(self):
        # lighting of L1 and the sockets of L2 to L3: 33.64 − 2.64; 49.6 − 20;
        # 16.98 − 13 + 20 + 0.4 × 13 + 2.64
        best = pair(THREE_PHASE)
        assert going(best) == {"lighting": "L3", "utility-sockets": "L3"}
        assert best.now_a == pytest.approx((31.0, 29.6, 31.82))
        assert max(best.now_a) < min(max(each.now_a) for each in moves(THREE_PHASE))

    def test_two_to_one_line_want_two_outlets_there(self):
        assert going(pair({**THREE_PHASE, **SPARE})) == {"lighting": "L3", "utility-sockets": "L3"}
        one = pair({**THREE_PHASE, "boards.main.spare_phases": "L3"})
        assert one is None or sorted(going(one).values()) != ["L3", "L3"]

    def test_none_where_one_does_as_well(self):
        facts = {key: value for key, value in THREE_PHASE.items() if not key.startswith("loads.")}
        facts |= loads(("a", "fixed", 6.0, "L1"), ("b", "fixed", 6.0, "L1"))
        assert pair(facts) is None

    def test_no_pair_of_any_two_is_more_even(self):
        facts = {**THREE_PHASE, **SPARE}
        ids = list(going(pair(facts)))
        best = max(pair(facts).now_a)
        everyone = {move.load for move in moves(THREE_PHASE)}
        for one, other in combinations(sorted(everyone), 2):
            for line_a, line_b in product(("L1", "L2", "L3"), repeat=2):
                changed = {**facts, f"loads.{one}.phase": line_a, f"loads.{other}.phase": line_b}
                if line_a == line_b == "L3" and "L3" not in (
                    facts[f"loads.{one}.phase"], facts[f"loads.{other}.phase"]
                ):  # fmt: skip
                    now_a = household_demand(home_of(changed), BASIS.book).out.now_a
                    assert max(now_a) >= best - 1e-9, ids

    def test_its_work_names_both(self):
        remedy = remedy_of(pair({**THREE_PHASE, **SPARE}), BASIS)
        assert remedy.slug == "move-lighting-to-L3-and-utility-sockets-to-L3"
        assert remedy.minutes == (48.0, 60.0, 96.0)
        assert dict(remedy.changes) == {
            "loads.lighting.phase": "L3", "loads.utility-sockets.phase": "L3",
            "boards.main.spare_phases": "L1 L2",
        }  # fmt: skip


def chart(slack, across=18.0, **more):
    """A charted board: a on 2-L1, b on 2-L2; blank are 1-L2, 4-L2 and 3-L3."""
    blank, filled = ("1-L2", "4-L2", "3-L3"), ("1-L1", "1-L3", "2-L1", "2-L2", "2-L3", "3-L1",
                                              "3-L2", "4-L1", "4-L3")  # fmt: skip
    facts = {key: value for key, value in THREE_PHASE.items() if not key.startswith("loads.")}
    facts |= loads(("a", "fixed", 10.0, "L1"), ("b", "fixed", 6.0, "L2"))
    for outlet in (*blank, *filled):
        facts[f"boards.main.outlets.{outlet}.blank"] = outlet in blank
    for name, outlet in (("a", "2-L1"), ("b", "2-L2")):
        facts |= {f"boards.main.devices.{name}.outlets": outlet,
                  f"boards.main.circuits.{name}.device": name,
                  f"boards.main.circuits.{name}.feeds": name,
                  f"boards.main.circuits.{name}.slack_mm": float(slack[name])}  # fmt: skip
    facts |= {"boards.main.way_pitch_mm": 27.0, "boards.main.line_pitch_mm": across}
    things = {".".join(key.split(".")[:4]) for key in facts if key.startswith("boards.main.")}
    facts |= {f"{each}.present": True for each in things if each.count(".") == 3}
    return {**facts, "boards.main.spare_phases": "L2 L2 L3", **more}


class TestByTheChart:
    # a from 2-L1: 1-L2 is 27 + 18 mm away, 3-L3 is 27 + 2 × 18, 4-L2 is 54 + 18
    @pytest.mark.parametrize(("mm", "lines"), [
        (44, []), (45, ["L2"]), (62, ["L2"]), (63, ["L2", "L3"]),
    ])  # fmt: skip
    def test_as_far_as_the_wire_reaches(self, mm, lines):
        found = [each for each in moves(chart({"a": mm, "b": 0})) if each.load == "a"]
        assert sorted(each.to_line for each in found) == lines

    def test_to_the_nearest_outlet_that_is_blank(self):
        (move,) = [each for each in moves(chart({"a": 90, "b": 0})) if going(each) == {"a": "L2"}]
        remedy = remedy_of(move, BASIS)
        assert "a from 2-L1 to 1-L2 (45 mm of wire needed, 90 there)" in remedy.does
        assert dict(remedy.changes) == {
            "loads.a.phase": "L2", "boards.main.outlets.1-L2.blank": False,
            "boards.main.outlets.2-L1.blank": True, "boards.main.devices.a.outlets": "1-L2",
            "boards.main.spare_phases": "L1 L2 L3",
        }  # fmt: skip

    def test_at_least_the_width_of_a_way_while_the_way_across_is_not_measured(self):
        facts = chart({"a": 27, "b": 0})
        assert not [each for each in moves(facts) if each.load == "a"]
        del facts["boards.main.line_pitch_mm"]
        assert [going(each) for each in moves(facts)] == [{"a": "L3"}, {"a": "L2"}]
        facts["boards.main.circuits.a.slack_mm"] = 26.0
        assert moves(facts) == []

    def test_what_one_leaves_the_other_takes(self):
        # b to 2-L1 is 18 mm across, counted as the 27 of a way; a has only b's place in reach
        facts = chart({"a": 27, "b": 27}) | loads(("c", "charge point", 9.0, "L2"))
        # 10, 15 and 0 A: changed over 6, 19 and 0, which is worse; so none
        assert all_moves(facts) == ()
        facts |= {"loads.c.phase": "L1", "loads.b.amps_a": 1.0}
        # 19, 1 and 0 A: changed over 10, 10 and 0
        best = pair(facts)
        assert going(best) == {"a": "L2", "b": "L1"}
        assert {each.load: each.to_outlet for each in best.going} == {"a": "2-L2", "b": "2-L1"}
        changes = dict(remedy_of(best, BASIS).changes)
        assert changes["boards.main.outlets.2-L1.blank"] is False
        assert changes["boards.main.devices.b.outlets"] == "2-L1"
        assert changes["boards.main.spare_phases"] == "L2 L2 L3"

    def test_a_device_two_outlets_wide_stays(self):
        facts = chart({"a": 90, "b": 0})
        facts["boards.main.devices.a.outlets"] = "2-L1 2-L2"
        assert not [each for each in moves(facts) if each.load == "a"]

    def test_a_load_whose_circuit_is_not_on_the_chart_finds_its_outlet_on_the_day(self):
        facts = chart({"a": 0, "b": 0})
        facts["boards.main.circuits.a.feeds"] = "something-else"
        (move,) = [each for each in moves(facts) if going(each) == {"a": "L3"}]
        assert "its free outlet on L3" in remedy_of(move, BASIS).does

    def test_an_outlet_that_nobody_looked_at_is_not_blank(self):
        facts = chart({"a": 90, "b": 0})
        del facts["boards.main.outlets.1-L2.blank"]
        (move,) = [each for each in moves(facts) if going(each) == {"a": "L2"}]
        assert [each.to_outlet for each in move.going] == ["4-L2"]

    def test_an_id_of_another_form_counts_as_one_way_off(self):
        facts = chart({"a": 27, "b": 0})
        facts["boards.main.devices.a.outlets"] = "7"
        assert {each.to_line for each in moves(facts)} == {"L2", "L3"}
