"""The demand of a home three ways: by the table, by its meter, by a logger; one of them counts."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Final, TypeVar

from ampwright.firm.basis import Basis
from ampwright.foundations.notes import tells
from ampwright.foundations.plural import count
from ampwright.foundations.quantity import Amperes, Count, Kilowatts, Volts
from ampwright.foundations.source import Place, SetBy, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes, given
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.supply_limits import nominal_v

from .half_hours import HalfHours, current_of_power
from .household import Demand
from .logger import Log

T = TypeVar("T", bound=float)

TABLE: Final = "household table"
HALF_HOURS: Final = "half-hour readings"
LOGGER: Final = "logger"
METHOD: Final = Place("Ampwright", at="method, demand three ways", trust=Trust.DERIVED)
A_YEAR: Final = Count(365)
NET: Final = "net of what sun and battery give, so the house may draw more"


@computes("I", "A", formula="1000 * P / U0 * Iline / sum(I)", place=METHOD)
def shared_current(
    P: Kilowatts,  # noqa: N803 - as printed
    U0: Volts,  # noqa: N803
    Iline: Amperes,  # noqa: N803
    I: tuple[Amperes, ...],  # noqa: E741, N803
) -> Amperes:
    """Return one line's part of a power, shared as the table's demand is.

    A meter's sum says nothing of its lines: a logger does.
    """
    return Amperes(1000 * P / U0 * Iline / sum(I))


@tells(METHOD, caution=True)
def beaten(by: str, lines: tuple[str, ...]) -> str:
    """Ask what a house draws that was seen to draw more than the demand that counts.

    ``lines`` are those on which the measured way ``by`` shows more.

    Examples
    --------
    >>> beaten("logger", ("L2",)).caution
    'by logger L2 drew more than the demand that counts: look for a load that is not listed'
    """
    return (
        f"by {by} {', '.join(lines)} drew more than the demand that counts: look for a load that "
        "is not listed"
    )


@dataclass(frozen=True, slots=True)
class Way:
    """The demand of each line by one method, with what it rests on and whether it counts."""

    by: str
    line_a: tuple[Amperes, ...]
    words: str
    counts: bool = False


@dataclass(frozen=True, slots=True)
class Compared:
    """The demand of each line that counts, by which method and why, beside all the others."""

    by: str
    now_a: tuple[Amperes, ...]
    reason: str
    ways: tuple[Way, ...]


def counted_demand(home: Home, basis: Basis, demand: Demand) -> Made[Compared]:
    """Return the demand that counts before a charge point is added, by the stated method.

    ``demand`` is that of the household table, which counts unless another is stated. Raises
    ``Unanswered`` for the figure of a stated method that nobody has noted.
    """
    return compared(home, demand, tuple(_measured(home, basis, demand)))


def beside_files(
    home: Home, basis: Basis, demand: Demand, files: tuple[Way, ...]
) -> Made[Compared]:
    """Return the same where a meter's or a logger's own file stands before what was noted of it."""
    ways = {way.by: way for way in (*_measured(home, basis, demand, files), *files)}
    return compared(home, demand, tuple(ways.values()))


def compared(home: Home, demand: Demand, measured: tuple[Way, ...]) -> Made[Compared]:
    """Return every way beside the others, and the one that counts.

    What was measured behind the sources of a home is net of what they give: then the table
    counts, whatever is stated.
    """
    stated = stated_way(home)
    chosen = next((each for each in measured if each.by == stated), None)
    table = Way(TABLE, demand.now_a, "each load by its kind, at its worst hour")
    counts, reason = table, "stated" if stated == TABLE else "nothing else is stated"
    if chosen is not None and _any_source(home):
        reason = f"{stated} is stated, but it is {NET}"
    elif chosen is not None:
        counts, reason = chosen, "stated"
    ways = tuple(replace(each, counts=each is counts) for each in (table, *measured))
    notes = tuple(beaten(each.by, over) for each in measured if (over := _over(each, counts)))
    return Made(Compared(counts.by, counts.line_a, reason, ways), notes=notes)


def stated_way(home: Home) -> str:
    """Return the method that was stated; empty where nobody stated one."""
    return if_said(lambda: home.supply.demand_by, "")


def _any_source(home: Home) -> bool:
    """Say whether anything in the home gives current."""
    return any(True for _ in home.sources.listed())


def _over(measured: Way, counts: Way) -> tuple[str, ...]:
    """Return the lines on which a measured way shows more than the one that counts."""
    pairs = zip(measured.line_a, counts.line_a, strict=True)
    return tuple(f"L{number}" for number, (seen, counted) in enumerate(pairs, 1) if seen > counted)


def _measured(
    home: Home, basis: Basis, demand: Demand, files: tuple[Way, ...] = ()
) -> Iterator[Way]:
    """Yield the ways whose figures are noted among the facts, and the one that is stated.

    A stated one of which there is a file need not be noted.
    """
    in_files = {way.by for way in files}
    stated = "" if stated_way(home) in in_files else stated_way(home)
    kw = _noted(stated == HALF_HOURS, lambda: home.supply.highest_half_hour_kw)
    if kw is not None:
        words = "highest half-hour of the meter; what is shorter does not show in it"
        yield Way(HALF_HOURS, over_lines(basis, demand, kw), words)
    reads: tuple[Callable[[], Amperes], ...] = (
        lambda: home.supply.logged_l1_a,
        lambda: home.supply.logged_l2_a,
        lambda: home.supply.logged_l3_a,
    )
    logged = [_noted(stated == LOGGER, read) for read in reads[: int(home.supply.phases)]]
    found = tuple(each for each in logged if each is not None)
    if len(found) == len(logged):
        yield Way(LOGGER, found, "highest half-hour of each line by our logger")


def _noted(needed: bool, read: Callable[[], T]) -> T | None:
    """Return a figure if it is noted; ``Unanswered`` when it is not and is needed."""
    if needed:
        return read()

    def maybe() -> T | None:
        return read()

    return if_said(maybe, None)


def over_lines(basis: Basis, demand: Demand, kw: Kilowatts) -> tuple[Amperes, ...]:
    """Return a meter's power as currents: shared over three lines as the table's demand is."""
    volts = nominal_v(basis.book)
    if len(demand.now_a) == 1 or not any(demand.now_a):
        return tuple(current_of_power(kw, volts) for _ in demand.now_a)
    return tuple(shared_current(kw, volts, each, demand.now_a) for each in demand.now_a)


def from_half_hours(basis: Basis, demand: Demand, name: str, found: HalfHours) -> Way:
    """Return the way of a meter's file."""
    span = f"{count(len(found.each), 'half-hour')} on {count(found.days, 'day')}"
    words = f"{name}: the highest of {span}, {found.highest.at}"
    if found.days < A_YEAR:
        words = f"{words}; less than a year, so the coldest week may be missing"
    highest_kw = found.highest.kw
    if basis.keeps_working:
        highest_kw = given("Phh", highest_kw, "kW", SetBy("meter readings", words))
    return Way(HALF_HOURS, over_lines(basis, demand, highest_kw), words)


def from_log(basis: Basis, name: str, found: Log) -> Way:
    """Return the way of a logger's file."""
    peaks = ", ".join(f"{each.line} {each.peak_a:g} A" for each in found.lines)
    words = f"{name}: highest half-hour of {count(found.days, 'day')}; peaks {peaks}"
    currents = tuple(each.half_hour_a for each in found.lines)
    if basis.keeps_working:
        source = SetBy("logger", words)
        currents = tuple(given("Ilog", each, "A", source) for each in currents)
    return Way(LOGGER, currents, words)
