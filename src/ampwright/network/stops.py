"""Who outside the firm must act before anything is fitted, and what they must do."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.firm.outside import FREEHOLDER, LANDLORD, NETWORK, SUPPLIER
from ampwright.foundations.checks import Check, Outcome
from ampwright.foundations.remedies import Remedy
from ampwright.standards.network.connection import Step

OWNERS: Final = {"leaseholder": FREEHOLDER, "tenant": LANDLORD}
"""Who owns the wall and the ground, by how the customer holds the home."""


@dataclass(frozen=True, slots=True)
class Until:
    """One thing that somebody outside must do first.

    ``firm`` and ``customer`` follow on from *stop until* and from *not yet: first*; ``slug`` is
    short and lasting.
    """

    slug: str
    body: str
    firm: str
    customer: str


SAFE: Final = Until(
    "service-safe",
    NETWORK,
    "the network operator, told by telephone today, has made the dangerous service safe",
    "the network must make the cable and the big fuse by your meter safe, and we report it today",
)
LARGER: Final = Until(
    "larger-supply",
    NETWORK,
    "the network operator has given the home a larger supply",
    "the network must give your home a larger supply",
)
THREE_LINES: Final = Until(
    "three-phase-supply",
    NETWORK,
    "the network operator has brought three phases",
    "the network must bring you a three-phase supply",
)
STEADY: Final = Until(
    "volts-in-order",
    NETWORK,
    "the network operator has brought the volts of the line in order",
    "the network must put the voltage of your line in order",
)
DEAD: Final = Until(
    "isolator",
    SUPPLIER,
    "the supplier or the meter operator has put in a switch after the meter",
    "your supplier must put in a switch by the meter",
)
EARTHED: Final = Until(
    "network-earth",
    NETWORK,
    "the network operator has mended the earth of the house and its loop is read again",
    "the network must mend the earth of your house, and we report it today",
)
TAILS: Final = Until(
    "new-tails",
    SUPPLIER,
    "the supplier or the meter operator has made the meter tails dead for larger ones",
    "your supplier must cut off the meter for an hour so that its cables can be replaced",
)
BY_REMEDY: Final = {each.slug: each for each in (EARTHED, TAILS)}
"""Work of somebody outside in words of its own."""
BY_REQUIREMENT: Final = {
    "supply_carries_demand": LARGER,
    "house_under_limit": LARGER,
    "limit_worth_setting": LARGER,
    "supply_has_lines": THREE_LINES,
    "window_held": STEADY,
    "window_held_high": STEADY,
    "volts_borne": STEADY,
    "isolator_there": DEAD,
}
"""What only somebody outside can lift, by the requirement that fails for lack of it."""
ANOTHER_PLACE: Final = frozenset({"way_paced", "reach_separated", "clear_of_bottles"})
"""Requirements that another place or another way would meet, if its owner agreed."""


def held_up_by(outcome: Step, failed: Iterable[Check], holds: str) -> tuple[Until, ...]:
    """Return who must act before anything is fitted, each once, the first to act first.

    ``outcome`` is what the operators' tests come to, ``failed`` what rejected the choices, the
    most rejecting first, and ``holds`` how the customer holds the home, empty if nobody said.
    Empty where nobody outside stands in the way: then it is work, or another choice.
    """
    found = dict.fromkeys(_each(outcome, failed, holds))
    return tuple({each.slug: each for each in found}.values())


def _each(outcome: Step, failed: Iterable[Check], holds: str) -> Iterator[Until]:
    """Yield who must act, for the service first and then for each failed check."""
    if outcome is Step.STOP:
        yield SAFE
    for check in failed:
        if check.outcome is not Outcome.FAIL:
            continue
        requirement = check.requirement.id
        outside = [remedy for remedy in check.remedies if remedy.by]
        if requirement in BY_REQUIREMENT:
            yield BY_REQUIREMENT[requirement]
        elif outside and len(outside) == len(check.remedies):
            yield asked_of(outside[0])
        elif requirement in ANOTHER_PLACE and holds in OWNERS:
            yield _agreed(OWNERS[holds])


def asked_of(remedy: Remedy) -> Until:
    """Return the work of somebody outside as a thing that must be done first.

    Examples
    --------
    >>> asked_of(Remedy("network-earth", "Have it mended", (), by="the network operator")).firm
    'the network operator has mended the earth of the house and its loop is read again'
    """
    return BY_REMEDY.get(remedy.slug) or Until(
        remedy.slug, remedy.by, f"{remedy.by} has done this: {remedy.does}",
        f"{remedy.by} must do this: {remedy.does}",
    )  # fmt: skip


def _agreed(owner: str) -> Until:
    """Return the consent of an owner to another place or way."""
    return Until(
        "another-place",
        owner,
        f"{owner} has agreed in writing to another place or another way of the cable",
        f"{owner} must agree to another place or another way of the cable",
    )
