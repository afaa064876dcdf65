"""Residual currents: in amperes, their times in seconds, and the rod that a device still guards."""

from __future__ import annotations

from typing import Final

from ampwright.foundations.quantity import Amperes, Milliamperes, Ohms, Seconds
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes
from ampwright.standards.wiring.rcd import electrode_limit
from ampwright.tables.book import Book
from ampwright.tables.earthing import touch_limit_of_rod

METHOD: Final = Place("Ampwright", at="method, residual currents", trust=Trust.DERIVED)


@computes("I", "A", formula="I_ma / 1000", place=METHOD)
def in_amperes(I_ma: Milliamperes) -> Amperes:  # noqa: N803 - as printed
    """Return a small current in amperes.

    Examples
    --------
    >>> in_amperes(Milliamperes(30.0))
    0.03
    """
    return Amperes(I_ma / 1000)


@computes("t", "s", formula="t_ms / 1000", place=METHOD)
def in_seconds(t_ms: float) -> Seconds:
    """Return a time in seconds that a tester shows in milliseconds.

    Examples
    --------
    >>> in_seconds(300.0)
    0.3
    """
    return Seconds(t_ms / 1000)


def largest_electrode(book: Book, rcd_ma: Milliamperes) -> Ohms:
    """Return the largest resistance to earth that a residual current device still guards."""
    return electrode_limit(touch_limit_of_rod(book), in_amperes(rcd_ma))
