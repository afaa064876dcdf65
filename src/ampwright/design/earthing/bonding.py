"""Whether the earthing and bonding a new circuit leans on are there, whole and large enough."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass, replace
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check, Outcome
from ampwright.foundations.errors import OutOfTableError
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.quantity import Ohms, SquareMm
from ampwright.foundations.remedies import Part, Remedy
from ampwright.foundations.rulings import Ruled
from ampwright.foundations.stages import Made
from ampwright.standards.wiring.earthing import (
    BONDING,
    bond_present_and_sized,
    earthing_conductor_sized,
    extraneous_limit,
    pipe_may_stay_unbonded,
)
from ampwright.standards.wiring.earthing_kind import COUNTS_AS_EARTHING, CountsAs, EarthingCase
from ampwright.survey.home import Home
from ampwright.survey.home_earthing import Service
from ampwright.tables.book import Book
from ampwright.tables.earthing import (
    body_current,
    body_resistance,
    buried_earthing_mm2,
    earthing_conductor,
    main_bond_mm2,
)
from ampwright.tables.supply_limits import nominal_v

from ..residual import in_amperes
from ..work import run_minutes
from .network import house_earth

COMBINED: Final = "TN-C-S"
SEPARATE: Final = "TN-S"
ROD: Final = "TT"
GUARDED: Final = "against corrosion and damage"
CORRODES_NOT: Final = "against corrosion only"
BARE: Final = "none"


@dataclass(frozen=True, slots=True)
class Bond:
    """The main bond of one service: what is asked, what is there, and whether work is needed."""

    service: str
    required_mm2: SquareMm
    found_mm2: SquareMm
    to_do: bool


@dataclass(frozen=True, slots=True)
class Bonding:
    """The main bonds of every service of metal, and what the home's earth counts as."""

    bonds: tuple[Bond, ...]
    counts: Ruled[CountsAs]


@tells(BONDING)
def nothing_to_bond(service: str) -> str:
    """Say that a service of plastic brings in nothing to bond, whatever its pipes are further in.

    Where the pipe comes in; a length of metal buried beyond the plastic is looked for on site.

    Examples
    --------
    >>> nothing_to_bond("water").says
    'the water service is plastic where it comes in: nothing to bond'
    """
    return f"the {service} service is plastic where it comes in: nothing to bond"


def bonding(home: Home, basis: Basis) -> Made[Bonding]:
    """Return the main bonds and the earthing conductor of a home, and what each lacks.

    A house on the network's earth must still have it. Every service must have been looked for.
    A bond that is missing, cut or thin is mended by a new one, whose length is read then: where
    nobody has paced it, the answer waits for that.
    """
    system = doubted_earthing(home)
    bonds: list[Bond] = []
    checks: list[Check] = []
    notes: list[Note] = []
    for id_, service in home.services.listed():
        if service.pipe_at_entry == "plastic":
            notes.append(nothing_to_bond(id_))
            continue
        required_mm2 = required_bond(home, basis.book, system)
        bond, check = _bond(
            basis, id_, service, required_mm2, lambda: bond_to_run(home, basis.book, system)
        )
        bonds.append(bond)
        checks.append(check)
    if home.supply.earthing != ROD:
        checks.append(house_earth(home, basis))
    checks.extend(_conductor(home, basis))
    return Made(Bonding(tuple(bonds), counts_as(home)), tuple(checks), notes=tuple(notes))


def counts_as(home: Home) -> Ruled[CountsAs]:
    """Return what the home's earth counts as; only of a separate one is the operator asked."""
    system = home.supply.earthing
    confirmed = system == SEPARATE and home.supply.earthing_confirmed
    return COUNTS_AS_EARTHING.decide(EarthingCase(earthing=system, confirmed=confirmed))


def doubted_earthing(home: Home) -> str:
    """Return the earthing to reckon with: a separate earth nobody confirmed counts as combined."""
    combined = counts_as(home).outcome is CountsAs.COMBINED
    return COMBINED if combined else home.supply.earthing


def required_bond(home: Home, book: Book, system: str) -> SquareMm:
    """Return the least main bond: by the supply's neutral, or by the earthing conductor."""
    if system == COMBINED:
        return main_bond_mm2(book, system, home.supply.tails_mm2)
    return main_bond_mm2(book, system, home.earthing.conductor_mm2)


def required_conductor(home: Home, book: Book) -> SquareMm:
    """Return the least earthing conductor: by the tails, or as a guarded wire to a rod."""
    if home.supply.earthing == "TT":
        return buried_earthing_mm2(book, GUARDED)
    return earthing_conductor(book, home.supply.tails_mm2)


def look_at_it(book: Book) -> str:
    """Say what to look at of a wire to a rod, and what it would need where it is guarded less.

    Examples
    --------
    >>> look_at_it(Book())[-57:]
    '16 mm² without a guard against damage, 25 mm² without any'
    """
    sheathed_mm2, bare_mm2 = (
        buried_earthing_mm2(book, guarded) for guarded in (CORRODES_NOT, BARE)
    )
    return (
        "look that it is guarded against corrosion and damage where it is buried: it would need "
        f"{sheathed_mm2:g} mm² without a guard against damage, {bare_mm2:g} mm² without any"
    )


def bond_to_run(home: Home, book: Book, system: str) -> SquareMm:
    """Return the least new bond: large enough still once a thin earthing conductor is renewed."""
    if system == COMBINED:
        return required_bond(home, book, system)
    conductor_mm2 = home.earthing.conductor_mm2
    with suppress(OutOfTableError):
        conductor_mm2 = max(conductor_mm2, required_conductor(home, book), key=float)
    return main_bond_mm2(book, system, conductor_mm2)


def _bond(
    basis: Basis,
    id_: str,
    service: Service,
    required_mm2: SquareMm,
    least_to_run: Callable[[], SquareMm],
) -> tuple[Bond, Check]:
    """Return the bond of one service of metal, with what would mend it."""
    found_mm2 = service.bond_mm2
    whole = found_mm2 < required_mm2 or service.bond_connected
    check = _of(id_, bond_present_and_sized(found_mm2, whole, required_mm2))
    if check.outcome is not Outcome.FAIL:
        return Bond(id_, required_mm2, found_mm2, to_do=False), check
    measured_ohm = service.extraneous_ohm
    unbonded = pipe_may_stay_unbonded(measured_ohm, _brings_in_nothing(basis.book))
    if unbonded.outcome is not Outcome.FAIL:
        return Bond(id_, required_mm2, found_mm2, to_do=False), _of(id_, unbonded)
    read = not found_mm2 and bool(measured_ohm)
    mended = (_of(id_, unbonded) if read else check).mended_by(
        _new_bond(basis, id_, service, least_to_run())
    )
    return Bond(id_, required_mm2, found_mm2, to_do=True), mended


def _of(id_: str, check: Check) -> Check:
    """Return a check that says of which service it is."""
    return replace(check, why=": ".join(part for part in (f"the {id_} service", check.why) if part))


def _brings_in_nothing(book: Book) -> Ohms:
    """Return the resistance from which metal needs no bond."""
    return extraneous_limit(nominal_v(book), in_amperes(body_current(book)), body_resistance(book))


def _new_bond(basis: Basis, id_: str, service: Service, size_mm2: SquareMm) -> Remedy:
    """Return the work of a new bond from the main earth bar to the entry of a service."""
    length_m = service.bond_route_m
    return Remedy(
        slug=f"bond-{id_}",
        does=f"Run a {size_mm2:g} mm² main bond to the {id_} service, clamped on the house's "
        "side of its entry before any branch",
        changes=(
            (f"services.{id_}.bond_mm2", float(size_mm2)),
            (f"services.{id_}.bond_connected", True),
        ),
        parts=(
            Part(f"earth wire {size_mm2:g} mm², green-and-yellow", float(length_m), "m"),
            Part("earth clamp with label", 1.0),
        ),
        minutes=run_minutes(basis, "bond-set-up", "bond-run", length_m),
    )


def _conductor(home: Home, basis: Basis) -> Iterator[Check]:
    """Yield whether the earthing conductor is large enough, with what would mend it.

    Nothing beside tails that no table holds: the supply is ruled out for those, and the conductor
    is judged beside the new ones.
    """
    try:
        required_mm2 = required_conductor(home, basis.book)
    except OutOfTableError:
        return
    check = earthing_conductor_sized(home.earthing.conductor_mm2, required_mm2)
    new_mm2 = required_mm2
    if home.supply.earthing == "TT":
        check = check.with_caution(look_at_it(basis.book))
    else:
        with_new_tails_mm2 = earthing_conductor(basis.book, basis.rules.least_tails_mm2)
        new_mm2 = max(required_mm2, with_new_tails_mm2, key=float)
    yield check.mended_by(
        Remedy(
            slug="earthing-conductor",
            does=f"Run a new {new_mm2:g} mm² earthing conductor to the means of earthing",
            changes=(("earthing.conductor_mm2", float(new_mm2)),),
            parts=(Part(f"earthing conductor {new_mm2:g} mm², with terminations", 1.0),),
            minutes=basis.task("bond-set-up").minutes,
        )
    )
