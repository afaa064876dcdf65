"""Where a number comes from: a document, a fact of the home, the firm, or a choice.

Two scales that never mix. ``Evidence`` says how a fact of a home is known; ``Trust``
says how far a published value may be relied on. Both print.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from enum import Enum, IntEnum


class Evidence(IntEnum):
    """How a fact of a home is known, weakest first."""

    ASSUMED = 1
    TOLD = 2
    SEEN = 3
    MEASURED = 4

    @property
    def word(self) -> str:
        """The word used in files and print."""
        return self.name.lower()


class Trust(Enum):
    """How far a published value may be relied on."""

    PUBLISHED = "published"
    COMMON_PRACTICE = "common practice"
    DERIVED = "derived"
    MEMORY = "memory"


@dataclass(frozen=True, slots=True)
class Place:
    """A place in a document, precise enough for a stranger to open it.

    Examples
    --------
    >>> str(Place("IEC 60228", "2004", "Table 2"))
    'IEC 60228:2004, Table 2'
    >>> str(Place("BS 7671", "2018+A2:2022", "433.1.1", Trust.MEMORY, doubtful=True))
    'BS 7671:2018+A2:2022, 433.1.1 (memory, doubtful)'
    >>> Place("Approved Document S", "2021").name
    'Approved Document S, 2021'
    """

    document: str
    edition: str = ""
    at: str = ""
    trust: Trust = Trust.PUBLISHED
    doubtful: bool = False

    @property
    def name(self) -> str:
        """The document with its edition; a colon belongs to the number of a standard alone."""
        numbered = self.document[-1:].isdigit() and self.edition[:1].isdigit()
        between = ":" if numbered else ", "
        return f"{self.document}{between}{self.edition}" if self.edition else self.document

    def at_row(self, row: str, trust: Trust | None = None, doubtful: bool = False) -> Place:
        """Return the place of one row of this table, with the row's own trust."""
        where = f"{self.at}, {row}" if self.at else row
        return replace(
            self, at=where, trust=trust or self.trust, doubtful=self.doubtful or doubtful
        )

    def __str__(self) -> str:
        """Render document, edition and place, then the trust unless it is published."""
        where = f"{self.name}, {self.at}" if self.at else self.name
        marks = [self.trust.value] if self.trust is not Trust.PUBLISHED else []
        marks += ["doubtful"] if self.doubtful else []
        return f"{where} ({', '.join(marks)})" if marks else where


@dataclass(frozen=True, slots=True)
class Said:
    """The record or records that a fact of a home rests on.

    Examples
    --------
    >>> str(Said("supply.ze_ohm", Evidence.MEASURED, "loop tester 2", "ro", date(2026, 3, 2)))
    'supply.ze_ohm: measured, loop tester 2, ro, 2 Mar 2026'
    """

    key: str
    evidence: Evidence
    how: str = ""
    by: str = ""
    on: date | None = None

    def __str__(self) -> str:
        """Render key and evidence, then how, who and when."""
        parts = [self.evidence.word, self.how, self.by]
        if self.on is not None:
            parts.append(f"{self.on.day} {self.on:%b %Y}")
        return f"{self.key}: {', '.join(part for part in parts if part)}"


@dataclass(frozen=True, slots=True)
class SetBy:
    """A value that the firm, an operator's profile or a choice sets; not a published one."""

    who: str
    what: str = ""

    def __str__(self) -> str:
        """Render who set it and where."""
        return f"{self.who}: {self.what}" if self.what else self.who


Source = Place | Said | SetBy
