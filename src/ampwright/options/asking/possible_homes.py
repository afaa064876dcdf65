"""What holds in all homes that remain possible, what in some, and the range of price and wait."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Final

import numpy as np

from ampwright.standards.network.connection import Step

from ..outlook import DECISIONS
from ..supply_side import Decision
from .remaining import Numbers, Remaining

LIKELY: Final = 0.9
"""How much of the homes the likely range holds; as much lies out on each side."""
SPEAKABLE_P: Final = 70000
"""The widest likely range of which anybody can say: it will cost about so much."""


@dataclass(frozen=True, slots=True)
class Range:
    """A price from the lowest to the highest, with tax, in pence."""

    low_p: int
    high_p: int

    @property
    def width_p(self) -> int:
        """How far apart the ends lie."""
        return self.high_p - self.low_p


@dataclass(frozen=True, slots=True)
class Part:
    """Something a home comes to: each value with its chance, the likeliest first.

    Nothing stands for the homes in which no choice holds.
    """

    name: str
    values: tuple[tuple[Any, float], ...]

    @property
    def certain(self) -> bool:
        """Whether every home comes to the same."""
        return len(self.values) == 1


@dataclass(frozen=True, slots=True)
class Holds:
    """What can be said of a home while facts are open.

    ``decisions`` are those of the homes that remain, ``parts`` the network's answer, the earth
    and the cable. ``price`` is over all homes and from low to high rates; ``likely`` holds the
    middle nine tenths of the homes at the usual rates. ``sound`` names options that hold
    whatever the answers are. ``no_wait`` is the chance that nobody need be asked first and
    ``wasted`` that a visit for the likeliest decision would be for another. ``longer`` is the
    chance that some list turns out longer than told, which may undo all of it. ``draws`` is
    nought where all homes were gone through; else so many were drawn.
    """

    decisions: tuple[tuple[Decision, float], ...]
    parts: tuple[Part, ...]
    price: Range | None
    likely: Range | None
    sound: tuple[str, ...]
    no_wait: float
    wasted: float
    longer: float
    homes: int
    draws: int

    @property
    def certain(self) -> Decision | None:
        """The decision, where all homes that remain lead to the same one that can be said."""
        only = self.decisions[0][0] if len(self.decisions) == 1 else Decision.UNDETERMINED
        return None if only is Decision.UNDETERMINED else only

    @property
    def speakable(self) -> bool:
        """Whether something can be said on the telephone: the decision, or about what it costs."""
        return self.certain is not None or (
            self.likely is not None and self.likely.width_p < SPEAKABLE_P
        )


def holds(homes: Remaining, sound: tuple[str, ...] = (), longer: float = 0.0) -> Holds:
    """Return what holds in all homes that remain and what in some; chances are of the homes."""
    decisions = chances(homes, DECISIONS, homes.decision)
    parts = tuple(Part(name, chances(homes, *each)) for name, each in homes.says.items())
    network = dict(parts[0].values) if parts else {}
    return Holds(
        decisions=decisions,
        parts=parts,
        price=whole_range(homes),
        likely=likely_range(homes),
        sound=sound,
        no_wait=network.get(Step.TELL_AFTER, 0.0),
        wasted=1.0 - decisions[0][1],
        longer=longer,
        homes=homes.count,
        draws=homes.draws,
    )


def chances(
    homes: Remaining, values: tuple[Any, ...], numbers: Any
) -> tuple[tuple[Any, float], ...]:
    """Return each value that some home has, with its chance, the likeliest first."""
    each = np.bincount(numbers, weights=homes.weights, minlength=len(values))
    seen = np.unique(numbers[homes.weights > 0]).tolist()
    return tuple(sorted(((values[n], float(each[n])) for n in seen), key=lambda pair: -pair[1]))


def whole_range(homes: Remaining) -> Range | None:
    """Return the range over all homes that come to a price."""
    priced = ~np.isnan(homes.low_p) & (homes.weights > 0)
    if not priced.any():
        return None
    return Range(int(homes.low_p[priced].min()), int(homes.high_p[priced].max()))


def likely_range(homes: Remaining) -> Range | None:
    """Return the range of the usual price that holds the middle of the homes."""
    priced = ~np.isnan(homes.usual_p) & (homes.weights > 0)
    if not priced.any():
        return None
    price, weight = homes.usual_p[priced], homes.weights[priced]
    beyond = (1 - LIKELY) / 2
    return Range(int(quantile(price, weight, beyond)), int(quantile(price, weight, 1 - beyond)))


def quantile(values: Numbers, weights: Numbers, share: float) -> float:
    """Return the least value with at least a share of the weight at or under it."""
    order = np.argsort(values, kind="stable")
    upto = np.cumsum(weights[order]) / weights.sum()
    at = min(int(np.searchsorted(upto, share - 1e-12)), len(order) - 1)
    return float(values[order][at])
