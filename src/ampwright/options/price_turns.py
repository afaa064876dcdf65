"""What an open fact would do to a price: one fact at a time, from the most usual home."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from ampwright.costing.second_visit import BothVisits, both_visits, second_visit
from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Missing, Value
from ampwright.foundations.checks import Outcome
from ampwright.foundations.money import Pence
from ampwright.foundations.remedies import Remedy

from .lifting import Lifter
from .ranking import Ranking, bare
from .search import Option
from .spread import Spread
from .staged import Staged
from .values import Fixed


@dataclass(frozen=True, slots=True)
class PriceTurn:
    """What the usual price becomes, against the most usual home, if a fact has another value.

    ``by_p`` is ``None`` where the choice does not hold then or its price cannot be said;
    ``work`` is what has to be done then that the most usual home does not call for.
    """

    fact: str
    value: Value
    by_p: Pence | None
    work: tuple[Remedy, ...] = ()


def price_turns(ranking: Ranking, option: Option[Any], usual: Fixed) -> Iterator[PriceTurn]:
    """Yield each other value of an open fact that changes the price of a choice or ends it.

    The choice is taken with whatever work the home calls for.
    """
    same = [each for each in ranking.options if bare(each.choice) == bare(option.choice)]
    variants = (option, *(each for each in same if each is not option))
    was = price_in(option, usual)
    if was is None:
        return
    total: Spread[Any] = option.design.price.total.usual_p
    for fact in dict.fromkeys((*total.facts, *option.sound.facts)):
        for value in total.homes.open[fact]:
            there = {**usual, fact: value}
            held = next((v for v in variants if price_in(v, there) is not None), None)
            now = None if held is None else price_in(held, there)
            if held is None or now is None:
                yield PriceTurn(fact, value, None)
            elif now != was:
                new = tuple(r for r in held.choice.remedies if r not in option.choice.remedies)
                yield PriceTurn(fact, value, Pence(now - was), new)


def price_in(option: Option[Any], home: Fixed) -> Pence | None:
    """Return the usual price in one home; ``None`` where the option fails or has none."""
    if option.sound.in_home(home) is Outcome.FAIL:
        return None
    found: Pence | Missing = option.design.price.total.usual_p.in_home(home)
    return None if isinstance(found, Missing) else found


def price_of_both(pair: Staged, basis: Basis) -> Spread[BothVisits]:
    """Return what both visits of a pair cost, in each home."""
    fitted: Any = pair.later.design.price
    lifter = Lifter(fitted.homes)
    return lifter.lift(both_visits, basis, fitted, lifter.lift(second_visit, basis).out).out  # type: ignore[no-any-return]
