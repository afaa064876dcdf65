"""The few figures that no table holds: a number that says its source where workings are kept."""

from __future__ import annotations

from typing import TypeVar

from ampwright.foundations.source import Source
from ampwright.foundations.working import given
from ampwright.tables.book import Book

T = TypeVar("T", bound=float)


def noted(book: Book, symbol: str, value: T, unit: str, source: Source) -> T:
    """Return a number, as a leaf with its source if the book keeps workings.

    Examples
    --------
    >>> from ampwright.foundations.source import SetBy
    >>> noted(Book(), "tg", 20.0, "°C", SetBy("example"))
    20.0
    """
    return given(symbol, value, unit, source) if book.keeps_working else value
