"""``ampwright ask``: what can be said now, and the one question to ask next."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Final, Literal

from ampwright.actions.asking import ask as answer_to
from ampwright.actions.asking_shapes import AskAnswer, ErrandLine, Question
from ampwright.actions.json_shape import json_of
from ampwright.actions.words import all_of, count, day, small

from .common import LOOK_OF, AsJson, Flag, ToJudge, whose_home
from .sheet import Sheet, marked

BY: Final = {
    "phone": "on the telephone",
    "photo": "with a photograph",
    "site": "on site",
    "operator": "a call to the network operator",
}
HOW: Final = {
    "phone": "--told call --by …",
    "photo": '--seen "photo …" --by …',
    "site": '--seen "on site" --by …',
    "operator": '--told "call to the operator" --by …',
}
THEN: Final = 3


def ask(
    home: Path,
    /,
    *,
    channel: Literal["phone", "photo", "site", ""] = "",
    all: Flag = False,
    json: AsJson = False,
    to: ToJudge = ToJudge(),
) -> None:
    """Say what is certain, what it costs, and what to ask next.

    What nobody has said is taken as usual while the range is worked out; none of that stands in
    a design or on a paper.

    Parameters
    ----------
    home
        The home's file.
    channel
        What is open now: phone, photo or site. Only what it can answer is asked.
    all
        Every question worth asking, in order, and all that was taken as usual.
    json
        As JSON, for a program.
    """
    answer = answer_to(home, to.terms, channel)
    if json:
        print(json_of(answer))
        return
    sheet = Sheet()
    show(answer, sheet, whole=all)
    foot(answer, sheet, str(home), whole=all)
    sheet.show()


def show(answer: AskAnswer, sheet: Sheet, *, whole: bool = False) -> None:
    """Write what stands now, then what to ask."""
    head = answer.home
    sheet.say(marked(answer.now.words, LOOK_OF[answer.now.decision]))
    if whose := whose_home(head):
        sheet.say(whose, "quiet")
    sheet.heading("Say now")
    for sentence in answer.say:
        sheet.say(sentence, indent=2)
    stands(answer, sheet)
    if answer.next is None or answer.next_errand is None:
        sheet.heading("Nothing to ask")
        sheet.say(nothing_here(answer), indent=2)
    elif whole:
        for errand in answer.errands:
            errand_whole(errand, sheet)
    else:
        sheet.heading("Ask now", f"{BY[answer.next.answered_by]}, {answer.next_errand.time}")
        caution(answer.next_errand, sheet)
        asked(answer.next, sheet)
        also(answer, sheet)


def nothing_here(answer: AskAnswer) -> str:
    """Say that nothing is left to ask here, and where else something is."""
    if answer.left_to:
        ways = all_of([BY[each] for each in answer.left_to])
        return f"Nothing that can be answered here decides anything. What is left: {ways}."
    return "Nothing that is left to ask decides anything."


def stands(answer: AskAnswer, sheet: Sheet) -> None:
    """Write what is certain, what may be, and how likely a visit would be in vain."""
    now = answer.now
    if now.certain:
        sheet.heading("Certain", "in every home that this may be")
        sheet.points(now.certain)
    if now.sound:
        sheet.heading("Sound whatever the answers", "once what each home needs is done")
        sheet.points(now.sound)
    if len(now.could_be) > 1:
        sheet.heading("May be", "by how common answers are among homes; for the firm alone")
        sheet.rows(((each.chance, each.words) for each in now.could_be), (12, None))
        on = f"It turns most on {small(answer.turns_most_on)}. " if answer.turns_most_on else ""
        vain = f"How likely a visit planned now is in vain: {now.wasted_visit}."
        sheet.say(f"{on}{vain}", "quiet", 2)


def asked(question: Question, sheet: Sheet) -> None:
    """Write one question with its answers, what to look at, and why it is asked."""
    about = f"{question.about}: " if question.about else ""
    sheet.say(marked(f"{about}{question.ask}", "strong"), indent=2)
    sheet.say(may_answer(question), indent=2)
    rows = [("look", question.look)] if question.look else []
    sheet.rows([*rows, ("why", question.why)], (5, None))


def may_answer(question: Question) -> str:
    """Write the answers to choose from; a photograph is read, so the trade's name goes before."""
    unit = f" {question.unit}" if question.unit else ""
    free = f"a figure in {question.unit}" if question.unit else question.form
    listed = f"{' · '.join(question.choices)}{unit}" if question.choices else free
    if question.answered_by == "photo":
        return f"We read off it: {small(question.what)}; {listed}"
    return f"{listed} · cannot say"


def also(answer: AskAnswer, sheet: Sheet) -> None:
    """Write what else the same errand settles, and what comes after it."""
    assert answer.next_errand is not None
    if more := answer.next_errand.questions[1:]:
        sheet.say("In the same place:", indent=2)
        sheet.points((each.ask for each in more), indent=4)
    if then := answer.errands[1 : THEN + 1]:
        sheet.heading("Then")
        sheet.rows((short(each) for each in then), (20, None))


def short(errand: ErrandLine) -> tuple[str, str]:
    """Write one errand on a line."""
    first = errand.questions[0]
    about = f"{first.about}: " if first.about else ""
    if len(errand.questions) == 1:
        return BY[errand.answered_by], f"{about}{first.ask}"
    return BY[errand.answered_by], f"{errand.place}: {count(len(errand.questions), 'fact')}"


def errand_whole(errand: ErrandLine, sheet: Sheet) -> None:
    """Write one errand with all its questions."""
    sheet.heading(errand.place, f"{BY[errand.answered_by]}, {errand.time}")
    caution(errand, sheet)
    for each in errand.questions:
        asked(each, sheet)


def caution(errand: ErrandLine, sheet: Sheet) -> None:
    """Write what is said before anybody looks, if anything."""
    if errand.caution:
        sheet.say(marked(errand.caution, "stop"), indent=2)


def foot(answer: AskAnswer, sheet: Sheet, home: str, *, whole: bool) -> None:
    """Write what the figures are worth, and how an answer is kept."""
    if whole and answer.usual:
        sheet.heading("Taken as usual", "nobody has said it; it stands in no design")
        sheet.rows(((each.what, each.taken) for each in answer.usual), (36, None))
    sheet.gap()
    for line in worth_of(answer, whole=whole):
        sheet.say(line, "quiet")
    if answer.next is not None:
        sheet.gap()
        sheet.say("Keep the answer:", "quiet")
        sheet.name(f"ampwright answer {home} {answer.next.key} … {HOW[answer.next.answered_by]}")


def worth_of(answer: AskAnswer, *, whole: bool) -> Sequence[str]:
    """Say on what the range rests."""
    now = answer.now
    usual = count(len(answer.usual), "fact")
    named = "above" if whole else "--all names them"
    lines = [f"Taken as usual, for nobody has said: {usual}; {named}."] if answer.usual else []
    if now.rough:
        lines.append(now.rough)
    lines.append(
        f"Judged for {day(answer.basis.design_date)}. Operator profile {answer.basis.profile}. "
        f"{answer.basis.edition}"
    )
    return lines
