"""Every case against the function it names, and every file of cases against what it must say."""

from __future__ import annotations

import tomllib

import pytest

from ampwright.tables.book import Book

from .agreement import (
    DERIVED,
    LIMITS,
    NEEDED,
    PUBLISHED,
    READINGS,
    RECALLED,
    cases,
    difference,
    files,
)

FILES = [(folder, path) for folder in NEEDED for path in files(folder)]
BOOK = Book()
ENOUGH = 300


@pytest.mark.parametrize("case", cases(PUBLISHED), ids=lambda case: case.id)
def test_agrees_with_the_publication(case):
    assert not difference(case)


@pytest.mark.parametrize("case", cases(RECALLED), ids=lambda case: case.id)
def test_agrees_with_what_is_recalled(case):
    assert not difference(case)


@pytest.mark.parametrize("case", cases(DERIVED), ids=lambda case: case.id)
def test_agrees_with_a_second_reckoning(case):
    assert not difference(case)


@pytest.mark.parametrize("case", cases(LIMITS), ids=lambda case: case.id)
def test_holds_at_the_limit_and_fails_beyond(case):
    assert not difference(case)


@pytest.mark.parametrize(("folder", "path"), FILES, ids=lambda each: each.stem)
def test_a_file_says_where_its_answers_come_from(folder, path):
    card = tomllib.loads(path.read_text(encoding="utf-8"))
    assert NEEDED[folder] <= card.keys()
    assert all(card[word] not in ("", []) for word in NEEDED[folder])
    assert card["cases"]


@pytest.mark.parametrize("path", files(READINGS), ids=lambda path: path.stem)
def test_our_tables_hold_what_another_publication_prints(path):
    card = tomllib.loads(path.read_text(encoding="utf-8"))
    assert {"summary", "document", "place", "found"} <= card.keys()
    wrong = [
        cell
        for cell in card["cells"]
        if BOOK.number(card["table"], card["column"], **cell["keys"]) != cell["printed"]
    ]
    assert card["cells"] and not wrong


def test_enough_printed_figures_are_reproduced():
    """Counting each printed figure once: no outcomes in words, no figure from two sides."""
    counted = [case for case in cases(PUBLISHED) if case.counts]
    assert len(counted) >= ENOUGH
    same = {(case.function, repr(sorted(case.inputs.items()))) for case in counted}
    assert len(same) == len(counted), "one figure counted twice"


def test_no_figure_of_memory_is_counted_as_printed():
    for path in files(PUBLISHED):
        card = tomllib.loads(path.read_text(encoding="utf-8"))
        assert "read" in card["found"], path.stem
        assert "recalled from memory" not in card["found"], path.stem
