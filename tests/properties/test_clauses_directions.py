"""Which way the clauses and tables go: longer, thicker, hotter and fuller, whatever the numbers.

A direction is a law of nature (IEC 60287 for warmth and grouping, Ohm's law for length and size);
a table or a clause that broke one would be misread or miswritten.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ampwright.standards import diversity
from ampwright.standards.wiring import (
    electrode,
    fault,
    open_pen,
    overload,
    prospective,
    rcd,
    sources,
    voltage_drop,
)
from ampwright.tables import factors
from ampwright.tables.book import Book
from ampwright.tables.capacity import (
    CableFamily,
    full_temperature_capacity,
    methods_of,
    sizes_of,
    tabulated_capacity,
)
from ampwright.tables.conductors import (
    day_multiplier,
    earth_core_mm2,
    resistance_20,
    temperature_multiplier,
)
from ampwright.tables.voltage_drop import drop_mv

BOOK = Book()
HAIR = 1e-9
amps = st.floats(1.0, 100.0)
metres = st.floats(0.5, 200.0)
more = st.floats(0.01, 100.0)
ohms = st.floats(0.01, 2.0)
mv = st.floats(0.5, 50.0)
share = st.floats(0.3, 1.0)
phases = st.tuples(amps, amps, amps)
WITH_CORE = (CableFamily.FLAT, CableFamily.SHEATHED, CableFamily.ARMOURED)
BURIED = "D"


@st.composite
def cables(draw, families=tuple(CableFamily)):
    """A cable, a way of running it and the next size up."""
    family = draw(st.sampled_from(families))
    sizes = [size for size in sizes_of(family) if size in _core_sizes(family)]
    spot = draw(st.integers(0, len(sizes) - 2))
    return family, draw(st.sampled_from(methods_of(family))), sizes[spot], sizes[spot + 1]


def _core_sizes(family):
    """Sizes that every table of the family has; those of earth cores end sooner."""
    if family not in WITH_CORE:
        return sizes_of(family)
    listed = {
        row.keys[1] for row in BOOK.rows("conductors/earth_cores") if row.keys[0] == family.value
    }
    return tuple(size for size in sizes_of(family) if size in listed)


# --- longer ------------------------------------------------------------------------------------


@given(mv, amps, metres, more, st.floats(207.0, 253.0))
def test_longer_never_raises_the_voltage(mv, Ib, L, more, U):
    near = voltage_drop.volts_after(U, voltage_drop.drop(mv, Ib, L))
    far = voltage_drop.volts_after(U, voltage_drop.drop(mv, Ib, L + more))
    assert far <= near


@given(mv, mv, amps, metres, more, st.floats(0.6, 1.0))
def test_longer_never_loses_less_at_any_angle(r, x, Ib, L, more, cosphi):
    sinphi = (1 - cosphi**2) ** 0.5
    lost = [
        voltage_drop.drop_at_angle(1.0, cosphi, sinphi, r, x, Ib, each) for each in (L, L + more)
    ]
    assert lost[0] <= lost[1]


@given(st.floats(1.0, 20.0), st.floats(1.0, 20.0), metres, more, ohms)
def test_longer_never_lowers_the_loop_nor_raises_the_fault_current(r1, r2, L, more, Ze):
    near, far = (fault.loop(Ze, fault.line_and_earth(r1, r2, length)) for length in (L, L + more))
    assert far >= near
    assert fault.fault_current(230.0, far) <= fault.fault_current(230.0, near)
    assert prospective.prospective_fault(1.1, 230.0, far) <= prospective.prospective_fault(
        1.1, 230.0, near
    )


@given(st.lists(st.floats(0.0, 20.0), min_size=1, max_size=5), st.floats(0.0, 20.0))
def test_one_more_cable_on_the_way_never_loses_less(parts, another):
    assert voltage_drop.drop_in_all((*parts, another)) >= voltage_drop.drop_in_all(tuple(parts))


# --- thicker -----------------------------------------------------------------------------------


@given(cables(), st.sampled_from([2, 3]), share, share, share)
def test_thicker_never_carries_less(cable, loaded, Ca, Cg, Ci):
    family, method, thin, thick = cable
    loaded = 2 if family is CableFamily.FLAT else loaded
    small, large = (
        overload.corrected_capacity(
            tabulated_capacity(BOOK, family, method, loaded, size), Ca, Cg, Ci
        )
        for size in (thin, thick)
    )
    assert large >= small


@given(cables(WITH_CORE), metres, ohms, st.sampled_from([1.2, 1.28]))
def test_thicker_never_raises_the_loop(cable, L, Ze, Ct):
    family, _, thin, thick = cable
    loops = []
    for size in (thin, thick):
        line = fault.resistance_hot(resistance_20(BOOK, size), Ct)
        earth = fault.resistance_hot(resistance_20(BOOK, earth_core_mm2(BOOK, family, size)), Ct)
        loops.append(fault.loop(Ze, fault.line_and_earth(line, earth, L)))
    assert loops[1] <= loops[0]


@given(cables(), st.sampled_from([1, 3]), amps, metres)
def test_thicker_never_loses_more_volts(cable, phases, Ib, L):
    family, _, thin, thick = cable
    phases = 1 if family is CableFamily.FLAT else phases
    lost = [voltage_drop.drop(drop_mv(BOOK, family, phases, size), Ib, L) for size in (thin, thick)]
    assert lost[1] <= lost[0]


@given(cables(tuple(f for f in CableFamily if f not in (CableFamily.FLAT, CableFamily.SINGLES))))
def test_hotter_insulation_never_carries_less(cable):
    family, method, size, _ = cable
    for loaded in (2, 3):
        cool = tabulated_capacity(BOOK, family, method, loaded, size)
        assert full_temperature_capacity(BOOK, family, method, loaded, size) >= cool


@given(st.floats(1.0, 1e5), st.floats(1.0, 1e5), st.sampled_from([46.0, 115.0, 143.0]))
def test_more_energy_never_asks_for_a_thinner_conductor(energy, more, k):
    assert fault.adiabatic_size(energy + more, k) >= fault.adiabatic_size(energy, k)


@given(ohms, ohms)
def test_a_second_path_never_raises_the_resistance(Ra, Rb):
    assert fault.paths_together(Ra, Rb) <= min(Ra, Rb)


# --- fuller ------------------------------------------------------------------------------------


@given(st.sampled_from(factors.grouping_ways()), st.integers(1, 19), st.integers(1, 19), amps)
def test_more_cables_together_never_carry_more(how, fewer, extra, It):
    end = max(row.keys[1] for row in BOOK.rows("factors/grouping_air", how=how))
    fewer, many = min(end, fewer), min(end, fewer + extra)
    alone, grouped = (
        overload.corrected_capacity(It, 1.0, factors.grouping_factor(BOOK, how, count), 1.0)
        for count in (fewer, many)
    )
    assert grouped <= alone


@pytest.mark.parametrize("ducts", [False, True], ids=["direct", "ducts"])
def test_more_cables_together_in_the_ground_never_carry_more(ducts):
    name = "factors/grouping_ducts" if ducts else "factors/grouping_buried"
    for gap in BOOK.table(name).values_of("gap"):
        row = [factors.buried_grouping_factor(BOOK, gap, n, ducts) for n in range(1, 7)]
        carried = [overload.corrected_capacity_buried(60.0, 1.0, 1.0, 1.0, each) for each in row]
        assert carried == sorted(carried, reverse=True)


@given(st.floats(0.0, 500.0), st.floats(0.0, 500.0), amps)
def test_more_insulation_never_lets_a_cable_carry_more(length, extra, It):
    bare, wrapped = (
        overload.corrected_capacity(It, 1.0, 1.0, factors.insulation_factor(BOOK, each))
        for each in (length, length + extra)
    )
    assert wrapped <= bare


@given(st.lists(amps, min_size=1, max_size=6).map(tuple), amps, amps)
def test_more_load_never_lowers_the_demand(loads, another, point):
    assert diversity.total((*loads, another)) >= diversity.total(loads)
    before = diversity.with_point(diversity.total(loads), point)
    assert diversity.with_point(diversity.total((*loads, another)), point) >= before


@given(amps, st.lists(amps, max_size=4).map(tuple), amps)
def test_another_source_never_unloads_a_board(fuse, running, another):
    assert sources.current_from_all_sides(fuse, (*running, another)) >= (
        sources.current_from_all_sides(fuse, running)
    )


# --- hotter ------------------------------------------------------------------------------------


@given(st.sampled_from([70, 90]), st.floats(10.0, 60.0), st.floats(0.0, 20.0), amps)
def test_hotter_air_never_lets_a_cable_carry_more(insulation, air, warmer, It):
    hot = min(60.0, air + warmer)
    cool, warm = (
        overload.corrected_capacity(It, factors.ambient_factor(BOOK, insulation, each), 1.0, 1.0)
        for each in (air, hot)
    )
    assert warm <= cool


@given(st.sampled_from([70, 90]), st.floats(10.0, 40.0), st.floats(0.0, 20.0), amps)
def test_hotter_ground_never_lets_a_cable_carry_more(insulation, ground, warmer, It):
    hot = min(40.0, ground + warmer)
    cool, warm = (
        overload.corrected_capacity_buried(
            It, factors.ground_factor(BOOK, insulation, each), 1.0, 1.0, 1.0
        )
        for each in (ground, hot)
    )
    assert warm <= cool


@given(st.sampled_from(["duct", "direct"]), st.floats(0.5, 3.0), st.floats(0.0, 2.0), amps)
def test_drier_soil_never_lets_a_cable_carry_more(laid, soil, drier, It):
    dry = min(3.0, soil + drier)
    wet, parched = (
        overload.corrected_capacity_buried(It, 1.0, factors.soil_factor(BOOK, laid, each), 1.0, 1.0)
        for each in (soil, dry)
    )
    assert parched <= wet


@given(st.floats(5.0, 30.0), st.floats(0.0, 20.0), st.floats(0.1, 20.0))
def test_a_warmer_conductor_never_resists_less(t, warmer, r20):
    hot = min(30.0, t + warmer)
    cold_r, warm_r = (fault.resistance_hot(r20, day_multiplier(BOOK, each)) for each in (t, hot))
    assert warm_r >= cold_r - HAIR
    at_70, at_90 = (
        fault.resistance_hot(r20, temperature_multiplier(BOOK, each)) for each in (70.0, 90.0)
    )
    assert warm_r <= at_70 <= at_90


@given(amps, amps, st.floats(20.0, 200.0), st.floats(0.5, 1.0), st.floats(0.5, 1.0))
def test_a_cable_less_loaded_never_loses_a_larger_share(Ib, less, It, Ca, Cg):
    low, high = sorted((Ib, less))
    light, heavy = (
        voltage_drop.cooler_factor(230.0, 70.0, Ca, Cg, each, It, 30.0) for each in (low, high)
    )
    assert light <= heavy


# --- earths ------------------------------------------------------------------------------------


@given(phases, st.floats(0.5, 500.0), st.floats(0.1, 500.0))
def test_a_poorer_electrode_never_lowers_the_touch_voltage(loads, RA, worse):
    unbalance, total = open_pen.unbalance(*loads), sum(loads)
    good, poor = (
        open_pen.touch_voltage(1.1, 230.0, unbalance, total, open_pen.electrode_pull(230.0, each))
        for each in (RA, RA + worse)
    )
    assert poor >= good - HAIR


@given(st.floats(5.0, 500.0), st.floats(0.6, 5.0), st.floats(0.1, 5.0))
def test_a_longer_rod_or_tape_and_a_larger_plate_never_resist_more(rho, L, extra):
    assert electrode.rod_resistance(rho, L + extra, 0.016) < electrode.rod_resistance(rho, L, 0.016)
    assert electrode.tape_resistance(rho, L + 2 + extra, 1.36, 0.6, 0.025) < (
        electrode.tape_resistance(rho, L + 2, 1.36, 0.6, 0.025)
    )
    assert electrode.plate_resistance(rho, L + extra) < electrode.plate_resistance(rho, L)


@given(st.floats(0.005, 0.5), st.floats(0.001, 0.5))
def test_a_coarser_device_never_allows_a_poorer_electrode(Idn, coarser):
    assert rcd.electrode_limit(50.0, Idn + coarser) < rcd.electrode_limit(50.0, Idn)


# --- the names of the phases -------------------------------------------------------------------


@given(phases, ohms, ohms, st.permutations([0, 1, 2]))
def test_renaming_the_phases_renames_the_results(loads, line, neutral, order):
    def lost(of):
        return [
            voltage_drop.drop_on_phase(of[i], of[(i + 1) % 3], of[(i + 2) % 3], line, neutral)
            for i in range(3)
        ]

    turned = [loads[spot] for spot in order]
    assert lost(turned) == pytest.approx([lost(loads)[spot] for spot in order], abs=1e-9)
    assert open_pen.unbalance(*turned) == pytest.approx(open_pen.unbalance(*loads), abs=1e-9)
    assert diversity.total(tuple(turned)) == pytest.approx(diversity.total(loads))


@given(phases, ohms, ohms)
def test_what_an_even_load_loses_is_in_the_lines_alone(loads, line, neutral):
    even = voltage_drop.drop_on_phase(loads[0], loads[0], loads[0], line, neutral)
    assert even == pytest.approx(loads[0] * line)
