"""``ampwright options``: the decision of a job, its options, what was ruled out and why."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Final

from ampwright.actions.comparing import MOST_COMPARED, gathered
from ampwright.actions.json_shape import json_of
from ampwright.actions.options import options_of
from ampwright.actions.shapes import (
    OptionLine,
    OptionsAnswer,
    Prove,
    Row,
    Ruled,
    StandsNow,
    Work,
)
from ampwright.actions.words import all_of, count, day

from .common import LOOK_OF, AsJson, ToCompare, to_have, whose_home
from .sheet import Cell, Sheet, in_pieces, marked

MOST_REASONS: Final = 6
QUESTION: Final = 16
MOST_LISTED: Final = 8
HOW: Final = {
    "phone": "ask by telephone",
    "photo": "ask for a photograph",
    "site": "look on site",
    "operator": "ask the network operator",
}


def options(
    home: Path,
    /,
    *,
    json: AsJson = False,
    pdf: Path | None = None,
    to: ToCompare = ToCompare(),
) -> None:
    """Decide a job and compare its options.

    Says what is certain, what is still open and which question decides; compares the options;
    names the work and what must be confirmed; counts what was ruled out, and why.

    Parameters
    ----------
    home
        The home's file.
    json
        As JSON, for a program.
    pdf
        Also set the paper "Options and working" in this file.
    """
    answer = options_of(home, to.terms, pdf)
    if json:
        print(json_of(answer))
        return
    sheet = Sheet()
    show(answer, sheet, str(home))
    if pdf is not None:
        sheet.gap()
        sheet.name(f"The paper is in {pdf}.")
    sheet.show()


def show(answer: OptionsAnswer, sheet: Sheet, home: str) -> None:
    """Write an answer on a sheet, the decision first."""
    decided(answer, sheet)
    certain_and_open(answer, sheet)
    advised(answer, sheet)
    compared(answer, sheet)
    along(answer, sheet)
    work(answer, sheet)
    to_confirm(answer, sheet)
    to_prove(answer, sheet)
    ruled_out(answer, sheet)
    foot(answer, sheet, home)


def decided(answer: OptionsAnswer, sheet: Sheet) -> None:
    """Write the decision and whose home it is for."""
    decision, head = answer.decision, answer.home
    sheet.say(marked(decision.words, LOOK_OF[decision.value]))
    sheet.say(decision.sentence)
    sheet.say(f"To the customer: {decision.customer_words}", "quiet")
    if len(decision.could_be) > 1:
        sheet.rows(((each.chance, each.words) for each in decision.could_be), (12, None))
    if whose := whose_home(head):
        sheet.gap()
        sheet.say(whose, "quiet")


def certain_and_open(answer: OptionsAnswer, sheet: Sheet) -> None:
    """Write what holds whatever the open facts are, and the questions that are left."""
    if answer.certain:
        sheet.heading("Certain", "whatever is chosen and whatever is still open")
        sheet.points(answer.certain)
    if answer.now:
        may_be_so(answer.now, sheet)
    if answer.open:
        sheet.heading("Still open", "what decides comes first")
        for each in answer.open:
            sign = marked("decides" if each.decides else "bears on it", "ask")
            may = f"{HOW[each.answered_by]}; {may_be(each.may_be)}"
            sheet.rows([(sign, each.ask), ("", marked(may, "quiet"))], (11, None))


def may_be_so(now: StandsNow, sheet: Sheet) -> None:
    """Write what some of the possible homes come to, and the range of the price."""
    rows = [
        (name if number == 0 else "", f"{each.chance}: {each.what}")
        for name, found in now.may_be.items()
        for number, each in enumerate(found[:MOST_LISTED])
    ]
    if rows:
        sheet.heading("Possible", "by how common answers are among homes; for the firm alone")
        sheet.rows(rows, (8, None))
    if now.price and now.usual:
        over = "homes drawn of those" if now.drawn else "every home"
        sheet.heading("Range", f"VAT included, over {over} the facts allow")
        sheet.say(
            f"{now.price.words}; nine homes in ten {now.usual.words} at usual rates", indent=2
        )
    if now.sound:
        sheet.say(f"Sound whatever the answers are: {count(len(now.sound), 'option')}", indent=2)
    if now.rough:
        sheet.say(now.rough, "quiet", indent=2)


def may_be(values: Sequence[str]) -> str:
    """Say what an open fact may be."""
    return f"may be {' · '.join(values)}" if values else "not asked"


def advised(answer: OptionsAnswer, sheet: Sheet) -> None:
    """Write which option is recommended and why."""
    advice = answer.recommended
    if advice is None:
        return
    sheet.heading(f"{advice.heading}: {advice.letter}")
    sheet.say(in_pieces(advice.id, 2), "quiet", 2)
    sheet.say(advice.to_electrician, indent=2)
    if advice.to_customer:
        sheet.say(f"To the customer: {advice.to_customer}", indent=2)
    if advice.would_change:
        sheet.say("It would change if:", indent=2)
        sheet.points(advice.would_change, indent=4)


def compared(answer: OptionsAnswer, sheet: Sheet) -> None:
    """Write the options beside each other: what they share once, then where they differ."""
    shown = answer.options[:MOST_COMPARED]
    if not shown:
        return
    asked = gathered(answer.rows)
    alike = [row for row in asked if len(shown) > 1 and len(set(row.answers)) == 1]
    if alike:
        sheet.heading("The same in all")
        sheet.rows(((row.question, row.answers[0]) for row in alike), (QUESTION, None))
    sheet.heading("Options")
    columns(shown, [row for row in asked if row not in alike], sheet)
    sheet.gap()
    for option in answer.options[:MOST_LISTED]:
        id_words = in_pieces(option.id, 6)
        rows: list[tuple[str, Cell]] = [(option.letter, marked(id_words, "quiet"))]
        if option not in shown:
            rows = [(option.letter, f"{option.name}: {beside(option)}"), ("", rows[0][1])]
        sheet.rows(rows, (1, None))
    if rest := answer.options[MOST_LISTED:]:
        sheet.say(f"and {count(len(rest), 'other')}; --json lists all", "quiet", 2)


def columns(shown: Sequence[OptionLine], rows: Sequence[Row], sheet: Sheet) -> None:
    """Write options in columns, one question a row."""
    heads = [marked(f"{each.letter}  {each.name}", "strong") for each in shown]
    behind = [beside(each) for each in shown]
    body = [(row.question, *row.answers) for row in rows]
    sheet.rows([("", *heads), ("standing", *behind), *body], (QUESTION, *(None for _ in heads)))


def beside(option: OptionLine) -> str:
    """Say how an option stands beside the one that leads."""
    if option.recommended:
        return "leads"
    return all_of(option.behind) or "nothing beats it"


def along(answer: OptionsAnswer, sheet: Sheet) -> None:
    """Write what goes with the options: two visits, turns of the setting, what to have in hand."""
    if answer.two_visits:
        sheet.heading("In two visits")
        sheet.say(answer.two_visits.words, indent=2)
    if answer.turns:
        sheet.heading("Where the setting changes the answer")
        sheet.points(each.words for each in answer.turns)
    if answer.in_hand:
        sheet.heading("In hand before a day is booked", "beside what the network says")
        for each in answer.in_hand:
            sheet.points([f"{to_have(each)}  [{each.place}]"])


def work(answer: OptionsAnswer, sheet: Sheet) -> None:
    """Write the work that the leading option needs first, and what it may need."""
    for option in answer.options:
        if option.recommended:
            items(f"Work that {option.letter} needs first", option.work, sheet)
            items(f"Work that {option.letter} may need", option.may_need, sheet)


def items(heading: str, found: Sequence[Work], sheet: Sheet) -> None:
    """Write pieces of work, if any."""
    if found:
        sheet.heading(heading)
    for each in found:
        by = f"To be done by {each.by}." if each.by else ""
        said = [part for part in (each.does, "; ".join(each.parts), each.time, by) if part]
        sheet.rows([("·", "\n".join(said))], (1, None), gap=1)
        in_order(each, sheet)


def in_order(each: Work, sheet: Sheet) -> None:
    """Write how a piece of work is done, step by step, and the chart that it leaves."""
    sheet.rows(((str(at), step) for at, step in enumerate(each.steps, 1)), (2, None), 4, gap=1)
    if each.chart:
        sheet.gap()
        heads, *rows = each.chart
        sheet.rows([tuple(marked(head, "quiet") for head in heads), *rows], _widths(heads), 7)


def _widths(heads: Sequence[str]) -> tuple[int | None, ...]:
    """Return how wide the columns of a chart are: the first narrow, the others alike."""
    return (4, *(None for _ in heads[1:]))


def to_confirm(answer: OptionsAnswer, sheet: Sheet) -> None:
    """Write what must be confirmed before it is relied on."""
    if answer.confirm:
        sheet.heading("Confirm before relying on it")
        whys: dict[str, list[str]] = {}
        for each in answer.confirm:
            whys.setdefault(each.what, []).append(each.why)
        rows = ((marked(" and ".join(why), "ask"), what) for what, why in whys.items())
        sheet.rows(rows, (10, None))


def to_prove(answer: OptionsAnswer, sheet: Sheet) -> None:
    """Write what an instrument proves on the day the work is done."""
    if answer.prove:
        sheet.heading("To be proved on the day")
        sheet.points(proof(each) for each in answer.prove)


def proof(each: Prove) -> str:
    """Write one thing to prove with its limit, its place and how it is tried."""
    held = f": {each.limit}" if each.limit else ""
    return f"{each.what}{held}  [{each.place}]\n{each.how}"


def ruled_out(answer: OptionsAnswer, sheet: Sheet) -> None:
    """Write what ruled choices out, the most first."""
    counts = answer.counts
    if not counts.considered:
        return
    of = f"{count(counts.ruled_out, 'choice')} of {counts.considered:,}"
    sheet.heading("Ruled out", f"{of}; {counts.beaten:,} more are sound but beaten")
    sheet.rows(
        ((f"{each.choices:,}", reason(each)) for each in answer.ruled_out[:MOST_REASONS]),
        (6, None),
    )


def reason(each: Ruled) -> str:
    """Write one reason with its case, its place and what makes it good."""
    said = f"{each.says}: {each.case}" if each.case else each.says
    mended = f"\nMade good by: {'; '.join(each.mended_by)}" if each.mended_by else ""
    return f"{said}  [{each.place}]{mended}"


def foot(answer: OptionsAnswer, sheet: Sheet, home: str) -> None:
    """Write the cautions, what the figures are from, and where to look next."""
    sheet.heading("Cautions")
    sheet.points(answer.cautions)
    basis = answer.basis
    sheet.gap()
    sheet.say(basis.edition, "quiet")
    sheet.say(
        f"Designed for {day(basis.design_date)}. Operator profile {basis.profile}: "
        f"{basis.profile_words}. Data {basis.digest}.",
        "quiet",
    )
    if answer.options:
        letter = answer.options[0].letter
        sheet.gap()
        sheet.say(f"Every number opens: ampwright working {home} {letter}", "quiet")
        sheet.say(f"What is not here, and why: ampwright why-not {home}", "quiet")
