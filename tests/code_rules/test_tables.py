"""What every published table must say of itself, and how the look-ups over it are written."""

from __future__ import annotations

import ast
import inspect
import re
from importlib import import_module
from pkgutil import iter_modules

import pytest
from tools import docs_tables

import ampwright.tables
from ampwright.foundations.quantity import UNIT_OF
from ampwright.foundations.source import Trust
from ampwright.tables.catalogue import all_tables
from ampwright.tables.loader import data_folder, table, table_names

from .tree import PACKAGE

NAMES = table_names()
UNITS = {
    *UNIT_OF.values(),
    "m",
    "1/K",
    "K·m/W",
    "MΩ",
    "ms",
    "Hz",
    "Hz/s",
    "kVA",
    "days",
    "months",
    "£",
}
"""Units of quantities, and the few that only a table prints."""
CONFIDENCE = {"high", "medium", "low"}
READERS = [
    module
    for module in iter_modules(ampwright.tables.__path__, "ampwright.tables.")
    if module.name.rpartition(".")[2] not in {"card", "loader", "book", "catalogue"}
]
LOOK_UPS = [
    function
    for module in READERS
    for name, function in vars(import_module(module.name)).items()
    if inspect.isfunction(function)
    and function.__module__ == module.name
    and not name.startswith("_")
]
COUNTS = {0, 1, 2, 13}
"""Numbers that are no values of a table: places in a row, and the digits of a meter point."""


def test_there_are_tables():
    assert len(NAMES) > 100


def test_every_table_has_its_card_and_every_card_its_table():
    files = {file.name for folder in data_folder().iterdir() for file in folder.iterdir()}
    assert {name.rpartition(".")[2] for name in files} == {"csv", "toml"}
    stems = [name.rpartition(".")[0] for name in files]
    assert all(stems.count(stem) == 2 for stem in stems)


@pytest.mark.parametrize("name", NAMES)
def test_card_is_complete(name):
    card = table(name).card
    assert card.title
    assert card.place.document
    assert card.place.at
    assert card.licence.endswith(".")
    assert not card.title.endswith(".")
    assert card.conditions == "" or card.conditions.endswith(".")
    assert card.transcribed.on
    assert card.second_reading.why_not or card.second_reading.against
    if card.in_force_until:
        assert card.in_force_until > card.in_force_from
    for column in card.columns.values():
        assert column.meaning
        assert column.unit in UNITS, column.name


@pytest.mark.parametrize("name", NAMES)
def test_what_is_published_says_where_it_was_read(name):
    found = table(name)
    trusts = {row.place.trust for row in found.rows.values()}
    if Trust.PUBLISHED in trusts:
        assert found.card.found_at
    if Trust.MEMORY in trusts:
        assert found.card.replace_by
    for place in found.card.found_at:
        assert not re.search(r"https?:|www\.|\bS\d\d\b", place)


@pytest.mark.parametrize("name", NAMES)
def test_every_row_says_how_it_is_known(name):
    for row in table(name).rows.values():
        assert row.place.document
        assert row.place.at
        assert row.confidence in CONFIDENCE | {""}
        if row.confidence:
            assert row.place.trust is Trust.MEMORY, (
                row.keys,
                "only what is recalled is more or less sure",
            )


def test_a_standard_seen_only_in_reproductions_says_so():
    """No copy of the wiring rules was at hand: published values of it come from elsewhere."""
    for name in NAMES:
        card = table(name).card
        if card.place.document == "BS 7671" and card.place.trust is Trust.PUBLISHED:
            said = " ".join((card.conditions, card.second_reading.why_not, *card.found_at))
            assert re.search(r"standard|seen|place", said), name


@pytest.mark.parametrize("function", LOOK_UPS, ids=lambda function: function.__qualname__)
def test_look_up_is_documented(function):
    doc = inspect.getdoc(function) or ""
    assert ">>> " in doc
    if "book" in inspect.signature(function).parameters:
        assert "Source:" in doc or "Examples" in doc.partition("\n\n")[2][:9]
        first = next(iter(inspect.signature(function).parameters))
        assert first == "book" or function.__name__ == "operator_of"


@pytest.mark.parametrize("module", READERS, ids=lambda module: module.name.rpartition(".")[2])
def test_no_published_value_stands_in_the_code(module):
    tree = ast.parse(
        (PACKAGE / "tables" / f"{module.name.rpartition('.')[2]}.py").read_text("utf-8")
    )
    numbers = [
        (node.lineno, node.value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant)
        and isinstance(node.value, int | float)
        and not isinstance(node.value, bool)
    ]
    assert {value for _, value in numbers} <= COUNTS, numbers


def test_the_page_of_tables_is_the_tables():
    assert docs_tables.PAGE.read_text("utf-8") == docs_tables.render(), (
        "run python tools/docs_tables.py"
    )


def test_the_list_counts_every_row_once():
    for each in all_tables():
        assert sum(count for _, count in each.by_trust) == each.rows == len(table(each.name).rows)
