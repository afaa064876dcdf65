"""Widths of devices and how much of a board may be loaded at once."""

from __future__ import annotations

from typing import cast

from ampwright.foundations.quantity import Count, Millimetres, Share

from .book import Book


def modules_of(book: Book, device: str) -> Count:
    """Return how many modules a kind of device usually takes up.

    Source: trade practice; the device's own sheet rules.

    Examples
    --------
    >>> int(modules_of(Book(), "breaker, three poles"))
    3
    """
    return cast(Count, book.number("boards/module_widths", "modules", device=device))


def module_pitch_mm(book: Book) -> Millimetres:
    """Return the width of one module.

    Source: trade practice.

    Examples
    --------
    >>> module_pitch_mm(Book())
    17.5
    """
    return Millimetres(book.number("boards/module_pitch", "width_mm", item="module"))


def rated_diversity(book: Book, circuits: int) -> Share:
    """Return the share of its rating at which each of so many circuits may run at once.

    A charging circuit counts as 1 all the same. Source: BS EN 61439-3, Table 101.

    Examples
    --------
    >>> rated_diversity(Book(), 4)
    0.7
    """
    return Share(book.number("boards/rated_diversity", "factor", circuits_up_to=circuits))
