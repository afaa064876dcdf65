"""Residual current devices: the one that guards the point and the ones in front of it."""

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
from ampwright.foundations.quantity import Amperes, Milliamperes, Ohms, Seconds, Share, Volts
from ampwright.foundations.working import computes

from ..places import wiring

MAGAZINE = "a trade magazine, winter 2018"
ELECTRODE = wiring("411.5.3", "an engineers' forum")


class RcdKind(StrEnum):
    """What residual current a device is made to see, by the letter on it."""

    NONE = "none"
    AC = "AC"
    A = "A"
    F = "F"
    B = "B"


PULSATING = (RcdKind.A, RcdKind.F, RcdKind.B)
"""Kinds that see pulsating d.c. as well as a.c.: the least a charge point may have."""
SMALL_DC_ONLY = (RcdKind.AC, RcdKind.A, RcdKind.F)
"""Kinds that a smooth direct current beyond a few milliamperes can blind."""


@requires("own RCD ≤ 30 mA", unit="mA", place=wiring("722.531.3.1"))
def rcd_protects_point(kind: str, ma: Milliamperes, limit_ma: Milliamperes) -> Finding:
    """The point has a residual current device of a kind that sees its faults, and quick enough.

    ``kind`` and ``ma`` of the device in the board or the one built into the point.

    Examples
    --------
    >>> rcd_protects_point("A", Milliamperes(30.0), Milliamperes(30.0)).outcome.value
    'pass'
    """
    if kind == RcdKind.NONE:
        return holds(False, "there is none")
    if kind not in PULSATING:
        return holds(False, f"Type {kind} does not see pulsating direct current")
    return at_most(ma, limit_ma)


@requires(
    "smooth d.c. is seen: Type B, or Type A or F with 6 mA", place=wiring("722.531.3.101", MAGAZINE)
)
def dc_fault_covered(rcd_kind: str, dc_6ma: bool) -> Finding:
    """A smooth direct current from the car cannot flow unseen.

    For points with a socket or a lead to BS EN 62196; the detector to IEC 62955 is often
    inside the point.

    Examples
    --------
    >>> dc_fault_covered("A", True).outcome.value, dc_fault_covered("A", False).outcome.value
    ('pass', 'fail')
    """
    if rcd_kind == RcdKind.B:
        return holds(True, "Type B sees it")
    if rcd_kind not in PULSATING:
        return holds(False, f"Type {rcd_kind} does not count, with or without a 6 mA detector")
    return holds(dc_6ma, "the 6 mA detector opens" if dc_6ma else "no 6 mA detector")


@requires("no RCD of Type AC in front", place=wiring("531.3.3"))
def no_blind_rcd_upstream(kind: str) -> Finding:
    """A device in front of the point is not one that a few milliamperes of d.c. can blind.

    ``kind`` of the device the feed passes through, ``none`` where it passes through none.

    Examples
    --------
    >>> no_blind_rcd_upstream("AC").outcome.value, no_blind_rcd_upstream("A").outcome.value
    ('fail', 'pass')
    """
    if kind == RcdKind.NONE:
        return not_applicable("the feed passes through none")
    return holds(kind in PULSATING, f"a device of Type {kind} stands in front")


@requires("nothing but Type B in front of a point that relies on Type B", place=wiring("531.3.3"))
def type_b_not_behind_lesser(kind: str, own_kind: str, dc_6ma: bool) -> Finding:
    """A point that may pass more than 6 mA of smooth d.c. does not blind a device in front.

    ``kind`` of the device in front; a 6 mA detector in the point settles it.

    Examples
    --------
    >>> type_b_not_behind_lesser("A", "B", False).outcome.value
    'fail'
    """
    if own_kind != RcdKind.B or dc_6ma:
        return not_applicable("the point opens at 6 mA of smooth direct current")
    return holds(kind not in SMALL_DC_ONLY, f"a device of Type {kind} stands in front")


@requires("one RCD for one point", place=wiring("722.531.3.1"))
def own_rcd_not_shared(points_behind: int, other_circuits_behind: int) -> Finding:
    """The device that guards the point guards nothing else.

    Counts what is fed through it, the point itself included.

    Examples
    --------
    >>> own_rcd_not_shared(1, 0).outcome.value, own_rcd_not_shared(1, 3).outcome.value
    ('pass', 'fail')
    """
    if other_circuits_behind > 0:
        return holds(False, "other circuits hang on the same device")
    return at_most(points_behind, 1)


@requires("no undelayed RCD shared with other circuits in front", place=wiring("314.1, 531.3.2"))
def no_shared_rcd_upstream(kind: str, delayed: bool, other_circuits_behind: int) -> Finding:
    """A fault or leakage at the point does not take other circuits of the house with it.

    ``kind`` of the device the feed passes through, ``none`` where it passes through none.

    Examples
    --------
    >>> no_shared_rcd_upstream("A", False, 3).outcome.value
    'fail'
    """
    if kind == RcdKind.NONE:
        return not_applicable("the feed passes through none")
    if delayed:
        return holds(True, "the device in front waits")
    return at_most(other_circuits_behind, 0)


@computes("I", "mA", formula="share * Idn", place=wiring("531.3.2"))
def leakage_limit(Idn: Milliamperes, share: Share) -> Milliamperes:
    """Current that may flow to earth in normal service behind a residual current device.

    ``share`` is 0.3 of its rated residual current.

    Examples
    --------
    >>> leakage_limit(Milliamperes(30.0), Share(0.3))
    9.0
    """
    return Milliamperes(share * Idn)


@requires("standing leakage ≤ its limit", unit="mA", place=wiring("531.3.2"))
def leakage_leaves_room(leakage: Milliamperes, limit: Milliamperes) -> Finding:
    """What leaks to earth all the time does not bring a device near its tripping.

    The sum of everything behind one device, from makers' figures or as measured.

    Examples
    --------
    >>> leakage_leaves_room(Milliamperes(3.5), Milliamperes(9.0)).outcome.value
    'pass'
    """
    return at_most(leakage, limit)


@requires("RCD breaks all live conductors", place=wiring("722.531.3.1"))
def rcd_breaks_all_live(poles: int, live_conductors: int) -> Finding:
    """The device opens the neutral as well as every line.

    Two poles on a single-phase circuit, four on a three-phase one.

    Examples
    --------
    >>> rcd_breaks_all_live(4, 4).outcome.value
    'pass'
    """
    return at_least(poles, live_conductors)


@computes("IΔn", "mA", formula="times * Idn_own", place=wiring("536.4.1.4", doubtful=True))
def front_rcd_least(Idn_own: Milliamperes, times: Share) -> Milliamperes:
    """Least rated residual current of a delayed device that waits for the one behind it.

    ``times`` is 3 by the usual rule.

    Examples
    --------
    >>> front_rcd_least(Milliamperes(30.0), Share(3.0))
    90.0
    """
    return Milliamperes(times * Idn_own)


@requires(
    "front RCD delayed, and its IΔn ≥ the least",
    unit="mA",
    place=wiring("536.4.1.4", doubtful=True),
)
def front_rcd_waits(delayed: bool, ma: Milliamperes, least_ma: Milliamperes) -> Finding:
    """A fault at the point opens its own device and leaves the rest of the house on.

    For a device in front of all, as rod-earthed homes need.

    Examples
    --------
    >>> front_rcd_waits(True, Milliamperes(100.0), Milliamperes(90.0)).outcome.value
    'pass'
    """
    if not delayed:
        return holds(False, "the device in front is not of the delayed kind")
    return at_least(ma, least_ma)


@computes("RA_max", "Ω", formula="Ut / Idn_a", place=ELECTRODE)
def electrode_limit(Ut: Volts, Idn_a: Amperes) -> Ohms:
    """Largest electrode resistance that a residual current device still guards.

    ``Ut`` is the touch voltage allowed. A steady earth wants far less.

    Examples
    --------
    >>> electrode_limit(Volts(50.0), Amperes(0.03))
    1666.7
    """
    return Ohms(Ut / Idn_a)


@requires(
    "trip time ≤ the limit",
    unit="s",
    place=wiring("643.7.1, 643.8", "the engineers' institution's magazine"),
)
def rcd_trips_in_time(t: Seconds, limit: Seconds) -> Finding:
    """The device opens in time in an alternating current test at its rated residual current.

    One test whatever the kind; delayed devices also have a least time.

    Examples
    --------
    >>> rcd_trips_in_time(Seconds(0.028), Seconds(0.3)).outcome.value
    'pass'
    """
    return at_most(t, limit)


@requires("trip time ≥ the delay", unit="s", place=wiring("643.7.1"))
def delayed_rcd_waits_long_enough(t: Seconds, delay: Seconds) -> Finding:
    """A delayed device does not open before those behind it had their time.

    For devices marked S only.

    Examples
    --------
    >>> delayed_rcd_waits_long_enough(Seconds(0.2), Seconds(0.13)).outcome.value
    'pass'
    """
    return at_least(t, delay)
