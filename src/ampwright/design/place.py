"""The place of the point: whether its case suits where it hangs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.foundations.checks import Finding, not_applicable, requires
from ampwright.foundations.stages import Made
from ampwright.standards.places import wiring
from ampwright.standards.wiring.charging import point_outdoors_rated
from ampwright.survey.home import Home

LEAST_OUTDOORS: Final = "IP44"


@dataclass(frozen=True, slots=True)
class Spot:
    """Where the point hangs, as far as its case is concerned."""

    outdoors: bool


@requires("protection against dust and water where it is needed", place=wiring("722.512.2"))
def weather_stays_out(place: str) -> Finding:
    """A point indoors needs no protection against rain.

    Says nothing of dust or knocks in a workshop.

    Examples
    --------
    >>> weather_stays_out("garage").why
    'garage is indoors'
    """
    return not_applicable(f"{place} is indoors")


def point_place(home: Home, place: str, ip: str) -> Made[Spot]:
    """Return where the point hangs and whether its case, such as ``IP54``, bears that."""
    if not home.places[place].outdoors:
        return Made(Spot(outdoors=False), (weather_stays_out(place),))
    return Made(Spot(outdoors=True), (point_outdoors_rated(ip, LEAST_OUTDOORS),))
