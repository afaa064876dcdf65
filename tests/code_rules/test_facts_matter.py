"""Every fact matters, or is listed as recorded only.

A fact matters if two homes that differ in it alone differ in something printed: the answer about
the options, or the working of the best. The list of what was found repeats every fact and does not
count. A fact that is on neither list, a pair that makes no difference and a recorded fact that
makes one all fail.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from ampwright.actions.facts import fact_name, words_of
from ampwright.actions.options import answer_for
from ampwright.actions.papers import content_of
from ampwright.survey.folding import as_found
from ampwright.survey.home import Home
from ampwright.survey.layout import frozen, slot, slots_of, things_in
from ampwright.survey.register import Fact, Part, collections_of, facts_of, parts_of
from tests.journeys.homes import EXAMPLES

from .printed import answered, apart, printed, seen, told, working

DATA = Path(__file__).with_name("facts")
NOTHING = "(nothing)"
PAPERS = {"head of the options paper", "facts of the options paper"}
REACHED_BY = {"customer.phone", "customer.email", "customer.best_time"}
HOMES = sorted(path.stem for path in EXAMPLES.glob("*.toml"))
TEXTS = {
    "time": ("00:30", "18:30"), "date": ("2026-12-20", "2027-06-01"),
    "postcode": ("ZZ1 1AA", "ZZ9 9ZZ"), "meter point": ("1012345678903", "2412345678905"),
    "id": ("one-thing", "another-thing"), "text": ("one thing", "another thing"),
}  # fmt: skip


@cache
def listed(name: str) -> dict[str, Any]:
    return tomllib.loads((DATA / f"{name}.toml").read_text("utf-8"))


def matters() -> list[dict[str, Any]]:
    return listed("that_matter")["matters"]


def recorded() -> dict[str, dict[str, Any]]:
    return {each["fact"]: each for each in listed("recorded_only")["recorded"]}


def register(part: type[Part] = Home, prefix: str = "") -> Iterator[str]:
    """Every fact there may be, by its key; a dot, an ellipsis and a dot stand for any thing."""
    yield from (f"{prefix}{fact.name}" for fact in facts_of(part))
    for name, inside in parts_of(part):
        yield from register(inside, f"{prefix}{name}.")
    for each in collections_of(part):
        yield f"{prefix}{each.name}.all_listed"
        yield from register(each.item, f"{prefix}{each.name}.….")


def pattern_of(key: str) -> str:
    """The same key with an ellipsis in the place of every id."""
    for path, thing in reversed(things_in(key)):
        key = f"{path}.…{key.removeprefix(f'{path}.{thing}')}"
    return key


def said(each: dict[str, Any], value: Any) -> tuple[str, tuple[tuple[str, Any], ...]]:
    """A home and what is said of it otherwise, with one answer to the key of a pair."""
    answers = dict(listed("that_matter")["variants"].get(each.get("variant"), {}))
    answers |= each.get("said", {})
    key = each.get("key", each["fact"])
    answers[key] = None if value == NOTHING else value
    home = each["home"]
    if answers[key] == answered(home, key):  # the home as it is: worked out once for all pairs
        del answers[key]
    return home, tuple(sorted(answers.items()))


def test_every_fact_is_on_one_of_the_lists():
    there = list(register())
    known = [each["fact"] for each in matters()] + list(recorded())
    assert sorted(set(there) - set(known)) == [], "say what each changes, or that it is recorded"
    assert sorted(set(known) - set(there)) == []
    assert len(known) == len(set(known))


def test_each_pair_is_of_its_fact_and_each_recorded_fact_names_a_paper():
    for each in matters():
        assert pattern_of(each.get("key", each["fact"])) == each["fact"]
        assert each["values"][0] != each["values"][1]
    assert {each["prints"] for each in recorded().values()} <= PAPERS


@pytest.mark.parametrize("each", matters(), ids=lambda each: each["fact"])
def test_two_homes_that_differ_in_it_alone_differ_in_print(each):
    one, other = (said(each, value) for value in each["values"])
    assert apart(printed(*one), printed(*other)) or apart(working(*one), working(*other))


@pytest.mark.parametrize("name", HOMES)
def test_what_is_recorded_only_changes_nothing(name):
    first, second = (tuple(sorted(recorded_answers(name, number))) for number in (0, 1))
    differ = apart(printed(name, first), printed(name, second))
    differ += apart(working(name, first), working(name, second))
    assert differ == [], "some recorded fact matters: try them one at a time"


@pytest.mark.parametrize("name", HOMES)
def test_the_paper_prints_what_is_recorded_only(name):
    said = dict(recorded_answers(name, 0))
    here = seen(name, tuple(sorted(said.items())))
    paper = content_of(here, answer_for(here))
    behind = {line.what for line in paper.rests_on}
    for key in said:
        on_the_head = recorded()[pattern_of(key)]["prints"] == "head of the options paper"
        assert on_the_head or stands(key, paper.also_held) or slot(key).fact.trade in behind, key
    head, text = paper.home, TEXTS["text"][0]
    assert {head.customer, head.address} == {text}
    told_of = [key for key in said if key in REACHED_BY]
    assert [each[-len(text) :] for each in head.reached_by] == [text for _ in told_of]


def stands(key, lines):
    """Whether a fact has a line of its own, or is named in that of several things.

    A note or a photograph has one line for all that is known of it.
    """
    thing, _, name = key.rpartition(".")
    if thing.startswith("photos."):
        number, answer = thing.rpartition(".")[2], text_of(key)
        (line,) = [each for each in lines if each.what == f"Photograph or paper {number}"]
        return name == "present" or answer in line.answer
    if thing.startswith("notes."):
        text = TEXTS["text"][0]
        return any((each.what, each.answer) == (f"Note: {text}", text) for each in lines)
    *around, last = [thing for _, thing in things_in(key)] or [""]
    trade = slot(key).fact.trade
    what = f"{trade} ({', '.join(around)})" if around else trade
    alone = fact_name(key) in {line.what for line in lines}
    return alone or any(line.what == what and last in line.answer for line in lines)


def text_of(key: str) -> str:
    """The first of two answers to a fact, as it is printed."""
    return words_of(key, two_answers(slot(key).fact)[0])


def recorded_answers(name: str, number: int) -> Iterator[tuple[str, Any]]:
    """One of two answers to every recorded fact of every thing that a home's file speaks of."""
    folded = as_found(told(name).records)
    ids, spoken_of = folded.ids, {key.rpartition(".")[0] for key in folded.facts}
    for each in slots_of(frozen(ids)):
        gone = each.thing and answered(name, f"{each.thing}.present") is False
        there = not each.thing or (each.thing in spoken_of and not gone)
        if there and pattern_of(each.key) in recorded():
            if each.fact.name == "same_as":
                others = [id_ for id_ in ids[each.thing.rpartition(".")[0]] if id_ not in each.key]
                if number and others:
                    yield each.key, others[0]
            else:
                yield each.key, two_answers(each.fact)[number]


def two_answers(fact: Fact) -> tuple[Any, Any]:
    """Two answers to a fact, as far apart as they may be."""
    if fact.allowed:
        return fact.allowed[0], fact.allowed[-1]
    if fact.is_number:
        low, high = fact.between
        return fact.kind(low), fact.kind(high)
    return TEXTS[fact.form]


def test_a_recorded_fact_that_a_gate_wants_is_wanted_for_papers():
    """What no design reads is asked for before a gate only if its declaration says so."""
    keys = (key.replace("services.…", "services.water").replace("…", "some") for key in recorded())
    facts = {key: slot(key).fact for key in keys}
    assert [key for key, fact in facts.items() if fact.needs and not fact.on_papers] == []
