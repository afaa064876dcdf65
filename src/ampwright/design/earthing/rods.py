"""Electrodes: what one reads like in a dry summer, and how many more would steady it."""

from __future__ import annotations

from math import log
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.quantity import Count, Hours, Metres, Minutes, Ohms, Share
from ampwright.foundations.remedies import Part, Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes
from ampwright.standards.wiring.electrode import BS_7430, rods_together
from ampwright.survey.home import Home
from ampwright.tables.book import Book
from ampwright.tables.earthing import rods_in_line_factor

from ..noted import noted

METHOD: Final = Place("Ampwright", at="method, electrodes", trust=Trust.DERIVED)
DRY: Final = Place("habit of the trade", at="a rod reads half as much again in a dry spell",
                   trust=Trust.MEMORY)  # fmt: skip
USUAL_ROD: Final = Place("rods as sold", at="1.2 m long, 16 mm thick", trust=Trust.COMMON_PRACTICE)

DRY_MONTHS: Final = frozenset({"June", "July", "August", "September"})
TRIED: Final = (Count(2), Count(3), Count(4))
"""Beyond these another earth, or another place for it, is the better question."""


@computes("RA dry", "Ω", formula="RA * dry", place=METHOD)
def in_a_dry_spell(RA: Ohms, dry: Share) -> Ohms:  # noqa: N803 - as printed
    """Return what an electrode that was read in wet ground may read in a dry summer.

    Examples
    --------
    >>> in_a_dry_spell(Ohms(182.0), Share(1.5))
    273.0
    """
    return Ohms(RA * dry)


@computes("a", "", formula="1 / (ln(8 * L / d) - 1)", place=BS_7430)
def at_own_length(L: Metres, d: Metres) -> Share:  # noqa: N803 - as printed
    """Return how much rods get in one another's way when they stand their own length apart.

    The spacing term of the standard with the soil taken out of it: it cancels.

    Examples
    --------
    >>> at_own_length(Metres(1.2), Metres(0.016))
    0.185
    """
    return Share(1 / (log(8 * L / d) - 1))


@computes("T", "min", formula="60 * (t + t_more * (n - 2))", place=METHOD)
def minutes_of_rods(t: Hours, t_more: Hours, n: Count) -> Minutes:
    """Return the minutes of driving rods beside one that is there, until there are ``n``.

    Examples
    --------
    >>> minutes_of_rods(Hours(1.0), Hours(0.5), Count(3))
    90.0
    """
    return Minutes(60 * (t + t_more * (n - 2)))


@computes("n", "", formula="n - 1", place=METHOD)
def rods_to_drive(n: Count) -> Count:
    """Return how many rods must be driven where one is there.

    Examples
    --------
    >>> rods_to_drive(Count(2))
    1
    """
    return Count(n - 1)


def dry_ohm(home: Home, book: Book, read_ohm: Ohms) -> Ohms:
    """Return what the house's electrode may read in a dry summer."""
    if home.earthing.electrode_read_in in DRY_MONTHS:
        return read_ohm
    return in_a_dry_spell(read_ohm, noted(book, "dry", Share(1.5), "", DRY))


def together_ohm(book: Book, one_ohm: Ohms, rods: Count) -> Ohms:
    """Return what equal rods come to, a rod's length apart, joined."""
    long_m = noted(book, "L", Metres(1.2), "m", USUAL_ROD)
    thick_m = noted(book, "d", Metres(0.016), "m", USUAL_ROD)
    return rods_together(
        one_ohm, rods_in_line_factor(book, rods), at_own_length(long_m, thick_m), rods
    )


def more_rods(home: Home, basis: Basis, read_ohm: Ohms) -> tuple[Remedy, ...]:
    """Return the fewest rods that would steady an electrode; none where there is no room.

    Equal rods in even ground: the soil decides on the day, and the reading stands.
    """
    if not home.earthing.second_electrode_room:
        return ()
    for rods in TRIED:
        joined_ohm = together_ohm(basis.book, read_ohm, rods)
        if dry_ohm(home, basis.book, joined_ohm) <= basis.rules.stable_rod_ohm:
            return (_driven(basis, rods, joined_ohm),)
    return ()


def _driven(basis: Basis, rods: Count, joined_ohm: Ohms) -> Remedy:
    """Return the work of driving rods beside the one that is there."""
    first, more = basis.task("rod-first"), basis.task("rod-more")
    new = rods_to_drive(rods)
    return Remedy(
        slug="second-rod" if rods == 2 else f"rods-{rods}",
        does=f"Drive {new} more earth rod{'s' if new > 1 else ''}, joined to the one there, "
        "and read them together",
        changes=(("earthing.electrode_ohm", float(joined_ohm)),),
        parts=(
            Part("earth rod with clamp and pit", float(new)),
            Part("earth wire 10 mm², green-and-yellow, guarded", 1.0),
        ),
        minutes=(
            minutes_of_rods(first.low_h, more.low_h, rods),
            minutes_of_rods(first.usual_h, more.usual_h, rods),
            minutes_of_rods(first.high_h, more.high_h, rods),
        ),
    )
