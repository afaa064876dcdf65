"""What makes a limiter one that counts: it fails safe, it is locked, it was proved."""

from __future__ import annotations

from ampwright.foundations.checks import Finding, at_most, holds, requires
from ampwright.foundations.quantity import Amperes, Seconds
from ampwright.foundations.source import Place, Trust

SCHEMES = Place("a network operator's page", "", "customer limitation schemes")
PROOF = Place("EREC G100", "2, amendment 1", "tests at commissioning", Trust.MEMORY)


@requires(
    "falls to the floor or off when its sensor, link or power is lost", unit="A", place=SCHEMES
)
def limiter_fails_safe(falls_to_a: Amperes, floor_a: Amperes) -> Finding:
    """A limiter that loses its sensor, its link or its power lets the car have next to nothing.

    The larger of what it falls to after each of the three; nought where it stops.

    Examples
    --------
    >>> limiter_fails_safe(Amperes(6.0), Amperes(6.0)).outcome.value
    'pass'
    """
    return at_most(falls_to_a, floor_a)


@requires("its setting is locked", place=SCHEMES)
def limiter_locked(locked: bool) -> Finding:
    """Nobody but whoever may do so can turn the limit up.

    By password, PIN or seal, and with the operator's consent where it was told the figure.

    Examples
    --------
    >>> limiter_locked(False).outcome.value
    'fail'
    """
    return holds(locked, "" if locked else "anyone can turn it up")


@requires("back within the limit in time", unit="s", place=SCHEMES)
def limiter_quick_enough(t: Seconds, limit: Seconds) -> Finding:
    """After a step of load the house is back within its limit before anything grows hot.

    From the step to the last reading above the limit.

    Examples
    --------
    >>> limiter_quick_enough(Seconds(12.0), Seconds(15.0)).outcome.value
    'pass'
    """
    return at_most(t, limit)


@requires("proved on the day", place=PROOF)
def limiter_proved(proved: bool) -> Finding:
    """Limit, lost sensor, lost link and lost power were each tried and written down.

    After it is fitted and before it is relied on.

    Examples
    --------
    >>> limiter_proved(True).outcome.value
    'pass'
    """
    return holds(proved, "" if proved else "not proved yet")
