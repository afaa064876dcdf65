"""What guards a point outdoors on a combined earth: by which proof, and what its device does."""

from __future__ import annotations

from collections.abc import Iterator

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.checks import Check, Finding, Outcome, at_most, requires
from ampwright.foundations.quantity import Volts
from ampwright.foundations.rulings import Ruled
from ampwright.standards.wiring.earthing import (
    COUNTS_AS,
    pme_point_protected,
    touch_voltage_limited,
    window_sees_all_phases,
)
from ampwright.standards.wiring.earthing_kind import PME_PROOF, Proof, ProofCase
from ampwright.standards.wiring.open_pen import MILLMAN, unseen_by_one_window
from ampwright.standards.wiring.open_pen_device import (
    open_pen_device_opens_all,
    open_pen_device_patient,
    open_pen_device_quick,
    open_pen_device_stays_open,
)
from ampwright.survey.home import Home
from ampwright.tables.charging import open_pen_time, touch_limit_v, window_high_v
from ampwright.tables.supply_limits import nominal_v

from .open_pen import with_neutral_broken, worst_loads

BY_SUMS = (Proof.LOADS, Proof.ELECTRODE)
"""Proofs that rest on what the earth terminal would stand at, not on a device."""
LOOK_AGAIN = (
    "nothing opens this point if the street's neutral breaks: it rests on the electrode joined to "
    "the earth terminal; read it again each year, and write it on the certificate"
)


@requires("what a window on one line of three does not see ≤ the touch limit", unit="V",
          place=MILLMAN)  # fmt: skip
def unseen_volts_harmless(Ut: Volts, limit: Volts) -> Finding:  # noqa: N803 - as in the clause
    """A detection that watches one line of three may leave the earth terminal high, unseen.

    With the other two lines loaded and the watched one idle.

    Examples
    --------
    >>> unseen_volts_harmless(Volts(127.0), Volts(70.0)).outcome.value
    'fail'
    """
    return at_most(Ut, limit)


def proof_of(home: Home, basis: Basis, point: ChargePoint, outdoors: bool) -> Ruled[Proof]:
    """Return by which proof a point may use a combined earth, at the worst credible unbalance."""
    broken = with_neutral_broken(home, basis, worst_loads(home, basis))
    case = ProofCase(
        outdoors=outdoors,
        combined=True,
        phases=home.supply.phases,
        bare_v=broken.touch_v,
        rod_v=broken.held_v,
        limit_v=touch_limit_v(basis.book),
        detection=point.detection,
    )
    return PME_PROOF.decide(case)


def guards(
    home: Home, basis: Basis, point: ChargePoint, proof: Ruled[Proof], outdoors: bool
) -> Iterator[Check]:
    """Yield what a point on a combined earth must satisfy, by the proof that it goes by."""
    phases = home.supply.phases
    if proof.outcome in BY_SUMS:
        broken = with_neutral_broken(home, basis, worst_loads(home, basis))
        held = touch_voltage_limited(broken.held_v, touch_limit_v(basis.book))
        yield held.with_caution(LOOK_AGAIN)
        return
    yield pme_point_protected(point.detection, phases, outdoors)
    if point.detection in COUNTS_AS and outdoors:
        yield from _device(basis, point)
    if basis.rules.watch_every_line:
        yield from _watches(basis, point, phases)


def _device(basis: Basis, point: ChargePoint) -> Iterator[Check]:
    """Yield what a device against a broken neutral does once it has noticed, as its maker says."""
    kind, book = basis.cited(point), basis.book
    yield open_pen_device_quick(kind.pen_opens_within_s, open_pen_time(book))
    yield open_pen_device_opens_all(point.pen_opens_live, point.pen_opens_earth)
    yield open_pen_device_stays_open(point.pen_closes_on_fault)
    if basis.rules.wait_out_dips:
        yield open_pen_device_patient(kind.pen_ignores_s, open_pen_time(book, "may ignore"))


def _watches(basis: Basis, point: ChargePoint, phases: int) -> Iterator[Check]:
    """Yield whether the detection watches every line, with what it misses on one of three."""
    check = window_sees_all_phases(point.detection, point.detects_three_phase, phases)
    yield check
    if check.outcome is Outcome.FAIL:
        unseen_v = unseen_by_one_window(nominal_v(basis.book), window_high_v(basis.book))
        yield unseen_volts_harmless(unseen_v, touch_limit_v(basis.book))
