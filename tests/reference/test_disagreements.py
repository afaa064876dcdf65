"""What does not agree is kept: both figures, which we use and why; and the page that shows it."""

from __future__ import annotations

import tomllib
from importlib import import_module
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path

import pytest

from ampwright.tables.book import Book

from .agreement import DISAGREEMENTS, ROUNDING, files, plain

ROOT = Path(__file__).resolve().parents[2]
BOOK = Book()
PAGES = ["disagreements", "agreements"]


def entries(kind):
    """Every entry of one kind with the file it stands in."""
    return [
        pytest.param(entry, id=f"{path.stem}-{number}")
        for path in files(DISAGREEMENTS)
        for number, entry in enumerate(tomllib.loads(path.read_text("utf-8")).get(kind, []), 1)
    ]


@pytest.mark.parametrize("entry", entries("with_our_arithmetic"))
def test_the_printed_figure_is_still_not_ours(entry):
    """One that came to agree belongs among the cases."""
    module, _, name = entry["function"].rpartition(".")
    given = {key: plain(value) for key, value in entry["inputs"].items()}
    ours = getattr(import_module(module), name)(**given)
    assert abs(ours - entry["printed"]) > entry["half_step"] + ROUNDING
    assert entry["used"] in ("ours", "printed")
    assert entry["found"] in ("printed", "recalled")
    assert entry["why"] and entry["by"] and entry["what"]


@pytest.mark.parametrize("entry", entries("between_publications"))
def test_both_figures_are_kept_and_ours_is_what_the_table_holds(entry):
    assert len(entry["figures"]) == 2
    assert len({figure["says"] for figure in entry["figures"]}) == 2
    assert all(figure["by"] for figure in entry["figures"])
    assert entry["used"] and entry["why"]
    if "table" in entry:
        assert BOOK.number(entry["table"], entry["column"], **entry["keys"]) == entry["holds"]


@pytest.mark.parametrize("page", PAGES)
def test_the_page_is_the_one_the_cases_give(page):
    tool = spec_from_file_location(f"docs_{page}", ROOT / "tools" / f"docs_{page}.py")
    module = module_from_spec(tool)
    tool.loader.exec_module(module)
    written = (ROOT / "docs" / "reference" / f"{page}.md").read_text(encoding="utf-8")
    assert written == module.render(), f"run tools/docs_{page}.py"
