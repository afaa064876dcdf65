"""``ampwright sums``: what a customer asks, worked out in plain words."""

from __future__ import annotations

from pathlib import Path

from ampwright.actions.json_shape import json_of
from ampwright.actions.sums import sums_of
from ampwright.actions.sums_shapes import CustomerSum, SumsAnswer

from .common import AsJson, Day, terms
from .sheet import Sheet, marked
from .working import figure


def sums(
    home: Path,
    option: str = "",
    /,
    *,
    json: AsJson = False,
    working: bool = False,
    firm: Path | None = None,
    profile: str = "",
    date: Day = None,
) -> None:
    """Work out what a customer asks.

    Minutes a night, units and pounds a year, empty to full, what more speed buys, sun in the car
    or sold, one point or two.

    Parameters
    ----------
    home
        The home's file.
    option
        The option: its letter, its id, or the beginning of its id. Unless given, the one that
        leads.
    json
        As JSON, for a program; every sum with its working.
    working
        Also print the working of every sum.
    firm
        Folder of the firm's own data, in the place of the shipped.
    profile
        Network operator's profile. Unless given, the one the home names.
    date
        Day to work for, as 2026-12-10. Unless given, today.
    """
    answer = sums_of(home, terms(profile, date, firm), option)
    if json:
        print(json_of(answer))
        return
    sheet = Sheet()
    head(answer, sheet)
    for each in answer.sums:
        show(each, sheet, working)
    sheet.gap()
    sheet.say("An average year at nominal voltage. Prices as the customer told them.", "quiet")
    sheet.show()


def head(answer: SumsAnswer, sheet: Sheet) -> None:
    """Write which option it is, and in which of the possible homes."""
    letter = f"{answer.letter}  " if answer.letter else ""
    sheet.say(f"{letter}{answer.name}", "strong")
    sheet.say(answer.id, "quiet")
    if answer.taken:
        sheet.gap()
        sheet.say("Worked out in the most usual of the homes that are still possible:")
        sheet.points(f"{each.what}: {each.value}" for each in answer.taken)


def show(each: CustomerSum, sheet: Sheet, working: bool) -> None:
    """Write one sum: what is asked, what to say, and its working if it is wanted."""
    sheet.heading(each.asks)
    sheet.points(each.says)
    if each.lacking:
        sheet.say(marked("not known", "ask"), indent=2)
        sheet.points(each.lacking, 4)
    if working:
        for found in each.figures:
            figure(found, sheet)
