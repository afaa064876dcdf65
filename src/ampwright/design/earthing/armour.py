"""At which ends the armour of a cable is earthed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.foundations.checks import Check
from ampwright.foundations.stages import Made
from ampwright.standards.wiring.earthing import armour_earthed_once
from ampwright.survey.home import Home
from ampwright.tables.capacity import CableFamily

from .point import OWN_ROD

INSULATED: Final = (
    "the gland at the point is of plastic, or in a box of plastic: the armour stops short of "
    "everything the point's own rod earths; at the house it is earthed, ahead of any device that "
    "switches the earth"
)


@dataclass(frozen=True, slots=True)
class ArmourEnds:
    """Whether the armour is earthed at the house and at the point; neither without armour."""

    house_end: bool
    point_end: bool


def armour_ends(_home: Home, earthing: str, family: CableFamily) -> Made[ArmourEnds]:
    """Return at which ends an armour is earthed.

    Both where house and point share an earth; at the house alone where they are kept apart, and
    never nowhere. Nothing of the home bears on it beyond the earth chosen for the point.
    """
    if family is not CableFamily.ARMOURED:
        return Made(ArmourEnds(False, False))
    apart = earthing == OWN_ROD
    out = ArmourEnds(house_end=True, point_end=not apart)
    checks: tuple[Check, ...] = ()
    if apart:
        checks = (armour_earthed_once(out.house_end, out.point_end).with_caution(INSULATED),)
    return Made(out, checks)
