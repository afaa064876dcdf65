"""Every case against the function it names, and every file of cases against what it must say."""

from __future__ import annotations

import tomllib

import pytest

from .agreement import DERIVED, LIMITS, NEEDED, PUBLISHED, RECALLED, cases, difference, files

FILES = [(folder, path) for folder in NEEDED for path in files(folder)]


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
