"""Lines of a price: what, how much, at what each, what that comes to in whole pence, and why."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final, NamedTuple

from ampwright.foundations.money import Pence
from ampwright.foundations.quantity import Hours, Minutes, Share
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes, nearest

METHOD: Final = Place("Ampwright", at="method, the price", trust=Trust.DERIVED)
ROUNDING: Final = Place("VAT trader records", "HMRC internal manual", "VATREC12030")
"""Under half a penny down, half a penny or more up."""
CHARGE_POINT: Final = "charge point, fitted"
"""What is sold, as the table of tax rates calls it."""
PAID_AS_ASKED: Final = ""
"""Stands for the tax of what others charge: it is within their figure."""


class Group(StrEnum):
    """What a line belongs to, in the order in which a price is read."""

    POINT = "the point"
    MATERIALS = "materials"
    LABOUR = "labour"
    TRAVEL = "travel"
    OFFICE = "office and papers"
    OVERHEADS = "overheads"
    OTHERS = "charged by others"


OWN_WORK: Final = frozenset({Group.LABOUR, Group.TRAVEL, Group.OFFICE})
"""Groups that carry the firm's overheads, where its hour does not."""


class Amount(NamedTuple):
    """Whole pence when all goes well, usually, and when it does not."""

    low_p: Pence
    usual_p: Pence
    high_p: Pence


NOTHING: Final = Amount(Pence(0), Pence(0), Pence(0))


class Line(NamedTuple):
    """One line of a price, before tax.

    ``id`` is that of the good, the task or the rate, unlike any other of its group unless a task
    is done twice or by two; ``unit_p`` the usual price of one
    ``unit``, empty for apiece; ``why`` says what asked for it; ``vat`` is what is sold, as the
    table of tax rates calls it.
    """

    group: Group
    id: str
    what: str
    quantity: float
    unit: str
    unit_p: Pence
    amount: Amount
    why: str
    vat: str


class Sum(NamedTuple):
    """What the lines of one group come to that are sold as one thing."""

    group: Group
    vat: str
    amount: Amount


@dataclass(frozen=True, slots=True)
class Bundle:
    """Lines that belong together, their sums, and what has no price, in words."""

    lines: tuple[Line, ...]
    sums: tuple[Sum, ...]
    unpriced: tuple[str, ...] = ()


@computes("K", "p", formula="nearest(n * p)", place=ROUNDING)
def amount(n: float, p: Pence) -> Pence:
    """Return what so many come to at a price each, in whole pence.

    Examples
    --------
    >>> amount(8.8, Pence(322))
    2834
    """
    return Pence(nearest(n * p))


@computes("p", "p", formula="nearest((1 + a) * p)", place=ROUNDING)
def marked_up(p: Pence, a: Share) -> Pence:
    """Return what the firm asks for one of what it buys, in whole pence.

    Examples
    --------
    >>> marked_up(Pence(45000), Share(0.12)), marked_up(Pence(1030), Share(0.15))
    (50400, 1185)
    """
    return Pence(nearest((1 + a) * p))


@computes("t", "h", formula="T / 60", place=METHOD)
def hours_of(T: Minutes) -> Hours:  # noqa: N803 - as printed
    """Return minutes as hours."""
    return Hours(T / 60)


@computes("K", "p", formula="sum(K)", place=METHOD)
def added(K: tuple[Pence, ...]) -> Pence:  # noqa: N803 - as printed
    """Return what several amounts come to together."""
    return Pence(sum(K))


def bundle(lines: tuple[Line, ...], unpriced: tuple[str, ...] = ()) -> Bundle:
    """Return lines with their sums, by group and by what is sold."""
    found: dict[tuple[Group, str], list[Amount]] = {}
    for line in lines:
        found.setdefault((line.group, line.vat), []).append(line.amount)
    sums = (Sum(group, vat, summed(tuple(each))) for (group, vat), each in found.items())
    return Bundle(lines, tuple(sums), unpriced)


def summed(amounts: tuple[Amount, ...]) -> Amount:
    """Return several amounts together, level by level; nought for none."""
    if not amounts:
        return NOTHING
    if len(amounts) == 1:
        return amounts[0]
    return Amount(*(added(level) for level in zip(*amounts, strict=True)))
