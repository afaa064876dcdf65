"""Demand at its edges: wires that just reach, times that just are, a year just whole."""

from __future__ import annotations

import pytest

from ampwright.demand.compare import TABLE
from ampwright.demand.moving import load_moves
from ampwright.demand.times import clocks_go_back, clocks_go_forward, read_time

from ..supply.given_basis import BASIS
from .homes import THREE_PHASE, home_of
from .test_compare import METERED, made

# Ways of the board are 27 mm wide; the wire of a circuit must reach the next one.
WIRED = {
    "boards.main.way_pitch_mm": 27.0, "boards.main.circuits.tank.present": True,
    "boards.main.circuits.tank.feeds": "immersion other",
}  # fmt: skip


def moved(facts):
    return {move.load for move in load_moves(home_of(facts), BASIS, TABLE).out.each}


class TestWires:
    @pytest.mark.parametrize(("slack", "moves"), [(27.0, True), (26.9, False)])
    def test_a_circuit_moves_if_its_wire_reaches_the_next_way(self, slack, moves):
        facts = {**THREE_PHASE, **WIRED, "boards.main.circuits.tank.slack_mm": slack}
        assert ("immersion" in moved(facts)) is moves
        assert "utility-sockets" in moved(facts)

    def test_a_length_nobody_measured_speaks_against_nothing(self):
        assert "immersion" in moved({**THREE_PHASE, **WIRED})

    @pytest.mark.parametrize(("board", "moves"), [("main", True), ("annexe", False)])
    def test_only_what_the_main_board_feeds(self, board, moves):
        assert ("immersion" in moved({**THREE_PHASE, "loads.immersion.board": board})) is moves

    def test_one_line_has_no_other_to_move_to(self):
        assert moved({**THREE_PHASE, "supply.phases": 1}) == set()


class TestTimes:
    @pytest.mark.parametrize("text", ["2026-01-31 24:00", "2026-01-31 23:59", "31/01/2026 0:00"])
    def test_a_time_that_just_is_one(self, text):
        assert read_time(text).day.day == 31

    @pytest.mark.parametrize("text", ["2026-01-31 25:00", "2026-01-31 23:60", "31/01/2026 12:60"])
    def test_one_that_just_is_none(self, text):
        with pytest.raises(ValueError, match="a date and time"):
            read_time(text)

    def test_zones_either_way_come_to_one_minute(self):
        noon = read_time("2026-01-31T12:00+00:00").minutes
        assert read_time("2026-01-31T17:30+05:30").minutes == noon
        assert read_time("2026-01-31T08:30-03:30").minutes == noon

    # In 2026 the clocks go forward on 29 March and back on 25 October, both Sundays.
    @pytest.mark.parametrize(
        ("text", "forward", "back"),
        [
            ("2026-03-29 01:00", True, False), ("2026-03-29 02:30", False, False),
            ("2026-03-22 01:00", False, False), ("2026-03-28 01:00", False, False),
            ("2026-10-25 01:30", False, True), ("2026-10-25 03:00", False, False),
            ("2026-10-18 01:30", False, False), ("2026-11-29 01:30", False, False),
            ("2026-10-25T01:30+00:00", False, False),
        ],
    )  # fmt: skip
    def test_nights_on_which_the_clocks_change(self, text, forward, back):
        at = read_time(text)
        assert (clocks_go_forward(at), clocks_go_back(at)) == (forward, back)


class TestBeaten:
    # 230 V × 37.88 A = 8.7124 kW: as much as the table counts, and a watt or so more
    @pytest.mark.parametrize(("kw", "over"), [(8.712, False), (8.714, True)])
    def test_as_much_as_the_table_is_not_more(self, kw, over):
        notes = made({**METERED, "supply.highest_half_hour_kw": kw}).notes
        assert any(note.caution for note in notes) is over
