"""A whole way in a three-phase board: the answer sheet of the packed board, and a second search."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ampwright.design.board.ways import whole_way

from .homes import PACKED, YARD, basis, changed, packed, plain

LINES = ("L1", "L2", "L3")


def way(facts):
    return whole_way(plain(facts), basis(), "main")


def moves_in(remedy):
    """From and to of each move that a remedy names."""
    return {
        words[words.index("from") + 1]: words[words.index("to") + 1]
        for each in remedy.does.split(": ", 1)[1].split("; ")
        if "from" in (words := each.split())
    }


class TestThePackedBoard:
    def test_way_6_by_two_moves_on_the_same_lines(self):
        check = way(PACKED)
        assert check.outcome.value == "fail"
        (remedy,) = check.remedies
        assert remedy.slug == "free-way-6"
        # bench sockets to 7-L1: 27 mm needed, 250 there; outside lights to 8-L3: 54, 300 there
        assert moves_in(remedy) == {"6-L1": "7-L1", "6-L3": "8-L3"}
        assert "27 mm of wire needed, 250 there" in remedy.does
        assert "54 mm of wire needed, 300 there" in remedy.does
        assert remedy.minutes == pytest.approx((48.0, 60.0, 96.0))

    def test_with_the_moves_made_it_is_free(self):
        (remedy,) = way(PACKED).remedies
        check = way({**changed(PACKED), **dict(remedy.changes)})
        assert (check.outcome.value, check.why) == ("pass", "way 6 is free on every line")

    @pytest.mark.parametrize(("name", "mm", "frees"), [
        ("house-sockets", 81, 1), ("house-sockets", 80, 0),  # 3-L2 to 6-L2 is three ways of 27 mm
        ("garage", 54, 1), ("garage", 53, 0),  # 8-L2 to 6-L2 is two
    ])  # fmt: skip
    def test_a_millimetre_decides(self, name, mm, frees):
        # with way 6 stuck, way 3 or way 8 is freed only if the wire on its L2 reaches
        slack = {"house-sockets": 60, "house-lights": 200, "alarm": 220, "garage": 40, name: mm}
        assert len(way(packed(slack=slack)).remedies) == frees

    def test_nothing_reaches_nothing_moves(self):
        check = way(packed(slack={}))
        assert check.outcome.value == "fail"
        assert check.remedies == ()
        assert "1-L1 kiln fills several outlets" in check.why
        assert "6-L1 bench-sockets does not reach a blank" in check.why


def test_a_free_way_needs_no_move():
    rows = "a b c\n. . .\nd e f"
    assert way(packed(rows, {})).outcome.value == "pass"


def test_a_chain_is_found_and_made_from_its_far_end():
    rows = "a . .\nb p q\n. r s"
    (remedy,) = way(packed(rows, {"a": 27, "b": 27})).remedies
    assert remedy.slug == "free-way-1"
    assert list(moves_in(remedy).items()) == [("2-L1", "3-L1"), ("1-L1", "2-L1")]
    assert way({**changed(packed(rows, {"a": 27, "b": 27})), **dict(remedy.changes)}
               ).outcome.value == "pass"  # fmt: skip


def test_no_chart_no_spare_line():
    assert way(YARD).why == "no spare outlet on L1, L2"


def test_what_was_said_of_whole_ways_comes_first():
    assert way(changed(YARD, boards__main__whole_ways_spare=1)).outcome.value == "pass"
    assert way(changed(PACKED, boards__main__whole_ways_spare=0)).outcome.value == "fail"


def test_a_new_board_has_a_whole_way():
    from ampwright.design.board.mending import new_board

    for facts in (PACKED, YARD):
        new = dict(new_board(plain(facts), basis(), "main").changes)
        assert way({**changed(facts), **new}).outcome.value == "pass"


def test_no_chart_but_spares_on_every_line():
    facts = changed(YARD, boards__main__spare_phases="L1 L2 L3")
    assert way(facts).outcome.value == "undetermined"


def fewest(rows, slack):
    """The fewest moves that free a way, by trying every state of the board breadth first."""
    ways = [row.split() for row in rows.split("\n")]
    start = tuple(tuple(row) for row in ways)
    home_of = {name: i for i, row in enumerate(start) for name in row if name != "."}
    seen, frontier, count = {start}, [start], 0
    while frontier:
        if any(all(name == "." for name in row) for state in frontier for row in state):
            return count
        onward = []
        for state in frontier:
            for line, here in product(range(3), range(len(state))):
                name = state[here][line]
                if name == "." or state[here].count(name) > 1:
                    continue
                for there in range(len(state)):
                    reaches = 27 * abs(home_of[name] - there) <= slack.get(name, 0)
                    if state[there][line] == "." and reaches:
                        board = [list(row) for row in state]
                        board[there][line], board[here][line] = name, "."
                        new = tuple(tuple(row) for row in board)
                        if new not in seen:
                            seen.add(new)
                            onward.append(new)
        frontier, count = onward, count + 1
    return None


@st.composite
def boards(draw):
    """Small boards of four ways, some outlets blank, wires of any reach."""
    names = iter("abcdefghijklmnop")
    rows = [" ".join("." if draw(st.booleans()) else next(names) for _ in LINES) for _ in range(4)]
    used = [name for row in rows for name in row.split() if name != "."]
    slack = {name: draw(st.sampled_from([0, 27, 54, 81])) for name in used}
    return "\n".join(rows), slack


@settings(max_examples=60, deadline=None)
@given(boards())
def test_the_fewest_moves_are_the_fewest_of_all_orders(board):
    rows, slack = board
    check, least = way(packed(rows, slack)), fewest(rows, slack)
    if least == 0:
        assert check.outcome.value == "pass"
    elif least is None:
        assert check.remedies == ()
    else:
        (remedy,) = check.remedies
        assert len(moves_in(remedy)) == least
