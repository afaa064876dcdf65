"""Sums in words: what the answer sheets tell the customer, each with its working."""

from __future__ import annotations

from datetime import date
from functools import cache
from pathlib import Path

import pytest

from ampwright.actions.options import options_of
from ampwright.actions.seeing import Terms
from ampwright.actions.sums import sums_of

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
HOMES = sorted(path.stem for path in EXAMPLES.glob("*.toml"))
TERMS = Terms(date(2026, 11, 25), "demo")


@cache
def sums(name, option=""):
    answer = sums_of(EXAMPLES / f"{name}.toml", TERMS, option)
    return {each.slug: each for each in answer.sums}


def test_home_03_is_told_that_sun_in_the_car_costs_seven_pence_a_unit():
    # "Export pays you 15p and a night unit costs 8p, so every unit of sun you put in the car
    # instead of exporting costs you 7p. Charge at night and keep exporting."
    words = sums("larkspit-rise")["sun"].says
    assert "Every unit of sun put in the car instead of sold costs 7 p: charge at night" in words[0]
    assert "follow the sun from 1.4 kW" in words[1]
    told = options_of(EXAMPLES / "larkspit-rise.toml", TERMS).recommended.to_customer
    assert words[0] in told


def test_below_the_night_price_the_advice_turns(tmp_path):
    # "If your export price ever falls below your night price, flip the setting."
    text = (EXAMPLES / "larkspit-rise.toml").read_text("utf-8")
    path = tmp_path / "home.toml"
    path.write_text(text.replace("export_p = 15", "export_p = 4"), encoding="utf-8")
    (sun,) = [each for each in sums_of(path, TERMS).sums if each.slug == "sun"]
    assert "saves 4 p: let the point follow the sun" in sun.says[0]


def test_22_kilowatts_on_a_car_of_eleven_buy_nothing(tmp_path):
    text = (EXAMPLES / "pump-yard.toml").read_text("utf-8")
    path = tmp_path / "home.toml"
    path.write_text(text.replace("takes_kw = 22", "takes_kw = 11"), encoding="utf-8")
    large = "store-wall/meter/3ph-32a/sheathed/pme/three-socket/house-limit+feed-device-main"
    (speed,) = [each for each in sums_of(path, TERMS, large).sums if each.slug == "speed"]
    assert speed.says[-1].startswith("Of the 22.1 kW of this point the cars take 11 kW at most")
    assert "11 kW: the car takes 11 kW, 1 h 11 min a day" in speed.says[2]
    assert "22.1 kW: the car takes 11 kW, 1 h 11 min a day" in speed.says[3]


def test_what_is_not_told_keeps_back_its_own_sum_alone(tmp_path):
    text = (EXAMPLES / "larkspit-rise.toml").read_text("utf-8")
    path = tmp_path / "home.toml"
    path.write_text(text.replace("export_p = 15", ""), encoding="utf-8")
    found = {each.slug: each for each in sums_of(path, TERMS).sums}
    assert found["sun"].lacking == ("Export rate",)
    assert [slug for slug, each in found.items() if each.lacking] == ["sun"]


@pytest.mark.parametrize("name", HOMES)
def test_every_figure_opens_to_its_sources(name):
    for each in sums(name).values():
        assert each.says
        for figure in each.figures:
            assert figure.lines or figure.uses, figure.what
            assert all(line.source for line in figure.lines)
