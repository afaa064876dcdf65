"""From all the records of a home to the answer of every key at one moment."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from ampwright.foundations.answers import CannotSay

from .fold import NOBODY, Folded, current, fold
from .layout import Ids, slot, things_in
from .merging import renamed
from .records import Moment, Record

Pool = Callable[[Sequence[Record]], Sequence[Record]]
"""Picks which records of one key speak."""


@dataclass(frozen=True, slots=True, eq=False)
class FoldedHome:
    """Every answered key of a home, and the ids of the things that the records speak of."""

    facts: Mapping[str, Folded]
    ids: Ids

    def at(self, key: str) -> Folded:
        """Return what is known of a key; of one nobody spoke of, nothing."""
        return self.facts.get(key, NOBODY)


def as_found(records: Iterable[Record], closed: Sequence[str] = ()) -> FoldedHome:
    """Return a home as it stands now: as found, overlaid by what closed jobs left.

    ``closed`` names the closed jobs in the order of the work. What a job left takes the place
    of what it and earlier jobs found; what a later job finds speaks beside it.
    """
    return _folded(records, lambda rows: standing(rows, closed))


def as_planned(records: Iterable[Record], job: str, closed: Sequence[str] = ()) -> FoldedHome:
    """Return a home as one job plans to leave it: what it plans, over what stands now."""

    def pool(rows: Sequence[Record]) -> list[Record]:
        planned = [row for row in rows if row.moment is Moment.PLANNED and row.job == job]
        return planned or standing(rows, closed)

    return _folded(records, pool)


def as_left(records: Iterable[Record], job: str) -> FoldedHome:
    """Return only what one job left behind: what a certificate may rest on."""
    return _folded(
        records, lambda rows: [r for r in rows if r.moment is Moment.LEFT and r.job == job]
    )


def standing(rows: Sequence[Record], closed: Sequence[str]) -> list[Record]:
    """Return which records of one key speak of the home as it stands now."""
    pool = [row for row in rows if row.moment is Moment.FOUND]
    before = {""}
    for job in closed:
        before.add(job)
        left = [row for row in rows if row.moment is Moment.LEFT and row.job == job]
        if any(row.answer and not isinstance(row.answer, CannotSay) for row in left):
            pool = [*left, *(row for row in pool if row.job not in before)]
    return pool


def _folded(records: Iterable[Record], pool: Pool) -> FoldedHome:
    rows = current(records)
    same = renamed(rows)
    by_key: dict[str, list[Record]] = {}
    for row in rows:
        key = same.key(row.key)
        by_key.setdefault(key, []).append(same.record(row, slot(key).fact))
    facts: dict[str, Folded] = {}
    for key, about in sorted(by_key.items()):
        if not key.endswith(".same_as") and (speaking := pool(about)):
            facts[key] = fold(speaking, slot(key).fact)
    return FoldedHome(facts, ids_of(facts))


def ids_of(keys: Iterable[str]) -> Ids:
    """Return the ids of all things that keys speak of, in an order that is always the same."""
    found: dict[str, set[str]] = {}
    for key in keys:
        for path, thing in things_in(key):
            found.setdefault(path, set()).add(thing)
    return {path: tuple(sorted(things)) for path, things in sorted(found.items())}
