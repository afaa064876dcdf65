"""One thing somebody said about one fact. Records are only ever added."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from enum import Enum

from ampwright.foundations.answers import Answer, Between, CannotSay, Is, OneOf, Value
from ampwright.foundations.errors import InputError
from ampwright.foundations.source import Evidence


class Moment(Enum):
    """When the answer holds: as the home was found, as it is planned, as it was left."""

    FOUND = "found"
    PLANNED = "planned"
    LEFT = "left"


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """An answer to one key of one home, with who gave it, how it is known and when.

    ``withdraws`` names records taken back as never true; ``since`` names records that were
    true until the thing itself changed. A record that only takes back has no answer. Without
    an ``id`` of its own it gets the one that follows from what it says. Raises ``InputError``
    for evidence that nothing supports.

    Examples
    --------
    >>> first = Record(home="h", key="supply.main_fuse_a", answer=Is(80.0),
    ...                evidence=Evidence.TOLD)
    >>> same = Record(home="h", key="supply.main_fuse_a", answer=Is(80), evidence=Evidence.TOLD)
    >>> first.id == same.id
    True
    """

    home: str
    key: str
    answer: Answer | None
    evidence: Evidence = Evidence.TOLD
    how: str = ""
    by: str = ""
    on: date | None = None
    job: str = ""
    phone: str = ""
    moment: Moment = Moment.FOUND
    withdraws: tuple[str, ...] = ()
    since: tuple[str, ...] = ()
    id: str = ""

    def __post_init__(self) -> None:
        """Refuse evidence without support, put lists in order, take an id if none is given."""
        for expected, do in faults(self):
            raise InputError(self.key, self.evidence.word, expected, do)
        if isinstance(self.answer, OneOf):
            object.__setattr__(self, "answer", OneOf(in_order(self.answer.values)))
        for name in ("withdraws", "since"):
            object.__setattr__(self, name, tuple(sorted(set(getattr(self, name)))))
        if not self.id:
            object.__setattr__(self, "id", content_id(self))


def in_order(values: Iterable[Value]) -> tuple[Value, ...]:
    """Return values each once, figures by size and words by letter."""
    return tuple(sorted(set(values), key=lambda value: (isinstance(value, str), value)))


def faults(record: Record) -> Iterator[tuple[str, str]]:
    """Yield what a record lacks: what was expected, and what to do."""
    if record.answer is None:
        if not record.withdraws:
            yield "an answer", "Give one, or name the record that is taken back."
        return
    if isinstance(record.answer, CannotSay):
        return
    if record.evidence is Evidence.SEEN and not (record.how and record.by):
        yield (
            "the picture or paper it was seen on and the name of who read it",
            'Name both, as in seen = "photo 2", by = "Ro"; else it is told.',
        )
    if record.evidence is Evidence.MEASURED and not record.how:
        yield (
            "the instrument it was measured with",
            'Name it, as in measured = "loop tester 2"; else it is told.',
        )


def content_id(record: Record) -> str:
    """Return the id that follows from what a record says; a digit that differs gives another."""
    said = (
        record.home, record.key, words(record.answer), record.evidence.word, record.how,
        record.by, record.on.isoformat() if record.on else "", record.job, record.phone,
        record.moment.value, *record.withdraws, "since", *record.since,
    )  # fmt: skip
    body = "\x1f".join(said).encode()
    return hashlib.blake2s(body, digest_size=6).hexdigest()


def words(answer: Answer | None) -> str:
    """Return an answer as text that is the same for 80 and 80.0."""
    match answer:
        case Is(value):
            return f"is {_word(value)}"
        case OneOf(values):
            return f"one of {[_word(value) for value in values]}"
        case Between(low, high):
            return f"between {_word(low)} {_word(high)}"
        case CannotSay(why):
            return f"cannot say {why}"
        case None:
            return ""


def _word(value: Value) -> str:
    plain = isinstance(value, str | bool)
    return repr(value) if plain else repr(float(value))
