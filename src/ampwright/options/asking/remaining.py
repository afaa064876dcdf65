"""The homes that remain possible: how likely each is, and what it would come to.

The one shape on which range and worth are worked out, whether the homes were gone through whole
or drawn.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

import numpy as np
from numpy.typing import NDArray

from ampwright.foundations.answers import Missing, Value

from ..best import best_of
from ..cells import Cells
from ..criteria import NONE
from ..outlook import decide, decided, lacking
from ..ranking import Ranking, standings_of
from ..spread import Index
from ..supply_side import Decision

Numbers = NDArray[np.float64]
Said = tuple[tuple[Any, ...], Index]
PRICES = ("low_p", "usual_p", "high_p")


@dataclass(frozen=True, eq=False)
class Remaining:
    """Homes that remain possible, one beside the other.

    ``values`` gives what each fact may be and ``numbers`` which of them it is in each home;
    ``weights`` sum to one. ``decision`` holds the number of each home's decision, ``low_p``,
    ``usual_p`` and ``high_p`` the price of what is best there with tax, not a number where nothing
    does. ``says`` holds, by name, what else each home comes to: the values, and which of them it
    is. ``lacking`` gives, for each blank fact, in what share of the homes something cannot be said
    for want of it. ``draws`` is nought where these are all homes.
    """

    values: Mapping[str, tuple[Value, ...]]
    numbers: Mapping[str, Index]
    weights: Numbers
    decision: Index
    low_p: Numbers
    usual_p: Numbers
    high_p: Numbers
    says: Mapping[str, Said] = field(default_factory=dict)
    lacking: Mapping[str, float] = field(default_factory=dict)
    draws: int = 0

    @property
    def count(self) -> int:
        """How many homes there are."""
        return len(self.weights)

    @cached_property
    def outcome(self) -> Index:
        """A number for each home that is the same where decision and price are."""
        columns = np.stack([self.decision, self.low_p, self.usual_p, self.high_p], axis=1)
        _, numbers = np.unique(np.nan_to_num(columns, nan=-1.0), axis=0, return_inverse=True)
        return np.asarray(numbers).reshape(-1)

    def where(self, fact: str, number: int) -> NDArray[np.bool_]:
        """Say in which homes a fact has one of its values."""
        return np.asarray(self.numbers[fact] == number)


def whole(ranking: Ranking) -> Remaining:
    """Return the homes that were gone through, each with what would be best if it were known.

    Homes that the chances rule out are none of them.
    """
    homes = ranking.cells.homes
    unsaid = decide(ranking)[0].get(Decision.UNDETERMINED, 0.0)
    leads = {int(n): ranking.options[n].design for n in np.unique(ranking.best) if n != NONE}
    told = {number: what_it_says(design) for number, design in leads.items()}
    prices = {
        n: [getattr(design.price.total, name) for name in PRICES] for n, design in leads.items()
    }
    spreads = [each for n in leads for each in (*told[n].values(), *prices[n])]
    cells = Cells.over(homes, {*ranking.facts, *(f for each in spreads for f in each.facts)})
    best = best_in(ranking, cells)
    low, usual, high = (np.full(cells.count, np.nan) for _ in PRICES)
    for number, (at_low, at_usual, at_high) in prices.items():
        here = best == number
        low = np.where(here, numbers_at(cells, at_low), low)
        usual = np.where(here, numbers_at(cells, at_usual), usual)
        high = np.where(here, numbers_at(cells, at_high), high)
    return Remaining(
        values={fact: homes.open[fact] for fact in cells.facts},
        numbers={fact: cells.number(fact) for fact in cells.facts},
        weights=cells.weights,
        decision=decided(ranking, cells, best),
        low_p=low,
        usual_p=usual,
        high_p=high,
        lacking=dict.fromkeys(lacking(ranking.front), unsaid),
        says={name: said(cells, best, name, told) for name in SAYS},
        draws=cells.draws,
    )


def best_in(ranking: Ranking, cells: Cells) -> Index:
    """Return the best option in each of some cells, which may tell apart more than it does."""
    if cells is ranking.cells:
        return ranking.best
    return best_of(standings_of(cells, ranking.options), cells.count, ranking.order)


SAYS = ("network", "earthing", "cable")


def what_it_says(design: Any) -> dict[str, Any]:
    """Return what an option comes to beside decision and price: network, earthing, cable."""
    return {
        "network": design.supply.outcome,
        "earthing": design.circuit.earth.earthing,
        "cable": design.circuit.cable.cable,
    }


def said(cells: Cells, best: Index, name: str, told: Mapping[int, Mapping[str, Any]]) -> Said:
    """Return what the best comes to in each home; nothing where there is none, or it is missing."""
    numbers: dict[Any, int] = {None: 0}
    found = np.zeros(cells.count, np.int64)
    for number, each in told.items():
        spread = each[name]
        known = [None if isinstance(value, Missing) else value for value in spread.values]
        at = np.asarray([numbers.setdefault(value, len(numbers)) for value in known])
        found = np.where(best == number, at[cells.at(spread)], found)
    return tuple(numbers), found


def numbers_at(cells: Cells, spread: Any) -> Numbers:
    """Return a number in each home, not a number where it is missing."""
    values = [np.nan if isinstance(each, Missing) else float(each) for each in spread.values]
    return np.asarray(values)[cells.at(spread)]
