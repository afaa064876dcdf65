"""Every declaration is whole, speaks plainly, and asks nobody to do what is not safe."""

from __future__ import annotations

import re
from typing import Literal

import pytest

from ampwright.foundations.errors import InputError, NotFoundError
from ampwright.foundations.quantity import Amperes
from ampwright.foundations.source import Trust
from ampwright.survey.home import Home
from ampwright.survey.layout import frozen, slot, slots_of
from ampwright.survey.register import Agree, Part, collections_of, fact, facts_of, parts_of

from .generating import IDS

SLOTS = slots_of(frozen(IDS))
FACTS = {each.fact: each.key for each in SLOTS}
NOT_OUR_VOICE = re.compile(r"!|\bplease\b|\bsimply\b|\boops\b|\bjust\b", re.IGNORECASE)
UNSAFE = re.compile(r"unscrew|screw|take off the cover|lift the cover|pull|climb", re.IGNORECASE)
FORBIDS = re.compile(r"never climb", re.IGNORECASE)


def all_parts(part=Home):
    yield part
    for _, inner in parts_of(part):
        yield from all_parts(inner)
    for collection in collections_of(part):
        yield from all_parts(collection.item)


@pytest.mark.parametrize("said", FACTS, ids=FACTS.values())
class TestFact:
    def test_is_asked_in_plain_words(self, said):
        assert re.search(r"[?.]$", said.ask)
        assert said.look.endswith(".")
        assert said.trade[0].isupper()
        assert not NOT_OUR_VOICE.search(f"{said.ask} {said.look}")

    def test_asks_nobody_to_open_or_climb(self, said):
        words = FORBIDS.sub("", f"{said.ask} {said.look}")
        assert not UNSAFE.search(words) or said.who == "site"

    def test_shares_sum_to_one(self, said):
        if said.values:
            assert sum(said.values.values()) == pytest.approx(1.0, abs=0.01)

    def test_says_how_far_its_shares_are_trusted(self, said):
        if said.values:
            assert said.prior.trust in (Trust.MEMORY, Trust.COMMON_PRACTICE)
            assert said.prior.edition

    def test_what_stands_in_is_an_answer_with_a_place(self, said):
        if said.stand_in:
            low, high = said.between
            assert low <= said.stand_in.value <= high
            assert said.stand_in.source.document


@pytest.mark.parametrize(
    ("path", "thing"),
    [(e.name, t) for p in all_parts() for e in collections_of(p) for t in e.standard],
)
def test_a_standard_thing_speaks_of_facts_that_it_has(path, thing):
    standard = slot(f"{path}.{thing}.present").standard
    names = {each.name: each for each in facts_of(slot(f"{path}.{thing}.present").part)}
    assert sum(standard.values.values()) == pytest.approx(1.0)
    for name, value in standard.implies.items():
        assert not names[name].allowed or value in names[name].allowed
    for name, shares in standard.priors.items():
        assert sum(shares.values()) == pytest.approx(1.0)
        low, high = names[name].between or (0, 0)
        assert all(v in names[name].allowed or low <= v <= high for v in shares)


def declare(**said):
    """Declare a part with one wrong fact."""
    hint = said.pop("hint", Amperes)
    body = {"x_a": fact(**{"ask": "How much?", "trade": "Current", **said})}
    return type(
        "Wrong", (Part,), {**body, "__annotations__": {"x_a": hint}, "__module__": __name__}
    )


@pytest.mark.parametrize(
    ("said", "complaint"),
    [
        ({}, "values or a range"),
        ({"ask": "", "between": (0, 1)}, "a question in plain words"),
        ({"between": (1, 1)}, "from low to high"),
        ({"values": {1: -0.5, 2: 1.5}}, "no negative shares"),
        ({"hint": bool, "values": {"yes": 1.0}}, "only for the allowed answers"),
        ({"hint": Literal["a", "b"], "values": {"a": 1.0}}, "every allowed answer"),
        ({"hint": str, "agree": Agree(1.0, "higher")}, "a number"),
        ({"hint": bytes}, "as its type"),
    ],
)
def test_a_faulty_declaration_does_not_import(said, complaint):
    with pytest.raises(InputError, match=complaint):
        declare(**said)


def test_a_key_finds_its_fact_and_a_wrong_one_its_neighbour():
    assert slot("boards.main.outlets.3-L2.blank").fact.trade == "Blank position"
    assert slot("loads.shower.amps_a").standard.trade == "Instantaneous electric shower"
    for key, near in [
        ("supply.main_fus_a", "supply.main_fuse_a"),
        ("services.water.bond_mm", "services.water.bond_mm2"),
        ("supplies.phases", "supply"),
    ]:
        with pytest.raises(NotFoundError, match=f"Did you mean {near}"):
            slot(key)
    for key in ("services.drain.present", "loads.a b.kind", "supply", "loads.kiln", "loads", ""):
        with pytest.raises(NotFoundError):
            slot(key)
