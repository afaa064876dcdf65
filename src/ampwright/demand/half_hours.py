"""Half-hour meter readings: from the file a supplier gives to the highest half-hour."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import chain, pairwise
from typing import Final

from ampwright.foundations.errors import BadFileError, Problem
from ampwright.foundations.quantity import Amperes, Count, KilowattHours, Kilowatts, Minutes, Volts
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

from .sheets import Reading, listed, most_common, read_sheet
from .times import METHOD, clocks_go_back, clocks_go_forward, elapsed, with_an_hour

UNIT: Final = re.compile(r"(?<![a-z])(kwh|wh|kw|w|a|amps?|amperes?)(?![a-z])", re.IGNORECASE)
HALF_HOUR: Final = Minutes(30.0)
A_DAY: Final = 48
CONVERSION: Final = Place(
    "operators' form for low-carbon devices", "earlier edition", "cover notes: 60 A is 13.8 kVA"
)
TIMES_THE_HOUR: Final = Place("arithmetic", at="energy over time", trust=Trust.DERIVED)


@computes("P", "kW", formula="60 * E / t", place=TIMES_THE_HOUR)
def mean_power(E: KilowattHours, t: Minutes) -> Kilowatts:  # noqa: N803 - as printed
    """Return the mean power of an energy over some minutes."""
    return Kilowatts(60 * E / t)


@computes("E", "kWh", formula="Ewh / 1000", place=TIMES_THE_HOUR)
def in_kilowatt_hours(Ewh: float) -> KilowattHours:  # noqa: N803
    """Return watt-hours as kilowatt-hours."""
    return KilowattHours(Ewh / 1000)


@computes("P", "kW", formula="Pw / 1000", place=TIMES_THE_HOUR)
def in_kilowatts(Pw: float) -> Kilowatts:  # noqa: N803
    """Return watts as kilowatts."""
    return Kilowatts(Pw / 1000)


@computes("P", "kW", formula="I * U0 / 1000", place=CONVERSION)
def power_of_current(I: Amperes, U0: Volts) -> Kilowatts:  # noqa: E741, N803
    """Return the power of a current at nominal voltage."""
    return Kilowatts(I * U0 / 1000)


@computes("I", "A", formula="1000 * P / U0", place=CONVERSION)
def current_of_power(P: Kilowatts, U0: Volts) -> Amperes:  # noqa: N803
    """Return the current of a power on one line at nominal voltage, at unity power factor."""
    return Amperes(1000 * P / U0)


@computes("n", "", formula="t / step - 1", place=METHOD)
def missing_between(t: Minutes, step: Minutes) -> float:
    """Return how many readings are missing between two that lie so many minutes apart."""
    return t / step - 1


@dataclass(frozen=True, slots=True)
class HalfHour:
    """The mean power of one half-hour, its time as the file writes it, and its line there."""

    at: str
    kw: Kilowatts
    line: int


@dataclass(frozen=True, slots=True)
class HalfHours:
    """The half-hours of a meter: all of them, the highest, and what was wrong with the file.

    ``days`` counts the days on which anything was read.
    """

    each: tuple[HalfHour, ...]
    highest: HalfHour
    first: date
    last: date
    days: Count
    problems: tuple[Problem, ...]


def read_half_hours(name: str, text: str, nominal_v: Volts, most_kw: Kilowatts) -> HalfHours:
    """Return the half-hours of a CSV with a time and a column of kWh, Wh, kW, W or A.

    The time is that of each half-hour as the meter labels it, by its start or by its end. Gaps,
    repeated times, clock changes and figures above ``most_kw``, what the supply can pass, are
    named and survived; a file of another step is refused, as an hour hides its worse half,
    and so is one of what the meter's dial shows.
    Raises ``BadFileError``.
    """
    sheet = read_sheet(name, text, UNIT)
    if len(sheet.columns) > 1:
        expected = "one column of readings with a unit"
        do = "Leave only the column for what the house takes in."
        raise BadFileError(name, [Problem(1, "header", ", ".join(sheet.columns), expected, do)])
    to_kw = power_in(sheet.columns[0], nominal_v)
    readings, repeated = without_repeats(sheet.readings)
    _refuse_other_steps(name, readings)
    _refuse_register(name, readings)
    found = tuple(HalfHour(each.at, to_kw(each.values[0]), each.line) for each in readings)
    highest = max(found, key=lambda each: each.kw)
    problems = chain(sheet.problems, repeated, gaps(readings, HALF_HOUR), _too_much(found, most_kw))
    days = [each.time.day for each in readings]
    return HalfHours(found, highest, days[0], days[-1], Count(len(set(days))), listed(problems))


def power_in(header: str, nominal_v: Volts) -> Callable[[float], Kilowatts]:
    """Return what turns a figure under a header into the mean power of its half-hour."""
    match = UNIT.search(header)
    unit = match[1].casefold() if match else ""
    if unit == "kwh":
        return lambda value: mean_power(KilowattHours(value), HALF_HOUR)
    if unit == "wh":
        return lambda value: mean_power(in_kilowatt_hours(value), HALF_HOUR)
    if unit == "kw":
        return Kilowatts
    if unit == "w":
        return in_kilowatts
    return lambda value: power_of_current(Amperes(value), nominal_v)


def without_repeats(readings: Sequence[Reading]) -> tuple[tuple[Reading, ...], list[Problem]]:
    """Return readings with each time once, and each repeat named; the larger of two stands.

    Times that the clock goes through twice in October are both kept.
    """
    kept: list[Reading] = []
    problems: list[Problem] = []
    for each in readings:
        before = kept[-1] if kept else None
        if before is None or before.time.minutes != each.time.minutes:
            kept.append(each)
            continue
        twice = [old for old in kept[-2:] if old.time.minutes == each.time.minutes]
        if clocks_go_back(each.time) and len(twice) == 1:
            kept.append(each)
            do = "The clocks go back that night: both are kept."
        elif before.values == each.values:
            do = "It says the same: one is kept."
        else:
            kept[-1] = max(before, each, key=lambda one: one.values)
            do = "They differ: the larger is kept."
        problems.append(Problem(each.line, "time", each.at, "each time once", do))
    return tuple(kept), problems


def gaps(readings: Sequence[Reading], step: Minutes) -> Iterator[Problem]:
    """Yield each gap between readings, but for the hour that a clock leaves out in March."""
    for before, after in pairwise(readings):
        apart = elapsed(before.time.minutes, after.time.minutes)
        if apart <= step:
            continue
        count = f"{missing_between(apart, step):.0f} missing"
        span = f"{before.at} to {after.at}"
        if clocks_go_forward(before.time) and apart == with_an_hour(step):
            yield Problem(
                after.line, span, count, "no gap",
                "The clocks go forward that night: nothing is missing.",
            )  # fmt: skip
        else:
            yield Problem(after.line, span, count, f"a reading every {step:g} minutes")


def _refuse_other_steps(name: str, readings: Sequence[Reading]) -> None:
    """Raise ``BadFileError`` unless most readings lie half an hour apart."""
    apart = [
        elapsed(before.time.minutes, after.time.minutes) for before, after in pairwise(readings)
    ]
    step = most_common(apart) if apart else HALF_HOUR
    if step != HALF_HOUR:
        expected = "half an hour from reading to reading"
        do = "Ask the supplier for half-hour readings, or fit a logger."
        raise BadFileError(name, [Problem(1, "time", f"{step:g} minutes", expected, do)])


def _refuse_register(name: str, readings: Sequence[Reading]) -> None:
    """Raise ``BadFileError`` for what a meter's dial shows, which only ever rises."""
    rises = all(before.values <= after.values for before, after in pairwise(readings))
    if rises and len(readings) > A_DAY and readings[0].values < readings[-1].values:
        expected = "what was used in each half-hour"
        do = "These figures only rise: they are the meter's dial. Ask for the half-hours."
        raise BadFileError(name, [Problem(readings[0].line, "the readings", "", expected, do)])


def _too_much(found: Sequence[HalfHour], most_kw: Kilowatts) -> Iterator[Problem]:
    """Yield one problem for figures that the supply could not have passed."""
    above = [each for each in found if each.kw > most_kw]
    if above:
        worst = max(above, key=lambda each: each.kw)
        yield Problem(
            worst.line, worst.at, f"{worst.kw:g} kW, and {len(above)} such in all",
            f"at most {most_kw:g} kW, what the supply can pass",
            "Look at the unit in the header: watt-hours are a thousand to the kilowatt-hour.",
        )  # fmt: skip
