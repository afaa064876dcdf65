"""``ampwright sums``: what a customer asks, worked out in plain words."""

from __future__ import annotations

from pathlib import Path

from ampwright.actions.json_shape import json_of
from ampwright.actions.sums import sums_of
from ampwright.actions.sums_shapes import CustomerSum, SumsAnswer

from .common import AsJson, ToDesign, which_home, which_option
from .sheet import Sheet, marked
from .working import figure


def sums(
    home: Path,
    option: str = "",
    /,
    *,
    json: AsJson = False,
    working: bool = False,
    to: ToDesign = ToDesign(),
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
    """
    answer = sums_of(home, to.terms, option)
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
    which_option(answer.letter, answer.name, answer.id, sheet)
    which_home("Worked out", answer.taken, sheet)


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
