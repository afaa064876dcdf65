"""Every published table at a glance: what it is, where it stands, how far it may be trusted."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from functools import cache
from math import isinf

from ampwright.foundations.source import Place, Trust

from .card import Card
from .loader import Table, table, table_names


@dataclass(frozen=True, slots=True)
class Listed:
    """One table: its rows counted by trust, how many are doubtful, and what each key covers."""

    name: str
    title: str
    place: Place
    card: Card
    rows: int
    by_trust: tuple[tuple[Trust, int], ...]
    doubtful: int
    covers: tuple[str, ...]

    @property
    def trust_words(self) -> str:
        """How its rows are trusted, in words: one word where all are alike."""
        if len(self.by_trust) == 1:
            said = self.by_trust[0][0].value
        else:
            said = ", ".join(f"{count} {trust.value}" for trust, count in self.by_trust)
        if self.doubtful:
            said += (
                ", all doubtful" if self.doubtful == self.rows else f", {self.doubtful} doubtful"
            )
        return said


@cache
def all_tables() -> tuple[Listed, ...]:
    """Return every packaged table, in the order of its name.

    Examples
    --------
    >>> [each.trust_words for each in all_tables() if each.name == "capacity/flat_70"]
    ['memory, 2 doubtful']
    """
    return tuple(_listed(table(name)) for name in table_names())


def _listed(found: Table) -> Listed:
    """Sum up one table."""
    places = [row.place for row in found.rows.values()]
    counted = Counter(place.trust for place in places)
    return Listed(
        name=found.name,
        title=found.card.title,
        place=found.card.place,
        card=found.card,
        rows=len(places),
        by_trust=tuple((trust, counted[trust]) for trust in Trust if counted[trust]),
        doubtful=sum(place.doubtful for place in places),
        covers=covers_of(found),
    )


def covers_of(found: Table) -> tuple[str, ...]:
    """Say what the rows of a table hold of each of its keys.

    Examples
    --------
    >>> covers_of(table("capacity/flat_70"))[1:]
    ('loaded conductors: 2', 'S: 1 to 16 mm²')
    """
    return tuple(_covers(found, key) for key in found.keys)


def _covers(found: Table, key: str) -> str:
    """Say what the rows hold of one key: each value of a few, the ends of many."""
    column = found.card.columns[key]
    values = found.values_of(key)
    numbers = sorted(value for value in values if isinstance(value, float))
    said = column.symbol or column.meaning
    if not numbers:
        shown = ", ".join(str(value) for value in values)
        return f"{said}: {shown}" if len(shown) <= 90 else f"{said}: {len(values)} of them"
    ends = ["any" if isinf(number) else f"{number:.10g}" for number in numbers]
    shown = ", ".join(ends) if len(ends) <= 4 else f"{ends[0]} to {ends[-1]}"
    return f"{said}: {shown} {column.unit}".strip()
