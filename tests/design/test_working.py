"""Plain and documented give the same figures, and no figure of a working lacks its source."""

from __future__ import annotations

from dataclasses import fields

import pytest

from ampwright.design.board.feeds import house_feeds
from ampwright.design.circuit.faults import fault_levels
from ampwright.design.circuit.voltage import volts_at_point
from ampwright.design.earthing.bonding import bonding
from ampwright.design.earthing.outbuilding import outbuilding
from ampwright.design.earthing.point import point_earthing
from ampwright.design.sources import source_ways
from ampwright.foundations.source import SetBy
from ampwright.foundations.working import given, has_working, orphans
from ampwright.tables.capacity import CableFamily

from .homes import (
    COTTAGE,
    HALF_SPEED,
    PACKED,
    SEMI,
    SUNNY,
    WEAK,
    YARD,
    basis,
    changed,
    documented_basis,
    plain,
    worked,
)  # fmt: skip
from .work import board_of, circuit

FAR = changed(SEMI, boards__main__from_meter_m=12.0, boards__main__feed_mm2=16.0,
              boards__main__feed_kind="armoured",
              boards__main__feed_lies="clipped inside", boards__main__feed_device_a=63.0,
              legs__plaster__how="loft void", legs__plaster__insulation_mm=500.0)  # fmt: skip
SOAKED = changed(SUNNY, legs__inside__how="in insulation", legs__hole__insulation_mm=100.0)
CASES = {
    "semi": (SEMI, "main", "window", CableFamily.FLAT, "window-lead", "pme"),
    "far board": (FAR, "main", "window", CableFamily.FLAT, "window-socket", "pme"),
    "soaked": (SOAKED, "meter", "store", CableFamily.SHEATHED, "window-lead", "pme"),
    "sunny": (SUNNY, "meter", "store", CableFamily.SHEATHED, "earth-lead", "rod"),
    "cottage": (COTTAGE, "meter", "gate", CableFamily.ARMOURED, "bare-lead", "house rod"),
    "yard": (YARD, "meter", "store", CableFamily.SHEATHED, "three-socket", "pme"),
    "weak": (WEAK, "main", "end-wall", CableFamily.SHEATHED, "window-lead", "pme"),
    "packed": (PACKED, "main", "wall", CableFamily.SHEATHED, "three-socket", "pme"),
    "half speed": (HALF_SPEED, "meter", "port", CableFamily.SHEATHED, "window-lead", "pme"),
}


def everything(case, reader, on, setting_a, demand_a):
    """All results and checks of one option, stage after stage."""
    facts, tap, place, family, point_id, earthing = CASES[case]
    out, device, checks = circuit(
        facts, tap, place, family, setting_a, point_id, earthing, demand_a=demand_a,
        reader=reader, on=on,
    )  # fmt: skip
    home, point = reader(facts), on.catalogue.point(point_id)
    volts = volts_at_point(
        home, on, point.detection, home.supply.lowest_v, home.supply.highest_v, True, True,
        out.drop_to_neutral_v,
    )  # fmt: skip
    rest = (
        volts,
        fault_levels(home, on, point.phases, device.breaking_ka),
        point_earthing(home, on, place, earthing, point, device.rcd_ma),
        bonding(home, on),
        house_feeds(home, on, tap),
        source_ways(home, on, tap),
        outbuilding(home, on, tap, place, earthing, home.legs[home.legs.ids[0]].length_m),
        board_of(home, on, tap, point, device),
    )
    results = (out, device, *(made.out for made in rest))
    return results, (*checks, *(check for made in rest for check in made.checks))


@pytest.fixture(scope="module", params=CASES)
def both(request):
    choice = SetBy("choice", "setting")
    found = given("Ib", 32.0, "A", choice)
    load = (given("Idemand", 50.0, "A", choice),)
    return (
        everything(request.param, plain, basis(), 32.0, (50.0,)),
        everything(request.param, worked, documented_basis(), found, load),
    )


def test_same_results_and_checks(both):
    (results, checks), (documented, shown) = both
    assert results == documented
    assert [(each.requirement.id, each.outcome, each.actual, each.limit) for each in checks] == [
        (each.requirement.id, each.outcome, each.actual, each.limit) for each in shown
    ]


def test_every_number_of_a_check_has_its_source(both):
    _, (_, shown) = both
    for check in shown:
        for number in (check.actual, check.limit):
            if isinstance(number, float):
                assert orphans(number) == [], check.requirement.id


def test_every_figure_worked_out_keeps_its_working(both):
    _, (results, _) = both
    cable = results[0]
    for each in fields(cable):
        value = getattr(cable, each.name)
        if type(value) is float:
            pytest.fail(f"{each.name} is {value}, bare")
        if isinstance(value, float):
            assert has_working(value)
            assert orphans(value) == []


def test_plain_results_are_plain_and_hashable(both):
    (results, checks), _ = both
    hash((results, checks))
    assert all(type(check.actual) in (float, int, type(None)) for check in checks)
