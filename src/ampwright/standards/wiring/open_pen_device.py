"""What a device against a broken protective neutral must do when it has noticed."""

from __future__ import annotations

from ampwright.foundations.checks import Finding, at_least, at_most, holds, requires
from ampwright.foundations.quantity import Seconds

from ..places import wiring

DEVICE = wiring(
    "722.411.4.1 (iii), (iv)", "a device maker's page and a trade magazine, spring 2020"
)


@requires("opens within its time", unit="s", place=DEVICE)
def open_pen_device_quick(t: Seconds, limit: Seconds) -> Finding:
    """The device has opened before anybody is held to the car for long.

    From the moment the voltage leaves its bounds.

    Examples
    --------
    >>> open_pen_device_quick(Seconds(5.0), Seconds(5.0)).outcome.value
    'pass'
    """
    return at_most(t, limit)


@requires("no shorter dip or rise opens it", unit="s", place=wiring("722.411.4.1, A722.4"))
def open_pen_device_patient(t: Seconds, ignores: Seconds) -> Finding:
    """The device may let a short dip or rise pass, so that a motor starting does not open it.

    ``t`` is the shortest disturbance that opens it and ``ignores`` how long it may wait; wanted
    where nuisance matters, not asked by the rule.

    Examples
    --------
    >>> open_pen_device_patient(Seconds(4.0), Seconds(4.0)).outcome.value
    'pass'
    """
    return at_least(t, ignores)


@requires("opens every live conductor and the earth", place=DEVICE)
def open_pen_device_opens_all(live: bool, earth: bool) -> Finding:
    """The device takes the car off the supply's earth as well as off its lines and neutral.

    Contacts fit for isolation.

    Examples
    --------
    >>> open_pen_device_opens_all(True, False).why
    'the earth stays joined'
    """
    if not live:
        return holds(False, "a live conductor stays joined")
    return holds(earth, "" if earth else "the earth stays joined")


@requires("stays open while the voltage is out of bounds", place=DEVICE)
def open_pen_device_stays_open(closes_again: bool) -> Finding:
    """The device does not close again by itself while the fault is there.

    It may be closed by hand, or by itself once the voltage is healthy.

    Examples
    --------
    >>> open_pen_device_stays_open(True).outcome.value
    'fail'
    """
    return holds(not closes_again, "it closes again on the fault" if closes_again else "")
