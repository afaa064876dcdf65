"""What each fact of a home can be: known, open with how likely each value is, or blank."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, floor
from typing import cast

from ampwright.foundations.answers import Answer, Between, Is, OneOf, Value
from ampwright.foundations.source import Evidence, Said

from .fold import Folded
from .folding import FoldedHome
from .layout import Slot, frozen, slots_of
from .register import Fact

MOST_POINTS = 5
"""How many points a range is first cut into at most; finer cuts come where they matter."""


@dataclass(frozen=True, slots=True)
class State:
    """What one fact can be: no value when blank, one when known, several when open.

    ``chances`` stand beside the values and sum to one. ``span`` gives the ends of a range of
    which the values are only points.
    """

    key: str
    fact: Fact
    values: tuple[Value, ...] = ()
    chances: tuple[float, ...] = ()
    said: Said | None = None
    span: tuple[float, float] | None = None

    @property
    def is_known(self) -> bool:
        """Whether there is one value."""
        return len(self.values) == 1

    @property
    def is_open(self) -> bool:
        """Whether there are several."""
        return len(self.values) > 1


def states(folded: FoldedHome) -> dict[str, State]:
    """Return what each fact of a home can be, by key, in the order of the register."""
    found: dict[str, State] = {}
    mentioned = _mentioned(folded)
    for slot in slots_of(frozen(folded.ids)):
        found[slot.key] = _state(slot, folded, found, mentioned)
    return found


def _mentioned(folded: FoldedHome) -> dict[str, Evidence]:
    """Return the things that an answer speaks of, each with its strongest evidence."""
    found: dict[str, Evidence] = {}
    for key, each in folded.facts.items():
        if each.evidence is not None and not key.endswith((".present", ".all_listed")):
            steps = key.split(".")[:-1]
            for end in range(2, len(steps) + 1):
                path = ".".join(steps[:end])
                found[path] = max(found.get(path, each.evidence), each.evidence)
    return found


def _state(
    slot: Slot,
    folded: FoldedHome,
    earlier: Mapping[str, State],
    mentioned: Mapping[str, Evidence],
) -> State:
    """Return what one fact can be; that of a thing known to be absent is blank."""
    is_presence = slot.fact.name == "present"
    presence = earlier.get(f"{slot.thing}.present")
    if presence and presence.values == (False,):
        return State(slot.key, slot.fact)
    here = folded.at(slot.key)
    if here.answer is not None:
        return _answered(slot, here)
    if is_presence:
        return _presence(slot, folded, earlier, mentioned)
    return _not_asked(slot, presence)


def _answered(slot: Slot, folded: Folded) -> State:
    answer = cast(Answer, folded.answer)
    said = said_by(slot.key, folded)
    if isinstance(answer, Is):
        return State(slot.key, slot.fact, (answer.value,), (1.0,), said)
    if isinstance(answer, Between):
        points = points_of(answer, slot.fact)
        shares = by_length(points)
        return State(slot.key, slot.fact, points, shares, said, (answer.low, answer.high))
    return _weighed(slot, cast(OneOf, answer).values, said)


def _weighed(slot: Slot, values: Iterable[Value], said: Said) -> State:
    """Return an open fact with its priors; a value of weight nought is dropped.

    A value that the register calls rare weighs as the least likely that it lists.
    """
    prior = _prior(slot)
    rare = min((share for share in prior.values() if share > 0), default=1.0)
    weights = {value: prior.get(value, rare) for value in values}
    possible = {value: share for value, share in weights.items() if share > 0}
    possible = possible or dict.fromkeys(weights, 1.0)
    total = sum(possible.values())
    chances = tuple(share / total for share in possible.values())
    return State(slot.key, slot.fact, tuple(possible), chances, said)


def _prior(slot: Slot) -> Mapping[Value, float]:
    if slot.standard:
        if slot.fact.name == "present":
            return cast(Mapping[Value, float], slot.standard.values)
        if slot.fact.name in slot.standard.priors:
            return slot.standard.priors[slot.fact.name]
    return slot.fact.values


def _presence(
    slot: Slot,
    folded: FoldedHome,
    earlier: Mapping[str, State],
    mentioned: Mapping[str, Evidence],
) -> State:
    """Return whether a thing that nobody called present or absent is there."""
    if slot.thing in mentioned:
        how = "it is described"
        return _is(slot, True, Said(slot.key, mentioned[slot.thing], how))
    listed = earlier.get(f"{slot.thing.rpartition('.')[0]}.all_listed")
    asked = bool(folded.at(slot.key).cannot_say)
    if listed and listed.values == (True,) and not asked:
        said = cast(Said, listed.said)
        how = "not on the list, and the list is whole"
        return _is(slot, False, Said(slot.key, said.evidence, how, said.by, said.on))
    return _weighed(slot, (False, True), _assumed(slot, "not asked"))


def _not_asked(slot: Slot, presence: State | None) -> State:
    fact, standard = slot.fact, slot.standard
    if standard and fact.name in standard.implies:
        evidence = Evidence.ASSUMED
        if presence and presence.is_known and presence.said:
            evidence = presence.said.evidence
        how = f"so for any {standard.trade.lower()}"
        return _is(slot, standard.implies[fact.name], Said(slot.key, evidence, how))
    if prior := _prior(slot):
        source = standard.prior if standard else fact.prior
        return _weighed(slot, prior, _assumed(slot, f"not asked; {source}"))
    if fact.stand_in:
        how = f"not asked; stands in: {fact.stand_in.source}"
        return _is(slot, fact.stand_in.value, _assumed(slot, how))
    return State(slot.key, fact)


def _is(slot: Slot, value: Value, said: Said) -> State:
    return State(slot.key, slot.fact, (value,), (1.0,), said)


def _assumed(slot: Slot, how: str) -> Said:
    return Said(slot.key, Evidence.ASSUMED, how)


def said_by(key: str, folded: Folded) -> Said:
    """Return what an answer rests on, its records in one line."""
    evidence = cast(Evidence, folded.evidence)
    how = "; ".join(dict.fromkeys(row.how for row in folded.basis if row.how))
    by = ", ".join(dict.fromkeys(row.by for row in folded.basis if row.by))
    on = max((row.on for row in folded.basis if row.on), default=None)
    return Said(key, evidence, how, by, on)


def points_of(answer: Between, fact: Fact) -> tuple[Value, ...]:
    """Return points of a range: both ends, and the multiples of the fact's step between.

    The step is doubled until the points are few enough; without a step only the ends count.

    Examples
    --------
    >>> points_of(Between(5.5, 8.0), Fact(ask="?", trade="length", kind=float, step=1.0))
    (5.5, 6.0, 7.0, 8.0)
    """
    low, high, step = answer.low, answer.high, step_of(fact)
    inside: list[float] = []
    while step:
        first, last = floor(low / step) + 1, ceil(high / step) - 1
        if last - first + 3 <= MOST_POINTS:
            inside = [round(number * step, 9) for number in range(first, last + 1)]
            break
        step *= 2
    return tuple(fact.kind(point) for point in dict.fromkeys((low, *inside, high)))


def step_of(fact: Fact) -> float | None:
    """Return how near two points of a range may come to each other; nothing if it has no points."""
    return fact.step or (1.0 if fact.kind is int else None)


def by_length(points: tuple[Value, ...]) -> tuple[float, ...]:
    """Return how much of a range lies nearest to each of its points.

    Examples
    --------
    >>> by_length((0.0, 2.0, 10.0))
    (0.1, 0.5, 0.4)
    """
    at = [float(each) for each in points]
    borders = [at[0], *((low + high) / 2 for low, high in pairwise(at)), at[-1]]
    return tuple((high - low) / (at[-1] - at[0]) for low, high in pairwise(borders))
