"""What Section 722 and its neighbours ask of the point, its circuit and its place."""

from __future__ import annotations

from ampwright.foundations.checks import Finding, at_least, at_most, holds, requires
from ampwright.foundations.quantity import Celsius, Metres, Millimetres, SquareMm, Volts
from ampwright.foundations.source import Place, Trust

from ..places import wiring

GLAND = Place("makers' instructions", at="range of a gland", trust=Trust.COMMON_PRACTICE)
WINDOW = wiring("722.411.4.1 (iv)", "a trade association magazine, spring 2020")


@requires("a circuit of its own", place=wiring("722.314", "Approved Document S, regulation 44J"))
def own_circuit(feeds_only_point: bool) -> Finding:
    """The point has a final circuit that feeds nothing else.

    Two outlets of one charge point that share a setting count as one.

    Examples
    --------
    >>> own_circuit(False).outcome.value
    'fail'
    """
    return holds(feeds_only_point, "" if feeds_only_point else "the circuit feeds something else")


@requires(
    "no combined neutral and earth in the circuit", place=wiring("722.312.2.1", "a tutor's outline")
)
def neutral_and_earth_apart(pen_in_circuit: bool) -> Finding:
    """Neutral and earth run apart all along the circuit.

    Whatever the supply itself does before the origin.

    Examples
    --------
    >>> neutral_and_earth_apart(False).outcome.value
    'pass'
    """
    return holds(not pen_in_circuit)


@requires("volts at the point ≥ the window's low end", unit="V", place=WINDOW)
def window_held(U: Volts, low: Volts) -> Finding:
    """Voltage at the point stays above where its open-PEN detection opens it.

    Lowest voltage at the origin less every drop; ``low`` with whatever margin the firm asks.

    Examples
    --------
    >>> window_held(Volts(206.4), Volts(207.0)).outcome.value
    'fail'
    """
    return at_least(U, low)


@requires("volts at the point ≤ the window's high end", unit="V", place=WINDOW)
def window_held_high(U: Volts, high: Volts) -> Finding:
    """Voltage at the point stays below where its open-PEN detection opens it.

    Highest voltage at the origin with nothing drawn; streets full of sun run high.

    Examples
    --------
    >>> window_held_high(Volts(253.0), Volts(253.0)).outcome.value
    'pass'
    """
    return at_most(U, high)


@requires("surge protection present", place=wiring("443.4.1"))
def surge_protection_present(present: bool) -> Finding:
    """Surges from the street are led away before they reach the point.

    The owner of a home may decline where the loss would be bearable, in writing.

    Examples
    --------
    >>> surge_protection_present(True).outcome.value
    'pass'
    """
    return holds(present, "" if present else "no surge protection in the board that feeds it")


@requires("leads of the surge device ≤ their limit", unit="m", place=wiring("534.4.8"))
def surge_leads_short(L: Metres, limit: Metres) -> Finding:
    """The surge device's own leads are too short to add much to the voltage it lets pass.

    Line side and earth side together.

    Examples
    --------
    >>> surge_leads_short(Metres(0.4), Metres(0.5)).outcome.value
    'pass'
    """
    return at_most(L, limit)


@requires("can be isolated, neutral included", place=wiring("462.1, 537.2"))
def isolation_present(breaks_all_live: bool) -> Finding:
    """The circuit can be made dead in every live conductor to work on the point.

    Where it can be secured off; one within sight of the point is good practice.

    Examples
    --------
    >>> isolation_present(True).outcome.value
    'pass'
    """
    return holds(breaks_all_live, "" if breaks_all_live else "a live conductor stays joined")


@requires("isolation can be secured", place=wiring("462.3, 537.2.4"))
def isolation_secured(lockable: bool) -> Finding:
    """Nobody can put the circuit back on while somebody works on the point.

    A lock, a box that locks or a device in the worker's sight and reach.

    Examples
    --------
    >>> isolation_secured(False).outcome.value
    'fail'
    """
    return holds(lockable, "" if lockable else "it cannot be locked off")


@requires("protection against dust and water ≥ what the place asks", place=wiring("722.512.2"))
def point_outdoors_rated(ip: str, least_ip: str) -> Finding:
    """A point outdoors keeps out the weather.

    Codes such as ``IP54``: each of the two digits must reach that of the least.

    Examples
    --------
    >>> point_outdoors_rated("IP54", "IP44").outcome.value
    'pass'
    """
    solids, water = ip[2], ip[3]
    return holds(solids >= least_ip[2] and water >= least_ip[3], f"{ip} against {least_ip}")


@requires("lowest outlet within reach", unit="m", place=wiring("722.55.101", doubtful=True))
def outlet_not_too_low(h: Metres, low: Metres) -> Finding:
    """The outlet stands high enough to stay clear of splash and knocks.

    Lowest part of the outlet above the ground.

    Examples
    --------
    >>> outlet_not_too_low(Metres(0.9), Metres(0.5)).outcome.value
    'pass'
    """
    return at_least(h, low)


@requires("highest outlet within reach", unit="m", place=wiring("722.55.101", doubtful=True))
def outlet_not_too_high(h: Metres, high: Metres) -> Finding:
    """The outlet can be reached by whoever uses it.

    Lowest part of the outlet above the ground; controls have tighter limits.

    Examples
    --------
    >>> outlet_not_too_high(Metres(0.9), Metres(1.5)).outcome.value
    'pass'
    """
    return at_most(h, high)


@requires("conductor ≤ what the terminal takes", unit="mm²", place=wiring("526.2"))
def terminal_takes_conductor(S: SquareMm, terminal_mm2: SquareMm) -> Finding:
    """The conductor fits the terminal whole, with no strand cut away.

    The maker's instructions say the size.

    Examples
    --------
    >>> terminal_takes_conductor(SquareMm(10.0), SquareMm(10.0)).outcome.value
    'pass'
    """
    return at_most(S, terminal_mm2)


@requires(
    "conductor temperature ≤ the terminal's",
    unit="°C",
    place=wiring("512.1.2, 523.1", "a wholesaler's catalogue"),
)
def terminal_stays_cool(t: Celsius, terminal_c: Celsius) -> Finding:
    """The cable at its load does not heat the terminal beyond its rating.

    A cable rated at 90 °C counts as 70 °C when its capacity is taken from the 70 °C table.

    Examples
    --------
    >>> terminal_stays_cool(Celsius(90.0), Celsius(70.0)).outcome.value
    'fail'
    """
    return at_most(t, terminal_c)


@requires("cable within the gland's range", unit="mm", place=GLAND)
def gland_holds_cable(d: Millimetres, least: Millimetres, most: Millimetres) -> Finding:
    """The gland closes on the cable: neither too thick to go in nor too thin to be held.

    Overall diameter; an armoured cable has a gland of its own kind.

    Examples
    --------
    >>> gland_holds_cable(Millimetres(16.4), Millimetres(12.0), Millimetres(18.0)).outcome.value
    'pass'
    """
    if d < least:
        return holds(False, f"{d:g} mm is too thin: the gland begins at {least:g} mm")
    return at_most(d, most)
