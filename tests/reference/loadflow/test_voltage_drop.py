"""Volts lost along cables, ours against power-grid-model.

Agreement: 0.001 V where both say the same thing: resistive cable, unity power factor, loads of
fixed current. With reactance or a shared neutral our clauses take the drop along the voltage
and leave out what turns it; the library does not. What is left out is of the second order, at most
the square of the turning volts over twice the supply, which each such test states and reckons.
"""

from __future__ import annotations

from math import acos, sin, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from power_grid_model import LoadGenType

from ampwright.standards.wiring import laws, voltage_drop

from .grid import NO_OHM, U0, Leg, Load, flow

FIXED = LoadGenType.const_current
VOLTS = 0.001
often = settings(max_examples=60, deadline=None)
current = st.floats(1.0, 63.0)
metres = st.floats(1.0, 80.0)
resistance = st.sampled_from([12.1, 7.41, 4.61, 3.08, 1.83, 1.15])
"""Ω/km of 1.5 to 16 mm² at 20 °C, IEC 60228."""


def one_phase(amps, cos_phi=1.0):
    return Load((amps, 0.0, 0.0), cos_phi, FIXED)


def three_phase(amps):
    return Load((amps, amps, amps), 1.0, FIXED)


@often
@given(resistance, current, metres)
def test_a_single_phase_cable(r, amps, length):
    leg = Leg(r * length / 1000, r * length / 1000)
    theirs = U0 - abs(flow([leg], [one_phase(amps)]).volts[0])
    assert voltage_drop.drop(laws.drop_of_two_wires(r), amps, length) == pytest.approx(
        theirs, abs=VOLTS
    )


@often
@given(resistance, current, metres)
def test_a_three_phase_cable_evenly_loaded(r, amps, length):
    found = flow([Leg(r * length / 1000, r * length / 1000)], [three_phase(amps)]).volts
    between_lines = sqrt(3) * U0 - abs(found[0] - found[1])
    assert voltage_drop.drop(laws.drop_of_three_wires(r), amps, length) == pytest.approx(
        between_lines, abs=VOLTS
    )


@often
@given(current, current, st.floats(0.01, 0.6), resistance, metres)
def test_what_the_house_draws_lowers_the_volts_at_the_point(house, point, service, r, length):
    """The service carries both, the cable only the point's current."""
    legs = [Leg(service / 2, service / 2), Leg(r * length / 1000, r * length / 1000)]
    found = flow(legs, [one_phase(house), one_phase(point)])
    lost = voltage_drop.drop_in_all(
        (
            voltage_drop.source_drop(house + point, service),
            voltage_drop.drop(laws.drop_of_two_wires(r), point, length),
        )
    )
    assert voltage_drop.volts_after(U0, lost) == pytest.approx(abs(found.volts[0]), abs=VOLTS)


@often
@given(
    st.floats(0.1, 2.0), st.floats(0.1, 0.4), st.floats(0.7, 1.0), st.floats(1, 100), metres
)  # mV/A/m as tables print them for 25 mm² and up
def test_resistance_and_reactance_at_the_angle_of_the_load(mvr, mvx, cos_phi, amps, length):
    sin_phi = sin(acos(cos_phi))
    ours = voltage_drop.drop_at_angle(1.0, cos_phi, sin_phi, mvr, mvx, amps, length)
    ohms = complex(mvr, mvx) * length / 1000
    theirs = U0 - abs(flow([Leg(ohms / 2, ohms / 2)], [one_phase(amps, cos_phi)]).volts[0])
    turning = amps * abs(ohms.imag * cos_phi - ohms.real * sin_phi)
    left_out = turning**2 / (2 * (U0 - ours - turning))
    assert abs(ours - theirs) <= left_out + VOLTS


@often
@given(st.tuples(current, current, current), st.floats(0.005, 0.2), st.floats(0.005, 0.2))
def test_three_phases_that_share_a_neutral(amps, line, neutral):
    """A lightly loaded phase may rise: both say so."""
    found = flow([Leg(line, neutral)], [Load(amps, 1.0, FIXED)])
    for phase in range(3):
        a, b, c = (amps[(phase + step) % 3] for step in range(3))
        ours = voltage_drop.drop_on_phase(a, b, c, line, neutral)
        theirs = U0 - abs(found.volts[phase])
        turning = sqrt(3) / 2 * abs(b - c) * neutral
        # fixed currents follow their own volts as these turn: again of the second order
        turned = 2 * (max(amps) * (line + 2 * neutral)) ** 2 / U0
        left_out = turning**2 / (2 * (U0 - abs(ours) - turning)) + turned
        assert abs(ours - theirs) <= left_out + VOLTS


@often
@given(resistance, current, metres, metres)
def test_a_longer_cable_never_raises_the_volts(r, amps, length, more):
    here = flow([Leg(r * length / 1000, r * length / 1000)], [one_phase(amps)])
    far = r * (length + more) / 1000
    there = flow([Leg(far, far)], [one_phase(amps)])
    assert abs(there.volts[0]) < abs(here.volts[0])
    mv = laws.drop_of_two_wires(r)
    assert voltage_drop.drop(mv, amps, length + more) > voltage_drop.drop(mv, amps, length)


def test_the_voltage_at_a_far_point_of_a_weak_service():
    """One case in full: 0.548 Ω of service (420 A prospective), 32 A through 25 m of 6 mm²."""
    r = 3.08 * 1.2
    legs = [Leg(0.274, 0.274), Leg(r * 0.025, r * 0.025)]
    found = flow(legs, [one_phase(NO_OHM), one_phase(32.0)])
    lost = voltage_drop.drop_in_all(
        (
            voltage_drop.source_drop(32.0, 0.548),
            voltage_drop.drop(laws.drop_of_two_wires(r), 32.0, 25.0),
        )
    )
    assert lost == pytest.approx(17.536 + 5.9136)
    assert abs(found.volts[0]) == pytest.approx(230.0 - lost, abs=VOLTS)
