"""A firm may ask for more than the rules do; asking for more never lets anything new through.

At the level of clauses: whatever the figures, a limit moved to the stricter side never turns a
failure into a pass. At the level of options: whatever rule a firm tightens, what is feasible under
the stricter rule was feasible before, perhaps with less work. All options are walked with one menu,
so that a rule is judged by what it refuses and not by what it makes worth offering.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.journeys.homes import basis, records_of

from ampwright.firm.rules import TIGHTER, tighten
from ampwright.foundations.checks import Outcome
from ampwright.options.lifting import Lifter
from ampwright.options.menu import menu_of
from ampwright.options.open_homes import homes_of
from ampwright.options.ranking import bare
from ampwright.options.search import Walk
from ampwright.options.work import work_of
from ampwright.standards.catalogue import Kind, clauses
from ampwright.standards.charging import pilot, smart
from ampwright.standards.network import connection, limiter
from ampwright.standards.wiring import (
    adequacy,
    boards,
    charging,
    disconnection,
    earthing,
    fault,
    open_pen_device,
    overload,
    rcd,
    running,
    sources,
    voltage_drop,
)
from ampwright.survey.folding import as_found

figure = st.floats(0.0, 100.0)
UPPER = [  # a figure that may not pass a limit, which a stricter firm lowers
    (adequacy.supply_carries_demand, "demand", "capacity"),
    (adequacy.feed_short_enough, "L", "limit", {"own_device": False}),
    (voltage_drop.drop_within_limit, "dU_share", "limit_share"),
    (fault.loop_within_limit, "Zs", "Zs_max"),
    (fault.device_breaks_fault, "Ipf_ka", "Icn_ka"),
    (overload.cable_carries_device, "In", "Iz"),
    (overload.overload_ends_in_time, "I2", "limit"),
    (disconnection.cut_off_in_time, "t", "limit"),
    (earthing.touch_voltage_limited, "V", "limit"),
    (earthing.rod_stable, "RA", "limit"),
    (charging.window_held_high, "U", "high"),
    (charging.terminal_stays_cool, "t", "terminal_c"),
    (charging.outlet_not_too_high, "h", "high"),
    (charging.surge_leads_short, "L", "limit"),
    (open_pen_device.open_pen_device_quick, "t", "limit"),
    (rcd.rcd_trips_in_time, "t", "limit"),
    (rcd.leakage_leaves_room, "leakage", "limit"),
    (running.clips_close_enough, "gap", "limit"),
    (connection.within_threshold, "demand_a", "threshold_a"),
    (limiter.limiter_fails_safe, "falls_to_a", "floor_a"),
    (limiter.limiter_quick_enough, "t", "limit"),
    (pilot.pilot_within_setting, "I", "Iset"),
]
LOWER = [  # a figure that may not fall short of a limit, which a stricter firm raises
    (charging.window_held, "U", "low"),
    (charging.outlet_not_too_low, "h", "low"),
    (earthing.earthing_conductor_sized, "mm2", "required"),
    (earthing.reach_separated, "metal_m", "limit_m"),
    (earthing.buried_separated, "metal_m", "limit_m"),
    (earthing.pipe_may_stay_unbonded, "R", "R_min"),
    (boards.way_free, "spare", "needed"),
    (running.bend_not_too_tight, "R", "least"),
    (running.buried_deep_enough, "depth", "usual"),
    (running.data_apart, "gap", "least"),
    (rcd.delayed_rcd_waits_long_enough, "t", "delay"),
    (smart.delay_long_enough, "longest", "least"),
    (pilot.setting_not_below_floor, "Iset", "floor"),
]


def named(row):
    return row[0].clause.id if isinstance(row, tuple) else str(row)


@pytest.mark.parametrize("row", UPPER, ids=named)
@given(actual=figure, limit=figure, by=figure)
def test_a_lower_limit_never_lets_more_through(row, actual, limit, by):
    clause, is_, may_be, *rest = row
    besides = {is_: actual, **(rest[0] if rest else {})}
    strict = clause(**{may_be: limit - by}, **besides)
    usual = clause(**{may_be: limit}, **besides)
    assert strict.outcome is Outcome.FAIL or usual.outcome is Outcome.PASS


@pytest.mark.parametrize("row", LOWER, ids=named)
@given(actual=figure, limit=figure, by=figure)
def test_a_higher_least_never_lets_more_through(row, actual, limit, by):
    clause, is_, must_be = row
    strict = clause(**{is_: actual, must_be: limit + by})
    assert strict.outcome is Outcome.FAIL or clause(**{is_: actual, must_be: limit}).outcome is (
        Outcome.PASS
    )


@given(figure, st.lists(figure, max_size=3).map(tuple), figure, figure)
def test_a_board_rated_lower_never_carries_more_sources(fuse, running_, rated, by):
    if sources.board_carries_sources(fuse, running_, rated - by).outcome is Outcome.PASS:
        assert sources.board_carries_sources(fuse, running_, rated).outcome is Outcome.PASS


def test_the_clauses_above_are_of_the_standards():
    known = {clause.name for clause in clauses() if clause.kind is Kind.REQUIRES}
    assert {row[0].clause.name for row in (*UPPER, *LOWER)} <= known


# --- options -----------------------------------------------------------------------------------

STRICTER = {
    "voltage_margin_v": 9.0,
    "ordinary_load_a": 40.0,
    "drop_share": 0.02,
    "drop_share_lights": 0.01,
    "stable_rod_ohm": 100.0,
    "aim_rod_ohm": 50.0,
    "house_limit_a": 45.0,
    "least_house_limit_a": 60.0,
    "least_point_mm2": 10.0,
    "least_tails_mm2": 35.0,
    "later_load_a": 32.0,
    "own_device_over_m": 1.0,
    "ladder_to_m": 2.0,
    "tower_to_m": 4.0,
    "need_margin": 2.0,
    "watch_every_line": True,
    "wait_out_dips": True,
    "recommend_least": True,
    "registered_person": True,
}
"""Each rule of a firm, well beyond the shipped one."""
REFUSES = [
    ("quillbrook-close", "least_point_mm2"),
    ("fellside-cottage", "voltage_margin_v"),
]
"""Homes in which a rule is known to refuse something, so that the test is not empty."""


def feasible(name, **rules):
    """The choices that hold in some home, without the work they take, over the shipped menu."""
    shipped = basis()
    homes = homes_of(as_found(records_of(name)), shipped)
    menu = menu_of(Lifter(homes), shipped)
    strict = replace(shipped, rules=tighten(shipped.rules, replace(shipped.rules, **rules)))
    options = Walk(Lifter(homes), menu, work_of(strict)).run().options
    # One that only cannot be judged yet, for want of a fact the rule asks for, does not hold.
    return {bare(o.choice) for o in options if Outcome.PASS in o.sound.possible}


before = cache(feasible)


def test_every_rule_is_tried():
    assert STRICTER.keys() == TIGHTER.keys()


@pytest.mark.parametrize("rule", STRICTER)
@pytest.mark.parametrize("home", ["quillbrook-close", "larkspit-rise"])
def test_a_stricter_rule_never_adds_a_feasible_option(home, rule):
    assert feasible(home, **{rule: STRICTER[rule]}) <= before(home)


@pytest.mark.parametrize(("home", "rule"), REFUSES)
def test_a_stricter_rule_refuses_and_adds_nothing(home, rule):
    assert feasible(home, **{rule: STRICTER[rule]}) < before(home)


@pytest.mark.parametrize("home", ["quillbrook-close"])
def test_all_rules_together_add_nothing(home):
    assert feasible(home, **STRICTER) <= before(home)
