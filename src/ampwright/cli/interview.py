"""``ampwright interview``: a walk through the questions that decide, in a terminal."""

from __future__ import annotations

import sys
from datetime import date
from pathlib import Path
from typing import Final, Literal

from ampwright.actions.answering import Telling
from ampwright.actions.asking_shapes import AskAnswer, Question
from ampwright.actions.interviewing import BACK, Heard, Interview
from ampwright.actions.words import count
from ampwright.foundations.source import Evidence
from ampwright.survey.danger import STOP_NOW

from .answer import against
from .ask import may_answer, nothing_here
from .common import LOOK_OF, ToJudge, today
from .sheet import Sheet, marked

STOP: Final = ("stop", "quit", "end")
HOW_TO_ANSWER: Final = (
    "Type the answer; “60 or 80”, “5 to 9” and “don't know” are answers too. “later” leaves a "
    "question out, “back” takes the last answer back, “help” says this again, “stop” ends. Each "
    "answer is kept at once."
)
NOTHING_TYPED: Final = "Nothing typed. An empty line again ends; later leaves the question out."
LAST: Final = "That was the last question. “back” takes the answer back, an empty line ends."
HELP: Final = ("help", "h")
MISSING: Final = "Add what is missing with ampwright answer, and this again when the list is whole."
HOW: Final = {
    "phone": (Evidence.TOLD, "call"),
    "photo": (Evidence.SEEN, "photo"),
    "site": (Evidence.SEEN, "on site"),
}


def interview(
    home: Path,
    /,
    *,
    by: str,
    channel: Literal["phone", "photo", "site"] = "phone",
    how: str = "",
    on: date | None = None,
    to: ToJudge = ToJudge(),
) -> None:
    """Ask, keep each answer at once, and show the range narrow.

    *stop* or two empty lines end it; *later* leaves a question out; *back* takes the last answer
    back and asks again; *don't know* is an answer. Anything burnt, cracked, wet or buzzing ends
    it at once: 105 first, then us.

    Parameters
    ----------
    home
        The home's file; every answer goes into it before the next question is put.
    by
        Who answers, or who reads the photographs.
    channel
        What is open now: phone, photo or site. Only what it can answer is asked.
    how
        How it is known, as "photo 2". Unless given: call, photo, on site.
    on
        Day of the answers, as 2026-12-10. Unless given, today.
    """
    evidence, usual = HOW[channel]
    known_by = Telling(evidence, how or usual, by, today(on))
    walk = Interview(home, to.terms, channel, known_by)
    put(Sheet(), begins, walk.now)
    place = ""
    while walk.next is not None or walk.can_go_back:
        if walk.next is None:
            heard = after_the_last(walk)
        else:
            errand, asked = walk.next
            put(Sheet(), question, asked, errand.caution if errand.place != place else "")
            place = errand.place
            heard = answered(walk)
        if heard is None:
            break
        if heard.became == "danger":
            return
    put(Sheet(), ends, walk)


def after_the_last(walk: Interview) -> Heard | None:
    """Let the last answer be taken back where nothing more is asked; else nothing."""
    put(Sheet(), last_chance)
    words = line()
    if words is None or words.strip().casefold() not in BACK:
        return None
    heard = walk.hear(words)
    put(Sheet(), came_of, heard)
    return heard


def last_chance(sheet: Sheet) -> None:
    """Say that nothing more is asked."""
    sheet.gap()
    sheet.say(LAST)


def answered(walk: Interview) -> Heard | None:
    """Hear lines until one deals with the question that was put; nothing when told to end."""
    empty = False
    while (words := line()) is not None:
        said = words.strip().casefold()
        if said in STOP or (empty and not said):
            return None
        empty = not said
        if empty or said in HELP:
            put(Sheet(), remark, NOTHING_TYPED if empty else HOW_TO_ANSWER)
            continue
        heard = walk.hear(words)
        if heard.became != "left out":
            put(Sheet(), came_of, heard)
        if heard.became not in ("not understood", "nothing to take back"):
            return heard
    return None


def remark(words: str, sheet: Sheet) -> None:
    """Write a word on how to answer."""
    sheet.say(words, "quiet", 2)


def line() -> str | None:
    """Return one line that somebody types, or nothing at the end of them."""
    sys.stdout.write("  > ")
    sys.stdout.flush()
    try:
        words = sys.stdin.readline()
    except KeyboardInterrupt:
        words = ""
    if not sys.stdin.isatty():
        sys.stdout.write(words.rstrip("\n") + "\n")
    return words or None


def put(sheet: Sheet, write: object, *what: object) -> None:
    """Write one step and show it at once."""
    write(*what, sheet)  # type: ignore[operator]
    sheet.show()


def stands(now: AskAnswer, sheet: Sheet) -> None:
    """Write where things stand: the decision and what can be said."""
    sheet.say(marked(now.now.words, LOOK_OF[now.now.decision]))
    for sentence in now.say:
        sheet.say(sentence)


def begins(now: AskAnswer, sheet: Sheet) -> None:
    """Write where things stand before the first question, and how to answer."""
    stands(now, sheet)
    sheet.say(HOW_TO_ANSWER, "quiet")


def question(asked: Question, caution: str, sheet: Sheet) -> None:
    """Write one question with its answers, after what is said before anybody looks there."""
    sheet.gap()
    if caution:
        sheet.say(marked(caution, "stop"))
    about = f"{asked.about}: " if asked.about else ""
    sheet.say(marked(f"{about}{asked.ask}", "strong"))
    sheet.say(may_answer(asked))
    sheet.say(asked.why, "quiet")


def came_of(heard: Heard, sheet: Sheet) -> None:
    """Write what became of an answer."""
    if heard.became == "danger":
        sheet.say(marked(STOP_NOW, "stop"))
    elif heard.became == "not understood":
        sheet.say(heard.says, "quiet", 2)
    elif heard.became == "nothing to take back":
        sheet.say("No answer was given yet that could be taken back.", "quiet", 2)
    elif heard.became == "taken back":
        if heard.says:
            sheet.say(f"Taken back: {heard.what}: {heard.says}.", "quiet", 2)
    elif heard.kept is not None:
        sheet.say(f"Kept: {heard.what}: {heard.says}.", "quiet", 2)
        against(heard.kept.fact, heard.kept.said, sheet)
        if heard.list_short:
            sheet.say(MISSING, "quiet", 2)
        if heard.moved:
            sheet.say(heard.moved, indent=2)


def ends(walk: Interview, sheet: Sheet) -> None:
    """Write where things stand at the end."""
    sheet.gap()
    if walk.next is None:
        sheet.say(nothing_here(walk.now))
    stands(walk.now, sheet)
    sheet.gap()
    if walk.later:
        sheet.say(f"Left for later: {count(len(walk.later), 'question')}.")
    sheet.name(f"Every answer is in {walk.path}.")
