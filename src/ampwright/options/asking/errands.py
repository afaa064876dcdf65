"""Questions in errands: what is reached in one place by one act shares the walk.

A question on the telephone is an errand by itself. Photographs of one place are one errand, and
so is all that an electrician looks at on one visit. No customer is asked to undo a screw or to
climb: what needs that, the register leaves to the electrician.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from ampwright.firm.asking import Asking, Channel
from ampwright.foundations.quantity import Minutes
from ampwright.survey.danger import STOP_WORDS
from ampwright.survey.layout import slot, things_in

from .worth import Worth

AT_THE_METER: Final = "meter"
ON_SITE: Final = "the house"
HOT_PLACES: Final = (AT_THE_METER, "boards", "sources")
"""Where something live may be in a bad way."""
OFFERS: Final = {
    Channel.PHONE: (Channel.PHONE,),
    Channel.PHOTO: (Channel.PHOTO,),
    Channel.SITE: (Channel.SITE, Channel.PHOTO, Channel.PHONE),
}
"""What somebody can answer by each channel: an electrician on site sees and hears everything."""


@dataclass(frozen=True, slots=True)
class Errand:
    """Some questions settled by one act in one place, what settles most first.

    ``caution`` is said before anybody looks.
    """

    place: str
    channel: Channel
    facts: tuple[Worth, ...]
    minutes: Minutes
    caution: str = ""

    @property
    def worth_p(self) -> float:
        """What all its answers are worth together, as if each stood alone."""
        return sum(each.worth_p for each in self.facts)

    @property
    def per_minute_p(self) -> float:
        """What it is worth in pence for each of its minutes."""
        return self.worth_p / self.minutes

    @property
    def settles_a_minute(self) -> float:
        """How much its answers settle for each of its minutes, as if each stood alone."""
        return sum(each.turns.settles for each in self.facts) / self.minutes


def errands(
    deciding: Iterable[Worth], asking: Asking, channel: Channel | None = None
) -> tuple[Errand, ...]:
    """Return the errands that settle deciding facts, what settles most a minute first.

    Through a channel only what it can answer; without one, each fact by its nearest.
    """
    groups: dict[tuple[str, Channel], list[Worth]] = {}
    for each in deciding:
        if channel is None or each.channel in OFFERS[channel]:
            through = channel or each.channel
            groups.setdefault((place_of(each.key, through), through), []).append(each)
    made = (_errand(place, by, facts, asking) for (place, by), facts in groups.items())
    return tuple(
        sorted(made, key=lambda each: (-each.settles_a_minute, -each.per_minute_p, each.place))
    )


def _errand(place: str, channel: Channel, facts: list[Worth], asking: Asking) -> Errand:
    ordered = tuple(sorted(facts, key=lambda each: (-each.turns.settles, -each.worth_p)))
    hot = channel is not Channel.PHONE and place.partition(".")[0] in HOT_PLACES
    minutes = taken(tuple(each.key for each in ordered), channel, asking)
    return Errand(place, channel, ordered, minutes, STOP_WORDS if hot else "")


def place_of(key: str, channel: Channel) -> str:
    """Return where a fact is found: a thing, the meter, or for one question the fact itself.

    Examples
    --------
    >>> place_of("supply.looped", Channel.PHOTO), place_of("boards.main.case", Channel.PHOTO)
    ('meter', 'boards.main')
    """
    if channel is Channel.PHONE:
        return key
    if channel is Channel.SITE:
        return ON_SITE
    head = key.partition(".")[0]
    if head in ("supply", "earthing"):
        return AT_THE_METER
    if head in ("legs", "property"):
        return head
    return ".".join(things_in(key)[0]) if things_in(key) else head


def taken(keys: tuple[str, ...], channel: Channel, asking: Asking) -> Minutes:
    """Return the minutes that asking some facts of one place takes, by a channel."""
    if channel is Channel.PHONE:
        return Minutes(float(sum(asking.minutes(asked_by(key)) for key in keys)))
    if channel is Channel.PHOTO:
        once = asking.minutes("reach") + asking.minutes("photograph")
        return Minutes(float(once + asking.minutes("read-off") * (len(keys) - 1)))
    each = sum(asking.minutes("measure" if measured(key) else "look") for key in keys)
    return Minutes(float(asking.minutes("travel") + each))


def asked_by(key: str) -> str:
    """Return the act of asking a fact on the telephone."""
    if key.startswith("operator."):
        return "call-operator"
    if key.endswith(".all_listed"):
        return "ask-list"
    return "ask-figure" if slot(key).fact.is_number else "ask"


def measured(key: str) -> bool:
    """Whether a fact is measured with an instrument, where an electrician finds it out."""
    fact = slot(key).fact
    return fact.is_number and fact.who == "site"
