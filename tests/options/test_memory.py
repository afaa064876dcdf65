"""What a stage made is found again by what it read, and only then."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ampwright.foundations.answers import Unanswered
from ampwright.foundations.stages import Made
from ampwright.options.homes import ForkingReader
from ampwright.options.memory import Memory

facts = st.dictionaries(st.sampled_from("abcd"), st.integers(0, 2), max_size=4)


def stage(home: Any, lift: int) -> Made[tuple[int, ...]]:
    """Read one fact after another, each as the one before it says."""
    first = home("a")
    if first == 0:
        return Made((lift, first))
    try:
        second = home("b")
    except Unanswered:
        second = 9
    return Made((lift, first, second, home("c" if second else "d")))


def outcome(run: Any) -> Any:
    try:
        return run()
    except Unanswered as blank:
        return blank.key


@given(st.lists(st.tuples(facts, st.integers(0, 1)), max_size=12))
def test_whatever_came_before_a_stage_comes_to_what_it_comes_to_alone(homes: Any) -> None:
    memory = Memory()
    for known, lift in homes:
        reader = ForkingReader(known, {})
        kept = outcome(lambda r=reader, n=lift: memory.made(stage, r.read, r, (n,)))
        alone = ForkingReader(known, {})
        assert kept == outcome(lambda r=alone, n=lift: stage(r.read, n))
        assert reader.seen == alone.seen  # and has read the same, in the same order


def test_a_fact_that_was_not_read_runs_nothing_again() -> None:
    memory = Memory()
    for other in (1, 2, 3):
        reader = ForkingReader({"a": 0, "b": other}, {})
        assert memory.made(stage, reader.read, reader, (0,)).out == (0, 0)
    assert memory.calls == 1


def test_what_is_lacking_is_kept_too() -> None:
    memory = Memory()
    for _ in range(2):
        reader = ForkingReader({"b": 1}, {})
        with pytest.raises(Unanswered):
            memory.made(stage, reader.read, reader, (0,))
    assert memory.calls == 1
