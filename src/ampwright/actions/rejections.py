"""Why a choice is not among the options: what ruled it out, or what beats it."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.errors import AmpwrightError, InputError, NotFoundError
from ampwright.options.choices import DIMENSIONS, Menu, leaves_under
from ampwright.options.outlook import reasons
from ampwright.options.search import Option, Rejection
from ampwright.supply.hours import ANY

from .heads import basis_head
from .naming import WORSE, is_same_offer
from .options import ruled
from .seeing import Seen, Terms, see
from .shapes import BasisHead, HomeHead, Ruled
from .words import capital, count

Wanted = Mapping[str, frozenset[Any]]
"""The values asked about, by the dimension of the choice they belong to."""


@dataclass(frozen=True, slots=True)
class BeatenBy:
    """Sound options that lose to the same one in the same: how many, and the first of them."""

    loses_to: str
    letter: str
    in_what: tuple[str, ...]
    choices: int
    first: str


@dataclass(frozen=True, slots=True)
class WhyNot:
    """What became of all full choices, or of those that a few words single out.

    ``ruled_out`` has one entry for each requirement; a choice that fails several counts for
    each. ``offered`` are ids of options that nothing beats, each once, however much work it may
    need; ``nothing_beats`` counts them with every such work; ``letters`` are those of the options
    shown.
    """

    home: HomeHead
    basis: BasisHead
    asked: str
    words: tuple[str, ...]
    considered: int
    choices_ruled_out: int
    ruled_out: tuple[Ruled, ...]
    beaten: int
    beaten_by: tuple[BeatenBy, ...]
    offered: tuple[str, ...]
    nothing_beats: int
    letters: Mapping[str, str]


def why_not(path: Path, terms: Terms, asked: str = "") -> WhyNot:
    """Return why choices are not among the options; raises like ``read_home``.

    ``asked`` is an option's letter or id, or parts of one: ``rod``, ``three-socket``, ``16a``.
    Raises ``NotFoundError`` for a part that is no choice here.
    """
    seen = see(path, terms)
    searched = seen.outlook.searched
    menu = searched.menu
    wanted = wanted_of(asked, menu, seen)
    narrowed = {**menu, **{name: tuple(values) for name, values in wanted.items()}}
    hit = [cut_to(each, narrowed) for each in searched.rejections if touches(each, wanted)]
    options = [each for each in seen.outlook.ranking.options if fits(each, wanted)]
    ruled_out = sum(each.stands_for for each in hit)
    lost = tuple(beaten_among(seen, options))
    front = {each.id for each in seen.outlook.ranking.front}
    return WhyNot(
        home=seen.home.head,
        basis=basis_head(seen.basis),
        asked=asked,
        words=tuple(words_on(menu)),
        considered=ruled_out + len(options),
        choices_ruled_out=ruled_out,
        ruled_out=tuple(map(ruled, reasons(hit))),
        beaten=sum(each.choices for each in lost),
        beaten_by=lost,
        offered=tuple(
            dict.fromkeys(offered_as(seen, each).id for each in options if each.id in front)
        ),
        nothing_beats=sum(each.id in front for each in options),
        letters={option.id: letter for letter, option in seen.offered.items()},
    )


def words_of(dimension: str, value: Any) -> tuple[str, ...]:
    """Return the words that stand for one value of a choice, as in an option's id.

    Examples
    --------
    >>> words_of("setting_a", 16.0), words_of("earthing", "house rod"), words_of("tap", "main")
    (('16a',), ('house-rod',), ('main',))
    """
    if dimension == "setting_a":
        return (f"{value:g}a",)
    if dimension == "house_limit":
        return ("house-limit",) if value else ("no-limit",)
    if dimension == "hours":
        return ("any-hours",) if value == ANY else (f"{value}-only",)
    if isinstance(value, ChargePoint):
        return (value.id, f"{value.phases}ph", value.lead.value)
    return (str(getattr(value, "value", value)).replace(" ", "-"),)


def words_on(menu: Menu) -> Iterator[str]:
    """Yield every word that singles out choices, each once."""
    said = (word for name, values in menu.items() for value in values
            for word in words_of(name, value))  # fmt: skip
    yield from dict.fromkeys(said)


def wanted_of(asked: str, menu: Menu, seen: Seen) -> dict[str, frozenset[Any]]:
    """Return the values that words ask about; raises ``NotFoundError`` for an unknown word."""
    known = {each.id: each for each in seen.outlook.ranking.options}
    option = seen.offered.get(asked.upper()) or known.get(asked)
    if option is not None:
        return {name: frozenset({getattr(option.choice, name)}) for name in DIMENSIONS}
    wanted: dict[str, frozenset[Any]] = {}
    chosen = asked.partition("+")[0].replace(" ", "/")  # work that comes first is no choice
    for word in filter(None, sizes_apart(chosen).split("/")):
        found = {
            name: frozenset(value for value in values if word in words_of(name, value))
            for name, values in menu.items()
        }
        hits = {name: values for name, values in found.items() if values}
        if not hits:
            raise not_here(word, menu, seen)
        for name, values in hits.items():
            wanted[name] = wanted.get(name, values) & values
    return wanted


def not_here(word: str, menu: Menu, seen: Seen) -> AmpwrightError:
    """Return the error for a word that singles out nothing in this home."""
    for point in seen.basis.catalogue.points:
        if word in (point.id, f"{point.phases}ph"):
            lines = count(int(point.phases), "line")
            do = f"{capital(point.id)} charges on {lines}, and this supply has fewer."
            return InputError("the choice", word, "a point that the supply has the lines for", do)
    known = tuple(words_on(menu))
    return NotFoundError("choice", word, known, *difflib.get_close_matches(word, known, 1))


def sizes_apart(text: str) -> str:
    """Part the lines and the setting of an id, which stand together.

    Examples
    --------
    >>> sizes_apart("drive/main/1ph-16a/flat")
    'drive/main/1ph/16a/flat'
    """
    return text.replace("ph-", "ph/")


def touches(rejection: Rejection, wanted: Wanted) -> bool:
    """Say whether a rejected branch holds any choice that was asked about."""
    return all(
        name not in rejection.made or rejection.made[name] in values
        for name, values in wanted.items()
    )


def cut_to(rejection: Rejection, menu: Menu) -> Rejection:
    """Return a rejected branch that stands only for the choices left on a menu."""
    stands_for = leaves_under(menu, rejection.made)
    return Rejection(rejection.made, rejection.remedies, rejection.checks, stands_for)


def fits(option: Option[Any], wanted: Wanted) -> bool:
    """Say whether an option is among those asked about."""
    return all(getattr(option.choice, name) in values for name, values in wanted.items())


def offered_as(seen: Seen, option: Option[Any]) -> Option[Any]:
    """Return the option as it is offered, where it is only what that one becomes in some homes."""
    alike = (each for each in seen.offered.values() if is_same_offer(each, option))
    return next(alike, option)


def beaten_among(seen: Seen, options: Iterable[Option[Any]]) -> Iterator[BeatenBy]:
    """Yield the options that lose, put together by what they lose to and in what.

    To lose to an option with the work that only some homes need is to lose to that option.
    """
    asked = {option.id for option in options}
    groups: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    for loss in seen.outlook.ranking.losses:
        if loss.option.id in asked:
            winner = offered_as(seen, loss.winner).id
            groups.setdefault((winner, loss.better_in), []).append(loss.option.id)
    for (winner, better_in), ids in sorted(groups.items(), key=lambda each: -len(each[1])):
        in_what = tuple(WORSE[name] for name in better_in)
        yield BeatenBy(winner, seen.letter(winner), in_what, len(ids), ids[0])
