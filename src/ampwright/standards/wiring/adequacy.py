"""Whether what is already there can carry what is asked of it."""

from __future__ import annotations

from ampwright.foundations.checks import Finding, at_most, holds, not_applicable, requires
from ampwright.foundations.quantity import Amperes, Metres
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

from ..places import wiring

ADEQUATE = wiring("132.16", "the operators' association page on connecting to the networks")
SERVICE = wiring("433.1.1 (ii), 434.3")
TAILS = Place("network operators' usual rule", at="meter tails", trust=Trust.COMMON_PRACTICE)


@computes("Irated", "A", formula="min(fuse, switch, tails)", place=ADEQUATE)
def supply_rating(fuse: Amperes, switch: Amperes, tails: Amperes) -> Amperes:
    """What the supply can carry on each phase: the weakest of fuse, main switch and tails.

    Says nothing of what the network behind the fuse can give.

    Examples
    --------
    >>> supply_rating(Amperes(80.0), Amperes(100.0), Amperes(100.0))
    80.0
    """
    return Amperes(min(fuse, switch, tails))


@requires("service fuse ≤ tails", unit="A", place=SERVICE)
def tails_carry_fuse(fuse: Amperes, tails: Amperes) -> Finding:
    """The tails bear what the service fuse lets through for hours.

    Tails in free air or clipped, at the capacity of their size.

    Examples
    --------
    >>> tails_carry_fuse(Amperes(100.0), Amperes(100.0)).outcome.value
    'pass'
    """
    return at_most(fuse, tails)


@requires("service fuse ≤ main switch", unit="A", place=wiring("536.4.202"))
def switch_carries_fuse(fuse: Amperes, switch: Amperes) -> Finding:
    """The main switch bears what the service fuse lets through for hours.

    A switch has no overload protection of its own.

    Examples
    --------
    >>> switch_carries_fuse(Amperes(100.0), Amperes(80.0)).outcome.value
    'fail'
    """
    return at_most(fuse, switch)


@requires("demand ≤ what the supply can carry", unit="A", place=ADEQUATE)
def supply_carries_demand(demand: Amperes, capacity: Amperes) -> Finding:
    """No addition is made unless what is there can carry the altered load.

    On the worst phase; demand by whichever method the designer states.

    Examples
    --------
    >>> supply_carries_demand(Amperes(53.65), Amperes(80.0)).outcome.value
    'pass'
    """
    return at_most(demand, capacity)


@requires("feed from the meter ≤ the usual limit", unit="m", place=TAILS)
def feed_short_enough(L: Metres, limit: Metres, own_device: bool) -> Finding:
    """A feed without a device of its own stays within what operators let run behind their fuse.

    A longer one has its own device at the meter end.

    Examples
    --------
    >>> feed_short_enough(Metres(3.0), Metres(3.0), False).outcome.value
    'pass'
    >>> feed_short_enough(Metres(5.0), Metres(3.0), True).why
    'it has a device of its own at the meter end'
    """
    if own_device:
        return not_applicable("it has a device of its own at the meter end")
    return at_most(L, limit)


@requires("the service equipment is sound", place=ADEQUATE)
def service_sound(condition: str) -> Finding:
    """Nothing is connected to a service whose equipment is dangerous or doubtful.

    ``condition`` is ``sound``, ``doubtful`` or ``dangerous`` as a competent person saw it.

    Examples
    --------
    >>> service_sound("dangerous").why
    'the service equipment is dangerous'
    """
    sound = condition == "sound"
    return holds(sound, "" if sound else f"the service equipment is {condition}")
