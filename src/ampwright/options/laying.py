"""Work laid over the homes: in each home its own, for one piece of work may differ in size.

A failed check names its remedies home by home. What is laid is therefore a spread: in each home
the remedies that its own checks name, and nothing in a home that does not call for them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product
from typing import Any

from ampwright.foundations.answers import Missing, Value
from ampwright.foundations.checks import Outcome
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.stages import Made
from ampwright.survey.home import Home

from .lifting import Lifter
from .spread import Changes, Spread
from .values import Change

Slugs = frozenset[str]
Remedies = tuple[Remedy, ...]
Laid = Spread[Remedies | None]
"""The remedies laid over each home, by their slugs in order; nothing where none is called for."""


def mended(value: Made[Any] | Missing) -> Iterator[Remedies]:
    """Yield each set of remedies that would mend one result whole, or better it."""
    if isinstance(value, Missing):
        return
    yield from ((offer,) for offer in value.offers)
    failed = [check for check in value.checks if check.outcome is Outcome.FAIL]
    if failed and all(check.remedies for check in failed):
        for chosen in product(*(check.remedies for check in failed)):
            yield tuple({remedy.slug: remedy for remedy in chosen}.values())


def names_work(value: Made[Any]) -> bool:
    """Say whether a result names any work at all."""
    return any(mended(value))


def named(made: Spread[Made[Any]], laid: Slugs) -> dict[Slugs, Spread[Remedies]]:
    """Return each set of further remedies that some home names, with its own in each home.

    Where a home names none of that set, it has an empty one.
    """
    if not any(made.part("(names work)", names_work).values):
        return {}
    each: list[dict[Slugs, Remedies]] = []
    for value in made.values:
        found: dict[Slugs, Remedies] = {}
        for work in mended(value):
            new = tuple(remedy for remedy in work if remedy.slug not in laid)
            if new:
                found.setdefault(frozenset(remedy.slug for remedy in new), new)
        each.append(found)
    sets = dict.fromkeys(slugs for found in each for slugs in found)
    return {slugs: made.with_values(found.get(slugs, ()) for found in each) for slugs in sets}


def laid_further(_home: Home, before: Remedies | None, new: Remedies) -> Remedies | None:
    """Return the work of one home with what it names besides; nothing unless it names some."""
    if before is None or not new:
        return None
    return tuple(sorted((*before, *new), key=lambda remedy: remedy.slug))


def first_laid(_home: Home, *ways: Remedies | None) -> Remedies | None:
    """Return the work of one home by the first of several ways that lead to it."""
    return next((work for work in ways if work is not None), None)


def together(lifter: Lifter, ways: list[Laid]) -> Laid:
    """Return the work of each home by the first of the ways that leads to it there."""
    distinct = list(dict.fromkeys(ways))
    return distinct[0] if len(distinct) == 1 else lifter.lift(first_laid, *distinct)


def changes_of(laid: Laid) -> Changes:
    """Return what becomes, in each home, of every fact that the work changes."""
    keys = {key for work in laid.values for remedy in work or () for key, _ in remedy.changes}
    return {key: laid.part(f"change of {key}", _changer(key)) for key in sorted(keys)}


def _changer(key: str) -> Any:
    """Return what finds the change of a fact in some work; of two the later one stands."""

    def find(work: Remedies | None) -> Change | None:
        values = [value for remedy in work or () for name, value in remedy.changes if name == key]
        return Change(type(values[-1]), values[-1]) if values else None

    return find


def left_by(work: Remedies) -> Mapping[str, Value]:
    """Return the facts as some work leaves them."""
    return {key: value for remedy in work for key, value in remedy.changes}


def called_for(laid: Laid) -> Spread[Outcome]:
    """Return whether each home calls for the work; one that does not is no home for it."""
    return laid.part("(called for)", lambda work: Outcome.FAIL if work is None else Outcome.PASS)
