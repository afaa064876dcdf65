"""Write the page of disagreements from the cases: ``python tools/docs_disagreements.py``."""

from __future__ import annotations

import sys
import tomllib
from importlib import import_module
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[1]
PAGE = ROOT / "docs" / "reference" / "disagreements.md"
HEAD = """# Disagreements

Written by `tools/docs_disagreements.py` from `tests/reference/disagreements`; do not edit.

Where a printed figure is not what our arithmetic gives, to the last digit that was printed, and
where two publications print different figures. Nothing here was tuned away: a test fails if one of
these comes to agree, and then it moves to the cases. *Printed* means that somebody printed the
figure where we could read it; *recalled* that it is remembered only. Where the printed figure is
used, it is the book's own figure that binds, and the difference shows how coarsely it is rounded.
"""


def render() -> str:
    """Return the whole page as text."""
    sys.path.insert(0, str(ROOT))
    from tests.reference.agreement import DISAGREEMENTS, files

    cards = [tomllib.loads(path.read_text(encoding="utf-8")) for path in files(DISAGREEMENTS)]
    ours = sum(len(card.get("with_our_arithmetic", [])) for card in cards)
    theirs = sum(len(card.get("between_publications", [])) for card in cards)
    counts = f"{ours} with our arithmetic, {theirs} between publications.\n"
    return "\n".join([HEAD, counts, *(_section(card) for card in cards)])


def _section(card: dict[str, Any]) -> str:
    """Return the disagreements of one subject."""
    parts = [f"## {card['summary']}\n"]
    if card.get("with_our_arithmetic"):
        parts += [
            "| what | printed | by | ours | we use | why |",
            "|---|---|---|---|---|---|",
            *(_arithmetic(entry) for entry in card["with_our_arithmetic"]),
            "",
        ]
    if card.get("between_publications"):
        parts += [
            "| what | one says | another says | we use | why |",
            "|---|---|---|---|---|",
            *(_publications(entry) for entry in card["between_publications"]),
            "",
        ]
    return "\n".join(parts)


def _arithmetic(entry: dict[str, Any]) -> str:
    """Return one row: a printed figure and what a clause makes of the same inputs."""
    from tests.reference.agreement import plain

    module, _, name = entry["function"].rpartition(".")
    clause = getattr(import_module(module), name)
    ours = clause(**{key: plain(value) for key, value in entry["inputs"].items()})
    by = entry["by"] if entry["found"] in entry["by"] else f"{entry['by']} ({entry['found']})"
    figures = f"{entry['printed']:.6g} {entry['unit']} | {by} | {ours:.5g} {entry['unit']}"
    return f"| {entry['what']} | {figures} | {entry['used']} | {entry['why']} |"


def _publications(entry: dict[str, Any]) -> str:
    """Return one row: two publications and their figures."""
    told = " | ".join(f"{figure['says']}: {figure['by']}" for figure in entry["figures"])
    what = f"{entry['what']}, {entry['unit']}" if entry["unit"] else entry["what"]
    return f"| {what} | {told} | {entry['used']} | {entry['why']} |"


if __name__ == "__main__":
    PAGE.write_text(render(), encoding="utf-8")
