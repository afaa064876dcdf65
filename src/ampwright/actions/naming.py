"""What options are called: a letter in the order they are shown, and their lasting id."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Iterator, Mapping, Sequence
from string import ascii_uppercase
from typing import Any, Final

from ampwright.foundations.errors import NotFoundError
from ampwright.foundations.remedies import Remedy
from ampwright.options.choices import Choice
from ampwright.options.outlook import Outlook
from ampwright.options.ranking import bare
from ampwright.options.search import Option

DIFFERENCES: Final[tuple[Callable[[Choice], object], ...]] = (
    lambda choice: choice.place,
    lambda choice: (choice.point.phases, choice.setting_a),
    lambda choice: choice.point.lead,
    lambda choice: choice.house_limit,
    lambda choice: choice.hours,
)
"""What a customer sees of a choice: where, how fast, lead or socket, whether the house shares."""
WORSE: Final = {
    "wait": "a longer wait",
    "slowness_kw": "slower",
    "uncovered": "too slow for the cheap hours",
    "short_kw": "less power than asked for",
    "price_p": "dearer",
    "seen": "seen from the street",
    "cramped": "less room for what comes later",
    "work_min": "more work",
    "order": "as good, not the firm's usual",
}


def shown(outlook: Outlook) -> tuple[Option[Any], ...]:
    """Return the options to show: the recommended, the others nothing beats, then alternatives."""
    first = outlook.recommended
    if first is None:
        return outlook.ranking.front
    offered = [first]
    for option in outlook.ranking.front:
        if not any(is_same_offer(each, option) for each in offered):
            alike = (each for each in outlook.ranking.front if is_same_offer(option, each))
            offered.append(min(alike, key=lambda each: len(each.choice.remedies)))
    return (*offered, *alternatives(outlook, offered))


def is_same_offer(option: Option[Any], other: Option[Any]) -> bool:
    """Say whether one of two options is only what the other becomes in homes that need more work.

    Two that hold everywhere are different offers: the work buys something.
    """
    if bare(option.choice) != bare(other.choice):
        return False
    return option is other or not (option.sound.always and other.sound.always)


def may_need(outlook: Outlook, option: Option[Any]) -> tuple[Remedy, ...]:
    """Return the work that an option needs in some of the homes, beside its own."""
    variants = (each for each in outlook.ranking.front if is_same_offer(option, each))
    own = {remedy.slug for remedy in option.choice.remedies}
    found = {remedy.slug: remedy for each in variants for remedy in each.choice.remedies}
    return tuple(remedy for slug, remedy in found.items() if slug not in own)


def alternatives(outlook: Outlook, offered: Sequence[Option[Any]]) -> tuple[Option[Any], ...]:
    """Return the best of the beaten options that a customer would tell from those offered.

    At most one for each way of differing; what nobody in the house would notice is no
    alternative.
    """
    found: dict[str, Option[Any]] = {}
    for differs in DIFFERENCES:
        for option in (loss.option for loss in outlook.ranking.losses):
            if differs(option.choice) not in [differs(each.choice) for each in offered]:
                found[option.id] = option
                break
    return tuple(found.values())


def behind(outlook: Outlook) -> dict[str, tuple[str, ...]]:
    """Return in what each beaten option is worse than the one that beats it, by its id."""
    return {
        loss.option.id: tuple(WORSE[name] for name in loss.better_in)
        for loss in outlook.ranking.losses
    }


def letters() -> Iterator[str]:
    """Yield A to Z, then AA, AB and so on."""
    yield from ascii_uppercase
    for first in ascii_uppercase:
        yield from (first + second for second in ascii_uppercase)


def find_option(outlook: Outlook, by_letter: Mapping[str, Option[Any]], name: str) -> Option[Any]:
    """Return the option with a letter, an id or the beginning of just one id.

    Options that lose to another can be named too. Raises ``NotFoundError`` with the nearest
    ids, or with those that begin alike when there are several.
    """
    if name.upper() in by_letter:
        return by_letter[name.upper()]
    by_id = {each.id: each for each in outlook.ranking.options}
    if name in by_id:
        return by_id[name]
    alike = [id_ for id_ in by_id if id_.startswith(name)]
    if len(alike) == 1:
        return by_id[alike[0]]
    known = [f"{letter} ({each.id})" for letter, each in by_letter.items()]
    near = difflib.get_close_matches(name, by_id, 1, cutoff=0.4) if not alike else []
    raise NotFoundError("option", name, alike or known, near[0] if near else "")
