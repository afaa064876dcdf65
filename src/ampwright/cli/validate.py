"""``ampwright validate``: whether a home's file can be read, and what it holds."""

from __future__ import annotations

from pathlib import Path

from ampwright.actions.homes import Doubt
from ampwright.actions.homes import validate as answer_to
from ampwright.actions.json_shape import json_of
from ampwright.actions.words import count

from .common import AsJson
from .sheet import Sheet, marked


def validate(home: Path, /, *, json: AsJson = False) -> None:
    """Check a home's file.

    A file with a mistake is refused whole, with every mistake and its line. A sound one is
    summed up: what it holds, and what is worth a second look.

    Parameters
    ----------
    home
        The home's file.
    json
        As JSON, for a program.
    """
    answer = answer_to(home)
    if json:
        print(json_of(answer))
        return
    sheet = Sheet()
    sheet.say(marked("Sound", "sound"))
    title = f"{answer.title}: " if answer.title else ""
    answers, facts = count(answer.records, "answer"), count(answer.answers, "fact")
    sheet.say(f"{title}{answers} to {facts}, in {answer.path}.")
    if answer.things:
        sheet.heading("On its lists", "by the names they go by in the file")
        sheet.points(answer.things)
    both = "people disagree, and both count until one is settled"
    doubts(sheet, "Disputed", both, answer.disputed)
    doubts(sheet, "Overruled", "better evidence says otherwise", answer.overruled)
    if answer.could_not_say:
        sheet.heading("Could not say", "asked, and that person did not know")
        sheet.points(answer.could_not_say)
    sheet.show()


def doubts(sheet: Sheet, name: str, says: str, found: tuple[Doubt, ...]) -> None:
    """Write what is worth a second look, if anything."""
    if found:
        sheet.heading(name, says)
        sheet.rows(((each.what, each.says) for each in found), (30, None))
