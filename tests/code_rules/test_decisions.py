"""Decision records are numbered without a gap and all answer the same questions."""

from __future__ import annotations

import re
from datetime import date

import pytest

from .tree import ROOT

FOLDER = ROOT / "docs" / "decisions"
RECORDS = sorted(FOLDER.glob("[0-9]*.md"))
TEMPLATE = (FOLDER / "template.md").read_text(encoding="utf-8")


def headings(text: str) -> list[str]:
    return re.findall(r"^## (.+)$", text, flags=re.MULTILINE)


def test_numbers_run_from_one_without_a_gap():
    numbers = [int(record.name[:4]) for record in RECORDS]
    assert numbers == list(range(1, len(RECORDS) + 1))


@pytest.mark.parametrize("record", RECORDS, ids=lambda record: record.stem)
class TestRecord:
    def test_has_its_number_in_the_name_and_the_title(self, record):
        assert re.fullmatch(r"\d{4}(-[a-z0-9]+)+\.md", record.name)
        assert record.read_text(encoding="utf-8").startswith(f"# {record.name[:4]} ")

    def test_answers_every_question_of_the_template(self, record):
        assert headings(record.read_text(encoding="utf-8")) == headings(TEMPLATE)

    def test_weighs_at_least_two_options(self, record):
        text = record.read_text(encoding="utf-8")
        options = text.partition("## Options")[2].partition("\n## ")[0].split("\n### ")[1:]
        assert len(options) >= 2
        assert all("- Good: " in option and "- Bad: " in option for option in options)

    def test_has_a_status_and_a_date(self, record):
        text = record.read_text(encoding="utf-8")
        assert re.search(r"^Status: (proposed|accepted|replaced by \d{4})$", text, re.MULTILINE)
        date.fromisoformat(re.search(r"^Date: (\S+)$", text, re.MULTILINE)[1])
