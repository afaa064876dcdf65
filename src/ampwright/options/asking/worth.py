"""What it would be worth to know a fact: how far price and decision turn on it.

Two answers are taken by their chances, all else of a home the same: how far apart the prices
lie, and how often the decisions differ. A fact on which neither turns in any home is worth
nothing and is never asked.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from typing import Final

import numpy as np
from numpy.typing import NDArray

from ampwright.firm.asking import Channel
from ampwright.foundations.quantity import Minutes

from ..chances import own
from ..homes import Homes
from ..spread import Index
from .remaining import Numbers, Remaining

NEAR_P: Final = 10000
"""Prices that lie within this are spoken of as one."""


@dataclass(frozen=True, slots=True)
class Turns:
    """How far a home turns on one fact, all else the same, over two answers by their chances.

    ``moves_p``: how far apart the prices lie, on the average. ``changes``: how often the
    decisions differ. ``narrows_p``: by how much the range of all prices narrows with the answer,
    on the average. ``settles``: by how much the chance falls that two homes that remain are not
    alike to speak of. ``any``: whether some home comes to something else.
    """

    moves_p: float
    changes: float
    narrows_p: float
    settles: float
    any: bool


@dataclass(frozen=True, slots=True)
class Worth:
    """One fact that decides: what the answer is worth, who can give it, and what asking takes.

    ``channel`` is the nearest that can answer. ``worth_p`` puts both parts of the worth in pence:
    a decision that turns is a visit for nothing. ``disputed`` facts were answered, but equal
    evidence contradicts itself; of ``overruled`` ones weaker evidence says otherwise.
    """

    key: str
    turns: Turns
    worth_p: float
    channel: Channel
    minutes: Minutes
    ask: str
    look: str
    disputed: bool = False
    overruled: bool = False

    @property
    def narrows_p(self) -> float:
        """By how much the range of price narrows, on the average of the answers."""
        return self.turns.narrows_p

    @property
    def changes(self) -> float:
        """How often the decision turns on it."""
        return self.turns.changes

    @property
    def per_minute_p(self) -> float:
        """What it is worth in pence for each minute it takes, asked by itself."""
        return self.worth_p / self.minutes

    @property
    def settles_a_minute(self) -> float:
        """How much it settles for each minute it takes, asked by itself."""
        return self.turns.settles / self.minutes


def turns_on(homes: Remaining, fact: str) -> Turns:
    """Return how far possible homes turn on a fact; exact where the homes are whole."""
    tables = Alike(homes, fact)
    price, decision = tables.of(homes.usual_p), tables.of(homes.decision.astype(float))
    outcome = tables.of(homes.outcome.astype(float))
    moves = changes = 0.0
    differs = False
    for one, other in combinations(range(tables.size), 2):
        chance = 2 * tables.weights[:, one] * tables.weights[:, other] / tables.total
        both = chance > 0
        apart = np.abs(price[:, one] - price[:, other])
        moves += float(np.nansum(np.where(both, chance * apart, 0.0)))
        unlike = decision[:, one] != decision[:, other]
        changes += float(chance[both & unlike].sum())
        differs = differs or bool((outcome[:, one] != outcome[:, other])[both].any())
    return Turns(moves, changes, narrowing(homes, fact), settling(homes, fact), differs)


def turns_beside(homes: Remaining, of: Homes, fact: str, at: Sequence[Sequence[int]]) -> Turns:
    """Return how far a few homes turn on a fact, from the homes set beside them.

    ``at`` gives, for each of the few, the home for each value of the fact.
    """
    chance = own(of, fact)
    each = [_beside(homes, chance, np.asarray(cells)) for cells in at]
    share = 1 / len(each)
    return Turns(
        moves_p=sum(one.moves_p for one in each) * share,
        changes=sum(one.changes for one in each) * share,
        narrows_p=sum(one.narrows_p for one in each) * share,
        settles=sum(one.settles for one in each) * share,
        any=any(one.any for one in each),
    )


def _beside(homes: Remaining, chance: Numbers, cells: Index) -> Turns:
    """Return how far one home turns on a fact, from that home with each value of it."""
    both = np.multiply.outer(chance, chance)
    price, decision = homes.usual_p[cells], homes.decision[cells]
    outcome = homes.outcome[cells]
    low, high = homes.low_p[cells], homes.high_p[cells]
    narrows = 0.0
    if not np.isnan(low).all():
        narrows = float(np.nanmax(high) - np.nanmin(low) - np.nansum(chance * (high - low)))
    here = np.zeros(homes.count, bool)
    here[cells] = True
    weights = np.zeros(homes.count)
    weights[cells] = chance
    return Turns(
        moves_p=float(np.nansum(both * np.abs(np.subtract.outer(price, price)))),
        settles=unlike(replace(homes, weights=weights), here),
        changes=float(both[np.not_equal.outer(decision, decision)].sum()),
        narrows_p=max(0.0, narrows),
        any=bool((outcome != outcome[0])[chance > 0].any()),
    )


class Alike:
    """Homes in rows: alike in all but one fact, whose values stand beside each other."""

    def __init__(self, homes: Remaining, fact: str) -> None:
        self.size = len(homes.values[fact])
        rest = np.zeros(homes.count, np.int64)
        for other, numbers in homes.numbers.items():
            if other != fact:
                rest = rest * len(homes.values[other]) + numbers
        _, row = np.unique(rest, return_inverse=True)
        self._at = (np.asarray(row).reshape(-1), homes.numbers[fact])
        self._shape = (int(self._at[0].max()) + 1, self.size)
        self.weights = self.of(homes.weights, 0.0)
        self.total = np.maximum(self.weights.sum(axis=1), np.finfo(float).tiny)

    def of(self, each: Numbers, missing: float = np.nan) -> Numbers:
        """Return something of every home, in rows; as given where there is no such home."""
        found = np.full(self._shape, missing)
        found[self._at] = each
        return found


def narrowing(homes: Remaining, fact: str) -> float:
    """Return by how much the range of price narrows with the answer, on the average."""
    now = width(homes, np.ones(homes.count, bool))
    after = 0.0
    for number in range(len(homes.values[fact])):
        where = homes.where(fact, number)
        if where.any():
            after += float(homes.weights[where].sum()) * width(homes, where)
    return max(0.0, now - after)


def settling(homes: Remaining, fact: str) -> float:
    """Return by how much the chance falls that two homes that remain are not alike."""
    now = unlike(homes, np.ones(homes.count, bool))
    after = 0.0
    for number in range(len(homes.values[fact])):
        where = homes.where(fact, number)
        after += float(homes.weights[where].sum()) * unlike(homes, where)
    return max(0.0, now - after)


def unlike(homes: Remaining, where: NDArray[np.bool_]) -> float:
    """Return the chance that two of some homes, drawn one after the other, are not alike.

    Alike are homes with one decision whose prices lie near each other, or with none.
    """
    weights = homes.weights[where]
    total = float(weights.sum())
    if total <= 0.0:
        return 0.0
    price, decision, alike = homes.usual_p[where], homes.decision[where], 0.0
    for number in np.unique(decision):
        priced = (decision == number) & ~np.isnan(price)
        alike += float(weights[(decision == number) & np.isnan(price)].sum()) ** 2
        order = np.argsort(price[priced], kind="stable")
        prices, each = price[priced][order], weights[priced][order]
        upto = np.concatenate([[0.0], np.cumsum(each)])
        high = np.searchsorted(prices, prices + NEAR_P, side="right")
        low = np.searchsorted(prices, prices - NEAR_P, side="left")
        alike += float((each * (upto[high] - upto[low])).sum())
    return max(0.0, 1.0 - alike / total**2)


def width(homes: Remaining, where: NDArray[np.bool_]) -> float:
    """Return the range from the lowest to the highest price of some homes; nought without one."""
    low, high = homes.low_p[where], homes.high_p[where]
    if np.isnan(low).all():
        return 0.0
    return float(np.nanmax(high) - np.nanmin(low))
