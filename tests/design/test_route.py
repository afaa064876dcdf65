from __future__ import annotations

import pytest

from ampwright.design.route import paced, route, ways_between
from ampwright.foundations.answers import Unanswered

from .homes import COTTAGE, SEMI, basis, changed, leg, plain, without


def test_walks_legs_in_either_direction():
    made = route(plain(SEMI), basis(), "window", "main")
    assert [each.id for each in made.out.legs] == ["hole", "plaster"]
    assert made.out.length_m == 8.0
    assert made.checks[0].outcome.value == "pass"


def test_takes_the_way_with_the_fewest_metres():
    facts = {**SEMI, "legs": {**SEMI["legs"], "long": leg("main", "window", 9.0, "loft void")}}
    assert len(route(plain(facts), basis(), "main", "window").out.legs) == 2
    short = changed(facts, legs__long__length_m=7.5)
    assert [each.id for each in route(plain(short), basis(), "main", "window").out.legs] == ["long"]


def test_from_each_tap_its_own_way():
    home = plain(COTTAGE)
    assert [each.id for each in route(home, basis(), "meter", "gate").out.legs] == [
        "porch",
        "garden",
    ]
    assert [each.id for each in route(home, basis(), "main", "gate").out.legs] == [
        "from-board",
        "garden",
    ]


def test_a_way_nobody_paced_cannot_be_said_yet():
    facts = changed(SEMI) | {"legs.all_listed": False}
    made = route(plain(facts), basis(), "meter", "window")
    (check,) = made.checks
    assert check.outcome.value == "undetermined"
    assert "from meter to window" in check.why
    assert made.out.legs == ()
    with pytest.raises(Unanswered, match=r"legs\.all_listed"):
        paced(made.out)


def test_a_whole_list_that_leads_nowhere_rules_the_tap_out():
    (check,) = route(plain(SEMI), basis(), "meter", "window").checks
    assert check.outcome.value == "fail"
    assert "pace one" in check.why


def test_a_leg_that_is_gone_leads_nowhere():
    made = route(plain(changed(SEMI, legs__hole__present=False)), basis(), "main", "window")
    assert made.out.legs == ()


def test_facts_of_legs_off_the_way_are_not_read():
    aside = {"from_place": "main", "to_place": "loft"}
    facts = {**SEMI, "legs": {**SEMI["legs"], "aside": aside}}
    assert route(plain(facts), basis(), "main", "window").out.length_m == 8.0


@pytest.mark.parametrize("key", ["grouped_with", "length_m", "ambient_c", "how"])
def test_what_the_way_needs_is_asked(key):
    with pytest.raises(Unanswered, match=f"legs.plaster.{key}"):
        route(plain(without(SEMI, f"legs.plaster.{key}")), basis(), "main", "window")


def test_nobody_is_asked_how_much_insulation_lies_on_a_bare_wall():
    facts = without(SEMI, "legs.plaster.insulation_mm")
    assert route(plain(facts), basis(), "main", "window").out.legs[0].insulation_mm is None
    with pytest.raises(Unanswered, match=r"legs\.hole\.insulation_mm"):
        route(plain(without(SEMI, "legs.hole.insulation_mm")), basis(), "main", "window")


def test_a_stud_wall_hides_the_cable():
    facts = changed(SEMI, legs__plaster__how="stud wall")
    assert route(plain(facts), basis(), "main", "window").out.hidden
    assert not route(plain(SEMI), basis(), "main", "window").out.hidden


def test_no_way_passes_a_place_twice():
    legs = {"a": ("x", "y"), "b": ("y", "x"), "c": ("y", "z"), "loop": ("y", "y")}
    assert list(ways_between("x", "z", legs)) == [("a", "c"), ("b", "c")]
