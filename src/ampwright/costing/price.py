"""The price of an option: its lines, what each group comes to, tax, and the whole."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.rates import LEVELS
from ampwright.foundations.checks import Finding, holds, requires, undetermined
from ampwright.foundations.money import Pence
from ampwright.foundations.quantity import Share
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes, nearest
from ampwright.survey.home import Home
from ampwright.tables.regulation import vat_rate

from .goods import Goods, Work
from .lines import (
    CHARGE_POINT,
    NOTHING,
    OWN_WORK,
    PAID_AS_ASKED,
    ROUNDING,
    Amount,
    Group,
    Line,
    added,
    summed,
)

METHOD: Final = Place("Ampwright", at="method, the price", trust=Trust.DERIVED)


@dataclass(frozen=True, slots=True)
class Subtotal:
    """What the lines of one group come to, before tax."""

    group: Group
    amount: Amount


@dataclass(frozen=True, slots=True)
class Tax:
    """The tax on all lines that are sold as one thing; ``sold`` is as the table calls it."""

    sold: str
    rate: Share
    net: Amount
    tax: Amount


@dataclass(frozen=True, slots=True)
class Price:
    """A price: its lines, sums by group, tax by what is sold, and the whole.

    ``net`` is before tax and without what others charge; ``total`` is all that the customer
    pays, tax within. ``unpriced`` names what is not in it because nobody has priced it;
    ``by_others`` names work of others whose charge nobody has said.
    """

    lines: tuple[Line, ...]
    subtotals: tuple[Subtotal, ...]
    taxes: tuple[Tax, ...]
    net: Amount
    tax: Amount
    total: Amount
    unpriced: tuple[str, ...]
    by_others: tuple[str, ...]


@requires("everything bought has a price", place=METHOD)
def all_priced(unpriced: tuple[str, ...]) -> Finding:
    """The firm has a price for all that the option takes.

    Of the firm's own buying; what others charge is named apart.

    Examples
    --------
    >>> all_priced(("cable of 35 mm²",)).why
    'no price for cable of 35 mm²: put it among the materials or the prices'
    """
    if not unpriced:
        return holds(True)
    return undetermined(
        f"no price for {', '.join(unpriced)}: put it among the materials or the prices"
    )


@computes("K", "p", formula="nearest(r * sum(K))", place=ROUNDING)
def tax_on(r: Share, K: tuple[Pence, ...]) -> Pence:  # noqa: N803 - as printed
    """Return the tax on several lines at one rate, rounded once for all of them.

    Examples
    --------
    >>> tax_on(Share(0.2), (Pence(50400), Pence(8050))), tax_on(Share(0.05), (Pence(1010),))
    (11690, 51)
    """
    return Pence(nearest(r * sum(K)))


@computes("K", "p", formula="nearest(a * sum(K))", place=METHOD)
def overheads_on(a: Share, K: tuple[Pence, ...]) -> Pence:  # noqa: N803 - as printed
    """Return the firm's overheads on its own work, in whole pence."""
    return Pence(nearest(a * sum(K)))


def price(
    _home: Home,
    basis: Basis,
    bought: Goods,
    on_site: Work,
    every_job: Work,
    remedies: tuple[Remedy, ...],
) -> Made[Price]:
    """Return the price of an option, with tax as it stands on the day of the basis."""
    work = (*on_site.lines, *every_job.lines)
    others, unsaid = charged_by_others(basis, remedies)
    lines = (*bought.lines, *work, *overheads(basis, work), *others)
    out = add_up(basis, lines, bought.unpriced, unsaid)
    return Made(out, (all_priced(bought.unpriced),))


def overheads(basis: Basis, lines: tuple[Line, ...]) -> Iterator[Line]:
    """Yield the overheads on work, travel and office, where the firm puts them apart."""
    share = basis.rates.card.overheads_share
    if not share.high:
        return
    own = tuple(line.amount for line in lines if line.group in OWN_WORK)
    levels = zip(LEVELS, zip(*own, strict=True), strict=True)
    amounts = Amount(*(overheads_on(getattr(share, level), each) for level, each in levels))
    yield Line(
        Group.OVERHEADS, "overheads_share", "overheads", 1.0, "", amounts.usual_p, amounts,
        "the firm's rate card", CHARGE_POINT,
    )  # fmt: skip


def charged_by_others(
    basis: Basis, remedies: tuple[Remedy, ...]
) -> tuple[tuple[Line, ...], tuple[str, ...]]:
    """Return what others charge for work only they may do, and whose charge nobody has said."""
    lines, unsaid = [], []
    for remedy in remedies:
        if not remedy.by:
            continue
        charge = basis.rates.charge(remedy.slug)
        if charge is None:
            unsaid.append(remedy.does)
            continue
        asked = Amount(charge.low_p, charge.usual_p, charge.high_p)
        does, usual_p = charge.does, charge.usual_p
        line = Line(
            Group.OTHERS, remedy.slug, does, 1.0, "", usual_p, asked, remedy.does, PAID_AS_ASKED
        )
        lines.append(line)
    return tuple(lines), tuple(unsaid)


def add_up(
    basis: Basis,
    lines: tuple[Line, ...],
    unpriced: tuple[str, ...] = (),
    by_others: tuple[str, ...] = (),
) -> Price:
    """Return the sums of any lines, also of several things sold together.

    Tax is worked out once on all lines that are sold as one thing, at its rate on the day of
    the basis, and rounded to the nearest penny. What others charge is taken as they ask it.
    """
    taxes = tuple(taxed(basis, lines))
    others = summed(tuple(line.amount for line in lines if not line.vat))
    net = summed(tuple(each.net for each in taxes))
    tax = summed(tuple(each.tax for each in taxes))
    rest = () if others == NOTHING else (others,)
    return Price(
        lines=lines,
        subtotals=tuple(by_group(lines)),
        taxes=taxes,
        net=net,
        tax=tax,
        total=summed((net, tax, *rest)),
        unpriced=unpriced,
        by_others=by_others,
    )


def by_group(lines: tuple[Line, ...]) -> Iterator[Subtotal]:
    """Yield what each group comes to, in the order in which a price is read."""
    amounts: dict[Group, list[Amount]] = {}
    for line in lines:
        amounts.setdefault(line.group, []).append(line.amount)
    for group in Group:
        if group in amounts:
            yield Subtotal(group, summed(tuple(amounts[group])))


def taxed(basis: Basis, lines: tuple[Line, ...]) -> Iterator[Tax]:
    """Yield the tax on the lines of each thing sold, by the table of rates and their dates."""
    sold: dict[str, list[Amount]] = {}
    for line in lines:
        if line.vat != PAID_AS_ASKED:
            sold.setdefault(line.vat, []).append(line.amount)
    for item in sorted(sold):
        rate = vat_rate(basis.book, item, basis.design_date)
        levels = tuple(zip(*sold[item], strict=True))
        yield Tax(
            sold=item,
            rate=rate,
            net=Amount(*(added(level) for level in levels)),
            tax=Amount(*(tax_on(rate, level) for level in levels)),
        )


