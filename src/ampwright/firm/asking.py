"""What asking takes, and what is usual in a home that nobody has described yet.

The minutes order questions and nothing else. What is usual fills a home only while it is explored
for questions and ranges: it is named as taken, and never stands in a design or on a paper.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum

from ampwright.foundations.errors import NotFoundError
from ampwright.foundations.quantity import Minutes, Share
from ampwright.foundations.source import Trust

from .rows import column, read_rows


class Channel(Enum):
    """By what somebody can answer: on the telephone, with a photograph, on site."""

    PHONE = "phone"
    PHOTO = "photo"
    SITE = "site"


@dataclass(frozen=True, slots=True)
class Act:
    """One act of finding out, and the minutes of whoever does it."""

    id: str
    channel: Channel
    does: str = column(says="what it is")
    minutes: Minutes = column("t", "minutes of it")
    trust: Trust = column(says="how far the minutes are to be relied on")


@dataclass(frozen=True, slots=True)
class Usual:
    """One answer that is common for a thing nobody has spoken of, and how common.

    With a ``thing`` it is taken to be there under that id, unless something of the collection is
    listed already: of the kind that ``unless`` names, or anything. Without, the answer is taken
    of whatever thing has none, or of the part itself.
    """

    id: str
    collection: str
    thing: str | None
    unless: str | None
    fact: str
    answer: str
    share: Share = column("p", "how common it is")


@dataclass(frozen=True, slots=True)
class Longer:
    """How often a list turns out longer than it was told."""

    collection: str
    share: Share = column("p", "lists that turned out longer")


@dataclass(frozen=True, slots=True)
class Asking:
    """All that orders questions beside the engine's own numbers."""

    acts: Mapping[str, Act]
    usual: tuple[Usual, ...]
    longer: Mapping[str, Share]

    def minutes(self, act: str) -> Minutes:
        """Return the minutes of an act; raises ``NotFoundError``."""
        if act not in self.acts:
            raise NotFoundError("act of asking", act, tuple(self.acts))
        return self.acts[act].minutes


def read_asking(acts: tuple[str, str], usual: tuple[str, str], longer: tuple[str, str]) -> Asking:
    """Return what three files hold; raises ``BadFileError``."""
    return Asking(
        {each.id: each for each in read_rows(*acts, Act)},
        read_rows(*usual, Usual),
        {each.collection: each.share for each in read_rows(*longer, Longer)},
    )
