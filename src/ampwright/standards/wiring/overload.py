"""Design current, device and cable: the chain that keeps a cable from running hot."""

from __future__ import annotations

from ampwright.foundations.checks import Finding, at_most, requires
from ampwright.foundations.quantity import Amperes, Share
from ampwright.foundations.source import Place
from ampwright.foundations.working import computes, next_up

from ..places import wiring

TEXTBOOK = "a textbook of electrical installation work, p. 301"
CAPACITY = wiring("Appendix 4, 5.1", TEXTBOOK)
REWIREABLE = Place("online electricians' handbook", "5", "4.3.8")


@computes("Iz", "A", formula="It * Ca * Cg * Ci", place=CAPACITY)
def corrected_capacity(It: Amperes, Ca: Share, Cg: Share, Ci: Share) -> Amperes:
    """Current a cable can carry for hours where it lies.

    Factors for air temperature, grouping and thermal insulation; no factor for rewireable
    fuses or for soil. A cable rated at 90 °C on terminals rated at 70 °C takes ``It`` from
    the 70 °C table.

    Examples
    --------
    >>> corrected_capacity(Amperes(46.0), Share(0.87), Share(1.0), Share(1.0))
    40.02
    """
    return Amperes(It * Ca * Cg * Ci)


@computes("It", "A", formula="In / (Ca * Cg * Ci)", place=CAPACITY)
def tabulated_needed(In: Amperes, Ca: Share, Cg: Share, Ci: Share) -> Amperes:
    """Least tabulated current of a cable that a device protects against overload.

    Same factors and limits as the corrected capacity, of which this is the inverse.

    Examples
    --------
    >>> tabulated_needed(Amperes(15.0), Share(0.87), Share(0.7), Share(1.0))
    24.63
    """
    return Amperes(In / (Ca * Cg * Ci))


@computes("In", "A", formula="next_up(Ib, ratings)", place=wiring("433.1.1 (i)"))
def device_rating(Ib: Amperes, ratings: tuple[Amperes, ...]) -> Amperes:
    """Least standard rating that carries the design current.

    Raises ``ValueError`` when every rating is below it. A maker of a charge point may ask for
    a larger one.

    Examples
    --------
    >>> device_rating(Amperes(32.0), (Amperes(16.0), Amperes(32.0), Amperes(40.0)))
    32.0
    """
    return Amperes(next_up(Ib, ratings))


@requires("Ib ≤ In", unit="A", place=wiring("433.1.1 (i)"))
def device_carries_design_current(Ib: Amperes, In: Amperes) -> Finding:
    """The device does not open at the current the circuit is meant to carry.

    Both at the air temperature the device is rated for.

    Examples
    --------
    >>> device_carries_design_current(Amperes(32.0), Amperes(32.0)).outcome.value
    'pass'
    """
    return at_most(Ib, In)


@requires("In ≤ Iz", unit="A", place=wiring("433.1.1 (ii)"))
def cable_carries_device(In: Amperes, Iz: Amperes) -> Finding:
    """The device opens before the cable is carried beyond what it can bear for hours.

    Holds by itself for breakers to BS EN 60898 and 61009, which act by 1.45 times their rating.

    Examples
    --------
    >>> cable_carries_device(Amperes(40.0), Amperes(47.0)).outcome.value
    'pass'
    """
    return at_most(In, Iz)


@computes("I2", "A", formula="k2 * In", place=wiring("433.1.1 (iii)"))
def operating_current(In: Amperes, k2: Share) -> Amperes:
    """Current that is sure to open a device within its conventional time.

    ``k2`` is the factor of the device's own standard.

    Examples
    --------
    >>> operating_current(Amperes(32.0), Share(1.45))
    46.4
    """
    return Amperes(k2 * In)


@computes("I2", "A", formula="kz * Iz", place=wiring("433.1.1 (iii)"))
def overload_limit(Iz: Amperes, kz: Share) -> Amperes:
    """Overload that a cable bears for the conventional time.

    ``kz`` is 1.45 in the clause.

    Examples
    --------
    >>> overload_limit(Amperes(47.0), Share(1.45))
    68.15
    """
    return Amperes(kz * Iz)


@requires("I2 ≤ 1.45 Iz", unit="A", place=wiring("433.1.1 (iii)"))
def overload_ends_in_time(I2: Amperes, limit: Amperes) -> Finding:
    """A small overload opens the device before it harms the cable.

    Needed for devices that act later than 1.45 times their rating, such as rewireable fuses.

    Examples
    --------
    >>> overload_ends_in_time(Amperes(64.0), Amperes(68.15)).outcome.value
    'pass'
    """
    return at_most(I2, limit)


@computes("Cf", "", formula="kz / k2", place=REWIREABLE)
def device_factor(kz: Share, k2: Share) -> Share:
    """Share of a cable's capacity that a device which acts late may protect.

    ``kz`` is 1.45 and ``k2`` the device's own: 2 for rewireable fuses. One for devices that
    act by 1.45 times their rating.

    Examples
    --------
    >>> device_factor(Share(1.45), Share(2.0))
    0.725
    """
    return Share(kz / k2)


@computes("Iz", "A", formula="Cf * Iz", place=REWIREABLE)
def capacity_behind_device(Iz: Amperes, Cf: Share) -> Amperes:
    """Largest rating that may protect a cable, where the device or the ground asks for less.

    ``Cf`` of the device; 0.9 for a breaker or cartridge fuse before a buried cable.

    Examples
    --------
    >>> capacity_behind_device(Amperes(47.0), Share(0.725))
    34.08
    """
    return Amperes(Cf * Iz)


@computes("Iz", "A", formula="It * Ct * Cs * Cd * Cg", place=wiring("Appendix 4, 5.1"))
def corrected_capacity_buried(It: Amperes, Ct: Share, Cs: Share, Cd: Share, Cg: Share) -> Amperes:
    """Current a buried cable can carry for hours where it lies.

    Factors for the temperature, resistivity and depth of the ground, and grouping; ``It`` from
    the column for cables in the ground.

    Examples
    --------
    >>> corrected_capacity_buried(Amperes(60.0), Share(1.05), Share(0.96), Share(1.0), Share(0.85))
    51.41
    """
    return Amperes(It * Ct * Cs * Cd * Cg)
