"""Records by chance: of any fact of the register, valid, with or without ids of their own."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from hypothesis import strategies as st

from ampwright.foundations.answers import Between, CannotSay, Is, OneOf
from ampwright.foundations.source import Evidence
from ampwright.survey.layout import frozen, slots_of
from ampwright.survey.records import Moment, Record

IDS = {
    "boards": ("main", "b-2"),
    "boards.main.outlets": ("3-L2",),
    "boards.main.devices": ("kiln",),
    "loads": ("kiln", "10-x", "2-x"),
    "legs": ("a",),
    "cars": ("0",),
    "supply.readings": ("tea",),
}
SLOTS = slots_of(frozen(IDS))
FORMS = {
    "date": st.dates().map(date.isoformat),
    "time": st.times().map(lambda at: at.isoformat()[:5]),
    "postcode": st.sampled_from(["ZZ1 4QB", "ZZ11 4FC", "Z1 1AA"]),
    "meter point": st.sampled_from(["1012345678903", "2000000000195", "81234567890"]),
    "id": st.sampled_from(["kiln", "main", "other", "z-9"]),
    "text": st.text(min_size=1).map(str.strip).filter(bool),
}
SHORT = st.text(max_size=6)


def values(fact):
    """Any one value that a fact accepts."""
    if fact.allowed:
        return st.sampled_from(fact.allowed)
    if fact.kind is float:
        return st.floats(*fact.between)
    if fact.kind is int:
        return st.integers(*map(int, fact.between))
    return FORMS[fact.form]


def answers(fact):
    """Any answer that a fact accepts."""
    one = values(fact)
    few = st.lists(one, min_size=2, max_size=4, unique=True).map(lambda each: OneOf(tuple(each)))
    made = [one.map(Is), few, SHORT.map(CannotSay)]
    if fact.is_number and not fact.allowed:
        ends = st.lists(one, min_size=2, max_size=2, unique=True)
        made.append(ends.map(lambda each: Between(*map(float, sorted(each)))))
    return st.one_of(made)


@st.composite
def record(draw, slots=SLOTS, home="cot"):
    """One record, named or not."""
    slot = draw(st.sampled_from(slots))
    evidence = draw(st.sampled_from(Evidence))
    support = SHORT.filter(bool) if evidence >= Evidence.SEEN else SHORT
    return Record(
        home=home,
        key=slot.key,
        answer=draw(answers(slot.fact)),
        evidence=evidence,
        how=draw(support),
        by=draw(support),
        on=draw(st.none() | st.dates()),
        job=draw(st.sampled_from(["", "j1", "j2"])),
        phone=draw(st.sampled_from(["", "p1"])),
        moment=draw(st.sampled_from(Moment)),
        id=draw(st.just("") | st.uuids().map(str)),
    )


@st.composite
def records(draw, max_size=12, slots=SLOTS):
    """Some records of one home, a few of which take others back or make them history."""
    rows = draw(st.lists(record(slots), max_size=max_size))
    for row in list(rows):
        what = draw(st.sampled_from(["nothing", "nothing", "withdraw", "correct", "since"]))
        again = replace(row, how=f"again {row.how}")
        if what == "withdraw":
            rows.append(replace(again, id="", answer=None, withdraws=(row.id,)))
        elif what == "correct":
            rows.append(replace(again, id="", withdraws=(row.id,)))
        elif what == "since":
            rows.append(replace(again, id="", since=(row.id,)))
    return rows
