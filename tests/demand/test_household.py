"""Maximum demand by the household table, against homes worked by hand."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ampwright.demand.household import household_demand
from ampwright.foundations.answers import Unanswered
from ampwright.foundations.working import orphans, working
from ampwright.survey.home_loads import LoadKind
from ampwright.tables.book import Book

from .homes import HALF_SPEED, PLAIN, SOUND, THREE_PHASE, WEAK_LINE, home_of, loads

BOOK = Book()


def now(facts, book=BOOK, **how):
    return household_demand(home_of(facts, **how), book).out.now_a


def one(*each):
    return {**SOUND, "supply.phases": 1, **loads(*each)}


class TestWorkedHomes:
    @pytest.mark.parametrize(
        ("facts", "answer"),
        [
            (PLAIN, (21.65,)),
            (HALF_SPEED, (37.88,)),
            (WEAK_LINE, (36.88,)),
            (THREE_PHASE, (33.64, 49.6, 16.98)),
            ({**THREE_PHASE, "loads.immersion.phase": "L3"}, (33.64, 36.6, 29.98)),
        ],
        ids=["plain", "half speed", "weak line", "three phase", "immersion moved"],
    )
    def test_demand_of_each_line(self, facts, answer):
        assert now(facts) == pytest.approx(answer, abs=0.005)

    def test_a_shower_found_later_is_added_in_full(self):
        # Worked home 21: an 8.5 kW shower, 37.0 A at 230 V, makes up to 74.8 A before the car.
        facts = {**HALF_SPEED, **loads(("shower", "instant shower", 37.0))}
        assert now(facts) == pytest.approx((74.8,), abs=0.1)


class TestKinds:
    # Online electricians' handbook, Table 6.2, household column; heat pumps, tubs and batteries
    # in full are a cautious rule from memory.
    @pytest.mark.parametrize(
        ("each", "amps"),
        [
            ([("a", "lighting", 10.0)], 6.6),
            ([("a", "sockets", 20.0), ("b", "sockets", 32.0)], 40.0),
            ([("a", "cooking", 32.0)], 16.6),
            ([("a", "cooking", 8.0)], 8.0),
            ([("a", "cooking", 32.0), ("b", "cooking", 32.0)], 33.2),
            ([("a", "instant shower", 40.0), ("b", "instant shower", 30.0),
              ("c", "instant shower", 20.0)], 75.0),
            ([("a", "room heating", 6.0), ("b", "room heating", 8.0)], 12.0),
            ([("a", "heat pump", 16.0), ("b", "hot tub", 13.0)], 29.0),
            ([("a", "battery charging", 16.0), ("b", "charge point", 32.0)], 48.0),
            ([("a", "storage heating", 30.0), ("b", "floor heating", 5.0),
              ("c", "stored hot water", 13.0), ("d", "motor", 5.0)], 53.0),
            ([], 0.0),
        ],
    )  # fmt: skip
    def test_counted(self, each, amps):
        assert now(one(*each)) == pytest.approx((amps,))

    def test_a_socket_on_the_cooker_switch_adds_five(self):
        # A listed cottage with an electric range of 32 A on a switch with a socket.
        facts = {**one(("range", "cooking", 32.0)), "loads.range.socket_on_switch": True}
        assert now(facts) == pytest.approx((21.6,))

    @pytest.mark.parametrize("kind", LoadKind.__args__)
    def test_every_kind_the_survey_knows_is_counted(self, kind):
        assert 0 < now(one(("a", kind, 12.0)))[0] <= 12.0


class TestLines:
    def test_a_home_on_one_line_is_not_asked_which_line(self):
        assert not any(key.endswith(".phase") for key in PLAIN)
        assert now(PLAIN)

    def test_a_home_on_three_lines_is(self):
        facts = {key: v for key, v in THREE_PHASE.items() if key != "loads.hob.phase"}
        with pytest.raises(Unanswered, match=r"loads\.hob\.phase"):
            now(facts)

    def test_a_load_on_all_lines_counts_on_each(self):
        more = {
            "loads.pump.present": True, "loads.pump.kind": "heat pump",
            "loads.pump.amps_a": 9.0, "loads.pump.phase": "all",
        }  # fmt: skip
        assert now({**THREE_PHASE, **more}) == pytest.approx((42.64, 58.6, 25.98))

    def test_sockets_on_another_line_are_not_pooled(self):
        facts = {
            **SOUND, "supply.phases": 3,
            **loads(("a", "sockets", 20.0, "L1"), ("b", "sockets", 20.0, "L2")),
        }  # fmt: skip
        assert now(facts) == pytest.approx((20.0, 20.0, 0.0))


class TestCertainty:
    @pytest.mark.parametrize("said", [False, None])
    def test_no_total_while_the_list_may_be_short(self, said):
        facts = {key: v for key, v in PLAIN.items() if key != "loads.all_listed"}
        if said is not None:
            facts["loads.all_listed"] = said
        with pytest.raises(Unanswered, match=r"loads\.all_listed"):
            now(facts)

    def test_what_is_gone_does_not_count(self):
        assert now({**PLAIN, "loads.boiler.present": False}) == pytest.approx((20.65,))

    def test_solar_and_battery_are_not_read(self):
        assert now({**PLAIN, "sources.all_listed": True, "sources.sun.amps_a": 16.0}) == now(PLAIN)


class TestWorking:
    @pytest.mark.parametrize("facts", [PLAIN, HALF_SPEED, WEAK_LINE, THREE_PHASE])
    def test_documented_agrees_and_every_number_has_a_source(self, facts):
        made = household_demand(home_of(facts, documented=True), BOOK.documented()).out
        assert made.now_a == now(facts)
        assert not orphans(made.now_a)

    def test_even_nothing_has_a_source(self):
        facts = {**SOUND, "supply.phases": 1, **loads()}
        made = household_demand(home_of(facts, documented=True), BOOK.documented()).out
        assert "no load is listed on this line" in str(next(working(made.now_a)))

    def test_items_name_their_loads(self):
        (items,) = household_demand(home_of(PLAIN), BOOK).out.items
        counted = {each.loads: each.counted_a for each in items}
        assert counted == {
            ("boiler",): 1.0,
            ("kitchen-sockets", "other-sockets"): 19.0,
            ("lighting",): pytest.approx(1.65),
        }


kinds = st.sampled_from(LoadKind.__args__)
amps = st.floats(0.1, 60.0)


@settings(max_examples=60)
@given(st.lists(st.tuples(kinds, amps), max_size=6), kinds, amps)
def test_one_load_more_never_lowers_the_demand_and_never_counts_for_more_than_it_draws(
    there, kind, more
):
    listed = [(f"x{i}", *each) for i, each in enumerate(there)]
    before = now(one(*listed))[0]
    after = now(one(*listed, ("more", kind, more)))[0]
    assert before - 1e-9 <= after <= before + more + 1e-9
