"""Facts of a home in words: what each is called, what was said and how it is known."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from typing import Final, cast

from ampwright.foundations.answers import Answer, Is, OneOf, Value
from ampwright.foundations.source import Said
from ampwright.survey.folding import FoldedHome
from ampwright.survey.layout import frozen, slot, slots_of, things_in
from ampwright.survey.records import Record
from ampwright.survey.register import Fact
from ampwright.survey.states import said_by
from ampwright.survey.views import Rest

from .shapes import FoundFact, Known
from .words import answer, capital, day, value

YES_NO: Final = ("yes", "no")
PRESENT: Final = "present"
"""The fact that says whether a thing is there."""


def fact_name(key: str) -> str:
    """Return what a fact is called in the trade, with the thing it belongs to.

    Examples
    --------
    >>> fact_name("supply.main_fuse_a"), fact_name("loads.kiln.amps_a")
    ('Cut-out fuse-link rating', 'Current at 230 V (kiln)')
    """
    things = [thing for _, thing in things_in(key)]
    trade = slot(key).fact.trade
    return f"{trade} ({', '.join(things)})" if things else trade


def called(key: str) -> str:
    """Return what a fact is called where it stands by itself; a thing asked after, by its name.

    Examples
    --------
    >>> called("loads.heat-pump.present"), called("supply.phases")
    ('Heat pump', 'Phases of the supply')
    """
    thing = slot(key).asked_after
    return thing.trade if thing else fact_name(key)


def words_of(key: str, said: Value) -> str:
    """Write one value of a fact with its unit.

    Examples
    --------
    >>> words_of("supply.main_fuse_a", 80.0), words_of("services.gas.bond_mm2", 0.0)
    ('80 A', 'none')
    """
    fact = slot(key).fact
    return value(named(fact, said, fact.written_as), fact.unit)


def answer_to(key: str, said: Answer) -> str:
    """Write what was said of a fact.

    Examples
    --------
    >>> from ampwright.foundations.answers import Is
    >>> answer_to("cars.first.arrives_on", Is("2026-12-19"))
    'Sat 19 Dec 2026'
    """
    fact = slot(key).fact
    return answer(renamed(fact, said, fact.written_as), fact.unit)


def as_heard(key: str, said: Answer) -> str:
    """Write an answer as a customer says it who was asked in our words.

    Examples
    --------
    >>> from ampwright.foundations.answers import Is, OneOf
    >>> as_heard("boards.main.parts_sold", Is(False)), as_heard("supply.looped", Is(True))
    ('no longer sold', 'two')
    >>> as_heard("services.gas.bond_mm2", OneOf((0.0, 4.0)))
    'none or 4 mm²'
    """
    fact = slot(key).fact
    return answer(renamed(fact, said, fact.heard_as), fact.unit)


def renamed(fact: Fact, said: Answer, names: Mapping[Value, str]) -> Answer:
    """Return an answer with its values under the names that they are written by."""
    match said:
        case Is():
            return Is(named(fact, said.value, names))
        case OneOf():
            return OneOf(tuple(named(fact, each, names) for each in said.values))
        case _:
            return said


def named(fact: Fact, said: Value, names: Mapping[Value, str]) -> Value:
    """Return one value as it is written: by another name, or as days are."""
    if fact.form == "date":
        return day(date.fromisoformat(str(said)))
    return names.get(said, said)


def says(record: Record) -> str:
    """Say what one record says and on what."""
    said = answer_to(record.key, cast(Answer, record.answer))
    return ", ".join(part for part in (f"{record.evidence.word} {said}", record.how) if part)


def found_facts(folded: FoldedHome) -> tuple[FoundFact, ...]:
    """Return every answered fact of a home, in the order of the register."""
    keys = (each.key for each in slots_of(frozen(folded.ids)))
    return tuple(found_fact(key, folded) for key in keys if folded.at(key).answer is not None)


def found_fact(key: str, folded: FoldedHome) -> FoundFact:
    """Return one answered fact in words."""
    here = folded.at(key)
    said = said_by(key, here)
    return FoundFact(
        key,
        fact_name(key),
        answer_to(key, cast(Answer, here.answer)),
        known(said),
        how(said),
        "; ".join(says(each) for each in here.overruled),
    )


def known(said: Said) -> Known:
    """Return the word for how a fact is known."""
    return cast(Known, said.evidence.word)


def how(said: Said) -> str:
    """Say on what a fact rests, who read it and when.

    Examples
    --------
    >>> from datetime import date
    >>> from ampwright.foundations.source import Evidence
    >>> how(Said("supply.ze_ohm", Evidence.MEASURED, "loop tester 2", "ro", date(2026, 3, 2)))
    'loop tester 2, ro, 2 Mar 2026'
    """
    return str(said).removeprefix(f"{said.key}: {said.evidence.word}").removeprefix(", ")


def rests(reads: Iterable[Rest]) -> tuple[str, ...]:
    """Say what was read of a home and on what that rests, things with one answer together.

    Examples
    --------
    >>> from ampwright.foundations.source import Evidence
    >>> said = Said("supply.earthing", Evidence.SEEN, "photo 3")
    >>> rests([Rest("supply.earthing", "Earthing arrangement", "TN-C-S", said)])
    ('Earthing arrangement: TN-C-S  [seen, photo 3]',)
    >>> of = {True: ("services.water", "services.gas"), False: ("services.oil",)}
    >>> told = [Rest(f"{at}.present", "Present", is_, Said(at, Evidence.TOLD))
    ...         for is_, paths in of.items() for at in paths]
    >>> rests(told)
    ('Services there: water, gas; not there: oil  [told]',)
    """
    return tuple(
        f"{name_of_several(each)}: {of_things(each)}  [{basis_of(each[0])}]"
        for each in alike(reads)
    )


def name_of_several(reads: Sequence[Rest]) -> str:
    """Return what one fact of several things is called."""
    there = any(rest.value for rest in reads)
    return name_among(reads[0].key, there=there)


def name_among(key: str, *, there: bool) -> str:
    """Return what a fact of one kind of thing is called; whether things are there, by their kind.

    Examples
    --------
    >>> name_among("services.gas.present", there=True)
    'Services there'
    >>> name_among("boards.main.circuits.hob.present", there=False)
    'Circuits not there (main)'
    >>> name_among("services.gas.bond_mm2", there=True)
    'Main bonding conductor size'
    """
    found, things = slot(key), things_in(key)
    if found.fact.name != PRESENT:
        return found.fact.trade
    kind = capital(things[-1][0].rpartition(".")[2])
    around = ", ".join(thing for _, thing in things[:-1])
    return f"{kind} {'there' if there else 'not there'}{f' ({around})' if around else ''}"


def alike(reads: Iterable[Rest]) -> tuple[list[Rest], ...]:
    """Return reads put together where they are of one fact of one kind and rest on the same."""
    found: dict[tuple[str, str, str], list[Rest]] = {}
    for rest in reads:
        here = slot(rest.key)
        kind = here.thing.rpartition(".")[0]
        found.setdefault((kind, here.fact.trade, basis_of(rest)), []).append(rest)
    return tuple(found.values())


def of_things(reads: Sequence[Rest]) -> str:
    """Write the values of one fact, each with the things that have it.

    What several things stand in, a board, is not said of each.
    """
    paths = [[thing for _, thing in things_in(rest.key)] for rest in reads]
    shared = len({tuple(path[:-1]) for path in paths}) == 1 and len(reads) > 1
    is_there = slot(reads[0].key).fact.name == PRESENT
    by_value: dict[str, list[str]] = {}
    for rest, path in zip(reads, paths, strict=True):
        things = path[-1:] if shared or is_there else path
        by_value.setdefault(words_of(rest.key, rest.value), []).extend(things)
    if is_there:
        return "; not there: ".join(
            ", ".join(by_value[said]) for said in YES_NO if said in by_value
        )
    return "; ".join(
        f"{said} ({', '.join(things)})" if things and things != [said] else said
        for said, things in by_value.items()
    )


def basis_of(rest: Rest) -> str:
    """Say on what a fact rests that was read."""
    source = rest.source
    if isinstance(source, Said):
        return ", ".join(part for part in (known(source), how(source)) if part)
    return str(source)
