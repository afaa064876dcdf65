"""How cable is fixed, bent, buried, kept from harm and kept apart from data."""

from __future__ import annotations

from ampwright.foundations.checks import Finding, at_least, at_most, holds, not_applicable, requires
from ampwright.foundations.quantity import Millimetres, Share, Volts
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

from ..places import wiring

SITE_GUIDE = Place("on-site guide to BS 7671", at="clips and bends", trust=Trust.MEMORY)
BENDS = wiring("522.8.3")
FIRE = wiring("521.10.202")
DEPTH = Place("usual practice", "", "cables in the ground", Trust.COMMON_PRACTICE)
APART = wiring("444.6, 528.2")
DATA = Place("BS EN 50174-2", "2009 on", "data cable beside power, as tabled in a Swedish handbook")


@requires("gap between clips ≤ the usual limit", unit="mm", place=SITE_GUIDE)
def clips_close_enough(gap: Millimetres, limit: Millimetres) -> Finding:
    """The cable is held often enough not to sag under its own weight.

    ``limit`` by the cable's diameter, and whether it runs level or upright.

    Examples
    --------
    >>> clips_close_enough(Millimetres(300.0), Millimetres(300.0)).outcome.value
    'pass'
    """
    return at_most(gap, limit)


@computes("R", "mm", formula="times * d", place=SITE_GUIDE)
def least_bend(d: Millimetres, times: Share) -> Millimetres:
    """Least inner radius of a bend.

    ``times`` by kind and diameter; the maker's sheet rules.

    Examples
    --------
    >>> least_bend(Millimetres(16.4), Share(6.0))
    98.4
    """
    return Millimetres(times * d)


@requires("radius of the bend ≥ the least", unit="mm", place=BENDS)
def bend_not_too_tight(R: Millimetres, least: Millimetres) -> Finding:
    """No bend is so tight that it harms the insulation or the armour.

    Inner radius of the tightest bend on the way.

    Examples
    --------
    >>> bend_not_too_tight(Millimetres(100.0), Millimetres(98.4)).outcome.value
    'pass'
    """
    return at_least(R, least)


@requires("nothing falls early in a fire", place=FIRE)
def supports_hold_in_fire(holds_in_fire: bool) -> Finding:
    """Fixings that fire softens do not alone hold a cable up where people may pass.

    Metal clips or ties at intervals; clips of plastic may stand between them.

    Examples
    --------
    >>> supports_hold_in_fire(False).outcome.value
    'fail'
    """
    return holds(holds_in_fire, "" if holds_in_fire else "held by plastic alone")


@requires(
    "hidden shallow cable: in a zone and guarded, or armoured", place=wiring("522.6.202, 203")
)
def hidden_cable_safe(
    depth: Millimetres, limit: Millimetres, in_zone: bool, rcd_30ma: bool, earthed_cover: bool
) -> Finding:
    """A cable hidden in a wall near its face is where a nail is not expected or does no harm.

    ``earthed_cover`` is armour, conduit or the like joined to earth.

    Examples
    --------
    >>> hidden_cable_safe(Millimetres(30.0), Millimetres(50.0), True, True, False).outcome.value
    'pass'
    """
    if depth >= limit:
        return not_applicable("deep enough in the wall")
    if earthed_cover:
        return holds(True, "an earthed covering guards it")
    if not in_zone:
        return holds(False, "outside the zones where cable is looked for")
    return holds(rcd_30ma, "" if rcd_30ma else "no residual current device of 30 mA")


@requires(
    "buried deep enough",
    unit="mm",
    place=DEPTH,
)
def buried_deep_enough(depth: Millimetres, usual: Millimetres) -> Finding:
    """A buried cable lies below where a spade goes.

    The rules give no figure; deeper under a drive that cars cross.

    Examples
    --------
    >>> buried_deep_enough(Millimetres(600.0), Millimetres(600.0)).outcome.value
    'pass'
    """
    return at_least(depth, usual)


@requires("buried cable armoured or ducted, and marked", place=wiring("522.8.10"))
def buried_cable_guarded(armoured_or_ducted: bool, marked: bool) -> Finding:
    """A buried cable stands a knock, and a tape above it warns whoever digs.

    ``armoured_or_ducted`` with an earthed armour or a duct that protects as well.

    Examples
    --------
    >>> buried_cable_guarded(True, False).why
    'no tape or covers above it'
    """
    if not armoured_or_ducted:
        return holds(False, "neither armoured nor in a duct")
    return holds(marked, "" if marked else "no tape or covers above it")


@computes("A", "mm", formula="S * P", place=DATA)
def data_gap(S: Millimetres, P: Share) -> Millimetres:
    """Least gap between data cable and power cable that run side by side.

    ``S`` by the class of the data cable and ``P`` by the number of power circuits of 20 A.

    Examples
    --------
    >>> data_gap(Millimetres(100.0), Share(0.2))
    20.0
    """
    return Millimetres(S * P)


@requires("gap between data and power ≥ the least", unit="mm", place=APART)
def data_apart(gap: Millimetres, least: Millimetres) -> Finding:
    """Data cable is far enough from power cable not to pick it up.

    For cables in parts of their own; cores of one combined cable are another clause.

    Examples
    --------
    >>> data_apart(Millimetres(20.0), Millimetres(20.0)).outcome.value
    'pass'
    """
    return at_least(gap, least)


@requires("data cores stand the highest voltage beside them", unit="V", place=wiring("528.1"))
def data_cores_insulated(core_v: Volts, beside_v: Volts) -> Finding:
    """Data cores in one sheath or enclosure with power are insulated for its voltage.

    Rated voltage of the data cores' insulation, from the maker's sheet.

    Examples
    --------
    >>> data_cores_insulated(Volts(300.0), Volts(230.0)).outcome.value
    'pass'
    """
    return at_least(core_v, beside_v)
