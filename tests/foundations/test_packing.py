"""Pieces in a rack: hand-worked racks, and every sequence of takings-out and puttings-in."""

from __future__ import annotations

from heapq import heappop, heappush
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ampwright.foundations.packing import Packing, Piece, Place, in_order


def rack(rows, reach):
    """Pieces of a drawn rack: one letter a piece, a dot is blank; each reaches so many ways."""
    at = {}
    for way, row in enumerate(rows):
        for line, name in enumerate(row):
            if name != ".":
                at.setdefault(name, []).append((way, line))
    spots = {(way, line) for way, row in enumerate(rows) for line in range(len(row))}
    return [
        Piece(name, tuple(here), tuple(places(here, reach.get(name, 0), spots)))
        for name, here in at.items()
    ]


def places(here, reach, spots):
    for by in sorted(range(-reach, reach + 1), key=abs):
        there = tuple((way + by, line) for way, line in here)
        if by and all(spot in spots for spot in there):
            yield Place(there, (float(abs(by)),))


def ways(rows):
    return [tuple((way, line) for line in range(len(row))) for way, row in enumerate(rows)]


def freed(rows, reach, **weighed):
    return Packing(rack(rows, reach), **weighed).fewest(ways(rows))


def went(packed):
    return {id_: place.spots for id_, place in packed.moves}


class TestByHand:
    def test_what_is_free_needs_no_move(self):
        assert freed(["abc", "...", "def"], {}).moves == ()

    def test_three_moves_free_the_middle(self):
        # a, e and f stay; b has a blank below it, c and d above.
        found = freed(["a..", "bcd", ".ef"], {"b": 1, "c": 1, "d": 1})
        assert found.freed == ((1, 0), (1, 1), (1, 2))
        assert went(found) == {"b": ((2, 0),), "c": ((0, 1),), "d": ((0, 2),)}

    def test_a_chain_counts_each_that_moves(self):
        # a goes where b is, b to the blank: a by itself reaches no blank.
        found = freed(["a..", "bpq", ".rs"], {"a": 1, "b": 1})
        assert went(found) == {"a": ((1, 0),), "b": ((2, 0),)}

    def test_of_as_few_the_least_cost(self):
        # b leaves the middle by one way up or two ways down.
        found = Packing(rack(["a.", "b.", "cd", ".e"], {"b": 2, "a": 0})).fewest([((1, 0), (1, 1))])
        assert went(found) == {"b": ((3, 0),)}
        assert found.cost == (2.0,)

    def test_a_wide_piece_moves_whole(self):
        found = freed(["aab", "...", "cde"], {"a": 2})
        assert found.moves == ()
        found = Packing(rack(["aab", "..f", "cde"], {"a": 1, "b": 0})).fewest([((0, 0), (0, 1))])
        assert went(found) == {"a": ((1, 0), (1, 1))}

    def test_a_wide_piece_makes_room_for_two_with_one_move(self):
        # p and q both go where w was: three touched, though each chain by itself has two.
        rows = ["pq", "ww", ".."]
        found = Packing(rack(rows, {"p": 1, "q": 1, "w": 1})).fewest([((0, 0), (0, 1))])
        assert set(went(found)) == {"p", "q", "w"}

    def test_in_a_row_a_wide_piece_shifts_over_its_own_place(self):
        # places 1 to 5 in a row: d fills 2 and 3; to free 1 and 2 it shifts by one, into 4.
        row = ["."], ["d"], ["d"], ["."], ["e"]
        found = Packing(rack(row, {"d": 1})).fewest([((0, 0), (1, 0))])
        assert went(found) == {"d": ((2, 0), (3, 0))}

    def test_nothing_reaches_nothing_moves(self):
        assert freed(["ab", "cd", ".e"], {}) is None

    def test_no_blank_no_way(self):
        assert freed(["ab", "cd"], dict.fromkeys("abcd", 3)) is None

    def test_what_is_not_to_be_borne_is_not_offered(self):
        rows, reach = ["a.", "bc", ".d"], {"a": 2}
        assert went(freed(rows, reach)) == {"a": ((2, 0),)}
        assert freed(rows, reach, burden=lambda _freed, _moves: None) is None

    def test_the_least_burden_comes_before_the_least_cost(self):
        rows, reach = ["a.", ".b", ".c"], {"a": 2}
        near = Packing(rack(rows, reach)).fewest([((0, 0), (0, 1))])
        far = Packing(
            rack(rows, reach), lambda _freed, moves: int(moves["a"].spots == ((1, 0),))
        ).fewest([((0, 0), (0, 1))])
        assert (went(near), went(far)) == ({"a": ((1, 0),)}, {"a": ((2, 0),)})

    def test_the_most_even_of_those_that_cost_the_same(self):
        rows, reach = [".b", "a.", ".c"], {"a": 1}
        for wanted in (0, 2):
            found = Packing(
                rack(rows, reach), evenness=lambda m, w=wanted: float(m["a"].spots[0][0] != w)
            ).fewest([((1, 0), (1, 1))])
            assert went(found) == {"a": ((wanted, 0),)}

    def test_no_more_moves_than_are_allowed(self):
        rows, reach = ["ab", "..", "cd"], {"a": 1, "b": 1}
        wanted = [((0, 0), (0, 1))]
        assert Packing(rack(rows, reach)).fewest(wanted, most=1) is None
        assert len(Packing(rack(rows, reach)).fewest(wanted, most=2).moves) == 2

    def test_a_piece_that_must_change_and_one_that_makes_room(self):
        # a must go where b is; b finds a's old place.
        pieces = [Piece("a", ((0, 0),)), Piece("b", ((0, 1),), (Place(((0, 0),), (1.0,)),))]
        found = Packing(pieces).fewest([()], {"a": (Place(((0, 1),), (1.0,)),)})
        assert went(found) == {"a": ((0, 1),), "b": ((0, 0),)}


class TestOrder:
    def test_the_far_end_of_a_chain_first(self):
        pieces = rack(["a", "b", "."], {"a": 1, "b": 1})
        moves = [("a", Place(((1, 0),), ())), ("b", Place(((2, 0),), ()))]
        assert [step.id for step in in_order(pieces, moves)] == ["b", "a"]

    def test_in_a_ring_one_hangs_meanwhile(self):
        pieces = rack(["ab"], {})
        moves = [("a", Place(((0, 1),), ())), ("b", Place(((0, 0),), ()))]
        steps = in_order(pieces, moves)
        assert sorted(step.hung for step in steps) == [False, True]


@st.composite
def racks(draw):
    """Small racks: up to four ways of two or three lines, some pieces two or three wide."""
    lines = draw(st.integers(1, 3))
    rows, names = [], iter("abcdefghijklmnop")
    for _ in range(draw(st.integers(2, 4))):
        kind = draw(st.sampled_from(["single", "single", "whole"]))
        if kind == "whole" and lines > 1:
            rows.append(next(names) * lines)
        else:
            rows.append("".join(draw(st.sampled_from([next(names), "."])) for _ in range(lines)))
    if lines == 1 and draw(st.booleans()):  # in a row: a piece two wide
        rows[0] = rows[1] = "z"
    used = sorted({name for row in rows for name in row if name != "."})
    reach = {name: draw(st.integers(0, 3)) for name in used}
    wide = draw(st.integers(1, 2)) if lines == 1 else 0
    wanted = (
        [tuple((way + each, 0) for each in range(wide)) for way in range(len(rows) - wide + 1)]
        if wide
        else ways(rows)
    )
    return rack(rows, reach), wanted


def free_in(at, wanted):
    taken = {spot for spots in at.values() for spot in spots}
    return any(taken.isdisjoint(spots) for spots in wanted)


def best_end(pieces, wanted):
    """Fewest moved and least cost of all arrangements there are, each piece anywhere it reaches."""
    best = None
    options = [[(each.at, None), *((p.spots, p.cost[0]) for p in each.places)] for each in pieces]
    for ends in product(*options):
        spots = [spot for at, _ in ends for spot in at]
        if len(set(spots)) < len(spots):
            continue
        if not free_in(dict(enumerate(at for at, _ in ends)), wanted):
            continue
        costs = [cost for _, cost in ends if cost is not None]
        key = len(costs), sum(costs)
        best = key if best is None else min(best, key)
    return best


def best_sequence(pieces, wanted):
    """The fewest pieces touched, over every sequence of taking one out and putting one in."""
    by_id = {each.id: each for each in pieces}
    start = tuple(sorted((each.id, each.at) for each in pieces))
    waiting, seen, order = [(0, 0, start, frozenset())], set(), 0
    while waiting:
        touched, _, state, hands = heappop(waiting)
        if (state, hands) in seen:
            continue
        seen.add((state, hands))
        at = dict(state)
        out = [id_ for id_ in by_id if id_ not in at]
        if not out and free_in(at, wanted):
            return touched
        onward = [(id_, None) for id_ in at if by_id[id_].places] if len(out) < len(by_id) else []
        onward += [(id_, place.spots) for id_ in out for place in by_id[id_].places]
        onward += [(id_, by_id[id_].at) for id_ in out]
        for id_, spots in onward:
            new = {name: here for name, here in at.items() if name != id_}
            if spots is not None:
                if any(not set(here).isdisjoint(spots) for here in new.values()):
                    continue
                new[id_] = spots
            order += 1
            more = hands | {id_}
            heappush(waiting, (len(more), order, tuple(sorted(new.items())), more))
    return None


@settings(max_examples=150, deadline=None)
@given(racks())
def test_the_fewest_moves_are_those_of_every_arrangement(drawn):
    pieces, wanted = drawn
    found = Packing(pieces).fewest(wanted)
    best = best_end(pieces, wanted)
    assert (found is None) == (best is None)
    if found is not None:
        assert (len(found.moves), sum(found.cost)) == best


@settings(max_examples=60, deadline=None)
@given(racks().filter(lambda drawn: len(drawn[0]) <= 5))
def test_no_sequence_of_moves_touches_fewer(drawn):
    pieces, wanted = drawn
    found = Packing(pieces).fewest(wanted)
    least = best_sequence(pieces, wanted)
    assert (None if found is None else len(found.moves)) == least


@settings(max_examples=100, deadline=None)
@given(racks())
def test_in_order_every_place_is_empty_when_its_piece_comes(drawn):
    pieces, wanted = drawn
    found = Packing(pieces).fewest(wanted)
    if found is None:
        return
    at, steps = {each.id: each.at for each in pieces}, in_order(pieces, found.moves)
    for step in steps:
        if step.hung:
            del at[step.id]
    for step in steps:
        others = {spot for id_, spots in at.items() if id_ != step.id for spot in spots}
        assert others.isdisjoint(step.spots)
        at[step.id] = step.spots
    assert free_in(at, wanted)
    assert {step.id for step in steps} == set(went(found))


@pytest.mark.parametrize("lines", [1, 3])
def test_a_rack_without_pieces_is_free(lines):
    assert Packing([]).fewest([tuple((0, line) for line in range(lines))]).moves == ()
