"""Cells that a firm read in its own copy of a document, laid over the packaged ones."""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from ampwright.foundations.errors import BadFileError, NotFoundError, Problem
from ampwright.foundations.source import Place
from ampwright.tables.book import Override
from ampwright.tables.loader import Key, Keys, Table, table, table_names

from .rows import BadCell, cells_of, columns_of, read_cells


@dataclass(frozen=True, slots=True)
class OwnCell:
    """One row of the file: a cell of a packaged table, what the copy says and who read it.

    ``keys`` names the row as ``size_mm2=10; method=102``.
    """

    table: str
    keys: str
    column: str
    value: float
    document: str
    edition: str
    at: str
    read_by: str
    read_on: date


HEADER = ",".join(each.name for each in columns_of(OwnCell))
"""The first line of the file."""


def read_own_cells(name: str, text: str) -> tuple[Override, ...]:
    """Return the cells of a firm's own copies; raises ``BadFileError`` with every problem.

    A cell is laid only over one that is there, and only once.
    """
    columns = columns_of(OwnCell)
    found: dict[tuple[str, Keys, str], Override] = {}
    problems: list[Problem] = []
    for cells in cells_of(name, text, [each.name for each in columns]):
        try:
            made = _override(OwnCell(**read_cells(columns, cells)))
            where = made.table, tuple(key for _, key in made.keys), made.column
            if where in found:
                raise BadCell("keys", cells["keys"], "a cell that stands once")
            found[where] = made
        except BadCell as bad:
            problems.append(Problem(int(cells["line"]), bad.column, bad.cell, bad.expected))
    if problems:
        raise BadFileError(name, problems)
    return tuple(found.values())


def _override(said: OwnCell) -> Override:
    """Return what a row lays over which cell; raises ``BadCell``."""
    try:
        packaged = table(said.table)
    except NotFoundError:
        near = difflib.get_close_matches(said.table, table_names(), 3, cutoff=0.4)
        what = f" such as {' or '.join(near)}" if near else ""
        raise BadCell("table", said.table, f"the name of a published table{what}") from None
    keys = _keys(packaged, said.keys)
    cells = packaged.numbers.get(said.column)
    if cells is None:
        raise BadCell("column", said.column, f"one of {', '.join(packaged.numbers)}")
    if tuple(keys.values()) not in cells:
        raise BadCell("keys", said.keys, f"a row of {said.table} with a figure in {said.column}")
    at = f"{said.at}, read by {said.read_by} on {said.read_on}"
    source = Place(said.document, said.edition, at)
    return Override(said.table, tuple(keys.items()), said.column, said.value, source)


def _keys(packaged: Table, said: str) -> Mapping[str, Key]:
    """Return the keys that name a row, in the order of the table; raises ``BadCell``."""
    expected = "; ".join(f"{name}=…" for name in packaged.keys)
    pairs = (part.partition("=") for part in said.split(";"))
    parts = {name.strip(): key.strip() for name, _, key in pairs}
    if set(parts) != set(packaged.keys):
        raise BadCell("keys", said, expected)
    return {name: _key(packaged, name, parts[name]) for name in packaged.keys}


def _key(packaged: Table, name: str, said: str) -> Key:
    """Return one key, a number where the table's are; raises ``BadCell``."""
    if isinstance(packaged.values_of(name)[0], str):
        return said
    try:
        return float(said)
    except ValueError:
        raise BadCell("keys", said, f"a number for {name}") from None
