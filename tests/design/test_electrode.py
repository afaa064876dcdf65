"""Electrodes reckoned from the soil: BS 7430's formulas by hand, half as much again when dry.

One rod of 1.2 m and 16 mm comes to 0.7158 Ω for each Ω·m, one of 2.4 m to 0.4039, 10 and 20 m of
tape to 0.1352 and 0.0787, a plate of 0.9 m to 0.4924; 200 Ω is what stays steady.
"""

from __future__ import annotations

import pytest

from ampwright.design.earthing.electrode import dry_of, planned, soil_of, steady_in_soil
from ampwright.survey.home_earthing import Soil
from ampwright.tables.earthing import soils

from .homes import SEMI, basis, changed, plain
from .work import failed


def steady(**facts):
    found = tuple(steady_in_soil(plain(changed(SEMI, **facts)), basis()))
    return found[0] if found else None


def dry(soil, **facts):
    return dry_of(basis().book, planned(plain(changed(SEMI, **facts))), soil)


@pytest.mark.parametrize(
    ("facts", "ohm"),
    [
        ({}, 1.5 * 71.58),
        ({"earthing__rod_planned_m": 2.4}, 1.5 * 40.39),
        # λ of four in a line is 2.15, a = 1 / (ln 600 − 1) = 0.1853
        ({"earthing__rods_planned": 4}, 1.5 * 71.58 * (1 + 2.15 * 0.1853) / 4),
        ({"earthing__tape_planned_m": 10.0}, 1.5 * 13.524),
        ({"earthing__plate_planned_m": 0.9}, 1.5 * 49.235),
    ],
)
def test_what_each_comes_to_in_100_ohm_metres(facts, ohm):
    assert dry(100.0, **facts) == pytest.approx(ohm, rel=0.0005)


def test_the_survey_knows_the_soils_of_the_table():
    assert set(Soil.__args__) == set(soils(basis().book))


def test_nobody_has_said_what_the_soil_is():
    assert steady() is None
    assert soil_of(plain(SEMI), basis().book) is None


@pytest.mark.parametrize(
    ("soil", "outcome", "slugs"),
    [
        ("Clay", "pass", []),
        ("Clay, sand and gravel mix", "fail", ["point-rod-deeper", "point-tape-10", "point-plate"]),
        ("Sand", "fail", ["point-rods-4", "point-tape-10"]),
        ("Well-graded gravel", "fail", ["point-tape-20"]),
        ("Rock (crystalline)", "fail", ["point-tape-20"]),
    ],
)
def test_the_least_work_of_each_kind(soil, outcome, slugs):
    check = steady(earthing__soil=soil)
    assert check.outcome.value == outcome
    assert [each.slug for each in check.remedies] == slugs
    for remedy in check.remedies:
        laid = {key.replace(".", "__"): value for key, value in remedy.changes}
        assert steady(earthing__soil=soil, **laid).outcome.value == "pass"


# 200 / (1.5 · 0.71576) = 186.28 Ω·m
@pytest.mark.parametrize(("measured", "outcome"), [(186.2, "pass"), (186.4, "fail")])
def test_a_measured_soil_rules(measured, outcome):
    check = steady(earthing__soil="Clay", earthing__soil_ohm_m=measured)
    assert check.outcome.value == outcome


def test_where_nothing_holds_none_is_offered():
    check = steady(earthing__soil_ohm_m=3000.0)
    assert (check.outcome.value, check.remedies) == ("fail", ())


def test_only_the_best_of_the_soil_holds():
    check = steady(earthing__soil="Rock (crystalline)", earthing__tape_planned_m=20.0)
    assert "at its best" in check.caution


def test_the_work_of_each():
    mixed = {
        each.slug: each for each in steady(earthing__soil="Clay, sand and gravel mix").remedies
    }
    assert mixed["point-rod-deeper"].minutes == (30.0, 30.0, 30.0)
    assert mixed["point-tape-10"].minutes == pytest.approx((180.0, 240.0, 360.0))
    assert mixed["point-plate"].minutes == (60.0, 90.0, 150.0)
    rods, _ = steady(earthing__soil="Sand").remedies
    assert rods.minutes == (90.0, 90.0, 90.0)
    assert [each.quantity for each in rods.parts] == [3.0, 1.0]
    for remedy in (*mixed.values(), rods):
        assert all(basis().rates.named(part.what) for part in remedy.parts)


@pytest.mark.parametrize(("room", "says"), [(True, []), (False, ["room_for_rods"])])
def test_rods_in_line_and_tape_want_room(room, says):
    from .test_earthing import earth

    for facts in ({"earthing__rods_planned": 2}, {"earthing__tape_planned_m": 10.0}):
        made = earth(changed(SEMI, earthing__second_electrode_room=room, **facts), "rod")
        assert failed(made.checks) == says
    assert not failed(earth(changed(SEMI, earthing__second_electrode_room=room), "rod").checks)
