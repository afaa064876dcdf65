"""Rows of a meter's or a logger's CSV: when, and how much; whatever its columns are called."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final, NamedTuple

from ampwright.foundations.errors import BadFileError, Problem

from .times import Moment, is_time, read_time

TIME_WORD: Final = re.compile(r"time|date|start|from|interval|period|begin", re.IGNORECASE)
SENT_OUT: Final = re.compile(r"export|generat|solar|sold", re.IGNORECASE)
NO_READING: Final = frozenset({"", "null", "none", "nan", "-", "n/a"})
DELIMITERS: Final = ",;\t"
MOST_LINES_BEFORE: Final = 30
"""How far down a header may stand, under an account's name and address."""


class Reading(NamedTuple):
    """One reading: its line in the file, its time as written and read, its values by column."""

    line: int
    at: str
    time: Moment
    values: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """What a file holds: the header of each column of values, the readings, what was wrong."""

    columns: tuple[str, ...]
    readings: tuple[Reading, ...]
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class Columns:
    """Where the time and the values stand, and how many columns there are."""

    count: int
    times: tuple[int, ...]
    values: tuple[int, ...]


def read_sheet(name: str, text: str, unit: re.Pattern[str]) -> Sheet:
    """Return the readings of a CSV, in the order of their times.

    A column of values is one whose header names its unit; of several, those for what is sent
    out are left aside. Date and time may stand in one column or in two, under any name. A row
    that does not read is left out and named. Raises ``BadFileError`` when no header names a
    unit over rows with times, or when no row reads.
    """
    rows = _rows(text)
    header, columns = _header(name, rows, unit)
    readings: list[Reading] = []
    problems: list[Problem] = []
    for line, cells in rows:
        if line <= header[0] or not any(cell.strip() for cell in cells):
            continue
        found = _reading(line, cells, columns)
        (readings if isinstance(found, Reading) else problems).append(found)  # type: ignore[arg-type]
    if not readings:
        problems = problems or [Problem(header[0], "the rows", "", "at least one reading")]
        raise BadFileError(name, problems)
    readings.sort(key=lambda each: each.time.minutes)
    labels = tuple(header[1][index].strip() for index in columns.values)
    return Sheet(labels, tuple(readings), tuple(problems))


def _rows(text: str) -> list[tuple[int, list[str]]]:
    """Return the rows with their lines, by whichever mark separates most cells."""
    plain = text.removeprefix("\ufeff")
    mark = max(DELIMITERS, key=plain[:10_000].count)
    reader = csv.reader(io.StringIO(plain), delimiter=mark)
    return [(reader.line_num, cells) for cells in reader]


def _header(
    name: str, rows: Sequence[tuple[int, list[str]]], unit: re.Pattern[str]
) -> tuple[tuple[int, list[str]], Columns]:
    """Return the header and where its columns stand; raises ``BadFileError``."""
    for row, after in pairwise(rows[:MOST_LINES_BEFORE]):
        line, cells = row
        values = [i for i, cell in enumerate(cells) if unit.search(cell)]
        kept = [i for i in values if not SENT_OUT.search(cells[i])] or values
        named = [i for i, cell in enumerate(cells) if TIME_WORD.search(cell)]
        times = _times([*named, *(i for i in range(len(cells)) if i not in named)], after[1])
        if kept and times:
            return (line, cells), Columns(
                len(cells), times, tuple(i for i in kept if i not in times)
            )
    first = rows[0] if rows else (1, [])
    expected = "a header that names a time and, for the readings, their unit; rows under it"
    do = "Write for example: time, import (kWh)."
    raise BadFileError(name, [Problem(first[0], "the header", ",".join(first[1]), expected, do)])


def _times(likely: Sequence[int], cells: Sequence[str]) -> tuple[int, ...]:
    """Return the columns that make a whole time: one, or a date and a time beside it.

    ``likely`` holds every column, those first whose header speaks of a time.
    """
    there = [i for i in likely if i < len(cells)]
    for index in there:
        if is_time(cells[index]):
            return (index,)
    for first in there:
        for second in there:
            if is_time(f"{cells[first]} {cells[second]}"):
                return (first, second)
    return ()


def _reading(line: int, cells: Sequence[str], columns: Columns) -> Reading | Problem:
    """Return one row as a reading, or what is wrong with it."""
    wanted = (*columns.times, *columns.values)
    beyond = any(cell.strip() for cell in cells[columns.count :])
    if beyond or any(index >= len(cells) for index in wanted):
        return Problem(line, "the row", ",".join(cells), "as many cells as the header")
    at = " ".join(cells[index].strip() for index in columns.times)
    try:
        time = read_time(at)
    except ValueError as expected:
        return Problem(line, "time", at, str(expected))
    values = []
    for index in columns.values:
        cell = cells[index].strip()
        try:
            value = float(cell)
        except ValueError:
            nothing = cell.casefold() in NO_READING
            return Problem(line, at, cell, "a reading" if nothing else "a number with a point")
        if not 0 <= value < float("inf"):
            return Problem(line, at, cell, "nought or more")
        values.append(value)
    return Reading(line, at, time, tuple(values))


def most_common(numbers: Sequence[float]) -> float:
    """Return the number that stands most often; the first of equals.

    Examples
    --------
    >>> most_common((30.0, 30.0, 60.0))
    30.0
    """
    counts: dict[float, list[float]] = {}
    for number in numbers:
        counts.setdefault(number, []).append(number)
    return max(counts, key=lambda number: len(counts[number]))


def listed(problems: Iterator[Problem]) -> tuple[Problem, ...]:
    """Return problems in the order of their lines."""
    return tuple(sorted(problems, key=lambda each: each.line))
