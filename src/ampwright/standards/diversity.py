"""Allowances for diversity in a household: how much of each kind of load counts at once.

The shares and first amperes are the table's; they come in as arguments. A load never counts
for more than its own current. These are guidance for homes, not law: a person who knows the
home may decide otherwise and says so.
"""

from __future__ import annotations

from ampwright.foundations.quantity import Amperes, Share
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes, largest

from .places import wiring

TABLE = Place("online electricians' handbook", "5", "Table 6.2, households")
CHARGE_POINT = wiring("722.311.201")
IN_FULL = Place("firms' usual survey", at="loads counted in full", trust=Trust.COMMON_PRACTICE)
SUM = Place("arithmetic", at="sum of the counted currents", trust=Trust.DERIVED)


@computes("I", "A", formula="s * I", place=TABLE.at_row("lighting"))
def lighting(I: Amperes, s: Share) -> Amperes:
    """Counted current of the lighting: a share of all of it.

    Household premises only; shops and guest houses have other shares.

    Examples
    --------
    >>> lighting(Amperes(2.5), Share(0.66))
    1.65
    """
    return Amperes(s * I)


@computes(
    "I",
    "A",
    formula="min(I, a) + s * max(0, I - a)",
    place=TABLE.at_row("heating and power"),
)
def above_first(I: Amperes, a: Amperes, s: Share) -> Amperes:
    """Counted current of room heating and power: the first amperes in full, a share of the rest.

    For direct heating only; storage and floor heating count in full.

    Examples
    --------
    >>> above_first(Amperes(26.0), Amperes(10.0), Share(0.5))
    18.0
    """
    return Amperes(min(I, a) + s * max(0, I - a))


@computes(
    "I",
    "A",
    formula="min(I, a) + s * max(0, I - a) + extra",
    place=TABLE.at_row("cookers"),
)
def cooking(I: Amperes, a: Amperes, s: Share, extra: Amperes) -> Amperes:
    """Counted current of one cooking appliance: the first amperes, a share of the rest, its socket.

    ``extra`` is the allowance for a socket on the cooker switch, nought where there is none.

    Examples
    --------
    >>> cooking(Amperes(66.0), Amperes(10.0), Share(0.3), Amperes(0.0))
    26.8
    """
    return Amperes(min(I, a) + s * max(0, I - a) + extra)


@computes(
    "I",
    "A",
    formula="largest(I, 2) + s * (sum(I) - largest(I, 2))",
    place=TABLE.at_row("instantaneous water heaters"),
)
def showers(I: tuple[Amperes, ...], s: Share) -> Amperes:
    """Counted current of instant showers: the two largest in full and a share of the others.

    For heaters that heat as the water flows; stored hot water counts in full.

    Examples
    --------
    >>> showers((Amperes(37.0), Amperes(30.0), Amperes(20.0)), Share(0.25))
    72.0
    """
    return Amperes(largest(I, 2) + s * (sum(I) - largest(I, 2)))


@computes(
    "I",
    "A",
    formula="max(I) + s * (sum(I) - max(I))",
    place=TABLE.at_row("socket-outlets and fixed equipment"),
)
def sockets(I: tuple[Amperes, ...], s: Share) -> Amperes:
    """Counted current of socket circuits: the largest in full and a share of the others.

    The currents are what a surveyor judges each circuit to draw, not the sizes of its devices.

    Examples
    --------
    >>> sockets((Amperes(15.0), Amperes(10.0)), Share(0.4))
    19.0
    """
    return Amperes(max(I) + s * (sum(I) - max(I)))


@computes("I", "A", formula="I", place=IN_FULL)
def in_full(I: Amperes) -> Amperes:
    """Counted current of a load that may run for hours with all the others: all of it.

    Heat pumps, tubs, storage, floor and battery charging, and whatever is fixed and always on.

    Examples
    --------
    >>> in_full(Amperes(16.0))
    16.0
    """
    return I


@computes("I", "A", formula="sum(I)", place=SUM)
def total(I: tuple[Amperes, ...]) -> Amperes:
    """Counted current of one phase: all that was counted on it.

    What sun or battery may give is never taken off: neither is there on a still winter evening.

    Examples
    --------
    >>> total((Amperes(1.65), Amperes(19.0), Amperes(1.0)))
    21.65
    """
    return Amperes(sum(I))


@computes("I", "A", formula="I + Ipoint", place=CHARGE_POINT)
def with_point(I: Amperes, Ipoint: Amperes) -> Amperes:
    """Demand with the charge point, which counts at its set current without diversity.

    A limit on the whole house is another clause: here nothing holds the point back.

    Examples
    --------
    >>> with_point(Amperes(21.65), Amperes(32.0))
    53.65
    """
    return Amperes(I + Ipoint)


@computes("I", "A", formula="min(I, Ilimit)", place=wiring("311.1, 722.311", "a tutor's outline"))
def under_limit(I: Amperes, Ilimit: Amperes) -> Amperes:
    """Demand where load curtailment holds the whole house: never more than the limit.

    Only for a limiter that counts, and only where the demand without the point is under the
    limit already: the limiter can hold back the car and nothing else.

    Examples
    --------
    >>> under_limit(Amperes(65.6), Amperes(60.0))
    60.0
    """
    return Amperes(min(I, Ilimit))
