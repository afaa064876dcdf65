"""What the work items of an option take: their time, their goods, what others charge."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import Hands
from ampwright.foundations.quantity import Minutes
from ampwright.foundations.remedies import Part, Remedy
from ampwright.foundations.source import SetBy
from ampwright.foundations.stages import Made
from ampwright.foundations.working import given
from ampwright.survey.home import Home

from .labour import TaskTime
from .lines import PAID_AS_ASKED, Amount, Bundle, Group, Line, bundle
from .parts import Piece, bought


@dataclass(frozen=True, slots=True)
class Mending:
    """The work items of an option: time and goods of ours, charges of those of others.

    ``unsaid`` names the work of others whose charge nobody has said.
    """

    times: tuple[TaskTime, ...]
    goods: Bundle
    charges: Bundle
    unsaid: tuple[str, ...]


def mending(_home: Home, basis: Basis, remedies: tuple[Remedy, ...]) -> Made[Mending]:
    """Return what the work items of an option take, as each said where it was named.

    What only somebody else may do takes none of our time and none of our goods.
    """
    ours = tuple(remedy for remedy in remedies if not remedy.by)
    charges, unsaid = charged_by_others(basis, tuple(each for each in remedies if each.by))
    times = tuple(time for remedy in ours for time in times_of(basis, remedy))
    goods = bought(basis, (_piece(basis, each, part) for each in ours for part in each.parts))
    return Made(Mending(times, goods, charges, unsaid))


def times_of(basis: Basis, remedy: Remedy) -> Iterator[TaskTime]:
    """Yield the minutes of a work item, unless it takes none."""
    low, usual, high = remedy.minutes
    if not high:
        return
    one = 1.0
    if basis.keeps_working:
        source = SetBy("work of this option", remedy.does)
        low, usual, high = (given("T", each, "min", source) for each in (low, usual, high))
        one = given("n", one, "", source)
    minutes = Minutes(low), Minutes(usual), Minutes(high)
    why = "work that comes first"
    yield TaskTime(remedy.slug, remedy.does, why, Hands.ELECTRICIAN, one, *minutes)


def _piece(basis: Basis, remedy: Remedy, part: Part) -> Piece:
    """Return a part of a work item, found among the firm's goods by its words."""
    amount = part.quantity
    if basis.keeps_working:
        amount = given("n", amount, part.unit, SetBy("work of this option", remedy.does))
    return Piece(basis.rates.named(part.what), amount, remedy.does, part.what)


def charged_by_others(basis: Basis, remedies: tuple[Remedy, ...]) -> tuple[Bundle, tuple[str, ...]]:
    """Return what others charge for their work, and the work whose charge nobody has said."""
    lines, unsaid = [], []
    for remedy in remedies:
        charge = basis.rates.charge(remedy.slug)
        if charge is None:
            unsaid.append(remedy.does)
            continue
        one = given("n", 1.0, "", SetBy("each job", "one")) if basis.keeps_working else 1.0
        asked = Amount(charge.low_p, charge.usual_p, charge.high_p)
        does, why = charge.does, remedy.does
        line = Line(
            Group.OTHERS, remedy.slug, does, one, "", charge.usual_p, asked, why, PAID_AS_ASKED
        )
        lines.append(line)
    return bundle(tuple(lines)), tuple(unsaid)
