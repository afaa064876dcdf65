"""What every clause must have: a place, a sentence, its limits, an example and a case."""

from __future__ import annotations

import ast
import inspect
import re
from collections import defaultdict
from importlib.util import module_from_spec, spec_from_file_location

import pytest

from ampwright.foundations.checks import Requirement
from ampwright.foundations.rulings import Ruling
from ampwright.standards.catalogue import Kind, clauses
from tests.reference.agreement import LIMITS, PUBLISHED, RECALLED, cases

from .tree import ROOT, modules

CLAUSES = clauses()
SPEAKING = [clause for clause in CLAUSES if clause.kind is not Kind.DECIDES]
DECIDING = [clause for clause in CLAUSES if clause.kind is Kind.DECIDES]
PLAIN_NUMBERS = {0, 1, 2, 3, 1000}
"""Numbers of geometry, counting and the thousand between a unit and its multiple."""
OTHER_NUMBERS = {
    ("ampwright.standards.wiring.electrode", 4): "a quarter belongs to the shape of a plate",
    ("ampwright.standards.wiring.electrode", 8): "8L/d is the shape of a rod, not a table's value",
    ("ampwright.standards.network.meter_point", 10): "the last digit is one of ten",
    ("ampwright.standards.network.meter_point", 11): "the rule of the check digit itself",
}


MET = defaultdict(list)
for each in cases(PUBLISHED, RECALLED, LIMITS):
    MET[each.function].append(each)


def named(clause):
    return clause.name.removeprefix("ampwright.")


@pytest.mark.parametrize("clause", SPEAKING, ids=named)
def test_one_sentence_its_limits_and_an_example(clause):
    first, *rest = inspect.getdoc(clause.clause).split("\n\n")
    assert "\n" not in first
    assert first[0].isupper() and first.endswith(".")
    assert not re.search(r"[.;!?] [A-Z]", first), "one sentence"
    assert rest and not rest[0].startswith("Examples"), "say where it holds"
    assert ">>>" in rest[-1]


@pytest.mark.parametrize("clause", CLAUSES, ids=named)
def test_every_place_can_be_opened(clause):
    assert clause.places
    assert all(place.document and place.at for place in clause.places)


def test_names_are_unique():
    ids = [clause.id for clause in CLAUSES]
    assert sorted(ids) == sorted(set(ids))


@pytest.mark.parametrize("clause", DECIDING, ids=named)
def test_the_last_row_always_hits(clause):
    ruling: Ruling = clause.clause
    assert ruling.rows[-1].test(None)


@pytest.mark.parametrize("clause", CLAUSES, ids=named)
def test_every_clause_meets_a_case_from_outside_or_its_limit(clause):
    assert MET[clause.name]


@pytest.mark.parametrize(
    "clause", [clause for clause in CLAUSES if clause.kind is Kind.REQUIRES], ids=named
)
def test_every_requirement_is_met_once_and_broken_once(clause):
    assert isinstance(clause.clause.clause, Requirement)
    assert {"pass", "fail"} <= {case.answer for case in MET[clause.name]}


@pytest.mark.parametrize("clause", DECIDING, ids=named)
def test_every_row_decides_some_case(clause):
    decided = {case.row for case in MET[clause.name]}
    assert decided >= set(range(1, len(clause.rows) + 1))


def numbers(tree):
    """The numbers written into functions and rows, with the line of each."""
    bodies = [node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef | ast.Lambda)]
    for body in bodies:
        inner = body.body if isinstance(body.body, list) else [body.body]
        for statement in inner:
            for node in ast.walk(statement):
                if isinstance(node, ast.Constant) and type(node.value) in (int, float):
                    yield node.value, node.lineno


def test_no_published_value_is_written_into_a_clause():
    found = [
        f"{place}:{line} {value}"
        for place, tree in modules().items()
        if place.split("/")[2] == "standards"
        for value, line in numbers(tree)
        if value not in PLAIN_NUMBERS and (dotted(place), value) not in OTHER_NUMBERS
    ]
    assert not found, "bring it in as an argument, from a table with a card"


def dotted(place: str) -> str:
    return place.removeprefix("src/").removesuffix(".py").replace("/", ".")


def test_a_value_written_into_a_clause_would_be_found():
    tree = ast.parse("def limit(In):\n return 0.95 * 230 / (5 * In)")
    assert [value for value, _ in numbers(tree)] == [0.95, 230, 5]


def test_the_page_of_clauses_is_the_one_the_clauses_give():
    written = (ROOT / "docs" / "reference" / "clauses.md").read_text(encoding="utf-8")
    assert written == render_clauses()


def render_clauses() -> str:
    tool = spec_from_file_location("docs_clauses", ROOT / "tools" / "docs_clauses.py")
    module = module_from_spec(tool)
    tool.loader.exec_module(module)
    return module.render()
