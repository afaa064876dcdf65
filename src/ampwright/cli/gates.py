"""``ampwright gates``: what is missing before the next stage of a job."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from ampwright.actions.gating import GatesAnswer, ShortFact, StageGate
from ampwright.actions.gating import gates as answer_to
from ampwright.actions.json_shape import json_of
from ampwright.actions.words import count

from .common import AsJson, ToJudge, to_have
from .sheet import Cell, Sheet, marked

STAGES: Final = {
    "quote": "quoting", "book": "booking a day", "fit": "fitting", "certify": "certifying",
}  # fmt: skip
PARTS: Final = {
    "phone": "On the telephone",
    "photo": "With a photograph or a paper",
    "site": "On site",
}
WIDTHS: Final = (33, 17, 6, 6, 8)


def gates(
    home: Path,
    /,
    *,
    json: AsJson = False,
    to: ToJudge = ToJudge(),
) -> None:
    """Say what is missing before the next stage of a job.

    Before quoting, fitting and certifying some facts must be known well enough: told, seen on a
    picture or a paper, or measured. Before booking some things must be in hand.

    Parameters
    ----------
    home
        The home's file.
    json
        As JSON, for a program.
    """
    answer = answer_to(home, to.terms)
    if json:
        print(json_of(answer))
        return
    sheet = Sheet()
    show(answer, sheet)
    sheet.show()


def show(answer: GatesAnswer, sheet: Sheet) -> None:
    """Write the stages, then what is missing by who can answer."""
    sheet.rows(
        ((STAGES[each.before], state(each, answer)) for each in answer.stages), (14, None), 0
    )
    if answer.in_hand:
        sheet.heading("In hand before a day is booked", "beside what the network says")
        sheet.points(to_have(each) for each in answer.in_hand)
    for who, heading in PARTS.items():
        short = [each for each in answer.facts if each.answered_by == who]
        if short:
            sheet.heading(heading)
            head = ("", "now", "quote", "fit", "certify")
            sheet.rows(map(row, short), WIDTHS, head=head)
    if answer.ask_again:
        sheet.heading("Ask again", "it may have changed since")
        sheet.rows(
            ((each.what, f"{each.answer}, {each.how}") for each in answer.ask_again), (33, None)
        )


def state(each: StageGate, answer: GatesAnswer) -> Cell:
    """Say whether the way to one stage is clear."""
    if each.clear:
        return marked("nothing is missing", "sound")
    if each.before != "book":
        return marked(f"{count(each.facts_short, 'fact')} not known well enough", "ask")
    if answer.in_hand:
        return marked(f"{count(len(answer.in_hand), 'thing')} to have in hand first", "ask")
    return marked("nothing to book: no option holds yet", "stop")


def row(each: ShortFact) -> tuple[Cell, ...]:
    """Write one fact: how it is known now, and how it must be known before each stage."""
    now = f"{each.known} {each.answer}" if each.answer else marked(each.known, "quiet")
    return (each.what, now, *(each.needs.get(gate, "") for gate in ("quote", "fit", "certify")))
