"""The house's own earthing, its bonding, and what may earth a point outdoors."""

from __future__ import annotations

from enum import StrEnum

from ampwright.foundations.checks import (
    Finding,
    at_least,
    at_most,
    holds,
    not_applicable,
    requires,
)
from ampwright.foundations.quantity import Amperes, Metres, Ohms, SquareMm, Volts
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

from ..places import wiring

BONDING = wiring("411.3.1.2, 544.1")
OUTDOORS = wiring("722.411.4.1", "a tutor's outline and a device maker's page")
ARMOUR = Place(
    "usual practice for charge points",
    "",
    "which end an armour is earthed at",
    Trust.COMMON_PRACTICE,
)
TT = wiring("411.5.3", "an engineers' forum")


class Detection(StrEnum):
    """How a device finds out that the protective neutral of the street has broken."""

    NONE = "none"
    VOLTS_WINDOW = "volts window"
    EARTH_POTENTIAL = "earth potential"
    EQUIVALENT = "equivalent device"


COUNTS_AS: dict[str, str] = {
    Detection.EARTH_POTENTIAL: "(iii) it watches the earth terminal against the ground",
    Detection.VOLTS_WINDOW: "(iv) it watches line to neutral",
    Detection.EQUIVALENT: "(v) its maker shows it no less safe",
}
"""The part of 722.411.4.1 that each kind of detection is fitted under."""


@requires("main bond present, connected and ≥ its least size", unit="mm²", place=BONDING)
def bond_present_and_sized(bond_mm2: SquareMm, connected: bool, required_mm2: SquareMm) -> Finding:
    """A service of metal is joined to the main earth terminal by a bond of the right size.

    Nought where there is no bond. For a pipe that is metal where it comes in, or that was
    measured to bring a potential in.

    Examples
    --------
    >>> bond_present_and_sized(SquareMm(0.0), False, SquareMm(10.0)).outcome.value
    'fail'
    """
    if bond_mm2 and not connected:
        return holds(False, "the bond hangs loose or is cut")
    return at_least(bond_mm2, required_mm2)


@computes(
    "S",
    "mm²",
    formula="min(max(S_earthing / 2, least), most)",
    place=wiring("544.1.1"),
)
def bond_of_earthing_conductor(S_earthing: SquareMm, least: SquareMm, most: SquareMm) -> SquareMm:
    """Least main bond where the supply's neutral is not also its earth.

    Half the earthing conductor, between a least and a greatest size. Not for a combined
    neutral and earth, whose bond goes by the neutral of the supply.

    Examples
    --------
    >>> bond_of_earthing_conductor(SquareMm(16.0), SquareMm(6.0), SquareMm(25.0))
    8.0
    """
    return SquareMm(min(max(S_earthing / 2, least), most))


@computes(
    "R_min",
    "Ω",
    formula="U0 / Ib - Zt",
    place=Place(
        "guidance on earthing and bonding",
        at="metal that brings in no potential",
        trust=Trust.MEMORY,
    ),
)
def extraneous_limit(U0: Volts, Ib: Amperes, Zt: Ohms) -> Ohms:
    """Least resistance to the main earth terminal of metal that needs no bond.

    ``Ib`` is the current through a body that is let pass and ``Zt`` the resistance of the body.

    Examples
    --------
    >>> extraneous_limit(Volts(230.0), Amperes(0.01), Ohms(1000.0))
    22000.0
    """
    return Ohms(U0 / Ib - Zt)


@requires("resistance to the main earth terminal ≥ the least", unit="Ω", place=BONDING)
def pipe_may_stay_unbonded(R: Ohms, R_min: Ohms) -> Finding:
    """Metal that was measured not to bring in a potential may stay without a bond.

    Measured with the bond off and the metal as it lies in use.

    Examples
    --------
    >>> pipe_may_stay_unbonded(Ohms(40000.0), Ohms(22000.0)).outcome.value
    'pass'
    """
    return at_least(R, R_min)


@requires(
    "earthing conductor ≥ its least size",
    unit="mm²",
    place=wiring("542.3, 543.1", "an electricians' forum"),
)
def earthing_conductor_sized(mm2: SquareMm, required: SquareMm) -> Finding:
    """The conductor from the main earth terminal to the means of earthing is large enough.

    Copper; one that is buried has a least size of its own.

    Examples
    --------
    >>> earthing_conductor_sized(SquareMm(16.0), SquareMm(16.0)).outcome.value
    'pass'
    """
    return at_least(mm2, required)


@requires("outdoors on PME: a device against a broken neutral", place=OUTDOORS)
def pme_point_protected(detection_kind: str, phases: int, outdoors: bool) -> Finding:
    """A point used outdoors is not earthed to a combined neutral that may break, undetected.

    Devices under (iii), (iv) and (v). What counts under (iii): more than 70 V on the earth
    terminal; under (iv): line to neutral outside 207 to 253 V; both open every live conductor
    and the earth within 5 s and stay open. Parts (i) and (ii) are a touch voltage, judged by
    its own clause.

    Examples
    --------
    >>> pme_point_protected("none", 1, True).outcome.value
    'fail'
    """
    if not outdoors:
        return not_applicable("the point is not used outdoors")
    if detection_kind not in COUNTS_AS:
        return holds(False, "no device against a broken neutral")
    why = COUNTS_AS[detection_kind]
    if detection_kind == Detection.VOLTS_WINDOW and phases > 1:
        why = f"{why}; the wording of 2020 allowed this on single-phase supplies only"
    return holds(True, why)


@requires(
    "on three phases the detection watches all of them",
    place=Place(
        "usual firm rule",
        at="detection of a broken neutral on three phases",
        trust=Trust.COMMON_PRACTICE,
    ),
)
def window_sees_all_phases(detection_kind: str, detects_three_phase: bool, phases: int) -> Finding:
    """A device that watches line to neutral on one phase is refused on a three-phase supply.

    A firm rule, tighter than the clause: uneven loads can leave that one voltage healthy while
    the earth terminal stands far above the ground.

    Examples
    --------
    >>> window_sees_all_phases("volts window", False, 3).outcome.value
    'fail'
    """
    if phases == 1 or detection_kind != Detection.VOLTS_WINDOW:
        return not_applicable("only where line-to-neutral voltage is watched on three phases")
    return holds(
        detects_three_phase,
        "it watches every phase" if detects_three_phase else "it watches one phase of three",
    )


@computes("Ut", "V", formula="RA * Idn_a", place=TT)
def rod_times_rcd(RA: Ohms, Idn_a: Amperes) -> Volts:
    """Touch voltage at which the residual current device of a rod-earthed home opens.

    ``RA`` takes in the protective conductor as well as the electrode.

    Examples
    --------
    >>> rod_times_rcd(Ohms(182.0), Amperes(0.1))
    18.2
    """
    return Volts(RA * Idn_a)


@requires(
    "touch voltage ≤ the limit",
    unit="V",
    place=wiring("411.5.3, 722.411.4.1", "an engineers' forum and a tutor's outline"),
)
def touch_voltage_limited(V: Volts, limit: Volts) -> Finding:
    """What a person can touch does not stand above the limit for long.

    50 V for a rod and its residual current device; 70 V on the main earth terminal of a point
    outdoors while a combined neutral is broken, parts (i) and (ii).

    Examples
    --------
    >>> touch_voltage_limited(Volts(18.2), Volts(50.0)).outcome.value
    'pass'
    """
    return at_most(V, limit)


@requires(
    "electrode ≤ what stays steady", unit="Ω", place=wiring("411.5.3, note", "an engineers' forum")
)
def rod_stable(RA: Ohms, limit: Ohms) -> Finding:
    """The electrode is low enough to stay so through a dry summer.

    Advice, not a limit of the law; a reading in wet ground is the best of the year.

    Examples
    --------
    >>> rod_stable(Ohms(182.0), Ohms(200.0)).outcome.value
    'pass'
    """
    return at_most(RA, limit)


@requires(
    "metal of another earth ≥ the reach away",
    unit="m",
    place=Place("industry guidance on charge points", at="touching two earths at once"),
)
def reach_separated(metal_m: Metres, limit_m: Metres) -> Finding:
    """Nobody can touch the charging car and metal of another earthing system together.

    From the car in any place it may be parked and charged, not from the point only.

    Examples
    --------
    >>> reach_separated(Metres(2.4), Metres(2.5)).outcome.value
    'fail'
    """
    return at_least(metal_m, limit_m)


@requires(
    "buried metal of another earth ≥ the separation away",
    unit="m",
    place=Place("an engineers' forum", at="separation of a rod from metal on the network's earth"),
)
def buried_separated(metal_m: Metres, limit_m: Metres) -> Finding:
    """A rod is far enough from buried metal on another earth to stay an earth of its own.

    The figure is the network operator's or the guidance's by depth of rod; none is in the rules.

    Examples
    --------
    >>> buried_separated(Metres(4.0), Metres(3.6)).outcome.value
    'pass'
    """
    return at_least(metal_m, limit_m)


@requires("armour earthed at the house end only", place=ARMOUR)
def armour_earthed_once(house_end: bool, far_end: bool) -> Finding:
    """Where the point has an earth of its own, the armour is earthed at the house end alone.

    Never floating, and never joined past a device that switches the earth.

    Examples
    --------
    >>> armour_earthed_once(True, False).outcome.value
    'pass'
    """
    if not house_end:
        return holds(False, "the armour floats")
    return holds(not far_end, "the armour joins two earths" if far_end else "")
