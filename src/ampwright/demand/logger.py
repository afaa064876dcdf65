"""A logger's minutes on each line: the highest half-hour and the highest peak."""

from __future__ import annotations

import re
from collections import deque
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import chain, pairwise
from typing import Final

from ampwright.foundations.errors import BadFileError, Problem
from ampwright.foundations.quantity import Amperes, Count, Minutes
from ampwright.foundations.working import computes

from .half_hours import HALF_HOUR, gaps, without_repeats
from .household import LINES
from .sheets import Reading, listed, most_common, read_sheet
from .times import METHOD, elapsed

UNIT: Final = re.compile(r"(?<![a-z])(a|amps?|amperes?)(?![a-z])", re.IGNORECASE)
LINE: Final = re.compile(r"(?<![a-z])(?:L|line |phase )([123])(?!\d)", re.IGNORECASE)
LONGEST_STEP: Final = Minutes(5.0)
"""A longer step hides what a line carries between two readings."""


@computes("I", "A", formula="sum(I) / n", place=METHOD)
def mean_of(I: tuple[Amperes, ...], n: Count) -> Amperes:  # noqa: E741, N803 - as printed
    """Return the mean of so many currents."""
    return Amperes(sum(I) / n)


@computes("n", "", formula="t / step", place=METHOD)
def steps_in(t: Minutes, step: Minutes) -> float:
    """Return how many steps fit into some minutes."""
    return t / step


@dataclass(frozen=True, slots=True)
class LineLog:
    """One line: its highest mean over any half-hour, its highest reading, and when each ended."""

    line: str
    half_hour_a: Amperes
    half_hour_at: str
    peak_a: Amperes
    peak_at: str


@dataclass(frozen=True, slots=True)
class Log:
    """What a logger read on each line, from when to when, and what was wrong with its file."""

    lines: tuple[LineLog, ...]
    step_min: Minutes
    first_at: str
    last_at: str
    days: Count
    problems: tuple[Problem, ...]


def read_log(name: str, text: str, phases: int) -> Log:
    """Return what a logger's CSV says of each line, from a time and a column of amperes a line.

    Columns are told apart by L1, L2 and L3 in their headers. A half-hour is any thirty minutes
    that follow one another without a gap, not only those of the clock. Gaps and repeated times
    are named and survived; a step over five minutes, or one that does not divide the half-hour,
    is refused. Raises ``BadFileError``.
    """
    sheet = read_sheet(name, text, UNIT)
    order = _columns(name, sheet.columns, phases)
    readings, repeated = without_repeats(sheet.readings)
    step, count = _step(name, readings)
    lines = tuple(
        _line(name, LINES[number], index, readings, step, count)
        for number, index in enumerate(order)
    )
    problems = chain(sheet.problems, repeated, gaps(readings, step))
    days = {each.time.day for each in readings}
    return Log(lines, step, readings[0].at, readings[-1].at, Count(len(days)), listed(problems))


def _columns(name: str, headers: Sequence[str], phases: int) -> tuple[int, ...]:
    """Return which column of values belongs to each line; raises ``BadFileError``."""
    named = {f"L{found[1]}": i for i, each in enumerate(headers) if (found := LINE.search(each))}
    wanted = LINES[:phases]
    if phases == 1 and len(headers) == 1:
        return (0,)
    if set(named) >= set(wanted):
        return tuple(named[line] for line in wanted)
    expected = f"a column in A for each of {', '.join(wanted)}"
    raise BadFileError(
        name, [Problem(1, "header", ", ".join(headers), expected, "Name the lines: L1 (A).")]
    )


def _step(name: str, readings: Sequence[Reading]) -> tuple[Minutes, Count]:
    """Return the usual step and how many make a half-hour; raises ``BadFileError``."""
    apart = [
        elapsed(before.time.minutes, after.time.minutes) for before, after in pairwise(readings)
    ]
    step = Minutes(most_common([each for each in apart if each > 0] or [HALF_HOUR]))
    count = steps_in(HALF_HOUR, step)
    if step > LONGEST_STEP or not count.is_integer():
        expected = f"a step of at most {LONGEST_STEP:g} minutes that divides the half-hour"
        do = "Set the logger to one minute."
        raise BadFileError(name, [Problem(1, "time", f"{step:g} minutes", expected, do)])
    return step, Count(int(count))


def _line(
    name: str, line: str, index: int, readings: Sequence[Reading], step: Minutes, count: Count
) -> LineLog:
    """Return the highest half-hour and the highest reading of one line."""
    peak = max(readings, key=lambda each: each.values[index])
    halves = list(_half_hours(index, readings, step, count))
    if not halves:
        expected = "half an hour of readings without a gap"
        raise BadFileError(name, [Problem(readings[0].line, line, "none", expected)])
    mean_a, ended = max(halves, key=lambda each: each[0])
    return LineLog(line, mean_a, ended, Amperes(peak.values[index]), peak.at)


def _half_hours(
    index: int, readings: Sequence[Reading], step: Minutes, count: Count
) -> Iterator[tuple[Amperes, str]]:
    """Yield the mean of every run of readings that makes half an hour, and when it ended."""
    window: deque[Amperes] = deque(maxlen=count)
    before: Reading | None = None
    for each in readings:
        if before and elapsed(before.time.minutes, each.time.minutes) != step:
            window.clear()
        window.append(Amperes(each.values[index]))
        before = each
        if len(window) == count:
            yield mean_of(tuple(window), count), each.at
