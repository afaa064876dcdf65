"""Which options nothing beats, and which one beats each of the others.

There is no weighted score. An option loses when another is sound wherever it is, is nowhere
worse in wait, speed, price, sight or room to grow, and is somewhere better; ties go to the firm's
own order.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from .criteria import Criteria, Standing, at

WEIGHED: Final = ("wait", "slowness_kw", "price_p", "seen", "cramped")
"""What an option may lose in; ties go by ``order``."""
WEIGHED_AT: Final = tuple(Criteria._fields.index(name) for name in WEIGHED)
GLANCE: Final = 16
"""In so many of the cells options are compared at a glance before they are compared in all."""


def split(standings: Sequence[Standing], count: int) -> tuple[list[int], dict[int, int]]:
    """Return which options nothing beats, and for each other one that beats it."""
    glance = Glance(standings, count)
    front: list[int] = []
    lost: dict[int, int] = {}
    for i, each in enumerate(standings):
        winner = next((j for j in glance.may_beat(i, front) if beats(standings[j], each)), None)
        if winner is not None:
            lost[i] = winner
            continue
        overtaken = {j for j in glance.may_lose(i, front) if beats(each, standings[j])}
        lost.update(dict.fromkeys(sorted(overtaken), i))
        front = [j for j in front if j not in overtaken] + [i]
    for i, winner in lost.items():
        while winner in lost:
            winner = lost[winner]
        lost[i] = winner
    return front, lost


class Glance:
    """Options in a few of the cells: enough to see that most do not beat most others."""

    def __init__(self, standings: Sequence[Standing], count: int) -> None:
        cells = np.unique(np.linspace(0, count - 1, GLANCE).astype(np.int64))
        shape = (len(standings), 1 + len(WEIGHED_AT), len(cells))
        self.numbers: NDArray[np.float64] = np.empty(shape)
        for numbers, each in zip(self.numbers, standings, strict=True):
            parts = (each.severity, *(each.criteria[i] for i in WEIGHED_AT))
            for row, part in zip(numbers, parts, strict=True):
                row[:] = at(part, cells)
        self.sound = self.numbers[:, :1] < 2

    def may_beat(self, loser: int, among: Sequence[int]) -> list[int]:
        """Return those that are nowhere worse, as far as a glance shows."""
        if not among:
            return []
        worse = (self.numbers[among] > self.numbers[loser]) & self.sound[loser]
        return [among[i] for i in np.flatnonzero(~worse.any(axis=(1, 2))).tolist()]

    def may_lose(self, winner: int, among: Sequence[int]) -> list[int]:
        """Return those than which one is nowhere worse, as far as a glance shows."""
        if not among:
            return []
        worse = (self.numbers[winner] > self.numbers[among]) & self.sound[among]
        return [among[i] for i in np.flatnonzero(~worse.any(axis=(1, 2))).tolist()]


def beats(winner: Standing, loser: Standing) -> bool:
    """Say whether one option is sound wherever another is, never worse and somewhere better."""
    here = loser.severity < 2
    if bool((here & (winner.severity > loser.severity)).any()):
        return False
    pairs = [(winner.criteria[i], loser.criteria[i]) for i in WEIGHED_AT]
    pairs = [(ours, other) for ours, other in pairs if ours is not other]
    if any(bool((here & (ours > other)).any()) for ours, other in pairs):
        return False
    if any(bool((here & (ours < other)).any()) for ours, other in pairs):
        return True
    ours, other = winner.criteria[-1], loser.criteria[-1]
    earlier = bool((here & (ours < other)).any())
    return earlier and not bool((here & (ours > other)).any())


def better_in(winner: Standing, loser: Standing) -> tuple[str, ...]:
    """Name what the winner is better in, in some home where both are sound."""
    here = loser.severity < 2

    def better(name: str) -> bool:
        part = Criteria._fields.index(name)
        mine, theirs = winner.criteria[part], loser.criteria[part]
        return mine is not theirs and bool((here & (mine < theirs)).any())

    return tuple(name for name in WEIGHED if better(name)) or ("order",)
