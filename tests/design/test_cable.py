from __future__ import annotations

import pytest

from ampwright.design.circuit.cable import LEAST
from ampwright.firm.catalogue import ChargePoint
from ampwright.tables.capacity import CableFamily

from .homes import COTTAGE, SEMI, SUNNY, YARD, basis, changed, leg, plain
from .work import circuit, failed, outcome_of

FLAT, SHEATHED, ARMOURED = CableFamily.FLAT, CableFamily.SHEATHED, CableFamily.ARMOURED


def test_the_firms_least_size_rules_a_short_run():
    out, _, _ = circuit(SEMI, "main", "window", FLAT)
    assert out.governed_by == LEAST


def test_at_the_limit_of_capacity():
    # method A of flat 6 mm² carries 32 A, and so does the device: at its limit, not over it
    at_limit = changed(SEMI, legs__plaster__how="trunking")
    out, device, checks = circuit(at_limit, "main", "window", FLAT)
    assert (out.size_mm2, out.capacity_a, device.rating_a) == (6.0, 32.0, 32.0)
    assert outcome_of(checks, "cable_carries_device") == "pass"
    assert out.worst_leg == "plaster"


def test_the_worst_leg_rules_and_is_named():
    in_loft = changed(SEMI, legs__plaster__how="loft void", legs__plaster__insulation_mm=4000.0)
    out, _, checks = circuit(in_loft, "main", "window", FLAT)
    assert not failed(checks)
    assert (out.size_mm2, out.worst_leg, out.capacity_a) == (10.0, "plaster", 36.0)
    assert out.governed_by == "In ≤ Iz"


def test_in_the_ground_the_device_is_at_most_0_9_of_what_the_cable_carries():
    # armoured 6 mm², two loaded, method D: 46 A, of which 0.9 is 41.4 A (BS 7671, appendix 4, 5.1)
    out, _, checks = circuit(COTTAGE, "meter", "gate", ARMOURED, earthing="house rod")
    (carries,) = [each for each in checks if each.requirement.id == "cable_carries_device"]
    assert out.capacity_a == 46.0
    assert carries.limit == pytest.approx(41.4)


def test_so_it_is_where_all_of_it_lies_there():
    out, _, checks = circuit(YARD, "main", "store", ARMOURED, point="three-socket", setting_a=16.0)
    (carries,) = [each for each in checks if each.requirement.id == "cable_carries_device"]
    assert carries.limit == pytest.approx(0.9 * out.capacity_a)


def test_a_fault_that_opens_nothing_in_time_fails_with_the_loop():
    # a point that sees residual current itself leaves its cable to the breaker
    lost = changed(SEMI, supply__ze_ohm=2.0)
    _, _, checks = circuit(lost, "main", "window", FLAT, point="window-socket")
    assert {"loop_within_limit", "cut_off_in_time"} <= set(failed(checks))
    _, _, checks = circuit(lost, "main", "window", FLAT)
    assert "cut_off_in_time" not in failed(checks)


def test_grouping_and_heat_make_it_larger():
    warm = changed(SEMI, legs__plaster__ambient_c=45.0, legs__plaster__grouped_with=2)
    out, _, _ = circuit(warm, "main", "window", FLAT)
    assert out.size_mm2 == 10.0
    assert out.capacity_a == pytest.approx(64 * 0.79 * 0.79)  # 4D5, 4B1, 4C1


def test_voltage_drop_makes_it_larger():
    long = changed(SUNNY, legs__outside__length_m=50.0)
    out, _, checks = circuit(long, "meter", "store")
    assert not failed(checks)
    assert out.size_mm2 == 10.0
    assert out.governed_by == "volts lost ≤ the share allowed"


def test_when_no_size_holds_the_largest_that_goes_in_is_shown_with_what_it_fails():
    far = changed(SUNNY, legs__outside__length_m=150.0)
    out, _, checks = circuit(far, "meter", "store")
    assert out.size_mm2 == 10.0  # its terminals take no more
    assert "drop_within_limit" in failed(checks)


# 10 mm² in cross-linked insulation loses 4.7 mV a metre and ampere (BS 7671, appendix 4): at 32 A
# 5 % of 230 V is lost over 76.5 m, and 3 % over 45.9 m
@pytest.mark.parametrize(("before", "says"), [
    (0.0, "10 mm² at 32 A reaches 76 m, and the way is 152 m"),
    (0.02, "10 mm² at 32 A reaches 45 m, and the way is 152 m"),
    (0.05, "the feed before it loses as much already"),
])  # fmt: skip
def test_what_loses_too_much_says_how_far_it_reaches(before, says):
    far = changed(SUNNY, legs__outside__length_m=150.0)
    _, _, checks = circuit(far, "meter", "store", length_m=1.0, drop_share=before)
    (check,) = [each for each in checks if each.outcome.value == "fail"]
    assert check.why == says


def test_what_holds_says_nothing_of_its_reach():
    _, _, checks = circuit(SUNNY, "meter", "store")
    (check,) = [each for each in checks if each.requirement.id == "drop_within_limit"]
    assert check.why == ""


def test_a_size_its_terminals_do_not_take_is_not_chosen():
    far = changed(COTTAGE, legs__garden__length_m=80.0)
    small, _, checks = circuit(far, "meter", "gate", ARMOURED, earthing="house rod")
    assert (small.size_mm2, failed(checks)) == (10.0, ["drop_within_limit"])
    big, _, checks = circuit(far, "meter", "gate", ARMOURED, earthing="house rod",
                             point="earth-lead")  # fmt: skip
    assert (big.size_mm2, failed(checks)) == (16.0, [])


def test_the_entry_of_a_small_point_is_checked():
    _, _, checks = circuit(COTTAGE, "meter", "gate", ARMOURED, earthing="house rod",
                           point="window-lead-16", setting_a=16.0)  # fmt: skip
    assert failed(checks) == ["gland_holds_cable"]


def test_flat_cable_has_no_five_cores():
    out, _, checks = circuit(YARD, "meter", "store", FLAT, point="three-socket")
    assert failed(checks) == ["cable_offered"]
    assert out.cable == ""


def test_data_cores_are_bought_with_sheathed_cable_only():
    out, _, _ = circuit(SUNNY, "meter", "store", with_data=True)
    assert out.cable == "sheathed-3-6-data"
    out, _, _ = circuit(COTTAGE, "meter", "gate", ARMOURED, earthing="house rod", with_data=True)
    assert out.cable == "armoured-3-6"


def test_the_loop_at_its_limit_and_over():
    # B32: 0.95 × 230 / 160 = 1.366 Ω; the circuit itself is 0.101 Ω
    just = changed(SEMI, supply__ze_ohm=1.26)
    assert outcome_of(circuit(just, "main", "window", FLAT)[2], "loop_within_limit") == "pass"
    over = changed(SEMI, supply__ze_ohm=1.32)
    out, _, checks = circuit(over, "main", "window", FLAT)
    assert outcome_of(checks, "loop_within_limit") == "fail"
    assert out.size_mm2 == 10.0, "the largest that goes in was tried"


@pytest.mark.parametrize("earthing", ["rod", "house rod"])
def test_on_a_rod_the_residual_current_opens_it(earthing):
    facts = COTTAGE if earthing == "house rod" else changed(SUNNY, supply__ze_ohm=0.2)
    tap, place = ("meter", "gate") if earthing == "house rod" else ("meter", "store")
    family = ARMOURED if earthing == "house rod" else SHEATHED
    out, _, checks = circuit(facts, tap, place, family, earthing=earthing)
    assert out.zs_limit_ohm == pytest.approx(1667, abs=0.5)  # 50 V over 30 mA
    assert outcome_of(checks, "loop_within_limit") == "pass"
    assert 182.0 < out.zs_ohm < 201.0


def test_the_earth_core_bears_what_the_device_lets_through():
    # √45,000 / 115 = 1.84 mm² (BS EN 60898-1 class 3, 6 kA): 2.5 mm² bears it
    _, _, checks = circuit(SEMI, "main", "window", FLAT)
    (core,) = [each for each in checks if each.requirement.id == "earth_core_withstands"]
    assert (core.actual, core.limit) == (pytest.approx(1.84, abs=0.01), 2.5)


def test_an_earth_that_was_lost_is_the_operators_to_mend():
    # a loop of 20 Ω on what was a separate earth: no size of cable cures it
    lost = changed(SEMI, supply__earthing="TN-S", supply__ze_ohm=20.0)
    _, _, checks = circuit(lost, "main", "window", FLAT)
    assert failed(checks) == ["loop_within_limit"]
    (check,) = [each for each in checks if each.outcome.value == "fail"]
    (remedy,) = check.remedies
    assert remedy.by and remedy.changes == (("supply.ze_ohm", 0.8),)
    _, _, after = circuit({**lost, **dict(remedy.changes)}, "main", "window", FLAT)
    assert not failed(after)


def test_a_cable_that_is_too_long_is_nobodys_to_mend():
    far = changed(SEMI, supply__ze_ohm=0.35, legs__plaster__length_m=300.0)
    _, _, checks = circuit(far, "main", "window", FLAT)
    assert "drop_within_limit" in failed(checks)
    assert all(each.remedies == () for each in checks)


def test_a_weak_earth_that_still_trips_the_device_is_no_refusal():
    weak = changed(SEMI, supply__ze_ohm=0.55)
    _, _, checks = circuit(weak, "main", "window", FLAT)
    assert not failed(checks)
    assert all(each.remedies == () for each in checks)


def test_terminals_are_asked_of_the_point_itself():
    point: ChargePoint = basis().catalogue.point("window-lead-16")
    assert (point.terminal_mm2, point.gland_mm) == (6.0, 17.0)
    facts = {**SEMI, "legs": {"only": leg("main", "window", 8.0, "clipped inside")}}
    assert plain(facts).legs.ids == ("only",)
    _, _, checks = circuit(facts, "main", "window", FLAT, point=point.id, setting_a=16.0)
    assert not failed(checks)
