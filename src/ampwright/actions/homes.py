"""A home's file: read, checked and folded into what is known of the home."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.options.homes import Homes
from ampwright.options.open_homes import homes_of
from ampwright.survey.folding import FoldedHome, as_found
from ampwright.survey.homefile import HomeFile, read

from .facts import fact_name, found_facts, says
from .files import read_text
from .heads import text_at
from .shapes import FoundFact, HomeHead

HEAD: Final = (
    "customer.name", "property.address", "property.postcode",
    "customer.phone", "customer.email", "customer.best_time",
)  # fmt: skip
"""The facts that say whose home it is and how to reach them, in the order of ``HomeHead``."""


@dataclass(frozen=True, eq=False)
class HomeRead:
    """A home as its file tells it: the records and what they come to."""

    path: Path
    file: HomeFile
    folded: FoldedHome

    @property
    def head(self) -> HomeHead:
        """Whose home it is, as far as the file says."""
        return HomeHead(*(text_at(self.folded, key) for key in HEAD))

    def homes(self, basis: Basis) -> Homes:
        """Return every home that the answers allow."""
        return homes_of(self.folded, basis)


def read_home(path: Path) -> HomeRead:
    """Return what a home's file comes to.

    Raises ``NotFoundError`` and ``InputError`` for the file, and ``BadFileError`` with every
    problem in it at once.
    """
    file = read(read_text(path), str(path))
    return HomeRead(path, file, as_found(file.records))


@dataclass(frozen=True, slots=True)
class Doubt:
    """Something in a sound file that is worth a second look."""

    what: str
    says: str


@dataclass(frozen=True, slots=True)
class Validated:
    """What a sound file holds: records, answers, things, and what is worth a second look."""

    path: str
    title: str
    records: int
    answers: int
    things: tuple[str, ...]
    disputed: tuple[Doubt, ...]
    overruled: tuple[Doubt, ...]
    could_not_say: tuple[str, ...]
    facts: tuple[FoundFact, ...]


def validate(path: Path) -> Validated:
    """Read a home's file and say what it holds; raises like ``read_home``."""
    home = read_home(path)
    facts = home.folded.facts
    return Validated(
        path=str(path),
        title=home.file.title,
        records=len(home.file.records),
        answers=sum(1 for each in facts.values() if each.answer is not None),
        things=tuple(f"{at}: {', '.join(ids)}" for at, ids in home.folded.ids.items()),
        disputed=tuple(
            Doubt(fact_name(key), "; ".join(says(each) for each in fact.disputed))
            for key, fact in facts.items()
            if fact.disputed
        ),
        overruled=tuple(
            Doubt(fact_name(key), "; ".join(says(each) for each in fact.overruled))
            for key, fact in facts.items()
            if fact.overruled
        ),
        could_not_say=tuple(
            fact_name(key) for key, fact in facts.items() if fact.cannot_say and fact.answer is None
        ),
        facts=found_facts(home.folded),
    )
