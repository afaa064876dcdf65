"""The same broken neutral as complex numbers, for a drawing to show and a check to compare."""

from __future__ import annotations

from cmath import rect
from math import pi

from ampwright.foundations.quantity import Amperes, Volts

TURN = (0, -2 * pi / 3, 2 * pi / 3)
"""The angle of each phase, the first pointing along the real axis."""


def phase_emfs(E: Volts, phases: int) -> tuple[complex, ...]:
    """Voltages that drive each phase, as phasors.

    Examples
    --------
    >>> [abs(each) for each in phase_emfs(Volts(230.0), 3)]
    [230.0, 230.0, 230.0]
    """
    return tuple(rect(E, turn) for turn in TURN[:phases])


def star_point(E: Volts, I: tuple[Amperes, ...], IRA: Amperes) -> complex:
    """Where the common point of the loads goes when the neutral breaks, as a phasor (Millman).

    One current a phase, each as drawn at the nominal voltage; ``IRA`` as for the electrode.
    Resistive loads. Its length is the touch voltage.

    Examples
    --------
    >>> abs(star_point(Volts(230.0), (Amperes(60.0), Amperes(30.0), Amperes(30.0)), Amperes(0.0)))
    57.5
    """
    driven = sum(e * i for e, i in zip(phase_emfs(E, len(I)), I, strict=True))
    return driven / (sum(I) + IRA)
