"""Records out into the readable file of a home, and one more record into a file that is there.

``read(write(records))`` gives the same records. Adding changes nothing that stands there.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from datetime import date
from typing import Final

from ampwright.foundations.answers import Between, CannotSay, Is, OneOf
from ampwright.foundations.errors import InputError

from .folding import ids_of
from .homefile import Header, read
from .inserting import with_answer, with_top
from .layout import frozen, slot, slots_of, things_in
from .records import Moment, Record, content_id

Field = tuple[str, object]
EXACT_WHOLE: Final = 1e15
"""Whole numbers below this are written without a point."""


def write(records: Iterable[Record], title: str = "") -> str:
    """Return the file of one home; ``InputError`` when the records are of several.

    What most answers share stands once, in ``[said]``; those answers are written bare.

    Examples
    --------
    >>> from ampwright.foundations.source import Evidence
    >>> fuse = Record(home="cot", key="supply.main_fuse_a", answer=Is(80.0),
    ...               evidence=Evidence.TOLD, by="Ro")
    >>> print(write([fuse]))
    home = "cot"
    <BLANKLINE>
    [said]
    evidence = "told"
    by = "Ro"
    <BLANKLINE>
    [supply]
    main_fuse_a = 80
    <BLANKLINE>
    """
    rows = sorted({row.id: row for row in records}.values(), key=_by_day)
    homes = sorted({row.home for row in rows})
    if len(homes) > 1:
        raise InputError("home", ", ".join(homes), "records of one home", "Write a file for each.")
    said = shared(rows)
    lines = [f"title = {as_toml(title)}"] if title else []
    lines += [f"home = {as_toml(home)}" for home in homes if home]
    lines += _said(said)
    by_key: dict[str, list[Record]] = {}
    for row in rows:
        by_key.setdefault(row.key, []).append(row)
    table = ""
    for key in in_file_order(by_key):
        path, _, name = key.rpartition(".")
        if path != table:
            lines += [""] * bool(lines) + [f"[{path}]"]
            table = path
        lines.append(f"{name} = {_answers(by_key[key], said)}")
    return "\n".join(lines) + "\n" if lines else ""


def _by_day(record: Record) -> tuple[date, str]:
    return (record.on or date.min, record.id)


def in_file_order(keys: Iterable[str]) -> list[str]:
    """Return keys in the order of the register; ``NotFoundError`` for one it does not have."""
    wanted = set(keys)
    for key in wanted:
        slot(key)
    return [each.key for each in slots_of(frozen(ids_of(wanted))) if each.key in wanted]


def shared(records: Iterable[Record]) -> Header:
    """Return what most of the records say of who, when and how: what ``[said]`` will say."""
    counted = Counter(
        Header(
            evidence=row.evidence,
            how=row.how,
            by=row.by,
            on=row.on,
            job=row.job,
            phone=row.phone,
        )
        for row in records
        if isinstance(row.answer, Is)
    )
    return max(counted, key=lambda each: (counted[each], str(each)), default=Header())


def _said(said: Header) -> Iterator[str]:
    if said.evidence is None:
        return
    yield from ("", "[said]", f"evidence = {as_toml(said.evidence.word)}")
    for name in ("how", "by", "on", "job", "phone"):
        if value := getattr(said, name):
            yield f"{name} = {as_toml(value)}"


def _answers(records: list[Record], said: Header) -> str:
    """Return the answer to one fact: one record, or a list of them, one a line."""
    if len(records) == 1:
        return _one(records[0], said)
    inside = "".join(f"  {_one(each, said)},\n" for each in records)
    return f"[\n{inside}]"


def _one(record: Record, said: Header) -> str:
    """Return one record: bare where the file says all the rest."""
    fields = list(fields_of(record, said))
    if len(fields) == 1 and fields[0][0] == "is":
        return as_toml(fields[0][1])
    return "{ " + ", ".join(f"{name} = {as_toml(value)}" for name, value in fields) + " }"


def fields_of(record: Record, said: Header) -> Iterator[Field]:
    """Yield what must be written of a record where the file says the rest of all answers."""
    match record.answer:
        case Is(value):
            yield "is", value
        case OneOf(values):
            yield "one_of", list(values)
        case Between(low, high):
            yield "between", [low, high]
        case CannotSay(why):
            yield "cannot_say", why
    if (record.evidence, record.how) != (said.evidence, said.how):
        yield record.evidence.word, record.how
    for name in ("by", "on", "job", "phone"):
        if getattr(record, name) != getattr(said, name):
            yield name, getattr(record, name) or ""
    if record.moment is not Moment.FOUND:
        yield "moment", record.moment.value
    for name in ("withdraws", "since"):
        if named := getattr(record, name):
            yield name, list(named)
    if record.id != content_id(record):
        yield "id", record.id


def as_toml(value: object) -> str:
    """Return a value as TOML.

    Examples
    --------
    >>> as_toml(80.0), as_toml(0.18), as_toml(True), as_toml("TT"), as_toml([60.0, 80.0])
    ('80', '0.18', 'true', '"TT"', '[60, 80]')
    """
    match value:
        case bool():
            return "true" if value else "false"
        case int():
            return str(value)
        case float():
            whole = value == int(value) and abs(value) < EXACT_WHOLE
            return str(int(value)) if whole else repr(value)
        case str():
            return f'"{"".join(map(_escaped, value))}"'
        case date():
            return value.isoformat()
        case list():
            return f"[{', '.join(map(as_toml, value))}]"
        case _:
            raise TypeError(value)


ESCAPES: Final = {'"': '\\"', "\\": "\\\\", "\n": "\\n", "\t": "\\t", "\r": "\\r"}


def _escaped(letter: str) -> str:
    """Return a letter as it may stand in a file: what cannot be seen is spelt out."""
    if letter in ESCAPES:
        return ESCAPES[letter]
    return letter if letter.isprintable() else f"\\U{ord(letter):08x}"


def add(text: str, record: Record) -> str:
    """Return the file with one more record; a key with an answer grows into a list.

    A record that is there already changes nothing. Raises ``BadFileError`` for a file that
    cannot be read and ``InputError`` for a record of another home.
    """
    found = read(text)
    if record.id in {row.id for row in found.records}:
        return text
    if found.home and record.home != found.home:
        raise InputError("home", record.home, f"{found.home}, as the file says")
    if record.home != found.home:
        text = with_top(text, f"home = {as_toml(record.home)}")
    fields = [f"{name} = {as_toml(value)}" for name, value in fields_of(record, found.header)]
    things = {f"{collection}.{thing}" for collection, thing in things_in(record.key)}
    return with_answer(text, record.key, _one(record, found.header), fields, things)
