"""The protective device of the point's circuit: rating, curve, poles and residual current."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ISOLATOR_BY_POINT, ChargePoint, Device, DeviceKind, RcdType
from ampwright.foundations.checks import Check, Finding, holds, requires
from ampwright.foundations.plural import count
from ampwright.foundations.quantity import Amperes, Count, Kiloamperes, Milliamperes
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.wiring.charging import isolation_present
from ampwright.standards.wiring.overload import device_carries_design_current, device_rating
from ampwright.standards.wiring.rcd import (
    dc_fault_covered,
    leakage_leaves_room,
    leakage_limit,
    rcd_breaks_all_live,
    rcd_protects_point,
)
from ampwright.survey.home import Home
from ampwright.tables.devices import leakage_share, point_rcd_limit_ma

METER: Final = "meter"
METHOD: Final = Place("Ampwright", at="method, the device of the circuit", trust=Trust.DERIVED)
CURVE: Final = "B"
"""A point draws no rush of current when it starts, so the curve that opens soonest serves."""
POLES: Final = {1: 2, 3: 4}
"""Live conductors of a circuit by its lines: the neutral counts."""
SEES_PULSES: Final = frozenset({RcdType.A, RcdType.F, RcdType.B})


@dataclass(frozen=True, slots=True)
class Guard:
    """What of the protection bears on the cable behind it."""

    rating_a: Amperes
    curve: str
    breaking_ka: Kiloamperes
    rcd_ma: Milliamperes
    rcd_in_point: bool


@dataclass(frozen=True, slots=True)
class Protection:
    """What protects the circuit of a point.

    ``device`` and ``rcd`` are ids of the catalogue; ``rcd`` is empty where residual current is
    seen by the device itself or, if ``rcd_in_point``, only by the point. ``rcd_beside``: it
    stands in a case of its own beside the board, which has no place for it.
    ``isolator_by_point``: the device leaves the neutral joined, so a four-pole isolator goes
    with the point.
    """

    device: str
    rcd: str
    rating_a: Amperes
    curve: str
    breaking_ka: Kiloamperes
    positions: Count
    breaks_neutral: bool
    rcd_type: str
    rcd_ma: Milliamperes
    rcd_in_point: bool
    rcd_beside: bool
    isolator_by_point: bool

    @property
    def guard(self) -> Guard:
        """What of it bears on the cable behind it."""
        return Guard(self.rating_a, self.curve, self.breaking_ka, self.rcd_ma, self.rcd_in_point)


@computes("n", "", formula="sum(positions)", place=METHOD)
def positions_together(positions: tuple[Count, ...]) -> Count:
    """Return the positions that several devices take on the rail.

    Examples
    --------
    >>> positions_together((Count(2), Count(4)))
    6
    """
    return Count(sum(positions))


NO_PROTECTION: Final = Protection(
    device="",
    rcd="",
    rating_a=Amperes(0.0),
    curve=CURVE,
    breaking_ka=Kiloamperes(0.0),
    positions=Count(0),
    breaks_neutral=False,
    rcd_type=RcdType.NONE,
    rcd_ma=Milliamperes(0.0),
    rcd_in_point=False,
    rcd_beside=False,
    isolator_by_point=False,
)
"""Stands where the catalogue has nothing that fits; its stage has failed."""


@requires("the catalogue has a device for the circuit", place=METHOD)
def device_offered(found: bool, wanted: str) -> Finding:
    """The firm buys a device of the kind the circuit needs.

    By kind, lines and curve; whether its rating is enough is another check.

    Examples
    --------
    >>> device_offered(False, "RCBO on 3 lines").why
    'no RCBO on 3 lines in the catalogue'
    """
    return holds(found, "" if found else f"no {wanted} in the catalogue")


def protective_device(
    home: Home,
    basis: Basis,
    tap: str,
    point: ChargePoint,
    earthing: str,
    setting_a: Amperes,
    hidden: bool,
) -> Made[Protection]:
    """Return the device for a point's circuit: the least rating bought that carries its setting.

    ``hidden`` says whether a leg runs inside a wall. Curve B, the neutral broken too. The
    point's own RCD is enough where the network's earth is kept and no leg is hidden; everywhere
    else the cable wants one at its origin. A three-phase board whose maker has none that also
    sees residual current takes a three-pole breaker, and the RCD a case beside it. A maker may
    ask for a larger rating: then that stands.
    """
    wants_rcd = rcd_at_origin(earthing, point.built_in_rcd, point.dc_6ma, hidden)
    bars = on_bars(home, tap, point.phases)
    apart = wants_rcd and (not point.dc_6ma or (bars and not _rcbo_sold(home, tap)))
    kind = DeviceKind.RCBO if wants_rcd and not apart else DeviceKind.BREAKER
    three_pole = bars and kind is DeviceKind.BREAKER
    fitting = _fitting(basis, kind, point.phases, three_pole)
    guards = _guards(basis, point.phases, with_dc=not point.dc_6ma) if apart else ()
    wanted = (
        f"{kind.value}{' with an RCD of its own' if apart else ''} on {count(point.phases, 'line')}"
    )
    if not fitting or (apart and not guards):
        return Made(NO_PROTECTION, (device_offered(False, wanted),))
    device = _least(fitting, setting_a)
    rcd = _least(guards, device.rating_a) if guards else device
    out = Protection(
        device=device.id,
        rcd=rcd.id if guards else "",
        rating_a=device.rating_a,
        curve=device.curve,
        breaking_ka=device.breaking_ka,
        positions=device.positions if bars else _positions(device, rcd),
        breaks_neutral=rcd.breaks_neutral,
        rcd_type=rcd.rcd_type if wants_rcd else point.built_in_rcd,
        rcd_ma=rcd.rcd_ma if wants_rcd else point_rcd_limit_ma(basis.book),
        rcd_in_point=not wants_rcd,
        rcd_beside=apart and bars,
        isolator_by_point=not rcd.breaks_neutral and _isolator_bought(basis, point.phases),
    )
    return Made(out, (device_offered(True, wanted), *_checks(out, basis, setting_a, point)))


def on_bars(home: Home, tap: str, phases: int) -> bool:
    """Say whether a device for three lines goes on the bars of a three-phase board."""
    return tap != METER and phases > 1 and home.boards[tap].phases > 1


def _rcbo_sold(home: Home, tap: str) -> bool:
    """Say whether the maker of a board sells a three-phase device that sees residual current."""
    return home.boards[tap].parts_three_phase_rcbo


def _isolator_bought(basis: Basis, phases: int) -> bool:
    """Say whether the firm buys an isolator to put beside a point."""
    return bool(basis.rates.kits.get((ISOLATOR_BY_POINT, phases)))


def _positions(device: Device, rcd: Device) -> Count:
    """Return the positions of one device, or of a device and the RCD beside it."""
    if rcd is device:
        return device.positions
    return positions_together((device.positions, rcd.positions))


def rcd_at_origin(earthing: str, built_in_rcd: str, dc_6ma: bool, hidden: bool) -> bool:
    """Say whether the circuit wants an RCD where it begins, whatever the point has inside.

    One of Type A or F inside the point is enough only beside a detector of smooth direct current.

    Examples
    --------
    >>> [rcd_at_origin("pme", "A", dc_6ma, hidden=False) for dc_6ma in (True, False)]
    [False, True]
    """
    sees_all = built_in_rcd == RcdType.B or (dc_6ma and built_in_rcd in SEES_PULSES)
    return earthing != "pme" or hidden or not sees_all


def _checks(
    out: Protection, basis: Basis, setting_a: Amperes, point: ChargePoint
) -> tuple[Check, ...]:
    """Return what the device must satisfy."""
    poles = POLES[point.phases]
    broken = poles if out.breaks_neutral or out.rcd_in_point else point.phases
    return (
        device_carries_design_current(setting_a, out.rating_a),
        rcd_protects_point(out.rcd_type, out.rcd_ma, point_rcd_limit_ma(basis.book)),
        dc_fault_covered(out.rcd_type, point.dc_6ma),
        _leakage(out, basis, point),
        rcd_breaks_all_live(broken, poles),
        isolation_present(out.breaks_neutral or out.isolator_by_point),
    )


def _leakage(out: Protection, basis: Basis, point: ChargePoint) -> Check:
    """Return whether what the point leaks in normal service leaves its device room."""
    limit_ma = leakage_limit(out.rcd_ma, leakage_share(basis.book))
    return leakage_leaves_room(basis.cited(point).leaks_ma, limit_ma)


def _fitting(basis: Basis, kind: DeviceKind, phases: int, three_pole: bool) -> tuple[Device, ...]:
    """Return the devices of a kind that would serve, as the catalogue lists them.

    Where it has none that also sees residual current as it must, those that come nearest.
    """
    bought = [
        each
        for each in basis.catalogue.devices
        if each.kind is kind and each.phases == phases and each.curve == CURVE
    ]
    if kind is DeviceKind.BREAKER:
        found = [each for each in bought if each.breaks_neutral is not three_pole]
    else:
        found = nearest(
            bought, lambda row: row.breaks_neutral, lambda row: row.rcd_type in SEES_PULSES
        )
    return tuple(map(basis.cited, found))


def _guards(basis: Basis, phases: int, with_dc: bool) -> tuple[Device, ...]:
    """Return the residual current devices that guard a point; of Type B if they must see d.c.

    Where there are none, those that come nearest.
    """
    wanted = RcdType.B if with_dc else RcdType.A
    bought = [
        each
        for each in basis.catalogue.devices
        if each.kind is DeviceKind.RCD and each.phases == phases
    ]
    found = nearest(
        bought,
        lambda row: row.breaks_neutral,
        lambda row: row.rcd_type in SEES_PULSES,
        lambda row: row.rcd_type is wanted,
    )
    return tuple(map(basis.cited, found))


def nearest(rows: list[Device], *wishes: Callable[[Device], bool]) -> list[Device]:
    """Return the rows that meet the wishes one after the other; one that none meets is let go.

    What is let go fails the check that asks for it, with the numbers of the nearest row.
    """
    for wish in wishes:
        rows = [row for row in rows if wish(row)] or rows
    return rows


def _least(devices: tuple[Device, ...], needed_a: Amperes) -> Device:
    """Return the device of the least rating that is enough, or the largest there is."""
    ratings = tuple(each.rating_a for each in devices)
    if all(rating < needed_a for rating in ratings):
        return max(devices, key=lambda each: each.rating_a)
    chosen = device_rating(needed_a, ratings)
    found = next(each for each in devices if each.rating_a == chosen)
    return replace(found, rating_a=chosen)
