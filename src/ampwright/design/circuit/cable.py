"""The cable of the point's circuit: sizes tried upward until every limit holds."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import floor
from typing import Final

from ampwright.firm.basis import Basis
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
from ampwright.standards.wiring.voltage_drop import (
    drop,
    drop_in_all,
    drop_share,
    drop_within_limit,
    longest_run,
)
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.capacity import CableFamily

from ..earthing.network import network_earth
from ..route import Laid, Route, paced
from .capacity import family_suits_way
from .cut_off import cut_off
from .device import Guard
from .faults import NETWORK_EARTH, earth_core_check, loop_before, loop_limit_ohm
from .feed import Feed, nominal
from .sizes import CORES, Entry, Size

METHOD: Final = Place("Ampwright", at="method, the cable of the circuit", trust=Trust.DERIVED)
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
    guard: Guard
    feed: Feed
    earthing: str
    setting_a: Amperes
    phases: int
    entry: Entry


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


@computes("dU", "V", formula="U0 * (limit - before)", place=METHOD)
def volts_to_lose(U0: Volts, limit: Share, before: Share) -> Volts:  # noqa: N803 - as printed
    """Return the volts that a circuit may still lose behind its feed.

    Examples
    --------
    >>> volts_to_lose(Volts(230.0), Share(0.05), Share(0.01))
    9.2
    """
    return Volts(U0 * (limit - before))


def cable(
    home: Home,
    basis: Basis,
    way: Route,
    bought: tuple[Size, ...],
    guard: Guard,
    feed: Feed,
    earthing: str,
    family: CableFamily,
    setting_a: Amperes,
    phases: int,
    entry: Entry,
) -> Made[Cable]:
    """Return the smallest of the sizes that meets every limit along the way.

    From the least the firm fits to the largest the point takes; where none holds, the
    largest of those with what it fails, and how far it would reach. Resistance and earth core
    as copper of ordinary stranding at the temperature that the terminals bear. Raises
    ``Unanswered`` where no way has been paced.
    """
    way = paced(way)
    job = Job(home, basis, way, guard, feed, earthing, setting_a, phases, entry)
    wanted = f"{family.value} cable of {CORES[phases]} cores"
    if way.laid is not None:
        return _as_laid(job, way.laid, bought, family, wanted)
    if not bought:
        return Made(_none(family, way), (cable_offered(False, wanted),))
    chosen, *further = bought
    made = _try(job, chosen, LEAST)
    for size in further:
        failed = _first_failed(made.checks)
        if failed is None:
            break
        larger = _try(job, size, failed.requirement.says)
        if not _goes_in(larger.out, entry):
            break
        chosen, made = size, larger
    return Made(made.out, (cable_offered(True, wanted), *_told(job, chosen, made)))


def _as_laid(
    job: Job, laid: Laid, alike: tuple[Size, ...], family: CableFamily, wanted: str
) -> Made[Cable]:
    """Return what a cable comes to that lies there already: its own kind and size, as they are."""
    kind = laid_kind(family.value, laid.kind)
    if kind.outcome is Outcome.FAIL or not alike:
        known = cable_offered(bool(alike), f"{wanted}, {laid.size_mm2:g} mm², to judge it by,")
        return Made(_none(family, job.way), (kind, known))
    thick = laid_size(laid.size_mm2, job.basis.rules.least_point_mm2).with_caution(SENSOR_APART)
    apart = neutral_and_earth_apart(not _has_earth(job, laid))
    size = alike[0]
    made = _try(job, size, AS_LAID)
    return Made(made.out, (kind, apart, thick, *_told(job, size, made)))


def _has_earth(job: Job, laid: Laid) -> bool:
    """Return whether a cable that lies there has an earth of its own, as its kind has if unsaid."""
    return if_said(lambda: job.home.laid[laid.cable].earth_core, True)


def _try(job: Job, size: Size, governed_by: str) -> Made[Cable]:
    """Return one size with everything it comes to and all its checks."""
    stock, book, length_m = size.stock, job.basis.book, job.way.length_m
    own_v = drop(size.drop_mv, job.setting_a, length_m)
    one_line_v = drop(size.one_line_mv, job.setting_a, length_m)
    own_share = drop_share(own_v, nominal(book, job.phases))
    fed = job.feed.length_m > 0
    before = loop_before(job.home, job.basis, job.earthing, job.feed.r1r2_ohm)
    out = Cable(
        cable=stock.id,
        family=stock.family,
        cores=stock.cores,
        size_mm2=stock.size_mm2,
        earth_mm2=size.earth_mm2,
        overall_mm=stock.overall_mm,
        length_m=length_m,
        capacity_a=size.capacity_a,
        worst_leg=size.worst.leg,
        drop_v=drop_in_all((job.feed.drop_v, own_v)) if fed else own_v,
        drop_share=share_lost(job.feed.drop_share, own_share) if fed else own_share,
        drop_to_neutral_v=(
            drop_in_all((job.feed.drop_to_neutral_v, one_line_v)) if fed else one_line_v
        ),
        r1r2_ohm=size.r1r2_ohm,
        zs_ohm=loop(before, size.r1r2_ohm),
        zs_limit_ohm=loop_limit_ohm(book, job.earthing, job.guard),
        conductor_c=size.conductor_c,
        governed_by=governed_by,
    )
    return Made(out, _checks(job, out, size))


def _checks(job: Job, out: Cable, size: Size) -> tuple[Check, ...]:
    """Return every limit of one size, in the order of the work."""
    book = job.basis.book
    return (
        family_suits_way(size.worst.leg, size.worst.refused),
        cable_carries_device(job.guard.rating_a, size.may_protect_a),
        drop_within_limit(out.drop_share, job.basis.rules.drop_share),
        _mended(job, loop_within_limit(out.zs_ohm, out.zs_limit_ohm)),
        _mended(job, cut_off(book, job.earthing, job.guard, out.zs_ohm)),
        earth_core_check(book, out.family, out.earth_mm2, job.guard),
        terminal_takes_conductor(out.size_mm2, job.entry.terminal_mm2),
        terminal_stays_cool(out.conductor_c, job.entry.terminal_c),
        gland_holds_cable(out.overall_mm, job.entry.gland_least_mm, job.entry.gland_mm),
    )


def _told(job: Job, size: Size, made: Made[Cable]) -> tuple[Check, ...]:
    """Return the checks of what was chosen; one that loses too much says how far it reaches."""
    too_far = drop_within_limit.clause  # type: ignore[attr-defined]
    return tuple(
        replace(each, why=_reach(job, size))
        if each.outcome is Outcome.FAIL and each.requirement is too_far
        else each
        for each in made.checks
    )


def _reach(job: Job, size: Size) -> str:
    """Say how far a size reaches at its setting before it loses too much."""
    limit, before = job.basis.rules.drop_share, job.feed.drop_share
    if before >= limit:
        return "the feed before it loses as much already"
    left_v = volts_to_lose(nominal(job.basis.book, job.phases), limit, before)
    reach_m = longest_run(left_v, size.drop_mv, job.setting_a)
    said = f"{size.stock.size_mm2:g} mm² at {job.setting_a:g} A reaches {floor(reach_m)} m"
    return f"{said}, and the way is {job.way.length_m:g} m"


def _mended(job: Job, check: Check) -> Check:
    """Return a check with who must mend the network's earth, where it fails for that."""
    if check.outcome is not Outcome.FAIL or job.earthing != NETWORK_EARTH:
        return check
    return check.mended_by(*network_earth(job.home, job.basis))


def _first_failed(checks: tuple[Check, ...]) -> Check | None:
    """Return the first check that fails, if any does."""
    return next((each for each in checks if each.outcome is Outcome.FAIL), None)


def _goes_in(out: Cable, entry: Entry) -> bool:
    """Say whether terminals and entry of the point take the cable."""
    return out.size_mm2 <= entry.terminal_mm2 and out.overall_mm <= entry.gland_mm


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
