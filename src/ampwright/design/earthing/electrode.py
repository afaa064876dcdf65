"""An electrode that is yet to be laid, reckoned from the soil: rod, rods in line, tape or plate."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.times import task_minutes
from ampwright.foundations.checks import Check, Outcome
from ampwright.foundations.quantity import (
    Count,
    Metres,
    OhmMetres,
    Ohms,
    SquareMetres,
)
from ampwright.foundations.remedies import Part, Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes
from ampwright.standards.wiring.earthing import rod_stable
from ampwright.standards.wiring.electrode import (
    driest_of_year,
    plate_resistance,
    rod_resistance,
    rod_spacing,
    rods_together,
    tape_resistance,
)
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.book import Book
from ampwright.tables.earthing import rods_in_line_factor, shape_constant, soil_range

from ..noted import noted
from .rods import (
    DRY,
    DRY_TIMES,
    PLANNED,
    TRIED,
    TWICE_M,
    USUAL_M,
    USUAL_ROD,
    beyond_the_first,
    rods_planned,
)

METHOD: Final = Place("Ampwright", at="method, electrodes from the soil", trust=Trust.DERIVED)
AS_LAID: Final = Place(
    "tape and plates as sold and laid", at="25 mm wide, 0.6 m deep", trust=Trust.COMMON_PRACTICE
)
TAPES_M: Final = (Metres(10.0), Metres(20.0))
PLATE_M: Final = Metres(0.9)
"""Lengths of tape and the side of a plate, as they are sold: *common practice*."""
RECKONED: Final = (
    "the electrode is reckoned from the soil in its driest season: what it reads when it is laid "
    "decides"
)
GOOD_SOIL: Final = (
    "only where the soil is at its best does the electrode come to this: measure the soil before "
    "the day, or bring more rods, tape and time"
)


@dataclass(frozen=True, slots=True)
class Electrode:
    """What is laid: so many rods of a length, or one tape or plate joined to the rod."""

    rods: Count
    rod_m: Metres
    tape_m: Metres | None = None
    plate_m: Metres | None = None


@computes("A", "m²", formula="a**2", place=METHOD)
def face(a: Metres) -> SquareMetres:
    """Return the area of one face of a square plate.

    Examples
    --------
    >>> face(Metres(0.9))
    0.81
    """
    return SquareMetres(a**2)


def soil_of(home: Home, book: Book) -> tuple[OhmMetres, OhmMetres] | None:
    """Return the resistivity of the soil at its best and worst; one figure where it was measured.

    ``None`` while nobody has said what the soil is.
    """
    measured = if_said(lambda: home.earthing.soil_ohm_m, None)
    if measured is not None:
        return measured, measured
    soil = if_said(lambda: home.earthing.soil, None)
    return None if soil is None else soil_range(book, soil)


def planned(home: Home) -> Electrode:
    """Return the electrode that will be laid: one rod of the usual length, unless more is."""
    return Electrode(
        rods=rods_planned(home),
        rod_m=if_said(lambda: home.earthing.rod_planned_m, USUAL_M),
        tape_m=if_said(lambda: home.earthing.tape_planned_m, None),
        plate_m=if_said(lambda: home.earthing.plate_planned_m, None),
    )


def wants_room(home: Home) -> bool:
    """Say whether what will be laid takes open ground beyond the first rod."""
    what = planned(home)
    return what.rods > 1 or what.tape_m is not None


def reckoned_ohm(book: Book, what: Electrode, soil: OhmMetres) -> Ohms:
    """Return what an electrode comes to in even soil; of a tape or a plate, without the rod."""
    if what.tape_m is not None:
        depth_m = noted(book, "h", Metres(0.6), "m", AS_LAID)
        wide_m = noted(book, "d", Metres(0.025), "m", AS_LAID)
        length_m = noted(book, "L", what.tape_m, "m", PLANNED)
        return tape_resistance(soil, length_m, shape_constant(book, "strip"), depth_m, wide_m)
    if what.plate_m is not None:
        return plate_resistance(soil, face(noted(book, "a", what.plate_m, "m", PLANNED)))
    long_m = noted(book, "L", what.rod_m, "m", PLANNED)
    one_ohm = rod_resistance(soil, long_m, noted(book, "d", Metres(0.016), "m", USUAL_ROD))
    if what.rods == 1:
        return one_ohm
    apart = rod_spacing(soil, one_ohm, long_m)
    rods = noted(book, "n", what.rods, "", PLANNED)
    return rods_together(one_ohm, rods_in_line_factor(book, what.rods), apart, rods)


def dry_of(book: Book, what: Electrode, soil: OhmMetres) -> Ohms:
    """Return what an electrode may rise to in the driest of the year."""
    return driest_of_year(reckoned_ohm(book, what, soil), noted(book, "times", DRY_TIMES, "", DRY))


def steady_in_soil(home: Home, basis: Basis) -> Iterator[Check]:
    """Yield whether the electrode to be laid stays steady, with what else would, in this soil.

    At the soil's worst where something holds there; else at its best, with a word.
    """
    soil = soil_of(home, basis.book)
    if soil is None:
        return
    best, worst = soil
    what, limit_ohm = planned(home), basis.rules.stable_rod_ohm
    check = rod_stable(dry_of(basis.book, what, worst), limit_ohm).with_caution(RECKONED)
    if check.outcome is Outcome.FAIL:
        others = tuple(instead(basis, what, worst))
        if others:
            check = check.mended_by(*others)
        else:
            check = rod_stable(dry_of(basis.book, what, best), limit_ohm).with_caution(GOOD_SOIL)
            check = check.mended_by(*instead(basis, what, best))
    yield check


def instead(basis: Basis, what: Electrode, soil: OhmMetres) -> Iterator[Remedy]:
    """Yield what would stay steady instead of one rod: the least of rods, of tape, of a plate."""
    if what != Electrode(Count(1), USUAL_M):
        return
    deeper = replace(what, rod_m=TWICE_M)
    in_line = (replace(what, rods=rods) for rods in TRIED)
    tapes = (replace(what, tape_m=tape_m) for tape_m in TAPES_M)
    for kind in ((deeper, *in_line), tapes, (replace(what, plate_m=PLATE_M),)):
        limit_ohm = basis.rules.stable_rod_ohm
        holds = (each for each in kind if dry_of(basis.book, each, soil) <= limit_ohm)
        found = next(holds, None)
        if found is not None:
            yield work_of(basis, found)


def work_of(basis: Basis, what: Electrode) -> Remedy:
    """Return the work of laying an electrode, beyond the first rod of the usual length."""
    if what.tape_m is not None:
        return _tape(basis, what.tape_m)
    if what.plate_m is not None:
        return _plate(basis, what.plate_m)
    if what.rods == 1:
        return _deeper(basis, what.rod_m)
    return _in_line(basis, what.rods)


def _deeper(basis: Basis, rod_m: Metres) -> Remedy:
    """Return the work of a rod that goes deeper by an extension."""
    return Remedy(
        slug="point-rod-deeper",
        does=f"Drive the point's rod to {rod_m:g} m with an extension, and read it",
        changes=(("earthing.rod_planned_m", float(rod_m)),),
        parts=(Part("extension of an earth rod, with coupling", 1.0),),
        minutes=task_minutes(basis.task("rod-more"), Count(1)),
    )


def _in_line(basis: Basis, rods: Count) -> Remedy:
    """Return the work of more rods in a line with the first, their own length apart."""
    more = beyond_the_first(rods)
    return Remedy(
        slug=f"point-rods-{rods}",
        does=f"Drive {rods} rods for the point in a line, {USUAL_M:g} m apart at least, joined, "
        "and read them together",
        changes=(("earthing.rods_planned", int(rods)),),
        parts=(
            Part("earth rod with clamp and pit", float(more)),
            Part("earth wire 10 mm², green-and-yellow, guarded", 1.0),
        ),
        minutes=task_minutes(basis.task("rod-more"), more),
    )


def _tape(basis: Basis, tape_m: Metres) -> Remedy:
    """Return the work of a tape in a trench, joined to the rod."""
    return Remedy(
        slug=f"point-tape-{tape_m:g}",
        does=f"Lay {tape_m:g} m of copper tape 0.6 m deep, joined to the point's rod, and read "
        "them together",
        changes=(("earthing.tape_planned_m", float(tape_m)),),
        parts=(Part("earth tape 25 × 3 mm, copper", float(tape_m), "m"),),
        minutes=task_minutes(basis.task("dig-lawn"), tape_m),
    )


def _plate(basis: Basis, plate_m: Metres) -> Remedy:
    """Return the work of a plate buried upright, joined to the rod."""
    return Remedy(
        slug="point-plate",
        does=f"Bury a copper plate of {plate_m:g} by {plate_m:g} m upright, joined to the point's "
        "rod, and read them together",
        changes=(("earthing.plate_planned_m", float(plate_m)),),
        parts=(Part("earth plate 900 × 900 mm, copper, with its joint", 1.0),),
        minutes=task_minutes(basis.task("bury-plate"), 1),
    )
