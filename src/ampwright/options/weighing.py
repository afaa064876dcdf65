"""What an option is compared on, and where it stands in the firm's own order of equals."""

from __future__ import annotations

from typing import Final

from ampwright.energy.need import CarCharging
from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import Lead
from ampwright.foundations.quantity import Kilowatts, Minutes
from ampwright.foundations.stages import Made
from ampwright.standards.network.connection import Step
from ampwright.survey.home import Home
from ampwright.tables.capacity import CableFamily

from .choices import METER, Choice
from .ranking import Criteria

FAMILIES: Final = tuple(CableFamily)
WAITS: Final = {
    Step.TELL_AFTER: 0.0,
    Step.ASK_FIRST: 1.0,
    Step.ASK_FIRST_SEVERAL: 1.0,
    Step.STOP: 2.0,
}
EARTHS_IN_ORDER: Final = ("pme", "house rod", "rod")
"""What the firm would rather do where nothing else decides: what is there before what is new."""
UNWISHED: Final = 0.5


def criteria(
    home: Home,
    outcome: Step,
    cars: tuple[CarCharging, ...],
    offered_kw: Kilowatts,
    usual_min: Minutes,
    lead: Lead,
    order: int,
) -> Made[Criteria]:
    """Return what an option is compared on; the lead that was not wished for comes later."""
    usable = max((car.power_kw for car in cars), default=offered_kw)
    wished = home.wishes.lead
    suits = wished in ("either", lead.value)
    return Made(Criteria(WAITS[outcome], -usable, usual_min, order if suits else order + UNWISHED))


def order_of(basis: Basis, choice: Choice) -> int:
    """Return where a choice stands in the firm's own order of equals.

    The home's own earth before a new one, its board before another, the cable that is quickest
    to run, and the points as the catalogue lists them.
    """
    points = basis.catalogue.points
    places = (
        (EARTHS_IN_ORDER.index(choice.earthing), len(EARTHS_IN_ORDER)),
        (int(choice.tap == METER), 2),
        (int(choice.house_limit), 2),
        (points.index(choice.point), len(points)),
        (FAMILIES.index(choice.family), len(FAMILIES)),
    )
    number = 0
    for place, size in places:
        number = number * size + place
    return number
