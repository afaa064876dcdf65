"""Which option is best in each home, which lose to another, and what is left to choose from.

There is no weighted score. An option loses when another is sound wherever it is, is nowhere
worse in wait, speed, price, sight or room to grow, and is somewhere better; ties go to the firm's
own order. The best is the least that serves: no wait before a wait, the cars' need before anything
asked for beyond it, then the least price. What the customer said matters most comes before all of
these but the cars' need.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any, Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from ampwright.foundations.answers import Missing, Value

from .cells import Cells, Numbers
from .choices import Choice
from .homes import Homes
from .search import Option
from .spread import Spread

NONE: Final = -1

Order = tuple[int, ...]
"""Places among the criteria, the most telling first."""


class Criteria(NamedTuple):
    """What options are compared on, in this order; less is better in every part.

    ``wait``: nought when the network operator is told afterwards, one when it must be asked
    first, two when the line must be strengthened as well, three when work must stop.
    ``uncovered``: one where the cheap hours do not hold the cars' need with the firm's margin.
    ``short_kw``: what is lacking of the power asked for, as far as the cars can use it.
    ``price_p``: the usual price with tax, in pence. ``work_min``: the usual minutes.
    ``slowness_kw``: the usable power with its sign turned. ``seen``: one where the point is seen
    from the street. ``cramped``: of two further loads, how many find no room. ``order``: the
    firm's own order among equals.

    While exploring each part is a spread of its own; one that cannot be worked out yet counts
    alike for every option.
    """

    wait: float
    uncovered: float
    short_kw: float
    price_p: float
    work_min: float
    slowness_kw: float
    seen: float
    cramped: float
    order: float


WEIGHED: Final = ("wait", "slowness_kw", "price_p", "seen", "cramped")
"""What an option may lose in; ties go by ``order``."""
WEIGHED_AT: Final = tuple(Criteria._fields.index(name) for name in WEIGHED)
ROOM: Final = 1 << 20
"""So many numbers are compared at once: more would take memory and save no time."""
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
        laid = laid_out(here, self.options)
        number = int(best_of(laid, here.count, self.order)[0])
        return None if number == NONE else self.options[number]

    def leading_in(self, cells: Cells) -> NDArray[np.int64]:
        """Return what ``leading`` would hold for other cells over the same facts."""
        laid = laid_out(cells, self.options)
        return led(self.options, laid, best_of(laid, cells.count, self.order), self.order)


class Laid(NamedTuple):
    """An option's soundness and criteria in each cell; a single one where all are alike."""

    severity: NDArray[np.int8]
    criteria: tuple[Numbers, ...]


def rank(homes: Homes, options: Sequence[Option[Any]]) -> Ranking:
    """Order options, find the best in each home, and name the winner over each loser."""
    cells = Cells.over(homes, (fact for option in options for fact in facts_of(option)))
    laid = laid_out(cells, options)
    order = order_for(homes.known.get(PRIORITY))
    groups = grouped(options, laid, cells, order)
    keys = [
        (*groups[bare(o.choice)], *typical(each, cells, order))
        for o, each in zip(options, laid, strict=True)
    ]
    places = sorted(range(len(options)), key=keys.__getitem__)
    options, laid = [options[i] for i in places], [laid[i] for i in places]
    front, lost = split(laid)
    losses = [
        Loss(options[i], options[j], better_in(laid[j], laid[i])) for i, j in sorted(lost.items())
    ]
    best = best_of(laid, cells.count, order)
    return Ranking(
        cells,
        tuple(options),
        tuple(options[i] for i in front),
        tuple(losses),
        best,
        led(options, laid, best, order),
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
    options: Sequence[Option[Any]], laid: Sequence[Laid], best: NDArray[np.int64], order: Order
) -> NDArray[np.int64]:
    """Return the first choice's best variant in each home, or the best where none is sound."""
    if not options:
        return best
    wanted = bare(options[0].choice)
    variants = [i for i, option in enumerate(options) if bare(option.choice) == wanted]
    chosen = best_of([laid[i] for i in variants], len(best), order)
    return np.where(chosen == NONE, best, np.asarray(variants)[np.maximum(chosen, 0)])


def bare(choice: Choice) -> Choice:
    """Return a choice without what was laid over the home for it."""
    return replace(choice, remedies=())


def grouped(
    options: Sequence[Option[Any]], laid: Sequence[Laid], cells: Cells, order: Order
) -> dict[Choice, tuple[float, ...]]:
    """Return the standing of each choice, its remedies taken only in the homes that need them."""
    together: dict[Choice, list[Laid]] = {}
    for option, each in zip(options, laid, strict=True):
        together.setdefault(bare(option.choice), []).append(each)
    return {
        choice: typical(best_variant(each, cells.count, order), cells, order)
        for choice, each in together.items()
    }


def best_variant(laid: Sequence[Laid], count: int, order: Order) -> Laid:
    """Return soundness and criteria of whichever variant is best in each home."""
    if len(laid) == 1:
        return laid[0]
    best = best_of(laid, count, order)
    chosen = np.maximum(best, 0)
    stacked = [
        np.stack([np.broadcast_to(a, (count,)) for a in arrays]) for arrays in parts_of(laid)
    ]
    severity, *criteria = (np.take_along_axis(each, chosen[None], 0)[0] for each in stacked)
    return Laid(np.where(best == NONE, 2, severity).astype(np.int8), tuple(criteria))


def parts_of(laid: Sequence[Laid]) -> Iterator[list[NDArray[Any]]]:
    """Yield the soundness of each, then each criterion of each."""
    yield [each.severity for each in laid]
    for part in range(len(Criteria._fields)):
        yield [each.criteria[part] for each in laid]


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


def facts_of(option: Option[Any]) -> Iterator[str]:
    """Yield the open facts that an option's soundness and criteria depend on."""
    yield from option.sound.facts
    for name in Criteria._fields:
        yield from criterion(option, name).facts


def criterion(option: Option[Any], name: str) -> Spread[float]:
    """Return one of the things an option is compared on."""
    found: Spread[float] = getattr(option.design.criteria, name)
    return found


def laid_out(cells: Cells, options: Iterable[Option[Any]]) -> list[Laid]:
    """Return soundness and criteria of options in each of some cells."""
    columns: dict[Spread[float], Numbers] = {}

    def column(spread: Spread[float]) -> Numbers:
        if spread not in columns:
            values: tuple[float | Missing, ...] = spread.values
            each = np.asarray([0.0 if isinstance(v, Missing) else float(v) for v in values])
            columns[spread] = each[cells.at(spread)]
        return columns[spread]

    return [
        Laid(
            option.sound.at(cells),
            tuple(column(criterion(option, name)) for name in Criteria._fields),
        )
        for option in options
    ]


def lay_out(cells: Cells, option: Option[Any]) -> Laid:
    """Return soundness and criteria of one option in each of some cells."""
    return laid_out(cells, (option,))[0]


def stacked(arrays: Sequence[NDArray[Any]], count: int) -> Numbers:
    """Return arrays below one another, each over so many cells, or over one that stands for all."""
    made = np.empty((len(arrays), count if any(each.ndim for each in arrays) else 1))
    for row, array in zip(made, arrays, strict=True):
        row[:] = array
    return made


def typical(laid: Laid, cells: Cells, order: Order) -> tuple[float, ...]:
    """Return what an option comes to on the average of the homes, most telling part first.

    Rounded, so that equal averages do not differ by the order of their sums.
    """
    parts: list[NDArray[Any]] = [laid.severity, *(laid.criteria[i] for i in order)]
    return tuple(round(cells.mean(part) if part.ndim else float(part), 9) for part in parts)


def beats(winner: Laid, loser: Laid) -> bool:
    """Say whether one option is sound wherever another is, never worse and somewhere better."""
    here = loser.severity < 2
    if bool((here & (winner.severity > loser.severity)).any()):
        return False
    pairs = [(winner.criteria[i], loser.criteria[i]) for i in WEIGHED_AT]
    if any(bool((here & (ours > other)).any()) for ours, other in pairs):
        return False
    if any(bool((here & (ours < other)).any()) for ours, other in pairs):
        return True
    ours, other = winner.criteria[-1], loser.criteria[-1]
    earlier = bool((here & (ours < other)).any())
    return earlier and not bool((here & (ours > other)).any())


def better_in(winner: Laid, loser: Laid) -> tuple[str, ...]:
    """Name what the winner is better in, in some home where both are sound."""
    here = loser.severity < 2
    both = zip(Criteria._fields, winner.criteria, loser.criteria, strict=True)
    better = {name for name, mine, theirs in both if bool((here & (mine < theirs)).any())}
    return tuple(name for name in WEIGHED if name in better) or ("order",)


def best_of(laid: Sequence[Laid], count: int, order: Order) -> NDArray[np.int64]:
    """Return the best option in each of so many cells: the soundest, then part by part.

    Of options that are equal in every part, the first.
    """
    best = np.full(count, NONE, np.int64)
    at_once = max(1, ROOM // max(1, len(laid)))
    for start in range(0, count if laid else 0, at_once):
        here = slice(start, min(start + at_once, count))
        size = here.stop - start

        def part(arrays: list[NDArray[Any]], here: slice = here, size: int = size) -> Numbers:
            return stacked([each[here] if each.ndim else each for each in arrays], size)

        severity = part([each.severity for each in laid])
        left = np.broadcast_to(severity < 2, (len(laid), size))
        for numbers in (severity, *(part([each.criteria[i] for each in laid]) for i in order)):
            least = np.where(left, numbers, np.inf).min(axis=0)
            left = left & (numbers == least)
        best[here] = np.where(left.any(axis=0), left.argmax(axis=0), NONE)
    return best
