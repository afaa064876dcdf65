"""The spot itself: case, height, gas and fuel."""

from __future__ import annotations

import pytest

from ampwright.design.place import point_place
from ampwright.foundations.stages import cautions as cautions_in

from .homes import SEMI, basis, changed, plain
from .work import failed, outcome_of


def spot(facts, ip="IP54"):
    return point_place(plain(facts), basis(), "window", ip)


def cautions(made):
    return " ".join(cautions_in(made.checks, made.notes))


def test_outdoors_its_case_keeps_the_weather_out():
    assert outcome_of(spot(SEMI).checks, "point_outdoors_rated") == "pass"
    assert failed(spot(SEMI, "IP40").checks) == ["point_outdoors_rated"]
    indoors = spot(changed(SEMI, places__window__outdoors=False), "IP40")
    assert not indoors.checks
    assert any("indoors" in note.says for note in indoors.notes)


@pytest.mark.parametrize(("height", "says"), [
    (0.5, []), (0.4, ["outlet_not_too_low"]), (1.5, []), (1.6, ["outlet_not_too_high"]),
])  # fmt: skip
def test_within_reach(height, says):
    made = spot(changed(SEMI, places__window__height_m=height))
    assert failed(made.checks) == says
    assert "hang the lowest part" not in cautions(made)


def test_nobody_said_how_high():
    made = spot(SEMI)
    assert not failed(made.checks)
    assert "0.5 to 1.5 m" in cautions(made)


@pytest.mark.parametrize("near", ["gas meter", "flue or vent", "oil tank"])
def test_what_stands_by_it_is_named(near):
    made = spot(changed(SEMI, places__window__near_gas=near))
    assert not failed(made.checks)
    assert near in cautions(made)


def test_gas_bottles_are_no_place():
    facts = changed(SEMI, places__window__near_gas="gas bottles or tank")
    facts["services.lpg.present"] = True
    facts["services.lpg.pipe_at_entry"] = "metal"
    made = spot(facts)
    assert failed(made.checks) == ["clear_of_bottles"]
    (check,) = [each for each in made.checks if each.outcome.value == "fail"]
    (remedy,) = check.remedies
    assert not failed(spot({**facts, **dict(remedy.changes)}).checks)


def test_nothing_is_nothing_and_not_asked_is_looked_for():
    assert "bottles" not in cautions(spot(changed(SEMI, places__window__near_gas="nothing")))
    assert "look for a gas meter" in cautions(spot(SEMI))


@pytest.mark.parametrize(("wifi", "mobile", "word"), [
    ("good", "none", ""), ("none", "fair", "mobile data"), ("none", "none", "data cable beside"),
])  # fmt: skip
def test_a_link_to_its_app(wifi, mobile, word):
    made = spot(changed(SEMI, places__window__wifi=wifi, places__window__mobile=mobile))
    assert not failed(made.checks)
    assert ("no Wi-Fi" in cautions(made)) is bool(word)
    assert word in cautions(made)
