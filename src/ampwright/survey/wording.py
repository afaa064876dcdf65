"""Values in words, as people say them."""

from __future__ import annotations

from collections.abc import Sequence

from ampwright.foundations.answers import Value


def as_words(value: Value) -> str:
    """Return one value as people say it.

    Examples
    --------
    >>> as_words(80.0), as_words(False), as_words("TN-C-S")
    ('80', 'no', 'TN-C-S')
    """
    if isinstance(value, bool):
        return "yes" if value else "no"
    return value if isinstance(value, str) else f"{value:.10g}"


def either(values: Sequence[Value]) -> str:
    """Return values in words, the last after *or*.

    Examples
    --------
    >>> either((60.0, 80.0, 100.0)), either((True, False))
    ('60, 80 or 100', 'yes or no')
    """
    *first, last = [as_words(value) for value in values]
    return f"{', '.join(first)} or {last}" if first else last
