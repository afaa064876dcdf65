"""Which option is recommended, why, and what would change that."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, cast

from ampwright.options.held import known_values
from ampwright.options.outlook import Outlook
from ampwright.options.search import Option
from ampwright.options.work import Design

from .facts import fact_name
from .seeing import Seen
from .shapes import Advice, Figure
from .words import all_of, amount, brief, hours, money, small


def advice_on(seen: Seen, option: Option[Design], figures: Mapping[str, Figure]) -> Advice:
    """Return the recommended option with its reasons."""
    return Advice(
        letter=seen.letter(option.id),
        id=option.id,
        to_electrician=" ".join(to_electrician(option, figures)),
        to_customer=" ".join(to_customer(option, figures)),
        would_change=tuple(would_change(seen.outlook, figures, option)),
    )


def to_electrician(option: Option[Design], figures: Mapping[str, Figure]) -> Iterator[str]:
    """Yield what matters to who fits it."""
    remedies = option.choice.remedies
    if remedies:
        first = all_of([small(brief(each.does)) for each in remedies])
        yield f"Sound in {homes_where(option)}, once this is done: {first}."
    else:
        yield f"Sound in {homes_where(option)}."
    if "carried_a" in figures and "supply_rating_a" in figures:
        carried, rating = figures["carried_a"].words, figures["supply_rating_a"].words
        yield f"The supply carries {carried} of {rating}."
    if "lowest_volts_v" in figures:
        yield f"The volts at the point fall to {figures['lowest_volts_v'].words} at the lowest."


def homes_where(option: Option[Design]) -> str:
    """Say in which of the possible homes an option holds."""
    if option.sound.always:
        return "every home that the facts allow"
    return "some of the homes that the facts allow"


def to_customer(option: Option[Design], figures: Mapping[str, Figure]) -> Iterator[str]:
    """Yield what matters to who lives with it."""
    nights = known_values(option, cast(Any, option.design.use.nights))
    if nights and all(each.covers for each in nights):
        most = max(each.needed_h for each in nights)
        cheap = min(each.cheap_h for each in nights)
        yield (
            f"It is enough: charging takes {hours(most)} a night with room to spare, and the "
            f"cheap hours are {hours(cheap)}."
        )
    elif "charging_h_a_day" in figures:
        yield f"Your cars charge for {hours(figures['charging_h_a_day'].high)} on an average night."
    night, day = figures.get("cost_at_night_p_a_year"), figures.get("cost_by_day_p_a_year")
    if night is not None and day is not None:
        yield (
            f"A year's charging costs about {money(night.high)} at night, or "
            f"{money(day.high)} by day."
        )
    if option.choice.remedies:
        yield "There is work to do first; it is on the list."


def would_change(
    outlook: Outlook, figures: Mapping[str, Figure], option: Option[Design]
) -> Iterator[str]:
    """Yield what would change the recommendation, each with its figure where there is one."""
    spare = figures.get("before_asking_a")
    if spare is not None and spare.low >= 0:
        yield (
            f"more than {amount(spare.low, 'A')} is added to the demand: the operator must then "
            "be asked first"
        )
    for key in outlook.deciding:
        yield f"{fact_name(key)} turns out otherwise"
    connections = known_values(option, cast(Any, option.design.connection))
    for words in dict.fromkeys(words for each in connections for words in each.rests_on):
        yield f"it is not so that {words}"
