"""The card of a published table: what it is, where it was read and how far it may be trusted."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from datetime import date
from typing import Any

from ampwright.foundations.errors import TableCardError
from ampwright.foundations.source import Place, Trust

BETWEEN_ROWS = ("none", "linear", "next_larger")
MARKS = ("document", "edition", "at", "trust", "confidence", "doubtful", "note")
"""Columns that say something about a row rather than hold a value of it."""

TEXT_FIELDS = (
    "title",
    "document",
    "edition",
    "at",
    "trust",
    "between_rows",
    "conditions",
    "licence",
    "sha256",
)
OTHER_FIELDS: dict[str, type] = {
    "found_at": list,
    "keys": list,
    "transcribed": dict,
    "second_reading": dict,
    "in_force": dict,
    "columns": dict,
}


@dataclass(frozen=True, slots=True)
class Column:
    """One column of a table: its symbol in formulas, its unit and what it means."""

    name: str
    symbol: str
    unit: str
    meaning: str
    is_text: bool


@dataclass(frozen=True, slots=True)
class Reading:
    """Who read the values, when and against what; ``why_not`` when nobody read them twice."""

    on: date | None
    by: str
    against: str = ""
    why_not: str = ""


@dataclass(frozen=True, slots=True)
class Card:
    """All that is said about a table beside its values."""

    name: str
    title: str
    place: Place
    found_at: tuple[str, ...]
    transcribed: Reading
    second_reading: Reading
    keys: tuple[str, ...]
    between_rows: str
    between_key: str
    conditions: str
    in_force_from: date
    in_force_until: date | None
    replace_by: str
    licence: str
    sha256: str
    columns: dict[str, Column]


def refuse(name: str, field: str, wrong: str, do: str) -> TableCardError:
    """Return the error for a card or table, naming file, field and what to do.

    Examples
    --------
    >>> print(refuse("factors/x", "trust", "is 'sure'", "Write one of: published."))
    tables/data/factors/x: trust is 'sure'. Write one of: published.
    """
    return TableCardError(f"tables/data/{name}: {field} {wrong}. {do}")


def read_card(name: str, text: str) -> Card:
    """Read a card, refusing one that is incomplete.

    Raises ``TableCardError`` naming the file, the field and what to do.
    """
    try:
        raw = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise refuse(f"{name}.toml", "the file", f"is not TOML ({error})", "Mend it.") from error
    _complete(name, raw)
    until = raw["in_force"].get("until")
    return Card(
        name=name,
        title=raw["title"],
        place=Place(raw["document"], raw["edition"], raw["at"], _trust(name, raw["trust"])),
        found_at=tuple(raw["found_at"]),
        transcribed=_reading(name, "transcribed", raw["transcribed"]),
        second_reading=_reading(name, "second_reading", raw["second_reading"]),
        keys=tuple(raw["keys"]),
        between_rows=raw["between_rows"],
        between_key=_between_key(name, raw),
        conditions=raw["conditions"],
        in_force_from=raw["in_force"]["from"],
        in_force_until=until,
        replace_by=raw.get("replace_by", ""),
        licence=raw["licence"],
        sha256=raw["sha256"],
        columns={each: _column(name, each, about) for each, about in raw["columns"].items()},
    )


def _complete(name: str, raw: dict[str, Any]) -> None:
    """Refuse a card that lacks a field or has one of the wrong shape."""
    file = f"{name}.toml"
    for field in (*TEXT_FIELDS, *OTHER_FIELDS):
        if field not in raw:
            raise refuse(file, field, "is missing", "Add it; every card carries it.")
        expected = OTHER_FIELDS.get(field, str)
        if not isinstance(raw[field], expected):
            raise refuse(file, field, f"is {raw[field]!r}", f"Write a {expected.__name__}.")
    if not raw["keys"] or not set(raw["keys"]) <= set(raw["columns"]):
        raise refuse(file, "keys", f"is {raw['keys']}", "Name columns that identify a row.")
    if raw["between_rows"] not in BETWEEN_ROWS:
        listed = ", ".join(BETWEEN_ROWS)
        raise refuse(file, "between_rows", f"is {raw['between_rows']!r}", f"Write one of {listed}.")
    if not isinstance(raw["in_force"].get("from"), date):
        raise refuse(file, "in_force", "has no date 'from'", "Write in_force = { from = … }.")
    if known := set(raw["columns"]) & set(MARKS):
        raise refuse(file, "columns", f"names {sorted(known)}", "Those say things about a row.")


def trust_of(name: str, field: str, word: str) -> Trust:
    """Return the trust that a word stands for, refusing any other word."""
    try:
        return Trust(word)
    except ValueError:
        listed = ", ".join(each.value for each in Trust)
        raise refuse(name, field, f"is {word!r}", f"Write one of: {listed}.") from None


def _trust(name: str, word: str) -> Trust:
    return trust_of(f"{name}.toml", "trust", word)


def _reading(name: str, field: str, raw: dict[str, Any]) -> Reading:
    """Return who read the values and when, or why nobody did."""
    if why := raw.get("none"):
        return Reading(None, "", why_not=why)
    if not isinstance(raw.get("on"), date) or not raw.get("by"):
        raise refuse(
            f"{name}.toml",
            field,
            "lacks 'on' or 'by'",
            'Write { on = 2026-11-25, by = "…" }, or { none = "why not" }.',
        )
    return Reading(raw["on"], raw["by"], raw.get("against", ""))


def _between_key(name: str, raw: dict[str, Any]) -> str:
    """Return the one key that may fall between rows, or nothing."""
    key = raw.get("between_key", "")
    if (raw["between_rows"] == "none") is (key == "") and (not key or key in raw["keys"]):
        return str(key)
    raise refuse(
        f"{name}.toml",
        "between_key",
        f"is {key!r}",
        "Name the key that may fall between rows, exactly when rows have a between.",
    )


def _column(name: str, column: str, about: Any) -> Column:
    """Return a column, refusing one without symbol, unit or meaning."""
    for field in ("symbol", "unit", "meaning"):
        if not isinstance(about, dict) or not isinstance(about.get(field), str):
            raise refuse(
                f"{name}.toml",
                f"columns.{column}.{field}",
                "is missing",
                'Write it; "" is right for the unit of a text or a bare number.',
            )
    return Column(
        column, about["symbol"], about["unit"], about["meaning"], about.get("text") is True
    )
