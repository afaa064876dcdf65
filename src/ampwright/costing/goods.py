"""Goods and hours as lines of a price: what the firm asks for each, before tax."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Any, Final, NamedTuple

from ampwright.firm.basis import Basis
from ampwright.firm.rates import LEVELS, Rate, Rates
from ampwright.foundations.money import Pence
from ampwright.foundations.quantity import Share
from ampwright.foundations.source import SetBy
from ampwright.foundations.stages import Made
from ampwright.foundations.working import given
from ampwright.survey.home import Home

from .labour import Labour, TaskTime
from .lines import CHARGE_POINT, Amount, Group, Line, amount, hours_of, marked_up
from .parts import Item, Parts

HOURS: Final = "h"


class Asked(NamedTuple):
    """What the firm asks for one of a good, level by level, and the group it belongs to."""

    group: Group
    unit: Amount


@dataclass(frozen=True, slots=True)
class Goods:
    """The lines of all that is bought, and what nobody has priced, in words."""

    lines: tuple[Line, ...]
    unpriced: tuple[str, ...]


def priced_goods(_home: Home, basis: Basis, bought: Parts) -> Made[Goods]:
    """Return what the firm asks for all that an option takes, before tax."""
    lines, unpriced = [], []
    for item in bought.items:
        asked = asked_for(basis.rates, item.good)
        if asked is None:
            unpriced.append(item.what)
        else:
            lines.append(_line(item, asked))
    return Made(Goods(tuple(lines), tuple(unpriced)))


def _line(item: Item, asked: Asked) -> Line:
    """Return the line of one good."""
    low_p, usual_p, high_p = asked.unit
    n = item.quantity
    return Line(
        asked.group, item.good, item.what, n, item.unit, usual_p,
        Amount(amount(n, low_p), amount(n, usual_p), amount(n, high_p)),
        item.why, CHARGE_POINT,
    )  # fmt: skip


def asked_for(rates: Rates, id_: str) -> Asked | None:
    """Return what the firm asks for one of a good, or ``None`` where it has no price."""
    return _worked_out(rates, id_) if rates.keeps_working else _kept(rates, id_)


def _worked_out(rates: Rates, id_: str) -> Asked | None:
    good = rates.good(id_)
    if good is None:
        return None
    card = rates.card
    share: Rate[Share] = card.point_markup_share if good.point else card.materials_markup_share
    return Asked(
        Group.POINT if good.point else Group.MATERIALS,
        Amount(
            marked_up(good.low_p, share.low),
            marked_up(good.usual_p, share.usual),
            marked_up(good.high_p, share.high),
        ),
    )


_kept = lru_cache(maxsize=4096)(_worked_out)
"""For rates that keep no working only: prices are the same in every option."""


@dataclass(frozen=True, slots=True)
class Work:
    """The lines of the work on site."""

    lines: tuple[Line, ...]


def priced_hours(_home: Home, basis: Basis, time: Labour) -> Made[Work]:
    """Return what the firm asks for the hours of an option, task by task, before tax."""
    return Made(Work(tuple(_hours(basis, each) for each in time.each)))


def _hours(basis: Basis, task: TaskTime) -> Line:
    """Return the line of one task; all going well counts at the lowest hour asked, and so on."""
    p = basis.rates.card.labour_p_per_h
    low_h, usual_h, high_h = (
        hours_of(task.low_min), hours_of(task.usual_min), hours_of(task.high_min)
    )  # fmt: skip
    return Line(
        Group.LABOUR, task.task, task.does, usual_h, HOURS, Pence(p.usual),
        Amount(
            amount(low_h, Pence(p.low)),
            amount(usual_h, Pence(p.usual)),
            amount(high_h, Pence(p.high)),
        ),
        "the firm's usual time for it", CHARGE_POINT,
    )  # fmt: skip


def every_job(_home: Home, basis: Basis) -> Made[Work]:
    """Return what every job carries: travel, the office and the papers, before tax."""
    return Made(Work(tuple(_standing(basis))))


def _standing(basis: Basis) -> Iterator[Line]:
    """Yield the lines that every job carries."""
    card = basis.rates.card
    one = _one(basis)
    per_mile, per_hour = card.travel_p_per_mile, card.travel_p_per_h
    yield _rated(Group.TRAVEL, "travel_miles", "miles", card.travel_miles, per_mile)
    yield _rated(Group.TRAVEL, "travel_h", HOURS, card.travel_h, per_hour)
    yield _rated(Group.OFFICE, "office_h", HOURS, card.office_h, card.office_p_per_h)
    yield _rated(Group.OFFICE, "papers_p", "", Rate(one, one, one), card.papers_p)


WHAT: Final = {
    "travel_miles": ("the van, there and back", "usual miles of a job"),
    "travel_h": ("the drive, there and back", "usual hours on the road of a job"),
    "office_h": ("survey, design, quotation, booking and notices", "usual hours of the office"),
    "papers_p": ("certificate and entry with the scheme", "the firm's rate card"),
}


def _one(basis: Basis) -> float:
    return given("n", 1.0, "", SetBy("each job", "one set")) if basis.keeps_working else 1.0


def _rated(
    group: Group, id_: str, unit: str, quantity: Rate[Any], price: Rate[Any]
) -> Line:
    """Return a line whose quantity and price both stand on the rate card."""
    what, why = WHAT[id_]
    amounts = (amount(getattr(quantity, level), getattr(price, level)) for level in LEVELS)
    return Line(
        group, id_, what, quantity.usual, unit, price.usual, Amount(*amounts),
        why, CHARGE_POINT,
    )  # fmt: skip
