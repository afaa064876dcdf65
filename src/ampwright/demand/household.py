"""Maximum demand of a home by the household table, line by line."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from ampwright.foundations.errors import InputError
from ampwright.foundations.quantity import Amperes
from ampwright.foundations.source import SetBy
from ampwright.foundations.stages import Made
from ampwright.foundations.working import given
from ampwright.standards import diversity
from ampwright.survey.home import Home
from ampwright.tables.book import Book
from ampwright.tables.diversity import allowance

LINES: Final = ("L1", "L2", "L3")
ALL_LINES: Final = "all"
IN_FULL: Final = frozenset({
    "storage heating", "floor heating", "stored hot water", "heat pump", "hot tub",
    "battery charging", "charge point", "motor", "fixed",
})  # fmt: skip
"""Kinds of load that count for all they draw."""
POOLED: Final = frozenset({"sockets", "instant shower", "room heating"})
"""Kinds of load that count together: the allowance is for all of them on a line."""


@dataclass(frozen=True, slots=True)
class Counted:
    """One item of a line's demand: the loads in it, what they draw and what counts."""

    loads: tuple[str, ...]
    kind: str
    drawn_a: tuple[Amperes, ...]
    counted_a: Amperes


@dataclass(frozen=True, slots=True)
class Demand:
    """What a home asks of its supply at once: one entry a line in both fields."""

    now_a: tuple[Amperes, ...]
    items: tuple[tuple[Counted, ...], ...]


@dataclass(frozen=True, slots=True)
class Load:
    """What the survey says of one load, as far as it is needed."""

    id: str
    kind: str
    amps_a: Amperes
    line: str
    socket: bool


def household_demand(home: Home, book: Book) -> Made[Demand]:
    """Return the demand of a home before a charge point is added, on each line.

    By the table for a single household; not for flats on a common supply. Each load counts by
    its kind, one on all lines counts on each, and what sun or battery may give is never taken
    off. Raises ``Unanswered`` while it is not certain that every load is listed.
    """
    phases = int(home.supply.phases)
    return Made(demand_of(read_loads(home, phases), phases, book))


def demand_of(loads: Sequence[Load], phases: int, book: Book) -> Demand:
    """Return what some loads ask at once, on each of so many lines."""
    items = tuple(
        Counting(book).items([load for load in loads if load.line in (line, ALL_LINES)])
        for line in LINES[:phases]
    )
    return Demand(tuple(_total(each, book) for each in items), items)


class Counting:
    """Counts the loads of one home, told apart by their ids; the same loads are counted once.

    For many ways to share them among the lines.
    """

    def __init__(self, book: Book) -> None:
        self.book = book
        self._items: dict[tuple[str, ...], Counted] = {}
        self._lines: dict[tuple[str, ...], Amperes] = {}

    def line_a(self, loads: Sequence[Load]) -> Amperes:
        """Return what the loads of one line ask at once."""
        key = tuple(load.id for load in loads)
        if key not in self._lines:
            self._lines[key] = _total(self.items(loads), self.book)
        return self._lines[key]

    def items(self, loads: Sequence[Load]) -> tuple[Counted, ...]:
        """Return what counts on one line, in the order of the loads."""
        groups: dict[str, list[Load]] = {}
        for load in loads:
            groups.setdefault(load.kind if load.kind in POOLED else load.id, []).append(load)
        return tuple(self._item(group) for group in groups.values())

    def _item(self, loads: list[Load]) -> Counted:
        key = tuple(load.id for load in loads)
        if key not in self._items:
            self._items[key] = _counted(loads, self.book)
        return self._items[key]


def read_loads(home: Home, phases: int) -> tuple[Load, ...]:
    """Return the loads that are there; a home on one line is not asked which line."""
    return tuple(
        Load(
            id=id_,
            kind=load.kind,
            amps_a=load.amps_a,
            line=load.phase if phases > 1 else ALL_LINES,
            socket=load.kind == "cooking" and load.socket_on_switch,
        )
        for id_, load in home.loads.listed()
    )


def _total(items: Sequence[Counted], book: Book) -> Amperes:
    """Return what counts on one line."""
    if not items:
        return nothing(book, "no load is listed on this line")
    return diversity.total(tuple(each.counted_a for each in items))


def nothing(book: Book, why: str) -> Amperes:
    """Return nought amperes, with the reason where workings are kept."""
    none = Amperes(0.0)
    return given("I", none, "A", SetBy("survey", why)) if book.keeps_working else none


def _counted(loads: Sequence[Load], book: Book) -> Counted:
    """Return one item: a load by itself, or all of a kind that counts together."""
    drawn = tuple(load.amps_a for load in loads)
    kind = loads[0].kind
    counted = _together(kind, drawn, book) if kind in POOLED else _alone(loads[0], book)
    return Counted(tuple(load.id for load in loads), kind, drawn, counted)


def _together(kind: str, drawn_a: tuple[Amperes, ...], book: Book) -> Amperes:
    """Return what counts of all the loads of one kind on a line."""
    allowed = allowance(book, kind)
    if kind == "sockets":
        return diversity.sockets(drawn_a, allowed.share)
    if kind == "instant shower":
        return diversity.showers(drawn_a, allowed.share)
    return diversity.above_first(diversity.total(drawn_a), allowed.first_a, allowed.share)


def _alone(load: Load, book: Book) -> Amperes:
    """Return what counts of one load."""
    if load.kind in IN_FULL:
        return diversity.in_full(load.amps_a)
    if load.kind == "lighting":
        return diversity.lighting(load.amps_a, allowance(book, "lighting").share)
    if load.kind == "cooking":
        allowed = allowance(book, "cooking")
        extra = allowed.extra_a if load.socket else nothing(book, "no socket on its switch")
        return diversity.cooking(load.amps_a, allowed.first_a, allowed.share, extra)
    raise InputError(
        f"loads.{load.id}.kind", load.kind, "a kind that the household table knows",
        "Choose the nearest; fixed counts it in full.",
    )  # fmt: skip
