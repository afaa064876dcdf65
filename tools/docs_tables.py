"""Write the page of published tables from their cards: ``python tools/docs_tables.py``."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from itertools import groupby
from pathlib import Path

from ampwright.foundations.source import Trust
from ampwright.tables.card import Column, Reading
from ampwright.tables.catalogue import Listed, all_tables

PAGE = Path(__file__).resolve().parents[1] / "docs" / "reference" / "tables.md"
HEAD = """# Published tables

Written by `tools/docs_tables.py` from the cards; do not edit.

Every table is a CSV file with a card beside it, in `src/ampwright/tables/data`. A row is
**published** where somebody printed it where we could read it, **common practice** where the trade
does it so, **derived** where it follows from the rest, **memory** where it was recalled: such a row
prints so wherever it is used, until a firm lays a cell of its own copy over it. *Doubtful* marks
what should be looked up first.

The wiring rules are the text of 2018+A2:2022, which BS 7671:2018+A4:2026 replaced on 15 October
2026, and none of it was read in the standard itself: confirm every figure against the edition in
force.
"""
LINES = {
    "none": "only the rows there are",
    "linear": "on a straight line",
    "next_larger": "the next larger row",
}


def render() -> str:
    """Return the whole page as text."""
    parts = [HEAD, _counts()]
    for family, tables in groupby(all_tables(), key=lambda each: each.name.partition("/")[0]):
        parts.append(f"## {family.replace('_', ' ')}\n")
        parts.extend("\n".join(_table(each)) for each in tables)
    return "\n".join(parts)


def _counts() -> str:
    """Return how many tables and rows there are of each trust."""
    rows: Counter[Trust] = Counter()
    for each in all_tables():
        rows.update(dict(each.by_trust))
    said = ", ".join(f"{rows[trust]} {trust.value}" for trust in Trust)
    doubtful = sum(each.doubtful for each in all_tables())
    return f"{len(all_tables())} tables, {rows.total()} rows: {said}; {doubtful} doubtful.\n"


def _table(each: Listed) -> Iterator[str]:
    """Yield the lines of one table."""
    card = each.card
    until = f" to {card.in_force_until}" if card.in_force_until else ""
    yield f"### {card.title}\n"
    yield f"`{each.name}`: {_document(each)}, in force from {card.in_force_from}{until}\n"
    yield f"- {each.rows} row{'s' if each.rows > 1 else ''}: {each.trust_words}"
    yield f"- covers {'; '.join(each.covers)}"
    values = [column for name, column in card.columns.items() if name not in card.keys]
    if values:
        yield f"- gives {'; '.join(map(_column, values))}"
    if card.between_rows != "none":
        key = card.columns[card.between_key]
        yield f"- between rows of {key.meaning}: {LINES[card.between_rows]}"
    if card.conditions:
        yield f"- conditions: {card.conditions}"
    if card.found_at:
        yield f"- read in: {'; '.join(card.found_at)}"
    yield f"- second reading: {_reading(card.second_reading)}"
    if card.replace_by:
        yield f"- recalled rows to be replaced by: {card.replace_by}"
    yield ""


def _document(each: Listed) -> str:
    """Return document, edition and place, leaving the trust to the count of rows."""
    place = each.place
    name = f"{place.document}:{place.edition}" if place.edition else place.document
    return f"{name}, {place.at}"


def _column(column: Column) -> str:
    """Return what a column gives."""
    symbol = f"{column.symbol}, " if column.symbol else ""
    return f"{symbol}{column.meaning}" + (f" [{column.unit}]" if column.unit else "")


def _reading(reading: Reading) -> str:
    """Return what the values were read against, or why they were not."""
    if reading.why_not:
        return f"none, {reading.why_not}"
    return f"{reading.on}, {reading.against}"


if __name__ == "__main__":
    PAGE.parent.mkdir(parents=True, exist_ok=True)
    PAGE.write_text(render(), encoding="utf-8")
