from __future__ import annotations

from dataclasses import replace

import pytest

from ampwright.design.circuit.device import NO_PROTECTION, protective_device
from ampwright.design.circuit.faults import fault_levels
from ampwright.firm.catalogue import RcdType

from .homes import PACKED, SEMI, YARD, basis, changed, plain, without
from .work import failed, outcome_of


def point(id_="window-lead", **changes):
    return replace(basis().catalogue.point(id_), **changes)


def chosen(setting_a=32.0, earthing="pme", hidden=False, on=None, **changes):
    of, tap = changes.pop("of", "window-lead"), changes.pop("tap", "main")
    home = plain(changes.pop("facts", SEMI))
    return protective_device(
        home, on or basis(), tap, point(of, **changes), earthing, setting_a, hidden
    )


@pytest.mark.parametrize(
    ("setting_a", "rating_a"), [(6.0, 16.0), (16.0, 16.0), (16.5, 20.0), (20.0, 20.0), (32.0, 32.0)]
)
def test_the_next_rating_that_is_bought(setting_a, rating_a):
    made = chosen(setting_a)
    assert made.out.rating_a == rating_a
    assert not failed(made.checks)


def test_own_type_a_device_that_breaks_the_neutral():
    out = chosen().out
    assert (out.device, out.rcd_type, out.rcd_ma, out.curve) == ("rcbo-a-32", "A", 30.0, "B")
    assert out.breaks_neutral
    assert out.positions == 2


class TestThreePhaseBars:
    # The answer sheet of the packed board: a three-pole breaker, and a four-pole 30 mA Type A
    # RCD in a case of its own beside the board; with an RCD in the point the breaker is enough.
    def test_no_rcbo_of_the_boards_make(self):
        made = chosen(16.0, facts=PACKED, of="three-socket")
        assert not failed(made.checks)
        out = made.out
        assert (out.device, out.rcd, out.rcd_beside) == ("breaker-3-line-20", "rcd-a-3-40", True)
        assert (out.positions, out.rcd_type, out.rcd_ma) == (3, "A", 30.0)
        assert out.breaks_neutral and not out.isolator_by_point

    def test_with_an_rcd_in_the_point_the_breaker_is_enough(self):
        made = chosen(16.0, facts=PACKED, of="three-earth-lead")
        assert not failed(made.checks)
        out = made.out
        assert (out.device, out.rcd, out.rcd_in_point) == ("breaker-3-line-20", "", True)
        assert out.isolator_by_point

    def test_the_makers_own_rcbo_where_there_is_one(self):
        facts = changed(PACKED, boards__main__parts_three_phase_rcbo=True)
        out = chosen(16.0, facts=facts, of="three-socket").out
        assert (out.device, out.rcd, out.rcd_beside) == ("rcbo-a-3-20", "", False)

    def test_at_the_meter_nobody_asks_for_the_boards_make(self):
        facts = without(PACKED, "boards.main.parts_three_phase_rcbo")
        assert chosen(16.0, facts=facts, of="three-socket", tap="meter").out.device == "rcbo-a-3-20"

    def test_no_rcd_bought_no_device(self):
        on = basis()
        kept = tuple(each for each in on.catalogue.devices if each.kind != "RCD")
        without_rcds = replace(on, catalogue=replace(on.catalogue, devices=kept))
        made = chosen(16.0, facts=PACKED, of="three-socket", on=without_rcds)
        assert failed(made.checks) == ["device_offered"]


def test_a_point_with_its_own_rcd_needs_only_a_breaker():
    made = chosen(of="window-socket")
    assert (made.out.device, made.out.rcd_in_point) == ("breaker-32", True)
    assert not failed(made.checks)


@pytest.mark.parametrize(("earthing", "hidden"), [("house rod", False), ("rod", False),
                                                  ("pme", True)])  # fmt: skip
def test_its_cable_may_want_one_all_the_same(earthing, hidden):
    out = chosen(of="window-socket", earthing=earthing, hidden=hidden).out
    assert (out.device, out.rcd_in_point) == ("rcbo-a-32", False)


def test_without_a_6_ma_detector_type_b_is_fitted():
    made = chosen(dc_6ma=False)
    assert (made.out.device, made.out.rcd, made.out.rcd_type) == ("breaker-32", "rcd-b-40", "B")
    assert made.out.positions == 6
    assert not failed(made.checks)


def test_a_built_in_type_a_without_the_detector_wants_a_type_b_before_it():
    made = chosen(dc_6ma=False, built_in_rcd=RcdType.A)
    assert (made.out.rcd, made.out.rcd_type, made.out.rcd_in_point) == ("rcd-b-40", "B", False)
    assert outcome_of(made.checks, "dc_fault_covered") == "pass"


def test_a_built_in_type_b_wants_neither_detector_nor_another():
    made = chosen(dc_6ma=False, built_in_rcd=RcdType.B)
    assert (made.out.rcd, made.out.rcd_type, made.out.rcd_in_point) == ("", "B", True)
    assert not failed(made.checks)


def test_three_lines_take_four_poles():
    made = chosen(of="three-socket")
    assert (made.out.device, made.out.positions) == ("rcbo-a-3-32", 4)
    assert outcome_of(made.checks, "rcd_breaks_all_live") == "pass"


def test_a_setting_beyond_every_device_fails_with_both_numbers():
    made = chosen(63.0)
    (check,) = [each for each in made.checks if each.outcome.value == "fail"]
    assert (check.requirement.id, check.actual, check.limit) == (
        "device_carries_design_current", 63.0, 40.0,
    )  # fmt: skip


def stocked(keep=lambda _: True, beside=lambda _: None, **everywhere):
    """The firm's data with other devices: each row changed, each with another put before it."""
    on = basis()
    rows = []
    for each in on.catalogue.devices:
        row = replace(each, **everywhere)
        other = beside(row)
        rows += [replace(row, id=f"other-{row.id}", **other)] if other else []
        rows += [row] if keep(row) else []
    return replace(on, catalogue=replace(on.catalogue, devices=tuple(rows)))


class TestNothingRightIsBought:
    """What comes nearest is judged by the clause that asks for more, with its number."""

    @pytest.mark.parametrize(("on", "says"), [
        (stocked(rcd_type=RcdType.AC), ["rcd_protects_point", "dc_fault_covered"]),
        (stocked(rcd_ma=100.0), ["rcd_protects_point"]),
        (stocked(breaks_neutral=False), ["rcd_breaks_all_live"]),
    ])  # fmt: skip
    def test_one_device_for_both(self, on, says):
        assert failed(chosen(on=on).checks) == says

    @pytest.mark.parametrize(("on", "says"), [
        (stocked(lambda row: row.rcd_type != "B"), ["dc_fault_covered"]),
        (stocked(lambda row: row.kind != "RCD" or row.rcd_type == "none",
                 lambda row: {"rcd_type": RcdType.AC} if row.kind == "RCD" else None),
         ["rcd_protects_point", "dc_fault_covered"]),
    ])  # fmt: skip
    def test_one_of_its_own_for_direct_current(self, on, says):
        assert failed(chosen(dc_6ma=False, on=on).checks) == says

    def test_neither_the_pole_nor_the_type_is_given_up_while_one_is_bought(self):
        wrong = (
            lambda row: {"breaks_neutral": False} if row.rcd_type != "none" else None,
            lambda row: {"rcd_type": RcdType.AC} if row.rcd_type != "none" else None,
        )
        for beside in wrong:
            on = stocked(beside=beside)
            made = chosen(on=on)
            assert (made.out.device, failed(made.checks)) == ("rcbo-a-32", [])
            made = chosen(dc_6ma=False, on=on)
            assert (made.out.rcd, failed(made.checks)) == ("rcd-b-40", [])
            made = chosen(16.0, facts=PACKED, of="three-socket", on=on)
            assert (made.out.rcd, failed(made.checks)) == ("rcd-a-3-40", [])
        # Without the right type the right poles still count, and the other way round.
        only_ac = stocked(lambda row: row.kind != "RCD", wrong[1])
        poles_too = [replace(each, breaks_neutral=False, id=f"pole-{each.id}")
                     for each in only_ac.catalogue.devices if each.kind == "RCD"]  # fmt: skip
        both = (*poles_too, *only_ac.catalogue.devices)
        on = replace(only_ac, catalogue=replace(only_ac.catalogue, devices=both))
        assert "rcd_breaks_all_live" not in failed(chosen(dc_6ma=False, on=on).checks)

    def test_no_isolator_for_a_neutral_that_stays_joined(self):
        on = basis()
        none = {at: kit for at, kit in on.rates.kits.items() if at[0] != "isolator-by-point"}
        made = chosen(16.0, facts=PACKED, of="three-earth-lead",
                      on=replace(on, rates=replace(on.rates, kits=none)))  # fmt: skip
        assert failed(made.checks) == ["isolation_present"]
        assert not made.out.isolator_by_point


def test_a_catalogue_without_the_device_fails():
    empty = replace(basis(), catalogue=replace(basis().catalogue, devices=()))
    made = chosen(on=empty)
    assert made.out == NO_PROTECTION
    assert failed(made.checks) == ["device_offered"]


@pytest.mark.parametrize(("read_ka", "says"), [(6.0, "pass"), (6.01, "fail")])
def test_breaking_capacity_at_its_limit(read_ka, says):
    facts = {**SEMI, "supply": {**SEMI["supply"], "fault_current_ka": read_ka}}
    (check,) = fault_levels(plain(facts), basis(), 1, 6.0).checks
    assert check.outcome.value == says


def test_between_lines_counts_on_three_phases():
    assert fault_levels(plain(YARD), basis(), 1, 10.0).out.prospective_ka == 1.21
    assert fault_levels(plain(YARD), basis(), 3, 10.0).out.prospective_ka == 2.3


def test_between_lines_it_is_twice_until_somebody_reads_it():
    # twice the line to neutral figure: guidance on inspection and testing, 2.7.16
    made = fault_levels(plain(without(YARD, "supply.fault_current_3ph_ka")), basis(), 3, 10.0)
    assert made.out.prospective_ka == 2.42
    assert "read it" in made.checks[0].caution
    read = fault_levels(plain(YARD), basis(), 3, 10.0)
    assert read.checks[0].caution == ""


# 0.3 of 30 mA may flow in normal service: 9 mA
@pytest.mark.parametrize(("leaks_ma", "says"), [(9.0, []), (9.01, ["leakage_leaves_room"])])
def test_a_point_that_leaks_leaves_its_device_room(leaks_ma, says):
    assert failed(chosen(leaks_ma=leaks_ma).checks) == says
