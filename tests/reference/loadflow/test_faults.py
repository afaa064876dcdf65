"""Fault loops and fault currents, ours against the short-circuit sums of power-grid-model.

The library follows IEC 60909 and brings its own voltage factors, 0.95 for the least and 1.10 for
the largest current at low voltage, which are the ones the wiring rules take.

Agreement: one part in ten thousand for resistive loops: the source is not quite ideal and lines
are not quite without reactance. A loop with reactance is smaller than the sum of its parts' sizes
that we take: there ours is never the larger fault current, which is the safe side.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ampwright.standards.wiring import fault, prospective

from .grid import BETWEEN_THREE, BETWEEN_TWO, LEAST, MOST, TO_EARTH, U0, Leg
from .grid import fault as shorted

PART = 1e-4
often = settings(max_examples=60, deadline=None)
metres = st.floats(1.0, 80.0)
line_r = st.sampled_from([4.61, 3.08, 1.83, 1.15])
earth_r = st.sampled_from([12.1, 7.41, 4.61, 3.08])
ze = st.floats(0.02, 0.8)


def circuit(outside, r1, r2, length):
    """The loop outside, half in the line and half in the return, then the circuit."""
    return [Leg(outside / 2, outside / 2), Leg(r1 * length / 1000, r2 * length / 1000)]


@often
@given(ze, line_r, earth_r, metres)
def test_a_fault_to_earth_draws_what_the_loop_lets_it(outside, r1, r2, length):
    loop = fault.loop(outside, fault.line_and_earth(r1, r2, length))
    theirs = shorted(circuit(outside, r1, r2, length), TO_EARTH, scaling=LEAST)
    assert fault.fault_current(0.95 * U0, loop) == pytest.approx(theirs, rel=PART)


@often
@given(
    st.sampled_from([5.0, 10.0, 20.0]), st.sampled_from([6.0, 16.0, 20.0, 32.0, 40.0, 50.0, 63.0])
)
def test_at_the_largest_loop_the_least_fault_current_just_opens_the_breaker(m, rating):
    limit = fault.breaker_loop_limit(0.95, U0, m, rating)
    theirs = shorted([Leg(limit / 2, limit / 2)], TO_EARTH, scaling=LEAST)
    assert theirs == pytest.approx(m * rating, rel=PART)


@often
@given(ze, line_r, st.sampled_from([12.1, 7.41]), metres, st.floats(0.05, 1.0))
def test_two_earths_side_by_side(outside, r1, r2, length, beside):
    core = fault.conductor_resistance(r2, length)
    both = fault.paths_together(core, beside)
    loop = fault.loop(outside, fault.conductor_resistance(r1, length) + both)
    legs = [Leg(outside / 2, outside / 2), Leg(r1 * length / 1000, 1 / (1 / core + 1 / beside))]
    assert fault.fault_current(0.95 * U0, loop) == pytest.approx(
        shorted(legs, TO_EARTH, scaling=LEAST), rel=PART
    )


@often
@given(ze)
def test_the_largest_current_of_one_phase_and_of_three(outside):
    legs = [Leg(outside / 2, outside / 2)]
    one = prospective.prospective_fault(1.1, U0, outside)
    three = prospective.prospective_three_phase(1.1, 3**0.5 * U0, outside / 2)
    assert 1000 * one == pytest.approx(shorted(legs, TO_EARTH, scaling=MOST), rel=PART)
    assert 1000 * three == pytest.approx(shorted(legs, BETWEEN_THREE, scaling=MOST), rel=PART)


@often
@given(ze, st.floats(0.0, 1.0))
def test_doubling_the_single_phase_current_is_never_too_low(outside, share):
    """The line is at most half of its loop with the neutral: a neutral is no larger than a line.

    Three phases are the worst of the faults between lines.
    """
    line = outside / 2 * (1 + share)
    legs = [Leg(line, outside - line)]
    one = prospective.prospective_fault(1.0, U0, outside)
    guessed = prospective.three_phase_from_single(one, 2.0) * 1.1 * 1000
    theirs = shorted(legs, BETWEEN_THREE, scaling=MOST)
    assert theirs <= guessed * (1 + PART)
    assert shorted(legs, BETWEEN_TWO, scaling=MOST) <= theirs * (1 + PART)


@often
@given(st.floats(0.02, 0.4), st.floats(0.001, 0.3), line_r, earth_r, metres)
def test_sizes_added_as_if_all_were_resistance_err_on_the_safe_side(r, x, r1, r2, length):
    outside = complex(r, x)
    legs = [Leg(outside / 2, outside / 2), Leg(r1 * length / 1000, r2 * length / 1000)]
    loop = fault.loop(abs(outside), fault.line_and_earth(r1, r2, length))
    assert fault.fault_current(0.95 * U0, loop) <= shorted(legs, TO_EARTH, scaling=LEAST) * (
        1 + PART
    )


@often
@given(ze, line_r, earth_r, metres, metres)
def test_a_longer_circuit_never_raises_the_fault_current(outside, r1, r2, length, more):
    near = shorted(circuit(outside, r1, r2, length), TO_EARTH, scaling=LEAST)
    far = shorted(circuit(outside, r1, r2, length + more), TO_EARTH, scaling=LEAST)
    assert far < near
    assert fault.line_and_earth(r1, r2, length + more) > fault.line_and_earth(r1, r2, length)
