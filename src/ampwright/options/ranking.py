"""Which option is best in each home, which lose to another, and what is left to choose from.

There is no weighted score. An option loses when another is sound wherever it is, is nowhere
worse in wait, speed or work, and is somewhere better; ties go to the firm's own order.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from ampwright.foundations.answers import Missing, Value

from .homes import Homes
from .search import Option
from .spread import Spread, in_order

Numbers = NDArray[np.float64]
NONE = -1


class Criteria(NamedTuple):
    """What options are compared on; less is better in every part.

    ``wait`` is nought when the network operator is told afterwards, one when it must be asked
    first, two when work must stop; ``slowness_kw`` is the usable power with its sign turned;
    ``work_min`` the usual minutes; ``order`` the firm's own order among equals.
    """

    wait: float
    slowness_kw: float
    work_min: float
    order: float


UNKNOWN = Criteria(9.0, 0.0, 0.0, 0.0)
"""Stands where the criteria cannot be worked out: behind everything that can."""


@dataclass(frozen=True, slots=True, eq=False)
class Loss:
    """An option that loses to another, and in what."""

    option: Option[Any]
    winner: Option[Any]
    better_in: tuple[str, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Ranking:
    """The options in order, the ones left after the losers, and the best in each home.

    ``best`` has one axis for each of ``facts`` and holds the position in ``options``, or −1
    where no option is sound or can be said.
    """

    homes: Homes
    options: tuple[Option[Any], ...]
    front: tuple[Option[Any], ...]
    losses: tuple[Loss, ...]
    facts: tuple[str, ...]
    best: NDArray[np.int64]

    def best_in(self, fixed: dict[str, Value]) -> Option[Any] | None:
        """Return the best option in the home where the open facts have these values."""
        at = tuple(self.homes.at[fact][fixed[fact]] for fact in self.facts)
        number = int(self.best[at])
        return None if number == NONE else self.options[number]


class Laid(NamedTuple):
    """An option's soundness and criteria over all the facts that matter to any option."""

    severity: NDArray[np.int8]
    criteria: tuple[Numbers, ...]


def rank(homes: Homes, options: Sequence[Option[Any]]) -> Ranking:
    """Order options, find the best in each home, and name the winner over each loser."""
    facts = in_order(
        homes,
        (f for o in options for f in (*o.sound.facts, *criteria_of(o).facts)),
    )
    laid = [lay_out(homes, option, facts) for option in options]
    order = sorted(range(len(options)), key=lambda i: typical(laid[i]))
    options, laid = [options[i] for i in order], [laid[i] for i in order]
    front, lost = split(laid)
    losses = [
        Loss(options[i], options[j], better_in(laid[j], laid[i])) for i, j in sorted(lost.items())
    ]
    shape = tuple(len(homes.open[fact]) for fact in facts)
    return Ranking(
        homes,
        tuple(options),
        tuple(options[i] for i in front),
        tuple(losses),
        facts,
        best_of(laid, shape),
    )


def split(laid: Sequence[Laid]) -> tuple[list[int], dict[int, int]]:
    """Return which options nothing beats, and for each other one that beats it."""
    front: list[int] = []
    lost: dict[int, int] = {}
    for i, each in enumerate(laid):
        winner = next((j for j in front if beats(laid[j], each)), None)
        if winner is not None:
            lost[i] = winner
            continue
        overtaken = [j for j in front if beats(each, laid[j])]
        lost.update(dict.fromkeys(overtaken, i))
        front = [j for j in front if j not in overtaken] + [i]
    for i, winner in lost.items():
        while winner in lost:
            winner = lost[winner]
        lost[i] = winner
    return front, lost


def criteria_of(option: Option[Any]) -> Spread[Criteria]:
    """Return what an option is compared on."""
    found: Spread[Criteria] = option.design.criteria
    return found


def lay_out(homes: Homes, option: Option[Any], facts: tuple[str, ...]) -> Laid:
    """Return soundness and criteria of an option over all the facts that matter."""
    spread = criteria_of(option)
    shape = tuple(len(homes.open[f]) if f in spread.facts else 1 for f in facts)
    known = [UNKNOWN if isinstance(value, Missing) else value for value in spread.values]
    parts = []
    for part in range(len(Criteria._fields)):
        column = np.asarray([float(value[part]) for value in known])
        parts.append(column[spread.index].reshape(shape))
    return Laid(option.sound.over(facts), tuple(parts))


def typical(laid: Laid) -> tuple[float, ...]:
    """Return a key that sorts an option before any it could lose to."""
    means = (float(part.mean()) for part in laid.criteria)
    return (float(laid.severity.mean()), *means)


def beats(winner: Laid, loser: Laid) -> bool:
    """Say whether one option is sound wherever another is, never worse and somewhere better."""
    here = loser.severity < 2
    if bool((here & (winner.severity > loser.severity)).any()):
        return False
    *weighed, order = zip(winner.criteria, loser.criteria, strict=True)
    if any(bool((here & (mine > theirs)).any()) for mine, theirs in weighed):
        return False
    if any(bool((here & (mine < theirs)).any()) for mine, theirs in weighed):
        return True
    return bool((here & (order[0] < order[1])).any()) and not bool(
        (here & (order[0] > order[1])).any()
    )


def better_in(winner: Laid, loser: Laid) -> tuple[str, ...]:
    """Name the criteria in which the winner is better in some home where both are sound."""
    here = loser.severity < 2
    both = zip(Criteria._fields, winner.criteria, loser.criteria, strict=True)
    found = tuple(name for name, mine, theirs in both if bool((here & (mine < theirs)).any()))
    return tuple(name for name in found if name != "order") or found


def best_of(laid: Sequence[Laid], shape: tuple[int, ...]) -> NDArray[np.int64]:
    """Return the best option in each home: the soundest, then part by part."""
    best = np.full(shape, NONE, np.int64)
    held: list[NDArray[Any]] = [np.full(shape, 2.0)]
    held += [np.full(shape, np.inf) for _ in Criteria._fields]
    for number, each in enumerate(laid):
        mine = [np.broadcast_to(a, shape) for a in (each.severity.astype(float), *each.criteria)]
        better, equal = np.zeros(shape, bool), each.severity < 2
        for ours, theirs in zip(mine, held, strict=True):
            better = better | (equal & (ours < theirs))
            equal = equal & (ours == theirs)
        best = np.where(better, number, best)
        held = [np.where(better, a, b) for a, b in zip(mine, held, strict=True)]
    return best
