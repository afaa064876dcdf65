"""The feed of a board that lies far from the meter, and those of the house besides."""

from __future__ import annotations

import pytest

from ampwright.design.board.feeds import house_feeds
from ampwright.design.circuit.feed import feed, feed_bears
from ampwright.foundations.answers import Unanswered
from ampwright.survey.home_loads import STANDARD_LOADS
from ampwright.tables.capacity import CableFamily

from .homes import SEMI, YARD, basis, changed, plain, without
from .work import circuit, failed, outcome_of

FLAT = CableFamily.FLAT


def far(metres=12.0, mm2=16.0, kind="armoured", lies="clipped inside", device=63.0, **more):
    return changed(
        SEMI, boards__main__from_meter_m=metres, boards__main__feed_mm2=mm2,
        boards__main__feed_kind=kind, boards__main__feed_lies=lies,
        boards__main__feed_device_a=device, **more,
    )  # fmt: skip


def shed(load_a=6.0, **more):
    """A shed 20 m off on 2.5 mm² flat cable behind 20 A, with a few amperes of its own."""
    return changed(SEMI) | {
        "boards.shed.present": True, "boards.shed.phases": 1, "boards.shed.from_meter_m": 20.0,
        "boards.shed.fed_from": "main", "boards.shed.feed_mm2": 2.5,
        "boards.shed.feed_kind": "flat", "boards.shed.feed_lies": "clipped inside",
        "boards.shed.feed_device_a": 20.0, "boards.shed.main_switch_a": 40.0,
        **{f"loads.{id_}.present": False for id_ in STANDARD_LOADS},
        "loads.all_listed": True, "loads.freezer.present": True, "loads.freezer.amps_a": load_a,
        "loads.freezer.board": "shed", "loads.kettle.present": True,
        "loads.kettle.amps_a": 13.0, "loads.kettle.board": "main", **more,
    }  # fmt: skip


class TestOfTheTap:
    def test_tails_count_for_nothing(self):
        near, _, _ = circuit(SEMI, "main", "window", FLAT)
        assert near.drop_v == pytest.approx(7.3 * 32 * 8 / 1000)

    def test_a_long_armoured_feed_counts_in_drop_and_loop(self):
        near, _, _ = circuit(SEMI, "main", "window", FLAT)
        out, _, checks = circuit(far(), "main", "window", FLAT, demand_a=(53.65,))
        assert not failed(checks)
        # 4E4B 2.9 mV; line 1.15 and armour 3.7 Ω/km, ×1.20
        assert out.drop_v - near.drop_v == pytest.approx(2.9 * 53.65 * 12 / 1000)
        assert out.zs_ohm - near.zs_ohm == pytest.approx((1.15 + 3.7) * 1.2 * 12 / 1000)

    def test_a_flat_one_by_its_own_table_and_earth_core(self):
        near, _, _ = circuit(SEMI, "main", "window", FLAT)
        out, _, checks = circuit(far(kind="flat"), "main", "window", FLAT, demand_a=(53.65,))
        assert not failed(checks)
        # 4D5 2.8 mV; line 1.15 and 6 mm² earth core 3.08 Ω/km, ×1.20
        assert out.drop_v - near.drop_v == pytest.approx(2.8 * 53.65 * 12 / 1000)
        assert out.zs_ohm - near.zs_ohm == pytest.approx((1.15 + 3.08) * 1.2 * 12 / 1000)

    def test_lights_share_it(self):
        _, _, checks = circuit(far(metres=45.0), "main", "window", FLAT, demand_a=(60.0,))
        lights = [each for each in checks if each.requirement.id == "drop_within_limit"]
        assert [each.limit for each in lights] == [0.03, 0.05]
        assert lights[0].outcome.value == "fail"

    def test_a_feed_that_no_table_has_cannot_be_said_yet(self):
        made = feed(plain(far(mm2=70.0)), basis(), "main", (40.0,), 32.0)
        assert outcome_of(made.checks, "feed_known") == "undetermined"

    def test_what_a_feed_carries_that_no_table_has_is_not_taken_for_nothing(self):
        made = feed_bears(plain(far(mm2=70.0)), basis(), "main", (40.0,), 32.0)
        assert outcome_of(made.checks, "feed_device_carries") == "pass"
        assert outcome_of(made.checks, "feed_known") == "undetermined"
        assert len(made.checks) == 2

    def test_a_feed_that_may_not_lie_so_fails(self):
        made = feed_bears(plain(far(kind="flat", lies="buried")), basis(), "main", (40.0,), 32.0)
        (check,) = [each for each in made.checks if each.requirement.id == "feed_cable_carries"]
        assert (check.outcome.value, check.limit) == ("fail", 0.0)
        assert check.why == "the feed of main: flat cable is not made to be run buried"

    @pytest.mark.parametrize(("load", "says"), [(63.0, "pass"), (63.1, "fail")])
    def test_its_device_carries_the_house_and_the_point(self, load, says):
        made = feed_bears(plain(far()), basis(), "main", (load,), 32.0)
        assert outcome_of(made.checks, "feed_device_carries") == says

    # 16 mm² armoured, two cores: 89 A clipped, 78 A in the ground (Table 4D4A)
    @pytest.mark.parametrize(("lies", "device", "says"), [
        ("clipped inside", 80.0, "pass"), ("buried", 80.0, "fail"), ("buried", 63.0, "pass"),
    ])  # fmt: skip
    def test_its_cable_carries_its_device(self, lies, device, says):
        facts = far(lies=lies, device=device)
        made = feed_bears(plain(facts), basis(), "main", (40.0,), 32.0)
        assert outcome_of(made.checks, "feed_cable_carries") == says

    # of what a cable in the ground carries a device may be 0.9, 70.2 A; one that acts at twice
    # its rating 1.45 / 2 of it in air, 64.5 A (BS 7671, appendix 4, 5.1)
    @pytest.mark.parametrize(("kind", "lies", "device", "says"), [
        ("breaker", "buried", 70.2, "pass"), ("cartridge fuse", "buried", 70.3, "fail"),
        ("breaker", "clipped inside", 89.0, "pass"), ("breaker", "clipped inside", 89.1, "fail"),
        ("rewireable fuse", "clipped inside", 64.5, "pass"),
        ("rewireable fuse", "clipped inside", 64.6, "fail"),
    ])  # fmt: skip
    def test_the_ground_and_a_fuse_of_wire_ask_for_more(self, kind, lies, device, says):
        facts = far(lies=lies, device=device, boards__main__feed_device_kind=kind)
        made = feed_bears(plain(facts), basis(), "main", (40.0,), 32.0)
        assert outcome_of(made.checks, "feed_cable_carries") == says

    # 1.45 times 89 A is 129.05 A: by twice a fuse of wire, by 1.45 times all else
    @pytest.mark.parametrize(("kind", "device", "acts_a", "says"), [
        ("rewireable fuse", 64.5, 129.0, "pass"), ("rewireable fuse", 65.0, 130.0, "fail"),
        ("breaker", 89.0, 129.05, "pass"), ("cartridge fuse", 90.0, 130.5, "fail"),
    ])  # fmt: skip
    def test_a_small_overload_ends_in_time(self, kind, device, acts_a, says):
        facts = far(device=device, boards__main__feed_device_kind=kind)
        made = feed_bears(plain(facts), basis(), "main", (40.0,), 32.0)
        (check,) = [c for c in made.checks if c.requirement.id == "overload_ends_in_time"]
        assert (check.outcome.value, check.limit) == (says, pytest.approx(129.05))
        assert check.actual == pytest.approx(acts_a)

    def test_of_a_device_of_no_known_kind_only_its_rating_counts(self):
        made = feed_bears(plain(far()), basis(), "main", (40.0,), 32.0)
        assert [each.requirement.id for each in made.checks] == [
            "feed_device_carries", "feed_cable_carries",
        ]  # fmt: skip

    def test_how_it_lies_is_asked(self):
        facts = without(far(), "boards.main.feed_lies")
        with pytest.raises(Unanswered, match=r"boards\.main\.feed_lies"):
            feed_bears(plain(facts), basis(), "main", (40.0,), 32.0)


class TestOfAShed:
    def test_its_own_loads_and_the_point_not_the_house(self):
        made = feed_bears(plain(shed()), basis(), "shed", (70.0,), 10.0)
        (carried,) = [c for c in made.checks if c.requirement.id == "feed_device_carries"]
        assert (carried.outcome.value, carried.actual, carried.limit) == ("pass", 16.0, 20.0)

    @pytest.mark.parametrize(("setting", "says"), [(14.0, []), (14.1, ["feed_device_carries"])])
    def test_too_thin_for_a_faster_point(self, setting, says):
        made = feed_bears(plain(shed()), basis(), "shed", (70.0,), setting)
        assert failed(made.checks) == says

    def test_too_long_for_its_lights(self):
        # 18 mV × 16 A × 20 m = 5.76 V, 2.5 per cent; at 26 m 3.3
        assert not failed(feed(plain(shed()), basis(), "shed", (70.0,), 10.0).checks)
        facts = {**shed(), "boards.shed.from_meter_m": 26.0}
        made = feed(plain(facts), basis(), "shed", (70.0,), 10.0)
        assert failed(made.checks) == ["drop_within_limit"]

    def test_which_board_a_load_hangs_on_is_asked(self):
        facts = {key: value for key, value in shed().items() if key != "loads.kettle.board"}
        with pytest.raises(Unanswered, match=r"loads\.kettle\.board"):
            feed_bears(plain(facts), basis(), "shed", (70.0,), 10.0)


def chained(**more):
    """A shed 20 m beyond a main board that itself lies 12 m from the meter, and a barn beyond."""
    return {
        **far(), **shed(), **far(), "boards.shed.from_meter_m": 32.0, "boards.shed.feed_mm2": 6.0,
        "boards.shed.feed_device_a": 32.0, "boards.shed.front_rcd": "none",
        "boards.barn.present": True, "boards.barn.phases": 1, "boards.barn.from_meter_m": 42.0,
        "boards.barn.fed_from": "shed", "boards.barn.feed_mm2": 2.5,
        "boards.barn.feed_kind": "flat", "boards.barn.feed_lies": "clipped inside",
        "boards.barn.feed_device_a": 20.0, "boards.barn.main_switch_a": 40.0,
        "loads.pump.present": True, "loads.pump.amps_a": 3.0, "loads.pump.board": "barn", **more,
    }  # fmt: skip


class TestOfAChain:
    def test_each_feed_with_its_own_length_size_and_load(self):
        out = feed(plain(chained()), basis(), "shed", (50.0,), 10.0).out
        # main 2.9 mV × 50 A × 12 m, shed 7.3 mV × (6 + 3 + 10) A × 20 m
        assert out.length_m == pytest.approx(32.0)
        assert out.drop_v == pytest.approx(1.74 + 2.774)
        assert out.drop_share == pytest.approx(4.514 / 230)
        assert out.drop_to_neutral_v == out.drop_v
        # 16 mm² armoured 1.15 + 3.7 Ω/km over 12 m, 6 mm² flat 3.08 + 7.41 over 20 m, × 1.20
        assert out.r1r2_ohm == pytest.approx(1.2 * (4.85 * 12 + 10.49 * 20) / 1000)

    def test_three_boards_deep(self):
        out = feed(plain(chained()), basis(), "barn", (50.0,), 10.0).out
        # the barn's own: 18 mV × (3 + 10) A × 10 m; the freezer and the pump pass the shed's
        assert out.length_m == pytest.approx(42.0)
        assert out.drop_v == pytest.approx(1.74 + 2.774 + 2.34)

    @pytest.mark.parametrize(("setting", "says"), [
        (17.0, []), (17.1, ["the feed of barn"]),  # 3 + 17 A behind the barn's 20 A
        (23.1, ["the feed of shed", "the feed of barn"]),  # 6 + 3 + 23 A behind the shed's 32 A
    ])  # fmt: skip
    def test_each_device_on_the_way_bears_what_is_behind_it(self, setting, says):
        made = feed_bears(plain(chained()), basis(), "barn", (50.0,), setting)
        failing = [each for each in made.checks if each.outcome.value == "fail"]
        assert [each.why for each in failing] == says
        assert {each.requirement.id for each in failing} <= {"feed_device_carries"}

    @pytest.mark.parametrize(("lies", "says"), [
        ("clipped inside", []), ("in insulation", ["the feed of shed"]),
    ])  # fmt: skip
    def test_each_cable_on_the_way_bears_its_device(self, lies, says):
        facts = chained(**{"boards.shed.feed_lies": lies})
        made = feed_bears(plain(facts), basis(), "barn", (50.0,), 10.0)
        failing = [c for c in made.checks if c.outcome.value == "fail"]
        assert [each.why for each in failing] == says

    @pytest.mark.parametrize(("setting", "says"), [(10.0, []), (10.1, ["the switch of barn"])])
    def test_each_switch_on_the_way_carries_what_passes_it(self, setting, says):
        facts = chained(**{"boards.barn.main_switch_a": 13.0})
        made = feed_bears(plain(facts), basis(), "barn", (50.0,), setting)
        assert [c.why for c in made.checks if c.outcome.value == "fail"] == says

    @pytest.mark.parametrize(("metres", "says"), [(32.0, "fail"), (32.5, "pass")])
    def test_a_board_lies_beyond_the_one_that_feeds_it(self, metres, says):
        facts = chained(**{"boards.barn.from_meter_m": metres})
        made = feed_bears(plain(facts), basis(), "barn", (50.0,), 10.0)
        order = [c for c in made.checks if c.requirement.id == "chain_in_order"]
        assert [each.outcome.value for each in order] == ["pass", says]

    def test_what_feeds_the_main_board_carries_the_whole_house(self):
        facts = {**chained(), "boards.main.fed_from": "store", "boards.main.from_meter_m": 30.0,
                 **{f"boards.store.{name}": value for name, value in {
                     "present": True, "phases": 1, "from_meter_m": 12.0, "fed_from": "meter",
                     "feed_mm2": 16.0, "feed_kind": "armoured", "feed_lies": "clipped inside",
                     "feed_device_a": 63.0, "main_switch_a": 100.0}.items()}}  # fmt: skip
        made = feed_bears(plain(facts), basis(), "main", (50.0,), 10.0)
        carried = [c for c in made.checks if c.requirement.id == "feed_device_carries"]
        assert [(c.why, c.actual) for c in carried] == [
            ("the feed of store", 50.0), ("the feed of main", 50.0),
        ]  # fmt: skip
        switches = [c for c in made.checks if c.requirement.id == "switch_on_way_carries"]
        assert [(c.why, c.limit) for c in switches] == [("the switch of store", 100.0)]

    def test_a_board_on_tails_adds_no_feed_but_what_it_feeds_has_one(self):
        # 1 m of tails, then 1.5 m of cable behind 20 A: short, but a feed all the same
        facts = {**shed(), "boards.main.from_meter_m": 1.0, "boards.shed.from_meter_m": 2.5}
        made = feed_bears(plain(facts), basis(), "shed", (50.0,), 14.1)
        assert failed(made.checks) == ["feed_device_carries"]
        assert feed(plain(facts), basis(), "shed", (50.0,), 10.0).out.length_m == 2.5
        assert feed(plain(facts), basis(), "main", (50.0,), 10.0).out.length_m == 0.0

    def test_boards_that_feed_each_other_come_to_an_end(self):
        facts = chained(**{"boards.main.fed_from": "barn"})
        made = feed_bears(plain(facts), basis(), "barn", (50.0,), 10.0)
        assert "chain_in_order" in failed(made.checks)

    def test_a_feed_without_a_device_gets_one_at_the_board_where_it_begins(self):
        facts = {**chained(), "boards.barn.feed_device_a": 0.0}
        made = house_feeds(plain(facts), basis(), "barn")
        (check,) = [c for c in made.checks if c.outcome.value == "fail"]
        (remedy,) = check.remedies
        # 2.5 mm² flat, clipped: 27 A, so a fuse of 25 A at the most
        assert "of its own at shed" in remedy.does
        assert dict(remedy.changes) == {
            "boards.barn.feed_device_a": 25.0,
            "boards.barn.feed_device_kind": "breaker",
        }


class TestOfTheHouse:
    # The answer sheet of the three-phase yard: the 45 m feed to the house gets its own device at
    # the meter end; its armour is its earth, about 8 mm² of copper against the 10 mm² wanted.
    def test_a_device_of_its_own_at_the_meter_end(self):
        facts = changed(YARD, boards__main__feed_device_a=0.0)
        made = house_feeds(plain(facts), basis(), "meter")
        assert failed(made.checks) == ["feed_has_device"]
        (check,) = [each for each in made.checks if each.outcome.value == "fail"]
        (remedy,) = check.remedies
        assert remedy.slug == "feed-device-main"
        # 25 mm², three loaded, in the ground: 82 A (Table 4D4A), of which a device may be 0.9
        assert remedy.changes == (
            ("boards.main.feed_device_a", 63.0),
            ("boards.main.feed_device_kind", "cartridge fuse"),
        )
        assert not failed(house_feeds(plain({**facts, **dict(remedy.changes)}), basis(), "meter")
                          .checks)  # fmt: skip

    def test_no_larger_than_the_fuse_before_it(self):
        # clipped, 25 mm² carries 110 A and more; the service fuse is 80 A
        facts = changed(YARD, boards__main__feed_device_a=0.0, boards__main__feed_lies="tray")
        (check, *_) = house_feeds(plain(facts), basis(), "meter").checks
        assert dict(check.remedies[0].changes)["boards.main.feed_device_a"] == 80.0

    def test_no_larger_than_its_cable(self):
        facts = changed(YARD, boards__main__feed_device_a=0.0, boards__main__feed_mm2=16.0)
        (check, *_) = house_feeds(plain(facts), basis(), "meter").checks
        # 16 mm², three loaded, in the ground: 64 A, 0.9 of it 57.6 A
        assert dict(check.remedies[0].changes)["boards.main.feed_device_a"] == 45.0

    def test_its_armour_as_copper(self):
        (told,) = house_feeds(plain(YARD), basis(), "meter").notes
        assert told.about == ("main", pytest.approx(8, rel=0.05), 10.0)
        assert "measure it and record it" in told.caution

    def test_on_a_rod_or_with_an_earth_core_the_armour_is_no_bond(self):
        facts = changed(YARD, boards__main__feed_kind="sheathed")
        assert house_feeds(plain(facts), basis(), "meter").notes == ()
        facts = changed(YARD, supply__earthing="TT")
        assert house_feeds(plain(facts), basis(), "meter").notes == ()

    def test_a_board_close_by_or_of_unknown_length_is_left(self):
        assert house_feeds(plain(SEMI), basis(), "meter").checks == ()
        facts = without(SEMI, "boards.main.from_meter_m")
        assert house_feeds(plain(facts), basis(), "meter").checks == ()

    def test_a_shed_on_the_houses_board_is_not_the_meters(self):
        assert house_feeds(plain(shed()), basis(), "meter").checks == ()
