"""Short ways to say something about a home in a test."""

from __future__ import annotations

from ampwright.foundations.answers import Is
from ampwright.foundations.source import Evidence
from ampwright.survey.folding import as_found
from ampwright.survey.records import Record
from ampwright.survey.states import states

SUPPORT = {
    "assumed": {},
    "told": {},
    "seen": {"how": "photo 2", "by": "Ro"},
    "measured": {"how": "tester 2", "by": "Ro"},
}


def say(key, answer, evidence="told", **more):
    """One record; a plain value is an answer by itself."""
    plain = isinstance(answer, bool | int | float | str)
    return Record(
        home="cot",
        key=key,
        answer=Is(answer) if plain else answer,
        evidence=Evidence[evidence.upper()],
        **(SUPPORT[evidence] | more),
    )


def stated(*records, closed=()):
    """What each fact can be, after some records."""
    return states(as_found(records, closed))
