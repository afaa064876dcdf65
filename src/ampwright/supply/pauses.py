"""How long a car would have waited under a limit, by what the house really drew."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import Final

from ampwright.foundations.quantity import Amperes, Count, Minutes
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

from .headroom import room

METHOD: Final = Place("Ampwright", at="method, pauses under a limit", trust=Trust.DERIVED)


@computes("tpause", "min", formula="n * step", place=METHOD)
def minutes_of(n: Count, step: Minutes) -> Minutes:
    """Return the minutes of so many steps."""
    return Minutes(n * step)


@dataclass(frozen=True, slots=True)
class Pauses:
    """How long less than a car's least current was left, in all and at a stretch.

    ``read_min`` is how long the house was looked at.
    """

    paused_min: Minutes
    longest_min: Minutes
    read_min: Minutes


def pauses(
    drawn_a: Sequence[Amperes], step_min: Minutes, limit_a: Amperes, least_a: Amperes
) -> Pauses:
    """Return how long the car would have paused under a limit on one line.

    ``drawn_a`` is what the line drew without the car, step by step, in order; within a step
    more may have flowed, so short pauses are missed. What is held in the night a car charges is
    a matter of when it is plugged in: this counts every step.
    """
    short = [bool(room(limit_a, each) < least_a) for each in drawn_a]
    return Pauses(
        paused_min=minutes_of(Count(short.count(True)), step_min),
        longest_min=minutes_of(Count(_longest(short)), step_min),
        read_min=minutes_of(Count(len(short)), step_min),
    )


def _longest(short: Iterable[bool]) -> int:
    """Return how many steps the longest pause takes."""
    runs = [len(list(run)) for pausing, run in groupby(short) if pausing]
    return max(runs, key=int, default=0)
