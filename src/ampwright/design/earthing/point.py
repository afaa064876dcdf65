"""What earths the point: the network's earth with a guard, its own rod, or the house's rod."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint, Detection
from ampwright.foundations.checks import Check, Finding, Outcome, holds, requires
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.quantity import Metres, Milliamperes, Ohms, Volts
from ampwright.foundations.rulings import Ruled
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made, made_of
from ampwright.standards.wiring.earthing import (
    OUTDOORS,
    buried_separated,
    reach_separated,
    rod_stable,
    rod_times_rcd,
    touch_voltage_limited,
)
from ampwright.standards.wiring.earthing_kind import Proof
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.charging import point_distance
from ampwright.tables.earthing import touch_limit_of_rod
from ampwright.tables.supply_limits import declared_ze_ohm

from ..residual import in_amperes
from .bonding import COMBINED, doubted_earthing
from .electrode import steady_in_soil, wants_room
from .guard import guards, proof_of
from .rods import dry_ohm, house_electrode_ohm, rods_planned, steadier

METHOD: Final = Place("Ampwright", at="method, what earths the point", trust=Trust.DERIVED)
DECLARED: Final = Place(
    "Engineering Recommendation P23", at="declared loop impedance", trust=Trust.MEMORY
)
REACH: Final = Place("industry guidance on charge points", at="touching two earths at once")
NETWORK_EARTH: Final = "pme"
OWN_ROD: Final = "rod"
HOUSE_ROD: Final = "house rod"
NOT_DRIVEN: Final = (
    "the electrode is not there yet: before the point is used it is read, and reads no more "
    "than this; metal buried on the network's earth is kept away from it"
)
OPERATORS_OWN: Final = "the operator's own figure for what is buried near a rod rules"
AS_COMBINED: Final = "the network has not confirmed TN-S; guarded as if neutral and earth were one"
DRY_UNKNOWN: Final = "read again in a dry month"


@dataclass(frozen=True, slots=True)
class PointEarth:
    """What earths the point.

    ``electrode_ohm`` and ``touch_v``, at which the residual current device opens, are ``None``
    on the network's earth, where none is leaned on. ``proof`` says by which part of the clause a
    point may use a combined earth; ``None`` where its earth is another.
    """

    earthing: str
    electrode_ohm: Ohms | None
    touch_v: Volts | None
    proof: Ruled[Proof] | None = None


@requires("an earth of this kind is there to use", place=METHOD)
def earth_there(earthing: str, system: str) -> Finding:
    """The way the point is to be earthed goes with the earth the house has.

    A rod of the point's own is for a house on the network's earth; a house on a rod uses that.

    Examples
    --------
    >>> earth_there("pme", "TT").why
    'the network gives this house no earth: it stands on a rod'
    """
    if earthing == NETWORK_EARTH:
        return holds(system != "TT", "the network gives this house no earth: it stands on a rod"
                     if system == "TT" else "")  # fmt: skip
    if earthing == HOUSE_ROD:
        return holds(system == "TT", "" if system == "TT" else "the house has no rod")
    return holds(system != "TT", "the house's own rod serves" if system == "TT" else "")


@tells(OUTDOORS)
def earth_is_separate(system: str) -> str:
    """Say that a network earth of its own cannot break with the neutral: no guard is asked.

    Only while the network keeps it so: a repair in the street may join the two.

    Examples
    --------
    >>> earth_is_separate("TN-S").says[:52]
    'TN-S, confirmed: the earth is a conductor of its own'
    """
    return (
        f"{system}, confirmed: the earth is a conductor of its own, and no guard against the break "
        "of a combined one is asked"
    )


@tells(OUTDOORS)
def neutral_not_leaned_on(detection: str) -> str:
    """Say that where a rod earths the house there is no combined neutral to lose.

    No device against its break is asked; one that is there works all the same.

    Examples
    --------
    >>> neutral_not_leaned_on("none").says
    'on a rod: no combined neutral to lose, no device against its break is asked'
    """
    words = "on a rod: no combined neutral to lose, no device against its break is asked"
    if detection == Detection.VOLTS_WINDOW:
        return f"{words}; the one in the point still trips on low or high volts"
    return words


@requires("there is room for the rods planned", place=METHOD)
def room_for_rods(room: bool) -> Finding:
    """More rods want open ground about their own length from the first, and nothing buried in it.

    As somebody looked at it; what is buried is found out before driving.

    Examples
    --------
    >>> room_for_rods(False).why
    'no open ground for another rod: ask the operator for an earth, or another kind of electrode'
    """
    return holds(room, "" if room else "no open ground for another rod: ask the operator for an "
                 "earth, or another kind of electrode")  # fmt: skip


@tells(DECLARED)
def loop_as_declared(Ze: Ohms, declared: Ohms) -> str:  # noqa: N803 - as in the clause
    """Say what the loop of the network's earth reads, where operators declare no less.

    A reading with the main earth lifted, or what a certificate gives; the circuit's own loop
    decides.

    Examples
    --------
    >>> loop_as_declared(Ohms(0.2), Ohms(0.35)).says
    "the loop of the network's earth reads 0.2 Ω; operators declare 0.35 Ω for it"
    """
    return (
        f"the loop of the network's earth reads {Ze:g} Ω; operators declare {declared:g} Ω for it"
    )


@tells(DECLARED, caution=True)
def loop_to_report(Ze: Ohms, declared: Ohms) -> str:  # noqa: N803 - as in the clause
    """Ask for a report of a loop larger than operators declare; the circuit's own loop decides.

    Examples
    --------
    >>> loop_to_report(Ohms(0.55), Ohms(0.35)).caution[-27:]
    ' report it with the reading'
    """
    return (
        f"the loop of the network's earth reads {Ze:g} Ω, more than the {declared:g} Ω operators "
        "declare for it: report it with the reading"
    )


@tells(REACH, caution=True)
def metal_looked_for(reach: Metres) -> str:
    """Ask for a look at what a hand could touch together with the car, until it is noted.

    Examples
    --------
    >>> metal_looked_for(Metres(2.5)).caution[-40:]
    'within 2.5 m of the car where it charges'
    """
    return (
        "look for metal on another earth (a lamp post, a neighbour's fence or car) within "
        f"{reach:g} m of the car where it charges"
    )


@tells(REACH, caution=True)
def rod_kept_away(away: Metres) -> str:
    """Ask what is buried before a rod is driven.

    It stays an earth of its own only away from what is buried on the network's earth. The figure
    is the largest that is quoted; none is in the rules.

    Examples
    --------
    >>> rod_kept_away(Metres(3.6)).caution[:57]
    'before the rod is driven, find what is buried: up to 3.6 '
    """
    return (
        f"before the rod is driven, find what is buried: up to {away:g} m is asked between it and "
        "metal on the network's earth; the operator's own figure rules"
    )


def point_earthing(
    home: Home,
    basis: Basis,
    place: str,
    earthing: str,
    point: ChargePoint,
    rcd_ma: Milliamperes,
) -> Made[PointEarth]:
    """Return what earths the point and whether it is safe to touch.

    ``earthing`` is ``pme``, ``rod`` or ``house rod``; ``rcd_ma`` is what opens its circuit.
    """
    there = earth_there(earthing, home.supply.earthing)
    if there.outcome is Outcome.FAIL:
        return Made(PointEarth(earthing, None, None), (there,))
    if earthing == NETWORK_EARTH:
        out, found = _on_the_network(home, basis, place, point)
        return made_of(out, (there, *found, _reach(home, basis, place)))
    if earthing == HOUSE_ROD:
        electrode_ohm = house_electrode_ohm(home, basis.book)
        touch_v = rod_times_rcd(electrode_ohm, in_amperes(rcd_ma))
        out = PointEarth(earthing, electrode_ohm, touch_v)
        found = (there, neutral_not_leaned_on(point.detection), _touch(basis, touch_v))
        steady = _steady(home, basis, electrode_ohm)
        return made_of(out, (*found, *steady, _reach(home, basis, place)))
    most_ohm = basis.rules.stable_rod_ohm
    touch_v = rod_times_rcd(most_ohm, in_amperes(rcd_ma))
    out = PointEarth(earthing, most_ohm, touch_v)
    touch = _touch(basis, touch_v).with_caution(NOT_DRIVEN)
    apart, buried = _apart(home, basis, place), _buried(home, basis)
    room = (room_for_rods(home.earthing.second_electrode_room),) if wants_room(home) else ()
    return made_of(out, (there, touch, apart, buried, *room, *steady_in_soil(home, basis)))


def _on_the_network(
    home: Home, basis: Basis, place: str, point: ChargePoint
) -> tuple[PointEarth, tuple[Check | Note, ...]]:
    """Return what guards a point on the network's earth, and whether that earth is what it was."""
    system, usual = doubted_earthing(home), _usual_loop(home, basis)
    if system != COMBINED:
        return PointEarth(NETWORK_EARTH, None, None), (earth_is_separate(system), usual)
    outdoors = home.places[place].outdoors
    proof = proof_of(home, basis, point, outdoors)
    guarded, *others = guards(home, basis, point, proof, outdoors)
    if home.supply.earthing != COMBINED:
        guarded = guarded.with_caution(AS_COMBINED)
    out = PointEarth(NETWORK_EARTH, None, None, proof)
    return out, (guarded, *others, usual)


def _usual_loop(home: Home, basis: Basis) -> Note:
    """Return the loop of the network's earth against what operators declare for its kind."""
    declared_ohm = declared_ze_ohm(basis.book, home.supply.earthing)
    told = loop_as_declared if home.supply.ze_ohm <= declared_ohm else loop_to_report
    return told(home.supply.ze_ohm, declared_ohm)


def _reach(home: Home, basis: Basis, place: str) -> Check | Note:
    """Return whether metal of another earth is out of reach, as far as anybody has looked."""
    metal_m = if_said(lambda: home.places[place].metal_within_m, None)
    limit_m = point_distance(basis.book, "reach between earths")
    if metal_m is not None:
        return reach_separated(metal_m, limit_m)
    return metal_looked_for(limit_m)


def _buried(home: Home, basis: Basis) -> Check | Note:
    """Return whether buried metal is far enough from a rod that is yet to be driven."""
    away_m = point_distance(basis.book, "buried separation")
    metal_m = if_said(lambda: home.earthing.rod_metal_m, None)
    if metal_m is not None:
        return buried_separated(metal_m, away_m).with_caution(OPERATORS_OWN)
    return rod_kept_away(away_m)


def _touch(basis: Basis, touch_v: Volts) -> Check:
    """Return whether the circuit opens before what is touched stands too high."""
    return touch_voltage_limited(touch_v, touch_limit_of_rod(basis.book))


def _steady(home: Home, basis: Basis, electrode_ohm: Ohms) -> Iterator[Check]:
    """Yield whether the house's electrode stays steady, with more rods that would mend it."""
    if rods_planned(home) > 1:
        yield room_for_rods(home.earthing.second_electrode_room)
    check = rod_stable(dry_ohm(home, basis.book, electrode_ohm), basis.rules.stable_rod_ohm)
    if electrode_ohm > basis.rules.aim_rod_ohm:
        check = check.with_caution(DRY_UNKNOWN)
    if check.outcome is Outcome.FAIL:
        check = check.mended_by(*steadier(home, basis, electrode_ohm))
    yield check


def _apart(home: Home, basis: Basis, place: str) -> Check:
    """Return whether nobody can touch the car and metal of another earth together."""
    return reach_separated(
        home.places[place].metal_within_m, point_distance(basis.book, "reach between earths")
    )
