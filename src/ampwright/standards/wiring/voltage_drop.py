"""Volts lost along a cable and what is left at its end."""

from __future__ import annotations

from ampwright.foundations.checks import Finding, at_most, requires
from ampwright.foundations.quantity import (
    Amperes,
    Metres,
    MilliVoltsPerAmpMetre,
    Ohms,
    Share,
    Volts,
)
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

from ..places import wiring

TEXTBOOK = "a textbook of electrical installation work, p. 302"
DROP = wiring("Appendix 4, 6", TEXTBOOK)
LIMIT = wiring("525, Appendix 4, 6.4", TEXTBOOK)
OHM = Place("Ohm's law", at="volts along a conductor", trust=Trust.DERIVED)


@computes("dU", "V", formula="mv * Ib * L / 1000", place=DROP)
def drop(mv: MilliVoltsPerAmpMetre, Ib: Amperes, L: Metres) -> Volts:
    """Volts lost along a cable at its full operating temperature.

    Between lines on a three-phase cable, if ``mv`` is its three-phase figure. High by some per
    cent for a cable that runs cooler.

    Examples
    --------
    >>> drop(MilliVoltsPerAmpMetre(11.0), Amperes(25.0), Metres(16.0))
    4.4
    """
    return Volts(mv * Ib * L / 1000)


@computes("L", "m", formula="dU * 1000 / (mv * Ib)", place=DROP)
def longest_run(dU: Volts, mv: MilliVoltsPerAmpMetre, Ib: Amperes) -> Metres:
    """Length at which a cable loses so many volts.

    The inverse of the drop, with the same limits.

    Examples
    --------
    >>> longest_run(Volts(9.6), MilliVoltsPerAmpMetre(4.4), Amperes(45.0))
    48.48
    """
    return Metres(dU * 1000 / (mv * Ib))


@computes("dU/U0", "", formula="dU / U0", place=LIMIT)
def drop_share(dU: Volts, U0: Volts) -> Share:
    """Volts lost as a share of the nominal voltage.

    A three-phase drop between lines goes with the nominal voltage between lines.

    Examples
    --------
    >>> drop_share(Volts(11.5), Volts(230.0))
    0.05
    """
    return Share(dU / U0)


@requires("volts lost ≤ the share allowed", place=LIMIT)
def drop_within_limit(dU_share: Share, limit_share: Share) -> Finding:
    """The volts lost between origin and load do not exceed what the rules advise.

    Lighting on the same feed has a smaller share than other uses.

    Examples
    --------
    >>> drop_within_limit(Share(0.0081), Share(0.05)).outcome.value
    'pass'
    """
    return at_most(dU_share, limit_share)


@computes("U", "V", formula="U - dU", place=OHM)
def volts_after(U: Volts, dU: Volts) -> Volts:
    """Volts left after a drop.

    Resistive drop in phase with the voltage, which is right within a few tenths of a volt for
    home cables.

    Examples
    --------
    >>> volts_after(Volts(216.2), Volts(1.87))
    214.33
    """
    return Volts(U - dU)


@computes("dU", "V", formula="Ib * Z", place=OHM)
def source_drop(Ib: Amperes, Z: Ohms) -> Volts:
    """Volts lost in the service itself, from the fuse back to the transformer.

    ``Z`` is the line-to-neutral loop at the origin.

    Examples
    --------
    >>> source_drop(Amperes(32.0), Ohms(0.548))
    17.5
    """
    return Volts(Ib * Z)
