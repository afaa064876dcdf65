"""Volts lost along a cable and what is left at its end."""

from __future__ import annotations

from ampwright.foundations.checks import Finding, at_most, requires
from ampwright.foundations.quantity import (
    Amperes,
    Celsius,
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
COOLER = wiring("Appendix 4, 6.1", "an engineers' forum and a worked example of a cable site")
ANGLE = wiring("Appendix 4, 6.2", "a worked example of a cable site")
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


@computes(
    "Ct",
    "",
    formula="(t0 + tp - (Ca**2 * Cg**2 - Ib**2 / It**2) * (tp - tr)) / (t0 + tp)",
    place=COOLER,
)
def cooler_factor(
    t0: Celsius, tp: Celsius, Ca: Share, Cg: Share, Ib: Amperes, It: Amperes, tr: Celsius
) -> Share:
    """Share of the resistive drop left in a cable that runs below its full temperature.

    ``tp`` is the full temperature, ``tr`` that of the capacity table and ``t0`` 230 °C for
    copper. In air and without thermal insulation; for a buried cable ``tr`` is not settled.

    Examples
    --------
    >>> cooler_factor(Celsius(230.0), Celsius(90.0), Share(0.96), Share(1.0), Amperes(152.0),
    ...               Amperes(222.0), Celsius(30.0))
    0.915
    """
    return Share((t0 + tp - (Ca**2 * Cg**2 - Ib**2 / It**2) * (tp - tr)) / (t0 + tp))


@computes(
    "dU",
    "V",
    formula="(Ct * cosphi * mvr + sinphi * mvx) * Ib * L / 1000",
    place=ANGLE,
)
def drop_at_angle(
    Ct: Share,
    cosphi: Share,
    sinphi: Share,
    mvr: MilliVoltsPerAmpMetre,
    mvx: MilliVoltsPerAmpMetre,
    Ib: Amperes,
    L: Metres,
) -> Volts:
    """Volts lost along a cable at the power factor of its load.

    Resistance and reactance apart, as tables print them from 25 mm² up; below that reactance
    is left out. ``Ct`` is 1 for a cable at its full temperature. A lagging load, whose two
    shares squared make one.

    Examples
    --------
    >>> drop_at_angle(Share(0.9151), Share(0.87), Share(0.493), MilliVoltsPerAmpMetre(0.86),
    ...               MilliVoltsPerAmpMetre(0.29), Amperes(152.0), Metres(80.0))
    10.06
    """
    return Volts((Ct * cosphi * mvr + sinphi * mvx) * Ib * L / 1000)


@computes("dU", "V", formula="sum(dU)", place=LIMIT)
def drop_in_all(dU: tuple[Volts, ...]) -> Volts:
    """Volts lost from the origin to the load: those of every cable on the way.

    Each at the current that it carries; a feeder carries what the rest of its board draws too.

    Examples
    --------
    >>> drop_in_all((Volts(1.87), Volts(4.4)))
    6.27
    """
    return Volts(sum(dU))


@computes("dU", "V", formula="I1 * Z1 + (I1 - (I2 + I3) / 2) * ZN", place=OHM)
def drop_on_phase(I1: Amperes, I2: Amperes, I3: Amperes, Z1: Ohms, ZN: Ohms) -> Volts:
    """Volts that one phase loses to the neutral it shares with two others.

    ``Z1`` of its line and ``ZN`` of the shared neutral, both resistive, as are the loads. A
    lightly loaded phase may gain volts: the figure is then negative.

    Examples
    --------
    >>> drop_on_phase(Amperes(32.0), Amperes(10.0), Amperes(0.0), Ohms(0.1), Ohms(0.1))
    5.9
    """
    return Volts(I1 * Z1 + (I1 - (I2 + I3) / 2) * ZN)
