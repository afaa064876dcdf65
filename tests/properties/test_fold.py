"""The fold is a function of the set of records, and better evidence is never widened by worse."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from ampwright.foundations.answers import Between, CannotSay, Is, OneOf
from ampwright.foundations.source import Evidence
from ampwright.survey.fold import current, fold, intersection
from ampwright.survey.folding import as_found, as_left, as_planned
from ampwright.survey.layout import slot
from ampwright.survey.records import Record
from ampwright.survey.states import states
from ampwright.survey.views import possible

from ..survey.generating import records as any_records

KEY = "supply.ze_ohm"
ZE = slot(KEY).fact
FIGURES = [0.16, 0.18, 0.19, 0.3, 0.35, 0.8]
figure = st.sampled_from(FIGURES)
answer = st.one_of(
    figure.map(Is),
    st.lists(figure, min_size=2, max_size=4, unique=True).map(lambda each: OneOf(tuple(each))),
    st.lists(figure, min_size=2, max_size=2, unique=True).map(lambda e: Between(*sorted(e))),
    st.just(CannotSay("no certificate")),
)
NAMES = [f"r{number}" for number in range(8)]
names = st.lists(st.sampled_from(NAMES), max_size=2, unique=True).map(tuple)


@st.composite
def of_one_key(draw, linked=True):
    """Records of one key; linked ones may take each other back, even in a circle."""
    count = draw(st.integers(1, len(NAMES)))
    return [
        Record(
            home="h",
            key=KEY,
            answer=draw(answer),
            evidence=draw(st.sampled_from(Evidence)),
            how="tester 2",
            by="ro",
            on=draw(st.none() | st.dates()),
            id=name,
            withdraws=draw(names) if linked else (),
            since=draw(names) if linked else (),
        )
        for name in NAMES[:count]
    ]


def allows(wide, narrow):
    """Whether everything that one answer leaves possible was possible in another."""
    return intersection([wide, narrow]) == intersection([narrow, narrow])


@given(of_one_key(), st.randoms())
def test_the_order_of_the_records_does_not_matter(rows, chance):
    shuffled = list(rows)
    chance.shuffle(shuffled)
    assert fold(shuffled, ZE) == fold(rows, ZE)


@given(of_one_key(), st.integers(0, 8))
def test_two_phones_merge_to_the_same_whichever_comes_first(rows, cut):
    one, other = rows[:cut], rows[max(0, cut - 2) :]
    assert fold(one + other, ZE) == fold(other + one, ZE) == fold(rows, ZE)


@given(any_records(), st.randoms())
@settings(max_examples=60)
def test_a_home_folds_the_same_in_any_order(rows, chance):
    shuffled = list(rows)
    chance.shuffle(shuffled)
    for view in (
        lambda some: as_found(some, ["j1", "j2"]),
        lambda some: as_planned(some, "j2", ["j1"]),
        lambda some: as_left(some, "j1"),
    ):
        one, other = view(rows), view(shuffled)
        assert one.facts == other.facts
        assert list(one.ids.items()) == list(other.ids.items())
        assert possible(one) == possible(other)
        assert list(states(one)) == list(states(other))


@given(of_one_key(linked=False), st.data())
def test_taking_back_an_undo_restores(rows, data):
    undone = data.draw(st.sampled_from(rows))
    undo = Record(home="h", key=KEY, answer=None, withdraws=(undone.id,), id="undo")
    redo = Record(home="h", key=KEY, answer=None, withdraws=("undo",), id="redo")
    others = [row for row in rows if row is not undone]
    assert fold([*rows, undo], ZE) == fold(others, ZE)
    assert fold([*rows, undo, redo], ZE) == fold(rows, ZE)


@given(of_one_key(linked=False), st.data())
def test_a_change_hides_what_it_names_even_after_it_is_history_itself(rows, data):
    past = data.draw(st.sampled_from(rows))
    changed = replace(past, id="s1", since=(past.id,))
    again = replace(past, id="s2", since=("s1",))
    standing = {row.id for row in current([*rows, changed, again])}
    assert standing == {row.id for row in rows if row is not past} | {"s2"}
    taken_back = Record(home="h", key=KEY, answer=None, withdraws=("s2",), id="w")
    assert {row.id for row in current([*rows, changed, again, taken_back])} - {"w"} == {
        *(row.id for row in rows if row is not past), "s1"
    }  # fmt: skip


@given(of_one_key(linked=False))
def test_weaker_evidence_only_narrows(rows):
    said = [row for row in rows if not isinstance(row.answer, CannotSay)]
    for level in Evidence:
        stronger = fold([row for row in said if row.evidence >= level], ZE)
        if stronger.answer is not None:
            assert allows(stronger.answer, fold(said, ZE).answer)


@given(of_one_key(linked=False))
def test_what_is_known_leans_on_its_weakest_record(rows):
    found = fold(rows, ZE)
    if found.answer is None:
        assert found.evidence is None
        assert not found.basis
    else:
        assert found.evidence is min(row.evidence for row in found.basis)


def close(one, other):
    """Whether two readings lie within 0.02 Ω or a tenth: they agree, and the better stands."""
    if not (isinstance(one, Is) and isinstance(other, Is)):
        return False
    apart, more = abs(one.value - other.value), max(one.value, other.value)
    return apart <= max(0.02, 0.1 * more) + 1e-9


@given(of_one_key(linked=False))
def test_every_record_that_contradicts_is_kept_to_be_shown(rows):
    found = fold(rows, ZE)
    for row in rows:
        if isinstance(row.answer, CannotSay):
            assert row in found.cannot_say
        elif intersection([row.answer, found.answer]) is None:
            assert (
                close(row.answer, found.answer) or row in found.overruled or row in found.disputed
            )


@pytest.mark.parametrize("seed", range(3))
def test_three_equal_voices_of_which_one_differs(seed):
    rows = [
        Record(home="h", key="supply.main_fuse_a", answer=Is(value), by=by)
        for value, by in [(60.0, "a"), (60.0, "b"), (80.0, "c")]
    ]
    Random(seed).shuffle(rows)
    found = fold(rows)
    assert found.answer == OneOf((60.0, 80.0))
    assert len(found.disputed) == len(rows)
