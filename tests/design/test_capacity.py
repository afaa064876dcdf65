"""Capacities leg by leg, against the tables of BS 7671: 4D5, 4D2A, 4D4A, 4B1, 4C1 and 52.2."""

from __future__ import annotations

from typing import get_args

import pytest

from ampwright.design.circuit.capacity import leg_capacity, read_leg
from ampwright.design.circuit.methods import HOW_READ, Lay
from ampwright.design.route import LegRun
from ampwright.survey.home_legs import LegHow
from ampwright.tables.book import Book
from ampwright.tables.capacity import CableFamily, methods_of

FLAT, SHEATHED, ARMOURED = CableFamily.FLAT, CableFamily.SHEATHED, CableFamily.ARMOURED
BOOK = Book()


def run(how, length_m=5.0, insulation_mm=0.0, ambient_c=30.0, grouped_with=0):
    ambient = None if how in ("buried", "duct") else ambient_c
    return LegRun("x", how, length_m, insulation_mm, ambient, grouped_with)


def carries(family, size_mm2, leg, phases=1):
    return leg_capacity(BOOK, family, phases, size_mm2, leg).capacity_a


@pytest.mark.parametrize(
    ("how", "insulation_mm", "method", "six_a"),
    [
        ("clipped inside", 0.0, "C", 47.0),
        ("through wall", 0.0, "C", 47.0),
        ("tray", 0.0, "C", 47.0),
        ("loft void", 0.0, "100", 34.0),
        ("loft void", 3000.0, "101", 27.0),
        ("under floor", 0.0, "100", 34.0),
        ("stud wall", 0.0, "102", 35.0),
        ("stud wall", 2000.0, "103", 23.5),
        ("trunking", 0.0, "A", 32.0),
        ("conduit", 0.0, "A", 32.0),
    ],
)
def test_flat_6_by_the_table_of_flat_cable(how, insulation_mm, method, six_a):
    leg = run(how, insulation_mm=insulation_mm)
    assert read_leg(FLAT, leg).method == method
    assert carries(FLAT, 6.0, leg) == six_a


@pytest.mark.parametrize(
    ("how", "six_a"),
    [("clipped outside", 46.0), ("trunking", 38.0), ("under floor", 38.0), ("stud wall", 32.0),
     ("tray", 51.0), ("through wall", 46.0)],
)  # fmt: skip
def test_sheathed_6_by_the_70_degree_table(how, six_a):
    assert carries(SHEATHED, 6.0, run(how)) == six_a


@pytest.mark.parametrize(("how", "ten_a"), [("clipped outside", 67.0), ("tray", 72.0),
                                            ("buried", 60.0), ("duct", 60.0)])  # fmt: skip
def test_armoured_10_by_the_70_degree_table(how, ten_a):
    assert carries(ARMOURED, 10.0, run(how)) == ten_a


def test_three_loaded_conductors_carry_less():
    assert carries(SHEATHED, 6.0, run("clipped outside"), phases=3) == 41.0


def test_the_textbook_example_of_corrected_capacity():
    # 16 A into 35 °C air beside one other circuit: It ≥ 16 / (0.94 × 0.8) = 21.3 A
    leg = run("trunking", ambient_c=35.0, grouped_with=1)
    assert carries(SHEATHED, 2.5, leg) == pytest.approx(23.0 * 0.94 * 0.8)


@pytest.mark.parametrize(
    ("length_mm", "factor"),
    [(50.0, 0.88), (100.0, 0.78), (200.0, 0.63), (400.0, 0.51), (900.0, 0.5)],
)
def test_insulation_in_a_wall_counts_by_the_length_in_it(length_mm, factor):
    leg = run("through wall", insulation_mm=length_mm)
    assert carries(FLAT, 6.0, leg) == pytest.approx(47.0 * factor)


def test_a_leg_wholly_in_insulation_counts_by_its_own_length():
    assert carries(SHEATHED, 6.0, run("in insulation", length_m=2.0)) == pytest.approx(23.0)
    assert carries(SHEATHED, 6.0, run("in insulation", length_m=0.1)) == pytest.approx(46 * 0.78)


@pytest.mark.parametrize(
    ("how", "length_mm", "six_a"),
    [("loft void", 3000.0, 23.0), ("loft void", 40.0, 38.0), ("stud wall", 3000.0, 23.0),
     ("stud wall", 40.0, 32.0)],
)  # fmt: skip
def test_sheathed_cable_partly_in_insulation_carries_no_more_than_bare(how, length_mm, six_a):
    # half of method C along a length in it; a short length leaves method B or A to rule
    assert carries(SHEATHED, 6.0, run(how, insulation_mm=length_mm)) == pytest.approx(six_a)


def test_buried_beside_another_counts_as_touching():
    assert carries(ARMOURED, 6.0, run("buried", grouped_with=1)) == pytest.approx(46 * 0.75)
    assert carries(ARMOURED, 6.0, run("duct", grouped_with=1)) == pytest.approx(46 * 0.85)


@pytest.mark.parametrize(
    ("family", "how"),
    [(FLAT, "clipped outside"), (FLAT, "buried"), (FLAT, "duct"), (SHEATHED, "buried"),
     (SHEATHED, "duct")],
)  # fmt: skip
def test_a_family_is_refused_where_it_is_not_made_to_run(family, how):
    leg = leg_capacity(BOOK, family, 1, 6.0, run(how))
    assert leg.capacity_a == 0.0
    assert "not made" in leg.refused


def test_outside_the_tables_is_refused_with_the_reason():
    hot = leg_capacity(BOOK, FLAT, 1, 6.0, run("loft void", ambient_c=75.0))
    assert hot.capacity_a == 0.0
    assert "75" in hot.refused
    crowd = leg_capacity(BOOK, ARMOURED, 1, 6.0, run("buried", grouped_with=12))
    assert crowd.capacity_a == 0.0
    assert crowd.refused


@pytest.mark.parametrize("how", get_args(LegHow))
@pytest.mark.parametrize("family", [FLAT, SHEATHED, ARMOURED, CableFamily.FIVE_CORE])
@pytest.mark.parametrize("insulated", [False, True])
def test_every_way_of_running_is_read_or_refused_by_a_row_of_its_own(family, how, insulated):
    ruled = HOW_READ.decide(Lay(family, how, insulated))
    assert ruled.row < len(HOW_READ.rows), "no way of the survey falls to the last row"
    read = ruled.outcome
    assert not read.method or read.method in methods_of(read.table or family)
