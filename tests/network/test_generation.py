"""Sources of a home: told of, asked about, or nothing; and the stricter of the two flows."""

from __future__ import annotations

from dataclasses import replace
from itertools import product

import pytest

from ampwright.demand.household import household_demand
from ampwright.foundations.answers import Unanswered
from ampwright.foundations.quantity import Amperes
from ampwright.foundations.working import orphans
from ampwright.network.generation import before_work, generation, stricter
from ampwright.standards.network.connection import Step
from ampwright.standards.network.generation import GenerationStep
from ampwright.supply.headroom import headroom
from ampwright.supply.sharing import Sharing

from ..demand.homes import PLAIN, SOUND, THREE_PHASE, car, home_of, loads
from ..supply.given_basis import BASIS, LEAD, THREE

TELL, ASK, STOP = Step.TELL_AFTER, Step.ASK_FIRST, Step.STOP
TWO_WAY = replace(LEAD, id="two-way", gives_back_a=Amperes(32.0))


def source(id_, amps, kind="solar", told=True, **more):
    said = {
        "present": True, "kind": kind, "amps_a": amps, "told_operator": told, "type_tested": True,
        "export_limited": False, **({"backs_up": "nothing"} if kind == "battery" else {}), **more,
    }  # fmt: skip
    return {f"sources.{id_}.{name}": value for name, value in said.items()}


def with_sources(*each, on=PLAIN, **supply):
    facts = {**on, "sources.all_listed": True}
    for one in each:
        facts |= one
    return facts | {f"supply.{name}": value for name, value in supply.items()}


def made(facts, point=LEAD):
    return generation(home_of(facts), BASIS, point)


def decided(facts, point=LEAD):
    return made(facts, point).out


# Worked home 3: ten panels and a battery, an inverter of 16 A each, on one line.
SUNNY = {
    **SOUND, "supply.phases": 1, "supply.main_fuse_a": 80.0, "supply.fault_current_ka": 1.45,
    **loads(
        ("lighting", "lighting", 2.0), ("kitchen-sockets", "sockets", 20.0),
        ("other-sockets", "sockets", 10.0), ("hob", "cooking", 44.0),
        ("battery", "battery charging", 16.0),
    ),
    **car(11.0, 3, 77.0, 9000.0),
}  # fmt: skip


def sunny(told):
    return with_sources(source("sun", 16.0), source("store", 16.0, "battery", told=told), on=SUNNY)


class TestWorkedHome:
    def test_demand_with_the_battery_in_full_and_nothing_taken_off_for_the_sun(self):
        now = household_demand(home_of(sunny(True)), BASIS.book).out.now_a
        assert now == pytest.approx((61.52,), abs=0.005)
        carried = headroom(
            home_of(sunny(True)), BASIS, now, Amperes(80.0), LEAD, Amperes(32.0), False,
            Sharing((), (Amperes(0.0),)), (),
        )  # fmt: skip
        assert carried.out.with_point_a == pytest.approx((93.52,), abs=0.005)

    def test_sources_together_are_32_a_and_not_of_the_small_class(self):
        out = decided(sunny(False))
        assert out.line_a == (32.0,)
        assert out.total_kw == pytest.approx(7.36)
        assert (out.outcome, out.step) == (ASK, GenerationStep.ASK_SIMPLE)
        assert out.untold == ("store",)

    def test_with_a_letter_for_each_nothing_more_is_asked(self):
        out = decided(sunny(True))
        assert (out.outcome, out.step, out.row) == (TELL, GenerationStep.NOTHING, 0)
        assert out.line_a == (32.0,)

    def test_the_missing_letter_is_told(self):
        (letter,) = made(sunny(False)).notes
        assert "find the letter for store" in letter.caution


class TestClasses:
    # Operators' pages on G98 and G99: up to 16 A a phase and type tested, tell within 28 days of
    # commissioning; 16 to 32 A held to 16 A, type tested and dead in a power cut, the fast track;
    # up to 17 kW on one phase and 50 kW on three, the simpler form; above, the whole application.
    @pytest.mark.parametrize(
        ("facts", "step"),
        [
            (source("sun", 16.0, told=False), GenerationStep.TELL_AFTER),
            (source("sun", 16.1, told=False), GenerationStep.ASK_SIMPLE),
            (source("sun", 16.0, told=False, type_tested=False), GenerationStep.ASK_FULL),
            (source("sun", 32.0, told=False, export_limited=True, export_limit_a=16.0),
             GenerationStep.ASK_FAST),
            (source("sun", 32.0, told=False, export_limited=True, export_limit_a=16.1),
             GenerationStep.ASK_SIMPLE),
            (source("sun", 32.0, told=False, export_limited=True), GenerationStep.ASK_SIMPLE),
            (source("sun", 32.1, told=False, export_limited=True, export_limit_a=16.0),
             GenerationStep.ASK_SIMPLE),
            (source("store", 32.0, "battery", told=False, export_limited=True,
                    export_limit_a=16.0, backs_up="a few circuits"), GenerationStep.ASK_SIMPLE),
            (source("sun", 73.9, told=False), GenerationStep.ASK_SIMPLE),
            (source("sun", 74.0, told=False), GenerationStep.ASK_FULL),
        ],
    )  # fmt: skip
    def test_step(self, facts, step):
        assert decided(with_sources(facts)).step is step

    @pytest.mark.parametrize(
        ("supply", "outcome"),
        [({"condition": "dangerous"}, STOP), ({"looped": True}, ASK), ({"metered": False}, ASK),
         ({"fuse_label_readable": False}, ASK), ({"condition": "doubtful"}, ASK)],
    )  # fmt: skip
    def test_the_same_gate_as_for_demand(self, supply, outcome):
        assert decided(with_sources(source("sun", 10.0, told=False), **supply)).outcome is outcome

    def test_every_source_counts_once_one_was_not_told_of(self):
        out = decided(with_sources(source("sun", 10.0), source("store", 10.0, told=False)))
        assert (out.step, out.line_a) == (GenerationStep.ASK_SIMPLE, (20.0,))

    def test_what_is_not_needed_is_not_asked(self):
        facts = with_sources(source("sun", 16.0))
        for name in ("type_tested", "export_limited"):
            del facts[f"sources.sun.{name}"]
        assert decided(facts).step is GenerationStep.NOTHING


class TestNothing:
    def test_has_nothing_to_say_where_nothing_can_feed_the_network(self):
        made_of = made(with_sources())
        assert (made_of.out.outcome, made_of.out.step) == (TELL, GenerationStep.NOTHING)
        assert made_of.notes == ()

    def test_is_not_certain_while_the_list_may_be_short(self):
        with pytest.raises(Unanswered, match=r"sources\.all_listed"):
            decided(PLAIN)


class TestLines:
    def test_each_line_has_its_own_and_the_worst_decides(self):
        facts = with_sources(
            source("sun", 16.0, told=False, phase="all"),
            source("store", 5.0, "battery", phase="L2"), on=THREE_PHASE,
        )  # fmt: skip
        out = decided(facts, THREE)
        assert out.line_a == (16.0, 21.0, 16.0)
        assert out.total_kw == pytest.approx(53 * 0.23)
        assert out.outcome is ASK

    def test_sixteen_on_each_of_three_is_the_small_class(self):
        facts = with_sources(source("sun", 16.0, told=False, phase="all"), on=THREE_PHASE)
        assert decided(facts, THREE).step is GenerationStep.TELL_AFTER


class TestGivingBack:
    def test_a_point_that_gives_back_is_a_source_of_its_own(self):
        out = decided(with_sources(), TWO_WAY)
        assert (out.line_a, out.outcome) == ((32.0,), ASK)

    def test_beside_sources_that_were_told_of_all_are_counted(self):
        out = decided(with_sources(source("sun", 16.0)), TWO_WAY)
        assert (out.line_a, out.step) == ((48.0,), GenerationStep.ASK_SIMPLE)


def test_a_battery_that_charges_from_nothing_listed_is_asked_about():
    *_, uncounted = made(with_sources(source("store", 16.0, "battery"))).notes
    assert "list what it takes" in uncounted.caution


def test_sources_never_make_an_option_unsound():
    for told, kind in product((True, False), ("solar", "battery")):
        assert made(with_sources(source("s", 40.0, kind, told=told))).checks == ()


@pytest.mark.parametrize(("one", "other"), tuple(product(Step, Step)))
def test_the_stricter_of_two_flows_decides(one, other):
    both = stricter(one, other)
    assert both in (one, other)
    assert both is stricter(other, one)
    assert before_work(home_of({}), one, other).out is both
    waits = (TELL, ASK, Step.ASK_FIRST_SEVERAL, STOP)
    assert waits.index(both) == max(waits.index(one), waits.index(other))


def test_documented_agrees_and_every_number_has_a_source():
    facts = sunny(False)
    shown = generation(home_of(facts, documented=True), BASIS.documented(), LEAD).out
    plain = decided(facts)
    assert (shown.line_a, shown.total_kw, shown.step) == (plain.line_a, plain.total_kw, plain.step)
    assert not orphans((shown.line_a, shown.total_kw))
