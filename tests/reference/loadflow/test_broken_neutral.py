"""The broken neutral of our clauses against power-grid-model.

Agreement: 0.001 V, and 0.001 A or one part in a hundred thousand. Both take each load as a fixed
resistance, so that nothing but arithmetic may differ; what is left is the floating star point's
10 MΩ instead of none, 0.1 µΩ of line, and the library's own last digits.
"""

from __future__ import annotations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from ampwright.standards.wiring import open_pen

from .grid import FLOATING_OHM, NO_OHM, U0, Leg, Load, flow

amps = st.floats(1.0, 100.0)
phases = st.tuples(amps, amps, amps)
electrode = st.floats(0.5, 500.0)
VOLTS = 0.001
often = settings(max_examples=60, deadline=None)


def broken(loads, ohms=FLOATING_OHM, volts=U0):
    return flow([Leg(NO_OHM, ohms)], [Load(loads)], volts)


@often
@given(phases, electrode)
def test_the_earth_terminal_stands_where_the_library_puts_it(loads, ohms):
    unbalance = open_pen.unbalance(*loads)
    pull = open_pen.electrode_pull(U0, ohms)
    ours = open_pen.touch_voltage(1.0, U0, unbalance, sum(loads), pull)
    assert abs(broken(loads, ohms).star) == pytest.approx(ours, abs=VOLTS)


@often
@given(phases)
def test_a_floating_star_point_stands_where_the_library_puts_it(loads):
    ours = open_pen.touch_voltage(1.0, U0, open_pen.unbalance(*loads), sum(loads), 0.0)
    assert abs(broken(loads).star) == pytest.approx(ours, abs=VOLTS)


@often
@given(phases, st.one_of(st.just(0.0), electrode), st.integers(0, 2))
def test_each_phase_has_the_volts_that_the_library_gives_it(loads, ohms, phase):
    pull = open_pen.electrode_pull(U0, ohms) if ohms else 0.0
    turned = [loads[(phase + step) % 3] for step in range(3)]
    x = open_pen.shift_along(*turned, pull)
    y = open_pen.shift_across(*turned, pull)
    found = broken(loads, ohms or FLOATING_OHM)
    assert abs(found.volts[phase]) == pytest.approx(
        open_pen.phase_voltage(1.0, U0, x, y), abs=VOLTS
    )


@often
@given(amps, electrode)
def test_one_phase_alone_is_a_divider(load, ohms):
    pull = open_pen.electrode_pull(U0, ohms)
    ours = open_pen.touch_voltage(1.0, U0, load, load, pull)
    assert abs(broken((load, 0.0, 0.0), ohms).star) == pytest.approx(ours, abs=VOLTS)


@often
@given(phases)
def test_the_electrode_we_ask_for_holds_the_library_to_seventy_volts(loads):
    unbalance, total = open_pen.unbalance(*loads), sum(loads)
    assume(open_pen.touch_voltage(1.0, U0, unbalance, total, 0.0) > 70.5)
    ohms = open_pen.electrode_needed(1.0, unbalance, 70.0, total, U0)
    assert abs(broken(loads, ohms).star) == pytest.approx(70.0, abs=0.01)


@often
@given(amps)
def test_so_does_the_electrode_of_one_phase(load):
    ohms = open_pen.electrode_needed_single(70.0, U0, load, 1.0)
    assert abs(broken((load, 0.0, 0.0), ohms).star) == pytest.approx(70.0, abs=VOLTS)


@often
@given(phases, electrode)
def test_a_high_supply_raises_all_in_proportion(loads, ohms):
    """``Cmax`` 1.1 is the library's source at 253 V over loads rated for 230 V."""
    unbalance, pull = open_pen.unbalance(*loads), open_pen.electrode_pull(U0, ohms)
    ours = open_pen.touch_voltage(1.1, U0, unbalance, sum(loads), pull)
    high = broken(tuple(1.1 * load for load in loads), ohms, volts=1.1 * U0)
    assert abs(high.star) == pytest.approx(ours, abs=VOLTS)


@often
@given(st.floats(0.0, 100.0), st.floats(0.0, 100.0))
def test_the_most_that_one_window_cannot_see(b, c):
    """Whatever the other two phases draw: the library never stands higher with 253 V watched."""
    assume(b + c > 1.0)
    found = broken((0.0, b, c))
    if abs(found.volts[0]) <= 253.0:
        assert abs(found.star) <= open_pen.unseen_by_one_window(U0, 253.0) + VOLTS


@often
@given(phases, electrode, st.permutations([0, 1, 2]))
def test_renaming_the_phases_moves_nothing_but_the_names(loads, ohms, order):
    turned = tuple(loads[spot] for spot in order)
    here, there = broken(loads, ohms), broken(turned, ohms)
    assert abs(here.star) == pytest.approx(abs(there.star), abs=VOLTS)
    if order in ([0, 1, 2], [1, 2, 0], [2, 0, 1]):  # the same turning sense
        seen = [abs(here.volts[spot]) for spot in order]
        assert seen == pytest.approx([abs(each) for each in there.volts], abs=VOLTS)


@often
@given(phases)
def test_the_neutral_carries_the_unbalance(loads):
    """A sound neutral: the sum of the library's three currents, by Ohm's law over 0.1 mΩ."""
    neutral = 1e-4
    found = flow([Leg(NO_OHM, neutral)], [Load(loads)])
    assert abs(found.star) / neutral == pytest.approx(
        open_pen.unbalance(*loads), rel=0.001, abs=0.001
    )
