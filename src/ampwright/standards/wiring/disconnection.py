"""How soon a fault to earth must be cut off."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from ampwright.foundations.checks import Finding, at_most, requires
from ampwright.foundations.quantity import Amperes, Seconds
from ampwright.foundations.rulings import Row, Ruling

from ..places import wiring

SCOPE = wiring("411.3.2.2", "a certification body's page")
OTHERS = wiring("411.3.2.3, 411.3.2.4")


class CutOff(Enum):
    """Which of the table's times holds; the seconds depend on the kind of earthing as well."""

    SHORT = "short"
    LONG = "long"


@dataclass(frozen=True, slots=True, kw_only=True)
class CircuitCase:
    """A circuit as the rule looks at it; the last two are the rule's own ratings."""

    final: bool
    has_sockets: bool
    In: Amperes
    socket_a: Amperes
    fixed_a: Amperes


CUT_OFF: Ruling[CircuitCase, CutOff] = Ruling(
    "How soon a fault to earth must be cut off",
    (
        Row("it feeds a board", lambda case: not case.final, CutOff.LONG, OTHERS),
        Row(
            "a final circuit with socket-outlets, up to the larger rating",
            lambda case: case.has_sockets and case.In <= case.socket_a,
            CutOff.SHORT,
            SCOPE,
        ),
        Row(
            "a final circuit of fixed equipment only, up to the smaller rating",
            lambda case: not case.has_sockets and case.In <= case.fixed_a,
            CutOff.SHORT,
            SCOPE,
        ),
        Row("a larger final circuit", lambda _: True, CutOff.LONG, OTHERS),
    ),
)
"""The least the rule asks; taking the short time for every charge point is the safe choice."""


@requires("time to cut off ≤ the time allowed", unit="s", place=SCOPE)
def cut_off_in_time(t: Seconds, limit: Seconds) -> Finding:
    """The device opens a fault to earth within the time that the circuit is allowed.

    ``t`` from the device's curve at the fault current of the far end.

    Examples
    --------
    >>> cut_off_in_time(Seconds(0.1), Seconds(0.4)).outcome.value
    'pass'
    """
    return at_most(t, limit)
