"""The settings at which a promise changes: found, not sampled."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.answers import Missing
from ampwright.foundations.quantity import Amperes
from ampwright.supply.hours import ANY

from .choices import Choosing
from .homes import Homes
from .lifting import Lifter
from .menu import tops
from .runs import Cut, Exploring
from .supply_side import Decision, supply_side

Comes = frozenset[Decision]
"""Each decision that some home leads to; empty where the supply cannot carry it in any."""


@dataclass(frozen=True, slots=True)
class Break:
    """Between two settings one ampere apart the answer changes."""

    up_to_a: Amperes
    from_a: Amperes
    below: Comes
    above: Comes


def breaks(homes: Homes, basis: Basis, point: ChargePoint, house_limit: bool) -> tuple[Break, ...]:
    """Return every place along a point's settings where decision or fit changes."""
    lifter = Lifter(homes)
    ends = sorted(tops(lifter, basis, point, house_limit, ANY))
    comes = [comes_to(lifter, basis, point, setting, house_limit) for setting in ends]
    return tuple(
        Break(end, Amperes(float(round(end) + 1)), below, above)
        for (end, below), (_, above) in pairwise(zip(ends, comes, strict=True))
    )


def comes_to(
    lifter: Lifter, basis: Basis, point: ChargePoint, setting_a: Amperes, house_limit: bool
) -> Comes:
    """Return the decisions a setting leads to in the homes."""
    run = Exploring(lifter, Choosing({}))
    try:
        decided: Any = supply_side(run, basis, point, setting_a, house_limit, ANY).decision
    except Cut:
        return frozenset()
    values: tuple[Decision | Missing, ...] = decided.values
    return frozenset(
        Decision.UNDETERMINED if isinstance(value, Missing) else value for value in values
    )
