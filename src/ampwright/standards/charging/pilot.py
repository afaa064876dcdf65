"""The control pilot: how a point tells a car what it may draw."""

from __future__ import annotations

from ampwright.foundations.checks import Finding, at_least, at_most, requires
from ampwright.foundations.quantity import Amperes, Share
from ampwright.foundations.source import Place
from ampwright.foundations.working import computes

PILOT = Place("IEC 61851-1", "", "duty of the pilot, as tabled in two testers' manuals")


@computes("I", "A", formula="slope * D", place=PILOT)
def pilot_current(D: Share, slope: Amperes) -> Amperes:
    """Current a car may draw at a duty of the pilot in the lower band.

    ``slope`` is for the whole duty, a hundred times the figure for one per cent. From 10 to
    85 % duty.

    Examples
    --------
    >>> pilot_current(Share(0.533), Amperes(60.0))
    32.0
    """
    return Amperes(slope * D)


@computes("I", "A", formula="slope * (D - D0)", place=PILOT)
def pilot_current_high(D: Share, slope: Amperes, D0: Share) -> Amperes:
    """Current a car may draw at a duty of the pilot in the upper band.

    From 85 to 96 % duty.

    Examples
    --------
    >>> pilot_current_high(Share(0.96), Amperes(250.0), Share(0.64))
    80.0
    """
    return Amperes(slope * (D - D0))


@computes("D", "", formula="I / slope", place=PILOT)
def pilot_duty(I: Amperes, slope: Amperes) -> Share:
    """Duty of the pilot that offers a car so much current.

    The inverse of the lower band: from 6 to 51 A.

    Examples
    --------
    >>> pilot_duty(Amperes(32.0), Amperes(60.0))
    0.533
    """
    return Share(I / slope)


@computes("D", "", formula="I / slope + D0", place=PILOT)
def pilot_duty_high(I: Amperes, slope: Amperes, D0: Share) -> Share:
    """Duty of the pilot that offers a car a current of the upper band.

    The inverse of the upper band: from 51 to 80 A.

    Examples
    --------
    >>> pilot_duty_high(Amperes(80.0), Amperes(250.0), Share(0.64))
    0.96
    """
    return Share(I / slope + D0)


@requires("setting ≥ the least current a car takes", unit="A", place=PILOT)
def setting_not_below_floor(Iset: Amperes, floor: Amperes) -> Finding:
    """A point is not set below what the pilot can say.

    With less room than that the car pauses.

    Examples
    --------
    >>> setting_not_below_floor(Amperes(6.0), Amperes(6.0)).outcome.value
    'pass'
    """
    return at_least(Iset, floor)


@requires("current offered ≤ the setting", unit="A", place=PILOT)
def pilot_within_setting(I: Amperes, Iset: Amperes) -> Finding:
    """What the pilot offers on test is not more than the point was set to.

    From the duty read with a car or a tester connected.

    Examples
    --------
    >>> pilot_within_setting(Amperes(16.0), Amperes(16.0)).outcome.value
    'pass'
    """
    return at_most(I, Iset)
