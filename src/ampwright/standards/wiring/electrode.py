"""Earth electrodes reckoned from the soil."""

from __future__ import annotations

from math import log, pi, sqrt

from ampwright.foundations.quantity import Metres, OhmMetres, Ohms, Share, SquareMetres
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

BS_7430 = Place("BS 7430", "", "rods, as used in a published earthing calculation")
SHAPES = Place("BS 7430", "", "strips and plates", Trust.MEMORY)
SEASON = Place(
    "advice on electrodes",
    "",
    "a reading in wet ground is the best of the year",
    Trust.COMMON_PRACTICE,
)


@computes("R", "Ω", formula="rho / (2 * π * L) * (ln(8 * L / d) - 1)", place=BS_7430)
def rod_resistance(rho: OhmMetres, L: Metres, d: Metres) -> Ohms:
    """Resistance to earth of one vertical rod in even soil.

    Soil differs by a factor of two through a garden and a year: measure before relying on it.

    Examples
    --------
    >>> rod_resistance(OhmMetres(55.0), Metres(3.0), Metres(0.025))
    17.12
    """
    return Ohms(rho / (2 * pi * L) * (log(8 * L / d) - 1))


@computes("a", "", formula="rho / (2 * π * R * s)", place=BS_7430)
def rod_spacing(rho: OhmMetres, R: Ohms, s: Metres) -> Share:
    """How much rods get in one another's way at a spacing.

    For rods at least their own length apart.

    Examples
    --------
    >>> rod_spacing(OhmMetres(55.0), Ohms(17.12), Metres(10.0))
    0.0511
    """
    return Share(rho / (2 * pi * R * s))


@computes("Rn", "Ω", formula="R * (1 + lam * a) / n", place=BS_7430)
def rods_together(R: Ohms, lam: Share, a: Share, n: int) -> Ohms:
    """Resistance of equal rods in a row, joined.

    ``lam`` goes with their number and how they stand, from the standard's table.

    Examples
    --------
    >>> rods_together(Ohms(17.12), Share(1.0), Share(0.0511), 9)
    2.00
    """
    return Ohms(R * (1 + lam * a) / n)


@computes("R", "Ω", formula="rho / (2 * π * L) * ln(L**2 / (kappa * h * d))", place=SHAPES)
def tape_resistance(rho: OhmMetres, L: Metres, kappa: Share, h: Metres, d: Metres) -> Ohms:
    """Resistance to earth of a straight tape or wire laid flat in even soil.

    ``h`` is its depth, ``d`` the width of the tape or the diameter of the wire and ``kappa``
    the standard's constant for that shape.

    Examples
    --------
    >>> tape_resistance(OhmMetres(100.0), Metres(10.0), Share(1.36), Metres(0.6), Metres(0.025))
    13.52
    """
    return Ohms(rho / (2 * pi * L) * log(L**2 / (kappa * h * d)))


@computes("R", "Ω", formula="rho / 4 * sqrt(π / A)", place=SHAPES)
def plate_resistance(rho: OhmMetres, A: SquareMetres) -> Ohms:
    """Resistance to earth of a plate in even soil.

    ``A`` is the area of one face; buried upright, well below the surface.

    Examples
    --------
    >>> plate_resistance(OhmMetres(100.0), SquareMetres(0.36))
    73.85
    """
    return Ohms(rho / 4 * sqrt(pi / A))


@computes("RA", "Ω", formula="times * R", place=SEASON)
def driest_of_year(R: Ohms, times: Share) -> Ohms:
    """Resistance that an electrode may rise to in the driest week of the year.

    ``times`` is what the soil and the month of the reading call for; a deep rod rises less.

    Examples
    --------
    >>> driest_of_year(Ohms(90.0), Share(2.0))
    180.0
    """
    return Ohms(times * R)
