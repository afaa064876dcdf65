"""What can be said of a home while facts are open: what is certain, what may be, what it costs."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final, cast

from ampwright.firm.basis import Basis
from ampwright.options.asking.possible_homes import Holds, Part, Range, holds
from ampwright.options.asking.remaining import whole
from ampwright.options.cells import error_of, unseen_of
from ampwright.options.supply_side import Decision
from ampwright.standards.network.connection import Step

from .deciding import chance_words, plain
from .heads import EARTHS
from .seeing import Seen
from .shapes import CouldBe, MayBe, PriceSpan, Sign, StandsNow
from .words import money, number

TEN_POUNDS: Final = 1000
NETWORK: Final = {
    Step.TELL_AFTER: "the network is told afterwards",
    Step.ASK_FIRST: "the network must be asked first",
    Step.ASK_FIRST_SEVERAL: "the network must be asked first, with the other points of the road",
    Step.STOP: "nothing may be fitted until the network has acted",
}
NOTHING_YET: Final = "no option we tried holds"
NAMES: Final = {"network": "network", "earthing": "earth", "cable": "cable"}
LEAST_SAID: Final = 0.005
"""What is rarer than this is not worth a word."""
AS_ONE: Final = 2 * TEN_POUNDS
"""A range as narrow as this is said as one price."""
ALMOST_SURE: Final = 0.9
NO_WAIT: Final = (Decision.FIT_THEN_TELL, Decision.FIT_WITH_LIMIT)


def standing_of(seen: Seen) -> StandsNow | None:
    """Return what stands of a home worked out as it was told; nothing where nothing is open."""
    if not seen.outlook.ranking.facts or not seen.offered:
        return None
    front = seen.outlook.ranking.front
    sound = tuple(option.id for option in front if option.sound.always)
    return standing(holds(whole(seen.outlook.ranking), sound), seen.basis)


def standing(found: Holds, basis: Basis) -> StandsNow:
    """Return what holds of a home in plain pieces."""
    decision = found.certain or Decision.UNDETERMINED
    return StandsNow(
        decision=cast(Sign, decision.file_value),
        words=plain(decision),
        customer_words=decision.customer_words.rstrip(" …:"),
        could_be=tuple(
            CouldBe(cast(Sign, each.file_value), plain(each), chance_words(chance))
            for each, chance in found.decisions
            if chance >= LEAST_SAID
        ),
        certain=tuple(certain(found, basis)),
        may_be={
            NAMES.get(part.name, part.name): tuple(
                MayBe(part_words(part, value, basis), chance_words(chance))
                for value, chance in part.values
                if chance >= LEAST_SAID
            )
            for part in found.parts
            if not part.certain
        },
        price=span(found.price),
        usual=span(found.likely),
        no_wait=chance_words(found.no_wait),
        wasted_visit=chance_words(found.wasted),
        longer=chance_words(found.longer),
        sound=found.sound,
        homes=found.homes,
        drawn=found.draws,
        rough=rough(found.draws),
    )


def rough(draws: int) -> str:
    """Say how far out a chance may be that rests on so many drawn homes, and what they may miss.

    Examples
    --------
    >>> print(rough(48))
    48 homes drawn: chances may be 7 in 100 out, and 6 in 100 homes may be like none of them.
    """
    if not draws:
        return ""
    out, unseen = in_hundred(error_of(0.5, draws)), in_hundred(unseen_of(draws))
    return (
        f"{draws:,} homes drawn: chances may be {out} out, and {unseen} homes may be like none of "
        "them."
    )


def in_hundred(chance: float) -> str:
    """Write a small chance, upward to one in a hundred.

    Examples
    --------
    >>> in_hundred(0.072), in_hundred(0.0007)
    ('7 in 100', 'up to 1 in 100')
    """
    return f"{round(100 * chance)} in 100" if chance >= 0.01 else "up to 1 in 100"


def certain(found: Holds, basis: Basis) -> Iterator[str]:
    """Yield what every home that remains comes to."""
    if found.certain is not None:
        yield plain(found.certain)
    elif not any(each is Decision.STOP_UNTIL for each, _ in found.decisions):
        yield "nothing that is still open stops the work"
    for part in found.parts:
        if part.certain and part.values[0][0] is not None:
            yield part_words(part, part.values[0][0], basis)


def part_words(part: Part, value: Any, basis: Basis) -> str:
    """Return one thing a home comes to in words.

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> part_words(Part("network", ()), Step.TELL_AFTER, SimpleNamespace())
    'the network is told afterwards'
    """
    if value is None:
        return NOTHING_YET
    if part.name == "network":
        return NETWORK[value]
    if part.name == "earthing":
        return f"the point is earthed to {EARTHS.get(value, value)}"
    names = {each.id: each.does for each in basis.catalogue.cables}
    return names.get(value, str(value))


def span(found: Range | None) -> PriceSpan | None:
    """Return a range of the price, to ten pounds outward.

    Examples
    --------
    >>> span(Range(100246, 347605)).words, span(None)
    ('£1,000 to £3,480', None)
    """
    if found is None:
        return None
    low = found.low_p // TEN_POUNDS * TEN_POUNDS
    high = -(-found.high_p // TEN_POUNDS) * TEN_POUNDS
    words = f"£{number(low / 100, 0)} to £{number(high / 100, 0)}"
    return PriceSpan(low, high, words if low != high else f"£{number(low / 100, 0)}")


def sayings(found: Holds, now: StandsNow) -> Iterator[str]:
    """Yield what can be said to the customer now: whether to wait, then what it costs.

    No surer than the facts: *very likely* where nine homes in ten come to it, and below that that
    nobody can say.
    """
    yield decision_said(found)
    if now.price is None or now.usual is None:
        yield "What it will cost we cannot say yet."
        return
    if now.usual.high_pence - now.usual.low_pence <= AS_ONE:
        yield f"Most jobs like yours come to about {money(now.usual.high_pence)}, VAT included."
    else:
        yield f"Most jobs like yours come to {now.usual.words}, VAT included."
    if now.price != now.usual:
        yield f"At the outside it could be {now.price.words}."


def decision_said(found: Holds) -> str:
    """Say whether the customer has to wait, as surely as the homes that remain allow."""
    if found.certain is Decision.STOP_UNTIL:
        return "Not yet: something must be put right first, and we will tell you what."
    if found.certain is not None:
        return f"{found.certain.customer_words}."
    free = sum(chance for each, chance in found.decisions if each in NO_WAIT)
    asked = sum(chance for each, chance in found.decisions if each is Decision.ASK_FIRST)
    if free >= ALMOST_SURE:
        return "You very likely do not have to wait."
    if asked >= ALMOST_SURE:
        return "We very likely must ask the network first."
    return "Whether you have to wait we cannot say yet."
