"""A place in a board: the answer sheet of the packed board, boards worked by hand, the words."""

from __future__ import annotations

from typing import ClassVar

import pytest

from ampwright.demand.compare import LOGGER, TABLE
from ampwright.demand.household import household_demand
from ampwright.design.board.freed import points_gone, ways_left
from ampwright.design.board.ways import way_found
from ampwright.survey.home_loads import STANDARD_LOADS

from .homes import PACKED, YARD, basis, board, changed, flat, packed, plain, supply

WHOLE, ONE, TWO = 4, 1, 2


def way(facts, phases=3, positions=WHOLE, by=TABLE):
    return way_found(plain(facts), basis(), "main", phases, positions, by).out


def moves_in(remedy):
    """From and to of each move that a remedy names."""
    moves = [step.split(" (")[0] for step in remedy.steps if step.startswith("Move ")]
    return dict(each.split(" from ")[1].split(" to ") for each in moves)


def after(facts, remedy, **more):
    return way({**changed(facts), **dict(remedy.changes)}, **more)


def row(names, slack, **more):
    """A board on one line: a name for each place, a dot for a blank; wires reach so many mm."""
    where = {}
    for place, name in enumerate(names.split(), 1):
        where.setdefault(name, []).append(str(place))
    spare = where.pop(".", [])
    outlets = {str(at): {"blank": str(at) in spare} for at in range(1, len(names.split()) + 1)}
    devices = {name: {"outlets": " ".join(at), "poles": len(at)} for name, at in where.items()}
    circuits = {name: {"device": name, "slack_mm": float(slack.get(name, 0))} for name in devices}
    facts = {"supply": supply(), "boards": {"main": board(
        way_pitch_mm=18.0, outlets=outlets, devices=devices, circuits=circuits,
        spare_ways=len(spare),
    )}}  # fmt: skip
    return {**flat(facts), **more}


class TestThePackedBoard:
    def test_way_6_by_two_moves_on_the_same_lines(self):
        found = way(PACKED)
        assert (found.free, found.why) == (False, "way 6 must be made free")
        assert found.remedy.slug == "free-way-6"
        # bench sockets to 7-L1: 27 mm needed, 250 there; outside lights to 8-L3: 54, 300 there
        assert moves_in(found.remedy) == {"6-L1": "7-L1", "6-L3": "8-L3"}
        assert "bench sockets from 6-L1 to 7-L1 and outside lights from" in found.remedy.does
        assert "27 mm of wire needed, 250 there" in found.remedy.steps[1]
        assert "54 mm of wire needed, 300 there" in found.remedy.steps[2]
        assert found.remedy.minutes == pytest.approx((48.0, 60.0, 96.0))

    def test_with_the_moves_made_it_is_free(self):
        found = after(PACKED, way(PACKED).remedy)
        assert (found.free, found.why) == (True, "way 6 is free")

    @pytest.mark.parametrize(("name", "mm", "frees"), [
        ("house-sockets", 81, True), ("house-sockets", 80, False),  # 3-L2 to 6-L2: three of 27 mm
        ("garage", 54, True), ("garage", 53, False),  # 8-L2 to 6-L2 is two
    ])  # fmt: skip
    def test_a_millimetre_decides(self, name, mm, frees):
        # with way 6 stuck, way 3 or way 8 is freed only if the wire on its L2 reaches
        slack = {"house-sockets": 60, "house-lights": 200, "alarm": 220, "garage": 40, name: mm}
        assert (way(packed(slack=slack)).remedy is not None) == frees

    def test_nothing_reaches_nothing_moves_and_the_board_instead_is_sized(self):
        found = way(packed(slack={}))
        assert (found.free, found.remedy) == (False, None)
        assert "1-L1 kiln does not reach a blank" in found.why
        assert "6-L1 bench-sockets does not reach a blank" in found.why
        # three outlets, the 80 A of the service fuse in front
        assert "a small board at the meter end instead needs 3 places, 3 lines and a switch of " \
               "80 A at the least: one of 8 places and 100 A would do" in found.why  # fmt: skip

    def test_the_steps_in_order_with_what_is_dead_when(self):
        off, bench, outside, new, dead, live, chart = way(PACKED).remedy.steps
        assert "all that hangs on it is dead" in off
        assert "in front of its main switch stay live" in off
        assert bench.startswith("Move bench sockets from 6-L1 to 7-L1")
        assert outside.startswith("Move outside lights from 6-L3 to 8-L3")
        assert new.startswith("Way 6 is empty now")
        assert "Test bench sockets, outside lights while dead" in dead
        assert "in use again when its test is passed" in live
        assert "chart" in chart

    def test_the_new_chart(self):
        heads, *rows = way(PACKED).remedy.chart
        assert heads == ("way", "L1", "L2", "L3")
        assert rows[5] == ("6", "the charge point", "the charge point", "the charge point")
        assert rows[6] == ("7", "bench sockets", "towel rail", "shed")
        assert rows[7] == ("8", "alarm", "garage", "outside lights")
        assert rows[2] == ("3", "–", "house sockets", "house lights")

    def test_a_point_on_one_line_takes_a_blank_as_it_is(self):
        assert way(PACKED, phases=1, positions=ONE).why == "outlet 3-L1 is free"


def test_a_free_way_needs_no_move():
    assert way(packed("a b c\n. . .\nd e f", {})).free


def test_a_chain_is_found_and_made_from_its_far_end():
    facts = packed("a . .\nb p q\n. r s", {"a": 27, "b": 27})
    found = way(facts)
    assert found.remedy.slug == "free-way-1"
    assert list(moves_in(found.remedy).items()) == [("2-L1", "3-L1"), ("1-L1", "2-L1")]
    assert after(facts, found.remedy).free


class TestWideDevices:
    def test_one_of_three_poles_stays_where_a_single_one_will_do(self):
        # a leaves way 2 for 4-L1; that k could go there then would be a second move
        facts = packed("b c d\na . .\nk k k\n. e f", {"a": 54, "k": 27})
        found = way(facts)
        assert (found.remedy.slug, moves_in(found.remedy)) == ("free-way-2", {"2-L1": "4-L1"})

    def test_nor_does_it_go_where_others_have_to_stay(self):
        # way 1 wants k out of a's and b's way, and c bars k from way 3
        assert way(packed("a b .\nk k k\n. . c", {"a": 27, "b": 27, "k": 27})).remedy is None

    def test_it_is_displaced_and_named_from_its_first_outlet_to_its_last(self):
        # w on L1 and L2 goes down two ways: 54 mm; nothing else on way 1
        facts = packed("w w .\na b c\n. . d", {"w": 54})
        found = way(facts)
        assert found.remedy.slug == "free-way-1"
        assert "w from 1-L1 and 1-L2 to 3-L1 and 3-L2 (54 mm" in found.remedy.steps[1]
        assert after(facts, found.remedy).free
        assert way(packed("w w .\na b c\n. . d", {"w": 53})).remedy is None


class TestInARow:
    def test_two_places_side_by_side_by_one_move(self):
        # b has 18 mm and goes from 3 to 4: then 2 and 3 are free together.
        facts = row("a . b . c", {"b": 18})
        found = way(facts, phases=1, positions=TWO)
        assert (found.why, found.remedy.slug) == (
            "outlets 2 to 3 must be made free", "free-place-2",
        )  # fmt: skip
        assert moves_in(found.remedy) == {"3": "4"}
        assert after(facts, found.remedy, phases=1, positions=TWO).free

    def test_one_place_is_free_as_it_is(self):
        assert way(row("a . b . c", {}), phases=1, positions=ONE).why == "outlet 2 is free"

    def test_a_two_wide_device_shifts_over_its_own_place(self):
        facts = row("a . d d . c", {"d": 18})
        found = way(facts, phases=1, positions=TWO)
        assert len(moves_in(found.remedy)) == 1
        assert after(facts, found.remedy, phases=1, positions=TWO).free

    @pytest.mark.parametrize(("kind", "moves"), [("RCD", False), ("breaker", True)])
    def test_nothing_passes_what_parts_the_bars(self, kind, moves):
        # b would go from 4 past r to the blank at 2; an RCD there parts its bars from those.
        facts = row("a . r b . c", {"b": 36})
        facts["boards.main.devices.r.kind"] = kind
        assert (way(facts, phases=1, positions=TWO).remedy is not None) == moves

    def test_surge_protection_stays(self):
        facts = row("a . s . c", {"s": 18})
        assert way(facts, phases=1, positions=TWO).remedy is not None
        facts["boards.main.devices.s.kind"] = "surge protection"
        found = way(facts, phases=1, positions=TWO)
        assert (found.remedy, "s stays: surge protection" in found.why) == (None, True)

    def test_a_width_that_does_not_tally_stays(self):
        facts = row("a . b . c", {"b": 18})
        facts["boards.main.devices.b.poles"] = 2
        assert "b is noted as 2 wide, on 1 outlets" in way(facts, phases=1, positions=TWO).why

    def test_its_chart(self):
        heads, *rows = way(row("a . b . c", {"b": 18}), phases=1, positions=TWO).remedy.chart
        assert heads == ("way", "feeds")
        assert rows == [("1", "a"), ("2", "the charge point"), ("3", "the charge point"),
                        ("4", "b"), ("5", "c")]  # fmt: skip


class TestHeat:
    # h feeds a heater; of two ways free by one move each, the one apart from it is taken.
    ROWS = "h h h\na . .\n. b c\nd . .\ne f g"

    def facts(self, **more):
        return {**changed(packed(self.ROWS, {"a": 27, "d": 27})), **more}

    def test_the_nearer_way_where_nothing_runs_warm(self):
        assert way(self.facts()).remedy.slug == "free-way-2"

    @pytest.mark.parametrize("warm", [
        {"boards.main.circuits.h.for_hours": True},
        {"boards.main.circuits.h.feeds": "heater", "loads.heater.kind": "storage heating"},
    ])  # fmt: skip
    def test_the_way_apart_from_what_runs_warm(self, warm):
        found = way(self.facts(**warm))
        assert (found.remedy.slug, found.warm) == ("free-way-4", "")

    def test_said_not_to_run_warm_counts_more_than_its_kind(self):
        said = {"boards.main.circuits.h.feeds": "heater", "loads.heater.kind": "storage heating",
                "boards.main.circuits.h.for_hours": False}  # fmt: skip
        assert way(self.facts(**said)).remedy.slug == "free-way-2"

    def test_no_more_moves_for_the_heat_but_it_is_told(self):
        facts = changed(packed("h h h\n. . .\na b c", {}))
        facts["boards.main.circuits.h.for_hours"] = True
        found = way(facts)
        assert (found.free, found.warm) == (True, "the point beside h")

    def test_it_is_a_step_of_the_work(self):
        facts = changed(packed("h h h\na . .\n. b c", {"a": 27}))
        facts["boards.main.circuits.h.for_hours"] = True
        assert any("the point beside h" in step for step in way(facts).remedy.steps)


class TestLines:
    # a must leave 1-L1: on its own line only by a chain of two, on L2 by itself.
    ROWS = "a . .\nb . c\n. d ."
    LOADS: ClassVar = {"loads.la.kind": "fixed", "loads.la.amps_a": 6.0, "loads.la.phase": "L1",
             "loads.lb.kind": "fixed", "loads.lb.amps_a": 10.0, "loads.lb.phase": "L1",
             "boards.main.circuits.a.feeds": "la", "boards.main.circuits.b.feeds": "lb",
             "boards.main.line_pitch_mm": 18.0}  # fmt: skip

    def facts(self, slack, more=()):
        absent = {f"loads.{id_}.present": False for id_ in STANDARD_LOADS}
        return {**changed(packed(self.ROWS, slack)), **absent, **self.LOADS, **dict(more)}

    def test_another_line_saves_a_move_and_the_demand_is_done_anew(self):
        # 27 mm down and 18 across: 45; the chain a to 2-L1, b to 3-L1 would be two moves
        facts = self.facts({"a": 45, "b": 27})
        found = way(facts)
        assert moves_in(found.remedy) == {"1-L1": "2-L2"}
        assert dict(found.remedy.changes)["loads.la.phase"] == "L2"
        assert "demand of every line worked out again" in found.remedy.does
        mended = plain({**facts, **dict(found.remedy.changes)})
        # 10 A stay on L1, 6 A are on L2 now
        assert household_demand(mended, basis().book).out.now_a == pytest.approx((10.0, 6.0, 0.0))

    @pytest.mark.parametrize("barred", [
        {"boards.main.circuits.a.slack_mm": 44.0},  # one millimetre short of going across
        {"loads.lc.kind": "fixed", "loads.lc.amps_a": 10.1, "loads.lc.phase": "L2"},  # 16.1 on L2
    ])  # fmt: skip
    def test_it_stays_on_its_line_otherwise(self, barred):
        found = way(self.facts({"a": 45, "b": 27}, barred))
        assert moves_in(found.remedy) == {"2-L1": "3-L1", "1-L1": "2-L1"}
        assert not any(key.startswith("loads.") for key, _ in found.remedy.changes)

    def test_a_line_as_heavy_as_the_heaviest_was_will_do(self):
        # 16 A on L1 before; 10 and 6 A on L2 after
        lc = {"loads.lc.kind": "fixed", "loads.lc.amps_a": 10.0, "loads.lc.phase": "L2"}
        assert moves_in(way(self.facts({"a": 45, "b": 27}, lc)).remedy) == {"1-L1": "2-L2"}

    def test_no_more_change_lines_than_must(self):
        # c down on its own line and a across two, or both across one: 90 mm of wire each way
        facts = changed(packed("a c .\nb . .\nf d e", {"a": 63, "c": 45}))
        facts |= {f"loads.{id_}.present": False for id_ in STANDARD_LOADS}
        for id_, line in (("a", "L1"), ("c", "L2")):
            facts |= {f"loads.l{id_}.kind": "fixed", f"loads.l{id_}.amps_a": 5.0,
                      f"loads.l{id_}.phase": line,
                      f"boards.main.circuits.{id_}.feeds": f"l{id_}"}  # fmt: skip
        facts["boards.main.line_pitch_mm"] = 18.0
        assert moves_in(way(facts).remedy) == {"1-L1": "2-L3", "1-L2": "2-L2"}

    def test_of_two_lines_as_near_the_more_even(self):
        # a leaves 1-L2 for 2-L1 or 2-L3, 27 + 18 mm each: (10, 10, 0) A or (4, 10, 6) A
        facts = changed(packed(". a .\n. x .\nb c d", {"a": 45}))
        facts |= {f"loads.{id_}.present": False for id_ in STANDARD_LOADS}
        for id_, amps, line in (("la", 6.0, "L2"), ("lb", 4.0, "L1"), ("lc", 10.0, "L2")):
            facts |= {f"loads.{id_}.kind": "fixed", f"loads.{id_}.amps_a": amps,
                      f"loads.{id_}.phase": line}  # fmt: skip
        facts |= {"boards.main.circuits.a.feeds": "la", "boards.main.line_pitch_mm": 18.0}
        assert moves_in(way(facts).remedy) == {"1-L2": "2-L3"}

    @pytest.mark.parametrize("left_out", [
        "boards.main.line_pitch_mm", "boards.main.circuits.a.feeds",
    ])  # fmt: skip
    def test_nor_while_its_load_or_the_way_across_is_not_noted(self, left_out):
        facts = self.facts({"a": 45, "b": 27})
        del facts[left_out]
        assert len(moves_in(way(facts).remedy)) == 2

    def test_nor_where_the_demand_is_not_counted_circuit_by_circuit(self):
        assert len(moves_in(way(self.facts({"a": 45, "b": 27}), by=LOGGER).remedy)) == 2


def test_no_chart_no_spare_line():
    assert way(YARD).why == "no spare outlet on L1, L2"


def test_what_was_said_of_whole_ways_comes_first():
    assert way(changed(YARD, boards__main__whole_ways_spare=1)).free
    assert not way(changed(PACKED, boards__main__whole_ways_spare=0)).free


def test_a_new_board_has_a_whole_way():
    from ampwright.design.board.mending import new_board

    for facts in (PACKED, YARD):
        new = dict(new_board(plain(facts), basis(), "main").changes)
        assert way({**changed(facts), **new}).free


def test_no_chart_but_spares_on_every_line():
    facts = changed(YARD, boards__main__spare_phases="L1 L2 L3")
    assert way(facts).free is None


def test_no_chart_on_one_line_is_left_to_the_count():
    facts = flat({"supply": supply(), "boards": {"main": board()}})
    assert (way(facts, phases=1, positions=TWO).free, way(facts, phases=1).why) == (True, "")


def test_the_meter_end_has_no_chart():
    assert way_found(plain(PACKED), basis(), "meter", 3, WHOLE, TABLE).out.free


class TestAnOldPoint:
    OLD: ClassVar = {"loads.old.kind": "charge point", "loads.old.goes": True,
           "loads.old.present": False,
           "loads.old.board": "main"}  # fmt: skip

    def test_the_outlets_it_leaves_are_free(self):
        facts = changed(packed("a b c\nold old old\nd e f", {}))
        facts |= {**self.OLD, "boards.main.circuits.old.feeds": "old"}
        assert way(facts).why == "way 2 is free"
        assert ways_left(plain(facts), "main") == 3
        assert not way({**facts, "loads.old.present": True}).free
        assert not way({**facts, "boards.main.circuits.old.feeds": "old heater"}).free

    @pytest.mark.parametrize(("change", "ways"), [
        ({}, 1), ({"loads.old.phase": "all"}, 1),  # on a board of one line it fills one way
        ({"loads.old.goes": False}, 0), ({"loads.old.present": True}, 0),
        ({"loads.old.kind": "fixed"}, 0), ({"loads.old.board": "annexe"}, 0),
    ])  # fmt: skip
    def test_without_a_chart_it_leaves_one(self, change, ways):
        facts = {**flat({"supply": supply(), "boards": {"main": board()}}), **self.OLD, **change}
        assert ways_left(plain(facts), "main") == ways

    def test_on_all_lines_it_leaves_a_whole_way(self):
        facts = {**changed(YARD), **self.OLD, "loads.old.phase": "all"}
        assert ways_left(plain(facts), "main") == 3
        assert way(facts).free
        assert not way({**facts, "loads.old.phase": "L1"}).free

    def test_a_board_nobody_named_is_the_only_one_or_none(self):
        facts = {**flat({"supply": supply(), "boards": {"main": board()}}), **self.OLD}
        del facts["loads.old.board"]
        assert ways_left(plain(facts), "main") == 1
        two = {**facts, **flat({"boards": {"annexe": board()}})}
        assert ways_left(plain(two), "main") == 0
        assert points_gone(plain(facts)) == ("old",)
