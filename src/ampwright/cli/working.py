"""``ampwright working``: how one option is worked out, stage by stage."""

from __future__ import annotations

from pathlib import Path

from ampwright.actions.json_shape import json_of
from ampwright.actions.working import working_of
from ampwright.actions.working_shapes import (
    CheckAnswer,
    FigureAnswer,
    LineAnswer,
    NoteAnswer,
    RulingAnswer,
    StageAnswer,
    WorkingAnswer,
)

from .common import LOOK_OF, AsJson, ToDesign, which_home, which_option
from .sheet import Sheet, marked


def working(
    home: Path,
    option: str,
    /,
    *,
    json: AsJson = False,
    to: ToDesign = ToDesign(),
) -> None:
    """Show how one option is worked out.

    Stage by stage: what it rests on, each check with both numbers and where it is written, and
    the lines behind the numbers: symbol = formula = numbers = result [source].

    Parameters
    ----------
    home
        The home's file.
    option
        The option: its letter, its id, or the beginning of its id.
    json
        As JSON, for a program.
    """
    answer = working_of(home, to.terms, option)
    if json:
        print(json_of(answer))
        return
    sheet = Sheet()
    head(answer, sheet)
    for each in answer.stages:
        stage(each, sheet)
    sheet.gap()
    sheet.say(answer.basis.edition, "quiet")
    sheet.show()


def head(answer: WorkingAnswer, sheet: Sheet) -> None:
    """Write which option it is, and in which of the possible homes."""
    which_option(answer.letter, answer.name, answer.id, sheet)
    sheet.say(marked(f"All checks together: {answer.outcome}", LOOK_OF[answer.outcome]))
    which_home("Worked out", answer.taken, sheet)


def stage(answer: StageAnswer, sheet: Sheet) -> None:
    """Write one stage."""
    sheet.heading(answer.title)
    if answer.rests_on:
        sheet.say("rests on", "quiet", 2)
        sheet.points(answer.rests_on, 4)
    for ruling in answer.rulings:
        decides(ruling, sheet)
    for found in answer.figures:
        figure(found, sheet)
    for each in answer.checks:
        check(each, sheet)
    for told in answer.notes:
        note(told, sheet)
    if answer.lacking:
        sheet.say(marked("not known", "ask"), indent=2)
        sheet.points(answer.lacking, 4)


def decides(ruling: RulingAnswer, sheet: Sheet) -> None:
    """Write a clause that decides, down to the row that did."""
    sheet.say(ruling.name, indent=2)
    reached = (row for row in ruling.rows if row.state != "not reached")
    sheet.rows(
        ((marked(row.state, "strong" if row.state == "decided" else "quiet"),
          f"{row.words} → {row.follows}  [{row.place}]") for row in reached),
        (13, None), 4,
    )  # fmt: skip


def check(answer: CheckAnswer, sheet: Sheet) -> None:
    """Write one check and the working of its numbers."""
    said = ": ".join(part for part in (answer.says, answer.numbers) if part)
    rows = [(marked(answer.outcome, LOOK_OF[answer.outcome]), f"{said}  [{answer.place}]")]
    more = [answer.why, answer.uses]
    more += [f"caution: {answer.caution}"] if answer.caution else []
    more += [f"mended by: {each}" for each in answer.mended_by]
    sheet.rows([*rows, *(("", each) for each in more if each)], (14, None))
    lines(answer.lines, sheet)


def note(answer: NoteAnswer, sheet: Sheet) -> None:
    """Write what is only told and the working of its numbers."""
    mark = marked("caution", "ask") if answer.caution else marked("note", "quiet")
    uses = [("", answer.uses)] if answer.uses else []
    sheet.rows([(mark, f"{answer.says}  [{answer.place}]"), *uses], (14, None))
    lines(answer.lines, sheet)


def figure(answer: FigureAnswer, sheet: Sheet) -> None:
    """Write one figure and its working."""
    uses = f"  ({answer.uses})" if answer.uses else ""
    sheet.rows([(marked("figure", "quiet"), f"{answer.what}: {answer.result}{uses}")], (14, None))
    lines(answer.lines, sheet)


def lines(answers: tuple[LineAnswer, ...], sheet: Sheet) -> None:
    """Write numbered lines: symbol = formula = numbers = result [source]."""
    sheet.rows(((f"{each.number}", text_of(each)) for each in answers), (4, None), 6)


def text_of(line: LineAnswer) -> str:
    """Return one line as text."""
    worked = (line.formula, line.numbers) if set(line.formula) & set(" (") else ()
    parts = dict.fromkeys((line.symbol, *worked, line.result))
    return f"{' = '.join(parts)}  [{line.source}]"
