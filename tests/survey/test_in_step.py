"""The schema, the committed pages and the example home agree with the register."""

from __future__ import annotations

import json
import re
import tomllib
from importlib.util import module_from_spec, spec_from_file_location

import jsonschema
import pytest
from hypothesis import given, settings

from ampwright.foundations.source import Evidence
from ampwright.survey.folding import as_found
from ampwright.survey.homefile import read
from ampwright.survey.layout import frozen, plan_of, slots_of
from ampwright.survey.schema import home_schema
from ampwright.survey.views import plain_home, possible
from ampwright.survey.writing import write

from ..code_rules.tree import ROOT
from .generating import IDS, records

TOOL = spec_from_file_location("docs_facts", ROOT / "tools" / "docs_facts.py")
docs_facts = module_from_spec(TOOL)
TOOL.loader.exec_module(docs_facts)

SCHEMA = jsonschema.Draft202012Validator(home_schema())
THINGS = {thing for path in plan_of(frozen(IDS)).collections for thing, _ in path[2]} | {
    thing for things in IDS.values() for thing in things
}
EXAMPLES = sorted((ROOT / "examples").glob("*.toml"))


def as_json(text):
    """A TOML text as JSON has it: dates as text."""
    return json.loads(json.dumps(tomllib.loads(text), default=str))


def test_the_committed_pages_are_what_the_register_makes():
    assert docs_facts.PAGE.read_text("utf-8") == docs_facts.render(), "run tools/docs_facts.py"
    assert docs_facts.SCHEMA.read_text("utf-8") == docs_facts.schema(), "run tools/docs_facts.py"


def test_the_page_has_every_fact():
    page = docs_facts.render()
    for slot in slots_of(frozen(IDS)):
        path = slot.thing
        keys = (
            slot.key.replace("boards.main", "boards.…") if path.startswith("boards") else slot.key
        )
        name = f".{slot.fact.name}`**"
        assert name in page or slot.fact.name in docs_facts.COMMON, keys


def test_the_answers_shown_on_the_page_can_be_read():
    shown = re.search(r"```toml\n(.*?)```", docs_facts.render(), re.DOTALL)[1]
    assert {row.key for row in read(shown).records} == {
        "supply.phases", "supply.main_fuse_a", "supply.ze_ohm", "supply.looped",
        "supply.tails_mm2",
    }  # fmt: skip
    SCHEMA.validate(as_json(shown))


def test_the_schema_is_one():
    jsonschema.Draft202012Validator.check_schema(home_schema())


@given(records(max_size=6))
@settings(max_examples=25)
def test_whatever_is_written_satisfies_the_schema(rows):
    SCHEMA.validate(as_json(write(rows, "a home")))


@pytest.mark.parametrize(
    "text",
    [
        "[supply]\nmain_fuse_a = 81",
        "[supply]\nmain_fuse = 80",
        "[supply]\nphases = { is = 1, one_of = [1, 3] }",
        "[supply]\nphases = { told = '' }",
        "[supply]\nphases = []",
        "[supply]\nlooped = 'no'",
        "[supply]\nlooped = { between = [0, 1] }",
        "[services.drain]\npresent = true",
        '[loads."a b"]\npresent = true',
        "[said]\nevidence = 'tolled'",
    ],
)
def test_the_schema_refuses_what_the_reader_refuses(text):
    assert not SCHEMA.is_valid(as_json(text))


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
class TestExample:
    def test_satisfies_the_schema(self, path):
        SCHEMA.validate(as_json(path.read_text("utf-8")))

    def test_is_read_and_comes_back(self, path):
        found = read(path.read_text("utf-8"), path.name)
        again = read(write(found.records, found.title))
        assert (set(again.records), again.title, again.home) == (
            set(found.records), found.title, found.home
        )  # fmt: skip


def test_the_example_is_the_plain_semi_with_the_cut_bond():
    """The facts of the worked home, as they were given: 80 A, 0.18 Ω, four loads, 8 m of way."""
    found = read((ROOT / "examples" / "quillbrook-close.toml").read_text("utf-8"))
    folded = as_found(found.records)
    home = plain_home(possible(folded).known, folded.ids)
    assert (home.supply.main_fuse_a, home.supply.ze_ohm, home.supply.looped) == (80.0, 0.18, False)
    loads = {name: (load.kind, load.amps_a) for name, load in home.loads.listed()}
    assert loads == {
        "lighting": ("lighting", 2.5),
        "kitchen-sockets": ("sockets", 15.0),
        "other-sockets": ("sockets", 10.0),
        "boiler": ("fixed", 1.0),
    }
    assert [name for name, _ in home.services.listed()] == ["water", "gas"]
    assert home.services["water"].bond_mm2 == 0
    lengths = {leg.from_place: leg.length_m for _, leg in home.legs.listed()}
    assert lengths == {"meter": 1.5, "main": 7.0, "inside-front": 1.0}
    assert folded.at("supply.ze_ohm").evidence is Evidence.MEASURED
    assert folded.at("supply.main_fuse_a").evidence is Evidence.SEEN
    assert not any(each.disputed or each.overruled for each in folded.facts.values())
