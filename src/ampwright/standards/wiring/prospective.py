"""The largest fault current that a place can give, single- and three-phase."""

from __future__ import annotations

from math import sqrt

from ampwright.foundations.quantity import Kiloamperes, Ohms, Share, Volts
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

OHM = Place("Ohm's law", at="dead short behind an impedance", trust=Trust.DERIVED)
DOUBLE = Place(
    "guidance on inspection and testing", "3", "2.7.16, as quoted on an engineers' forum"
)


@computes("Ipf", "kA", formula="Cmax * U0 / (Z * 1000)", place=OHM)
def prospective_fault(Cmax: Share, U0: Volts, Z: Ohms) -> Kiloamperes:
    """Prospective fault current of one line to neutral or to earth, whichever loop ``Z`` is.

    With cold conductors, which give the most. ``Cmax`` is 1 where ``Z`` was read by a tester
    that takes the nominal voltage.

    Examples
    --------
    >>> prospective_fault(Share(1.0), Volts(230.0), Ohms(0.3))
    0.767
    """
    return Kiloamperes(Cmax * U0 / (Z * 1000))


@computes("Ipf3", "kA", formula="Cmax * U / (sqrt(3) * Z1 * 1000)", place=OHM)
def prospective_three_phase(Cmax: Share, U: Volts, Z1: Ohms) -> Kiloamperes:
    """Prospective fault current of all three lines together.

    ``U`` between lines; ``Z1`` is one line's impedance alone, without neutral or earth.

    Examples
    --------
    >>> prospective_three_phase(Share(1.0), Volts(400.0), Ohms(0.15))
    1.54
    """
    return Kiloamperes(Cmax * U / (sqrt(3) * Z1 * 1000))


@computes("Ipf3", "kA", formula="times * Ipf", place=DOUBLE)
def three_phase_from_single(Ipf: Kiloamperes, times: Share) -> Kiloamperes:
    """Prospective fault current of three phases guessed from that of one.

    ``times`` is 2 by the rule of thumb, which errs on the high side: a line is no worse than
    half of its loop with the neutral. Where it cannot be measured between lines.

    Examples
    --------
    >>> three_phase_from_single(Kiloamperes(0.77), Share(2.0))
    1.54
    """
    return Kiloamperes(times * Ipf)
