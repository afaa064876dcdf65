"""The readable file of one home: TOML in, records out; wrong files are refused whole.

``[said]`` gives evidence, by and on for bare answers. A key holds one answer or a list of
records: ``main_fuse_a = 80``, or ``{ is = 80, seen = "photo 2" }``, or several of these.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from difflib import get_close_matches
from typing import Any, Final

from ampwright.foundations.answers import Answer, Between, CannotSay, Is, OneOf
from ampwright.foundations.errors import BadFileError, InputError, Problem
from ampwright.foundations.source import Evidence

from .accept import accept, accept_few, accept_range
from .home import Home
from .layout import may_be, names_in
from .mistakes import parsed
from .records import Moment, Record
from .register import Collection, Fact, Part, collections_of, facts_of, parts_of
from .scan import Path, line_of, lines_of

LEVELS: Final = {each.word: each for each in Evidence}
MOMENTS: Final = {each.value: each for each in Moment}
ANSWERS: Final = ("is", "one_of", "between", "cannot_say")
ABOUT: Final = ("by", "on", "job", "phone", "moment", "withdraws", "since", "id")
SAID: Final = ("evidence", "how", "by", "on", "job", "phone")
RECORD_ID: Final = re.compile(r"[\w-]+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Header:
    """What holds for every answer of a file that does not say otherwise."""

    evidence: Evidence | None = None
    how: str = ""
    by: str = ""
    on: date | None = None
    job: str = ""
    phone: str = ""


@dataclass(frozen=True, slots=True)
class HomeFile:
    """What a file holds: the records, in the order of the file, and what it is called."""

    home: str
    title: str
    header: Header
    records: tuple[Record, ...]


def read(text: str, name: str = "the home file") -> HomeFile:
    r"""Return the records of a home file; ``BadFileError`` with every problem at once.

    Examples
    --------
    >>> found = read('[said]\nevidence = "told"\n[supply]\nmain_fuse_a = 80\n')
    >>> found.records[0].key, found.records[0].answer
    ('supply.main_fuse_a', Is(value=80.0))
    """
    data, problems = parsed(text)
    reading = Reading({} if problems else lines_of(text), problems)
    if problems:
        reading.lines = _rough_lines(text)
    home = reading.word(data, "home")
    title = reading.word(data, "title")
    header = reading.header(data.pop("said", {}))
    reading.home, reading.said = home, header
    reading.part(Home, data, ())
    if not reading.problems:
        reading.links()
    if reading.problems:
        raise BadFileError(name, sorted(reading.problems, key=lambda each: each.line))
    return HomeFile(home, title, header, tuple(reading.records.values()))


def _rough_lines(text: str) -> dict[Path, int]:
    """Return lines for a text that does not parse: headings, and names at the start of a line."""
    found: dict[Path, int] = {}
    table: Path = ()
    for number, line in enumerate(text.split("\n"), 1):
        if heading := re.match(r"\s*\[\s*([\w.-]+)\s*\]", line):
            table = tuple(heading[1].split("."))
            found.setdefault(table, number)
        elif name := re.match(r"\s*([\w.-]+)\s*=", line):
            found.setdefault((*table, *name[1].split(".")), number)
    return found


@dataclass(slots=True)
class Reading:
    """One reading of a file: what was found so far, right and wrong."""

    lines: dict[Path, int]
    problems: list[Problem]
    home: str = ""
    said: Header = field(default_factory=Header)
    records: dict[str, Record] = field(default_factory=dict)
    places: dict[str, Path] = field(default_factory=dict)

    def wrong(self, path: Path, value: object, expected: str, do: str = "") -> None:
        """Note one problem at the line where it stands."""
        key = ".".join(str(step) for step in path if isinstance(step, str))
        self.problems.append(Problem(line_of(path, self.lines), key, value, expected, do))

    def word(self, table: dict[str, Any], name: str, path: Path = ()) -> str:
        """Take a text out of a table; nothing when it is not there."""
        value = table.pop(name, "")
        if isinstance(value, str):
            return value
        self.wrong((*path, name), value, "words in quotes")
        return ""

    def day(self, table: dict[str, Any], path: Path) -> date | None:
        """Take the date out of a table; empty quotes say that there is none."""
        value = table.pop("on", None) or None
        if value is None or (isinstance(value, date) and not isinstance(value, datetime)):
            return value
        self.wrong((*path, "on"), value, "a date, as 2026-11-24", "Without quotes, without a time.")
        return None

    def header(self, table: Any) -> Header:
        """Take what holds for every answer that does not say otherwise."""
        path = ("said",)
        if not isinstance(table, dict):
            self.wrong(path, table, "a table", 'As [said], then evidence = "told" below it.')
            return Header()
        for name in table.keys() - set(SAID):
            self.wrong((*path, name), table.pop(name), _one_of(SAID), _did_you_mean(name, SAID))
        word = self.word(table, "evidence", path)
        if word and word not in LEVELS:
            self.wrong((*path, "evidence"), word, _one_of(LEVELS), _did_you_mean(word, LEVELS))
        return Header(
            evidence=LEVELS.get(word),
            on=self.day(table, path),
            **{name: self.word(table, name, path) for name in ("how", "by", "job", "phone")},
        )

    def part(self, part: type[Part], table: Mapping[str, Any], path: Path) -> None:
        """Read the table of one part: its facts, the parts inside, its collections."""
        facts = {each.name: each for each in facts_of(part)}
        parts = dict(parts_of(part))
        collections = {each.name: each for each in collections_of(part)}
        for name, raw in table.items():
            here = (*path, name)
            if name in facts:
                self.answers(facts[name], raw, here)
            elif name not in parts and name not in collections:
                known = names_in(part) if path else ("title", "home", "said", *names_in(part))
                what = ".".join(map(str, path)) or "a home"
                self.wrong(here, raw, f"a name that {what} has", _did_you_mean(name, known))
            elif not isinstance(raw, dict):
                first = name if name in parts else f"{name}.some-id"
                self.wrong(here, raw, "a table", f"Put its answers under [{first}].")
            elif name in parts:
                self.part(parts[name], raw, here)
            else:
                self.collection(collections[name], raw, here)

    def collection(self, collection: Collection, table: Mapping[str, Any], path: Path) -> None:
        """Read the things of a collection; one without an answer is there, no more."""
        for name, raw in table.items():
            here = (*path, name)
            if name == "all_listed":
                self.answers(collection.all_listed, raw, here)
            elif not isinstance(raw, dict):
                do = f"Put its answers under [{'.'.join(map(str, path))}.{name}]."
                self.wrong(here, raw, "a table", do)
            elif not may_be(name, collection):
                standard = tuple(collection.standard)
                closed = f"one of {', '.join(standard)}"
                ids = "an id of letters, figures and hyphens"
                do = _did_you_mean(name, standard) if collection.closed else ""
                self.wrong(here, name, closed if collection.closed else ids, do)
            elif raw:
                self.part(collection.item, raw, here)
            else:
                self.answers(facts_of(collection.item)[0], True, (*here, "present"))

    def answers(self, fact: Fact, raw: Any, path: Path) -> None:
        """Read the answer to one fact, or the list of its records."""
        if not isinstance(raw, list):
            self.record(fact, raw, path)
        elif not raw:
            self.wrong(path, raw, "an answer", "Leave the line out if nobody knows.")
        else:
            for number, each in enumerate(raw):
                self.record(fact, each, (*path, number))

    def record(self, fact: Fact, raw: Any, path: Path) -> None:
        """Read one record: a bare answer, or one that says how it is known."""
        key = ".".join(step for step in path if isinstance(step, str))
        told: dict[str, Any] = dict(raw) if isinstance(raw, dict) else {"is": raw}
        before = len(self.problems)
        level, how = self.evidence(told, path)
        about = self.about(told, path)
        try:
            answer = self.answer(fact, told, key)
        except InputError as error:
            return self.wrong(path, error.value, error.expected, error.do)
        for name in told:
            known = (*ANSWERS, *LEVELS, *ABOUT)
            self.wrong(path, name, "a word that an answer has", _did_you_mean(name, known))
        if answer is not None and level is None:
            do = 'Say told, seen or measured here, or give [said] an evidence = "told".'
            return self.wrong(path, raw, "how it is known", do)
        if len(self.problems) > before:
            return None
        try:
            made = Record(
                home=self.home, key=key, answer=answer, how=how,
                evidence=level or Evidence.TOLD, **about,
            )  # fmt: skip
        except InputError as error:
            return self.wrong(path, error.value, error.expected, error.do)
        return self.keep(made, path)

    def keep(self, record: Record, path: Path) -> None:
        """Keep a record; two that differ may not go by one id."""
        if self.records.setdefault(record.id, record) != record:
            self.wrong(path, record.id, "an id of its own", "Another record has this id.")
        self.places.setdefault(record.id, path)

    def evidence(self, told: dict[str, Any], path: Path) -> tuple[Evidence | None, str]:
        """Take how an answer is known out of its table, else what the file says of all."""
        given = [name for name in LEVELS if name in told]
        if not given:
            return self.said.evidence, self.said.how
        if len(given) > 1:
            self.wrong(path, ", ".join(given), "one kind of evidence", "Make it two records.")
        how = [self.word(told, name, path) for name in given]
        return LEVELS[given[0]], how[0]

    def about(self, told: dict[str, Any], path: Path) -> dict[str, Any]:
        """Take who, when and what it changes out of an answer's table."""
        found: dict[str, Any] = {"on": self.day(told, path) if "on" in told else self.said.on}
        for name in ("by", "job", "phone"):
            here = self.word(told, name, path) if name in told else getattr(self.said, name)
            found[name] = here
        moment = self.word(told, "moment", path) or Moment.FOUND.value
        if moment not in MOMENTS:
            self.wrong(path, moment, _one_of(MOMENTS), _did_you_mean(moment, MOMENTS))
        found["moment"] = MOMENTS.get(moment, Moment.FOUND)
        found["id"] = self.word(told, "id", path)
        if found["id"] and not RECORD_ID.fullmatch(found["id"]):
            self.wrong(path, found["id"], "an id of letters, figures and hyphens")
        for name in ("withdraws", "since"):
            found[name] = self.names(told, name, path)
        return found

    def names(self, told: dict[str, Any], name: str, path: Path) -> tuple[str, ...]:
        """Take the ids of other records out of an answer's table."""
        value = told.pop(name, [])
        listed = [value] if isinstance(value, str) else value
        if isinstance(listed, list) and all(isinstance(each, str) for each in listed):
            return tuple(listed)
        self.wrong(path, value, "the id of a record, or a list of them")
        return ()

    def answer(self, fact: Fact, told: dict[str, Any], key: str) -> Answer | None:
        """Take the answer out of its table; raises ``InputError`` when it cannot stand."""
        given = [name for name in ANSWERS if name in told]
        if len(given) > 1:
            raise InputError(key, ", ".join(given), "one answer", "Make it two records.")
        if not given:
            return None
        raw = told.pop(given[0])
        if given[0] == "is":
            return Is(accept(fact, raw, key))
        if given[0] == "cannot_say":
            if isinstance(raw, str):
                return CannotSay(raw)
            raise InputError(key, raw, "words in quotes", 'As cannot_say = "never looked".')
        if not isinstance(raw, list):
            raise InputError(key, raw, "a list in square brackets", f"As {given[0]} = [60, 80].")
        if given[0] == "one_of":
            return OneOf(accept_few(fact, raw, key))
        if len(raw) != len(("low", "high")):
            raise InputError(key, raw, "two figures, the lower first", "As between = [5, 9].")
        return Between(*accept_range(fact, raw[0], raw[1], key))

    def links(self) -> None:
        """Check that what is taken back or made history is a record of the same fact."""
        for record in self.records.values():
            for name in (*record.withdraws, *record.since):
                other = self.records.get(name)
                if other is None or other.key != record.key or name == record.id:
                    do = "Copy the id of the record it speaks of."
                    self.wrong(
                        self.places[record.id], name, "the id of another record of this fact", do
                    )


def _one_of(words: Any) -> str:
    return f"one of {', '.join(words)}"


def _did_you_mean(word: str, known: Any) -> str:
    near = get_close_matches(word, list(known), 1)
    return f"Did you mean {near[0]}?" if near else f"Known: {', '.join(known)}."
