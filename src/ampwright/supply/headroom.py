"""Two rooms that are never mixed: what the supply can carry, and what the operator must be told.

The first decides whether a point fits; the second only whether the operator is told or asked.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.demand.moving import Move, remedy_of
from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.checks import (
    Check,
    Finding,
    Outcome,
    at_least,
    at_most,
    holds,
    requires,
    verdict,
)
from ampwright.foundations.notes import tells
from ampwright.foundations.quantity import Amperes, Count
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.diversity import under_limit, with_point
from ampwright.standards.network.limiter import (
    limiter_fails_safe,
    limiter_locked,
    limiter_quick_enough,
)
from ampwright.standards.places import wiring
from ampwright.standards.wiring.adequacy import supply_carries_demand
from ampwright.survey.home import Home
from ampwright.tables.charging import least_charging_a
from ampwright.tables.network import limiting_time

from .larger import beaten, larger_fuse
from .sharing import Sharing

METHOD: Final = Place("Ampwright", at="method", trust=Trust.DERIVED)
SEQUENCE: Final = wiring("643.9")
ROTATION: Final = (
    "note the phase rotation at the meter before anything is dead; prove it the same after, at "
    "every board whose feed was parted and at whatever turns: pumps, fans, a heat pump"
)
ROTATION_AT_POINT: Final = f"{ROTATION}; prove it at the point too, L1 on its first terminal"


@computes("I", "A", formula="max(I)", place=METHOD)
def heaviest(I: tuple[Amperes, ...]) -> Amperes:  # noqa: E741, N803 - as in the household table
    """Return the current of the line that carries most."""
    return Amperes(max(I))


def worst(line_a: tuple[Amperes, ...]) -> Amperes:
    """Return the current of the heaviest line; of a single line there is nothing to work out."""
    return line_a[0] if len(line_a) == 1 else heaviest(line_a)


@computes("Iroom", "A", formula="limit - I", place=METHOD)
def room(limit: Amperes, I: Amperes) -> Amperes:  # noqa: E741, N803
    """Return the current left under a limit; below nought when it is passed already."""
    return Amperes(limit - I)


@computes("Ilimit", "A", formula="min(limit, rating)", place=METHOD)
def house_limit(limit: Amperes, rating: Amperes) -> Amperes:
    """Return the figure a limiter is set to: the firm's, or the supply's rating if less."""
    return Amperes(min(limit, rating))


@requires("the supply has the lines that the point charges on", place=METHOD)
def supply_has_lines(point: Count, supply: Count) -> Finding:
    """A point for three phases needs three."""
    return holds(point <= supply, f"a point for {point} phases on a supply with {supply}")


@requires("the point senses the whole house", place=METHOD)
def point_senses_house(sensor_input: bool) -> Finding:
    """A limit on the house needs sensors that see every load, the point among them."""
    return holds(sensor_input, "" if sensor_input else "the point has no input for a sensor")


@requires("demand without the car ≤ the limit", unit="A", place=METHOD)
def house_under_limit(demand: Amperes, limit: Amperes) -> Finding:
    """A limiter can hold back the car and nothing else: it never cures a house over its limit."""
    return at_most(demand, limit)


@requires("the limit ≥ the least worth setting", unit="A", place=METHOD)
def limit_worth_setting(limit: Amperes, least: Amperes) -> Finding:
    """A house held too low starves the car most evenings."""
    return at_least(limit, least)


@tells(SEQUENCE, caution=True)
def rotation_kept(at_point: bool) -> str:
    """Ask for the order of three lines before anything is dead, and the same again after.

    Lines that change places turn pumps and fans backwards, and nothing trips. Proved wherever
    three lines were parted; ``at_point`` where the point takes all three.

    Examples
    --------
    >>> rotation_kept(True).caution.endswith("prove it at the point too, L1 on its first terminal")
    True
    """
    return ROTATION_AT_POINT if at_point else ROTATION


@dataclass(frozen=True, slots=True)
class Headroom:
    """What the supply carries with a point, one entry a line.

    ``lines`` says which lines the point charges on, ``rating_a`` what the supply can carry on
    each; ``carried_a`` is what the supply must carry, under the house limit if there is one
    (``limit_a``, else ``None``), which ``sharing`` other points keep with the new one;
    ``fits_a`` is what the supply could still carry before the point, ``fits_unlimited`` whether
    it would carry it without a limit; ``car_a`` is what the cars are sure to get, all points
    together, while the house draws its demand, and ``pauses`` that even one of them then pauses.
    """

    lines: tuple[bool, ...]
    rating_a: Amperes
    with_point_a: tuple[Amperes, ...]
    carried_a: tuple[Amperes, ...]
    fits_a: tuple[Amperes, ...]
    fits_unlimited: bool
    limit_a: Amperes | None
    sharing: Sharing
    car_a: Amperes
    pauses: bool


def headroom(
    home: Home,
    basis: Basis,
    now_a: tuple[Amperes, ...],
    rating_a: Amperes,
    point: ChargePoint,
    setting_a: Amperes,
    limited: bool,
    sharing: Sharing,
    moves: tuple[Move, ...],
) -> Made[Headroom]:
    """Return the room on each line for a point at a setting, and whether it fits.

    ``now_a`` is the demand before the point and ``rating_a`` what the supply can carry on each
    line. A point for one phase goes on the line that carries least. ``limited`` says that the
    point holds the whole house to the firm's limit, or to the rating where that is less or the
    house passes the limit by itself; ``sharing`` names the points that keep it too. What fails
    is mended by the first of ``moves`` that makes every line hold; where no setting fits, by the
    least larger service fuse that the network could be asked for.
    """
    made = carried_with(home, basis, now_a, rating_a, point, setting_a, limited, sharing)
    if verdict(made.checks) is not Outcome.FAIL:
        return made
    for move in moves:
        moved = carried_with(home, basis, move.now_a, rating_a, point, setting_a, limited, sharing)
        if verdict(moved.checks) is Outcome.PASS:
            return _mended(made, (remedy_of(move, basis),))

    def holds_on(fuse_a: Amperes) -> bool:
        other = carried_with(home, basis, now_a, fuse_a, point, setting_a, limited, sharing)
        return verdict(other.checks) is Outcome.PASS

    if not beaten(made.out.fits_a, made.out.lines, point.least_a):
        return made
    return _mended(made, larger_fuse(home, basis, holds_on))


def _mended(made: Made[Headroom], remedies: tuple[Remedy, ...]) -> Made[Headroom]:
    """Return the room with the work that would mend what fails of it."""
    return made._replace(checks=tuple(check.mended_by(*remedies) for check in made.checks))


def carried_with(
    home: Home,
    basis: Basis,
    now_a: tuple[Amperes, ...],
    rating_a: Amperes,
    point: ChargePoint,
    setting_a: Amperes,
    limited: bool,
    sharing: Sharing,
) -> Made[Headroom]:
    """Return what the supply carries with a point, every load being where it is."""
    phases = Count(int(home.supply.phases))
    lines = lines_for(point.phases, now_a)
    with_a = added(now_a, lines, setting_a)
    fixed_a = sharing.beside(now_a)
    busiest_a = worst(tuple(a for a, on in zip(fixed_a, lines, strict=True) if on))
    limit_a = limit_for(basis, rating_a, busiest_a) if limited else None
    carried_a = held(fixed_a, with_a, limit_a)
    car_a = room(rating_a if limit_a is None else limit_a, busiest_a)
    out = Headroom(
        lines=lines,
        rating_a=rating_a,
        with_point_a=with_a,
        carried_a=carried_a,
        fits_a=tuple(room(rating_a, each) for each in now_a),
        fits_unlimited=bool(worst(with_a) <= rating_a),
        limit_a=limit_a,
        sharing=sharing,
        car_a=car_a,
        pauses=bool(car_a < point.least_a),
    )
    checks = (
        supply_has_lines(point.phases, phases),
        supply_carries_demand(worst(carried_a), rating_a),
        *(_limit_checks(basis, point, busiest_a, limit_a) if limit_a is not None else ()),
    )
    return Made(out, checks, notes=(rotation_kept(point.phases > 1),) if phases > 1 else ())


def limit_for(basis: Basis, rating_a: Amperes, busiest_a: Amperes) -> Amperes:
    """Return the figure the house is held to.

    The firm's own, below which the operator is told; a house that passes it without the car is
    held to what the supply can carry, and the operator is asked.
    """
    firm_a = house_limit(basis.rules.house_limit_a, rating_a)
    return firm_a if busiest_a <= firm_a else rating_a


def _limit_checks(
    basis: Basis, point: ChargePoint, busiest_a: Amperes, limit_a: Amperes
) -> tuple[Check, ...]:
    """Return what a house limit must be to count."""
    kind = basis.cited(point)
    return (
        point_senses_house(point.sensor_input),
        limiter_fails_safe(kind.falls_to_a, least_charging_a(basis.book)),
        limiter_locked(point.setting_locked),
        limiter_quick_enough(kind.limits_within_s, limiting_time(basis.book)),
        house_under_limit(busiest_a, limit_a),
        limit_worth_setting(limit_a, basis.rules.least_house_limit_a),
    )


def limiter_holds(basis: Basis, point: ChargePoint) -> bool:
    """Say whether a point is of a kind whose limit on the house may be relied on."""
    safe = point.falls_to_a <= least_charging_a(basis.book)
    quick = point.limits_within_s <= limiting_time(basis.book)
    return point.sensor_input and point.setting_locked and safe and quick


def lines_for(phases: int, now_a: tuple[Amperes, ...]) -> tuple[bool, ...]:
    """Return the lines a point charges on: all, or the one that carries least."""
    if phases > 1:
        return tuple(True for _ in now_a)
    least = min(range(len(now_a)), key=now_a.__getitem__)
    return tuple(line == least for line in range(len(now_a)))


def added(
    now_a: tuple[Amperes, ...], lines: tuple[bool, ...], point_a: Amperes
) -> tuple[Amperes, ...]:
    """Return the demand of each line with a point on some of them."""
    return tuple(
        with_point(each, point_a) if on else each for each, on in zip(now_a, lines, strict=True)
    )


def held(
    fixed_a: tuple[Amperes, ...], with_a: tuple[Amperes, ...], limit_a: Amperes | None
) -> tuple[Amperes, ...]:
    """Return the demand of each line under a limit; a line over it without the cars stays over."""
    if limit_a is None:
        return with_a
    return tuple(
        under_limit(each, limit_a) if fixed <= limit_a else each
        for fixed, each in zip(fixed_a, with_a, strict=True)
    )
