"""``ampwright demand``: what a home draws, by its loads, its meter and a logger, side by side."""

from __future__ import annotations

from pathlib import Path

from ampwright.actions.demanding import DemandAnswer
from ampwright.actions.demanding import demand as answer_to
from ampwright.actions.json_shape import json_of
from ampwright.actions.words import by_line

from .common import AsJson, ToJudge, which_home
from .sheet import Sheet


def demand(
    home: Path,
    /,
    *,
    half_hours: Path | None = None,
    logger: Path | None = None,
    json: AsJson = False,
    to: ToJudge = ToJudge(),
) -> None:
    """Set what a home draws three ways side by side.

    By its loads, by the half-hours of its meter, by a logger on its lines. Which of them counts is
    a choice that the home's file states; nothing is written into it here.

    Parameters
    ----------
    home
        The home's file.
    half_hours
        CSV of the meter: a time, and one column of kWh, Wh, kW, W or A a half-hour.
    logger
        CSV of a logger: a time, and a column of amperes a line, a reading in five minutes or less.
    json
        As JSON, for a program.
    """
    answer = answer_to(home, to.terms, half_hours, logger)
    if json:
        print(json_of(answer))
        return
    sheet = Sheet()
    show(answer, str(home), sheet)
    sheet.show()


def show(answer: DemandAnswer, home: str, sheet: Sheet) -> None:
    """Write the ways, what was wrong with the files, and how to keep their figures."""
    sheet.say("Demand before the point", "strong")
    rows = []
    for way in answer.ways:
        lines = by_line(way.line_a)
        rows += [(way.by, f"{lines}{'  counts' if way.counts else ''}"), ("", way.words)]
    sheet.rows(rows, (20, None))
    sheet.say(f"Why that one counts: {answer.reason}.", "quiet")
    if answer.cautions:
        sheet.heading("Look into")
        sheet.points(answer.cautions)
    if answer.problems:
        sheet.heading("In the files", "named and survived")
        sheet.points(answer.problems)
    which_home("Worked out", answer.taken, sheet)
    if answer.keep:
        sheet.heading("Keep the figures")
        for each in answer.keep:
            sheet.name(
                f'ampwright answer {home} {each.key} {each.value} --measured "{each.file}" --by …'
            )
