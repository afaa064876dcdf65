"""``ampwright why-not``: what ruled choices out, and what beats the rest."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from ampwright.actions.json_shape import json_of
from ampwright.actions.rejections import WhyNot
from ampwright.actions.rejections import why_not as answer_to
from ampwright.actions.words import all_of, count

from .common import AsJson, ToDesign
from .sheet import Sheet, in_pieces, marked

MOST_OFFERED: Final = 8


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


def offers(answer: WhyNot, sheet: Sheet) -> None:
    """Write the options that nothing beats, those with a letter first."""
    rows = sorted((answer.letters.get(each, "–"), each) for each in answer.offered)
    sheet.rows(
        ((letter, in_pieces(each, 14)) for letter, each in rows[:MOST_OFFERED]), (2, None), 10
    )
    if rest := rows[MOST_OFFERED:]:
        sheet.say(f"and {count(len(rest), 'other')}; --json lists all", "quiet", 10)


def show(answer: WhyNot, sheet: Sheet) -> None:
    """Write what became of the choices asked about."""
    about = f"Choices with {answer.asked}" if answer.asked else "All choices"
    sheet.say(f"{about}: {answer.considered:,}", "strong")
    sheet.rows(
        [
            (f"{answer.choices_ruled_out:,}", "ruled out"),
            (f"{answer.beaten:,}", "sound, but another is better"),
            (f"{answer.nothing_beats:,}", "offered, for nothing beats them"),
        ],
        (6, None),
    )
    offers(answer, sheet)
    if answer.ruled_out:
        sheet.heading("Ruled out by", "a choice that fails several counts for each")
        for each in answer.ruled_out:
            said = f"{each.says}\n{each.case}".rstrip()
            sheet.rows([(f"{each.choices:,}", said), ("", marked(each.place, "quiet"))], (6, None))
    if answer.beaten_by:
        sheet.heading("Sound, but beaten", "with one example of each")
        for lost in answer.beaten_by:
            by = f"{all_of(lost.in_what)} than {lost.letter or in_pieces(lost.loses_to, 20)}"
            example = marked(in_pieces(lost.first, 10), "quiet")
            sheet.rows([(f"{lost.choices:,}", by), ("", example)], (6, None))
    if not answer.asked:
        sheet.heading("Ask about one", "any of these words, or several with a / between")
        sheet.say(" · ".join(answer.words), indent=2)
