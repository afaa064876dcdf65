"""How many questions it takes: by worth, by fixed orders, and by the best order there is.

Run: python benchmarks/bench_asking.py [--quick]

Facts of a complete home are opened, and every home that may then be is asked through until its
decision is certain and its price lies within a hundred pounds. Beside it: of how many homes that
nobody has described something can be said after six questions on the telephone.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date
from functools import cache
from itertools import permutations
from pathlib import Path
from random import Random

import numpy as np
from numpy.typing import NDArray

from ampwright.firm.asking import Channel
from ampwright.firm.basis import Basis, load_basis
from ampwright.foundations.answers import Value
from ampwright.options.asking.asked import (
    DRAWS,
    SEED,
    explore,
    lists_closed,
    order_of,
    visit_p,
    worths,
)
from ampwright.options.asking.drawing import draw
from ampwright.options.asking.leading import found_in
from ampwright.options.asking.possible_homes import likely_range
from ampwright.options.asking.remaining import Remaining, whole
from ampwright.options.asking.supposing import homes_supposed, supposing
from ampwright.options.asking.trying import remaining_of
from ampwright.options.asking.worth import NEAR_P, turns_on
from ampwright.options.homes import Homes
from ampwright.options.open_homes import homes_of
from ampwright.options.outlook import outlook
from ampwright.survey.folding import as_found
from ampwright.survey.homefile import read

EXAMPLE = Path(__file__).parents[1] / "examples" / "quillbrook-close.toml"
CALLS = sorted((EXAMPLE.parent / "calls").glob("*.toml"))
PHONE_FACTS = 6
MANY = 400
MANY_SEED = 99
ORDERS = 200

OPENED: Mapping[str, Mapping[Value, float]] = {
    "supply.main_fuse_a": {60.0: 0.25, 80.0: 0.37, 100.0: 0.38},
    "supply.looped": {False: 0.9, True: 0.1},
    "boards.main.spare_ways": {0: 0.5, 2: 0.5},
    "loads.shower.present": {False: 0.55, True: 0.45},
    "boards.main.surge_protection": {False: 0.7, True: 0.3},
    "services.gas.bond_connected": {False: 0.05, True: 0.95},
    "supply.isolator": {"none": 0.55, "two pole": 0.45},
    "supply.tails_mm2": {16.0: 0.35, 25.0: 0.65},
}
"""Facts that are opened in the order of the survey, and how common each answer is."""
KNOWN: Mapping[str, Value] = {"loads.shower.amps_a": 37.0}

Cells = NDArray[np.bool_]
Next = Callable[[Cells, frozenset[str]], str]


def opened(homes: Homes, count: int) -> Homes:
    """Return the home with so many of its facts opened."""
    further = dict(list(OPENED.items())[:count])
    return Homes(
        {**{k: v for k, v in homes.known.items() if k not in further}, **KNOWN},
        {key: tuple(shares) for key, shares in further.items()},
        {key: tuple(shares.values()) for key, shares in further.items()},
        homes.build,
    )


def settled(homes: Remaining, cells: Cells) -> bool:
    """Whether the homes left lead to one decision and to prices that lie near enough."""
    price = homes.usual_p[cells]
    if np.unique(homes.decision[cells]).size > 1 or np.isnan(price).any() != np.isnan(price).all():
        return False
    return bool(np.isnan(price).all() or price.max() - price.min() <= NEAR_P)


def narrowed(homes: Remaining, cells: Cells) -> Remaining:
    """Return the homes that are left."""
    weights = homes.weights[cells]
    return Remaining(
        values=homes.values,
        numbers={key: each[cells] for key, each in homes.numbers.items()},
        weights=weights / weights.sum(),
        decision=homes.decision[cells],
        low_p=homes.low_p[cells],
        usual_p=homes.usual_p[cells],
        high_p=homes.high_p[cells],
    )


def questions(homes: Remaining, following: Next) -> NDArray[np.float64]:
    """Return how many questions each home takes, asked in an order that may turn on answers."""
    taken = np.zeros(homes.count)
    waiting: list[tuple[Cells, frozenset[str]]] = [(np.ones(homes.count, bool), frozenset())]
    while waiting:
        cells, asked = waiting.pop()
        if settled(homes, cells):
            continue
        fact = following(cells, asked)
        taken[cells] += 1
        for number in np.unique(homes.numbers[fact][cells]):
            waiting.append((cells & homes.where(fact, int(number)), asked | {fact}))
    return taken


def by_worth(homes: Remaining, basis: Basis) -> Next:
    """Return the order by worth: each question when its turn comes, from what is left."""

    def following(cells: Cells, asked: frozenset[str]) -> str:
        left = narrowed(homes, cells)
        return max(
            (key for key in homes.numbers if key not in asked),
            key=lambda key: worth(left, key, basis),
        )

    return following


def worth(homes: Remaining, key: str, basis: Basis) -> tuple[float, float]:
    """Return how a question stands beside others, minutes apart."""
    turns = turns_on(homes, key)
    return (turns.settles, turns.moves_p + turns.changes * visit_p(basis))


def in_order(order: Sequence[str]) -> Next:
    """Return a fixed order."""
    return lambda _cells, asked: next(key for key in order if key not in asked)


def least(homes: Remaining) -> float:
    """Return how many questions the best order takes on the average, by full search."""

    @cache
    def rest(answers: frozenset[tuple[str, int]]) -> float:
        cells = np.ones(homes.count, bool)
        for fact, number in answers:
            cells = cells & homes.where(fact, number)
        if settled(homes, cells):
            return 0.0
        asked = {fact for fact, _ in answers}
        best = np.inf
        for fact in homes.numbers:
            if fact in asked:
                continue
            after = 0.0
            for number in np.unique(homes.numbers[fact][cells]).tolist():
                here = cells & homes.where(fact, number)
                share = homes.weights[here].sum() / homes.weights[cells].sum()
                after += share * rest(answers | {(fact, number)})
            best = min(best, 1 + after)
        return best

    return rest(frozenset())


def orders(facts: Sequence[str], most: int) -> Iterator[tuple[str, ...]]:
    """Yield the survey order, then every other one, or so many at random."""
    yield tuple(facts)
    every = list(permutations(facts)) if len(facts) <= 5 else []
    chance = Random(SEED)
    yield from every or (tuple(chance.sample(list(facts), len(facts))) for _ in range(most))


def count_questions(homes: Homes, basis: Basis, most: int) -> bool:
    """Print how many questions it takes by each way; return whether worth beats fixed orders."""
    remaining = whole(outlook(homes, basis).ranking)
    facts = [key for key in OPENED if key in remaining.numbers]
    mine = questions(remaining, by_worth(remaining, basis))
    fixed = [questions(remaining, in_order(order)) for order in orders(facts, most)]
    average = [float(each @ remaining.weights) for each in fixed]
    own = float(mine @ remaining.weights)
    print(f"\n{len(facts)} facts that matter of {len(homes.open)} open, {remaining.count} homes")
    print(f"by worth              {own:6.2f} questions, at most {mine.max():.0f}")
    print(f"in the survey order   {average[0]:6.2f}")
    print(f"best of {len(fixed):4d} fixed    {min(average):6.2f}, worst {max(average):.2f}")
    if len(facts) <= 5:
        print(f"best order there is   {least(remaining):6.2f}, by full search")
    worst = int(mine.argmax())
    home = {key: remaining.values[key][int(each[worst])] for key, each in remaining.numbers.items()}
    print(f"worst home: {', '.join(f'{key} {value}' for key, value in home.items())}")
    return own <= min(average) + 1e-9 and mine.max() <= len(facts)


def after_the_telephone(basis: Basis, count: int, facts: int) -> None:
    """Print of how many drawn homes something can be said after some questions by telephone."""
    supposed = supposing(as_found(()), basis.asking)
    homes, _ = lists_closed(homes_supposed(supposed, basis))
    drawn = draw(homes, count, SEED + 1, supposed.same)
    began, speakable, certain, widths, asks = time.perf_counter(), 0, 0, [], 0
    for number in range(count):
        truth, left = drawn.values_in(number), homes
        for step in range(facts + 1):
            seen = explore(left, basis, supposed.same)
            asks += 1
            phone = [
                each
                for each in worths(seen.turns, as_found(()), basis)
                if each.channel is Channel.PHONE and each.key in left.open
            ]
            if step == facts or not phone:
                break
            best = min(phone, key=order_of)
            left = left.knowing({best.key: truth[best.key]})
        speakable += seen.holds.speakable
        certain += seen.holds.certain is not None
        widths.append(seen.holds.likely.width_p / 100 if seen.holds.likely else np.nan)
    took = (time.perf_counter() - began) / asks
    print(f"\nafter {facts} answers by telephone, {count} homes that nobody has described")
    print(f"something can be said of {speakable}, a decision of {certain}")
    print(f"likely range: middle home £{np.nanmedian(widths):.0f} wide; {took:.2f} s a question")


def few_beside_many(basis: Basis, calls: Sequence[Path], many: int) -> None:
    """Print how far the likely range of the homes drawn for a call lies from that of many more."""
    print(f"\nlikely range of {DRAWS} drawn homes, and by how much that of {many} others is off it")
    apart = []
    for call in calls:
        folded = as_found(read(call.read_text("utf-8"), call.name).records)
        supposed = supposing(folded, basis.asking)
        homes, _ = lists_closed(homes_supposed(supposed, basis))
        few, more = (
            likely_range(remaining_of(drawn, found_in(drawn, basis)))
            for drawn in (
                draw(homes, DRAWS, SEED, supposed.same),
                draw(homes, many, MANY_SEED, supposed.same),
            )
        )
        if few is None or more is None:
            continue
        low, high = (more.low_p - few.low_p) / 100, (more.high_p - few.high_p) / 100
        apart += [abs(low), abs(high)]
        ends = f"£{few.low_p / 100:,.0f} to £{few.high_p / 100:,.0f}"
        print(f"  {call.stem:20} {ends}, ends {low:+.0f} and {high:+.0f}")
    print(f"on the average £{np.mean(apart):.0f}, at most £{max(apart):.0f}")


def main(words: list[str]) -> int:
    """Print all of it; exit 1 when some fixed order takes fewer questions than worth."""
    quick = "--quick" in words
    basis = load_basis(design_date=date(2026, 11, 25), profile="demo")
    homes = homes_of(as_found(read(EXAMPLE.read_text("utf-8"), EXAMPLE.name).records), basis)
    better = [count_questions(opened(homes, n), basis, ORDERS) for n in ((3,) if quick else (5, 8))]
    after_the_telephone(basis, 1 if quick else 10, 1 if quick else PHONE_FACTS)
    few_beside_many(basis, CALLS[:1] if quick else CALLS, DRAWS if quick else MANY)
    return 0 if all(better) else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
