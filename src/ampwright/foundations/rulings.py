"""A clause that decides: an ordered list of condition, outcome and place; the first hit rules."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Generic, TypeVar

from .source import Place

C = TypeVar("C")
O = TypeVar("O")  # noqa: E741 - the outcome


@dataclass(frozen=True, slots=True, eq=False)
class Row(Generic[C, O]):
    """One row: in words, as a test on the case, with what follows and where it is written."""

    words: str
    test: Callable[[C], bool]
    outcome: O
    place: Place


@dataclass(frozen=True, slots=True)
class Ruled(Generic[O]):
    """What a ruling decided: the outcome, the number of the row that hit and its words."""

    outcome: O
    row: int
    words: str
    place: Place


@dataclass(frozen=True, slots=True, eq=False)
class Ruling(Generic[C, O]):
    """An ordered list of rows, printed row by row; the last must always hit.

    Examples
    --------
    >>> at = Place("example")
    >>> coat = Ruling("which coat", (
    ...     Row("it rains", lambda sky: sky == "rain", "oilskin", at),
    ...     Row("otherwise", lambda sky: True, "jacket", at)))
    >>> coat.decide("rain").outcome, coat.decide("sun").row
    ('oilskin', 2)
    """

    name: str
    rows: tuple[Row[C, O], ...]

    def decide(self, case: C) -> Ruled[O]:
        """Return the first row that hits; raises ``LookupError`` when none does."""
        for number, row in enumerate(self.rows, 1):
            if row.test(case):
                return Ruled(row.outcome, number, row.words, row.place)
        raise LookupError(f"no row of {self.name!r} fits {case!r}")

    def hits(self, case: C) -> tuple[Ruled[O], ...]:
        """Return every row that would hit, first first: what else stands in the way."""
        return tuple(
            Ruled(row.outcome, number, row.words, row.place)
            for number, row in enumerate(self.rows, 1)
            if row.test(case)
        )
