"""What an answer leaves, beside the same homes gone through as if nothing had been known before.

The oracle is the whole search over the homes that are left, with nothing kept.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.journeys.homes import records_of

from ampwright.foundations.answers import Value
from ampwright.options.among import are_some
from ampwright.options.asking.asked import Explored, explore
from ampwright.options.homes import Homes
from ampwright.options.memory import Memory
from ampwright.options.open_homes import homes_of
from ampwright.survey.folding import as_found

from .plain_loop import DEMO

OPEN: Mapping[str, tuple[Value, ...]] = {
    "supply.main_fuse_a": (60.0, 80.0, 100.0),
    "supply.looped": (False, True),
    "supply.earthing": ("TN-C-S", "TT"),
    "services.gas.bond_connected": (False, True),
    "legs.along-the-ceiling.length_m": (5.0, 25.0),
}
GAS_AND_FUSE = ("services.gas.bond_connected", "supply.main_fuse_a")


def home_with_open(facts: Mapping[str, tuple[Value, ...]]) -> Homes:
    homes = homes_of(as_found(records_of("quillbrook-close")), DEMO)
    known = {key: value for key, value in homes.known.items() if key not in facts}
    chances = {key: tuple(float(i + 1) for i, _ in enumerate(each)) for key, each in facts.items()}
    return replace(homes, known=known, open=facts, chances=chances, pool={})


def afresh(homes: Homes) -> Explored:
    return explore(replace(homes, pool={}, memory=Memory()), DEMO, {})


@pytest.fixture(scope="module")
def before() -> Explored:
    return explore(home_with_open(OPEN), DEMO, {})


@settings(max_examples=6, deadline=None, derandomize=True)
@given(st.data())
def test_two_answers_leave_what_the_homes_come_to_by_themselves(
    before: Explored, data: st.DataObject
) -> None:
    left = before
    for key in data.draw(st.permutations(sorted(OPEN)))[:2]:
        homes = left.homes.knowing({key: data.draw(st.sampled_from(OPEN[key]))})
        left = explore(homes, DEMO, {}, left)
    alone = afresh(left.homes)
    assert left.holds == alone.holds
    assert left.turns == alone.turns
    assert left.ranking is not None and alone.ranking is not None
    assert [each.id for each in left.ranking.front] == [each.id for each in alone.ranking.front]


def test_an_answer_runs_no_stage_again(before: Explored) -> None:
    calls = before.homes.memory.calls
    for key in GAS_AND_FUSE:
        explore(before.homes.knowing({key: OPEN[key][0]}), DEMO, {}, before)
    assert before.homes.memory.calls == calls


def test_an_answer_that_nobody_reckoned_with_is_worked_out(before: Explored) -> None:
    homes = before.homes.knowing({"supply.main_fuse_a": 63.0})
    found = explore(homes, DEMO, {}, before)
    assert found.holds == afresh(homes).holds


def test_homes_are_some_of_others_only_where_answers_took_some_away(before: Explored) -> None:
    homes = before.homes
    assert are_some(homes, homes)
    assert are_some(homes.knowing({"supply.looped": True}), homes)
    assert not are_some(homes, homes.knowing({"supply.looped": True}))  # an answer withdrawn
    assert not are_some(homes.knowing({"supply.main_fuse_a": 63.0}), homes)
    other = {**homes.known, "supply.ze_ohm": 0.2}
    assert not are_some(replace(homes, known=other, pool={}), homes)  # measured otherwise
    cut = replace(homes, steps={"legs.along-the-ceiling.length_m": 0.5}, pool={})
    assert are_some(cut, homes)
    fewer = replace(
        cut,
        open={**homes.open, "legs.along-the-ceiling.length_m": (5.0,)},
        chances={**homes.chances, "legs.along-the-ceiling.length_m": (1.0,)},
        pool={},
    )
    assert not are_some(fewer, homes)  # the points of a range that is still open are others
