"""The laws that published tables come from: a second way to a number that a table prints.

A design takes the printed number; the law shows whether a row was read rightly and what a table
would say between its rows.
"""

from __future__ import annotations

from math import log, sqrt

from ampwright.foundations.quantity import (
    AdiabaticK,
    Amperes,
    Celsius,
    MilliVoltsPerAmpMetre,
    OhmsPerKm,
    Share,
    SquareMm,
)
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

CURVE = Place("IEC 60364-5-52", "2009", "Annex D, as carried out by an open-source program")
METALS = Place(
    "IEC 60364-5-54",
    "",
    "Annex A, as shown by a note on a document-sharing site and a pocket guide",
)
WARMTH = Place(
    "IEC 60287",
    at="heat that a cable gives off goes with its temperature above the air",
    trust=Trust.DERIVED,
)
OHM = Place("Ohm's law", at="volts for each ampere and metre", trust=Trust.DERIVED)


@computes("I", "A", formula="A * S**m - B * S**n", place=CURVE)
def capacity_on_curve(A: Amperes, S: SquareMm, m: Share, B: Amperes, n: Share) -> Amperes:
    """Current-carrying capacity on the curve that the international tables were drawn from.

    Copper at the base conditions of its table; ``S`` is 47.5 for the nominal 50 mm², and the
    second term is nought but for large sizes. To check a table, not to design with.

    Examples
    --------
    >>> capacity_on_curve(Amperes(15.0), SquareMm(6.0), Share(0.625), Amperes(0.0), Share(0.0))
    45.96
    """
    return Amperes(A * S**m - B * S**n)


@computes("K", "A√s/mm²", formula="sqrt(Qc * (beta + t20) / rho20)", place=METALS)
def metal_constant(Qc: float, beta: Celsius, t20: Celsius, rho20: float) -> AdiabaticK:
    """Constant of a metal in the law of the factor k.

    ``Qc`` is the heat of a cubic millimetre for one kelvin in J, ``beta`` the inverse of the
    coefficient of resistance at 0 °C, ``rho20`` the resistivity at ``t20`` in Ω·mm.

    Examples
    --------
    >>> metal_constant(3.45e-3, Celsius(234.5), Celsius(20.0), 17.241e-6)
    225.7
    """
    return AdiabaticK(sqrt(Qc * (beta + t20) / rho20))


@computes("k", "A√s/mm²", formula="K * sqrt(ln((beta + end) / (beta + start)))", place=METALS)
def adiabatic_k(K: AdiabaticK, beta: Celsius, start: Celsius, end: Celsius) -> AdiabaticK:
    """Factor k of a conductor between the temperatures before and after a fault.

    No heat is lost in the time: up to 5 s.

    Examples
    --------
    >>> adiabatic_k(AdiabaticK(226.0), Celsius(234.5), Celsius(70.0), Celsius(160.0))
    115.0
    """
    return AdiabaticK(K * sqrt(log((beta + end) / (beta + start))))


@computes("Ca", "", formula="sqrt((T - t) / (T - t0))", place=WARMTH)
def warmth_factor(T: Celsius, t: Celsius, t0: Celsius) -> Share:
    """Factor for surroundings warmer or cooler than the base of a capacity table.

    ``T`` is the temperature the conductor may reach and ``t0`` that of the table: 30 °C in
    air, 20 °C in the ground. Raises ``ValueError`` beyond ``T``.

    Examples
    --------
    >>> warmth_factor(Celsius(70.0), Celsius(40.0), Celsius(30.0))
    0.866
    """
    return Share(sqrt((T - t) / (T - t0)))


@computes("mV", "mV/A/m", formula="2 * r", place=OHM)
def drop_of_two_wires(r: OhmsPerKm) -> MilliVoltsPerAmpMetre:
    """Volts lost for each ampere and metre of a single-phase cable: out and back.

    ``r`` at the temperature the table is for; reactance left out.

    Examples
    --------
    >>> drop_of_two_wires(OhmsPerKm(3.685))
    7.37
    """
    return MilliVoltsPerAmpMetre(2 * r)


@computes("mV", "mV/A/m", formula="sqrt(3) * r", place=OHM)
def drop_of_three_wires(r: OhmsPerKm) -> MilliVoltsPerAmpMetre:
    """Volts lost between lines for each ampere and metre of a three-phase cable, evenly loaded.

    ``r`` at the temperature the table is for; reactance left out.

    Examples
    --------
    >>> drop_of_three_wires(OhmsPerKm(3.685))
    6.383
    """
    return MilliVoltsPerAmpMetre(sqrt(3) * r)


@computes("mV", "mV/A/m", formula="sqrt(r**2 + x**2)", place=OHM)
def drop_at_worst_angle(
    r: MilliVoltsPerAmpMetre, x: MilliVoltsPerAmpMetre
) -> MilliVoltsPerAmpMetre:
    """Volts lost for each ampere and metre at the power factor that loses most.

    ``r`` and ``x`` are the parts that go with resistance and reactance.

    Examples
    --------
    >>> drop_at_worst_angle(MilliVoltsPerAmpMetre(1.85), MilliVoltsPerAmpMetre(0.31))
    1.876
    """
    return MilliVoltsPerAmpMetre(sqrt(r**2 + x**2))
