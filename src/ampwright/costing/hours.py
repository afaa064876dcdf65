"""Hours as lines of a price: those on site, and what every job carries besides."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import Hands
from ampwright.firm.rates import LEVELS, Rate
from ampwright.foundations.money import Pence
from ampwright.foundations.quantity import PencePerHour
from ampwright.foundations.source import SetBy
from ampwright.foundations.stages import Made
from ampwright.foundations.working import given
from ampwright.survey.home import Home

from .labour import Labour, TaskTime
from .lines import CHARGE_POINT, Amount, Bundle, Group, Line, amount, bundle, hours_of

HOURS: Final = "h"


def priced_hours(_home: Home, basis: Basis, time: Labour) -> Made[Bundle]:
    """Return what the firm asks for the hours of an option, task by task, before tax."""
    card = basis.rates.card
    lines = []
    for each in time.each:
        if each.hands is not Hands.MATE:
            lines.append(hours_line(each, each.does, card.labour_p_per_h))
        if each.hands is not Hands.ELECTRICIAN:
            lines.append(hours_line(each, f"{each.does}, by a second person", card.mate_p_per_h))
    return Made(bundle(tuple(lines)))


def hours_line(task: TaskTime, what: str, p: Rate[PencePerHour]) -> Line:
    """Return the line of one task; all going well counts at the lowest hour asked, and so on."""
    low_h, usual_h, high_h = (
        hours_of(task.low_min), hours_of(task.usual_min), hours_of(task.high_min)
    )  # fmt: skip
    return Line(
        Group.LABOUR,
        task.task,
        what,
        usual_h,
        HOURS,
        Pence(p.usual),
        Amount(
            amount(low_h, Pence(p.low)),
            amount(usual_h, Pence(p.usual)),
            amount(high_h, Pence(p.high)),
        ),
        task.why,
        CHARGE_POINT,
    )


def every_job(_home: Home, basis: Basis) -> Made[Bundle]:
    """Return what every job carries: travel, the office and the papers, before tax."""
    return Made(bundle(tuple(_standing(basis))))


def _standing(basis: Basis) -> Iterator[Line]:
    """Yield the lines that every job carries."""
    card = basis.rates.card
    one = given("n", 1.0, "", SetBy("each job", "one set")) if basis.keeps_working else 1.0
    yield from travel(basis)
    yield rated(Group.OFFICE, "office_h", HOURS, card.office_h, card.office_p_per_h)
    yield rated(Group.OFFICE, "papers_p", "", Rate(one, one, one), card.papers_p)


def travel(basis: Basis) -> Iterator[Line]:
    """Yield the lines of one visit's road."""
    card = basis.rates.card
    yield rated(Group.TRAVEL, "travel_miles", "miles", card.travel_miles, card.travel_p_per_mile)
    yield rated(Group.TRAVEL, "travel_h", HOURS, card.travel_h, card.travel_p_per_h)


WHAT: Final = {
    "travel_miles": ("the van, there and back", "usual miles of a job"),
    "travel_h": ("the drive, there and back", "usual hours on the road of a job"),
    "office_h": ("survey, design, quotation, booking and notices", "usual hours of the office"),
    "revisit_h": ("asking the operator and booking again", "usual hours of the office"),
    "papers_p": ("certificate and entry with the scheme", "the firm's rate card"),
}


def rated(group: Group, id_: str, unit: str, quantity: Rate[Any], price: Rate[Any]) -> Line:
    """Return a line whose quantity and price both stand on the rate card."""
    what, why = WHAT[id_]
    amounts = (amount(getattr(quantity, level), getattr(price, level)) for level in LEVELS)
    return Line(
        group,
        id_,
        what,
        quantity.usual,
        unit,
        price.usual,
        Amount(*amounts),
        why,
        CHARGE_POINT,
    )
