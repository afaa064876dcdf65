"""One load on another line: what is offered, to where, and what it leaves."""

from __future__ import annotations

import pytest

from ampwright.demand.compare import TABLE
from ampwright.demand.household import household_demand
from ampwright.demand.moving import EASIEST_FIRST, load_moves, remedy_of
from ampwright.survey.home_loads import LoadKind

from ..supply.given_basis import BASIS
from .homes import PLAIN, THREE_PHASE, home_of, loads

SPARE = {"boards.main.spare_phases": "L3 L3"}


def moves(facts):
    return load_moves(home_of(facts), BASIS, TABLE).out.each


def to_l3(facts):
    return {move.load: move for move in moves(facts) if move.to_line == "L3"}


class TestWhere:
    def test_one_line_has_no_other(self):
        assert moves({**PLAIN, **SPARE}) == ()

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
        assert moves({**THREE_PHASE, "boards.main.spare_ways": 0}) == ()

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
