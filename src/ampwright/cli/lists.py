"""``ampwright list``: facts, tables and clauses."""

from __future__ import annotations

from pathlib import Path

from ampwright.actions import lists
from ampwright.actions.json_shape import json_of

from .common import AsJson
from .sheet import Sheet


def facts(word: str = "", /, *, json: AsJson = False) -> None:
    """List what may be said of a home: key, question, answers.

    Parameters
    ----------
    word
        Only the facts that mention it, for example: fuse.
    json
        As JSON, for a program.
    """
    found = lists.list_facts(word)
    if json:
        print(json_of(found))
        return
    sheet = Sheet()
    if word:
        for each in found:
            sheet.say(each.key, "strong")
            sheet.say(f"{each.trade}. {each.ask}", indent=4)
            sheet.say(
                "; ".join((each.answers, f"by {each.found_by}", *each.needed_for)), "quiet", 4
            )
    else:
        sheet.rows(((each.key, f"{each.trade}: {each.answers}") for each in found), (36, None), 0)
    sheet.show()


def tables(word: str = "", /, *, json: AsJson = False, firm: Path | None = None) -> None:
    """List the published tables: where each stands, what it covers, how far it is trusted.

    Parameters
    ----------
    word
        Only the tables that mention it, for example: grouping.
    json
        As JSON, for a program.
    firm
        Folder of the firm's own data: the cells of its own copies are shown.
    """
    found = lists.list_tables(word, firm)
    if json:
        print(json_of(found))
        return
    sheet = Sheet()
    for each in found:
        sheet.say(each.name, "strong")
        sheet.say(each.title, indent=4)
        sheet.say(each.place, indent=4)
        sheet.say(f"covers {'; '.join(each.covers)}", indent=4)
        sheet.say(each.rows, "quiet", 4)
        sheet.points((f"own copy: {cell}" for cell in each.own), indent=4)
    sheet.show()


def clauses(word: str = "", /, *, json: AsJson = False) -> None:
    """List the clauses that are worked to: what each says and where it is written.

    Parameters
    ----------
    word
        Only the clauses that mention it, for example: 411.
    json
        As JSON, for a program.
    """
    found = lists.list_clauses(word)
    if json:
        print(json_of(found))
        return
    sheet = Sheet()
    for each in found:
        sheet.say(each.id, "strong")
        sheet.say(each.summary, indent=4)
        sheet.say(f"{each.kind}: {each.says}", indent=4)
        sheet.say("; ".join(each.places), "quiet", 4)
    sheet.show()
