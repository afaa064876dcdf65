"""Tails, bonding, earthing conductors, soils and electrodes."""

from __future__ import annotations

from typing import Final

from ampwright.foundations.quantity import (
    Amperes,
    Milliamperes,
    OhmMetres,
    Ohms,
    Share,
    SquareMm,
    Volts,
)

from .book import Book
from .conductors import k_factor

PROTECTIVE: Final = "earthing/protective_conductor"
LINE: Final = "line_up_to_mm2"

__all__ = [
    "body_current",
    "body_resistance",
    "bond_bounds",
    "buried_earthing_mm2",
    "earthing_conductor",
    "k_factor",
    "main_bond_mm2",
    "protective_bounds",
    "protective_least_mm2",
    "protective_share",
    "rod_advice",
    "rods_in_line_factor",
    "shape_constant",
    "soil_range",
    "soils",
    "tails_capacity",
    "touch_limit_of_rod",
]  # fmt: skip


def tails_capacity(book: Book, tails_mm2: float) -> Amperes:
    """Return the largest service fuse that meter tails of copper carry.

    Clipped single cores, from meter to first device, not over about 3 m. Raises
    ``OutOfTableError`` for sizes other than 10, 16, 25 and 35 mm². Source: network operators'
    practice.

    Examples
    --------
    >>> tails_capacity(Book(), 16), tails_capacity(Book(), 25)
    (80.0, 100.0)
    """
    return Amperes(book.number("earthing/tails", "fuse_a", tails_mm2=tails_mm2))


def earthing_conductor(book: Book, tails_mm2: float) -> SquareMm:
    """Return the least earthing conductor beside tails of that size.

    Source: network operators' practice and BS 7671, Table 54.7.

    Examples
    --------
    >>> earthing_conductor(Book(), 25)
    16.0
    """
    return SquareMm(book.number("earthing/tails", "earthing_conductor_mm2", tails_mm2=tails_mm2))


def protective_bounds(book: Book) -> tuple[SquareMm, SquareMm]:
    """Return the line conductors up to which the rule of thumb gives the same size, or one size.

    Of one metal. Source: BS 7671, Table 54.7.

    Examples
    --------
    >>> protective_bounds(Book())
    (16.0, 35.0)
    """
    same, fixed, _ = book.rows(PROTECTIVE)
    return SquareMm(same.numbers[LINE]), SquareMm(fixed.numbers[LINE])


def protective_least_mm2(book: Book, line_mm2: SquareMm) -> SquareMm:
    """Return the one size that a protective conductor has by rule beside lines of the middle.

    Source: BS 7671, Table 54.7.

    Examples
    --------
    >>> protective_least_mm2(Book(), SquareMm(25.0))
    16.0
    """
    return SquareMm(book.number(PROTECTIVE, "least_mm2", line_up_to_mm2=line_mm2))


def protective_share(book: Book, line_mm2: SquareMm) -> Share:
    """Return the share of its line that a protective conductor has by rule.

    Source: BS 7671, Table 54.7.

    Examples
    --------
    >>> protective_share(Book(), SquareMm(50.0))
    0.5
    """
    return Share(book.number(PROTECTIVE, "share", line_up_to_mm2=line_mm2))


def touch_limit_of_rod(book: Book) -> Volts:
    """Return the touch voltage that a rod and its residual current device are held to.

    Source: BS 7671, 411.5.3.

    Examples
    --------
    >>> touch_limit_of_rod(Book())
    50.0
    """
    item = "a rod and its residual current device"
    return Volts(book.number("earthing/touch_voltage", "volts_v", item=item))


def main_bond_mm2(book: Book, earthing: str, by_mm2: float) -> SquareMm:
    """Return the least main bonding conductor of copper.

    ``by_mm2`` is the copper equivalent of the supply neutral on TN-C-S, the earthing conductor
    on TN-S and TT. Source: BS 7671, 544.1.1 and Table 54.8.

    Examples
    --------
    >>> main_bond_mm2(Book(), "TN-C-S", 25), main_bond_mm2(Book(), "TT", 16)
    (10.0, 10.0)
    """
    return SquareMm(
        book.number("earthing/main_bonding", "bond_mm2", earthing=earthing, by_mm2=by_mm2)
    )


def bond_bounds(book: Book) -> tuple[SquareMm, SquareMm]:
    """Return the least main bond and the most that need be run, off TN-C-S.

    Source: BS 7671, 544.1.1.

    Examples
    --------
    >>> bond_bounds(Book())
    (6.0, 25.0)
    """
    name = "earthing/bond_bounds"
    return (
        SquareMm(book.number(name, "size_mm2", item="least")),
        SquareMm(book.number(name, "size_mm2", item="most needed")),
    )


def buried_earthing_mm2(book: Book, protection: str, metal: str = "copper") -> SquareMm:
    """Return the least buried earthing conductor of "copper" or "steel".

    ``protection`` is "against corrosion and damage", "against corrosion only" or "none".
    Source: BS 7671, Table 54.1.

    Examples
    --------
    >>> buried_earthing_mm2(Book(), "against corrosion only")
    16.0
    """
    name = "earthing/buried_conductor"
    return SquareMm(book.number(name, "size_mm2", protection=protection, metal=metal))


def rod_advice(book: Book, use: str = "stable") -> Ohms:
    """Return the electrode resistance not to be passed so that it stays stable over a year.

    Advice, not a limit. Source: BS 7671, note to 411.5.3.

    Examples
    --------
    >>> rod_advice(Book())
    200.0
    """
    return Ohms(book.number("earthing/rod_advice", "limit_ohm", use=use))


def shape_constant(book: Book, shape: str) -> Share:
    """Return the constant of a "strip" or a "round" conductor laid flat in the ground.

    Source: BS 7430, from memory.

    Examples
    --------
    >>> shape_constant(Book(), "strip")
    1.36
    """
    return Share(book.number("earthing/electrode_shapes", "constant", shape=shape))


def rods_in_line_factor(book: Book, rods: int) -> Share:
    """Return λ for equal rods in a line, from two to ten.

    Source: BS 7430.

    Examples
    --------
    >>> rods_in_line_factor(Book(), 2)
    1.0
    """
    return Share(book.number("earthing/rods_in_line", "factor", rods=rods))


def soils(book: Book) -> tuple[str, ...]:
    """Return the soils whose resistivity is listed.

    Examples
    --------
    >>> "Clay" in soils(Book())
    True
    """
    return tuple(str(soil) for soil in book.table("earthing/soils").values_of("soil"))


def soil_range(book: Book, soil: str) -> tuple[OhmMetres, OhmMetres]:
    """Return the low and high end of a soil's resistivity; only a reading decides.

    Source: BS 7430 and IEEE 142, as reproduced, and memory.

    Examples
    --------
    >>> soil_range(Book(), "Clay")
    (8.0, 50.0)
    """
    return (
        OhmMetres(book.number("earthing/soils", "low_ohm_m", soil=soil)),
        OhmMetres(book.number("earthing/soils", "high_ohm_m", soil=soil)),
    )


def body_current(book: Book) -> Milliamperes:
    """Return the current through a person that metal must not pass to go unbonded.

    Source: IET Guidance Note 8.

    Examples
    --------
    >>> body_current(Book())
    10.0
    """
    return Milliamperes(book.number("earthing/extraneous_current", "current_ma", item="let-go"))


def body_resistance(book: Book) -> Ohms:
    """Return the resistance of a body taken in that sum.

    Source: IET Guidance Note 8.

    Examples
    --------
    >>> body_resistance(Book())
    1000.0
    """
    return Ohms(book.number("earthing/body_resistance", "resistance_ohm", item="hand to hand"))
