"""What turns up every month: each gets a decision, a work item or a named thing to look at."""

from __future__ import annotations

from collections.abc import Mapping

from ampwright.foundations.answers import Value
from ampwright.foundations.stages import cautions as cautions_in
from ampwright.options.supply_side import Decision
from tests.journeys.homes import Journey, adding, journey, records_of, saying, works

PLAIN = "quillbrook-close"
BUILDERS = {
    "laid.builders.left_by": "the builder", "laid.builders.from_place": "main",
    "laid.builders.to_place": "front-window", "laid.builders.length_m": 9.0,
    "laid.builders.how": "loft void",
}  # fmt: skip
FLAT_ALONE = {"laid.builders.kind": "flat", "laid.builders.feeds_only": True}
OLD = {"loads.old.kind": "charge point", "loads.old.amps_a": 32.0}
BATTERY = {
    "sources.store.kind": "battery", "sources.store.amps_a": 16.0, "sources.store.kw": 3.68,
    "sources.store.board": "main", "sources.store.sensor_at": "on the tails",
    "sources.store.way_both_ways": True, "boards.main.rated_a": 125.0,
}  # fmt: skip
NIGHT_BOARD = {
    "loads.heaters.kind": "storage heating", "loads.heaters.amps_a": 20.0,
    "loads.heaters.board": "heat", "boards.heat.place": "beside the main board",
    "boards.heat.night_only": True, "boards.heat.phases": 1, "boards.heat.from_meter_m": 1.0,
    "boards.heat.spare_ways": 4, "boards.heat.parts_sold": True, "boards.heat.case": "metal",
    "boards.heat.protection": "RCBOs", "boards.heat.spare_behind_rcd": "none",
    "boards.heat.front_rcd": "none", "boards.heat.surge_protection": True,
    "legs.heat.from_place": "heat", "legs.heat.to_place": "main", "legs.heat.length_m": 0.5,
    "legs.heat.how": "clipped inside", "legs.heat.grouped_with": 0,
    "boards.main.night_only": False,
}  # fmt: skip


def home(*answers: Mapping[str, Value]) -> Journey:
    """The plain home with more said of it, or something said otherwise."""
    said = {key: value for each in answers for key, value in each.items()}
    answered = {record.key for record in records_of(PLAIN)}
    again = {key: value for key, value in said.items() if key in answered}
    more = {key: value for key, value in said.items() if key not in answered}
    return journey(PLAIN, profile="demo", change=lambda rs: adding(more)(saying(again)(rs)))


def cautions(found: Journey) -> str:
    worked = found.worked()[0]
    return " ".join(cautions_in(worked.checks, worked.notes))


def ruled_out_by(found: Journey) -> set[str]:
    return {reason.requirement.id for reason in found.outlook.reasons}


def test_a_builders_cable_is_used_where_it_serves_and_not_where_it_is_thin() -> None:
    serves = home(BUILDERS, FLAT_ALONE, {"laid.builders.size_mm2": 6.0})
    assert "use-builders" in works(serves.best)
    assert "end to end" in cautions(serves)
    thin = home(BUILDERS, FLAT_ALONE, {"laid.builders.size_mm2": 2.5})
    assert "use-builders" not in works(thin.best)
    assert "laid_size" in ruled_out_by(thin)


def test_a_builders_cable_of_unknown_size_is_a_question() -> None:
    unsure = home(BUILDERS)
    assert "laid.builders.size_mm2" in unsure.outlook.ranking.facts
    assert unsure.outlook.decision is Decision.FIT_THEN_TELL


def test_a_cable_that_feeds_something_else_is_not_the_points() -> None:
    shared = home(
        BUILDERS, FLAT_ALONE, {"laid.builders.size_mm2": 6.0, "laid.builders.feeds_only": False}
    )
    assert "use-builders" not in works(shared.best)
    assert "own_circuit" in ruled_out_by(shared)


def test_an_old_point_goes_or_is_asked_after() -> None:
    asked = home(OLD)
    assert "ask whether old stays" in cautions(asked)
    assert asked.outlook.decision is not Decision.FIT_THEN_TELL
    goes = home(OLD, {"loads.old.goes": True})
    assert goes.outlook.decision is Decision.FIT_THEN_TELL
    assert "take-out-old" in works(goes.best)


def test_a_lost_earth_stops_everything_until_the_operator_has_mended_it() -> None:
    lost = home({"supply.ze_ohm": 60.0, "supply.earthing": "TN-S"})
    assert lost.outlook.searched.options
    for option in lost.outlook.searched.options:
        (mended,) = [r for r in option.choice.remedies if r.slug == "network-earth"]
        assert mended.by == "the network operator"


def test_a_high_earth_is_reported_and_is_no_refusal() -> None:
    high = home({"supply.ze_ohm": 0.6})
    assert "network-earth" not in works(high.best)
    assert "report it with the reading" in cautions(high)


def test_the_point_stays_off_the_side_a_battery_backs_up() -> None:
    backed = home(BATTERY, {"sources.store.backs_up": "the whole house"})
    assert {option.choice.tap for option in backed.outlook.searched.options} == {"meter"}
    plain = home(BATTERY, {"sources.store.backs_up": "nothing"})
    assert {option.choice.tap for option in plain.outlook.searched.options} == {"main", "meter"}


def test_night_heaters_on_a_board_of_their_own_do_not_feed_it() -> None:
    night = home(NIGHT_BOARD)
    assert all(option.choice.tap != "heat" for option in night.outlook.searched.options)
    assert "board_live" in ruled_out_by(night)


def test_an_old_board_is_replaced_or_passed_by() -> None:
    old = home({"boards.main.protection": "rewireable fuses"})
    for option in old.outlook.searched.options:
        assert option.choice.tap == "meter" or "new-board-main" in works(option)


def test_gas_bottles_by_the_point_move_it_along() -> None:
    gas = home({
        "places.front-window.near_gas": "gas bottles or tank", "services.lpg.present": True,
        "services.lpg.pipe_at_entry": "plastic",
    })  # fmt: skip
    for option in gas.outlook.searched.options:
        assert "clear-of-gas-front-window" in works(option)
    meter = home({"places.front-window.near_gas": "gas meter"})
    assert "gas meter by the point" in cautions(meter)
    assert works(meter.best) == {"bond-water"}


def test_a_meter_in_a_cabinet_outside_holds_nothing_of_ours() -> None:
    found = home({"supply.meter_in": "outside cabinet"})
    (option, *_) = found.options(tap="meter")
    assert any("nothing of ours" in each.caution for each in found.worked(option)[0].notes)


def test_a_cable_deep_in_loft_insulation_is_larger() -> None:
    deep = home({"legs.along-the-ceiling.how": "in insulation"})
    (option, *_) = deep.options(tap="main", family="flat", setting_a=32.0, hours="any")
    # 6 mm² flat, 47 A clipped, half of it wholly in insulation: 23.5 A; 10 mm² carries 32 A
    assert option.design.cable.only.size_mm2 == 10.0


def test_sun_on_the_roof_asks_for_the_volts_at_noon() -> None:
    sunny = home({
        "sources.sun.kind": "solar", "sources.sun.amps_a": 16.0, "sources.sun.kw": 3.68,
        "sources.sun.board": "main", "sources.sun.way_both_ways": True,
        "sources.sun.export_limited": False, "boards.main.rated_a": 125.0,
    })  # fmt: skip
    assert "read at noon" in cautions(sunny)


BEATEN = {
    "supply.main_fuse_a": 60.0, "loads.shower.present": True, "loads.shower.kind": "instant shower",
    "loads.shower.amps_a": 45.0,
}  # fmt: skip


def test_a_house_that_beats_its_fuse_asks_for_a_larger_one() -> None:
    # 21.65 A of the plain home by the household table and 45 A of a shower: 66.65 A on 60 A. With
    # 32 A for the car 98.65 A, on the 100 A that a household cut-out goes up to.
    beaten = home(BEATEN)
    assert beaten.outlook.decision is Decision.ASK_FIRST
    assert works(beaten.best) == {"bond-water", "fuse-100"}
    (option, *_) = beaten.options(setting_a=16.0, house_limit=False)
    assert "fuse-100" in works(option)  # 82.65 A
    (option, *_) = beaten.options(house_limit=True)
    assert "fuse-80" in works(option)
    assert all(works(each) & {"fuse-80", "fuse-100"} for each in beaten.outlook.searched.options)


def test_thin_tails_lead_to_the_fuse_that_they_bear() -> None:
    thin = home(BEATEN, {"supply.tails_mm2": 16.0, "supply.isolator": "none"})
    assert thin.outlook.decision is Decision.ASK_FIRST
    assert works(thin.best) == {"bond-water", "fuse-80"}  # under a limit of 80 A
    for option in thin.options(house_limit=False):
        assert {"fuse-100", "new-tails"} <= works(option)


def test_a_main_switch_smaller_than_the_fuse_is_changed() -> None:
    small = home({"boards.main.main_switch_a": 63.0})
    assert works(small.best) == {"bond-water", "larger-switch"}
    assert small.outlook.decision is Decision.FIT_THEN_TELL
