"""The fold in cases one can check by eye."""

from __future__ import annotations

import pytest

from ampwright.foundations.answers import Between, CannotSay, Is, OneOf
from ampwright.foundations.errors import InputError
from ampwright.foundations.source import Evidence
from ampwright.survey.fold import NOBODY, fold
from ampwright.survey.layout import slot
from ampwright.survey.records import Record, content_id

from .saying import say

FUSE, ZE, LOW = "supply.main_fuse_a", "supply.ze_ohm", "supply.lowest_v"


def folded(*rows):
    return fold(rows, slot(rows[0].key).fact)


def test_told_100_but_the_photo_shows_60():
    told, seen = say(FUSE, 100.0), say(FUSE, 60.0, "seen")
    found = folded(told, seen)
    assert (found.answer, found.evidence) == (Is(60.0), Evidence.SEEN)
    assert (found.basis, found.overruled, found.disputed) == ((seen,), (told,), ())


def test_a_weaker_word_narrows_and_the_answer_leans_on_it():
    seen, told = say(FUSE, OneOf((60.0, 80.0)), "seen"), say(FUSE, OneOf((80.0, 100.0)))
    found = folded(seen, told)
    assert (found.answer, found.evidence) == (Is(80.0), Evidence.TOLD)
    assert set(found.basis) == {seen, told}


def test_a_weaker_word_that_adds_nothing_does_not_weaken():
    found = folded(say(FUSE, 80.0, "seen"), say(FUSE, OneOf((60.0, 80.0))))
    assert (found.answer, found.evidence) == (Is(80.0), Evidence.SEEN)
    assert not found.overruled


def test_equal_evidence_that_disagrees_leaves_both_open_and_is_a_question():
    rows = say(FUSE, 60.0, "seen"), say(FUSE, 80.0, "seen", how="photo 3")
    found = folded(*rows)
    assert found.answer == OneOf((60.0, 80.0))
    assert set(found.disputed) == set(rows)
    assert not found.overruled


def test_a_dispute_settled_by_better_evidence_is_none():
    sixty, eighty = say(FUSE, 60.0), say(FUSE, 80.0, by="him")
    found = folded(sixty, eighty, say(FUSE, 60.0, "seen"))
    assert (found.answer, found.disputed, found.overruled) == (Is(60.0), (), (eighty,))


def test_a_weaker_level_may_pick_a_side_in_a_dispute_that_still_stands():
    seen = say(FUSE, 60.0, "seen"), say(FUSE, 80.0, "seen", how="photo 3")
    found = folded(*seen, say(FUSE, 80.0))
    assert (found.answer, found.evidence) == (Is(80.0), Evidence.TOLD)
    assert set(found.disputed) == set(seen)


def test_a_range_and_a_list_meet():
    assert folded(say(FUSE, Between(50.0, 90.0)), say(FUSE, OneOf((60.0, 100.0)))).answer == Is(
        60.0
    )
    assert folded(say(FUSE, Between(50.0, 90.0))).answer == OneOf((60.0, 80.0))
    here = folded(say(ZE, Between(0.1, 0.3)), say(ZE, Between(0.2, 0.4), by="b"))
    assert here.answer == Between(0.2, 0.3)
    apart = folded(say(ZE, Between(0.1, 0.2)), say(ZE, 0.9, by="b"))
    assert apart.answer == Between(0.1, 0.9)
    assert apart.disputed
    touching = folded(say(ZE, Between(0.1, 0.2)), say(ZE, Between(0.2, 0.3), by="b"))
    assert touching.answer == Is(0.2)


@pytest.mark.parametrize(
    ("key", "readings", "stands"),
    [
        (ZE, (0.18, 0.19), 0.19),
        (ZE, (0.17, 0.19), 0.19),
        (ZE, (182.0, 190.0), 190.0),
        (LOW, (217.0, 218.5), 217.0),
    ],
)
def test_readings_that_agree_count_as_one_and_the_worse_stands(key, readings, stands):
    rows = [say(key, value, "measured", how=f"tester {value}") for value in readings]
    found = folded(*rows)
    assert (found.answer, found.disputed, found.overruled) == (Is(stands), (), ())


def test_readings_too_far_apart_are_a_dispute():
    found = folded(say(ZE, 0.18, "measured"), say(ZE, 0.25, "measured", by="b"))
    assert found.answer == OneOf((0.18, 0.25))
    assert found.disputed


def test_a_worse_reading_of_weaker_evidence_does_not_move_a_measured_one():
    found = folded(say(ZE, 0.18, "measured"), say(ZE, 0.19, "seen"))
    assert (found.answer, found.overruled) == (Is(0.18), ())


def test_those_who_cannot_say_are_remembered_and_decide_nothing():
    asked = say(FUSE, CannotSay("dark"), by="him")
    assert folded(asked).answer is None
    assert folded(asked).cannot_say == (asked,)
    assert folded(asked, say(FUSE, 80.0)).answer == Is(80.0)
    assert fold([]) == NOBODY


def test_a_withdrawal_may_carry_the_right_answer_and_falls_as_a_whole():
    wrong = say(FUSE, 100.0)
    right = say(FUSE, 80.0, withdraws=(wrong.id,))
    assert folded(wrong, right).answer == Is(80.0)
    undone = Record(home="cot", key=FUSE, answer=None, withdraws=(right.id,))
    assert folded(wrong, right, undone).answer == Is(100.0)


def test_what_changed_is_history_whatever_the_dates_say():
    old = say(FUSE, 60.0, "seen")
    new = say(FUSE, 100.0, since=(old.id,))
    found = folded(old, new)
    assert (found.answer, found.evidence, found.overruled) == (Is(100.0), Evidence.TOLD, ())


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ({"evidence": Evidence.SEEN}, "picture or paper"),
        ({"evidence": Evidence.SEEN, "how": "photo 2"}, "who read it"),
        ({"evidence": Evidence.MEASURED, "by": "Ro"}, "the instrument"),
        ({"answer": None}, "an answer"),
    ],
)
def test_evidence_needs_support(more, says):
    with pytest.raises(InputError, match=says):
        Record(**{"home": "cot", "key": FUSE, "answer": Is(80.0), **more})


def test_an_id_follows_from_all_that_is_said():
    one = say(FUSE, 80.0)
    changed = [
        say(FUSE, 60.0), say(FUSE, 80.0, "assumed"), say(FUSE, 80.0, how="x"),
        say(FUSE, 80.0, by="x"), say(FUSE, 80.0, job="x"), say(FUSE, 80.0, phone="x"),
        say(FUSE, 80.0, since=("x",)), say(FUSE, 80.0, withdraws=("x",)),
        say(FUSE, OneOf((60.0, 80.0))), say(FUSE, Between(60.0, 80.0)),
        say("supply.isolator_a", 80.0),
    ]  # fmt: skip
    assert len({one.id, *(each.id for each in changed)}) == len(changed) + 1
    assert one.id == content_id(one) == say(FUSE, 80).id
