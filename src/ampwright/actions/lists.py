"""What the program knows, as lists that can be narrowed by a word: facts, tables, clauses."""

from __future__ import annotations

import difflib
import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import astuple, dataclass
from pathlib import Path
from typing import Any, TypeVar

from ampwright.firm.basis import own_cells
from ampwright.foundations.errors import InputError, NotFoundError
from ampwright.foundations.source import Trust
from ampwright.standards.catalogue import ClauseInfo, clauses
from ampwright.survey.accept import expected_of
from ampwright.survey.home import Home
from ampwright.survey.register import Fact, Part, collections_of, facts_of, parts_of
from ampwright.tables.book import Changed
from ampwright.tables.card import Card
from ampwright.tables.catalogue import covers_of
from ampwright.tables.loader import Table, table, table_names

from .words import all_of, count

ROOMS = ("standards", "demand", "supply", "network", "energy", "design")
"""The rooms that hold clauses, the standards before our own methods."""
GATES = {"quote": "quoting", "fit": "fitting", "certify": "certifying"}

E = TypeVar("E", bound="FactEntry | TableEntry | ClauseEntry")


@dataclass(frozen=True, slots=True)
class FactEntry:
    """One fact that may be said of a home.

    ``key`` has ``<id>`` where a thing's own id stands; ``needed_for`` says how well it must be
    known before what.
    """

    key: str
    trade: str
    ask: str
    answers: str
    found_by: str
    needed_for: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TableEntry:
    """One published table: where it stands, how its rows are known and what they cover.

    ``own`` are the cells that the firm read in its own copy, with what stands in their place.
    """

    name: str
    title: str
    place: str
    rows: str
    covers: tuple[str, ...]
    keys: tuple[str, ...]
    gives: tuple[str, ...]
    own: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ClauseEntry:
    """One clause: what it says and where it is written."""

    id: str
    module: str
    kind: str
    says: str
    summary: str
    places: tuple[str, ...]


def list_facts(word: str = "") -> tuple[FactEntry, ...]:
    """Return the facts that may be said of a home, or those that mention a word.

    Raises ``NotFoundError`` with the nearest word, or ``InputError``, when none does.
    """
    return mentioning("fact", word, facts_in(Home, ""))


def list_tables(word: str = "", folder: Path | None = None) -> tuple[TableEntry, ...]:
    """Return the published tables, or those that mention a word; raises like ``list_facts``.

    ``folder`` holds a firm's own data, whose cells are shown where they lie over packaged ones.
    """
    own: dict[str, list[str]] = {}
    for each in own_cells(folder):
        own.setdefault(each.override.table, []).append(own_cell(each))
    tables = (table_entry(table(name), tuple(own.get(name, ()))) for name in table_names())
    return mentioning("table", word, tables)


def list_clauses(word: str = "") -> tuple[ClauseEntry, ...]:
    """Return the clauses, or those that mention a word; raises like ``list_facts``."""
    found = (clause for room in ROOMS for clause in clauses(f"ampwright.{room}"))
    return mentioning("clause", word, map(clause_entry, found))


def mentioning(kind: str, word: str, entries: Iterable[E]) -> tuple[E, ...]:
    """Return the entries that mention every part of a word; raises like ``list_facts``."""
    every = tuple(entries)
    parts = word.casefold().split()
    found = tuple(each for each in every if all(part in text_of(each) for part in parts))
    if found or not parts:
        return found
    known = sorted(
        {each for entry in every for each in re.findall(r"[^\W\d_]{3,}", text_of(entry))}
    )
    if nearest := difflib.get_close_matches(parts[0], known, 1):
        raise NotFoundError(f"{kind} that mentions", word, known, *nearest)
    do = "Try another word, or none for the whole list."
    raise InputError("the word", word, f"a word that some {kind} mentions", do)


def text_of(entry: Any) -> str:
    """Return all the words of an entry, in small letters."""
    return " ".join(map(str, astuple(entry))).casefold()


def facts_in(part: type[Part], path: str) -> Iterator[FactEntry]:
    """Yield the facts of a part and of all that is inside it, in the order they are declared."""
    yield from (fact_entry(f"{path}{fact.name}", fact) for fact in facts_of(part))
    for name, inside in parts_of(part):
        yield from facts_in(inside, f"{path}{name}.")
    for each in collections_of(part):
        yield fact_entry(f"{path}{each.name}.all_listed", each.all_listed)
        yield from facts_in(each.item, f"{path}{each.name}.<id>.")


def fact_entry(key: str, fact: Fact) -> FactEntry:
    """Say what a fact is, how it may be answered and how it is found out."""
    gates: dict[str, list[str]] = {}
    for gate, evidence in fact.needs.items():
        gates.setdefault(evidence.word, []).append(GATES[gate])
    needs = tuple(f"{known} before {all_of(acts)}" for known, acts in gates.items())
    return FactEntry(key, fact.trade, fact.ask, expected_of(fact), fact.who, needs)


def own_cell(changed: Changed) -> str:
    """Say what a firm's own copy says in the place of a packaged cell.

    A key that is a number is written as it stands in the table.
    """
    own = changed.override
    keys = ", ".join(f"{name} {key:g}" if isinstance(key, float) else f"{name} {key}"
                     for name, key in own.keys)  # fmt: skip
    value = f"{own.value:g} in the place of {changed.packaged:g}"
    return f"{own.column}, {keys}: {value} [{own.source}]"


def table_entry(held: Table, own: tuple[str, ...] = ()) -> TableEntry:
    """Say what a table holds, what it covers and how far its rows are trusted."""
    card: Card = held.card
    gives = tuple(
        f"{name} ({column.unit})" if column.unit else name
        for name, column in card.columns.items()
        if name not in card.keys
    )
    return TableEntry(
        name=held.name,
        title=card.title,
        place=str(card.place),
        rows=trust_of(held),
        covers=covers_of(held),
        keys=card.keys,
        gives=gives,
        own=own,
    )


def trust_of(held: Table) -> str:
    """Count the rows of a table by how they are known, the least trusted first."""
    marks = Counter(row.place.trust for row in held.rows.values())
    doubtful = sum(row.place.doubtful for row in held.rows.values())
    order: Callable[[Trust], int] = list(Trust).index
    by_trust = [f"{marks[trust]} {trust.value}" for trust in sorted(marks, key=order, reverse=True)]
    by_trust += [f"{doubtful} of them doubtful"] if doubtful else []
    return f"{count(len(held.rows), 'row')}: {', '.join(by_trust)}"


def clause_entry(found: ClauseInfo) -> ClauseEntry:
    """Say what a clause is; a computing one prints its formula with symbol and unit."""
    says = found.says
    if found.symbol:
        unit = f" ({found.unit})" if found.unit else ""
        says = f"{found.symbol}{unit} = {found.says}"
    elif found.rows:
        says = f"{found.says}: {'; '.join(f'{words} → {then}' for words, then in found.rows)}"
    places = tuple(dict.fromkeys(map(str, found.places)))
    module = found.module.removeprefix("ampwright.")
    return ClauseEntry(found.id, module, found.kind.value, says, found.summary, places)
