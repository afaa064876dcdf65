"""What the earth terminal stands at when the street's combined neutral and earth breaks.

Each load ``i`` draws ``Ii`` at the nominal voltage, so its conductance is ``Ii / U0``; with the
neutral broken their common point finds its own place among the phases (Millman). An electrode
pulls it back toward the ground: ``IRA`` is the current it would draw at the nominal voltage,
nought where there is none. Resistive loads of one installation alone; parallel paths through
shared metal make it better, a neighbour's unbalance can make it worse. Judge the worst credible
unbalance, never a diversified demand.
"""

from __future__ import annotations

from math import sqrt

from ampwright.foundations.quantity import Amperes, Ohms, Share, Volts
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

from ..places import wiring

ANNEX = wiring("Annex A722", "an electricians' forum")
SINGLE = wiring("Annex A722")
MILLMAN = Place(
    "Millman's theorem", at="star of loads with the neutral broken", trust=Trust.DERIVED
)


@computes("IN", "A", formula="sqrt((I1 - (I2 + I3) / 2)**2 + 3 * ((I2 - I3) / 2)**2)", place=ANNEX)
def unbalance(I1: Amperes, I2: Amperes, I3: Amperes) -> Amperes:
    """Current in the neutral of three unequal phases before it breaks.

    Loads of one kind: all resistive, or all of one power factor.

    Examples
    --------
    >>> unbalance(Amperes(60.0), Amperes(30.0), Amperes(30.0))
    30.0
    """
    return Amperes(sqrt((I1 - (I2 + I3) / 2) ** 2 + 3 * ((I2 - I3) / 2) ** 2))


@computes("IRA", "A", formula="U0 / RA", place=MILLMAN)
def electrode_pull(U0: Volts, RA: Ohms) -> Amperes:
    """Current that the electrode would draw at the nominal voltage.

    A measure of how hard it holds the earth terminal to the ground.

    Examples
    --------
    >>> electrode_pull(Volts(230.0), Ohms(20.0))
    11.5
    """
    return Amperes(U0 / RA)


@computes("Ut", "V", formula="Cmax * U0 * IN / (Isum + IRA)", place=MILLMAN)
def touch_voltage(Cmax: Share, U0: Volts, IN: Amperes, Isum: Amperes, IRA: Amperes) -> Volts:
    """Volts between the earth terminal and the ground with the neutral of the supply broken.

    ``Isum`` adds the currents of all phases and ``IN`` is their unbalance; on a single phase
    both are its current. Without any load and electrode it is not defined.

    Examples
    --------
    >>> touch_voltage(Share(1.0), Volts(230.0), Amperes(30.0), Amperes(120.0), Amperes(0.0))
    57.5
    """
    return Volts(Cmax * U0 * IN / (Isum + IRA))


@computes("RA", "Ω", formula="Ut * U0 / (I * (Cmax * U0 - Ut))", place=SINGLE)
def electrode_needed_single(Ut: Volts, U0: Volts, I: Amperes, Cmax: Share) -> Ohms:
    """Largest electrode that holds the earth terminal of a single-phase home to a touch voltage.

    ``I`` is the load that may be on when the neutral breaks, the point included.

    Examples
    --------
    >>> electrode_needed_single(Volts(70.0), Volts(230.0), Amperes(32.0), Share(1.0))
    3.145
    """
    return Ohms(Ut * U0 / (I * (Cmax * U0 - Ut)))


@computes("RA", "Ω", formula="1 / (Cmax * IN / Ut - Isum / U0)", place=MILLMAN)
def electrode_needed(Cmax: Share, IN: Amperes, Ut: Volts, Isum: Amperes, U0: Volts) -> Ohms:
    """Largest electrode that holds the earth terminal of a three-phase home to a touch voltage.

    Only where the touch voltage without an electrode is above ``Ut``; elsewhere none is needed
    and the figure is negative or not defined.

    Examples
    --------
    >>> electrode_needed(Share(1.0), Amperes(32.0), Volts(70.0), Amperes(92.0), Volts(230.0))
    17.5
    """
    return Ohms(1 / (Cmax * IN / Ut - Isum / U0))


@computes("x", "", formula="(I1 - (I2 + I3) / 2) / (I1 + I2 + I3 + IRA)", place=MILLMAN)
def shift_along(I1: Amperes, I2: Amperes, I3: Amperes, IRA: Amperes) -> Share:
    """How far the broken neutral moves toward one phase, as a share of the phase voltage.

    ``I1`` is the load of that phase and ``I2`` and ``I3`` those of the two that follow it.

    Examples
    --------
    >>> shift_along(Amperes(32.0), Amperes(0.0), Amperes(0.0), Amperes(0.0))
    1.0
    """
    return Share((I1 - (I2 + I3) / 2) / (I1 + I2 + I3 + IRA))


@computes("y", "", formula="sqrt(3) / 2 * (I2 - I3) / (I1 + I2 + I3 + IRA)", place=MILLMAN)
def shift_across(I1: Amperes, I2: Amperes, I3: Amperes, IRA: Amperes) -> Share:
    """How far the broken neutral moves across the same phase, as a share of the phase voltage.

    Toward the next phase positive, toward the one after it negative.

    Examples
    --------
    >>> shift_across(Amperes(4.0), Amperes(2.0), Amperes(0.0), Amperes(0.0))
    0.289
    """
    return Share(sqrt(3) / 2 * (I2 - I3) / (I1 + I2 + I3 + IRA))


@computes("U", "V", formula="Cmax * U0 * sqrt((1 - x)**2 + y**2)", place=MILLMAN)
def phase_voltage(Cmax: Share, U0: Volts, x: Share, y: Share) -> Volts:
    """Volts that a phase's loads see between line and the broken neutral.

    ``x`` and ``y`` are the shift along and across that phase.

    Examples
    --------
    >>> phase_voltage(Share(1.0), Volts(230.0), Share(0.5), Share(0.2887))
    132.8
    """
    return Volts(Cmax * U0 * sqrt((1 - x) ** 2 + y**2))


@computes("Ut", "V", formula="sqrt(U0**2 + Uhigh**2 - sqrt(3) * U0 * Uhigh)", place=MILLMAN)
def unseen_by_one_window(U0: Volts, Uhigh: Volts) -> Volts:
    """Most that the earth terminal can stand at while the watched phase looks healthy.

    Two other phases loaded, the watched one not; ``Uhigh`` is the upper end of the window.

    Examples
    --------
    >>> unseen_by_one_window(Volts(230.0), Volts(253.0))
    127.0
    """
    return Volts(sqrt(U0**2 + Uhigh**2 - sqrt(3) * U0 * Uhigh))
