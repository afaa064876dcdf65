"""Days as people read them."""

from __future__ import annotations

from datetime import date


def day(on: date) -> str:
    """Write a day with its weekday.

    Examples
    --------
    >>> day(date(2026, 12, 10))
    'Thu 10 Dec 2026'
    """
    return f"{on:%a} {on.day} {on:%b %Y}"
