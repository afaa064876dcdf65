"""What there is to choose from in a home: places, taps, points, earths, cables and settings.

Settings are not sampled: of each stretch of settings that come to the same only the greatest
is offered, and the ends of the stretches are found, not guessed.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import suppress
from functools import cache
from itertools import product
from typing import Any

from ampwright.design.circuit.sizes import CORES
from ampwright.design.old_points import old_points
from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.quantity import Amperes
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.stages import Made
from ampwright.supply.hours import ANY, NIGHT
from ampwright.survey.home import Home
from ampwright.tables.capacity import CableFamily
from ampwright.tables.supply_limits import nominal_v

from .choices import METER, Choosing, Menu
from .laying import left_by, mended
from .lifting import Lifter
from .runs import Cut, Exploring
from .spread import Spread, everywhere
from .suiting import kept_by_laid, kept_by_volts
from .supply_side import supply_side

EARTHS = {"TN-C-S": ("pme", "rod"), "TN-S": ("pme", "rod"), "TT": ("house rod",)}
"""The earths a point may be given, by what the home has."""


def menu_of(lifter: Lifter, basis: Basis) -> Menu:
    """Return the values of each choice that some of the homes allows."""
    homes, view = lifter.homes, lifter.view
    phases: tuple[Any, ...] = homes.answers("supply.phases")
    systems: tuple[Any, ...] = homes.answers("supply.earthing")
    points = tuple(p for p in basis.catalogue.points if p.phases <= max(phases, default=1))
    taps = (*homes.there("boards", view.boards.ids), METER)
    places, hours = homes.there("places", view.places.ids), hours_of(view)
    kept = [
        *kept_by_volts(lifter, basis, tuple(product(taps, places)), hours),
        *(kept_by_laid(basis) if homes.there("laid", view.laid.ids) else ()),
    ]
    return {
        "earthing": tuple(dict.fromkeys(each for one in systems for each in EARTHS[one])),
        "tap": taps,
        "place": places,
        "point": points,
        "setting_a": settings(lifter, basis, points, kept),
        "house_limit": (False, True),
        "hours": hours,
        "family": families(basis, points),
    }


def families(basis: Basis, points: tuple[ChargePoint, ...]) -> tuple[CableFamily, ...]:
    """Return the cable families the firm buys with enough cores for some of the points."""
    cores = {CORES[point.phases] for point in points}
    bought = {each.family for each in basis.catalogue.cables if each.cores in cores}
    return tuple(family for family in CableFamily if family in bought)


def settings(
    lifter: Lifter, basis: Basis, points: Iterable[ChargePoint], kept: Iterable[Amperes]
) -> tuple[Amperes, ...]:
    """Return the settings worth choosing between, the greatest first.

    The greatest of each stretch that comes to the same decision and the same fit, and what the
    cars can take at most; also where that changes once work on the supply side is done. Of
    ``kept``, which leave a point its volts or a cable its cool, those that some point can be
    set to.
    """
    kinds = tuple({_kind(point): point for point in points}.values())
    found = ends(lifter, basis, kinds)
    for remedy in remedies(lifter, basis, kinds, found):
        done = everywhere(lifter.homes, left_by((remedy,)))
        found |= ends(Lifter(lifter.homes, done, (lifter,)), basis, kinds)
    for point in kinds:
        found |= {most for most in cars_take(lifter, basis, point) if most <= point.max_a}
    least = min((point.least_a for point in kinds), default=Amperes(0.0))
    found |= {each for each in kept if least <= each <= max(found, default=least)}
    return tuple(sorted(found, reverse=True))


def ends(lifter: Lifter, basis: Basis, points: Iterable[ChargePoint]) -> set[Amperes]:
    """Return the greatest setting of each stretch, of several points, limited and not."""
    found: set[Amperes] = set()
    for point in points:
        limits = (False, True) if point.sensor_input else (False,)
        for limited, hours in product(limits, hours_of(lifter.view)):
            found |= set(tops(lifter, basis, point, limited, hours))
    return found


def remedies(
    lifter: Lifter, basis: Basis, points: Iterable[ChargePoint], settings_a: Iterable[Amperes]
) -> tuple[Remedy, ...]:
    """Return the work that changes what the supply carries, each once.

    What the supply side names or offers at some of the settings, and old points that go.
    """
    gone = lifter.lift(old_points, basis).values
    found = {remedy: None for value in gone for laid in mended(value) for remedy in laid}
    for point, setting_a in product(points, sorted(settings_a)):
        run = Exploring(lifter, Choosing({}))
        with suppress(Cut):
            supply_side(run, basis, point, setting_a, False, ANY)
        named = (each for ran in run.ran for made in ran.made.values for each in mended(made))
        found.update((remedy, None) for together in named for remedy in together)
    return tuple(found)


def hours_of(view: Home) -> tuple[str, ...]:
    """Return the hours worth choosing between: only volts read by the hour make a difference."""
    return (ANY, NIGHT) if view.supply.readings.ids else (ANY,)


def tops(
    lifter: Lifter, basis: Basis, point: ChargePoint, limited: bool, hours: str
) -> Iterator[Amperes]:
    """Yield the greatest setting of each stretch of whole amperes that come to the same.

    More amperes never make a decision or a fit better in any home, so what is the same at both
    ends of a stretch is the same between them, and halving finds every change.
    """

    @cache
    def sign(amps: int) -> tuple[Any, ...]:
        return sign_of(lifter, basis, point, Amperes(float(amps)), limited, hours)

    least, most = round(point.least_a), round(point.max_a)
    waiting = [(least, most)]
    while waiting:
        low, high = waiting.pop()
        if sign(low) == sign(high):
            continue
        if high - low == 1:
            yield Amperes(float(low))
            continue
        middle = (low + high) // 2
        waiting += [(low, middle), (middle, high)]
    yield Amperes(float(most))


def _kind(point: ChargePoint) -> tuple[Any, ...]:
    """Return what of a point bears on the supply and the network."""
    return (
        point.phases, point.least_a, point.max_a, point.setting_locked, point.sensor_input,
        point.falls_to_a, point.limits_within_s, point.unconditional,
    )  # fmt: skip


def sign_of(
    lifter: Lifter,
    basis: Basis,
    point: ChargePoint,
    setting_a: Amperes,
    limited: bool,
    hours: str,
) -> tuple[Any, ...]:
    """Return what a setting comes to in each home, in a form that can be compared."""
    run = Exploring(lifter, Choosing({}))
    try:
        side: Any = supply_side(run, basis, point, setting_a, limited, hours)
    except Cut:
        return ("cut", *(each.key for each in outcomes_and_offers(run)))
    ends_in = (side.decision.key, side.origin.strained.key)
    return (*ends_in, *(each.key for each in outcomes_and_offers(run)))


def outcomes_and_offers(run: Exploring) -> Iterator[Spread[Any]]:
    """Yield what the checks of each stage come to, and what it offers."""
    for ran in run.ran:
        yield ran.outcome
        yield ran.made.offers


def cars_take(lifter: Lifter, basis: Basis, point: ChargePoint) -> Iterator[Amperes]:
    """Yield the current at which each car takes all it can from a point, in some home."""
    most: Any = lifter.lift(most_currents, basis, point.phases)
    for value in most.values:
        if isinstance(value, Made):
            yield from value.out


def most_currents(home: Home, basis: Basis, phases: int) -> Made[tuple[Amperes, ...]]:
    """Return the least whole current that gives each car all it takes; not a printed number."""
    volts = nominal_v(basis.book)
    found = []
    for _, car in home.cars.listed():
        lines = phases if car.takes_phases >= phases else 1
        found.append(Amperes(float(-(-car.takes_kw * 1000 // (volts * lines)))))
    return Made(tuple(found))
