"""Drawing homes, and setting homes beside each other that differ in one fact alone."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from ..chances import bound, chance_for, draws, factors_of, own
from ..homes import Homes
from ..spread import Index
from .drawn import HOME, DrawnHomes

Same = Mapping[str, str]
"""For a fact, another that it is always the same as."""


def draw(homes: Homes, count: int, seed: int, same: Same) -> DrawnHomes:
    """Return homes drawn from the chances of their facts, each value as often as its chance says.

    Facts that go together are drawn together. Of each other fact the values are dealt out by
    share and shuffled, so that few draws miss little. An answer to one fact leaves the others as
    they were drawn.
    """
    alone = [group[0] for group in bound(homes) if len(group) == 1]
    others = [each for group in bound(homes) if group[1:] for each in factors_of(homes, group)]
    numbers = draws(others, homes, count, seed)
    for key in alone:
        upto, chance = np.cumsum(own(homes, key)), chance_for(key, seed)
        at = (chance.permutation(count) + chance.random(count)) / count
        numbers[key] = np.minimum(np.searchsorted(upto, at), len(upto) - 1)
    return of(homes, numbers, same)


def first(homes: Homes, drawn: DrawnHomes, count: int, same: Same) -> DrawnHomes:
    """Return the first few of some drawn homes."""
    return of(homes, {key: each[:count] for key, each in drawn.numbers.items()}, same)


def of(homes: Homes, numbers: Mapping[str, Index], same: Same) -> DrawnHomes:
    """Return the homes in which facts have the values of these numbers.

    A fact that is the same as another takes its number.
    """
    alike = {key: numbers[other] for key, other in same.items() if {key, other} <= set(numbers)}
    count = len(next(iter(numbers.values()))) if numbers else 1
    return DrawnHomes(
        known=homes.known,
        open={HOME: tuple(range(count))},
        chances={HOME: (1 / count,) * count},
        build=homes.build,
        memory=homes.memory,
        among=homes.open,
        numbers={**numbers, **alike},
    )


@dataclass(frozen=True, eq=False)
class Beside:
    """Homes set beside a few others: like one of them in all but one fact.

    ``at`` gives, for each fact and each of the first homes, the home for each of its values.
    """

    homes: DrawnHomes
    at: Mapping[str, tuple[tuple[int, ...], ...]]


def beside(
    homes: Homes, first: Sequence[Mapping[str, int]], facts: Iterable[str], same: Same
) -> Beside:
    """Return homes like the first ones but for one fact, for every other value of it."""
    rows = [dict(each) for each in first]
    at: dict[str, tuple[tuple[int, ...], ...]] = {}
    for fact in facts:
        of_fact = []
        for number, each in enumerate(first):
            cells = []
            for value in range(len(homes.open[fact])):
                if value == each[fact]:
                    cells.append(number)
                else:
                    cells.append(len(rows))
                    rows.append({**each, fact: value})
            of_fact.append(tuple(cells))
        at[fact] = tuple(of_fact)
    numbers = {key: np.asarray([row[key] for row in rows], np.int64) for key in homes.open}
    return Beside(of(homes, numbers, same), at)
