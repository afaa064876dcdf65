"""Loop impedance, fault current and what it does to a conductor before the device opens."""

from __future__ import annotations

from math import sqrt

from ampwright.foundations.checks import Finding, at_most, requires
from ampwright.foundations.quantity import (
    AdiabaticK,
    Amperes,
    AmpereSquaredSeconds,
    Celsius,
    Kiloamperes,
    Metres,
    Ohms,
    OhmsPerKm,
    Seconds,
    Share,
    SquareMm,
    Volts,
)
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

from ..places import wiring

TEXTBOOK = "a textbook of electrical installation work"
HANDBOOK = Place("online electricians' handbook", "5", "5.3.6, Table 5.5")
IEC_60228 = Place("IEC 60228", "", "temperature correction factors, as tabled by a cable maker")
LOOP = wiring("411.4.4", "electricians' forums")
ADIABATIC = wiring("543.1.3", f"{TEXTBOOK}, p. 250")
OHM = Place("Ohm's law", at="resistance along a conductor", trust=Trust.DERIVED)


@computes("Ct", "", formula="1 + a20 * (t - t20)", place=IEC_60228)
def temperature_multiplier(t: Celsius, t20: Celsius, a20: Share) -> Share:
    """How many times its resistance at the reference temperature a conductor has at another.

    ``a20`` is the coefficient of the metal for one degree. Linear: from about −20 to 150 °C.

    Examples
    --------
    >>> temperature_multiplier(Celsius(70.0), Celsius(20.0), Share(0.004))
    1.2
    """
    return Share(1 + a20 * (t - t20))


@computes("kt", "", formula="1 / (1 + a20 * (t - t20))", place=IEC_60228)
def reference_factor(t: Celsius, t20: Celsius, a20: Share) -> Share:
    """Factor that brings a resistance read at one temperature to the reference temperature.

    Same limits as the multiplier, of which this is the inverse.

    Examples
    --------
    >>> reference_factor(Celsius(10.0), Celsius(20.0), Share(0.004))
    1.042
    """
    return Share(1 / (1 + a20 * (t - t20)))


@computes("r", "Ω/km", formula="r20 * Ct", place=HANDBOOK)
def resistance_hot(r20: OhmsPerKm, Ct: Share) -> OhmsPerKm:
    """Resistance of a conductor at its operating temperature.

    ``Ct`` is the multiplier of its insulation, the same everywhere in a design.

    Examples
    --------
    >>> resistance_hot(OhmsPerKm(3.08), Share(1.2))
    3.696
    """
    return OhmsPerKm(r20 * Ct)


@computes("R", "Ω", formula="r * L / 1000", place=OHM)
def conductor_resistance(r: OhmsPerKm, L: Metres) -> Ohms:
    """Resistance of one conductor from end to end.

    At whatever temperature ``r`` is for.

    Examples
    --------
    >>> conductor_resistance(OhmsPerKm(12.1), Metres(50.0))
    0.605
    """
    return Ohms(r * L / 1000)


@computes("R1R2", "Ω", formula="(r1 + r2) * L / 1000", place=OHM)
def line_and_earth(r1: OhmsPerKm, r2: OhmsPerKm, L: Metres) -> Ohms:
    """Resistance of line and protective conductor of a circuit together.

    Reactance left out: right up to 16 mm² and within a few per cent to 35 mm².

    Examples
    --------
    >>> line_and_earth(OhmsPerKm(3.696), OhmsPerKm(8.892), Metres(30.0))
    0.3776
    """
    return Ohms((r1 + r2) * L / 1000)


@computes("R2", "Ω", formula="Ra * Rb / (Ra + Rb)", place=OHM)
def paths_together(Ra: Ohms, Rb: Ohms) -> Ohms:
    """Resistance of two protective conductors side by side, joined at both ends.

    Such as an armour and a core or a separate conductor beside it. How the current divides
    with reactance is left out.

    Examples
    --------
    >>> paths_together(Ohms(0.198), Ohms(0.0924))
    0.063
    """
    return Ohms(Ra * Rb / (Ra + Rb))


@computes("Zs", "Ω", formula="Ze + R1R2", place=LOOP)
def loop(Ze: Ohms, R1R2: Ohms) -> Ohms:
    """Earth fault loop impedance at the end of a circuit.

    Added as resistances, which errs on the safe side.

    Examples
    --------
    >>> loop(Ohms(0.18), Ohms(0.101))
    0.281
    """
    return Ohms(Ze + R1R2)


@computes("Z", "Ω", formula="U0 / Ipf", place=OHM)
def loop_of_fault_current(U0: Volts, Ipf: Amperes) -> Ohms:
    """Loop behind a prospective fault current that somebody measured or stated.

    Of line and neutral, or of line and earth, as the current was.

    Examples
    --------
    >>> loop_of_fault_current(Volts(230.0), Amperes(420.0))
    0.548
    """
    return Ohms(U0 / Ipf)


@computes("Zs_max", "Ω", formula="Cmin * U0 / (m * In)", place=LOOP)
def breaker_loop_limit(Cmin: Share, U0: Volts, m: Share, In: Amperes) -> Ohms:
    """Largest loop at which a circuit-breaker opens at once.

    ``m`` is the upper trip multiple of its type. At operating temperature.

    Examples
    --------
    >>> breaker_loop_limit(Share(0.95), Volts(230.0), Share(5.0), Amperes(40.0))
    1.09
    """
    return Ohms(Cmin * U0 / (m * In))


@computes("Zs_max", "Ω", formula="Cmin * U0 / Ia", place=LOOP)
def loop_limit(Cmin: Share, U0: Volts, Ia: Amperes) -> Ohms:
    """Largest loop at which a device sees the current that opens it in time.

    ``Ia`` is read from the device's own curve at the time allowed.

    Examples
    --------
    >>> loop_limit(Share(0.95), Volts(230.0), Amperes(460.0))
    0.475
    """
    return Ohms(Cmin * U0 / Ia)


@computes("Zs_cold", "Ω", formula="share * Zs_max", place=wiring("Appendix 3", "a trade magazine"))
def measured_loop_limit(Zs_max: Ohms, share: Share) -> Ohms:
    """Largest loop that may be read with the conductors cold.

    ``share`` is 0.8 by the rule of thumb for a reading at the temperature of the room.

    Examples
    --------
    >>> measured_loop_limit(Ohms(0.91), Share(0.8))
    0.728
    """
    return Ohms(share * Zs_max)


@requires("Zs ≤ Zs_max", unit="Ω", place=LOOP)
def loop_within_limit(Zs: Ohms, Zs_max: Ohms) -> Finding:
    """A fault to earth opens the device within the time allowed.

    Both at operating temperature, or both as measured cold.

    Examples
    --------
    >>> loop_within_limit(Ohms(0.281), Ohms(1.09)).outcome.value
    'pass'
    """
    return at_most(Zs, Zs_max)


@computes("If", "A", formula="U0 / Zs", place=ADIABATIC)
def fault_current(U0: Volts, Zs: Ohms) -> Amperes:
    """Current of a fault of negligible impedance.

    Steady current; the first half wave may be higher close to a transformer.

    Examples
    --------
    >>> fault_current(Volts(230.0), Ohms(1.15))
    200.0
    """
    return Amperes(U0 / Zs)


@computes("I2t", "A²s", formula="If**2 * t", place=ADIABATIC)
def fault_energy(If: Amperes, t: Seconds) -> AmpereSquaredSeconds:
    """Energy a steady fault current lets through until the device opens.

    From 0.1 to 5 s; below that use the let-through energy the device's standard or maker gives.

    Examples
    --------
    >>> fault_energy(Amperes(200.0), Seconds(0.4))
    16000.0
    """
    return AmpereSquaredSeconds(If**2 * t)


@computes("S", "mm²", formula="sqrt(I2t) / k", place=ADIABATIC)
def adiabatic_size(I2t: AmpereSquaredSeconds, k: AdiabaticK) -> SquareMm:
    """Least cross-section that bears the energy of a fault.

    No heat is lost in the time: up to 5 s.

    Examples
    --------
    >>> adiabatic_size(AmpereSquaredSeconds(16000.0), AdiabaticK(115.0))
    1.10
    """
    return SquareMm(sqrt(I2t) / k)


@computes("S", "mm²", formula="S * k1 / k2", place=wiring("Table 54.7", f"{TEXTBOOK}, p. 250"))
def equivalent_size(S: SquareMm, k1: AdiabaticK, k2: AdiabaticK) -> SquareMm:
    """Cross-section of one metal that bears the same fault as that of another.

    ``k1`` of the metal it is of and ``k2`` of the metal it is to be. For line conductors up to
    16 mm² beside their protective conductor; the adiabatic sum may allow less.

    Examples
    --------
    >>> equivalent_size(SquareMm(6.0), AdiabaticK(143.0), AdiabaticK(46.0))
    18.65
    """
    return SquareMm(S * k1 / k2)


@computes("t", "s", formula="k**2 * S**2 / If**2", place=wiring("434.5.2", f"{TEXTBOOK}, p. 246"))
def adiabatic_time(k: AdiabaticK, S: SquareMm, If: Amperes) -> Seconds:
    """Time in which a fault current brings a conductor to its highest temperature.

    No heat is lost in the time: up to 5 s.

    Examples
    --------
    >>> adiabatic_time(AdiabaticK(115.0), SquareMm(10.0), Amperes(4000.0))
    0.0827
    """
    return Seconds(k**2 * S**2 / If**2)


@requires("least size ≤ protective conductor", unit="mm²", place=ADIABATIC)
def earth_core_withstands(S_needed: SquareMm, S: SquareMm) -> Finding:
    """The protective conductor bears the energy the device lets through.

    ``S_needed`` from the adiabatic sum with the ``k`` of its metal and insulation.

    Examples
    --------
    >>> earth_core_withstands(SquareMm(1.84), SquareMm(2.5)).outcome.value
    'pass'
    """
    return at_most(S_needed, S)


@requires("prospective fault current ≤ breaking capacity", unit="kA", place=wiring("434.5.1"))
def device_breaks_fault(Ipf_ka: Kiloamperes, Icn_ka: Kiloamperes) -> Finding:
    """The device can break the largest fault at its place.

    A board proved with the service fuse in front may count its conditional rating instead.

    Examples
    --------
    >>> device_breaks_fault(Kiloamperes(1.3), Kiloamperes(6.0)).outcome.value
    'pass'
    """
    return at_most(Ipf_ka, Icn_ka)
