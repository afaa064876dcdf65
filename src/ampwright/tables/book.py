"""The book on the firm's desk: every published table, with the firm's own cells laid over it."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from math import isnan

from ampwright.foundations.errors import InputError, NotFoundError, OutOfTableError
from ampwright.foundations.source import Place, SetBy, Trust
from ampwright.foundations.working import Step, Worked, computes

from .card import Column
from .loader import Key, Keys, Row, Table, key_words, row_words, table

STRAIGHT_LINE = Place(
    "Ampwright", at="method, a straight line between two rows", trust=Trust.DERIVED
)


@computes(
    "between rows",
    "",
    place=STRAIGHT_LINE,
    formula="low + (high - low) * (asked - below) / (above - below)",
)
def straight_line(low: float, high: float, asked: float, below: float, above: float) -> float:
    """Read a value off the straight line between two rows of a table.

    Only for tables whose card allows it, and between the rows, never beyond them.

    Examples
    --------
    >>> straight_line(10.0, 20.0, 2.5, 2.0, 3.0)
    15.0
    """
    return low + (high - low) * (asked - below) / (above - below)


@dataclass(frozen=True, slots=True)
class Override:
    """One cell read by the firm in its own copy of a document, laid over the packaged one."""

    table: str
    keys: tuple[tuple[str, Key], ...]
    column: str
    value: float
    source: Place | SetBy


@dataclass(frozen=True, slots=True)
class Changed:
    """A cell that the firm laid over a packaged one: what stood there and what stands there now."""

    override: Override
    packaged: float
    place: Place


@dataclass(frozen=True, slots=True, eq=False)
class Held:
    """A table as this book holds it: the packaged cells with the firm's own over them."""

    table: Table
    keys: tuple[str, ...]
    numbers: dict[str, dict[Keys, float]]
    sources: dict[tuple[str, Keys], Place | SetBy]


@dataclass(frozen=True, slots=True, eq=False)
class Book:
    r"""Published tables to look up; compared and hashed by identity.

    ``Book()`` gives plain floats. With ``keeps_working`` each number carries the place of its
    row and how far it is trusted, and the worked numbers that the row was chosen by.

    Examples
    --------
    >>> Book().number("conductors/copper_class_2", "r20_ohm_per_km", size_mm2=6.0)
    3.08
    >>> from ampwright.foundations.working import working
    >>> r20 = Book().documented().number("conductors/copper_class_2", "r20_ohm_per_km",
    ...                                  size_mm2=6.0)
    >>> print(*working(r20), sep="\n")
    r20 = 3.08 Ω/km  [IEC 60228:2004, Table 2, 6 mm²]
    """

    keeps_working: bool = False
    overrides: tuple[Override, ...] = ()
    _held: dict[str, Held] = field(default_factory=dict, init=False, repr=False)
    _rows: dict[tuple[object, ...], tuple[Row, ...]] = field(
        default_factory=dict, init=False, repr=False
    )

    def documented(self) -> Book:
        """Return the same book whose numbers keep their working."""
        return Book(keeps_working=True, overrides=self.overrides)

    def plain(self) -> Book:
        """Return the same book whose numbers are plain floats."""
        return Book(keeps_working=False, overrides=self.overrides)

    def number(self, table: str, column: str, **keys: Key) -> float:
        """Return one number of a table; keys are named as on its card.

        Raises ``OutOfTableError`` outside what the table covers and for an empty cell.
        """
        held = self._held.get(table) or self._open(table)
        if tuple(keys) == held.keys and not self.keeps_working:
            cells = held.numbers.get(column)
            cell = None if cells is None else cells.get(tuple(keys.values()))
            if cell is not None:
                return cell
        return self.read(table, column, keys)

    def read(self, table: str, column: str, keys: Mapping[str, Key], remark: str = "") -> float:
        """Return one number as ``number`` does; ``remark`` is added to its place."""
        held = self._held.get(table) or self._open(table)
        if column not in held.numbers:
            raise NotFoundError(f"column of numbers in {table}", column, tuple(held.numbers))
        asked = _ordered(held.table, keys)
        if (hit := _plain(asked)) in held.numbers[column]:
            return self._worked(held, column, hit, asked, remark)
        return self._between(held, column, asked, remark)

    def text(self, table: str, column: str, **keys: Key) -> str:
        """Return one text of a table; an empty cell is an empty text.

        Examples
        --------
        >>> Book().text("network/meter_points", "area", distributor_id="12")
        'London'
        """
        row = self.row(table, **keys)
        if column not in self.table(table).texts:
            raise NotFoundError(f"column of text in {table}", column, tuple(row.texts))
        return row.texts.get(column, "")

    def row(self, table: str, **keys: Key) -> Row:
        """Return the packaged row that stands exactly at these keys."""
        held = self._held.get(table) or self._open(table)
        asked = _plain(_ordered(held.table, keys))
        if asked not in held.table.rows:
            raise _outside(held.table, asked)
        return held.table.rows[asked]

    def rows(self, table: str, **keys: Key) -> tuple[Row, ...]:
        """Return the rows of a table whose keys match those given, in the order of the file."""
        asked = (table, *keys.items())
        if asked not in self._rows:
            self._rows[asked] = self._matching(table, keys)
        return self._rows[asked]

    def _matching(self, table: str, keys: Mapping[str, Key]) -> tuple[Row, ...]:
        found = self.table(table)
        if unknown := sorted(set(keys) - set(found.keys)):
            raise NotFoundError(f"key of {table}", unknown[0], found.keys)
        spots = [(found.keys.index(name), key) for name, key in keys.items()]
        return tuple(
            row for row in found.rows.values() if all(row.keys[i] == key for i, key in spots)
        )

    def place(self, table: str, **keys: Key) -> Place:
        """Return where a row stands and how far it is trusted."""
        return self.row(table, **keys).place

    def table(self, name: str) -> Table:
        """Return a whole packaged table."""
        return (self._held.get(name) or self._open(name)).table

    def changed(self) -> Iterator[Changed]:
        """Yield every cell that the firm laid over a packaged one, with what stood there."""
        for each in self.overrides:
            packaged = self.table(each.table)
            keys = _plain(_ordered(packaged, dict(each.keys)))
            yield Changed(each, packaged.numbers[each.column][keys], packaged.rows[keys].place)

    def __reduce__(self) -> tuple[type[Book], tuple[bool, tuple[Override, ...]]]:
        """Send only what the book was made from; the tables are read anew where it arrives."""
        return (type(self), (self.keeps_working, self.overrides))

    def _open(self, name: str) -> Held:
        """Take a table off the shelf and lay the firm's own cells over it."""
        packaged = table(name)
        laid = [each for each in self.overrides if each.table == name]
        numbers = packaged.numbers
        sources: dict[tuple[str, Keys], Place | SetBy] = {}
        if laid:
            numbers = {column: dict(cells) for column, cells in numbers.items()}
        for each in laid:
            keys = _plain(_ordered(packaged, dict(each.keys)))
            if keys not in numbers.get(each.column, {}):
                raise InputError(
                    f"the firm's own {name}.{each.column}",
                    keys,
                    "a cell that the table has",
                    "Lay a cell only over one that is there.",
                )
            numbers[each.column][keys] = each.value
            sources[each.column, keys] = each.source
        held = Held(packaged, packaged.keys, numbers, sources)
        self._held[name] = held
        return held

    def _worked(self, held: Held, column: str, hit: Keys, asked: Keys, remark: str) -> float:
        """Return a cell, with its place and the worked keys that led to it if workings are kept."""
        value = held.numbers[column][hit]
        if not self.keeps_working:
            return value
        source = held.sources.get((column, hit), held.table.rows[hit].place)
        if remark and isinstance(source, Place):
            source = source.at_row(remark, source.trust)
        about = held.table.card.columns[column]
        step = Step(about.symbol, about.unit, source)
        return Worked(value, step, tuple(key for key in asked if type(key) is Worked))

    def _between(self, held: Held, column: str, asked: Keys, remark: str) -> float:
        """Return a number for keys that fall between rows, as the card says, or refuse."""
        card = held.table.card
        if not card.between_key:
            raise _outside(held.table, _plain(asked), column)
        spot = card.keys.index(card.between_key)
        others = _plain(asked[:spot] + asked[spot + 1 :])
        ladder = held.table.ladders.get(others, ())
        wanted = float(asked[spot])
        step = bisect_left(ladder, wanted)
        before_first = card.between_rows == "linear" and step == 0
        if step == len(ladder) or isnan(wanted) or before_first:
            raise _outside(held.table, _plain(asked), column)
        above = (*others[:spot], ladder[step], *others[spot:])
        if card.between_rows == "next_larger":
            if above not in held.numbers[column]:
                raise _outside(held.table, above, column)
            said = key_words(card.columns[card.between_key], wanted)
            return self._worked(held, column, above, asked, _joined(remark, f"for {said}"))
        below = (*others[:spot], ladder[step - 1], *others[spot:])
        return self._line(held, column, below, above, asked[spot])

    def _line(self, held: Held, column: str, below: Keys, above: Keys, asked: Key) -> float:
        """Return the value on the straight line between two rows."""
        cells = held.numbers[column]
        key = held.table.card.columns[held.table.card.between_key]
        spot = held.keys.index(key.name)
        ends = (float(below[spot]), float(above[spot]))
        if not self.keeps_working:
            return straight_line(cells[below], cells[above], float(asked), *ends)
        low = self._worked(held, column, below, (), "")
        high = self._worked(held, column, above, (), "")
        about = held.table.card.columns[column]
        heading = held.table.card.place.at_row(f"columns of {about.symbol}")
        marks = [Worked(end, Step(key.symbol, key.unit, heading)) for end in ends]
        wanted = (
            asked
            if type(asked) is Worked
            else Worked(float(asked), Step(key.symbol, key.unit, SetBy("asked of the table")))
        )
        value = straight_line(low, high, wanted, *marks)
        made = Step(about.symbol, about.unit, STRAIGHT_LINE, _FORMULA.formula, _FORMULA.names)
        return Worked(float(value), made, (low, high, wanted, *marks))


_FORMULA = straight_line.clause.step  # type: ignore[attr-defined]


def _ordered(table: Table, keys: Mapping[str, Key]) -> Keys:
    """Return keys in the order of the table, refusing others than its own."""
    if set(keys) != set(table.keys):
        raise InputError(
            f"keys of {table.name}", sorted(keys), ", ".join(table.keys), "Name exactly these."
        )
    return tuple(keys[name] for name in table.keys)


def _plain(keys: Keys) -> Keys:
    """Return keys without their workings, fit to look up."""
    return tuple(float(key) if isinstance(key, float) else key for key in keys)


def _joined(*parts: str) -> str:
    return ", ".join(part for part in parts if part)


def _outside(table: Table, asked: Keys, column: str = "") -> OutOfTableError:
    """Return the error for keys that no row has: the first key that fails and what it covers."""
    rows = list(table.rows)
    for spot, name in enumerate(table.keys):
        matching = [keys for keys in rows if keys[spot] == asked[spot]]
        if not matching:
            about = table.card.columns[name]
            given = asked[spot]
            shown = given if isinstance(given, str) else f"{given:.10g} {about.unit}".strip()
            return OutOfTableError(
                _named(table, asked[:spot]),
                name,
                shown,
                _covers(table, about, [keys[spot] for keys in rows]),
            )
        rows = matching
    filled = [row_words(table.card, keys) for keys in table.numbers.get(column, {})]
    return OutOfTableError(
        _named(table, ()),
        column,
        f"a value at {row_words(table.card, asked)}",
        "; ".join(filled) or "no value there",
    )


def _named(table: Table, settled: Keys) -> str:
    """Name a table and the keys settled so far, for a message."""
    card = table.card
    said = [key_words(card.columns[name], key) for name, key in zip(card.keys, settled)]  # noqa: B905
    return _joined(f"{card.title} ({card.place})", *said)


def _covers(table: Table, about: Column, there: list[Key]) -> str:
    """Say what values of a key the table covers."""
    values = list(dict.fromkeys(there))
    numbers = sorted(value for value in values if isinstance(value, float))
    if not numbers:
        return ", ".join(str(value) for value in values)
    figures = [f"{number:.10g}" for number in numbers]
    if about.name != table.card.between_key:
        return f"{', '.join(figures)} {about.unit}".strip()
    if table.card.between_rows == "next_larger":
        return f"up to {figures[-1]} {about.unit}".strip()
    return f"{figures[0]} to {figures[-1]} {about.unit}".strip()
