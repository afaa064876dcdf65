"""The demand of a home three ways side by side, from its loads and from files of readings."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from ampwright.demand.compare import Way, beside_files, from_half_hours, from_log
from ampwright.demand.half_hours import power_of_current, read_half_hours
from ampwright.demand.household import Demand, household_demand
from ampwright.demand.logger import read_log
from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Unanswered
from ampwright.foundations.errors import InputError, Problem
from ampwright.foundations.quantity import Kilowatts
from ampwright.options.chances import most_usual
from ampwright.survey.home import Home
from ampwright.tables.supply_limits import nominal_v

from .facts import fact_name, words_of
from .files import read_text
from .heads import basis_head
from .homes import read_home
from .questions import question
from .seeing import Terms, basis_for
from .shapes import BasisHead, HomeHead
from .working_shapes import Taken


@dataclass(frozen=True, slots=True)
class DemandWay:
    """The demand of each line by one method, before the point; ``counts``: it is judged by this."""

    by: str
    line_a: tuple[float, ...]
    words: str
    counts: bool


@dataclass(frozen=True, slots=True)
class ToKeep:
    """A figure of a file as it is put among the facts of the home."""

    key: str
    what: str
    value: str
    file: str


@dataclass(frozen=True, slots=True)
class DemandAnswer:
    """The ways side by side, why one of them counts, and what was wrong with the files.

    ``taken`` holds what was open and was taken as most usual.
    """

    home: HomeHead
    basis: BasisHead
    ways: tuple[DemandWay, ...]
    reason: str
    cautions: tuple[str, ...]
    problems: tuple[str, ...]
    keep: tuple[ToKeep, ...]
    taken: tuple[Taken, ...]


@dataclass(frozen=True, slots=True)
class Readings:
    """One file of readings: the way it gives, the figures to keep, what was wrong with it."""

    way: Way
    keep: tuple[ToKeep, ...]
    problems: tuple[Problem, ...]


def demand(
    path: Path, terms: Terms, half_hours: Path | None = None, logger: Path | None = None
) -> DemandAnswer:
    """Return the demand of a home by its loads, its meter's half-hours and a logger.

    Raises like ``read_home``; ``InputError`` for a fact that the table cannot do without, and
    ``BadFileError`` for readings that cannot be used.
    """
    read = read_home(path)
    basis = basis_for(read, terms)
    homes = read.homes(basis)
    taken = most_usual(homes, {})
    reader = homes.reader(taken)
    home = homes.build(reader)
    try:
        table = household_demand(home, basis.book).out
        files = tuple(readings(home, basis, table, half_hours, logger))
        made = beside_files(home, basis, table, tuple(each.way for each in files))
    except Unanswered as blank:
        raise InputError(
            blank.key, "not said", "an answer", question(blank.key, read.folded)
        ) from None
    return DemandAnswer(
        home=read.head,
        basis=basis_head(basis),
        ways=tuple(
            DemandWay(way.by, tuple(map(float, way.line_a)), way.words, way.counts)
            for way in made.out.ways
        ),
        reason=made.out.reason,
        cautions=tuple(note.says for note in made.notes if note.telling.caution),
        problems=tuple(f"{each}" for file in files for each in file.problems),
        keep=tuple(each for file in files for each in file.keep),
        taken=tuple(
            Taken(key, fact_name(key), words_of(key, value))
            for key, value in taken.items()
            if key in reader.seen
        ),
    )


def readings(
    home: Home, basis: Basis, table: Demand, half_hours: Path | None, logger: Path | None
) -> Iterator[Readings]:
    """Yield what each file of readings comes to."""
    if half_hours is not None:
        name = half_hours.name
        volts = nominal_v(basis.book)
        each_kw = power_of_current(home.supply.main_fuse_a, volts)
        most_kw = Kilowatts(sum(each_kw for _ in table.now_a))
        found = read_half_hours(name, read_text(half_hours), volts, most_kw)
        kept = to_keep("supply.highest_half_hour_kw", found.highest.kw, name)
        yield Readings(from_half_hours(basis, table, name, found), (kept,), found.problems)
    if logger is not None:
        name = logger.name
        log = read_log(name, read_text(logger), len(table.now_a))
        figures = tuple(
            to_keep(f"supply.logged_{line.line.lower()}_a", line.half_hour_a, name)
            for line in log.lines
        )
        yield Readings(from_log(basis, name, log), figures, log.problems)


def to_keep(key: str, figure: float, file: str) -> ToKeep:
    """Return a figure of a file as an answer of its fact."""
    return ToKeep(key, fact_name(key), f"{float(figure):.4g}", file)
