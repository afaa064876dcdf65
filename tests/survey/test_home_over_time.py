"""A home outlives its jobs: what was left is found next time; what is planned stays a plan."""

from __future__ import annotations

from datetime import date

from ampwright.foundations.answers import CannotSay, Is, OneOf
from ampwright.foundations.source import Evidence
from ampwright.survey.folding import as_found, as_left, as_planned
from ampwright.survey.records import Moment, Record
from ampwright.survey.states import states
from ampwright.survey.upkeep import aged, of_the_building, short_of

from .saying import say, stated

BOND, FUSE = "services.water.bond_mm2", "supply.main_fuse_a"
FOUND = say(BOND, 0.0, "seen", job="j1")
PLAN = say(BOND, 10.0, "told", job="j1", moment=Moment.PLANNED)
LEFT = say(BOND, 10.0, "measured", job="j1", moment=Moment.LEFT)


def test_a_plan_is_seen_only_by_its_job():
    rows = [FOUND, PLAN]
    assert as_found(rows).at(BOND).answer == Is(0.0)
    assert as_planned(rows, "j1").at(BOND).answer == Is(10.0)
    assert as_planned(rows, "j2").at(BOND).answer == Is(0.0)


def test_what_a_closed_job_left_is_what_the_next_finds():
    rows = [FOUND, PLAN, LEFT]
    assert as_found(rows).at(BOND).answer == Is(0.0)
    assert as_found(rows, ["j1"]).at(BOND).answer == Is(10.0)
    assert as_left(rows, "j1").at(BOND).answer == Is(10.0)
    assert as_left([FOUND, PLAN], "j1").at(BOND).answer is None


def test_the_next_survey_speaks_beside_what_was_left():
    later = say(BOND, 6.0, "told", job="j2")
    here = as_found([FOUND, LEFT, later], ["j1"]).at(BOND)
    assert here.answer == Is(10.0)
    assert here.overruled == (later,)
    cut = say(BOND, 0.0, "told", job="j2", since=(LEFT.id,))
    assert as_found([FOUND, LEFT, cut], ["j1"]).at(BOND).answer == Is(0.0)


def test_jobs_count_in_the_order_of_the_work():
    second = say(BOND, 16.0, "measured", job="j2", moment=Moment.LEFT)
    rows = [FOUND, LEFT, second]
    assert as_found(rows, ["j1", "j2"]).at(BOND).answer == Is(16.0)
    assert as_found(rows, ["j2", "j1"]).at(BOND).answer == Is(10.0)


def test_a_withdrawn_leaving_leaves_what_was_found():
    undo = Record(home="cot", key=BOND, answer=None, withdraws=(LEFT.id,), job="j2")
    assert as_found([FOUND, LEFT, undo], ["j1"]).at(BOND).answer == Is(0.0)


def test_two_names_for_one_thing_become_one():
    rows = [
        say("loads.hob-4f.amps_a", 32.0),
        say("loads.oven-9k.amps_a", 30.0, "seen"),
        say("loads.hob-4f.same_as", "oven-9k"),
        say("legs.a.to_place", "p-1"),
        say("places.p-1.same_as", "p-2"),
        say("places.p-2.on", "wall"),
        say("legs.a.from_place", OneOf(("meter", "p-1", "p-2"))),
        say("legs.b.from_place", OneOf(("p-1", "p-2"))),
        say("legs.b.to_place", CannotSay("two doors")),
        say("boards.b-1.same_as", "main"),
        say("boards.b-1.circuits.c.device", "d-1"),
        say("boards.b-1.devices.d-1.same_as", "d-2"),
        say("loads.oven-9k.board", "b-1"),
        say("loads.kiln.same_as", "no such thing"),
        say("services.water.same_as", "drain"),
    ]
    home = as_found(rows)
    assert home.ids["loads"] == ("oven-9k",)
    assert home.at("loads.oven-9k.amps_a").answer == Is(30.0)
    assert home.at("loads.oven-9k.amps_a").overruled[0].key == "loads.hob-4f.amps_a"
    assert home.at("legs.a.to_place").answer == Is("p-2")
    assert home.at("legs.a.from_place").answer == OneOf(("meter", "p-2"))
    assert home.at("legs.b.from_place").answer == Is("p-2")
    assert home.at("loads.oven-9k.board").answer == Is("main")
    assert home.at("boards.main.circuits.c.device").answer == Is("d-2")
    assert as_found(reversed(rows)).facts == home.facts


def test_names_that_go_in_a_circle_keep_the_first():
    rows = [
        say("loads.b.same_as", "a"),
        say("loads.a.same_as", "b"),
        say("loads.b.amps_a", 3.0),
    ]
    assert as_found(rows).ids["loads"] == ("a",)


def test_gates_ask_for_evidence_and_leave_out_what_is_absent():
    known = stated(
        say(FUSE, 80.0),
        say("supply.earthing", "TN-C-S", "seen"),
        say("services.oil.present", False),
        say("services.gas.bond_mm2", 10.0),
    )
    short = {each.key: each for each in short_of(known, "quote")}
    assert (short[FUSE].has, short[FUSE].needs) == (Evidence.TOLD, Evidence.SEEN)
    assert short["supply.looped"].has is None
    assert "supply.earthing" not in short
    assert "services.gas.bond_mm2" in short
    assert "services.oil.bond_mm2" not in short
    assert "services.lpg.bond_mm2" not in short
    assert short_of(known, "quote", ["supply.earthing"]) == ()


def test_some_facts_age_and_others_do_not():
    on = date(2026, 1, 1)
    known = stated(say("tariff.day_p", 26.1, on=on), say(FUSE, 80.0, on=on))
    assert not aged(known, date(2026, 4, 1))
    assert [each.key for each in aged(known, date(2026, 4, 2))] == ["tariff.day_p"]


def test_a_new_owner_gets_the_building_and_not_the_last_person():
    rows = [
        say("customer.name", "T"), say("cars.a.name", "hatchback"), say("cars.all_listed", True),
        say("wishes.point_kw", 7.4), say("tariff.day_p", 26.1), say(FUSE, 80.0), FOUND,
    ]  # fmt: skip
    assert of_the_building(rows) == tuple(rows[-2:])


def test_states_follow_the_register():
    keys = list(states(as_found([FOUND])))
    assert keys.index("supply.phases") < keys.index("services.all_listed") < keys.index(BOND)
