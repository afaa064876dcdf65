"""``ampwright interview``: a walk through the questions that decide, in a terminal."""

from __future__ import annotations

import sys
from datetime import date
from pathlib import Path
from typing import Final, Literal

from ampwright.actions.answering import Telling
from ampwright.actions.asking_shapes import AskAnswer, Question
from ampwright.actions.interviewing import Heard, Interview
from ampwright.actions.words import capital
from ampwright.foundations.source import Evidence
from ampwright.survey.danger import STOP_NOW

from .answer import against
from .ask import BY, may_answer, nothing_here
from .common import LOOK_OF, ToJudge, today
from .sheet import Sheet, marked

STOP: Final = ("stop", "quit", "end")
HOW_TO_ANSWER: Final = "Type the answer; later leaves a question out, an empty line ends."
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

    An empty line or *stop* ends it; *later* leaves a question out; *cannot say* is an answer.
    Anything burnt, cracked, wet or buzzing ends it at once: 105 first, then us.

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
    while walk.next is not None:
        errand, asked = walk.next
        put(Sheet(), question, asked, errand.caution if errand.place != place else "")
        place = errand.place
        words = line()
        if words is None or words.strip().casefold() in ("", *STOP):
            break
        heard = walk.hear(words)
        if heard.became != "left out":
            put(Sheet(), came_of, heard)
        if heard.became == "danger":
            return
    put(Sheet(), ends, walk)


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
    sheet.say(f"{capital(BY[asked.answered_by])}. {asked.why}", "quiet")


def came_of(heard: Heard, sheet: Sheet) -> None:
    """Write what became of an answer."""
    if heard.became == "danger":
        sheet.say(marked(STOP_NOW, "stop"))
    elif heard.became == "not understood":
        sheet.say(heard.says, "quiet", 2)
    elif heard.fact is not None:
        sheet.say(f"Kept: {heard.fact.what}: {heard.says}.", "quiet", 2)
        against(heard.fact, heard.says, sheet)
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
    sheet.name(f"Every answer is in {walk.path}.")
