"""One more answer into a home's file, and what the fact comes to with it."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import Literal, cast

from ampwright.foundations.answers import Answer, CannotSay
from ampwright.foundations.errors import BadFileError, InputError
from ampwright.foundations.source import Evidence
from ampwright.survey.fold import current
from ampwright.survey.homefile import read
from ampwright.survey.layout import slot
from ampwright.survey.records import Moment, Record
from ampwright.survey.spoken import spoken
from ampwright.survey.states import said_by
from ampwright.survey.writing import add

from .facts import answer_to, called, how, known, says
from .files import change_text
from .homes import HomeRead, read_home
from .shapes import Known

Before = Literal["stands", "was never so", "was so until now"]
"""What becomes of what was said of the fact before."""
HOW_KNOWN = "how it is known"


@dataclass(frozen=True, slots=True)
class Telling:
    """How somebody knows what they say, who it is and when; ``job`` where it is of one job."""

    evidence: Evidence
    how: str
    by: str
    on: date | None
    job: str = ""
    moment: Moment = Moment.FOUND


@dataclass(frozen=True, slots=True)
class FactNow:
    """One fact with all that was said of it: the answer to work with, and what speaks against it.

    ``answer`` is empty while nobody has answered.
    """

    key: str
    what: str
    answer: str
    known: Known
    how: str
    disputed: tuple[str, ...]
    overruled: tuple[str, ...]
    could_not_say: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Answered:
    """An answer that was put in a home's file, and what the fact comes to with it.

    ``added`` is false when the file said just that already; ``taken_back`` and ``history`` are
    earlier answers that no longer speak.
    """

    path: str
    record: str
    said: str
    added: bool
    taken_back: tuple[str, ...]
    history: tuple[str, ...]
    fact: FactNow


def telling(
    told: str | None, seen: str | None, measured: str | None, by: str, on: date | None
) -> Telling:
    """Return how an answer is known, said in just one of three ways; else ``InputError``."""
    ways = {Evidence.TOLD: told, Evidence.SEEN: seen, Evidence.MEASURED: measured}
    given = [(evidence, how) for evidence, how in ways.items() if how is not None]
    if len(given) != 1:
        value = " and ".join(f"--{evidence.word}" for evidence, _ in given) or "not said"
        expected = "--told, --seen or --measured, one of them"
        raise InputError(HOW_KNOWN, value, expected, 'For example --seen "photo 2".')
    evidence, how = given[0]
    return Telling(evidence, how, by, on)


def answer(
    path: Path, key: str, words: str, known_by: Telling, before: Before = "stands"
) -> Answered:
    """Put one answer in a home's file and say what the fact comes to.

    Comments and everything else in the file stay. Raises like ``read_home``; ``NotFoundError``
    for a key that is no fact and ``InputError`` for words that do not answer it.
    """
    said = spoken(slot(key).fact, words, key)
    return keep(path, key, said, known_by, before)


def keep(
    path: Path, key: str, said: Answer, known_by: Telling, before: Before = "stands"
) -> Answered:
    """Put one answer in a home's file; raises like ``answer``.

    What was said just so before and taken back since is restored.
    """
    file = read_home(path).file
    earlier = earlier_of(file.records, key, known_by) if before != "stands" else ()
    ids = tuple(each.id for each in earlier)
    record = Record(
        home=file.home,
        key=key,
        answer=said,
        evidence=known_by.evidence,
        how=known_by.how,
        by=known_by.by,
        on=known_by.on,
        job=known_by.job,
        moment=known_by.moment,
        withdraws=ids if before == "was never so" else (),
        since=ids if before == "was so until now" else (),
    )
    record = said_anew(file.records, record)
    added = record.id not in {each.id for each in file.records}
    change_text(path, lambda text: with_one_more(text, record, str(path)))
    spoke = tuple(map(says, earlier))
    return Answered(
        path=str(path),
        record=record.id,
        said=answer_to(key, said),
        added=added,
        taken_back=spoke if record.withdraws else (),
        history=spoke if record.since else (),
        fact=fact_now(read_home(path), key),
    )


def said_anew(records: Sequence[Record], record: Record) -> Record:
    """Return a record that takes back what had taken the same one back, if anything had."""
    against = tuple(each.id for each in current(records) if record.id in each.withdraws)
    return replace(record, withdraws=(*record.withdraws, *against), id="") if against else record


def take_back(path: Path, key: str, record: str, known_by: Telling) -> None:
    """Take one answer out of what is known, as never so; the file keeps both."""
    file = read_home(path).file
    taking = Record(
        home=file.home, key=key, answer=None, evidence=known_by.evidence, how=known_by.how,
        by=known_by.by, on=known_by.on, withdraws=(record,),
    )  # fmt: skip
    change_text(path, lambda text: with_one_more(text, taking, str(path)))


def with_one_more(text: str, record: Record, name: str) -> str:
    """Return the text of a home's file with one more record and all that it held before.

    Raises ``InputError`` rather than lose anything.
    """
    after = add(text, record)
    with suppress(BadFileError):
        if set(read(after, name).records) == {*read(text, name).records, record}:
            return after
    do = f"Write it by hand at {record.key}; nothing was changed."
    raise InputError("the file", name, "a form that can take one more answer", do)


def earlier_of(records: Sequence[Record], key: str, known_by: Telling) -> tuple[Record, ...]:
    """Return what still speaks of a fact at the same moment."""
    about = (each for each in current(records) if each.key == key)
    return tuple(each for each in about if each.moment is known_by.moment and each.answer)


def fact_now(home: HomeRead, key: str) -> FactNow:
    """Return one fact as it stands in a home."""
    folded = home.folded.at(key)
    rests = said_by(key, folded) if folded.evidence is not None else None
    return FactNow(
        key=key,
        what=called(key),
        answer=answer_to(key, folded.answer) if folded.answer else "",
        known=known(rests) if rests else "not asked",
        how=how(rests) if rests else "",
        disputed=tuple(map(says, folded.disputed)),
        overruled=tuple(map(says, folded.overruled)),
        could_not_say=tuple(map(who_could_not, folded.cannot_say)),
    )


def who_could_not(record: Record) -> str:
    """Say who was asked and could not tell, and why."""
    why = cast(CannotSay, record.answer).why
    return ": ".join(part for part in (record.by, why) if part)
