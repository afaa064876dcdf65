"""A rod and the residual current device that guards it: the touch voltage both are held to."""

from __future__ import annotations

from typing import Final

from ampwright.foundations.quantity import Amperes, Milliamperes, Ohms, Volts
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


def touch_limit(book: Book) -> Volts:
    """Return the touch voltage that a rod and its residual current device are held to."""
    return touch_limit_of_rod(book)


def largest_electrode(book: Book, rcd_ma: Milliamperes) -> Ohms:
    """Return the largest resistance to earth that a residual current device still guards."""
    return electrode_limit(touch_limit(book), in_amperes(rcd_ma))
