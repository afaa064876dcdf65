"""``ampwright price``: what an option costs, line by line, and what each line stands on."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Final

from cyclopts import Parameter
from rich.text import Text

from ampwright.actions.json_shape import json_of
from ampwright.actions.price_shapes import Bill, GrantLine, PriceAnswer, PriceLine, Span, TwoBills
from ampwright.actions.pricing import price_of
from ampwright.actions.words import day, number, percent
from ampwright.foundations.errors import NotFoundError
from ampwright.foundations.money import Pence
from ampwright.foundations.money import pounds as in_pounds

from .common import AsJson, ToDesign, which_home, which_option
from .sheet import Cell, Sheet, marked
from .working import lines as working_lines

WIDTHS: Final = (1, 62, 10)
SUMS: Final = (36, 11, 11, 11)


def price(
    home: Path,
    option: str = "",
    /,
    *,
    json: AsJson = False,
    line: Annotated[str, Parameter(name="--line")] = "",
    to: ToDesign = ToDesign(),
) -> None:
    """Build up what an option costs.

    Line by line, with why each line is there; tax; when all goes well, usually and when it does
    not; what would change it; a grant that may be asked for, never taken off; a second visit.

    Parameters
    ----------
    home
        The home's file.
    option
        The option: its letter, its id, or the beginning of its id. Unless given, the one that
        leads.
    json
        As JSON, for a program; every line with its working.
    line
        Open one line, by its id: the facts, tables and rates it stands on.
    """
    answer = price_of(home, to.terms, option)
    if json:
        print(json_of(answer))
        return
    sheet = Sheet()
    if line:
        open_line(answer, line, sheet)
    else:
        show(answer, sheet, str(home))
    sheet.show()


def show(answer: PriceAnswer, sheet: Sheet, home: str) -> None:
    """Write a price on a sheet: what is paid first, then how it comes about."""
    head(answer, sheet)
    if answer.bill is not None:
        lines(answer.bill, sheet)
        sums(answer, answer.bill, sheet)
    if answer.would_change:
        sheet.heading("What would change it")
        sheet.points(each.words for each in answer.would_change)
    if answer.two_visits is not None:
        second(answer.two_visits, sheet)
    foot(answer, sheet, home)


def head(answer: PriceAnswer, sheet: Sheet) -> None:
    """Write which option it is and what it costs."""
    which_option(answer.letter, answer.name, answer.id, sheet)
    if answer.over_homes is not None:
        sheet.say(f"With VAT {answer.over_homes.words}")
    if answer.lacking:
        sheet.say(marked("no price yet; not known:", "ask"))
        sheet.points(answer.lacking)
    which_home("Priced", answer.taken, sheet)


def lines(bill: Bill, sheet: Sheet) -> None:
    """Write every line of a bill under its group, before tax."""
    for group in bill.groups:
        sheet.heading(group.name.capitalize(), pounds(group.amount.usual_p))
        sheet.rows(map(row, group.lines), WIDTHS, gap=1)


def pounds(pence: int) -> str:
    """Write pence as pounds and pence, pence always."""
    text = in_pounds(Pence(pence))
    return text if "." in text else f"{text}.00"


def row(line: PriceLine) -> tuple[Cell, Cell, Cell]:
    """Return what a line is, how it comes about, why it is there, and its amount."""
    much = f"{number(line.quantity)} {line.unit}".rstrip()
    below = f"\n{line.id}: {much} at {pounds(line.unit_p)}; {line.why}"
    return "·", Text.assemble(line.what, (below, "dim")), f"{pounds(line.amount.usual_p):>10}"


def sums(answer: PriceAnswer, bill: Bill, sheet: Sheet) -> None:
    """Write the sums, the tax and what is paid, when all goes well to when it does not."""
    others = [group for group in bill.groups if group.charged_by_others]
    rows: list[tuple[Cell, str, str, str]] = [("before VAT", *three(bill.net))]
    rows += [(f"VAT {percent(each.rate)}, {each.sold}", *three(each.tax)) for each in bill.taxes]
    rows += [(f"{each.name}, VAT within", *three(each.amount)) for each in others]
    rows.append((marked("to pay", "strong"), *three(bill.total)))
    sheet.heading("Together", "when all goes well, usually, when it does not")
    sheet.rows(rows, SUMS, gap=1)
    if answer.grant is not None:
        sheet.gap()
        sheet.say(granted(answer.grant), indent=2)


def granted(grant: GrantLine) -> str:
    """Say what grant may be asked for, and that it is not in the price."""
    if not grant.may:
        return f"Grant: {grant.words}."
    return f"Grant: perhaps up to {pounds(grant.most_p)}, not taken off here; {grant.words}."


def three(amount: Span) -> tuple[str, str, str]:
    """Return three levels of an amount, set to the right."""
    low, usual, high = (f"{pounds(p):>10}" for p in (amount.low_p, amount.usual_p, amount.high_p))
    return low, usual, high


def second(both: TwoBills, sheet: Sheet) -> None:
    """Write what going again costs, and both visits together."""
    sheet.heading("In two visits", "fitted as for the second, turned up when the network agrees")
    rows = [
        ("first visit, all goods", *three(both.first)),
        ("second visit", *three(both.second.total)),
        ("both, with VAT", *three(both.total)),
    ]
    sheet.rows(rows, SUMS, gap=1)
    sheet.say(f"from {both.now}", "quiet", 2)
    sheet.say(f"to {both.later}", "quiet", 2)


def open_line(answer: PriceAnswer, wanted: str, sheet: Sheet) -> None:
    """Write what one line stands on; raises ``NotFoundError`` for a line that is not there."""
    groups = answer.bill.groups if answer.bill else ()
    known = [each for group in groups for each in group.lines]
    found = [each for each in known if each.id == wanted]
    if not found:
        raise NotFoundError("line of the price", wanted, tuple(each.id for each in known))
    for each in found:
        sheet.heading(each.what, pounds(each.amount.usual_p))
        sheet.say(f"why: {each.why}", indent=2)
        working_lines(each.working, sheet)


def foot(answer: PriceAnswer, sheet: Sheet, home: str) -> None:
    """Write what the prices are, and where each line opens."""
    sheet.gap()
    sheet.say(
        "Prices, hours and rates are the firm's own files; the shipped ones are invented. Not an "
        f"offer until a named person makes it. Priced for {day(answer.basis.design_date)}.",
        "quiet",
    )
    if answer.bill is not None:
        first = answer.bill.groups[0].lines[0].id
        named = answer.letter or answer.id
        sheet.name(f"Every line opens: ampwright price {home} {named} --line {first}")
