"""What an option is compared on, and where it stands in the firm's own order of equals."""

from __future__ import annotations

from typing import Final

from ampwright.energy.need import CarCharging
from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import Lead
from ampwright.foundations.quantity import Kilowatts
from ampwright.foundations.stages import Made
from ampwright.standards.network.connection import Step
from ampwright.supply.hours import NIGHT
from ampwright.survey.home import Home
from ampwright.tables.capacity import CableFamily

from .choices import METER, Choice

FAMILIES: Final = tuple(CableFamily)
WAITS: Final = {
    Step.TELL_AFTER: 0.0,
    Step.ASK_FIRST: 1.0,
    Step.ASK_FIRST_SEVERAL: 1.0,
    Step.STOP: 3.0,
}
STRENGTHENED: Final = 2.0
"""To ask, and to wait until the line is stronger."""
EARTHS_IN_ORDER: Final = ("pme", "house rod", "rod")
"""What the firm would rather do where nothing else decides: what is there before what is new."""
UNWISHED: Final = 0.5
"""Less than one place in the order."""


def wait(_home: Home, outcome: Step, strained: bool, by_others: bool) -> Made[float]:
    """Return how long the network lets the work wait; no fact bears on it beyond the outcome.

    ``strained``: the point's current spends what a line in doubt has left above the legal floor.
    ``by_others``: somebody outside must act before anything is fitted.
    """
    if by_others:
        return Made(WAITS[Step.STOP])
    longer = strained and outcome in (Step.ASK_FIRST, Step.ASK_FIRST_SEVERAL)
    return Made(STRENGTHENED if longer else WAITS[outcome])


def uncovered(_home: Home, covers: bool) -> Made[float]:
    """Return one where the cheap hours do not hold the cars' need, with the firm's margin."""
    return Made(0.0 if covers else 1.0)


def usable_power(
    _home: Home, cars: tuple[CarCharging, ...], offered_kw: Kilowatts
) -> Made[Kilowatts]:
    """Return the most that a car of the home takes of what the point offers."""
    return Made(max((car.power_kw for car in cars), default=offered_kw))


def shortfall(home: Home, usable_kw: Kilowatts) -> Made[float]:
    """Return what is lacking of the power asked for, as far as some car can use it.

    Raises ``Unanswered`` while nobody has said how fast it should be.
    """
    wished = home.wishes.point_kw
    most = max((car.takes_kw for _, car in home.cars.listed()), default=wished)
    return Made(max(0.0, min(wished, most) - usable_kw))


def slowness(_home: Home, usable_kw: Kilowatts) -> Made[float]:
    """Return the usable power with its sign turned, so that less is better."""
    return Made(-usable_kw)


def firm_order(home: Home, order: int, lead: Lead) -> Made[float]:
    """Return the firm's own order; a lead that was not wished for comes after its like."""
    wished = home.wishes.lead
    return Made(order if wished in ("either", lead.value) else order + UNWISHED)


def order_of(basis: Basis, choice: Choice) -> int:
    """Return where a choice stands in the firm's own order of equals.

    The home's own earth before a new one, its board before another, the points as the catalogue
    lists them, the cable that is quickest to run, and no more amperes than it takes.
    """
    points = basis.catalogue.points
    places = (
        (EARTHS_IN_ORDER.index(choice.earthing), len(EARTHS_IN_ORDER)),
        (int(choice.tap == METER), 2),
        (int(choice.house_limit), 2),
        (int(choice.hours == NIGHT), 2),
        (points.index(choice.point), len(points)),
        (FAMILIES.index(choice.family), len(FAMILIES)),
        (round(choice.setting_a), 64),
    )
    number = 0
    for place, size in places:
        number = number * size + place
    return number
