"""Electrodes: what one reads like in a dry summer, and how many more would steady it."""

from __future__ import annotations

from math import log
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.quantity import Count, Hours, Metres, Minutes, Ohms, Share
from ampwright.foundations.remedies import Part, Remedy
from ampwright.foundations.source import Place, SetBy, Trust
from ampwright.foundations.working import computes
from ampwright.standards.wiring.electrode import BS_7430, driest_of_year, rods_together
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.book import Book
from ampwright.tables.earthing import rods_in_line_factor

from ..noted import noted

METHOD: Final = Place("Ampwright", at="method, electrodes", trust=Trust.DERIVED)
DRY: Final = Place("habit of the trade", at="a rod reads half as much again in a dry spell",
                   trust=Trust.MEMORY)  # fmt: skip
USUAL_ROD: Final = Place("rods as sold", at="1.2 m long, 16 mm thick", trust=Trust.COMMON_PRACTICE)
SPACING: Final = Place("Ampwright", at="method, rods apart by their own length",
                       trust=Trust.DERIVED)  # fmt: skip
PLANNED: Final = SetBy("this option", "rods in all")
DRY_TIMES: Final = Share(1.5)
USUAL_M: Final = Metres(1.2)
TWICE_M: Final = Metres(2.4)
OWN_LENGTH: Final = Share(1.0)
TWO_LENGTHS: Final = Share(2.0)

DRY_MONTHS: Final = frozenset({"June", "July", "August", "September"})
"""A rod read in one of these is at its worst, or nearly: *memory*."""
AS_LONG_AS: Final = Count(3)
"""Driving on is harder than driving anew: as long as two rods beside the first; *memory*."""
TRIED: Final = (Count(2), Count(3), Count(4))
"""Beyond these another earth, or another place for it, is the better question."""


@computes("a", "", formula="1 / (lengths * (ln(8 * L / d) - 1))", place=BS_7430)
def at_spacing(lengths: Share, L: Metres, d: Metres) -> Share:  # noqa: N803 - as printed
    """Return how much rods get in one another's way, so many of their own lengths apart.

    The spacing term of the standard with the soil taken out of it: it cancels.

    Examples
    --------
    >>> at_spacing(Share(1.0), Metres(1.2), Metres(0.016))
    0.185
    """
    return Share(1 / (lengths * (log(8 * L / d) - 1)))


@computes(
    "RA", "Ω", formula="R * L * (ln(8 * deep / d) - 1) / (deep * (ln(8 * L / d) - 1))",
    place=BS_7430,
)  # fmt: skip
def driven_on(R: Ohms, L: Metres, deep: Metres, d: Metres) -> Ohms:  # noqa: N803 - as printed
    """Return what a rod comes to when it is driven on to a greater depth.

    The standard's rod at both lengths, the soil taken out of it: it cancels. Ground that is the
    same further down, which only driving tells.

    Examples
    --------
    >>> driven_on(Ohms(71.6), Metres(1.2), Metres(2.4), Metres(0.016))
    40.4
    """
    return Ohms(R * L * (log(8 * deep / d) - 1) / (deep * (log(8 * L / d) - 1)))


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
def beyond_the_first(n: Count) -> Count:
    """Return how many rods must be driven where one is there.

    Examples
    --------
    >>> beyond_the_first(Count(2))
    1
    """
    return Count(n - 1)


def dry_ohm(home: Home, book: Book, read_ohm: Ohms) -> Ohms:
    """Return what the house's electrode may read in a dry summer."""
    if home.earthing.electrode_read_in in DRY_MONTHS:
        return read_ohm
    return driest_of_year(read_ohm, noted(book, "times", DRY_TIMES, "", DRY))


def together_ohm(book: Book, one_ohm: Ohms, rods: Count, lengths: Share) -> Ohms:
    """Return what equal rods come to, joined, so many of their own lengths apart."""
    apart = noted(book, "lengths", lengths, "", SPACING)
    long_m = noted(book, "L", USUAL_M, "m", USUAL_ROD)
    thick_m = noted(book, "d", Metres(0.016), "m", USUAL_ROD)
    count = noted(book, "n", rods, "", PLANNED)
    return rods_together(
        one_ohm, rods_in_line_factor(book, rods), at_spacing(apart, long_m, thick_m), count
    )


def deeper_ohm(book: Book, one_ohm: Ohms, deep_m: Metres) -> Ohms:
    """Return what a rod of the usual length comes to, driven on to a depth."""
    long_m = noted(book, "L", USUAL_M, "m", USUAL_ROD)
    thick_m = noted(book, "d", Metres(0.016), "m", USUAL_ROD)
    return driven_on(one_ohm, long_m, deep_m, thick_m)


def house_electrode_ohm(home: Home, book: Book) -> Ohms:
    """Return what the house's electrode reads, with the rods or the depth that are planned."""
    read_ohm = home.earthing.electrode_ohm
    rods, deep_m = rods_planned(home), depth_planned(home)
    if rods > 1:
        return together_ohm(book, read_ohm, rods, OWN_LENGTH)
    return read_ohm if deep_m is None else deeper_ohm(book, read_ohm, deep_m)


def rods_planned(home: Home) -> Count:
    """Return how many rods there will be in all; one where no more are planned."""
    return if_said(lambda: home.earthing.rods_planned, Count(1))


def depth_planned(home: Home) -> Metres | None:
    """Return how deep the rod will go; ``None`` where it stays as it is."""
    return if_said(lambda: home.earthing.rod_planned_m, None)


def steadier(home: Home, basis: Basis, read_ohm: Ohms) -> tuple[Remedy, ...]:
    """Return what would steady an electrode: the fewest rods beside it, or the rod driven on.

    None where neither would. Even ground: the soil decides on the day, and the reading stands.
    """
    if rods_planned(home) > 1 or depth_planned(home) is not None:
        return ()
    book, limit_ohm = basis.book, basis.rules.stable_rod_ohm
    found = []
    for rods in TRIED:
        if dry_ohm(home, book, together_ohm(book, read_ohm, rods, OWN_LENGTH)) <= limit_ohm:
            found.append(_driven(basis, read_ohm, rods))
            break
    if dry_ohm(home, book, deeper_ohm(book, read_ohm, TWICE_M)) <= limit_ohm:
        found.append(_deeper(basis, read_ohm))
    return tuple(found)


def _deeper(basis: Basis, read_ohm: Ohms) -> Remedy:
    """Return the work of driving on the rod that is there."""
    reads_ohm = deeper_ohm(basis.book, read_ohm, TWICE_M)
    first, more = basis.task("rod-first"), basis.task("rod-more")
    return Remedy(
        slug="deeper-rod",
        does=f"Drive the earth rod on to {TWICE_M:g} m with an extension (about {reads_ohm:.0f} "
        "Ω if the ground is the same further down), and read it",
        changes=(("earthing.rod_planned_m", float(TWICE_M)),),
        parts=(Part("extension of an earth rod, with coupling", 1.0),),
        minutes=(
            minutes_of_rods(first.low_h, more.low_h, AS_LONG_AS),
            minutes_of_rods(first.usual_h, more.usual_h, AS_LONG_AS),
            minutes_of_rods(first.high_h, more.high_h, AS_LONG_AS),
        ),
    )


def _driven(basis: Basis, read_ohm: Ohms, rods: Count) -> Remedy:
    """Return the work of driving rods beside the one that is there."""
    first, more = basis.task("rod-first"), basis.task("rod-more")
    new = beyond_the_first(rods)
    close_ohm = together_ohm(basis.book, read_ohm, rods, OWN_LENGTH)
    wide_ohm = together_ohm(basis.book, read_ohm, rods, TWO_LENGTHS)
    return Remedy(
        slug="second-rod" if rods == 2 else f"rods-{rods}",
        does=f"Drive {new} more earth rod{'s' if new > 1 else ''}, joined to the one there, "
        f"their own length apart at least (about {close_ohm:.0f} Ω; {wide_ohm:.0f} Ω at twice "
        "that), and read them together",
        changes=(("earthing.rods_planned", int(rods)),),
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
