"""What an option is compared on, and where it stands in the firm's own order of equals."""

from __future__ import annotations

from typing import Final

from ampwright.energy.need import CarCharging
from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import Lead
from ampwright.foundations.quantity import Amperes, Kilowatts
from ampwright.foundations.stages import Made
from ampwright.standards.network.connection import Step
from ampwright.supply.hours import NIGHT
from ampwright.survey.home import Home
from ampwright.tables.capacity import CableFamily

from .choices import METER, Choice
from .gates import Awaits

Lines = tuple[Amperes, ...]
"""One entry a line of the supply."""
FAMILIES: Final = tuple(CableFamily)
WAITS: Final = {
    Step.TELL_AFTER: 0.0,
    Step.ASK_FIRST: 1.0,
    Step.ASK_FIRST_SEVERAL: 1.0,
    Step.STOP: 3.0,
}
STRENGTHENED: Final = 2.0
"""To ask, and to wait until the line is stronger or the fuse larger."""
EARTHS_IN_ORDER: Final = ("pme", "house rod", "rod")
"""What the firm would rather do where nothing else decides: what is there before what is new."""
FURTHER: Final = (1, 2)
"""So many further loads are looked for: a heat pump, a second car."""
UNWISHED: Final = 0.5
"""Less than one place in the order."""


def wait(_home: Home, outcome: Step, strained: bool, awaits: Awaits) -> Made[float]:
    """Return how long the network lets the work wait; no fact bears on it beyond the outcome.

    ``strained``: the point's current spends what a line in doubt has left above the legal floor.
    ``awaits``: what somebody outside must do before anything is fitted.
    """
    if awaits is Awaits.OTHERS or outcome is Step.STOP:
        return Made(WAITS[Step.STOP])
    longer = strained and outcome is not Step.TELL_AFTER
    return Made(STRENGTHENED if longer or awaits is Awaits.ANSWER else WAITS[outcome])


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


def seen(home: Home, place: str) -> Made[float]:
    """Return one where the point is seen from the street; raises ``Unanswered`` while not said."""
    return Made(1.0 if home.places[place].street_view else 0.0)


def cramped(_home: Home, basis: Basis, carried_a: Lines, rating_a: Amperes) -> Made[float]:
    """Return for how many of two further loads the supply has no room beside the point.

    On the busiest line; what the operator says of them is another matter.
    """
    return Made(refused(basis, Amperes(rating_a - max(carried_a))))


def cramped_under_limit(_home: Home, basis: Basis, car_a: Amperes, least_a: Amperes) -> Made[float]:
    """Return the same where the point gives way to the house, down to its least current."""
    return Made(refused(basis, Amperes(car_a - least_a)))


def refused(basis: Basis, room_a: Amperes) -> float:
    """Return how many of two further loads do not go into some room."""
    each = basis.rules.later_load_a
    return float(sum(room_a < many * each for many in FURTHER))


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
