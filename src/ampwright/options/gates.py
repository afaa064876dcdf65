"""What must be in hand before a day is booked, beside what the network says; never mixed with it.

Each gate is judged by itself, so that a fact nobody has asked closes no other gate.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import Enum
from typing import Any, Final

from ampwright.costing.grant import for_such, most_pounds
from ampwright.firm.basis import Basis
from ampwright.firm.outside import FREEHOLDER, LANDLORD, SUPPLIER
from ampwright.foundations.answers import Missing
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.standards.building.notice import COUNCIL, Told, WorkCase
from ampwright.supply.larger import FUSE
from ampwright.survey.home import Home

from .choices import METER
from .runs import Run

LAW: Final = Place("planning law of the four countries", at="listed buildings", trust=Trust.MEMORY)
TENURE: Final = Place("leases and tenancies", at="consent to alterations", trust=Trust.MEMORY)
SEALS: Final = Place(
    "network operators' usual rule", at="seals of cut-out and meter", trust=Trust.COMMON_PRACTICE
)
GRANTS: Final = Place("Government grant pages", at="approval before the work")
PERMITTED: Final = Place(
    "permitted development for charge points", at="designated land and roads", trust=Trust.MEMORY
)


@dataclass(frozen=True, slots=True)
class Gate:
    """Something to have in hand before booking: what, from whom and by what rule."""

    slug: str
    says: str
    from_whom: str
    place: Place


def owners_consent(home: Home) -> Made[Gate | None]:
    """Return whether somebody else owns the wall the point would hang on."""
    holds = home.customer.holds
    if holds == "tenant":
        says = "The landlord's consent in writing, with the place of the point and the cable's way"
        return Made(Gate("landlord", says, LANDLORD, TENURE))
    if holds == "leaseholder":
        says = (
            "The freeholder's licence in writing: a lease often gives a right to park, not the land"
        )
        return Made(Gate("freeholder", says, FREEHOLDER, TENURE))
    return Made(None)


def shared_parking(home: Home) -> Made[Gate | None]:
    """Return whether the parking of a flat is shared, or not the customer's to alter."""
    if home.property.kind == "flat" and not home.property.own_parking:
        says = "Consent for the parking, and where its own supply and meter would stand"
        return Made(Gate("parking", says, FREEHOLDER, TENURE))
    return Made(None)


def listed(home: Home) -> Made[Gate | None]:
    """Return whether the planning office must answer first: a listed house or its grounds."""
    if not home.property.listed_building:
        return Made(None)
    says = "The planning question answered in writing before anything is booked or dug"
    return Made(Gate("listed", says, "the planning office", LAW))


def designated_land(home: Home) -> Made[Gate | None]:
    """Return whether the place lies on designated land, where rights are narrower."""
    if not home.property.conservation_area:
        return Made(None)
    says = "Whether the free planning right holds on this land, and for which wall"
    return Made(Gate("designated", says, "the planning office", PERMITTED))


def council(home: Home, basis: Basis) -> Made[Gate | None]:
    """Return whether the council, or the body that stands for it, is told before the work.

    A point of its own is always a new circuit. Work in a place with a bath or a shower asks the
    same.
    """
    work = WorkCase(
        country=home.property.country,
        new_circuit=True,
        new_board=False,
        special_location=False,
        registered=basis.rules.registered_person,
    )
    row = COUNCIL.decide(work)
    if row.outcome is Told.BEFORE:
        says = "The council told of the work before it starts, with its fee"
        return Made(Gate("council", says, "the council's building control", row.place))
    if row.outcome is Told.WARRANT:
        says = "Whether building standards ask for a warrant, and who certifies the work"
        return Made(Gate("building-standards", says, "the council's verifier", row.place))
    return Made(None)


def isolator(home: Home, tap: str) -> Made[Gate | None]:
    """Return whether somebody else must put in a switch before the tails can be made dead."""
    if tap != METER or home.supply.isolator != "none":
        return Made(None)
    says = "A switch after the meter, so that the tails can be made dead without breaking a seal"
    return Made(Gate("isolator", says, SUPPLIER, SEALS))


def grant_first(home: Home, basis: Basis) -> Made[Gate | None]:
    """Return whether a grant may be had, whose approval must come before the work.

    It is never counted in a price; whether the scheme takes this customer is the scheme's to say.
    """
    if not for_such(home) or most_pounds(basis) is None:
        return Made(None)
    says = (
        "The customer's word whether a grant is wanted; if so its approval in writing before any "
        "work, or none is paid"
    )
    return Made(Gate("grant", says, "the customer and the grant scheme", GRANTS))


GATED: Final = frozenset({"isolator"})
"""Work of others that a gate names: it holds up the day, not the decision."""


def held_by_others(remedies: Iterable[Remedy]) -> tuple[Remedy, ...]:
    """Return the work that somebody outside must do before anything is fitted.

    Examples
    --------
    >>> earth = Remedy("network-earth", "Mend the earth", (), by="the network operator")
    >>> [each.slug for each in held_by_others((earth, Remedy("bond", "Run a bond", ())))]
    ['network-earth']
    """
    return tuple(each for each in remedies if each.by and each.slug not in GATED)


class Awaits(Enum):
    """What the work laid over a home awaits: nothing, the network's answer, others' own work."""

    NOTHING = "nothing"
    ANSWER = "the network's answer"
    OTHERS = "the work of others"


def work_of_others(_home: Home, remedies: tuple[Remedy, ...]) -> Made[Awaits]:
    """Return what the work that was laid over a home awaits.

    A larger fuse is asked for with the point itself, and comes with the answer.
    """
    outside = held_by_others(remedies)
    if not outside:
        return Made(Awaits.NOTHING)
    asked = all(each.slug.startswith(FUSE) for each in outside)
    return Made(Awaits.ANSWER if asked else Awaits.OTHERS)


Gates = tuple[Gate | None, ...]
"""One entry a gate; while exploring, a spread each."""


def gates_of(run: Run, basis: Basis, tap: str) -> Gates:
    """Describe every gate of a job; none of them changes what is sound."""
    return (
        run.aside(owners_consent),
        run.aside(shared_parking),
        run.aside(listed),
        run.aside(designated_land),
        run.aside(council, basis),
        run.aside(isolator, tap),
        run.aside(grant_first, basis),
    )


def closed(gates: Gates) -> Iterator[tuple[Gate, bool]]:
    """Yield each gate that is closed in some home, and whether it is in every one."""
    for spread in gates:
        each: Any = spread
        values = each.values
        found = [v for v in values if v is not None and not isinstance(v, Missing)]
        for gate in found:
            yield gate, len(values) == 1
