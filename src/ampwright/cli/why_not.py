"""``ampwright why-not``: what ruled choices out, and what beats the rest."""

from __future__ import annotations

from pathlib import Path

from ampwright.actions.json_shape import json_of
from ampwright.actions.rejections import WhyNot
from ampwright.actions.rejections import why_not as answer_to
from ampwright.actions.words import all_of

from .common import AsJson, ToDesign
from .sheet import Sheet, marked


def why_not(
    home: Path,
    choice: str = "",
    /,
    *,
    json: AsJson = False,
    to: ToDesign = ToDesign(),
) -> None:
    """Say why a choice is not among the options.

    Parameters
    ----------
    home
        The home's file.
    choice
        An option's letter or id, or parts of one, as rod, meter, 16a or armoured/rod. Without
        it, all that was ruled out.
    json
        As JSON, for a program.
    """
    answer = answer_to(home, to.terms, choice)
    if json:
        print(json_of(answer))
        return
    sheet = Sheet()
    show(answer, sheet)
    sheet.show()


def show(answer: WhyNot, sheet: Sheet) -> None:
    """Write what became of the choices asked about."""
    about = f"Choices with {answer.asked}" if answer.asked else "All choices"
    sheet.say(f"{about}: {answer.considered:,}", "strong")
    sheet.rows(
        [
            (f"{answer.choices_ruled_out:,}", "ruled out"),
            (f"{answer.beaten:,}", "sound, but another is better"),
            (f"{len(answer.offered):,}", f"offered {all_of(answer.offered)}".rstrip()),
        ],
        (6, None),
    )
    if answer.ruled_out:
        sheet.heading("Ruled out by", "a choice that fails several counts for each")
        for each in answer.ruled_out:
            said = f"{each.says}\n{each.case}".rstrip()
            sheet.rows([(f"{each.choices:,}", said), ("", marked(each.place, "quiet"))], (6, None))
    if answer.beaten_by:
        sheet.heading("Sound, but beaten")
        for lost in answer.beaten_by:
            by = f"by {lost.letter or lost.loses_to}: {all_of(lost.in_what)}"
            sheet.rows(
                [(f"{lost.choices:,}", by), ("", marked(f"first: {lost.first}", "quiet"))],
                (6, None),
            )
    if not answer.asked:
        sheet.heading("Ask about one", "any of these words, or several with a / between")
        sheet.say(" · ".join(answer.words), indent=2)
