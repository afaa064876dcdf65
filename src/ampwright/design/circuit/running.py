"""How the cable is held, bent, hidden and buried: what we run as designed, what lies there as seen.

What we run ourselves is designed right and judged by that design, unless somebody has said that
the way leaves no room for it. What lies there already is judged by what was seen of it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.quantity import Metres, Milliamperes, Millimetres, Share
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made, made_of
from ampwright.foundations.working import computes
from ampwright.standards.wiring.running import (
    BENDS,
    DEPTH,
    FIRE,
    SITE_GUIDE,
    bend_not_too_tight,
    buried_cable_guarded,
    buried_deep_enough,
    clips_close_enough,
    hidden_cable_safe,
    least_bend,
    supports_hold_in_fire,
)
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.book import Book
from ampwright.tables.capacity import CableFamily
from ampwright.tables.devices import point_rcd_limit_ma
from ampwright.tables.factors import depth_factor
from ampwright.tables.practice import bend_radius_multiple, clip_spacing, distance_mm

from ..noted import noted
from ..route import CLIPPED, IN_GROUND, IN_WALL, LegRun, Route

METHOD: Final = Place("Ampwright", at="method, how the cable is run", trust=Trust.DERIVED)
TOO_DEEP: Final = Place(
    "cable makers' practice", at="depth of laying", trust=Trust.MEMORY, doubtful=True
)
DUCT: Final = "duct"
HELD: Final = frozenset({*CLIPPED, "trunking", "conduit", "tray", "loft void"})
"""Ways of running along which fixings hold the cable up."""
AT_THE_FACE: Final = Millimetres(0.0)
TAPE_UNSEEN: Final = (
    "nobody has seen whether a tape lies over the duct: open the ground at one place, or lay one "
    "where it is opened"
)


@tells(SITE_GUIDE)
def clipped_every(gap: Millimetres) -> str:
    """Say how often the cable is clipped; level runs and upright ones alike.

    Examples
    --------
    >>> clipped_every(Millimetres(300.0)).says
    'clip it at least every 300 mm'
    """
    return f"clip it at least every {gap:g} mm"


@tells(SITE_GUIDE, caution=True)
def clips_looked_at(gap: Millimetres) -> str:
    """Ask how often a cable is clipped that lies there already.

    Examples
    --------
    >>> clips_looked_at(Millimetres(300.0)).caution[:53]
    'look along the cable that lies there before it is use'
    """
    return (
        "look along the cable that lies there before it is used: its clips stand no more than "
        f"{gap:g} mm apart"
    )


@tells(BENDS)
def bent_no_tighter(least: Millimetres) -> str:
    """Say how tight the cable may be bent, where nobody has noted a corner.

    Examples
    --------
    >>> bent_no_tighter(Millimetres(54.0)).says
    'bend it no tighter than a radius of 54 mm'
    """
    return f"bend it no tighter than a radius of {least:g} mm"


@tells(FIRE)
def fixed_by_metal() -> str:
    """Say what holds our own cable up where people may pass under it."""
    return "hold it up by something that fire does not soften, not by plastic alone"


@tells(FIRE, caution=True)
def fixings_looked_at() -> str:
    """Ask what holds a cable up that lies there already."""
    return (
        "look along the cable that lies there before it is used: nobody has noted whether "
        "something that fire does not soften holds it up"
    )


@tells(DEPTH)
def buried_at(depth: Millimetres) -> str:
    """Say how deep our own cable is buried, where nobody has noted what the ground allows.

    Examples
    --------
    >>> buried_at(Millimetres(600.0)).says
    'bury it 600 mm deep, a tape over it'
    """
    return f"bury it {depth:g} mm deep, a tape over it"


@tells(TOO_DEEP, caution=True)
def carries_less_so_deep(leg: str, depth: Millimetres, share: Share) -> str:
    """Ask to look up what a cable carries that lies deeper than the capacity tables count on.

    ``share`` is what the trade allows there; the design counts on the tables' own depth.

    Examples
    --------
    >>> carries_less_so_deep("drive", Millimetres(1000.0), Share(0.95)).caution[:71]
    'leg drive lies 1000 mm deep, where a cable carries less: by the trade 0'
    """
    return (
        f"leg {leg} lies {depth:g} mm deep, where a cable carries less: by the trade {share:g} of "
        "what it was taken to carry; look it up for the depth before relying on it"
    )


@computes("h", "m", formula="d / 1000", place=METHOD)
def metres_deep(d: Millimetres) -> Metres:
    """Return a depth in metres.

    Examples
    --------
    >>> metres_deep(Millimetres(450.0))
    0.45
    """
    return Metres(d / 1000)


@dataclass(frozen=True, slots=True)
class Running:
    """What whoever runs the cable keeps to: the gap between clips and the least bend.

    ``clip_gap_mm`` is ``None`` where no leg is clipped; level runs and upright ones alike.
    """

    clip_gap_mm: Millimetres | None
    least_bend_mm: Millimetres


@dataclass(frozen=True, slots=True)
class Run:
    """A cable on its way, as every check here looks at it."""

    home: Home
    book: Book
    way: Route
    armoured: bool
    overall_mm: Millimetres
    rcd_30ma: bool

    @property
    def kind(self) -> str:
        """What the tables of clips and bends call the cable."""
        return "armoured" if self.armoured else "not armoured"


@computes("R", "mm", formula="min(corners)", place=METHOD)
def tightest(corners: tuple[Millimetres, ...]) -> Millimetres:
    """Return the radius of the tightest of some corners.

    Examples
    --------
    >>> tightest((Millimetres(200.0), Millimetres(54.0)))
    54.0
    """
    return Millimetres(min(corners))


def running(
    home: Home,
    basis: Basis,
    way: Route,
    family: CableFamily,
    overall_mm: Millimetres,
    rcd_ma: Milliamperes,
    rcd_in_point: bool,
) -> Made[Running]:
    """Return what to keep to along the way, and whether the way and what lies there allow it.

    ``rcd_in_point`` says that residual current is seen by the point alone, which guards nobody
    who drives a nail into its cable. Clips by the level run, which asks the closest.
    """
    book = basis.book
    guarded = not rcd_in_point and rcd_ma <= point_rcd_limit_ma(book)
    run = Run(home, book, way, family is CableFamily.ARMOURED, overall_mm, guarded)
    least_mm = least_bend(overall_mm, bend_radius_multiple(book, run.kind, overall_mm))
    clipped = any(leg.how in CLIPPED for leg in way.legs)
    gap_mm = clip_spacing(book, run.kind, overall_mm)[0] if clipped else None
    found = (
        *(() if gap_mm is None else (_clips(run, gap_mm),)),
        _bend(run, least_mm),
        *_fire(run),
        *_hidden(run),
        *_buried(run),
    )
    return made_of(Running(gap_mm, least_mm), found)


def _clips(run: Run, limit_mm: Millimetres) -> Check | Note:
    """Return whether the cable is held often enough."""
    laid = run.way.laid
    if laid is None:
        return clipped_every(limit_mm)
    seen_mm = if_said(lambda: run.home.laid[laid.cable].clip_gap_mm, None)
    return clips_looked_at(limit_mm) if seen_mm is None else clips_close_enough(seen_mm, limit_mm)


def _bend(run: Run, least_mm: Millimetres) -> Check | Note:
    """Return whether the tightest corner leaves room for the least bend."""
    laid = run.way.laid
    if laid is not None:
        corners = [if_said(lambda: run.home.laid[laid.cable].corner_mm, None)]
    else:
        corners = [
            if_said(lambda id_=leg.id: run.home.legs[id_].corner_mm, None)  # type: ignore[misc]
            for leg in run.way.legs
        ]
    said = tuple(each for each in corners if each is not None)
    return bend_not_too_tight(tightest(said), least_mm) if said else bent_no_tighter(least_mm)


def _fire(run: Run) -> Iterator[Check | Note]:
    """Yield whether something that fire does not soften holds the cable up."""
    if not any(leg.how in HELD for leg in run.way.legs):
        return
    laid = run.way.laid
    if laid is None:
        yield fixed_by_metal()
        return
    metal = if_said(lambda: run.home.laid[laid.cable].metal_fixings, None)
    yield fixings_looked_at() if metal is None else supports_hold_in_fire(metal)


def _hidden(run: Run) -> Iterator[Check]:
    """Yield whether each leg inside a wall is where nobody drives a nail."""
    limit_mm = distance_mm(run.book, "depth under which a zone is needed")
    for leg in run.way.legs:
        if leg.how in IN_WALL:
            deep_mm = noted(run.book, "depth", AT_THE_FACE, "mm", METHOD)
            yield hidden_cable_safe(
                if_said(lambda leg=leg: _depth(run, leg), deep_mm),  # type: ignore[misc]
                limit_mm,
                _in_zone(run, leg),
                run.rcd_30ma,
                run.armoured,
            )


def _in_zone(run: Run, leg: LegRun) -> bool:
    """Return whether a leg runs where cable is looked for: ours will, unless somebody says no."""
    if run.way.laid is not None:
        return run.home.laid[leg.id].in_zone
    return if_said(lambda: run.home.legs[leg.id].in_zone, True)


def _buried(run: Run) -> Iterator[Check | Note]:
    """Yield whether each leg in the ground lies below a spade and is guarded against one."""
    ours_mm, least_mm = distance_mm(run.book, "burial usual"), distance_mm(run.book, "burial least")
    for leg in run.way.legs:
        if leg.how not in IN_GROUND:
            continue
        if run.way.laid is None and leg.how != DUCT:
            deep_mm = if_said(lambda leg=leg: _depth(run, leg), None)  # type: ignore[misc]
            if deep_mm is None:
                yield buried_at(ours_mm)
            else:
                yield buried_deep_enough(deep_mm, ours_mm)
                yield from _so_deep(run, leg, deep_mm, ours_mm)
            yield buried_cable_guarded(run.armoured, True)
            continue
        deep_mm = _depth(run, leg)
        yield buried_deep_enough(deep_mm, least_mm)
        yield from _so_deep(run, leg, deep_mm, ours_mm)
        yield _guarded(run, leg)


def _so_deep(run: Run, leg: LegRun, deep_mm: Millimetres, ours_mm: Millimetres) -> Iterator[Note]:
    """Yield what a cable carries that lies deeper than the tables count on."""
    if deep_mm > ours_mm:
        share = depth_factor(run.book, metres_deep(deep_mm))
        yield carries_less_so_deep(leg.id, deep_mm, share)


def _guarded(run: Run, leg: LegRun) -> Check:
    """Return whether what lies in the ground already is guarded and marked."""
    guarded = run.armoured or leg.how == DUCT
    marked = if_said(lambda: _marked(run, leg), None)
    if marked is None:
        return buried_cable_guarded(guarded, True).with_caution(TAPE_UNSEEN)
    return buried_cable_guarded(guarded, marked)


def _depth(run: Run, leg: LegRun) -> Millimetres:
    """Return how deep a leg lies; raises ``Unanswered``."""
    thing = run.home.legs[leg.id] if run.way.laid is None else run.home.laid[leg.id]
    return thing.depth_mm


def _marked(run: Run, leg: LegRun) -> bool:
    """Return whether a tape or covers lie over a leg; raises ``Unanswered``."""
    thing = run.home.legs[leg.id] if run.way.laid is None else run.home.laid[leg.id]
    return thing.marked
