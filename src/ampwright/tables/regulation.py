"""Rates of tax and grants by date, and what operators' forms ask for."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from ampwright.foundations.errors import OutOfTableError
from ampwright.foundations.quantity import Kilowatts, Share

from .book import Book
from .loader import Row


def vat_rate(book: Book, item: str, on: date) -> Share:
    """Return the rate of value added tax for what is sold on a day.

    ``item`` is "charge point, fitted", "battery, fitted", "solar panels, fitted" and the like.
    Great Britain. Raises ``OutOfTableError`` for an item or day that is not listed. Source: the
    tax office's notice 708/6 and advisers.

    Examples
    --------
    >>> vat_rate(Book(), "charge point, fitted", date(2026, 11, 25))
    0.2
    >>> vat_rate(Book(), "battery, fitted", date(2026, 11, 25))
    0.0
    """
    row = _on(book.rows("regulation/vat", item=item), "regulation/vat", item, on)
    return Share(book.number("regulation/vat", "rate", item=item, from_date=row.keys[1]))


def grant_pounds(book: Book, grant: str, on: date) -> float:
    """Return the most that a grant pays for an application on a day, in pounds.

    Whether a customer may have it stands in the row's words, not here. Raises
    ``OutOfTableError`` for a grant or day that is not listed. Source: government grant pages.

    Examples
    --------
    >>> grant_pounds(Book(), "charge point", date(2026, 11, 25))
    500.0
    """
    row = _on(book.rows("regulation/grants", grant=grant), "regulation/grants", grant, on)
    return book.number("regulation/grants", "pounds", grant=grant, period=row.keys[1])


def grant_share(book: Book, grant: str) -> Share:
    """Return the largest share of a cost that a grant pays.

    Source: government grant pages, for an earlier period.

    Examples
    --------
    >>> grant_share(Book(), "charge point")
    0.75
    """
    return Share(book.number("regulation/grant_shares", "share", grant=grant))


def new_home_kw(book: Book) -> Kilowatts:
    """Return the least power of a point that comes with a new home in England.

    Source: Approved Document S.

    Examples
    --------
    >>> new_home_kw(Book())
    7.0
    """
    item = "a point that comes with it, England"
    return Kilowatts(book.number("regulation/new_homes", "power_kw", item=item))


def form_fields(book: Book, form: str) -> tuple[str, ...]:
    """Return what an operator's form asks for, in our words.

    ``form`` is "charge point or heat pump", "small generation, installation" and the like; the
    operator's current form rules. Source: forms read in third-party copies.

    Examples
    --------
    >>> form_fields(Book(), "charge point or heat pump")[1]
    'customer and how reached'
    """
    return tuple(row.texts["item"] for row in book.rows("regulation/form_fields", form=form))


def _on(rows: Iterable[Row], table: str, item: str, on: date) -> Row:
    """Return the row that is in force on a day."""
    covers = []
    for row in rows:
        first, last = row.texts.get("from_date", ""), row.texts.get("until_date", "")
        if (not first or first <= on.isoformat()) and (not last or on.isoformat() <= last):
            return row
        covers.append(f"{first or 'long since'} to {last or 'now'}")
    raise OutOfTableError(table, "date", f"{item}, {on}", "; ".join(covers) or "other items")
