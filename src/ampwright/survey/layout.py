"""Where every fact of a home stands: from the ids of its things to the key of each fact.

A key is a path of names and ids with dots between, ending in the name of a fact:
``boards.main.outlets.3-L2.label``. Ids are never parsed by those who compute.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from functools import lru_cache
from typing import Any, cast

from ampwright.foundations.errors import NotFoundError

from .home import Home
from .register import (
    ID,
    Collection,
    Fact,
    Many,
    Part,
    Read,
    Standard,
    Thing,
    collections_of,
    facts_of,
    parts_of,
)

Ids = Mapping[str, tuple[str, ...]]
"""The ids of the things in each collection, by the path of the collection."""
FrozenIds = tuple[tuple[str, tuple[str, ...]], ...]


@dataclass(frozen=True, slots=True)
class Slot:
    """The place of one fact: its key, its declaration and the standard thing it belongs to.

    ``thing`` is the path of the thing it says something of, empty outside collections.
    """

    key: str
    fact: Fact
    part: type[Part]
    thing: str = ""
    standard: Standard | None = None

    @property
    def asked_after(self) -> Standard | None:
        """The thing that is asked after in every home, where the fact is whether it is there."""
        return self.standard if self.fact.name == "present" else None

    @property
    def ask(self) -> str:
        """The question for it; whether a thing is there that is asked after has its own."""
        return self.asked_after.ask if self.asked_after else self.fact.ask

    @property
    def look(self) -> str:
        """Where to look for it, or what a good photograph shows."""
        return (self.asked_after.look if self.asked_after else "") or self.fact.look


@dataclass(frozen=True, slots=True)
class Plan:
    """How to build one part: its keys, the parts inside it and its collections of things."""

    part: type[Part]
    keys: Mapping[str, str]
    parts: tuple[tuple[str, Plan], ...]
    collections: tuple[tuple[Collection, str, tuple[tuple[str, Plan], ...]], ...]


def frozen(ids: Ids) -> FrozenIds:
    """Return ids in a form to keep things by, in an order that does not depend on theirs."""
    return tuple(sorted((path, tuple(each)) for path, each in ids.items()))


def same_things(ids: Ids, others: Ids) -> bool:
    """Say whether a home of either has the same things, those asked after in every home included.

    Examples
    --------
    >>> same_things({"loads": ("shower",)}, {}), same_things({"loads": ("kiln",)}, {})
    (True, False)
    """
    return plan_of(frozen(ids)) == plan_of(frozen(others))


def in_order(ids: Iterable[str], collection: Collection) -> tuple[str, ...]:
    """Return the ids of a collection: the standard ones, then the rest by number and letter."""
    rest = sorted(set(ids) - set(collection.standard), key=_natural)
    return (*collection.standard, *rest)


def _natural(word: str) -> list[tuple[int, str]]:
    pieces = re.findall(r"\d+|\D+", word)
    return [(int(piece), "") if piece.isdigit() else (-1, piece) for piece in pieces]


@lru_cache(maxsize=512)
def plan_of(ids: FrozenIds) -> Plan:
    """Return how to build the typed home that has these things."""
    return _plan(Home, "", dict(ids))


def _plan(part: type[Part], prefix: str, ids: Ids) -> Plan:
    keys = {each.name: f"{prefix}{each.name}" for each in facts_of(part)}
    parts = tuple((name, _plan(inner, f"{prefix}{name}.", ids)) for name, inner in parts_of(part))
    collections = []
    for each in collections_of(part):
        path = f"{prefix}{each.name}"
        things = tuple(
            (thing, _plan(each.item, f"{path}.{thing}.", ids))
            for thing in in_order(ids.get(path, ()), each)
        )
        collections.append((each, path, things))
    return Plan(part, keys, parts, tuple(collections))


def build_home(read: Any, ids: Ids) -> Home:
    """Return the typed home over a reader, or over its ``read``; nothing is read yet.

    Keys are worked out once for each set of ids, so building again is cheap.
    """
    return cast(Home, _built(plan_of(frozen(ids)), getattr(read, "read", read)))


def _built(plan: Plan, read: Read) -> Part:
    made = plan.part(read, plan.keys)
    for name, inner in plan.parts:
        setattr(made, name, _built(inner, read))
    for collection, path, things in plan.collections:
        inside = {thing: cast(Thing, _built(each, read)) for thing, each in things}
        setattr(made, collection.name, Many(path, read, inside))
    return made


@lru_cache(maxsize=512)
def slots_of(ids: FrozenIds) -> tuple[Slot, ...]:
    """Return the place of every fact that a home with these things has, in order."""
    return tuple(_slots(plan_of(ids), "", None))


def _slots(plan: Plan, thing: str, standard: Standard | None) -> Iterator[Slot]:
    for fact in facts_of(plan.part):
        yield Slot(plan.keys[fact.name], fact, plan.part, thing, standard)
    for _, inner in plan.parts:
        yield from _slots(inner, thing, standard)
    for collection, path, things in plan.collections:
        yield Slot(f"{path}.all_listed", collection.all_listed, collection.item, thing)
        for each, inside in things:
            yield from _slots(inside, f"{path}.{each}", collection.standard.get(each))


@lru_cache(maxsize=4096)
def slot(key: str) -> Slot:
    """Return the place of the fact that a key names; ``NotFoundError`` with the nearest name.

    Examples
    --------
    >>> slot("loads.kiln.amps_a").fact.unit
    'A'
    >>> slot("supply.main_fuse")
    Traceback (most recent call last):
        ...
    ampwright.foundations.errors.NotFoundError: there is no fact 'supply.main_fuse'. \
Did you mean supply.main_fuse_a?
    """
    part: type[Part] = Home
    thing, standard = "", None
    steps = key.split(".")
    at = 0
    while at < len(steps):
        name = steps[at]
        facts = {each.name: each for each in facts_of(part)}
        if name in facts and at == len(steps) - 1:
            return Slot(key, facts[name], part, thing, standard)
        inside = dict(parts_of(part)).get(name)
        collection = {each.name: each for each in collections_of(part)}.get(name)
        following = steps[at + 1] if at + 1 < len(steps) else ""
        if inside:
            part, at = inside, at + 1
        elif collection and following == "all_listed" and at + 2 == len(steps):
            return Slot(key, collection.all_listed, collection.item, thing)
        elif collection and may_be(following, collection) and at + 2 < len(steps):
            part, thing = collection.item, ".".join(steps[: at + 2])
            standard, at = collection.standard.get(following), at + 2
        else:
            before = "".join(f"{step}." for step in steps[:at])
            raise NotFoundError("fact", key, names_in(part), nearest(before, name, part))
    raise NotFoundError("fact", key, names_in(part))


def may_be(thing: str, collection: Collection) -> bool:
    """Whether a word may be the id of a thing in a collection."""
    if collection.closed:
        return thing in collection.standard
    return bool(ID.fullmatch(thing))


def names_in(part: type[Part]) -> tuple[str, ...]:
    """Return the names that may stand in a part: facts, parts and collections."""
    facts = tuple(each.name for each in facts_of(part))
    collections = tuple(each.name for each in collections_of(part))
    return (*facts, *(name for name, _ in parts_of(part)), *collections)


def nearest(before: str, name: str, part: type[Part]) -> str:
    """Return the key that was probably meant, or nothing."""
    found = get_close_matches(name, names_in(part), 1)
    return f"{before}{found[0]}" if found else ""


@lru_cache(maxsize=4096)
def things_in(key: str) -> tuple[tuple[str, str], ...]:
    """Return the path of each collection that a key goes through, with the id it takes.

    Examples
    --------
    >>> things_in("boards.main.outlets.3-L2.label")
    (('boards', 'main'), ('boards.main.outlets', '3-L2'))
    """
    part: type[Part] = Home
    found = []
    steps = key.split(".")
    at = 0
    while at + 1 < len(steps):
        inside = dict(parts_of(part)).get(steps[at])
        collection = {each.name: each for each in collections_of(part)}.get(steps[at])
        if inside:
            part, at = inside, at + 1
        elif collection and at + 2 < len(steps):
            found.append((".".join(steps[: at + 1]), steps[at + 1]))
            part, at = collection.item, at + 2
        else:
            break
    return tuple(found)
