"""The cable of the point's circuit: sizes tried upward until every limit holds."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import Cable as Stock
from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.checks import Check, Finding, Outcome, at_least, holds, requires
from ampwright.foundations.quantity import (
    Amperes,
    Celsius,
    Count,
    Metres,
    Millimetres,
    Ohms,
    Share,
    SquareMm,
    Volts,
)
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.wiring.charging import (
    gland_holds_cable,
    neutral_and_earth_apart,
    terminal_stays_cool,
    terminal_takes_conductor,
)
from ampwright.standards.wiring.fault import loop, loop_within_limit
from ampwright.standards.wiring.overload import cable_carries_device
from ampwright.standards.wiring.voltage_drop import drop, drop_in_all, drop_share, drop_within_limit
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.capacity import CableFamily, used_at_c
from ampwright.tables.conductors import earth_core_mm2
from ampwright.tables.voltage_drop import drop_mv

from ..earthing.network import network_earth
from ..route import IN_GROUND, Laid, Route, paced
from .capacity import (
    LegCapacity,
    family_suits_way,
    least_capacity,
    leg_capacity,
    may_protect,
)
from .cut_off import cut_off
from .device import Protection
from .faults import NETWORK_EARTH, cores_ohm, earth_core_check, loop_before, loop_limit_ohm
from .feed import Feed, nominal

METHOD: Final = Place("Ampwright", at="method, the cable of the circuit", trust=Trust.DERIVED)
CORES: Final = {1: 3, 3: 5}
"""Power cores by the lines of a point: lines, neutral and earth."""
FIRM: Final = Place("firm rule", at="least conductor of a point", trust=Trust.COMMON_PRACTICE)
AS_LAID: Final = "as it lies there"
SENSOR_APART: Final = "a sensor's cable, if the point has one, is still to be run beside it"
LEAST: Final = "the least size the firm fits"


@dataclass(frozen=True, slots=True)
class Cable:
    """The cable of the point's circuit and what it comes to.

    ``cable`` is the id in the catalogue, empty where none can be bought. ``drop_v`` is from the
    origin, between lines on three phases, and ``drop_share`` its share of that nominal voltage;
    ``drop_to_neutral_v`` is from the origin with one line loaded, as a car on one line loads it.
    ``r1r2_ohm`` is of this circuit alone, hot; ``governed_by`` names what the next size down
    would not meet.
    """

    cable: str
    family: CableFamily
    cores: Count
    size_mm2: SquareMm
    earth_mm2: SquareMm
    overall_mm: Millimetres
    length_m: Metres
    capacity_a: Amperes
    worst_leg: str
    drop_v: Volts
    drop_share: Share
    drop_to_neutral_v: Volts
    r1r2_ohm: Ohms
    zs_ohm: Ohms
    zs_limit_ohm: Ohms
    conductor_c: Celsius
    governed_by: str


@dataclass(frozen=True, slots=True)
class Job:
    """What every size is tried for."""

    home: Home
    basis: Basis
    way: Route
    device: Protection
    feed: Feed
    earthing: str
    setting_a: Amperes
    point: ChargePoint


@requires("the catalogue has a cable with enough cores", place=METHOD)
def cable_offered(found: bool, wanted: str) -> Finding:
    """The firm buys a cable of the family with a core for each line, the neutral and the earth.

    Of the least size it fits, or larger.

    Examples
    --------
    >>> cable_offered(False, "flat cable of 5 cores").why
    'no flat cable of 5 cores in the catalogue'
    """
    return holds(found, "" if found else f"no {wanted} in the catalogue")


@requires("the cable that lies there is of this kind", place=METHOD)
def laid_kind(kind: str, found: str) -> Finding:
    """A cable already laid is taken as what it is.

    By its look and its print.

    Examples
    --------
    >>> laid_kind("armoured", "flat").why
    'what lies there is flat'
    """
    return holds(kind == found, "" if kind == found else f"what lies there is {found}")


@requires("the cable that lies there ≥ the least the firm fits", unit="mm²", place=FIRM)
def laid_size(size: SquareMm, least: SquareMm) -> Finding:
    """A cable already laid is no thinner than the firm would run itself.

    A firm rule, beyond what the circuit needs; the circuit's own limits are other checks.

    Examples
    --------
    >>> laid_size(SquareMm(4.0), SquareMm(6.0)).outcome.value
    'fail'
    """
    return at_least(size, least)


@computes("dU/U0", "", formula="before + own", place=METHOD)
def share_lost(before: Share, own: Share) -> Share:
    """Return the share of the nominal voltage lost along the feed and the circuit after it.

    Examples
    --------
    >>> share_lost(Share(0.01), Share(0.008))
    0.018
    """
    return Share(before + own)


def cable(
    home: Home,
    basis: Basis,
    way: Route,
    device: Protection,
    feed: Feed,
    earthing: str,
    family: CableFamily,
    with_data: bool,
    setting_a: Amperes,
    point: ChargePoint,
) -> Made[Cable]:
    """Return the smallest cable of a family that meets every limit along the way.

    Sizes from the least the firm fits to the largest the point takes; where none holds, the
    largest of those with what it fails. Resistance and earth core as copper of ordinary
    stranding at the temperature that the terminals bear. Raises ``Unanswered`` where no way has
    been paced.
    """
    way = paced(way)
    point = basis.cited(point)
    job = Job(home, basis, way, device, feed, earthing, setting_a, point)
    wanted = f"{family.value} cable of {CORES[point.phases]} cores"
    if way.laid is not None:
        return _as_laid(job, way.laid, family, wanted)
    sizes = tuple(stocked(basis, family, point.phases, with_data))
    if not sizes:
        return Made(_none(family, way), (cable_offered(False, wanted),))
    governed_by = LEAST
    made = _try(job, sizes[0], governed_by)
    for size in sizes[1:]:
        failed = _first_failed(made.checks)
        if failed is None:
            break
        governed_by = failed.requirement.says
        larger = _try(job, size, governed_by)
        if not _goes_in(larger.out, point):
            break
        made = larger
    return Made(made.out, (cable_offered(True, wanted), *made.checks))


def _as_laid(job: Job, laid: Laid, family: CableFamily, wanted: str) -> Made[Cable]:
    """Return what a cable comes to that lies there already: its own kind and size, as they are.

    How thick it is over its sheath is that of a new one of its kind.
    """
    kind = laid_kind(family.value, laid.kind)
    phases = job.point.phases
    alike = [
        each
        for each in job.basis.catalogue.cables
        if each.family is family and each.cores == CORES[phases] and each.size_mm2 == laid.size_mm2
    ]
    if kind.outcome is Outcome.FAIL or not alike:
        known = cable_offered(bool(alike), f"{wanted}, {laid.size_mm2:g} mm², to judge it by,")
        return Made(_none(family, job.way), (kind, known))
    size = laid_size(laid.size_mm2, job.basis.rules.least_point_mm2)
    apart = neutral_and_earth_apart(not _has_earth(job, laid))
    made = _try(job, replace(job.basis.cited(alike[0]), size_mm2=laid.size_mm2), AS_LAID)
    return Made(made.out, (kind, apart, size.with_caution(SENSOR_APART), *made.checks))


def _has_earth(job: Job, laid: Laid) -> bool:
    """Return whether a cable that lies there has an earth of its own, as its kind has if unsaid."""
    return if_said(lambda: job.home.laid[laid.cable].earth_core, True)


def stocked(basis: Basis, family: CableFamily, phases: int, with_data: bool) -> Iterator[Stock]:
    """Yield the cables of a family that the firm fits, smallest first.

    With data cores where the family is bought with them; else a data cable runs beside.
    """
    bought = [
        each
        for each in basis.catalogue.cables
        if each.family is family
        and each.cores == CORES[phases]
        and each.size_mm2 >= basis.rules.least_point_mm2
    ]
    data = with_data and any(each.data_cores for each in bought)
    for each in sorted(bought, key=lambda row: row.size_mm2):
        if each.data_cores is data:
            yield basis.cited(each)


def _try(job: Job, stock: Stock, governed_by: str) -> Made[Cable]:
    """Return one size with everything it comes to and all its checks."""
    book, phases, family = job.basis.book, job.point.phases, stock.family
    legs = tuple(leg_capacity(book, family, phases, stock.size_mm2, leg) for leg in job.way.legs)
    length_m = job.way.length_m
    own_v = drop(drop_mv(book, family, phases, stock.size_mm2), job.setting_a, length_m)
    one_line_v = drop(drop_mv(book, family, 1, stock.size_mm2), job.setting_a, length_m)
    own_share = drop_share(own_v, nominal(book, phases))
    fed = job.feed.length_m > 0
    earth_mm2 = earth_core_mm2(book, family, stock.size_mm2)
    r1r2_ohm = cores_ohm(book, family, stock.size_mm2, earth_mm2, length_m)
    before = loop_before(job.home, job.basis, job.earthing, job.feed.r1r2_ohm)
    out = Cable(
        cable=stock.id,
        family=family,
        cores=stock.cores,
        size_mm2=stock.size_mm2,
        earth_mm2=earth_mm2,
        overall_mm=stock.overall_mm,
        length_m=length_m,
        capacity_a=least_capacity(tuple(leg.capacity_a for leg in legs)),
        worst_leg=worst(legs).leg,
        drop_v=drop_in_all((job.feed.drop_v, own_v)) if fed else own_v,
        drop_share=share_lost(job.feed.drop_share, own_share) if fed else own_share,
        drop_to_neutral_v=(
            drop_in_all((job.feed.drop_to_neutral_v, one_line_v)) if fed else one_line_v
        ),
        r1r2_ohm=r1r2_ohm,
        zs_ohm=loop(before, r1r2_ohm),
        zs_limit_ohm=loop_limit_ohm(book, job.earthing, job.device),
        conductor_c=used_at_c(book, family),
        governed_by=governed_by,
    )
    return Made(out, _checks(job, out, worst(legs), _may_protect(job, out.capacity_a, legs)))


def worst(legs: tuple[LegCapacity, ...]) -> LegCapacity:
    """Return the leg on which the cable carries least."""
    return min(legs, key=lambda leg: leg.capacity_a)


def _may_protect(job: Job, capacity_a: Amperes, legs: tuple[LegCapacity, ...]) -> Amperes:
    """Return the largest rating that may protect the cable: less than it carries in the ground."""
    if not any(leg.how in IN_GROUND for leg in job.way.legs):
        return capacity_a
    each = zip(legs, job.way.legs, strict=True)
    book = job.basis.book
    return least_capacity(tuple(may_protect(book, leg.capacity_a, run.how) for leg, run in each))


def _checks(job: Job, out: Cable, leg: LegCapacity, may_a: Amperes) -> tuple[Check, ...]:
    """Return every limit of one size, in the order of the work."""
    book = job.basis.book
    return (
        family_suits_way(leg.leg, leg.refused),
        cable_carries_device(job.device.rating_a, may_a),
        drop_within_limit(out.drop_share, job.basis.rules.drop_share),
        loop_within_limit(out.zs_ohm, out.zs_limit_ohm).mended_by(*_network_earth(job)),
        cut_off(book, job.earthing, job.device, out.zs_ohm).mended_by(*_network_earth(job)),
        earth_core_check(book, out.family, out.earth_mm2, job.device),
        terminal_takes_conductor(out.size_mm2, job.point.terminal_mm2),
        terminal_stays_cool(out.conductor_c, job.point.terminal_c),
        gland_holds_cable(out.overall_mm, job.point.gland_least_mm, job.point.gland_mm),
    )


def _network_earth(job: Job) -> tuple[Remedy, ...]:
    """Return who must mend the earth that the point leans on, where it is the network's."""
    return network_earth(job.home, job.basis) if job.earthing == NETWORK_EARTH else ()


def _first_failed(checks: tuple[Check, ...]) -> Check | None:
    """Return the first check that fails, if any does."""
    return next((each for each in checks if each.outcome is Outcome.FAIL), None)


def _goes_in(out: Cable, point: ChargePoint) -> bool:
    """Say whether terminals and entry of the point take the cable."""
    return out.size_mm2 <= point.terminal_mm2 and out.overall_mm <= point.gland_mm


def _none(family: CableFamily, way: Route) -> Cable:
    """Return what stands where no cable of the family can be bought; its stage has failed."""
    return Cable(
        cable="",
        family=family,
        cores=Count(0),
        size_mm2=SquareMm(0.0),
        earth_mm2=SquareMm(0.0),
        overall_mm=Millimetres(0.0),
        length_m=way.length_m,
        capacity_a=Amperes(0.0),
        worst_leg=way.legs[0].id,
        drop_v=Volts(0.0),
        drop_share=Share(0.0),
        drop_to_neutral_v=Volts(0.0),
        r1r2_ohm=Ohms(0.0),
        zs_ohm=Ohms(0.0),
        zs_limit_ohm=Ohms(0.0),
        conductor_c=Celsius(0.0),
        governed_by="",
    )
