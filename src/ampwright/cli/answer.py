"""``ampwright answer``: one more answer into a home's file."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from ampwright.actions.answering import Answered, Before, FactNow, telling
from ampwright.actions.answering import answer as answer_to
from ampwright.actions.json_shape import json_of
from ampwright.actions.words import all_of

from .common import AsJson, Flag, today
from .sheet import Sheet


def answer(
    home: Path,
    key: str,
    value: str,
    /,
    *,
    by: str,
    told: str | None = None,
    seen: str | None = None,
    measured: str | None = None,
    on: date | None = None,
    never_so: Flag = False,
    changed: Flag = False,
    json: AsJson = False,
) -> None:
    """Put one answer in a home's file; all else in it stays as it is.

    Parameters
    ----------
    home
        The home's file.
    key
        The fact, as supply.main_fuse_a; ampwright list facts names them all.
    value
        The answer: 80, "60 or 80 A", "5 to 9 m", yes, or "cannot say: never looked".
    by
        Who says it.
    told
        They were told, or know it themselves; how, as call.
    seen
        They read it on a picture or a paper; which, as "photo 2".
    measured
        They measured it; with what, as "loop tester 2".
    on
        Day they did, as 2026-12-10. Unless given, today.
    never_so
        What was said of it before was never so, and is taken back.
    changed
        The thing itself has changed; what was said before was so until then.
    json
        As JSON, for a program.
    """
    before: Before = "was never so" if never_so else "was so until now" if changed else "stands"
    kept = answer_to(home, key, value, telling(told, seen, measured, by, today(on)), before)
    if json:
        print(json_of(kept))
        return
    sheet = Sheet()
    show(kept, sheet)
    sheet.gap()
    sheet.say("What to ask next:", "quiet")
    sheet.name(f"ampwright ask {home}")
    sheet.show()


def show(kept: Answered, sheet: Sheet) -> None:
    """Write what was kept and what the fact comes to."""
    sheet.say("Kept" if kept.added else "The file says so already", "strong")
    sheet.say(f"{kept.fact.what}: {kept.said}")
    if kept.taken_back:
        sheet.say(f"Taken back: {all_of(kept.taken_back)}", "quiet")
    if kept.history:
        sheet.say(f"So until then: {all_of(kept.history)}", "quiet")
    against(kept.fact, kept.said, sheet)


def against(fact: FactNow, said: str, sheet: Sheet) -> None:
    """Write what the fact comes to, where that is not just what was said."""
    if fact.disputed:
        sheet.say(f"People disagree: {'; '.join(fact.disputed)}. Both count until one is settled.")
    if fact.overruled:
        sheet.say(f"Overruled by better evidence, and kept: {'; '.join(fact.overruled)}.")
    if fact.answer and fact.answer != said:
        sheet.say(f"We work with {fact.answer}, {fact.known}.")
