"""Current-carrying capacity of the cables that a home is wired with."""

from __future__ import annotations

from enum import StrEnum
from typing import Final

from ampwright.foundations.quantity import Amperes, Celsius, SquareMm

from .book import Book
from .loader import Key, table


class CableFamily(StrEnum):
    """The kinds of cable a circuit may be run in.

    ``SHEATHED`` is round outdoor cable with cross-linked insulation, of three or five cores;
    ``FIVE_CORE`` is the same, named for its cores; ``ARMOURED`` has steel wire round
    cross-linked cores; ``SINGLES`` are single cores drawn into conduit or trunking.
    """

    FLAT = "flat"
    SHEATHED = "sheathed"
    ARMOURED = "armoured"
    FIVE_CORE = "five-core"
    SINGLES = "singles"


AT_70: Final = {
    CableFamily.FLAT: "capacity/flat_70",
    CableFamily.SHEATHED: "capacity/multicore_70",
    CableFamily.ARMOURED: "capacity/armoured_70",
    CableFamily.FIVE_CORE: "capacity/multicore_70",
    CableFamily.SINGLES: "capacity/single_core_70",
}
AT_90: Final = {
    CableFamily.SHEATHED: "capacity/multicore_90",
    CableFamily.ARMOURED: "capacity/armoured_90",
    CableFamily.FIVE_CORE: "capacity/multicore_90",
}
"""Families whose insulation bears 90 °C."""


def tabulated_capacity(
    book: Book, family: CableFamily, method: str, loaded: int, size_mm2: float
) -> Amperes:
    """Return the capacity to design with: that at 70 °C, which terminals in a home are rated for.

    ``method`` is a reference method of BS 7671 ("100" to "103", "A" to "E"), ``loaded`` the
    loaded conductors, 2 or 3. Raises ``OutOfTableError`` for a method, number or size that the
    family's table lacks. Source: BS 7671, Tables 4D1A, 4D2A, 4D4A and 4D5.

    Examples
    --------
    >>> tabulated_capacity(Book(), CableFamily.FLAT, "C", 2, 6)
    47.0
    >>> tabulated_capacity(Book(), CableFamily.ARMOURED, "C", 2, 6)
    49.0
    """
    if family in AT_90:
        return terminal_limited_capacity(book, family, method, loaded, size_mm2)
    return Amperes(
        book.number(AT_70[family], "capacity_a", method=method, loaded=loaded, size_mm2=size_mm2)
    )


def terminal_limited_capacity(
    book: Book, family: CableFamily, method: str, loaded: int, size_mm2: float
) -> Amperes:
    """Return what a 90 °C cable may carry so that terminals rated 70 °C stay at 70 °C.

    It is the figure of the 70 °C table of the same build, and its place says so. Source:
    BS 7671, Tables 4D2A and 4D4A, used as its notes on 90 °C cables and 512.1.2 ask.

    Examples
    --------
    >>> from ampwright.foundations.working import working
    >>> book = Book().documented()
    >>> print(*working(terminal_limited_capacity(book, CableFamily.ARMOURED, "C", 2, 6)))
    It = 49 A  [BS 7671:2018+A2:2022, Table 4D4A, method C, loaded conductors 2, 6 mm², \
the 70 °C figure, because the terminals are rated 70 °C (memory)]
    """
    name = AT_70[family]
    if not book.keeps_working:
        return Amperes(
            book.number(name, "capacity_a", method=method, loaded=loaded, size_mm2=size_mm2)
        )
    remark = "the 70 °C figure, because the terminals are rated 70 °C"
    keys: dict[str, Key] = {"method": method, "loaded": loaded, "size_mm2": size_mm2}
    return Amperes(book.read(name, "capacity_a", keys, remark))


def full_temperature_capacity(
    book: Book, family: CableFamily, method: str, loaded: int, size_mm2: float
) -> Amperes:
    """Return what a 90 °C cable may carry where its terminals are proved for 90 °C as well.

    Never for an ordinary charge point or consumer unit. Raises ``KeyError`` for a family whose
    insulation does not bear 90 °C. Source: BS 7671, Tables 4E2A and 4E4A.

    Examples
    --------
    >>> full_temperature_capacity(Book(), CableFamily.ARMOURED, "C", 2, 6)
    62.0
    """
    return Amperes(
        book.number(AT_90[family], "capacity_a", method=method, loaded=loaded, size_mm2=size_mm2)
    )


def sizes_of(family: CableFamily) -> tuple[SquareMm, ...]:
    """Return the sizes that the family's capacity table has, smallest first.

    Examples
    --------
    >>> sizes_of(CableFamily.FLAT)
    (1.0, 1.5, 2.5, 4.0, 6.0, 10.0, 16.0)
    """
    sizes = table(AT_70[family]).values_of("size_mm2")
    return tuple(sorted(SquareMm(float(size)) for size in sizes))


def methods_of(family: CableFamily) -> tuple[str, ...]:
    """Return the reference methods that the family's capacity table has.

    Examples
    --------
    >>> methods_of(CableFamily.ARMOURED)
    ('C', 'D', 'E')
    """
    return tuple(sorted(str(method) for method in table(AT_70[family]).values_of("method")))


def insulation_c(book: Book, family: CableFamily) -> Celsius:
    """Return the highest temperature that the family's insulation is made for.

    Source: trade practice; the maker's sheet rules.

    Examples
    --------
    >>> insulation_c(Book(), CableFamily.FLAT), insulation_c(Book(), CableFamily.ARMOURED)
    (70.0, 90.0)
    """
    return Celsius(book.number("conductors/families", "insulation_c", family=family.value))


def used_at_c(book: Book, family: CableFamily) -> Celsius:
    """Return the highest temperature the family is used at, with terminals rated 70 °C.

    The temperature whose capacity table and ambient factors apply. Source: trade practice.

    Examples
    --------
    >>> used_at_c(Book(), CableFamily.ARMOURED)
    70.0
    """
    return Celsius(book.number("conductors/families", "used_at_c", family=family.value))
