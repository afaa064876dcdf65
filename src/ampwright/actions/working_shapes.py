"""What ``working`` answers, in plain pieces."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from .shapes import BasisHead, HomeHead

Mark = Literal["pass", "fail", "undetermined", "not applicable"]


@dataclass(frozen=True, slots=True)
class LineAnswer:
    """One numbered line of a working: a starting figure, or a formula with its numbers.

    ``formula`` and ``numbers`` are empty for a starting figure; ``known`` says how it is known
    when it is a fact of the home.
    """

    number: str
    symbol: str
    formula: str
    numbers: str
    result: str
    source: str
    known: str


@dataclass(frozen=True, slots=True)
class CheckAnswer:
    """One check: what it requires, both numbers, where it is written, and their working.

    ``uses`` names figures worked out further up; ``mended_by`` is work that would mend a
    failure.
    """

    id: str
    outcome: Mark
    says: str
    actual: float | None
    limit: float | None
    unit: str
    numbers: str
    place: str
    why: str
    caution: str
    mended_by: tuple[str, ...]
    uses: str
    lines: tuple[LineAnswer, ...]


@dataclass(frozen=True, slots=True)
class NoteAnswer:
    """What is only told: nothing fails by it.

    ``caution`` marks what somebody must see to; ``uses`` names figures worked out further up.
    """

    id: str
    caution: bool
    says: str
    place: str
    uses: str
    lines: tuple[LineAnswer, ...]


@dataclass(frozen=True, slots=True)
class FigureAnswer:
    """A figure that is held to no limit, with its working."""

    what: str
    result: str
    uses: str
    lines: tuple[LineAnswer, ...]


@dataclass(frozen=True, slots=True)
class RulingRowAnswer:
    """One row of a clause that decides: the case in words, what follows, where it stands."""

    words: str
    follows: str
    place: str
    state: Literal["did not apply", "decided", "not reached"]


@dataclass(frozen=True, slots=True)
class RulingAnswer:
    """A clause that decides, row by row."""

    name: str
    rows: tuple[RulingRowAnswer, ...]


@dataclass(frozen=True, slots=True)
class StageAnswer:
    """One stage of the work; ``lacking`` are the facts without which it could not be done."""

    title: str
    rests_on: tuple[str, ...]
    figures: tuple[FigureAnswer, ...]
    rulings: tuple[RulingAnswer, ...]
    checks: tuple[CheckAnswer, ...]
    notes: tuple[NoteAnswer, ...]
    lacking: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Taken:
    """An open fact and the value it was taken to have for this working."""

    key: str
    what: str
    value: str


@dataclass(frozen=True, slots=True)
class WorkingAnswer:
    """One option worked out in one home: of the possible homes, the most usual in which it holds.

    Not a certificate: the figures say of which edition they are and how far they are trusted.
    """

    home: HomeHead
    basis: BasisHead
    letter: str
    id: str
    name: str
    outcome: Mark
    taken: tuple[Taken, ...]
    stages: tuple[StageAnswer, ...]
