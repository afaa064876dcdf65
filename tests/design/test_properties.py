"""Laws that hold for any run of cable."""

from __future__ import annotations

from typing import get_args

from hypothesis import given
from hypothesis import strategies as st

from ampwright.design.circuit.capacity import leg_capacity
from ampwright.design.circuit.methods import HOW_READ, Lay
from ampwright.design.circuit.voltage import volts_at_point
from ampwright.design.route import LegRun, route
from ampwright.firm.catalogue import Detection
from ampwright.survey.home_legs import LegHow
from ampwright.tables.book import Book
from ampwright.tables.capacity import CableFamily, sizes_of

from .homes import SEMI, basis, leg, plain
from .work import circuit, failed

BOOK = Book()
FAMILIES = (CableFamily.FLAT, CableFamily.SHEATHED, CableFamily.ARMOURED)
WAYS = get_args(LegHow)
lengths = st.floats(0.1, 150.0)
outdoors = st.sampled_from(["clipped outside", "trunking", "through wall", "tray"])


@st.composite
def runs(draw):
    how = draw(st.sampled_from(WAYS))
    return LegRun(
        "x", how, draw(lengths), draw(st.sampled_from([0.0, 40.0, 250.0, 5000.0])),
        None if how in ("buried", "duct") else draw(st.floats(0.0, 60.0)),
        draw(st.integers(0, 5)),
    )  # fmt: skip


@given(st.sampled_from(FAMILIES), runs())
def test_a_larger_size_never_carries_less(family, leg_run):
    carried = [
        leg_capacity(BOOK, family, 1, size, leg_run).capacity_a
        for size in sizes_of(family)
        if size >= 1.5
    ]
    assert carried == sorted(carried)


@given(st.sampled_from(FAMILIES), runs(), st.sampled_from([4.0, 6.0, 10.0]))
def test_more_neighbours_or_heat_never_help(family, leg_run, size):
    from dataclasses import replace

    here = leg_capacity(BOOK, family, 1, size, leg_run).capacity_a
    crowded = replace(leg_run, grouped_with=leg_run.grouped_with + 1)
    assert leg_capacity(BOOK, family, 1, size, crowded).capacity_a <= here
    if leg_run.ambient_c is not None:
        warmer = replace(leg_run, ambient_c=leg_run.ambient_c + 5)
        assert leg_capacity(BOOK, family, 1, size, warmer).capacity_a <= here


@given(st.sampled_from(FAMILIES), runs())
def test_insulation_never_helps(family, leg_run):
    from dataclasses import replace

    bare = replace(leg_run, insulation_mm=0.0)
    assert (
        leg_capacity(BOOK, family, 1, 6.0, leg_run).capacity_a
        <= leg_capacity(BOOK, family, 1, 6.0, bare).capacity_a
    )


@given(outdoors, lengths, lengths)
def test_a_longer_cable_never_raises_the_volts_at_the_point(how, one, other):
    volts = []
    for metres in sorted((one, other)):
        facts = {**SEMI, "legs": {"only": leg("meter", "window", metres, how)}}
        out, _, _ = circuit(facts, "meter", "window")
        made = volts_at_point(plain(facts), basis(), Detection.VOLTS_WINDOW, 230.0, 240.0, True,
                              True, out.drop_to_neutral_v)  # fmt: skip
        volts.append((out.size_mm2, made.out.lowest_v))
    (short, high), (long, low) = volts
    # a longer run may take a larger cable and so lose less; at one size it never does
    assert low <= high if short == long else long > short


@given(outdoors, lengths, st.sampled_from([6.0, 10.0, 16.0, 20.0, 25.0, 32.0]))
def test_the_size_chosen_is_the_least_that_holds(how, metres, setting_a):
    facts = {**SEMI, "legs": {"only": leg("meter", "window", metres, how)}}
    out, device, checks = circuit(facts, "meter", "window", setting_a=setting_a, point="earth-lead")
    if not failed(checks):
        assert out.drop_share <= 0.05
        assert out.capacity_a >= device.rating_a >= setting_a
        assert out.zs_ohm <= out.zs_limit_ohm
    if out.size_mm2 > 6.0:
        at_six_v = 7.9 * setting_a * metres / 1000  # 4E2B, 6 mm²
        assert at_six_v > 11.5


@given(st.lists(st.tuples(st.sampled_from("abcd"), st.sampled_from("abcd"), lengths), max_size=7))
def test_no_way_is_shorter_than_the_one_taken(stretches):
    legs = {f"l{i}": leg(a, b, m, "clipped inside") for i, (a, b, m) in enumerate(stretches)}
    made = route(plain({"legs": legs}), basis(), "a", "d")
    best = {"a": 0.0}
    for _ in stretches:
        for start, end, metres in stretches:
            for here, there in ((start, end), (end, start)):
                if here in best:
                    best[there] = min(best.get(there, 1e9), best[here] + metres)
    if "d" in best:
        assert abs(made.out.length_m - best["d"]) < 1e-9
    else:
        assert made.out.legs == ()


def test_flat_cable_never_carries_more_than_clipped():
    for how in WAYS:
        for insulated in (False, True):
            read = HOW_READ.decide(Lay(CableFamily.FLAT, how, insulated)).outcome
            if read.method:
                assert read.method in ("A", "C", "100", "101", "102", "103")
