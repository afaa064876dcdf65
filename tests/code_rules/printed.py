"""What is printed of a home beside its facts as they were told: every result, in plain pieces.

The answer about its options and the working of the best, without the pages that only repeat what
was said: whose home it is, the facts found, the questions still open, what to confirm.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import fields, replace
from functools import cache, lru_cache
from typing import Any

from ampwright.actions.design_run import run_design
from ampwright.actions.heads import text_at
from ampwright.actions.homes import HomeRead
from ampwright.actions.json_shape import plain
from ampwright.actions.naming import letters, shown
from ampwright.actions.options import answer_for
from ampwright.actions.seeing import Seen
from ampwright.actions.working import stage_answers
from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Is, Value
from ampwright.options.homes import Homes
from ampwright.options.open_homes import homes_of
from ampwright.options.outlook import outlook
from ampwright.survey.folding import as_found
from ampwright.survey.homefile import HomeFile, read
from ampwright.survey.records import Record
from tests.journeys.homes import EXAMPLES, basis

REPEATS = ("home", "found", "open", "confirm")
Answers = tuple[tuple[str, Value | None], ...]
"""Keys and what is said of them instead; nothing at all where there is no value."""


def saying_otherwise(
    records: Iterable[Record], answers: Mapping[str, Value | None]
) -> list[Record]:
    """Return the records with some keys answered otherwise, as well known as they were."""
    kept = [record for record in records if record.key not in answers]
    known = {record.key: record for record in records}
    pattern = replace(next(iter(known.values())), how="changed")
    for key, value in answers.items():
        if value is not None:
            record = replace(known.get(key, pattern), key=key, answer=Is(value))
            kept.append(replace(record, id=f"changed-{key.replace('.', '-')}"))
    return kept


def answered(name: str, key: str) -> Value | None:
    """Return the one answer that a shipped home's file gives to a key, if it does."""
    found = [record.answer for record in told(name).records if record.key == key]
    return found[0].value if len(found) == 1 and isinstance(found[0], Is) else None


@cache
def told(name: str) -> HomeFile:
    """Return what the file of a shipped home holds."""
    return read((EXAMPLES / f"{name}.toml").read_text("utf-8"), name)


POINTS = ("window-lead", "window-lead-16", "bare-lead", "three-socket")
"""A few points serve: how many designs they make is not what these answers are about."""


@cache
def small_basis() -> Basis:
    """Return the shipped basis with few points to choose from."""
    whole = basis("neutral")
    points = tuple(each for each in whole.catalogue.points if each.id in POINTS)
    return replace(whole, catalogue=replace(whole.catalogue, points=points))


def homes_and_basis(name: str, answers: Answers) -> tuple[Homes, Basis]:
    """Return the homes that a shipped home's facts allow, some changed, and what they rest on."""
    folded = as_found(saying_otherwise(told(name).records, dict(answers)))
    rests = small_basis().for_operator(text_at(folded, "supply.operator"))
    return homes_of(folded, rests), rests


@lru_cache(maxsize=8)
def seen(name: str, answers: Answers) -> Seen:
    """Return a shipped home worked out with some answers changed."""
    file = told(name)
    folded = as_found(saying_otherwise(file.records, dict(answers)))
    rests = small_basis().for_operator(text_at(folded, "supply.operator"))
    found = outlook(homes_of(folded, rests), rests)
    offered = dict(zip(letters(), shown(found), strict=False))
    return Seen(HomeRead(EXAMPLES / name, file, folded), rests, found, offered)


@lru_cache(maxsize=64)
def printed(name: str, answers: Answers) -> Any:
    """Return the answer about the options of a shipped home with some answers changed."""
    answer = plain(answer_for(seen(name, answers)))
    return {key: value for key, value in answer.items() if key not in REPEATS}


@lru_cache(maxsize=64)
def working(name: str, answers: Answers) -> Any:
    """Return the stages of the best option: what they come to, not what they were told."""
    home = seen(name, answers)
    if home.best is None:
        return []
    run = run_design(home.home.folded, home.basis, home.best)
    return [
        plain({f.name: getattr(stage, f.name) for f in fields(stage) if f.name != "rests_on"})
        for stage in stage_answers(run)
    ]


def apart(one: Any, other: Any, at: str = "") -> list[str]:
    """Return where two printed results differ."""
    if isinstance(one, dict) and isinstance(other, dict):
        return [
            found
            for key in {**one, **other}
            for found in apart(one.get(key), other.get(key), f"{at}.{key}" if at else key)
        ]
    if isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        return [
            found
            for i, (a, b) in enumerate(zip(one, other, strict=True))
            for found in apart(a, b, f"{at}[{i}]")
        ]
    return [] if one == other else [at]
