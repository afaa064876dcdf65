"""Write the page of clauses from the clauses themselves: ``python tools/docs_clauses.py``."""

from __future__ import annotations

import tomllib
from functools import cache
from itertools import groupby
from pathlib import Path

from ampwright.standards.catalogue import ClauseInfo, Kind, clauses, modules

ROOT = Path(__file__).resolve().parents[1]
PAGE = ROOT / "docs" / "reference" / "clauses.md"
APART = ROOT / "tests" / "code_rules" / "clauses_asked.toml"
HEAD = """# Clauses

Written by `tools/docs_clauses.py` from the code; do not edit.

Every clause is one pure function. It **computes** a number by the printed formula, **requires**
something and says pass or fail with both numbers, or **decides** by the first row that hits.
The place after each says how far it may be trusted: nothing after it means that somebody printed
what it says where we could read it, though the number of a clause may still be recalled; *memory*
means that all of it was recalled. The wiring rules were taken from the text of 2022; confirm every
clause against the edition in force.

A clause that no stage of an option asks says so and why; every other is asked in some option.
"""


@cache
def unasked() -> dict[str, str]:
    """Return why no stage asks a clause, of those that none asks."""
    kept = tomllib.loads(APART.read_text("utf-8"))
    return {each["clause"]: kept["reasons"][each["why"]] for each in kept["apart"]}


def render() -> str:
    """Return the whole page as text."""
    parts = [HEAD, _counts()]
    for module, inside in groupby(clauses(), key=lambda clause: clause.module):
        parts.append(_section(module, list(inside)))
    return "\n".join(parts)


def _counts() -> str:
    """Return how many clauses there are of each kind."""
    found = clauses()
    counts = [f"{sum(clause.kind is kind for clause in found)} {kind.value}" for kind in Kind]
    return f"{len(found)} clauses: {', '.join(counts)}.\n"


def _section(module: str, inside: list[ClauseInfo]) -> str:
    """Return the clauses of one module."""
    said = {each.__name__: each.__doc__ or "" for each in modules()}
    title = module.removeprefix("ampwright.standards.").replace(".", " / ").replace("_", " ")
    head = f"## {title}\n\n{said[module].partition(chr(10))[0]}\n"
    return "\n".join([head, *(_clause(clause) for clause in inside)])


def _clause(clause: ClauseInfo) -> str:
    """Return one clause."""
    if clause.kind is Kind.DECIDES:
        return _ruling(clause)
    says = clause.says
    if clause.kind is Kind.COMPUTES:
        says = f"`{clause.symbol} = {clause.says}`"
    unit = f" [{clause.unit}]" if clause.unit else ""
    head = f"**`{clause.id}`** {clause.kind.value}: {says}{unit}"
    return f"{head}  \n{clause.summary}  \n*{_at(clause)}*\n{_why_unasked(clause)}"


def _why_unasked(clause: ClauseInfo) -> str:
    """Return the line that says why no stage asks a clause; empty where one does."""
    why = unasked().get(clause.id)
    return f"\nNo stage asks it: {why}.\n" if why else ""


def _ruling(clause: ClauseInfo) -> str:
    """Return a clause that decides, row by row."""
    lines = [
        f"**`{clause.id}`** decides: {clause.says}\n",
        "| | if | then | place |",
        "|---|---|---|---|",
    ]
    for number, ((words, outcome), place) in enumerate(
        zip(clause.rows, clause.places, strict=True), 1
    ):
        lines.append(f"| {number} | {words} | `{outcome}` | {place} |")
    return "\n".join([*lines, _why_unasked(clause)])


def _at(clause: ClauseInfo) -> str:
    """Return where a clause is written."""
    return "; ".join(str(place) for place in clause.places)


if __name__ == "__main__":
    PAGE.parent.mkdir(parents=True, exist_ok=True)
    PAGE.write_text(render(), encoding="utf-8")
