"""Reading a published table once: the CSV file, checked against its card."""

from __future__ import annotations

import csv
import hashlib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from math import isinf

from ampwright.foundations.errors import NotFoundError
from ampwright.foundations.source import Place

from .card import MARKS, Card, Column, read_card, refuse, trust_of

Key = str | float
Keys = tuple[Key, ...]


@dataclass(frozen=True, slots=True)
class Row:
    """One row: where it stands, how it is known, and its cells; an empty cell is left out."""

    keys: Keys
    place: Place
    confidence: str
    note: str
    numbers: dict[str, float]
    texts: dict[str, str]


@dataclass(frozen=True, slots=True, eq=False)
class Table:
    """A published table in memory, indexed by the keys of its rows.

    ``ladders`` holds, for the other keys in order, the rising values of the key that may
    fall between rows.
    """

    name: str
    card: Card
    rows: dict[Keys, Row]
    numbers: dict[str, dict[Keys, float]]
    texts: dict[str, dict[Keys, str]]
    ladders: dict[Keys, tuple[float, ...]]

    @property
    def keys(self) -> tuple[str, ...]:
        """The columns that identify a row, in order."""
        return self.card.keys

    def values_of(self, key: str) -> tuple[Key, ...]:
        """Return the distinct values of a key, in the order of the file."""
        spot = self.keys.index(key)
        return tuple(dict.fromkeys(keys[spot] for keys in self.rows))


@cache
def table(name: str) -> Table:
    """Load a packaged table once, refusing it if it does not match its card.

    Raises ``NotFoundError`` for a name that is no table, ``TableCardError`` for a bad one.

    Examples
    --------
    >>> table("conductors/copper_class_2").numbers["r20_ohm_per_km"][(6.0,)]
    3.08
    """
    if name not in table_names():
        raise NotFoundError("table", name, table_names())
    folder = data_folder()
    raw = folder.joinpath(f"{name}.csv").read_bytes()
    return read_table(name, raw, folder.joinpath(f"{name}.toml").read_text("utf-8"))


@cache
def table_names() -> tuple[str, ...]:
    """Return the names of all packaged tables, family first, in the order of the alphabet.

    Examples
    --------
    >>> "conductors/copper_class_2" in table_names()
    True
    """
    return tuple(
        sorted(
            f"{family.name}/{file.name.removesuffix('.csv')}"
            for family in data_folder().iterdir()
            if family.is_dir()
            for file in family.iterdir()
            if file.name.endswith(".csv")
        )
    )


def data_folder() -> Traversable:
    """Return the folder that holds the packaged tables."""
    return files("ampwright.tables").joinpath("data")


def read_table(name: str, raw: bytes, card_text: str) -> Table:
    """Read a table from the bytes of its file and the text of its card.

    Raises ``TableCardError`` naming the file, the field and what to do.
    """
    card = read_card(name, card_text)
    if hashlib.sha256(raw).hexdigest() != card.sha256:
        raise refuse(
            f"{name}.csv",
            "sha256",
            "is not the one on its card",
            f"If the change is meant, check it against {card.place.document}, {card.place.at},"
            " then renew sha256 and transcribed.",
        )
    lines = csv.DictReader(raw.decode("utf-8").splitlines())
    _headings(card, lines.fieldnames or ())
    rows = dict(_rows(card, lines))
    if card.place.trust.value == "memory" and not card.replace_by:
        raise refuse(f"{name}.toml", "replace_by", "is missing", "Recalled values need it.")
    numbers, texts = _by_column(card, rows)
    return Table(name, card, rows, numbers, texts, _ladders(card, rows))


def _headings(card: Card, headings: Iterable[str]) -> None:
    """Refuse a file whose columns are not those of the card."""
    found = {heading for heading in headings if heading not in MARKS}
    if unknown := sorted(found - set(card.columns)):
        raise refuse(
            f"{card.name}.csv",
            f"column {', '.join(unknown)}",
            "has no unit on the card",
            "Describe it under [columns].",
        )
    if absent := sorted(set(card.columns) - found):
        raise refuse(
            f"{card.name}.csv",
            f"column {', '.join(absent)}",
            "is missing",
            "Add it, or take it off the card.",
        )


def _rows(card: Card, lines: csv.DictReader[str]) -> Iterator[tuple[Keys, Row]]:
    """Yield each row with its keys, refusing a second row with the same keys."""
    seen: set[Keys] = set()
    for line in lines:
        where = f"{card.name}.csv, line {lines.line_num}"
        cells = {name: _cell(where, card.columns[name], line[name]) for name in card.columns}
        keys = tuple(cells[name] for name in card.keys)
        if "" in keys or keys in seen:
            raise refuse(
                where,
                ", ".join(card.keys),
                f"is {keys}, empty or there already",
                "Every row is identified by its keys.",
            )
        seen.add(keys)
        numbers = {name: cell for name, cell in cells.items() if isinstance(cell, float)}
        texts = {name: cell for name, cell in cells.items() if isinstance(cell, str) and cell}
        place = _place(where, card, line, keys)
        yield (
            keys,
            Row(keys, place, line.get("confidence") or "", line.get("note") or "", numbers, texts),
        )


def _cell(where: str, column: Column, said: str | None) -> Key:
    """Return a cell as a number or text; an empty cell stays an empty text."""
    if said is None:
        raise refuse(where, column.name, "is missing", "Write all cells of the row.")
    if column.is_text or said == "":
        return said
    try:
        return float(said)
    except ValueError:
        raise refuse(where, column.name, f"is {said!r}", "Write a number.") from None


def _place(where: str, card: Card, line: dict[str, str], keys: Keys) -> Place:
    """Return the place of a row, with the row's own document and trust where it has them."""
    if (said := line.get("doubtful") or "") not in ("", "yes"):
        raise refuse(where, "doubtful", f"is {said!r}", "Write yes or leave it empty.")
    doubtful = said == "yes"
    trust = trust_of(where, "trust", line["trust"]) if line.get("trust") else card.place.trust
    if trust.value == "memory" and not card.replace_by:
        raise refuse(f"{card.name}.toml", "replace_by", "is missing", "Recalled values need it.")
    document, at = line.get("document"), line.get("at")
    if document or at:
        base = card.place
        edition = (line.get("edition") or "") if document else base.edition
        return Place(document or base.document, edition, at or "", trust, doubtful)
    return card.place.at_row(row_words(card, keys), trust, doubtful)


def row_words(card: Card, keys: Keys) -> str:
    """Say which row keys stand for, in words and units."""
    return ", ".join(
        key_words(card.columns[name], key) for name, key in zip(card.keys, keys, strict=True)
    )


def key_words(column: Column, key: Key) -> str:
    """Say one key of a row.

    Examples
    --------
    >>> size = Column("size_mm2", "S", "mm²", "nominal size", False)
    >>> key_words(size, 2.5), key_words(size, float("inf"))
    ('2.5 mm²', 'any larger mm²')
    >>> key_words(Column("method", "method", "", "reference method", True), "C")
    'method C'
    """
    if isinstance(key, str):
        return f"{column.symbol} {key}".strip()
    figure = "any larger" if isinf(key) else f"{key:.10g}"
    return f"{figure} {column.unit}" if column.unit else f"{column.symbol} {figure}".strip()


def _by_column(
    card: Card, rows: dict[Keys, Row]
) -> tuple[dict[str, dict[Keys, float]], dict[str, dict[Keys, str]]]:
    """Index the cells by column, then by the keys of their row."""
    numbers: dict[str, dict[Keys, float]] = {}
    texts: dict[str, dict[Keys, str]] = {}
    for name, column in card.columns.items():
        if name in card.keys:
            continue
        if column.is_text:
            texts[name] = {k: row.texts[name] for k, row in rows.items() if name in row.texts}
        else:
            numbers[name] = {k: row.numbers[name] for k, row in rows.items() if name in row.numbers}
    return numbers, texts


def _ladders(card: Card, rows: dict[Keys, Row]) -> dict[Keys, tuple[float, ...]]:
    """Return the rising values of the key that may fall between rows, for the other keys."""
    if not card.between_key:
        return {}
    spot = card.keys.index(card.between_key)
    rungs: dict[Keys, list[float]] = {}
    for keys in rows:
        rungs.setdefault(keys[:spot] + keys[spot + 1 :], []).append(float(keys[spot]))
    return {others: tuple(sorted(values)) for others, values in rungs.items()}
