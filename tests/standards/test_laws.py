"""What must hold of the clauses whatever the numbers: inverses, directions, nothing for nothing."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ampwright.standards import diversity
from ampwright.standards.charging import pilot
from ampwright.standards.wiring import earthing, electrode, fault, overload, rcd, voltage_drop

some = st.floats(0.5, 200.0)
share = st.floats(0.3, 1.1)
loads = st.lists(st.floats(0.0, 60.0), min_size=1, max_size=6).map(tuple)


@given(some, share, share, share)
def test_a_cable_of_the_tabulated_current_needed_carries_its_device(In, Ca, Cg, Ci):
    needed = overload.tabulated_needed(In, Ca, Cg, Ci)
    assert overload.corrected_capacity(needed, Ca, Cg, Ci) == pytest.approx(In)


@given(some, some, some)
def test_the_longest_run_loses_what_it_may(dU, mv, Ib):
    assert voltage_drop.drop(mv, Ib, voltage_drop.longest_run(dU, mv, Ib)) == pytest.approx(dU)


@given(st.floats(-10.0, 90.0))
def test_bringing_a_reading_to_the_reference_and_back_changes_nothing(t):
    there = fault.temperature_multiplier(t, 20.0, 0.004)
    assert there * fault.reference_factor(t, 20.0, 0.004) == pytest.approx(1.0)


@given(some, st.floats(0.01, 5.0), st.sampled_from([46.0, 115.0, 143.0]))
def test_the_least_size_reaches_its_limit_in_the_time_of_the_fault(If, t, k):
    size = fault.adiabatic_size(fault.fault_energy(If, t), k)
    assert fault.adiabatic_time(k, size, If) == pytest.approx(t)


@given(st.floats(207.0, 253.0), st.floats(0.01, 5.0))
def test_a_loop_and_its_fault_current_are_one_thing(U0, Zs):
    assert fault.loop_of_fault_current(U0, fault.fault_current(U0, Zs)) == pytest.approx(Zs)


@given(st.floats(0.005, 0.5))
def test_the_largest_electrode_just_reaches_the_touch_voltage(Idn):
    assert earthing.rod_times_rcd(rcd.electrode_limit(50.0, Idn), Idn) == pytest.approx(50.0)


@given(st.floats(6.0, 51.0))
def test_a_pilot_offers_what_it_was_asked_to(I):
    assert pilot.pilot_current(pilot.pilot_duty(I, 60.0), 60.0) == pytest.approx(I)


@given(loads, st.floats(0.0, 1.0))
def test_no_allowance_counts_more_than_is_there_or_less_than_the_largest(I, s):
    whole = sum(I)
    for counted in (diversity.sockets(I, s), diversity.showers(I, s)):
        assert max(I) - 1e-9 <= counted <= whole + 1e-9
    for counted in (
        diversity.above_first(whole, 10.0, s),
        diversity.cooking(whole, 10.0, s, 0.0),
    ):
        assert min(whole, 10.0) - 1e-9 <= counted <= whole + 1e-9


@given(loads, st.floats(0.0, 60.0), st.floats(0.0, 1.0))
def test_one_more_load_never_lowers_the_demand(I, more, s):
    assert diversity.sockets((*I, more), s) >= diversity.sockets(I, s) - 1e-9
    assert diversity.showers((*I, more), s) >= diversity.showers(I, s) - 1e-9


@given(loads)
def test_the_order_of_the_loads_does_not_matter(I):
    turned = I[::-1]
    assert diversity.sockets(turned, 0.4) == pytest.approx(diversity.sockets(I, 0.4))
    assert diversity.showers(turned, 0.25) == pytest.approx(diversity.showers(I, 0.25))


@given(st.floats(5.0, 500.0), st.floats(0.5, 10.0), st.floats(0.008, 0.03), st.integers(2, 5))
def test_more_rods_are_never_worse_than_one_and_never_better_than_apart(rho, L, d, n):
    one = electrode.rod_resistance(rho, L, d)
    near = electrode.rod_spacing(rho, one, L)
    together = electrode.rods_together(one, 1.0, near, n)
    assert one / n <= together <= one
