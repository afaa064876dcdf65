"""The price of one option: every line with what it stands on, the range, what would change it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from ampwright.costing.grant import grant
from ampwright.costing.lines import Amount, Group, Line
from ampwright.costing.price import Price, Subtotal, Tax
from ampwright.costing.second_visit import BothVisits
from ampwright.documents.options_and_working.from_checks import Stage
from ampwright.documents.options_and_working.from_checks import working_of as groups_of
from ampwright.foundations.answers import Missing, OneOf
from ampwright.foundations.errors import NotFoundError
from ampwright.options.price_turns import PriceTurn, price_of_both, price_turns
from ampwright.options.runs import InOneHome
from ampwright.options.search import Option
from ampwright.options.staged import Staged
from ampwright.options.work import Design

from .design_run import DesignRun, run_design
from .facts import answer_to, fact_name, words_of
from .figures import figures_of
from .heads import basis_head
from .naming import find_option, may_need
from .price_shapes import (
    Bill,
    GrantLine,
    PriceAnswer,
    PriceChange,
    PriceGroup,
    PriceLine,
    Span,
    TaxLine,
    TwoBills,
)
from .seeing import Seen, Terms, see
from .shapes import Figure
from .words import all_of, brief, money, small
from .working import line_answer
from .working_shapes import LineAnswer, Taken


def price_of(path: Path, terms: Terms, name: str = "") -> PriceAnswer:
    """Return the price of the option with a letter or id; unless named, of the one that leads.

    Raises like ``read_home``, and ``NotFoundError`` for an option that is not there.
    """
    return priced(see(path, terms), name)


def priced(seen: Seen, name: str = "") -> PriceAnswer:
    """Return the price of an option of a home that was worked out."""
    if not name and seen.best is None:
        do = "Nothing can be fitted here as far as is known; ampwright options says why."
        raise NotFoundError("option", "", (), do=do)
    option = find_option(seen.outlook, seen.offered, name) if name else seen.best
    assert option is not None
    run = run_design(seen.home.folded, seen.basis, option)
    price: Any = run.design.price
    gone = price.keys if isinstance(price, Missing) else ()
    return PriceAnswer(
        home=seen.home.head,
        basis=basis_head(seen.basis),
        letter=seen.letter(option.id),
        id=option.id,
        name=seen.name(option.choice),
        taken=tuple(Taken(k, fact_name(k), words_of(k, v)) for k, v in run.taken.items()),
        bill=None if gone else bill(price),
        lacking=tuple(map(fact_name, gone)),
        grant=None if gone else grant_line(seen, run),
        over_homes=over_homes(option),
        would_change=tuple(would_change(seen, run)),
        two_visits=two_bills(seen, option),
    )


def bill(price: Price) -> Bill:
    """Return a price in plain pieces, lines by group, each with its working."""
    return Bill(
        groups=tuple(group(price, each) for each in price.subtotals),
        net=span(price.net),
        taxes=tuple(map(tax_line, price.taxes)),
        tax=span(price.tax),
        total=span(price.total),
        unpriced=price.unpriced,
        by_others=price.by_others,
    )


def group(price: Price, sub: Subtotal) -> PriceGroup:
    """Return one group of a price with its lines."""
    lines = tuple(price_line(line) for line in price.lines if line.group is sub.group)
    return PriceGroup(sub.group.value, sub.group is Group.OTHERS, span(sub.amount), lines)


def price_line(line: Line) -> PriceLine:
    """Return one line of a price."""
    return PriceLine(
        id=line.id,
        what=line.what,
        quantity=float(line.quantity),
        unit=line.unit,
        unit_p=int(line.unit_p),
        amount=span(line.amount),
        why=line.why,
        working=opened(line.amount.usual_p),
    )


def tax_line(tax: Tax) -> TaxLine:
    """Return the tax on what is sold as one thing; its lines are opened each by itself."""
    whole = opened(tax.tax.usual_p)
    return TaxLine(tax.sold, float(tax.rate), span(tax.net), span(tax.tax), whole[-2:])


def opened(number: float) -> tuple[LineAnswer, ...]:
    """Return the lines of a working, from facts, tables and rates to the number."""
    (found,) = groups_of([Stage("", figures=(("", number),))], fact_name)
    return tuple(line_answer(each) for figure in found.figures for each in figure.lines)


def span(amount: Amount) -> Span:
    """Return three levels of an amount."""
    return Span(*(int(each) for each in amount))


def grant_line(seen: Seen, run: DesignRun) -> GrantLine | None:
    """Return what grant may be asked for; ``None`` while nobody can say."""
    there = InOneHome(run.home)
    found: Any = there.aside(grant, seen.basis.documented(), run.design.price.total.usual_p)
    if isinstance(found, Missing):
        return None
    lines = opened(found.most_p) if found.may else ()
    return GrantLine(found.may, int(found.most_p), found.words, lines)


def over_homes(option: Option[Design]) -> Figure | None:
    """Return the least, the usual and the most over every home still possible, in words."""
    found = figures_of(option)
    usual, low, high = (found.get(f"price{end}_p") for end in ("", "_low", "_high"))
    if usual is None or low is None or high is None:
        return None
    about = money(usual.low)
    if usual.low != usual.high:
        about = f"{about} to {money(usual.high)}"
    words = f"about {about}; {money(low.low)} to {money(high.high)}"
    return Figure(low.low, high.high, "p", words)


def would_change(seen: Seen, run: DesignRun) -> Iterator[PriceChange]:
    """Yield what would change a price, what is known to the penny first."""
    option = run.option
    turns = tuple(price_turns(seen.outlook.ranking, option, run.fixed))
    for alike in together(turns):
        turn = alike[0]
        values = OneOf(tuple(each.value for each in alike))
        said = f"{fact_name(turn.fact)}: {answer_to(turn.fact, values)}"
        if turn.by_p is None:
            yield PriceChange(turn.fact, f"{said}: another option then", None)
        else:
            more = "more" if turn.by_p > 0 else "less"
            work = all_of([small(brief(each.does)) for each in turn.work])
            words = f"{said}: {money(abs(turn.by_p))} {more}{f', to {work}' if work else ''}"
            yield PriceChange(turn.fact, words, int(turn.by_p))
    told = {each.slug for turn in turns for each in turn.work}
    for each in may_need(seen.outlook, option):
        if each.slug not in told:
            yield PriceChange("", f"it may also need: {small(brief(each.does))}", None)
    yield from heights(run)
    price: Any = run.design.price
    if isinstance(price, Missing):
        return
    for what in (*price.unpriced, *price.by_others):
        yield PriceChange("", f"not in it, for nobody has said what it costs: {what}", None)


def together(turns: Sequence[PriceTurn]) -> tuple[list[PriceTurn], ...]:
    """Return turns put together where other values of one fact come to the same."""
    found: dict[Any, list[PriceTurn]] = {}
    for turn in turns:
        found.setdefault((turn.fact, turn.by_p, turn.work), []).append(turn)
    return tuple(found.values())


def heights(run: DesignRun) -> Iterator[PriceChange]:
    """Yield the legs outside whose height nobody has said: a ladder is taken to do."""
    legs: Any = run.design.route.new_legs
    for leg in () if isinstance(legs, Missing) else legs:
        key = f"legs.{leg.id}.highest_m"
        if leg.how == "clipped outside" and key not in run.reads:
            yield PriceChange(key, f"{fact_name(key)}: not asked; a ladder is taken to do", None)


def two_bills(seen: Seen, option: Option[Any]) -> TwoBills | None:
    """Return both bills of the best way to fit now and turn up later that begins or ends here."""
    pair = next((p for p in seen.outlook.staged if option.id in (p.now.id, p.later.id)), None)
    return bills_of(seen, pair) if pair else None


def bills_of(seen: Seen, pair: Staged) -> TwoBills | None:
    """Return both bills of a pair in its most usual home; ``None`` where it has no price."""
    run = run_design(seen.home.folded, seen.basis, pair.later)
    found: BothVisits | Missing = price_of_both(pair, seen.basis).in_home(run.fixed)
    if isinstance(found, Missing):
        return None
    return TwoBills(
        pair.now.id, pair.later.id, span(found.first.total), bill(found.second), span(found.total)
    )
