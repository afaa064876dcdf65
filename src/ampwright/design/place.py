"""The place of the point: its case, its height, and gas or fuel close by."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check, Finding, holds, requires
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.quantity import Metres
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made, made_of
from ampwright.standards.places import wiring
from ampwright.standards.wiring.charging import (
    outlet_not_too_high,
    outlet_not_too_low,
    point_outdoors_rated,
)
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.charging import outdoor_enclosure, point_distance

FUEL: Final = Place(
    "usual practice for charge points", at="gas and fuel near by", trust=Trust.COMMON_PRACTICE
)
LINK: Final = Place(
    "usual practice for charge points", at="signal at the spot", trust=Trust.COMMON_PRACTICE
)
NO_SIGNAL: Final = "none"
MOBILE: Final = "a point with mobile data, or a data cable beside its own"
WIRED: Final = "a data cable beside its own, for there is no mobile signal either"
NOTHING: Final = "nothing"
BOTTLES: Final = "gas bottles or tank"
LOOK_IT_UP: Final = (
    "keep the distances that the gas company, the fuel supplier and the maker of the point ask"
)


@dataclass(frozen=True, slots=True)
class Spot:
    """Where the point hangs, as far as its case is concerned."""

    outdoors: bool


@tells(wiring("722.512.2"))
def out_of_the_weather(place: str) -> str:
    """Say that a point indoors needs no protection against rain.

    Says nothing of dust or knocks in a workshop.

    Examples
    --------
    >>> out_of_the_weather("garage").says
    'garage is indoors: no case against dust and water is asked of the point'
    """
    return f"{place} is indoors: no case against dust and water is asked of the point"


@tells(wiring("722.55.101", doubtful=True), caution=True)
def height_told(low: Metres, high: Metres) -> str:
    """Tell whoever hangs the point between which heights its outlet belongs.

    Until somebody has said how high; lowest part of the outlet above the ground.

    Examples
    --------
    >>> height_told(Metres(0.5), Metres(1.5)).caution[:62]
    'hang the lowest part of its outlet 0.5 to 1.5 m above the grou'
    """
    return (
        f"hang the lowest part of its outlet {low:g} to {high:g} m above the ground; confirm the "
        "heights against the current standard"
    )


@tells(FUEL, caution=True)
def gas_looked_for() -> str:
    """Ask for a look at what stands by the point, until somebody has said."""
    return "look for a gas meter, a flue, a vent or bottles within arm's reach of the point"


@requires("no gas that may leak settles by the point", place=FUEL)
def clear_of_bottles(near: str, bottled_gas: bool) -> Finding:
    """A point hangs clear of bottles and tanks of gas, whose leaks lie along the ground.

    How far is the supplier's figure and the maker's; it is measured on site.

    Examples
    --------
    >>> clear_of_bottles("gas bottles or tank", True).outcome.value
    'fail'
    """
    beside = near == BOTTLES and bottled_gas
    return holds(not beside, "gas bottles or a tank stand by it" if beside else f"{near} by it")


@tells(LINK, caution=True)
def linked(place: str, mobile: str) -> str:
    """Say how a smart point is linked where there is no Wi-Fi.

    Without a link it charges, and follows no tariff. By the bars on a phone held there.

    Examples
    --------
    >>> linked("drive", "none").caution
    'no Wi-Fi at drive: a data cable beside its own, for there is no mobile signal either'
    """
    if mobile == NO_SIGNAL:
        return f"no Wi-Fi at {place}: {WIRED}"
    return f"no Wi-Fi at {place}, mobile signal {mobile}: {MOBILE}"


def point_place(home: Home, basis: Basis, place: str, ip: str) -> Made[Spot]:
    """Return where the point hangs and whether its case, such as ``IP54``, bears that.

    Height and what stands beside it are judged as far as somebody has said.
    """
    outdoors = home.places[place].outdoors
    least_ip = outdoor_enclosure(basis.book)
    case = point_outdoors_rated(ip, least_ip) if outdoors else out_of_the_weather(place)
    noted = (*_height(home, basis, place), *_fuel(home, place), *_link(home, place))
    return made_of(Spot(outdoors), (case, *noted))


def _height(home: Home, basis: Basis, place: str) -> Iterator[Check | Note]:
    """Yield whether the outlet hangs within reach, or between which heights it belongs."""
    low_m = point_distance(basis.book, "socket height least")
    high_m = point_distance(basis.book, "socket height most")
    height_m = if_said(lambda: home.places[place].height_m, None)
    if height_m is not None:
        yield outlet_not_too_low(height_m, low_m)
        yield outlet_not_too_high(height_m, high_m)
        return
    yield height_told(low_m, high_m)


def _fuel(home: Home, place: str) -> Iterator[Check | Note]:
    """Yield whether the point hangs clear of gas and fuel, or that it is to be looked for."""
    near = if_said(lambda: home.places[place].near_gas, "")
    if near == NOTHING:
        return
    if not near:
        yield gas_looked_for()
        return
    bottled = near == BOTTLES and home.services["lpg"].present
    check = clear_of_bottles(near, bottled).with_caution(f"{near} by the point: {LOOK_IT_UP}")
    yield check.mended_by(_clear(place))


def _link(home: Home, place: str) -> Iterator[Note]:
    """Yield how the point reaches its app where there is no Wi-Fi."""
    wifi = if_said(lambda: home.places[place].wifi, "good")
    if wifi != NO_SIGNAL:
        return
    yield linked(place, if_said(lambda: home.places[place].mobile, NO_SIGNAL))


def _clear(place: str) -> Remedy:
    """Return the work of hanging the point further along."""
    return Remedy(
        slug=f"clear-of-gas-{place}",
        does=f"Hang the point further along from {place}, out of the zone of the bottles or the "
        "tank as their supplier draws it; measured on site",
        changes=((f"places.{place}.near_gas", NOTHING),),
    )
