"""At which ends the armour of a cable is earthed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.remedies import Part, Remedy
from ampwright.foundations.stages import Made
from ampwright.standards.wiring.earthing import armour_earthed_once
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.capacity import CableFamily

from ..route import Laid
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


def armour_ends(
    home: Home, basis: Basis, laid: Laid | None, earthing: str, family: CableFamily
) -> Made[ArmourEnds]:
    """Return at which ends an armour is earthed.

    Both where house and point share an earth; at the house alone where they are kept apart, and
    never nowhere. ``laid`` is the cable that lies there already, if one is used: a metal gland at
    its far end joins the earths, and comes off. Where nobody has looked, it is taken for one that
    is made off with the point.
    """
    if family is not CableFamily.ARMOURED:
        return Made(ArmourEnds(False, False))
    if earthing != OWN_ROD:
        return Made(ArmourEnds(house_end=True, point_end=True))
    gland = laid is not None and if_said(lambda: home.laid[laid.cable].far_gland, False)
    check = armour_earthed_once(house_end=True, far_end=gland).with_caution(INSULATED)
    if laid is not None:
        check = check.mended_by(_cut_back(basis, laid.cable))
    return Made(ArmourEnds(house_end=True, point_end=gland), (check,))


def _cut_back(basis: Basis, id_: str) -> Remedy:
    """Return the work of making an armour off anew, so that it ends short of the point."""
    return Remedy(
        slug=f"armour-{id_}",
        does=f"Take the metal gland off the far end of {id_}, cut its armour back and make it off "
        "in plastic, clear of all that the point's rod earths",
        changes=((f"laid.{id_}.far_gland", False),),
        parts=(Part("gland for armoured cable with its tag and shroud", 1.0),),
        minutes=basis.task("gland-pair").minutes,
    )
