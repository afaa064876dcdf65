"""Which option leads, why, and what would change that."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Final

from ampwright.options.held import known_values
from ampwright.options.ranking import MATTERS, PRIORITY
from ampwright.options.search import Option
from ampwright.options.supply_side import Decision
from ampwright.options.work import Design

from .deciding import decision_of, tests_of
from .facts import fact_name
from .naming import may_need
from .seeing import Seen
from .shapes import Advice, Figure
from .words import all_of, amount, brief, hours, money, small

HEADINGS: Final = {
    Decision.FIT_THEN_TELL: "Recommended",
    Decision.FIT_WITH_LIMIT: "Recommended",
    Decision.ASK_FIRST: "Recommended, once the operator agrees",
    Decision.STOP_UNTIL: "What could be fitted once that is put right",
    Decision.UNDETERMINED: "Leading so far",
}


def advice_on(
    seen: Seen, option: Option[Design], figures: Mapping[str, Figure], besides: Iterable[str]
) -> Advice:
    """Return the option that leads with its reasons, no surer than the decision.

    ``besides`` are further sentences for the customer.
    """
    return Advice(
        heading=HEADINGS[decision_of(seen)],
        letter=seen.letter(option.id),
        id=option.id,
        to_electrician=" ".join(to_electrician(seen, option, figures)),
        to_customer=" ".join((*to_customer(seen, option, figures), *besides)),
        would_change=tuple(would_change(seen, option, figures)),
    )


def to_electrician(
    seen: Seen, option: Option[Design], figures: Mapping[str, Figure]
) -> Iterator[str]:
    """Yield what matters to who fits it."""
    yield f"{soundness(option)}{once_done(option)}."
    if more := may_need(seen.outlook, option):
        yield f"In some homes it also needs: {all_of([small(brief(each.does)) for each in more])}."
    if "carried_a" in figures and "supply_rating_a" in figures:
        carried, rating = figures["carried_a"].words, figures["supply_rating_a"].words
        yield f"The supply carries {carried} of {rating}."
    if "lowest_volts_v" in figures:
        yield f"The volts at the point fall to {figures['lowest_volts_v'].words} at the lowest."


def soundness(option: Option[Design]) -> str:
    """Say in which of the possible homes an option holds."""
    if option.sound.always:
        return "Sound in every home that the facts allow"
    if (option.sound.severity == 0).any():
        return "Sound as it is in some of the homes that the facts allow"
    return "Nothing found so far speaks against it; what is not known decides"


def once_done(option: Option[Design]) -> str:
    """Say what has to be done first."""
    remedies = option.choice.remedies
    if not remedies:
        return ""
    return f", once this is done: {all_of([small(brief(each.does)) for each in remedies])}"


def to_customer(seen: Seen, option: Option[Design], figures: Mapping[str, Figure]) -> Iterator[str]:
    """Yield what matters to who lives with it."""
    if (most := seen.outlook.homes.known.get(PRIORITY)) in MATTERS:
        yield f"You said that {most} matters most: that is what was chosen by."
    nights = known_values(option, option.design.use.nights)  # type: ignore[arg-type]
    if nights and all(each.covers for each in nights):
        most = max(each.needed_h for each in nights)
        cheap = min(each.cheap_h for each in nights)
        yield (
            f"It is enough: charging takes {hours(most)} a night with room to spare, and the "
            f"cheap hours are {hours(cheap)}."
        )
    elif "charging_h_a_day" in figures:
        yield f"An average night's charging takes {hours(figures['charging_h_a_day'].high)}."
    night, day = figures.get("cost_at_night_p_a_year"), figures.get("cost_by_day_p_a_year")
    if night is not None and day is not None:
        yield (
            f"A year's charging costs about {money(night.high)} at night, or "
            f"{money(day.high)} by day."
        )
    if option.choice.remedies:
        yield "There is work to do first; it is on the list."


def would_change(
    seen: Seen, option: Option[Design], figures: Mapping[str, Figure]
) -> Iterator[str]:
    """Yield what would change the recommendation, each with its figure where there is one."""
    spare = figures.get("before_asking_a")
    if spare is not None and spare.low >= 0 and not option.choice.house_limit:
        added = amount(spare.low, "A")
        yield f"more than {added} of load is added: the operator must then be asked first"
    for key in seen.outlook.deciding:
        yield f"another answer to this: {small(fact_name(key))}"
    for words in leans_on(option):
        yield f"the operator says otherwise than this: {words}"


def leans_on(option: Option[Design]) -> tuple[str, ...]:
    """Return the readings of the operator that an option turns on in every home alike."""
    found = [each.rests_on for each in tests_of(option)]
    return found[0] if found and all(each == found[0] for each in found) else ()
