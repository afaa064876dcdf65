"""The price of an option: its lines, what each group comes to, tax, and the whole."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.rates import LEVELS
from ampwright.foundations.money import Pence
from ampwright.foundations.notes import tells
from ampwright.foundations.quantity import Share
from ampwright.foundations.source import Place, SetBy, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes, given, nearest
from ampwright.survey.home import Home
from ampwright.tables.regulation import vat_rate

from .lines import (
    CHARGE_POINT,
    OWN_WORK,
    PAID_AS_ASKED,
    ROUNDING,
    Amount,
    Bundle,
    Group,
    Line,
    Sum,
    added,
    bundle,
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
    ``by_others`` names work of others whose charge nobody has said; ``sums`` are those of the
    lines as they came together.
    """

    lines: tuple[Line, ...]
    taxes: tuple[Tax, ...]
    net: Amount
    tax: Amount
    total: Amount
    unpriced: tuple[str, ...]
    by_others: tuple[str, ...]
    sums: tuple[Sum, ...] = field(compare=False, repr=False)

    @property
    def subtotals(self) -> tuple[Subtotal, ...]:
        """What each group comes to, in the order in which a price is read."""
        return tuple(by_group(self.sums))


@tells(METHOD, caution=True)
def not_priced(unpriced: tuple[str, ...]) -> str:
    """Ask for the price of what the option takes and the firm has none for.

    Of the firm's own buying; what others charge is named apart. The design stands without it.

    Examples
    --------
    >>> not_priced(("cable of 35 mm²",)).caution
    'not in the price: cable of 35 mm², for which the firm has none; put it among its prices'
    """
    return (
        f"not in the price: {', '.join(unpriced)}, for which the firm has none; put it among its "
        "prices"
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
    fitted: Bundle,
    run: Bundle,
    kits: Bundle,
    mends: Bundle,
    on_site: Bundle,
    every_job: Bundle,
    charges: Bundle,
    unsaid: tuple[str, ...],
) -> Made[Price]:
    """Return the price of an option, with tax as it stands on the day of the basis.

    ``charges`` are those of others, ``unsaid`` their work whose charge nobody has said.
    """
    own = (fitted, run, kits, mends, on_site, every_job)
    out = add_up(basis, (*own, *overheads(basis, (on_site, every_job)), charges), unsaid)
    return Made(out, notes=(not_priced(out.unpriced),) if out.unpriced else ())


def overheads(basis: Basis, work: tuple[Bundle, ...]) -> Iterator[Bundle]:
    """Yield the overheads on work, travel and office, where the firm puts them apart."""
    share = basis.rates.card.overheads_share
    if not share.high:
        return
    own = tuple(each.amount for part in work for each in part.sums if each.group in OWN_WORK)
    levels = zip(LEVELS, zip(*own, strict=True), strict=True)
    amounts = Amount(*(overheads_on(getattr(share, level), each) for level, each in levels))
    one = given("n", 1.0, "", SetBy("each job", "one sum")) if basis.keeps_working else 1.0
    line = Line(
        Group.OVERHEADS,
        "overheads_share",
        "overheads",
        one,
        "",
        amounts.usual_p,
        amounts,
        "the firm's rate card",
        CHARGE_POINT,
    )
    yield bundle((line,))


def add_up(basis: Basis, parts: tuple[Bundle, ...], by_others: tuple[str, ...] = ()) -> Price:
    """Return the sums of any lines, also of several things sold together.

    Tax is worked out once on all lines that are sold as one thing, at its rate on the day of
    the basis, and rounded to the nearest penny. What others charge is taken as they ask it.
    Raises ``OutOfTableError`` for a thing whose tax the table does not know.
    """
    sums = tuple(each for part in parts for each in part.sums)
    taxes = tuple(taxed(basis, sums))
    net = summed(tuple(each.net for each in taxes))
    tax = summed(tuple(each.tax for each in taxes))
    others = tuple(each.amount for each in sums if each.vat == PAID_AS_ASKED)
    return Price(
        lines=tuple(line for part in parts for line in part.lines),
        taxes=taxes,
        net=net,
        tax=tax,
        total=summed((net, tax, *others)),
        unpriced=tuple(dict.fromkeys(words for part in parts for words in part.unpriced)),
        by_others=by_others,
        sums=sums,
    )


def by_group(sums: tuple[Sum, ...]) -> Iterator[Subtotal]:
    """Yield what each group comes to, in the order in which a price is read."""
    amounts: dict[Group, list[Amount]] = {}
    for each in sums:
        amounts.setdefault(each.group, []).append(each.amount)
    for group in Group:
        if group in amounts:
            yield Subtotal(group, summed(tuple(amounts[group])))


def taxed(basis: Basis, sums: tuple[Sum, ...]) -> Iterator[Tax]:
    """Yield the tax on the lines of each thing sold, by the table of rates and their dates."""
    sold: dict[str, list[Amount]] = {}
    for each in sums:
        if each.vat != PAID_AS_ASKED:
            sold.setdefault(each.vat, []).append(each.amount)
    for item in sorted(sold):
        rate = vat_rate(basis.book, item, basis.design_date)
        levels = tuple(zip(*sold[item], strict=True))
        yield Tax(
            sold=item,
            rate=rate,
            net=Amount(*(added(level) for level in levels)),
            tax=Amount(*(tax_on(rate, level) for level in levels)),
        )
