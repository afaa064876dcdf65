"""The broken neutral in real numbers against Millman's theorem in complex ones."""

from __future__ import annotations

import cmath
import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from ampwright.standards.wiring import open_pen

U0 = 230.0
TURNS = (0.0, -2 * math.pi / 3, 2 * math.pi / 3)
current = st.floats(0.0, 100.0)
electrode = st.floats(0.5, 500.0)
cmax = st.sampled_from([1.0, 1.1])


def emfs(volts):
    return [cmath.rect(volts, turn) for turn in TURNS]


def millman(volts, loads, ohms):
    """The common point of three loads and an electrode, each load by its conductance."""
    siemens = [each / U0 for each in loads]
    driven = sum(e * g for e, g in zip(emfs(volts), siemens, strict=True))
    return driven / (sum(siemens) + 1 / ohms)


@given(cmax, current, current, current, electrode)
def test_the_earth_terminal_stands_where_millman_puts_it(factor, a, b, c, ohms):
    expected = abs(millman(factor * U0, (a, b, c), ohms))
    found = open_pen.touch_voltage(
        factor, U0, open_pen.unbalance(a, b, c), a + b + c, open_pen.electrode_pull(U0, ohms)
    )
    assert found == pytest.approx(expected, abs=1e-9)


@given(cmax, current, current, current, electrode, st.integers(0, 2))
def test_each_phase_sees_what_millman_leaves_it(factor, a, b, c, ohms, phase):
    loads = (a, b, c)
    point = millman(factor * U0, loads, ohms)
    expected = abs(emfs(factor * U0)[phase] - point)
    turned = [loads[(phase + step) % 3] for step in range(3)]
    pull = open_pen.electrode_pull(U0, ohms)
    x = open_pen.shift_along(*turned, pull)
    y = open_pen.shift_across(*turned, pull)
    assert open_pen.phase_voltage(factor, U0, x, y) == pytest.approx(expected, abs=1e-9)


@given(cmax, current, current, current)
def test_the_electrode_needed_holds_the_limit_exactly(factor, a, b, c):
    unbalance, total = open_pen.unbalance(a, b, c), a + b + c
    assume(total > 1.0)
    assume(open_pen.touch_voltage(factor, U0, unbalance, total, 0.0) > 70.5)
    ohms = open_pen.electrode_needed(factor, unbalance, 70.0, total, U0)
    pull = open_pen.electrode_pull(U0, ohms)
    assert open_pen.touch_voltage(factor, U0, unbalance, total, pull) == pytest.approx(70.0)


@given(cmax, st.floats(1.0, 100.0))
def test_one_phase_is_the_case_of_three_with_two_idle(factor, a):
    alone = open_pen.electrode_needed_single(70.0, U0, a, factor)
    assert alone == pytest.approx(open_pen.electrode_needed(factor, a, 70.0, a, U0))


@given(current, current, current, st.integers(1, 2))
def test_unbalance_does_not_mind_which_phase_is_which(a, b, c, step):
    loads = [a, b, c]
    turned = loads[step:] + loads[:step]
    assert open_pen.unbalance(*turned) == pytest.approx(open_pen.unbalance(a, b, c), abs=1e-9)


@given(st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_no_load_hides_more_from_one_watched_phase_than_is_said(b, c):
    """Any pair of loads on the other phases that leaves the watched one inside the window."""
    assume(b + c > 1e-3)
    most = open_pen.unseen_by_one_window(U0, 253.0)
    point = millman(U0, (0.0, 100 * b, 100 * c), 1e9)
    for share in (0.25, 0.5, 0.75, 1.0):  # a load on the watched phase pulls it back
        shifted = point * share
        if 207.0 <= abs(U0 - shifted) <= 253.0:
            assert abs(shifted) <= most + 1e-6


def volts_of(loads):
    """What each phase sees with nothing holding the broken neutral, by the clauses."""
    for phase in range(3):
        turned = [loads[(phase + step) % 3] for step in range(3)]
        x = open_pen.shift_along(*turned, 0.0)
        y = open_pen.shift_across(*turned, 0.0)
        yield open_pen.phase_voltage(1.0, U0, x, y)


def test_three_watched_phases_leave_little_unseen():
    """26.6 V is where one phase sees 207 V and the next 253 V (reckoned from the three distances);
    one watched phase alone can miss 127 V."""
    a, b = 1 - 0.9**2, 1 - 1.1**2
    root = math.sqrt((1 - a - b) ** 2 - 4 / 3 * (a * a + a * b + b * b))
    most = U0 * math.sqrt((1 - a - b - root) / 2)
    found = 0.0
    for two in range(50, 151):
        for three in range(50, 151):
            loads = (100.0, float(two), float(three))
            if all(207.0 <= volts <= 253.0 for volts in volts_of(loads)):
                unbalance = open_pen.unbalance(*loads)
                found = max(found, open_pen.touch_voltage(1.0, U0, unbalance, sum(loads), 0.0))
    assert most == pytest.approx(26.6, abs=0.05)
    assert most - 0.5 < found <= most
