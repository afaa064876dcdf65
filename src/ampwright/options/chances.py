"""How likely the homes are: the exact chances of some facts together, and homes drawn by them.

What is known of a home weighs on what is not: of facts that go together each tells of the other,
whichever of them was answered. The chances of all open facts are a product of factors, one for
each fact beside those on which it hangs; facts that nobody asks about are summed out one by one.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from functools import reduce
from itertools import product
from math import prod
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from ampwright.firm.together import Condition, GoesWith
from ampwright.foundations.answers import Value

from .homes import Homes
from .spread import Index, in_order

Numbers = NDArray[np.float64]

HARDLY = 1e-9
"""What a share of nought weighs where the answers held say that the two were found together."""


class Factor(NamedTuple):
    """A weight for each combination of values of some open facts, an axis each."""

    facts: tuple[str, ...]
    weights: Numbers


def joint(homes: Homes, facts: tuple[str, ...]) -> Numbers:
    """Return how likely each combination of some open facts is, an axis each; they sum to one."""
    mine = {tuple(fact for fact in facts if fact in each) for each in bound(homes)}
    return multiplied([chances_of(homes, each) for each in mine if each], facts)


def chances_of(homes: Homes, facts: tuple[str, ...]) -> Factor:
    """Return how likely some facts of one group are; kept."""
    made: Factor | None = homes.pool.get((chances_of, facts))
    if made is None:
        group = next(each for each in bound(homes) if facts[0] in each)
        left = factors_of(homes, group)
        for fact in fewest_first(left, set(group).difference(facts)):
            left = without(left, fact)
        weights = multiplied(left, facts)
        made = homes.pool[chances_of, facts] = Factor(facts, weights / weights.sum())
    return made


def own(homes: Homes, fact: str) -> Numbers:
    """Return how likely each value of a fact is, whatever the other open facts are."""
    return chances_of(homes, (fact,)).weights


def bound(homes: Homes) -> tuple[tuple[str, ...], ...]:
    """Return the groups of open facts that go together, one alone if it goes with no other."""
    made: tuple[tuple[str, ...], ...] | None = homes.pool.get(bound)
    if made is None:
        groups = [{fact} for fact in homes.open]
        for factor in factors(homes):
            one = {fact for group in groups if group & set(factor.facts) for fact in group}
            groups = [group for group in groups if not group & one] + ([one] if one else [])
        made = homes.pool[bound] = tuple(in_order(homes, group) for group in groups)
    return made


def drawn(homes: Homes) -> Mapping[str, Index]:
    """Return the value number of every open fact in each drawn home; drawn once and kept."""
    made: Mapping[str, Index] | None = homes.pool.get(drawn)
    if made is None:
        drawing = homes.drawing
        made = homes.pool[drawn] = draws(factors(homes), homes, drawing.draws, drawing.seed)
    return made


def draws(left: Iterable[Factor], homes: Homes, count: int, seed: int) -> dict[str, Index]:
    """Return the value numbers of the facts of some factors, in so many drawn homes.

    Facts are summed out one after the other, and drawn in the opposite order, each beside those
    that are drawn already: exactly by the chances of all of them together.
    """
    made: dict[str, Index] = {}
    for fact, beside in reversed(list(one_by_one(homes, list(left)))):
        others = tuple(made[each] for each in beside.facts[1:])
        made[fact] = one_of(chance_for(fact, seed), beside.weights, others, count)
    return made


def chance_for(fact: str, seed: int) -> np.random.Generator:
    """Return what a fact is drawn by: its own, so that an answer to another draws nothing anew."""
    return np.random.default_rng([seed, *fact.encode()])


def most_usual(homes: Homes, fixed: Mapping[str, Value]) -> dict[str, Value]:
    """Return a value for each open fact: those that are fixed, and the most common of the rest.

    Of facts that go together, each the most common beside those that stand already.
    """
    found: dict[str, Value] = {}
    for group in bound(homes):
        held = tuple((fact, homes.at[fact][fixed[fact]]) for fact in group if fact in fixed)
        usual: Mapping[str, int] | None = homes.pool.get((most_usual, group, held))
        if usual is None:
            usual = homes.pool[most_usual, group, held] = likeliest(homes, group, dict(held))
        found.update((fact, homes.open[fact][number]) for fact, number in usual.items())
    return {fact: found[fact] for fact in homes.open}


def likeliest(homes: Homes, group: tuple[str, ...], held: Mapping[str, int]) -> dict[str, int]:
    """Return the value number of each fact of a group: one after the other the likeliest."""
    left = factors_of(homes, group)
    for fact, number in held.items():
        left = [taken(each, fact, number) for each in left]
    found = dict(held)
    for fact in group:
        if fact not in found:
            alone = left
            for other in fewest_first(left, set(group) - {fact, *found}):
                alone = without(alone, other)
            found[fact] = int(np.argmax(multiplied(alone, (fact,))))
            left = [taken(each, fact, found[fact]) for each in left]
    return found


def factors_of(homes: Homes, group: tuple[str, ...]) -> list[Factor]:
    """Return the factors that weigh the facts of a group."""
    return [each for each in factors(homes) if each.facts and each.facts[0] in group]


def factors(homes: Homes) -> tuple[Factor, ...]:
    """Return the chances of all open facts as a product of factors; kept.

    An answer that is held stands before what is usual: where nothing would be left, a share of
    nought counts as hardly ever.
    """
    made: tuple[Factor, ...] | None = homes.pool.get(factors)
    if made is None:
        made = tuple(product_of(homes))
        if not total(made):
            made = tuple(each._replace(weights=each.weights + HARDLY) for each in made)
        homes.pool[factors] = made
    return made


def total(each: Iterable[Factor]) -> float:
    """Return the sum over everything of a product of factors."""
    left = list(each)
    for fact in fewest_first(left, {fact for one in left for fact in one.facts}):
        left = without(left, fact)
    return float(prod(float(one.weights) for one in left))


def product_of(homes: Homes) -> Iterator[Factor]:
    """Yield the chances of each open fact, and what each known one says of those it hangs on."""
    hanging = {each.fact: each for each in homes.together if is_listed(homes, each)}
    for fact in homes.open:
        if fact not in hanging:
            shares = np.asarray(homes.chances[fact], np.float64)
            yield Factor((fact,), shares / shares.sum())
    for each in hanging.values():
        made = beside_parents(homes, each)
        if made.facts:
            yield made


def is_listed(homes: Homes, each: GoesWith) -> bool:
    """Say whether a fact has only answers whose shares are told; points of a range are none."""
    mine = homes.answers(each.fact)
    told = each.cases[-1].shares
    return bool(mine) and all(any(is_answer(one, value) for one in told) for value in mine)


def beside_parents(homes: Homes, each: GoesWith) -> Factor:
    """Return how common each value of a fact is beside each combination of what it hangs on.

    A case holds only where its facts are known or taken; one that nobody has answered and that
    has no list of answers is in no case.
    """
    parents = tuple(fact for fact in each.parents if fact in homes.open)
    known = {fact: homes.known[fact] for fact in each.parents if fact in homes.known}
    mine = homes.answers(each.fact)
    rows = []
    for values in product(*(homes.open[fact] for fact in parents)):
        here = {**known, **dict(zip(parents, values, strict=True))}
        case = next(case for case in each.cases if all(holds(given, here) for given in case.given))
        rows.append([share_of(case.shares, value) for value in mine])
    shape = (*(len(homes.open[fact]) for fact in parents), len(mine))
    table = np.asarray(rows, np.float64).reshape(shape)
    if each.fact in homes.open:
        return Factor((*parents, each.fact), table)
    return Factor(parents, table[..., 0])


def share_of(shares: Mapping[str, float], value: Value) -> float:
    """Return how common an answer is in a case that lists it."""
    return next(share for answer, share in shares.items() if is_answer(answer, value))


def holds(given: Condition, here: Mapping[str, Value]) -> bool:
    """Say whether a condition holds among some values; not for a fact that has none."""
    if given.fact not in here:
        return False
    value = here[given.fact]
    if given.sign == "<":
        return float(value) < float(given.answer)
    return is_answer(given.answer, value)


def is_answer(answer: str, value: Value) -> bool:
    """Say whether a value is what a file writes so."""
    if isinstance(value, bool):
        return answer == ("yes" if value else "no")
    if isinstance(value, str):
        return answer == value
    try:
        return float(answer) == float(value)
    except ValueError:
        return False


def one_by_one(homes: Homes, left: list[Factor]) -> Iterator[tuple[str, Factor]]:
    """Yield each fact with its weights beside facts that come later; its own axis first."""
    for fact in fewest_first(left, {fact for each in left for fact in each.facts}):
        mine = [each for each in left if fact in each.facts]
        beside = {other for each in mine for other in each.facts} - {fact}
        yield fact, together(homes, mine, (fact, *in_order(homes, beside)))
        left = without(left, fact)


def one_of(
    chance: np.random.Generator, weights: Numbers, others: tuple[Index, ...], draws: int
) -> Index:
    """Return the drawn value numbers of the first axis, beside those of the other axes."""
    at: Any = (slice(None), *others)
    each = weights[at] if others else weights[:, None]
    up_to = np.cumsum(each, axis=0)
    point = chance.random(draws) * up_to[-1]
    found: Index = np.minimum((up_to <= point).sum(axis=0), len(weights) - 1)
    return found


def fewest_first(left: Iterable[Factor], facts: set[str]) -> Iterator[str]:
    """Yield facts in the order in which summing them out makes the smallest tables."""
    scopes = [frozenset(each.facts) for each in left]
    waiting = sorted(facts)
    while waiting:
        beside = {fact: met(scopes, fact) for fact in waiting}
        fact = min(waiting, key=lambda each: len(beside[each]))
        yield fact
        waiting.remove(fact)
        scopes = [each for each in scopes if fact not in each] + [beside[fact] - {fact}]


def met(scopes: Iterable[frozenset[str]], fact: str) -> frozenset[str]:
    """Return the facts that stand in some table beside this one."""
    return frozenset(other for each in scopes if fact in each for other in each)


def without(left: list[Factor], fact: str) -> list[Factor]:
    """Return factors with one fact summed out."""
    mine = [each for each in left if fact in each.facts]
    if not mine:
        return left
    facts = tuple(dict.fromkeys(other for each in mine for other in each.facts))
    whole = multiplied(mine, facts)
    axis = facts.index(fact)
    summed = Factor(facts[:axis] + facts[axis + 1 :], np.asarray(whole.sum(axis)))
    return [each for each in left if fact not in each.facts] + [summed]


def taken(each: Factor, fact: str, number: int) -> Factor:
    """Return a factor where one fact has one value."""
    if fact not in each.facts:
        return each
    axis = each.facts.index(fact)
    weights = np.asarray(each.weights.take(number, axis))
    return Factor(each.facts[:axis] + each.facts[axis + 1 :], weights)


def together(homes: Homes, left: Iterable[Factor], facts: tuple[str, ...]) -> Factor:
    """Return the product of factors over some facts, in their order."""
    shape = tuple(len(homes.open[fact]) for fact in facts)
    return Factor(facts, np.broadcast_to(multiplied(left, facts), shape))


def multiplied(left: Iterable[Factor], facts: tuple[str, ...]) -> Numbers:
    """Return the product of factors, an axis for each fact."""
    start: Any = np.ones((1,) * len(facts))
    return reduce(np.multiply, (laid(each, facts) for each in left), start)


def laid(each: Factor, facts: tuple[str, ...]) -> Numbers:
    """Return the weights of a factor laid out over more facts, in their order."""
    order = sorted(range(len(each.facts)), key=lambda i: facts.index(each.facts[i]))
    sizes = dict(zip(each.facts, each.weights.shape, strict=True))
    return each.weights.transpose(order).reshape([sizes.get(fact, 1) for fact in facts])
