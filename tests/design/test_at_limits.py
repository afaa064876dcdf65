"""The design exactly at a limit and one printed digit beyond, with sums that fit on a line."""

from __future__ import annotations

from dataclasses import replace

import pytest

from ampwright.design.board.feeds import house_feeds
from ampwright.design.board.mending import surge
from ampwright.design.board.own import own_board
from ampwright.design.circuit.chain import board_load
from ampwright.design.circuit.device import protective_device
from ampwright.design.circuit.feed import feed
from ampwright.design.circuit.sizes import stocked
from ampwright.design.circuit.voltage import volts_at_point
from ampwright.design.earthing.bonding import bonding
from ampwright.design.earthing.outbuilding import board_earth
from ampwright.design.earthing.point import point_earthing
from ampwright.design.place import point_place
from ampwright.design.route import route
from ampwright.design.sources import sensor_order, source_ways
from ampwright.firm.catalogue import Detection
from ampwright.foundations.quantity import Count
from ampwright.survey.home_loads import STANDARD_LOADS
from ampwright.survey.layout import build_home
from ampwright.survey.views import PlainReader
from ampwright.tables.capacity import CableFamily

from .homes import (
    COTTAGE,
    PACKED,
    SEMI,
    SUNNY,
    YARD,
    basis,
    changed,
    completed,
    ids_in,
    plain,
    without,
)
from .work import board_of, circuit, failed, outcome_of

FLAT, SHEATHED = CableFamily.FLAT, CableFamily.SHEATHED


def on_catalogue(**changes):
    return replace(basis(), catalogue=replace(basis().catalogue, **changes))


LEFT = {
    "boards.main.feed_mm2": 16.0, "boards.main.feed_kind": "armoured",
    "boards.main.feed_lies": "clipped inside", "boards.main.feed_device_a": 0.0,
}  # fmt: skip


class TestFeeds:
    # the firm lets tails run 3 m on the network's own fuse
    @pytest.mark.parametrize(("metres", "counts"), [(3.0, False), (3.1, True)])
    def test_a_feed_counts_beyond_three_metres(self, metres, counts):
        home = plain(changed(SEMI, boards__main__from_meter_m=metres) | LEFT)
        assert (feed(home, basis(), "main", (50.0,), 32.0).out.length_m > 0) is counts
        assert bool(house_feeds(home, basis(), "main").checks) is counts
        assert bool(board_earth(home, basis(), "main", "pme").checks) is counts

    def test_a_feed_adds_its_share_to_the_circuits_own(self):
        # feed 2.9 mV × 53.65 A × 12 m = 1.867 V; circuit 7.3 mV × 32 A × 8 m = 1.869 V
        facts = changed(SEMI, boards__main__from_meter_m=12.0) | LEFT
        out, _, _ = circuit(facts, "main", "window", FLAT, demand_a=(53.65,))
        assert out.drop_v == pytest.approx(3.736, abs=0.001)
        assert out.drop_to_neutral_v == pytest.approx(3.736, abs=0.001)
        assert out.drop_share == pytest.approx(3.736 / 230, abs=0.00001)

    @pytest.mark.parametrize(("fed_from", "tap", "asked"), [
        ("meter", "main", True), ("meter", "meter", True),
        ("annexe", "main", True), ("annexe", "meter", False),  # begins at a board, not at the tails
    ])  # fmt: skip
    def test_a_feed_from_another_board_is_asked_about_at_that_board(self, fed_from, tap, asked):
        facts = changed(SEMI, boards__main__from_meter_m=12.0) | LEFT
        home = plain({**facts, "boards.main.fed_from": fed_from})
        ids = [check.requirement.id for check in house_feeds(home, basis(), tap).checks]
        assert ("feed_has_device" in ids) is asked

    def test_a_lesser_board_carries_its_own_loads_line_by_line(self):
        # 6 A on L1 and 3 A on all: 9, 3 and 3 A, and the point's 16 A on each
        facts = changed(YARD) | {
            "loads.pump.present": True, "loads.pump.amps_a": 6.0, "loads.pump.phase": "L1",
            "loads.pump.board": "barn", "loads.lamps.present": True, "loads.lamps.amps_a": 3.0,
            "loads.lamps.phase": "all", "loads.lamps.board": "barn",
            "loads.house.present": True, "loads.house.amps_a": 40.0, "loads.house.phase": "L2",
            "loads.house.board": "main",
            **{f"loads.{id_}.present": False for id_ in STANDARD_LOADS},
        }  # fmt: skip
        assert board_load(plain(facts), "barn", 16.0) == (25.0, 19.0, 19.0)

    def test_one_with_nothing_at_its_head_is_named(self):
        home = plain(changed(SEMI, boards__main__from_meter_m=12.0) | LEFT)
        check = house_feeds(home, basis(), "main").checks[0]
        assert (check.outcome.value, check.why) == (
            "fail", "nothing of its own stands at the head of the feed of main",
        )  # fmt: skip


class TestCable:
    def test_the_worst_leg_is_named_wherever_it_lies(self):
        # 270 mm in insulation: 0.64 of 47 A, on the second leg
        facts = changed(SEMI, legs__hole__insulation_mm=270.0)
        out, _, _ = circuit(facts, "main", "window", FLAT)
        assert out.worst_leg == "hole"

    def test_sizes_are_tried_upward_however_they_are_listed(self):
        on = on_catalogue(cables=tuple(reversed(basis().catalogue.cables)))
        sizes = [each.size_mm2 for each in stocked(on, SHEATHED, 1, False)]
        assert sizes == sorted(sizes)
        assert circuit(SEMI, "main", "window", FLAT, on=on)[0].size_mm2 == 6.0

    @pytest.mark.parametrize(("spare_mm", "size"), [(0.0, 10.0), (-0.1, 6.0)])
    def test_a_larger_cable_goes_into_a_gland_just_large_enough(self, spare_mm, size):
        ten = basis().catalogue.cable(SHEATHED, 3, 10.0, data_cores=False)
        points = tuple(
            replace(each, gland_mm=ten.overall_mm + spare_mm) if each.id == "window-lead" else each
            for each in basis().catalogue.points
        )
        long = changed(SUNNY, legs__outside__length_m=50.0)
        out, _, _ = circuit(long, "meter", "store", on=on_catalogue(points=points))
        assert out.size_mm2 == size

    def test_a_point_on_one_line_of_three_phase_bars_takes_one_device(self):
        point = basis().catalogue.point("window-lead")
        made = protective_device(plain(PACKED), basis(), "main", point, "pme", 32.0, False)
        assert (made.out.device, made.out.rcd) == ("rcbo-a-32", "")


class TestFrontDevice:
    # it waits where it is at least three times the 30 mA behind it: 90 mA
    @pytest.mark.parametrize(("ma", "says"), [(90.0, "pass"), (89.5, "fail")])
    def test_three_times(self, ma, says):
        facts = changed(COTTAGE, boards__main__front_rcd="A", boards__main__front_rcd_ma=ma)
        home, on = plain(facts), basis()
        point = on.catalogue.point("window-lead")
        device = protective_device(home, on, "main", point, "pme", 32.0, False).out
        made = board_of(home, on, "main", point, device)
        assert outcome_of(made.checks, "front_rcd_waits") == says


class TestBoards:
    def test_no_small_board_bought_no_board(self):
        made = own_board(plain(SEMI), on_catalogue(boards=()), 1, Count(2))
        assert (made.out.own, made.out.board) == (True, "")
        assert failed(made.checks) == ["board_offered"]

    def test_surge_protection_once_added_is_there(self):
        home, on = plain(changed(SEMI, boards__main__surge_protection=False)), basis()
        assert dict(surge(on, "main").changes) == {
            "boards.main.surge_protection": True,
            "boards.main.surge_leads_m": 0.5,  # as 534.4.8 prefers
        }
        assert home.boards["main"].surge_protection is False


class TestBonds:
    def test_which_bonds_are_work(self):
        water, gas = bonding(plain(SEMI), basis()).out.bonds
        assert (water.required_mm2, water.found_mm2, water.to_do) == (10.0, 0.0, True)
        assert (gas.required_mm2, gas.found_mm2, gas.to_do) == (10.0, 10.0, False)

    def test_a_pipe_that_brings_nothing_in_is_none(self):
        facts = changed(SEMI, services__water__extraneous_ohm=22000.0)
        assert not bonding(plain(facts), basis()).out.bonds[0].to_do


class TestEarth:
    def earth(self, facts, place, earthing="pme"):
        point = basis().catalogue.point("window-lead")
        return point_earthing(plain(facts), basis(), place, earthing, point, 30.0)

    # operators declare 0.35 Ω for a combined neutral and earth
    @pytest.mark.parametrize(("ze", "reported"), [(0.35, False), (0.36, True)])
    def test_a_loop_as_declared_is_not_reported(self, ze, reported):
        made = self.earth(changed(SEMI, supply__ze_ohm=ze), "window")
        (note,) = [n for n in made.notes if "loop of the network's earth" in n.says]
        assert ("report it" in note.caution) is reported

    # the firm aims for 100 Ω
    @pytest.mark.parametrize(("ohm", "again"), [(100.0, False), (101.0, True)])
    def test_an_electrode_as_good_as_the_firm_aims_for_is_not_read_again(self, ohm, again):
        facts = changed(COTTAGE, earthing__electrode_ohm=ohm)
        made = self.earth(facts, "gate", "house rod")
        (check,) = [c for c in made.checks if c.requirement.id == "rod_stable"]
        assert ("dry month" in check.caution) is again

    def test_with_rods_planned_no_more_are_offered(self):
        # two of 300 Ω: about 175 Ω, 263 in a dry spell, over the firm's 200
        facts = changed(COTTAGE, earthing__electrode_ohm=300.0) | {"earthing.rods_planned": 2}
        made = self.earth(facts, "gate", "house rod")
        (check,) = [c for c in made.checks if c.requirement.id == "rod_stable"]
        assert (check.outcome.value, check.remedies) == ("fail", ())


class TestVolts:
    def at(self, facts=SEMI, low=230.0, read=True, high_read=True):
        return volts_at_point(
            plain(facts), basis(), Detection.VOLTS_WINDOW, low, 240.0, read, high_read, 2.0
        )

    # 207 V and the firm's 3 V: 210 V at the point
    @pytest.mark.parametrize(("low", "warned"), [(212.0, False), (211.9, True)])
    def test_a_stand_in_at_the_margin_warns_of_nothing(self, low, warned):
        (note,) = self.at(low=low, read=False).notes
        assert bool(note.caution) is warned

    def test_a_battery_alone_wants_no_noon_reading(self):
        facts = changed(SUNNY, sources__sun__present=False)
        assert "noon" not in self.at(facts, high_read=False).checks[1].caution
        assert "noon" in self.at(SUNNY, high_read=False).checks[1].caution


class TestPlace:
    def at(self, lpg=True, **said):
        facts = changed(SEMI) | {f"places.window.{name}": value for name, value in said.items()}
        facts["services.lpg.present"] = lpg
        return point_place(plain(facts), basis(), "window", "IP54")

    @pytest.mark.parametrize(("near", "lpg", "says"), [
        ("gas bottles or tank", True, ["clear_of_bottles"]), ("gas bottles or tank", False, []),
        ("gas meter", True, []), ("nothing", True, []),
    ])  # fmt: skip
    def test_bottles_of_gas_alone_move_a_point(self, near, lpg, says):
        made = self.at(lpg, near_gas=near, height_m=1.0, wifi="good")
        assert failed(made.checks) == says

    def test_nobody_looked_is_a_thing_to_look_for(self):
        made = self.at(height_m=1.0, wifi="good")
        assert not failed(made.checks)
        assert any("look for a gas meter" in note.caution for note in made.notes)

    @pytest.mark.parametrize(("mobile", "wired"), [("none", True), ("fair", False)])
    def test_without_wifi_the_mobile_net_or_a_wire(self, mobile, wired):
        made = self.at(near_gas="nothing", height_m=1.0, wifi="none", mobile=mobile)
        (note,) = [n for n in made.notes if n.telling.id == "linked"]
        assert ("no mobile signal" in note.caution) is wired


class TestSources:
    # 80 A of the fuse, 16 A of the sun and 16 A of the battery: 112 A on the bars
    @pytest.mark.parametrize(("rated", "told"), [(112.0, False), (111.9, True)])
    def test_bars_that_just_bear_them_need_no_word(self, rated, told):
        home = plain(changed(SUNNY, boards__main__rated_a=rated))
        made = source_ways(home, basis(), "meter")
        assert any("112 A" in note.caution for note in made.notes) is told

    @pytest.mark.parametrize(("where", "told"), [("on the tails", True), ("in the board", False)])
    def test_connectors_go_before_a_sensor_on_the_tails(self, where, told):
        home = plain(changed(SUNNY, sources__store__sensor_at=where))
        made = sensor_order(home, basis(), "meter", False)
        assert any("meter side of the sensor" in check.caution for check in made.checks) is told


class TestRoute:
    @pytest.mark.parametrize(("whole", "says"), [(True, "fail"), (None, "undetermined")])
    def test_a_list_that_nobody_called_whole_may_lack_the_way(self, whole, says):
        values = completed(without(changed(SEMI), "legs.hole.present"))
        ids = ids_in(values)
        values["legs.hole.present"] = False
        if whole is None:
            del values["legs.all_listed"]
        (check,) = route(build_home(PlainReader(values), ids), basis(), "main", "window").checks
        assert check.outcome.value == says
