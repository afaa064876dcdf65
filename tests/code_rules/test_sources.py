"""No number without a source in any paper, and no paper with another number than was explored.

Every option of every shipped home is worked out on the documented basis, in the most usual of the
homes in which it holds, and must come to the very floats that exploring came to. Of the best and of
one in five, every number of every stage's result and of both sides of every check must lead back to
a document, an answer, the firm or a choice. What is exempt is listed with a reason, and nothing is
listed that needs no exemption.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from tests.journeys.homes import EXAMPLES, journey

from .readings import Read, differences, readings, sourceless

HOMES = sorted(path.stem for path in EXAMPLES.glob("*.toml"))
EXEMPT = Path(__file__).with_name("without_source.toml")
KINDS = {"count", "order", "row", "nought"}


@cache
def exempt() -> dict[str, dict[str, str]]:
    return {each["number"]: each for each in tomllib.loads(EXEMPT.read_text("utf-8"))["exempt"]}


def sourceless_of(found: Iterable[Read]) -> dict[str, set[Any]]:
    """What lacks a source in some options: each number and all that it leans on."""
    lacking: dict[str, set[Any]] = {}
    for read in found:
        for number, leans_on in sourceless(read.documented):
            lacking.setdefault(number, set()).add(leans_on)
    return lacking


@pytest.mark.parametrize("name", HOMES)
def test_every_option_has_its_sources_and_comes_to_what_was_explored(name):
    home = journey(name)
    count, parted, lacking = 0, [], {}
    for count, read in enumerate(readings(home, list(home.outlook.searched.options)), 1):
        parted += differences(read)
        if count % 5 == 0 or read.option is home.best:
            for number, leans_on in sourceless(read.documented):
                lacking.setdefault(number, set()).add(leans_on)
    assert count >= 50
    assert parted == []
    assert sorted(lacking.keys() - exempt().keys()) == []
    for number, values in lacking.items():
        kind = exempt()[number]["kind"]
        assert kind not in ("count", "row") or all(value == int(value) for value in values), number
        assert kind != "nought" or values == {0.0}, number


@pytest.mark.parametrize("name", ["pump-yard", "quillbrook-close"])
def test_nothing_is_judged_by_what_no_soundness_hangs_on(name):
    """Exploring leaves those stages out, so a check there would part the two outcomes."""
    home = journey(name)
    (read,) = readings(home, [home.best])
    aside = [each for each in read.documented.stages if each.aside]
    assert {each.title for each in aside} >= {"on the day", "price"}
    assert [each.title for each in aside if each.checks] == []


def test_every_exemption_is_needed_and_says_why():
    needed: set[str] = set()
    for name in HOMES:
        home = journey(name)
        needed |= sourceless_of(readings(home, home.outlook.searched.options[::20])).keys()
    assert sorted(exempt().keys() - needed) == []
    for each in exempt().values():
        assert each["kind"] in KINDS
        assert len(each["reason"]) > 20


def test_a_number_without_a_source_is_noticed():
    home = journey("quillbrook-close")
    (read,) = readings(home, [home.best])
    stages = list(read.documented.stages)
    at = next(i for i, ran in enumerate(stages) if ran.title == "cable")
    bare = replace(stages[at].out, drop_v=float(stages[at].out.drop_v))
    stages[at] = replace(stages[at], out=bare)
    found = dict(sourceless(replace(read.documented, stages=tuple(stages))))
    assert found.keys() - exempt().keys() == {"cable.drop_v"}
    nearly = replace(stages[at], out=replace(bare, drop_v=bare.drop_v * 1.0001))
    stages[at] = nearly
    parted = replace(read, documented=replace(read.documented, stages=tuple(stages)))
    assert list(differences(parted)) == [f"{home.best.id}: cable"]
