"""Voltage drop of cables for each ampere and metre, and how much is allowed."""

from __future__ import annotations

from typing import Final

from ampwright.foundations.quantity import MilliVoltsPerAmpMetre, Share

from .book import Book
from .capacity import CableFamily
from .loader import Key

DROP: Final = {
    CableFamily.FLAT: "voltage_drop/flat_70",
    CableFamily.SHEATHED: "voltage_drop/multicore_90",
    CableFamily.ARMOURED: "voltage_drop/armoured_90",
    CableFamily.FIVE_CORE: "voltage_drop/multicore_90",
    CableFamily.SINGLES: "voltage_drop/single_core_70",
}
ENCLOSED: Final = "enclosed, methods A and B"


def drop_mv(book: Book, family: CableFamily, phases: int, size_mm2: float) -> MilliVoltsPerAmpMetre:
    """Return the voltage drop of a cable at its insulation's temperature and the worst angle.

    Between the lines where ``phases`` is 3. Cables with 90 °C insulation take the 90 °C figure,
    which is the safe side when they run cooler. Raises ``OutOfTableError`` for a size the
    table lacks. Source: BS 7671, Tables 4D1B, 4D5, 4E2B and 4E4B.

    Examples
    --------
    >>> drop_mv(Book(), CableFamily.FLAT, 1, 6), drop_mv(Book(), CableFamily.ARMOURED, 3, 10)
    (7.3, 4.0)
    """
    return MilliVoltsPerAmpMetre(
        book.number(DROP[family], "z_mv", **_keys(family, phases, size_mm2))
    )


def resistive_drop_mv(
    book: Book, family: CableFamily, phases: int, size_mm2: float
) -> MilliVoltsPerAmpMetre:
    """Return the resistive part of the voltage drop; up to 16 mm² it is the whole.

    Source: as ``drop_mv``.

    Examples
    --------
    >>> resistive_drop_mv(Book(), CableFamily.ARMOURED, 3, 25)
    1.6
    """
    return MilliVoltsPerAmpMetre(
        book.number(DROP[family], "r_mv", **_keys(family, phases, size_mm2))
    )


def reactive_drop_mv(
    book: Book, family: CableFamily, phases: int, size_mm2: float
) -> MilliVoltsPerAmpMetre:
    """Return the reactive part of the voltage drop, which is printed from 25 mm² on.

    Raises ``OutOfTableError`` for a smaller size. Source: as ``drop_mv``.

    Examples
    --------
    >>> reactive_drop_mv(Book(), CableFamily.ARMOURED, 3, 25)
    0.14
    """
    return MilliVoltsPerAmpMetre(
        book.number(DROP[family], "x_mv", **_keys(family, phases, size_mm2))
    )


def drop_limit(book: Book, use: str = "other") -> Share:
    """Return the share of the nominal voltage that may be lost from origin to load.

    ``use`` is "lighting" or "other". Source: BS 7671, Appendix 4, Table 4Ab.

    Examples
    --------
    >>> drop_limit(Book()), drop_limit(Book(), "lighting")
    (0.05, 0.03)
    """
    return Share(book.number("voltage_drop/limits", "share", use=use))


def _keys(family: CableFamily, phases: int, size_mm2: float) -> dict[str, Key]:
    """Return the keys of a row; single cores lie enclosed, as they do in a home."""
    if family is CableFamily.SINGLES:
        return {"phases": phases, "arrangement": ENCLOSED, "size_mm2": size_mm2}
    return {"phases": phases, "size_mm2": size_mm2}
