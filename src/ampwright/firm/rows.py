"""Rows of a file as frozen dataclasses: one declaration types the code and the file.

A column is a field; its type says how it is read and, where it is a quantity, its unit. Nothing
is guessed: an unknown column, a missing one or a cell that does not read refuses the file whole.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Mapping, Sequence
from dataclasses import MISSING, dataclass, field, fields, replace
from datetime import date
from enum import Enum
from functools import cache
from types import NoneType, UnionType
from typing import Any, TypeVar, Union, get_args, get_origin, get_type_hints

from ampwright.foundations.errors import BadFileError, Problem
from ampwright.foundations.quantity import UNIT_OF
from ampwright.foundations.source import Source
from ampwright.foundations.working import given

R = TypeVar("R")


def column(symbol: str = "", says: str = "") -> Any:
    """Declare a column: its symbol in a working and what it says."""
    return field(metadata={"symbol": symbol, "says": says})


@dataclass(frozen=True, slots=True)
class Column:
    """One column of a kind of row, as its field declares it."""

    name: str
    kind: type
    unit: str
    symbol: str
    says: str
    may_be_blank: bool

    @property
    def is_number(self) -> bool:
        """Whether the column holds a quantity or money, which may carry a working; no count."""
        return self.kind is float or (self.kind is int and bool(self.unit))

    def read(self, cell: str) -> object:
        """Return the value of a cell; raises ``ValueError`` with what was expected."""
        if not cell:
            if self.may_be_blank:
                return None
            raise ValueError("a value")
        return READ.get(self.kind, _one_of(self.kind))(cell)


def _yes_or_no(cell: str) -> bool:
    if cell not in ("yes", "no"):
        raise ValueError("yes or no")
    return cell == "yes"


def _number(cell: str) -> float:
    try:
        return float(cell)
    except ValueError:
        raise ValueError("a number") from None


def _whole(cell: str) -> int:
    try:
        return int(cell)
    except ValueError:
        raise ValueError("a whole number") from None


def _day(cell: str) -> date:
    try:
        return date.fromisoformat(cell)
    except ValueError:
        raise ValueError("a date such as 2026-10-15") from None


def _one_of(kind: type) -> Callable[[str], object]:
    """Return a reader of the values of an enumeration."""

    def read(cell: str) -> object:
        assert issubclass(kind, Enum)
        try:
            return kind(cell)
        except ValueError:
            raise ValueError(f"one of {', '.join(each.value for each in kind)}") from None

    return read


READ: dict[type, Callable[[str], object]] = {
    bool: _yes_or_no, float: _number, int: _whole, str: str, date: _day,
}  # fmt: skip


def columns_of(kind: type) -> tuple[Column, ...]:
    """Return the columns of a kind of row, in order."""
    return _columns(kind)


@cache
def _columns(kind: type) -> tuple[Column, ...]:
    hints = get_type_hints(kind)
    return tuple(
        _column(each.name, hints[each.name], each.metadata)
        for each in fields(kind)
        if each.default is MISSING and each.default_factory is MISSING
    )


def _column(name: str, hint: Any, metadata: Mapping[str, str]) -> Column:
    may_be_blank = get_origin(hint) in (Union, UnionType) and NoneType in get_args(hint)
    if may_be_blank:
        (hint,) = (each for each in get_args(hint) if each is not NoneType)
    unit = UNIT_OF.get(getattr(hint, "__name__", ""), "")
    kind = getattr(hint, "__supertype__", hint)
    symbol, says = metadata.get("symbol", ""), metadata.get("says", "")
    return Column(name, kind, unit, symbol or name, says, may_be_blank)


def cells_of(name: str, text: str, wanted: Sequence[str]) -> list[dict[str, str]]:
    """Return the rows of a CSV as text, each with its ``line``; raises ``BadFileError``.

    Shape: the header must hold the wanted columns, no fewer and no more, in any order.
    """
    reader = csv.reader(io.StringIO(text))
    header = next(reader, [])
    if sorted(header) != sorted(wanted):
        problem = Problem(1, "the header", ",".join(header), f"the columns {', '.join(wanted)}")
        raise BadFileError(name, [problem])
    found, problems = [], []
    for cells in reader:
        if not cells:
            continue
        if len(cells) != len(header):
            expected = f"{len(header)} cells, got {len(cells)}"
            problems.append(Problem(reader.line_num, "the row", ",".join(cells), expected))
            continue
        row = dict(zip(header, (cell.strip() for cell in cells), strict=True))
        found.append({**row, "line": str(reader.line_num)})
    if problems:
        raise BadFileError(name, problems)
    return found


def read_rows(name: str, text: str, kind: type[R]) -> tuple[R, ...]:
    """Return the rows of a CSV whose columns are the fields of ``kind``.

    Raises ``BadFileError`` with every problem at once; an ``id`` that stands twice is one.
    """
    columns = columns_of(kind)
    made: dict[str, R] = {}
    problems: list[Problem] = []
    for cells in cells_of(name, text, [each.name for each in columns]):
        line, id_ = int(cells["line"]), cells[columns[0].name]
        if id_ in made:
            problems.append(Problem(line, columns[0].name, id_, "an id that stands once"))
        try:
            made[id_] = kind(**read_cells(columns, cells))
        except BadCell as bad:
            problems.append(Problem(line, bad.column, bad.cell, bad.expected))
    if problems:
        raise BadFileError(name, problems)
    return tuple(made.values())


class BadCell(Exception):  # noqa: N818 - caught where the line is known
    """A cell that does not read; carries the column, the cell and what was expected."""

    def __init__(self, column: str, cell: str, expected: str) -> None:
        self.column, self.cell, self.expected = column, cell, expected
        super().__init__(column, cell, expected)


def read_cells(columns: Sequence[Column], cells: Mapping[str, str]) -> dict[str, Any]:
    """Return the value of each cell; raises ``BadCell`` at the first that does not read."""
    values = {}
    for each in columns:
        cell = cells[each.name]
        try:
            values[each.name] = each.read(cell)
        except ValueError as expected:
            raise BadCell(each.name, cell, str(expected)) from None
    return values


def with_sources(row: R, source_of: Callable[[str], Source]) -> R:
    """Return the same row whose numbers carry a working, each from the source of its column."""
    changes = {}
    for each in columns_of(type(row)):
        value = getattr(row, each.name)
        if each.is_number and value is not None:
            changes[each.name] = given(each.symbol, value, each.unit, source_of(each.name))
    made: R = replace(row, **changes)  # type: ignore[type-var]
    return made
