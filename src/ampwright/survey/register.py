"""How a fact is declared: once, with all that the form, the file and the questions need.

A fact is an attribute of a ``Part``. The annotation beside it is what the engines see; the
declaration holds what may be said, how to ask, how common each answer is and how well it must
be known before a quotation, a fitting or a certificate. Faulty declarations do not import.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any, ClassVar, Generic, Literal, TypeVar, get_args, get_origin, get_type_hints

from ampwright.foundations.answers import Unanswered, Value
from ampwright.foundations.errors import InputError
from ampwright.foundations.quantity import UNIT_OF
from ampwright.foundations.source import Evidence, Place, Trust

T = TypeVar("T", bound="Thing")

Gate = Literal["quote", "fit", "certify"]
Who = Literal["phone", "photo", "site"]
Form = Literal["text", "id", "date", "time", "postcode", "meter point"]
Read = Callable[[str], Any]
"""Gives the value of a key, or raises ``Unanswered``."""

ID = re.compile(r"[A-Za-z0-9-]+")
"""What the id of a thing is made of."""

TOLD, SEEN, MEASURED = Evidence.TOLD, Evidence.SEEN, Evidence.MEASURED

REMEMBERED = Place("how common in homes of Great Britain", "November 2026", trust=Trust.MEMORY)
USUAL = Place("habit of the trade", "November 2026", trust=Trust.COMMON_PRACTICE)


@dataclass(frozen=True, slots=True)
class Agree:
    """How far apart two readings may lie and still say the same; the worse of them stands.

    The distance is ``within``, or ``share`` of the larger reading where that is more.
    """

    within: float
    worse: Literal["higher", "lower"]
    share: float = 0.0


@dataclass(frozen=True, slots=True)
class StandIn:
    """What the trade allows to be used until somebody finds out; it counts as assumed."""

    value: Value
    source: Place


@dataclass(eq=False, slots=True)
class Fact:
    """One fact: what may be said of it, how to ask, how to find out.

    ``values`` says how common each answer is before anybody has asked; ``rare`` lists answers
    accepted when given but not expected; ``known_as`` maps other names of an answer to ours and
    ``said_as`` tells how somebody who was asked in our words says each answer, ``written_as`` how
    one is written wherever people read it.
    ``on_papers``: wanted for papers and people, whatever the designs read.
    """

    ask: str
    trade: str
    look: str = ""
    who: Who = "phone"
    values: Mapping[Any, float] = field(default_factory=dict)
    prior: Place = REMEMBERED
    rare: tuple[Value, ...] = ()
    known_as: Mapping[str, Value] = field(default_factory=dict)
    said_as: Mapping[Any, str] = field(default_factory=dict)
    written_as: Mapping[Any, str] = field(default_factory=dict)
    between: tuple[float, float] | None = None
    step: float | None = None
    agree: Agree | None = None
    stand_in: StandIn | None = None
    needs: Mapping[Gate, Evidence] = field(default_factory=dict)
    on_papers: bool = False
    ages_after: int | None = None  # days
    form: Form = "text"
    refers: str = ""  # the collections whose ids an answer may name
    symbol: str = ""
    name: str = ""
    kind: type = str
    unit: str = ""
    allowed: tuple[Value, ...] = ()  # every answer there may be; empty when not a short list

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name

    def __get__(self, part: Part | None, owner: type) -> Any:
        if part is None:
            return self
        return part._read(part._keys[self.name])

    @property
    def in_order(self) -> tuple[Value, ...]:
        """The allowed answers, figures by size and words as they were declared."""
        return tuple(sorted(self.allowed)) if self.is_number else self.allowed

    @property
    def heard_as(self) -> Mapping[Any, str]:
        """How a customer says an answer, where that is not as it is kept."""
        return {**self.written_as, **self.said_as}

    @property
    def is_number(self) -> bool:
        """Whether an answer is a number; yes and no are not numbers."""
        return self.kind in (int, float)

    def typed_as(self, hint: Any, where: str) -> None:
        """Take kind, unit and allowed answers from the annotation, and judge the whole."""
        options: tuple[Value, ...] = ()
        if get_origin(hint) is Literal:
            options = get_args(hint)
            self.kind = type(options[0])
        else:
            self.kind = getattr(hint, "__supertype__", hint)
            self.unit = UNIT_OF.get(hint.__name__, "")
        if self.kind is bool:
            options = (False, True)
        if self.is_number:
            self.values = {self.kind(value): share for value, share in self.values.items()}
            self.rare = tuple(self.kind(value) for value in self.rare)
            self.said_as = {self.kind(value): words for value, words in self.said_as.items()}
            self.written_as = {self.kind(value): said for value, said in self.written_as.items()}
        if not options and self.values and not self.between:
            options = (*self.values, *self.rare)
        self.allowed = options
        for expected in faults(self):
            raise InputError(where, self.trade, expected, "Mend the declaration.")


def faults(fact: Fact) -> Iterator[str]:
    """Yield what a declaration lacks or contradicts."""
    if fact.kind not in (bool, int, float, str):
        yield "a quantity, yes or no, or text as its type"
    if not fact.ask or not fact.trade:
        yield "a question in plain words and a name in trade words"
    if fact.is_number and not (fact.values or fact.between):
        yield "values or a range"
    if fact.allowed and set(fact.values) - set(fact.allowed):
        yield f"how common only for the allowed answers {fact.allowed}"
    if {*fact.said_as, *fact.written_as} - set(fact.allowed):
        yield f"how to say it only for the allowed answers {fact.allowed}"
    if fact.values and fact.allowed and {*fact.values, *fact.rare} != set(fact.allowed):
        yield "how common for every allowed answer, or to call it rare"
    if any(share < 0 for share in fact.values.values()):
        yield "no negative shares"
    if any(fact.kind is not type(value) and not fact.is_number for value in fact.values):
        yield f"answers of the type {fact.kind.__name__}"
    if (fact.agree or fact.step) and not fact.is_number:
        yield "a number, if readings may agree or be cut in steps"
    if fact.between and not fact.between[0] < fact.between[1]:
        yield "a range from low to high"


def fact(**declared: Any) -> Any:
    """Declare a fact; the arguments are those of ``Fact``.

    Returns ``Any`` so that the annotation beside it is what the type checker sees.
    """
    return Fact(**declared)


@dataclass(frozen=True, slots=True)
class Standard:
    """A thing asked after in every home, under an id of its own.

    ``values`` says how common it is, ``implies`` what is so of any such thing, and
    ``priors`` how common each answer is for this thing rather than for any.
    """

    ask: str
    trade: str
    values: Mapping[bool, float]
    look: str = ""
    implies: Mapping[str, Value] = field(default_factory=dict)
    priors: Mapping[str, Mapping[Any, float]] = field(default_factory=dict)
    prior: Place = REMEMBERED


@dataclass(eq=False, slots=True)
class Collection:
    """Several things of a kind, each under an id; declared by ``many``.

    A thing of a *found* collection has its place for an id, so two phones mean the same
    thing; the id of a *listed* one is made once, so two phones mean two things until a
    ``same_as`` says otherwise. ``closed``: only the standard things exist.
    """

    all_listed: Fact
    found: bool = False
    closed: bool = False
    standard: Mapping[str, Standard] = field(default_factory=dict)
    name: str = ""
    item: type[Thing] = field(init=False)

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name


def many(
    *,
    ask: str,
    trade: str,
    look: str = "",
    who: Who = "phone",
    found: bool = False,
    closed: bool = False,
    standard: Mapping[str, Standard] | None = None,
    needs: Mapping[Gate, Evidence] | None = None,
) -> Any:
    """Declare a collection; ``ask`` is the question whether all of it is listed."""
    whole = Fact(ask=ask, trade=trade, look=look, who=who, needs=needs or {}, name="all_listed")
    return Collection(whole, found, closed, standard or {})


class Part:
    """One thing in a home as the engines see it; reading an attribute reads a fact."""

    OF_THE_PERSON: ClassVar[bool] = False
    """Whether these facts go when the person does; the rest belong to the building."""

    _facts: ClassVar[tuple[Fact, ...]] = ()
    _parts: ClassVar[tuple[tuple[str, type[Part]], ...]] = ()
    _collections: ClassVar[tuple[Collection, ...]] = ()

    def __init__(self, read: Read, keys: Mapping[str, str]) -> None:
        self._read, self._keys = read, keys

    def __init_subclass__(cls) -> None:
        """Give every declaration its type, and refuse the faulty ones."""
        facts = list(cls._facts)
        parts, collections = list(cls._parts), list(cls._collections)
        for name, hint in get_type_hints(cls).items():
            declared = vars(cls).get(name)
            if isinstance(declared, Fact):
                declared.typed_as(hint, f"{cls.__name__}.{name}")
                facts.append(declared)
            elif isinstance(declared, Collection):
                declared.item = get_args(hint)[0]
                declared.all_listed.typed_as(bool, f"{cls.__name__}.{name}.all_listed")
                collections.append(declared)
            elif isinstance(hint, type) and issubclass(hint, Part):
                parts.append((name, hint))
        cls._facts, cls._parts = tuple(facts), tuple(parts)
        cls._collections = tuple(collections)


class Thing(Part):
    """One of several things of a kind."""

    present: bool = fact(
        ask="Is it still there?",
        trade="Still there",
        look="Whoever is in the house can say.",
    )
    same_as: str = fact(
        ask="Is this one that is on the list already?",
        trade="The same thing as",
        look="Two people may have noted one thing under two names; say which name to keep.",
        form="id",
    )


def facts_of(part: type[Part]) -> tuple[Fact, ...]:
    """Return the facts declared on a part, in order."""
    return part._facts


def parts_of(part: type[Part]) -> tuple[tuple[str, type[Part]], ...]:
    """Return name and class of the single parts inside a part."""
    return part._parts


def collections_of(part: type[Part]) -> tuple[Collection, ...]:
    """Return the collections inside a part."""
    return part._collections


class Many(Generic[T]):
    """The things of one collection, by id, as the engines see them."""

    __slots__ = ("_all_listed", "_read", "_things")

    def __init__(self, path: str, read: Read, things: Mapping[str, T]) -> None:
        self._read, self._things = read, things
        self._all_listed = f"{path}.all_listed"

    @property
    def all_listed(self) -> bool:
        """Whether everything of this kind is on the list; ``Unanswered`` when nobody said."""
        return bool(self._read(self._all_listed))

    def listed(self) -> Iterator[tuple[str, T]]:
        """Yield every thing that is present; ``Unanswered`` unless all of them are listed."""
        if not self.all_listed:
            raise Unanswered(self._all_listed)
        return self.so_far()

    def so_far(self) -> Iterator[tuple[str, T]]:
        """Yield the things known to be present, though there may be more."""
        return ((name, thing) for name, thing in self._things.items() if thing.present)

    @property
    def ids(self) -> tuple[str, ...]:
        """The ids on the list, of things present or not."""
        return tuple(self._things)

    def __getitem__(self, thing_id: str) -> T:
        try:
            return self._things[thing_id]
        except KeyError:
            path = self._all_listed.removesuffix("all_listed")
            raise Unanswered(f"{path}{thing_id}.present") from None

    def __contains__(self, thing_id: str) -> bool:
        return thing_id in self._things

    def __len__(self) -> int:
        return len(self._things)
