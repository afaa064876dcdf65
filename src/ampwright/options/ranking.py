"""Which option is best in each home, which lose to another, and what is left to choose from.

The best is the least that serves: no wait before a wait, the cars' need before anything asked for
beyond it, then the least price. What the customer said matters most comes before all of these but
the cars' need.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from ampwright.foundations.answers import Missing, Value

from .best import best_of, best_variant
from .cells import Cells, Numbers
from .choices import Choice
from .criteria import NONE, Criteria, Order, Standing
from .front import better_in, split
from .homes import Homes
from .search import Option
from .spread import Spread

PRIORITY: Final = "wishes.priority"
MATTERS: Final = {
    "price": "price_p",
    "wait": "wait",
    "speed": "slowness_kw",
    "sight": "seen",
    "room to grow": "cramped",
}
"""What options are compared on, by what a customer may say matters most."""


@dataclass(frozen=True, slots=True, eq=False)
class Loss:
    """An option that loses to another, and in what."""

    option: Option[Any]
    winner: Option[Any]
    better_in: tuple[str, ...]


@dataclass(frozen=True, slots=True, eq=False)
class Ranking:
    """The options in order, the ones left after the losers, and the best in each home.

    ``cells`` are the homes told apart by what matters to any option. ``best`` holds, for each
    of them, the position in ``options``, or −1 where no option is sound or can be said.
    ``order`` are the criteria, the most telling first, by their places.
    ``leading`` is the choice that serves best on the whole, taken in each home with the remedies
    it needs there; where it does not hold, the best.
    """

    cells: Cells
    options: tuple[Option[Any], ...]
    front: tuple[Option[Any], ...]
    losses: tuple[Loss, ...]
    best: NDArray[np.int64]
    leading: NDArray[np.int64]
    order: Order

    @property
    def facts(self) -> tuple[str, ...]:
        """The open facts that matter to any option."""
        return self.cells.facts

    def best_in(self, fixed: Mapping[str, Value]) -> Option[Any] | None:
        """Return the best option in the home where the open facts have these values."""
        here = Cells.one(self.cells.homes, fixed)
        standings = standings_of(here, self.options)
        number = int(best_of(standings, here.count, self.order)[0])
        return None if number == NONE else self.options[number]

    def leading_in(self, cells: Cells) -> NDArray[np.int64]:
        """Return what ``leading`` would hold for other cells over the same facts."""
        standings = standings_of(cells, self.options)
        return led(self.options, standings, best_of(standings, cells.count, self.order), self.order)


def rank(homes: Homes, options: Sequence[Option[Any]]) -> Ranking:
    """Order options, find the best in each home, and name the winner over each loser."""
    cells = Cells.over(homes, (fact for option in options for fact in facts_of(option)))
    standings = standings_of(cells, options)
    order = order_for(homes.known.get(PRIORITY))
    groups = grouped(options, standings, cells, order)
    keys = [
        (*groups[bare(o.choice)], *typical(each, cells, order))
        for o, each in zip(options, standings, strict=True)
    ]
    places = sorted(range(len(options)), key=keys.__getitem__)
    options, standings = [options[i] for i in places], [standings[i] for i in places]
    front, lost = split(standings, cells.count)
    losses = [
        Loss(options[i], options[j], better_in(standings[j], standings[i]))
        for i, j in sorted(lost.items())
    ]
    best = best_of(standings, cells.count, order)
    return Ranking(
        cells,
        tuple(options),
        tuple(options[i] for i in front),
        tuple(losses),
        best,
        led(options, standings, best, order),
        order,
    )


def order_for(stated: Value | None) -> Order:
    """Return the criteria in the order in which they tell, by what was said to matter most.

    The cars' need before anything, then what was said, then the firm's own order.

    Examples
    --------
    >>> [Criteria._fields[i] for i in order_for("sight")][:4]
    ['uncovered', 'seen', 'wait', 'short_kw']
    >>> order_for("none stated") == order_for(None) == tuple(range(len(Criteria._fields)))
    True
    """
    firms = Criteria._fields
    first = ("uncovered", MATTERS[stated]) if isinstance(stated, str) and stated in MATTERS else ()
    names = dict.fromkeys((*first, *firms))
    return tuple(firms.index(name) for name in names)


def led(
    options: Sequence[Option[Any]],
    standings: Sequence[Standing],
    best: NDArray[np.int64],
    order: Order,
) -> NDArray[np.int64]:
    """Return the first choice's best variant in each home, or the best where none is sound."""
    if not options:
        return best
    wanted = bare(options[0].choice)
    variants = [i for i, option in enumerate(options) if bare(option.choice) == wanted]
    chosen = best_of([standings[i] for i in variants], len(best), order)
    return np.where(chosen == NONE, best, np.asarray(variants)[np.maximum(chosen, 0)])


def bare(choice: Choice) -> Choice:
    """Return a choice without what was laid over the home for it."""
    return replace(choice, remedies=())


def grouped(
    options: Sequence[Option[Any]], standings: Sequence[Standing], cells: Cells, order: Order
) -> dict[Choice, tuple[float, ...]]:
    """Return the standing of each choice, its remedies taken only in the homes that need them."""
    together: dict[Choice, list[Standing]] = {}
    for option, each in zip(options, standings, strict=True):
        together.setdefault(bare(option.choice), []).append(each)
    return {
        choice: typical(best_variant(each, cells.count, order), cells, order)
        for choice, each in together.items()
    }


def facts_of(option: Option[Any]) -> Iterator[str]:
    """Yield the open facts that an option's soundness and criteria depend on."""
    yield from option.sound.facts
    for name in Criteria._fields:
        yield from criterion(option, name).facts


def criterion(option: Option[Any], name: str) -> Spread[float]:
    """Return one of the things an option is compared on."""
    found: Spread[float] = getattr(option.design.criteria, name)
    return found


def standings_of(cells: Cells, options: Sequence[Option[Any]]) -> list[Standing]:
    """Return soundness and criteria of options in each of some cells."""
    columns: dict[Spread[float], Numbers] = {}
    truths = {option.sound: option.sound.at(cells) for option in options}

    def column(spread: Spread[float]) -> Numbers:
        if spread not in columns:
            values: tuple[float | Missing, ...] = spread.values
            each = np.asarray([0.0 if isinstance(v, Missing) else float(v) for v in values])
            columns[spread] = each[cells.at(spread)]
        return columns[spread]

    return [
        Standing(
            truths[option.sound],
            tuple(column(criterion(option, name)) for name in Criteria._fields),
        )
        for option in options
    ]


def standing_of(cells: Cells, option: Option[Any]) -> Standing:
    """Return soundness and criteria of one option in each of some cells."""
    return standings_of(cells, (option,))[0]


def typical(standing: Standing, cells: Cells, order: Order) -> tuple[float, ...]:
    """Return what an option comes to on the average of the homes, most telling part first.

    Rounded, so that equal averages do not differ by the order of their sums.
    """
    parts: list[NDArray[Any]] = [standing.severity, *(standing.criteria[i] for i in order)]
    return tuple(round(cells.mean(part) if part.ndim else float(part), 9) for part in parts)
