"""What a stage made is found again by what it read, and only then."""

from __future__ import annotations

from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from ampwright.foundations.answers import Missing, Unanswered
from ampwright.foundations.stages import Made
from ampwright.options.memory import BLANK, Memory, Reads

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


class Told:
    """Reads what is known of a home, and notes it."""

    def __init__(self, known: dict[str, int]) -> None:
        self.known = known
        self.seen: dict[str, Any] = {}

    def read(self, key: str) -> int:
        self.seen[key] = self.known.get(key, BLANK)
        if key not in self.known:
            raise Unanswered(key)
        return self.known[key]


def recalled(memory: Memory, known: dict[str, int], lift: int) -> Any:
    """Follow a stage along what it read before; run it where nobody has come yet."""
    then, at = memory.start(stage, (lift,))
    while (node := then.get(at)) is not None:
        if not isinstance(node, Reads):
            return node.result
        then, at = node.then, known.get(node.fact, BLANK)
    told = Told(known)
    return memory.run(stage, (lift,), told.read, told, once=lift == 1).result


def alone(known: dict[str, int], lift: int) -> Any:
    try:
        return stage(Told(known).read, lift)
    except Unanswered as blank:
        return Missing((blank.key,))


@given(st.lists(st.tuples(facts, st.integers(0, 1)), max_size=12))
def test_whatever_came_before_a_stage_comes_to_what_it_comes_to_alone(homes: Any) -> None:
    memory = Memory()
    for known, lift in homes:
        assert recalled(memory, known, lift) == alone(known, lift)


def test_a_fact_that_was_not_read_runs_nothing_again() -> None:
    memory = Memory()
    for other in (1, 2, 3):
        assert recalled(memory, {"a": 0, "b": other}, 0) == Made((0, 0))
    assert memory.calls == 1


def test_what_is_lacking_is_kept_too() -> None:
    memory = Memory()
    for _ in range(2):
        assert recalled(memory, {"b": 1}, 0) == Missing(("a",))
    assert memory.calls == 1


def test_what_was_put_off_is_noted_when_it_is_asked_for_again() -> None:
    memory = Memory()
    for _ in range(3):
        assert recalled(memory, {"a": 0}, 1) == Made((1, 0))
    assert memory.calls == 1
