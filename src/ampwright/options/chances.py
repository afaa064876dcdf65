"""How likely the homes are: the exact chances of some facts together, and homes drawn by them."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from ampwright.foundations.answers import Value

from .homes import Homes
from .spread import Index

Numbers = NDArray[np.float64]


def joint(homes: Homes, facts: tuple[str, ...]) -> Numbers:
    """Return how likely each combination of some open facts is, an axis each; they sum to one."""
    weights = np.ones((), np.float64)
    for fact in facts:
        weights = np.multiply.outer(weights, own(homes, fact))
    return np.asarray(weights)


def own(homes: Homes, fact: str) -> Numbers:
    """Return how likely each value of a fact is by itself."""
    made: Numbers | None = homes.pool.get((own, fact))
    if made is None:
        each = np.asarray(homes.chances[fact], np.float64)
        made = homes.pool[own, fact] = each / each.sum()
    return made


def drawn(homes: Homes) -> Mapping[str, Index]:
    """Return the value number of every open fact in each drawn home; drawn once and kept."""
    made: Mapping[str, Index] | None = homes.pool.get(drawn)
    if made is None:
        chance = np.random.default_rng(homes.drawing.seed)
        draws = homes.drawing.draws
        made = homes.pool[drawn] = {
            fact: chance.choice(len(homes.open[fact]), draws, p=own(homes, fact))
            for fact in homes.open
        }
    return made


def most_usual(homes: Homes, fixed: Mapping[str, Value]) -> dict[str, Value]:
    """Return a value for each open fact: those that are fixed, and the most common of the rest."""
    usual: Mapping[str, Value] | None = homes.pool.get(most_usual)
    if usual is None:
        usual = homes.pool[most_usual] = {
            fact: values[int(np.argmax(own(homes, fact)))] for fact, values in homes.open.items()
        }
    return {**usual, **fixed}
