"""Factors that lower a cable's tabulated capacity where it lies."""

from __future__ import annotations

from ampwright.foundations.quantity import Share

from .book import Book
from .loader import table


def ambient_factor(book: Book, insulation_c: float, ambient_c: float) -> Share:
    """Return the factor for the temperature of the air round a cable.

    ``insulation_c`` is 70 or 90, the temperature whose capacity table is used. Between rows
    the warmer row is taken; below 25 °C the row of 25 °C. Raises ``OutOfTableError`` for air
    too warm for the table. Source: BS 7671, Table 4B1.

    Examples
    --------
    >>> ambient_factor(Book(), 70, 30), ambient_factor(Book(), 70, 33)
    (1.0, 0.94)
    """
    return Share(
        book.number("factors/ambient_air", "factor", insulation_c=insulation_c, ambient_c=ambient_c)
    )


def ground_factor(book: Book, insulation_c: float, ground_c: float) -> Share:
    """Return the factor for the temperature of the ground round a buried cable.

    Between rows the warmer row is taken. Source: BS 7671, Table 4B2.

    Examples
    --------
    >>> ground_factor(Book(), 70, 15)
    1.05
    """
    return Share(
        book.number(
            "factors/ambient_ground", "factor", insulation_c=insulation_c, ground_c=ground_c
        )
    )


def soil_factor(book: Book, laid: str, soil_km_per_w: float) -> Share:
    """Return the factor for the thermal resistivity of the soil, in K·m/W.

    ``laid`` is "duct" or "direct". Source: BS 7671, Table 4B3.

    Examples
    --------
    >>> soil_factor(Book(), "duct", 2.5), soil_factor(Book(), "direct", 3)
    (1.0, 0.9)
    """
    return Share(
        book.number("factors/soil_resistivity", "factor", laid=laid, soil_km_per_w=soil_km_per_w)
    )


def depth_factor(book: Book, depth_m: float) -> Share:
    """Return the factor for the depth of burial; DOUBTFUL, a set of the trade recalled poorly.

    Below the deepest row that row is taken, which may be too much. Source: cable makers'
    practice, not BS 7671.

    Examples
    --------
    >>> depth_factor(Book(), 0.6), depth_factor(Book(), 3.0)
    (0.99, 0.91)
    """
    name = "factors/burial_depth"
    deepest = max(row.keys[0] for row in book.rows(name))
    return Share(book.number(name, "factor", depth_m=min(depth_m, deepest)))


def grouping_factor(book: Book, how: str, circuits: float) -> Share:
    """Return the factor for circuits that lie together in air, this one counted in.

    ``how`` is one of ``grouping_ways()``. Between rows the larger number is taken. Raises
    ``OutOfTableError`` beyond 20 circuits. Source: BS 7671, Table 4C1.

    Examples
    --------
    >>> grouping_factor(Book(), "bunched or enclosed", 2)
    0.8
    """
    return Share(book.number("factors/grouping_air", "factor", how=how, circuits=circuits))


def grouping_ways() -> tuple[str, ...]:
    """Return the ways that cables may lie together in air.

    Examples
    --------
    >>> grouping_ways()[:2]
    ('bunched or enclosed', 'single layer on a wall or floor')
    """
    return tuple(str(how) for how in table("factors/grouping_air").values_of("how"))


def buried_grouping_factor(book: Book, gap: str, circuits: float, ducts: bool = False) -> Share:
    """Return the factor for circuits that lie together in the ground.

    ``gap`` is the clear space as the table names it: "touching", "0.25 m", "0.5 m" …
    Source: BS 7671, Tables 4C2 (direct) and 4C3 (ducts).

    Examples
    --------
    >>> buried_grouping_factor(Book(), "touching", 2)
    0.75
    >>> buried_grouping_factor(Book(), "touching", 2, ducts=True)
    0.85
    """
    name = "factors/grouping_ducts" if ducts else "factors/grouping_buried"
    return Share(book.number(name, "factor", gap=gap, circuits=circuits))


def insulation_factor(book: Book, length_mm: float) -> Share:
    """Return the factor for a length of cable wholly in thermal insulation.

    Applies to the capacity of method C, for cables up to 10 mm²; between rows the longer row
    is taken. Source: BS 7671, Table 52.2.

    Examples
    --------
    >>> insulation_factor(Book(), 0), insulation_factor(Book(), 120), insulation_factor(Book(), 900)
    (1.0, 0.63, 0.5)
    """
    return Share(book.number("factors/thermal_insulation", "factor", length_mm=length_mm))


def device_factor(
    book: Book, device: str = "breaker or cartridge fuse", laid: str = "air"
) -> Share:
    """Return the factor for the kind of overload device and for burial.

    ``device`` is "breaker or cartridge fuse" or "rewireable fuse", ``laid`` "air" or "ground".
    Source: BS 7671, Appendix 4, section 5.1.

    Examples
    --------
    >>> device_factor(Book()), device_factor(Book(), laid="ground")
    (1.0, 0.9)
    """
    return Share(book.number("factors/device_and_burial", "factor", device=device, laid=laid))
