"""What is usual, laid over what nobody has said of a home, so that it can be explored.

Only for finding the range and the next question. Everything taken is named, and none of it
stands in a design or on a paper: those are made of the home as it was told.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Final

from ampwright.firm.asking import Asking, Usual
from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Answer, Is, OneOf, Value
from ampwright.foundations.source import Evidence
from ampwright.survey.accept import accept
from ampwright.survey.fold import Folded
from ampwright.survey.folding import FoldedHome, ids_of
from ampwright.survey.home import Home
from ampwright.survey.layout import Ids, slot
from ampwright.survey.register import collections_of

from ..choices import METER
from ..homes import Homes
from ..open_homes import homes_of

YES: Final = "yes"
TO_BOARD: Final = "from-meter-to-board"
"""The leg that is taken from the meter to the board of a home whose ways nobody has told."""

Shares = Mapping[Value, float]
Taken = dict[str, Shares]


@dataclass(frozen=True, slots=True, eq=False)
class Supposed:
    """A home with what is usual laid over what nobody has said.

    ``taken`` holds, by key, the values that were taken and how common each is; a key that the
    records answer is never among them. ``same`` names, for a fact that was taken, another that it
    is always the same as.
    """

    folded: FoldedHome
    taken: Mapping[str, Shares]
    same: Mapping[str, str]


def supposing(folded: FoldedHome, asking: Asking) -> Supposed:
    """Return a home that can be explored though little of it is told; nothing told is changed.

    Lists that nobody called whole may be longer, as often as the firm's table says. What the
    register itself knows to be usual is open without this.
    """
    taken: Taken = {}
    for row in asking.usual:
        if row.thing and not _spoken_of(folded, row):
            _add(taken, f"{row.collection}.{row.thing}.{row.fact}", row)
    ways = _ways(folded, ids_of((*folded.facts, *taken)))
    ids = ids_of((*folded.facts, *taken, *ways))
    rest: Taken = {}
    for row in asking.usual:
        if not row.thing:
            for path in _paths(row.collection, ids):
                if not _has_its_own(f"{path}.{row.fact}"):
                    _add(rest, f"{path}.{row.fact}", row)
    boards = tuple(str(each) for each in ways.get(f"legs.{TO_BOARD}.to_place", ()))
    beside_meter = _from_meter(folded, rest, boards[0]) if boards else {}
    taken = {**rest, **taken, **ways, **beside_meter, **_lists(asking)}
    taken = {key: each for key, each in taken.items() if folded.at(key).answer is None}
    same = {f"legs.{TO_BOARD}.length_m": f"boards.{boards[0]}.from_meter_m"} if boards else {}
    facts = {**folded.facts, **{key: _folded(each) for key, each in taken.items()}}
    return Supposed(FoldedHome(facts, ids_of(facts)), taken, same)


def homes_supposed(supposed: Supposed, basis: Basis) -> Homes:
    """Return every home that what is told allows, what is usual laid over the rest."""
    homes = homes_of(supposed.folded, basis)
    shares = {
        key: tuple(supposed.taken[key][value] for value in values)
        for key, values in homes.open.items()
        if key in supposed.taken
    }
    return replace(homes, chances={**homes.chances, **shares}, pool={})


def _add(taken: Taken, key: str, row: Usual) -> None:
    """Add one usual answer to those taken of a fact; raises ``InputError`` for a bad one."""
    fact = slot(key).fact
    answer: object = row.answer
    if fact.is_number:
        answer = float(row.answer)
    elif fact.kind is bool:
        answer = row.answer == YES
    value = accept(fact, answer, key)
    taken[key] = {**taken.get(key, {}), value: float(row.share)}


def _has_its_own(key: str) -> bool:
    """Say whether the register knows what is usual of this thing itself."""
    place = slot(key)
    standard = place.standard
    return standard is not None and place.fact.name in {*standard.priors, *standard.implies}


def _spoken_of(folded: FoldedHome, row: Usual) -> bool:
    """Say whether the list holds such a thing already, or is known to be whole without it."""
    path = row.collection
    whole = folded.at(f"{path}.all_listed").answer == Is(True)
    ids = folded.ids.get(path, ())
    kinds = (_values(folded.at(f"{path}.{id_}.kind").answer) for id_ in ids)
    like = any(row.unless in each for each in kinds) if row.unless else bool(ids)
    return whole or like


def _values(answer: Answer | None) -> tuple[Value, ...]:
    """Return the values that an answer allows, as far as it lists them."""
    match answer:
        case Is(value):
            return (value,)
        case OneOf(values):
            return values
        case _:
            return ()


def _ways(folded: FoldedHome, ids: Ids) -> Taken:
    """Return a leg to each place that no leg leads to, and one from the meter where none does."""
    boards, places = ids.get("boards", ()), ids.get("places", ())
    if not boards or folded.at("legs.all_listed").answer == Is(True):
        return {}
    told = {end for leg in ids.get("legs", ()) for end in _ends(folded, leg)}
    legs = {f"{boards[0]}-to-{each}": (boards[0], each) for each in places if each not in told}
    if METER not in told:
        legs[TO_BOARD] = (METER, boards[0])
    taken: Taken = {}
    for id_, (start, goal) in legs.items():
        taken[f"legs.{id_}.from_place"] = {start: 1.0}
        taken[f"legs.{id_}.to_place"] = {goal: 1.0}
    return taken


def _ends(folded: FoldedHome, leg: str) -> tuple[Value, ...]:
    """Return where a leg may begin and end."""
    ends = (folded.at(f"legs.{leg}.{end}").answer for end in ("from_place", "to_place"))
    return tuple(value for answer in ends for value in _values(answer))


def _from_meter(folded: FoldedHome, taken: Taken, board: str) -> Taken:
    """Return the leg from the meter to a board, as long as the board is from the meter."""
    told = _values(folded.at(f"boards.{board}.from_meter_m").answer)
    length = taken.get(f"boards.{board}.from_meter_m", {})
    return {
        f"legs.{TO_BOARD}.length_m": {told[0]: 1.0} if len(told) == 1 else length,
        f"legs.{TO_BOARD}.how": {"clipped inside": 1.0},
        f"legs.{TO_BOARD}.insulation_mm": {0.0: 1.0},
        f"legs.{TO_BOARD}.grouped_with": {0: 1.0},
    }


def _paths(collection: str, ids: Ids) -> Iterator[str]:
    """Yield the things of a collection, or a part that is no collection."""
    if collection in {each.name for each in collections_of(Home)}:
        yield from (f"{collection}.{id_}" for id_ in ids.get(collection, ()))
    else:
        yield collection


def _lists(asking: Asking) -> Taken:
    """Return, of every list, how often it is whole as told."""
    longer = {each.name: float(asking.longer.get(each.name, 0.0)) for each in collections_of(Home)}
    return {
        f"{name}.all_listed": {True: 1 - share, False: share} if share else {True: 1.0}
        for name, share in longer.items()
    }


def _folded(shares: Shares) -> Folded:
    """Return what is taken as an answer of the least evidence."""
    values = tuple(shares)
    answer: Answer = Is(values[0]) if len(values) == 1 else OneOf(values)
    return Folded(answer, Evidence.ASSUMED)
