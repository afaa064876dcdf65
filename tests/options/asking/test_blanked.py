"""Facts of complete homes blanked at random: the true home is never lost."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.journeys.homes import records_of, told

from ampwright.foundations.answers import Is, Value
from ampwright.options.asking.asked import asked, lists_closed
from ampwright.options.asking.drawing import draw
from ampwright.options.asking.drawn import HOME, DrawnHomes, DrawnLifter
from ampwright.options.asking.leading import found_in
from ampwright.options.asking.supposing import homes_supposed, supposing
from ampwright.options.homes import Homes
from ampwright.options.memory import Memory
from ampwright.options.outlook import outlook
from ampwright.survey.folding import as_found
from ampwright.survey.layout import slot
from ampwright.survey.register import Fact

from .plain_loop import DEMO, blanked

COMPLETE = "quillbrook-close"


def may_be_blank(key: str, answer: object) -> bool:
    """Say whether a fact is one that a first call often lacks: it has priors of its own."""
    fact: Fact = slot(key).fact
    return isinstance(answer, Is) and answer.value in fact.values


BLANKABLE = sorted(r.key for r in records_of(COMPLETE) if may_be_blank(r.key, r.answer))


def true_values() -> dict[str, Value]:
    return {r.key: r.answer.value for r in records_of(COMPLETE) if isinstance(r.answer, Is)}


@settings(max_examples=5, deadline=None, derandomize=True)
@given(st.sets(st.sampled_from(BLANKABLE), min_size=1, max_size=3))
def test_the_true_home_is_among_the_possible_and_its_decision_among_those_said(
    gone: set[str],
) -> None:
    # The oracle is the complete home itself, worked out without any of the asking.
    folded = blanked(COMPLETE, gone)
    homes = homes_supposed(supposing(folded, DEMO.asking), DEMO)
    truth = true_values()
    for key in gone:
        assert truth[key] in homes.open.get(key, (homes.known.get(key),))
    said = asked(folded, DEMO)
    true = told(COMPLETE, "demo").outlook
    assert true.recommended is not None
    assert true.decision in {decision for decision, _ in said.holds.decisions}
    assert said.holds.certain in (None, true.decision)
    price = true.recommended.design.price.total
    assert said.holds.price is not None
    assert said.holds.price.low_p <= price.low_p.only  # type: ignore[attr-defined]
    assert said.holds.price.high_p >= price.usual_p.only  # type: ignore[attr-defined]


def with_open(homes: Homes, further: dict[str, tuple[Value, ...]]) -> Homes:
    """Return homes in which further facts are open."""
    return replace(
        homes,
        known={key: value for key, value in homes.known.items() if key not in further},
        open={**homes.open, **further},
        chances={**homes.chances, **{key: (1.0,) * len(each) for key, each in further.items()}},
        pool={},
        memory=Memory(),
    )


UNREAD: dict[str, tuple[Value, ...]] = {
    "customer.best_time": ("mornings", "evenings"),
    "customer.email": ("a", "b", "c"),
    "property.listing_grade": ("I", "II"),
    "wishes.why_now": ("the car comes", "the tariff ends"),
    "cars.car-a.leaves_at": ("07:00", "08:00"),
    "customer.phone": ("1", "2"),
}
"""Facts that no stage reads."""


def test_six_facts_that_no_stage_reads_add_no_call_and_change_no_answer() -> None:
    folded = blanked(COMPLETE, ("supply.main_fuse_a", "supply.looped"))
    homes = homes_supposed(supposing(folded, DEMO.asking), DEMO)
    few, more = outlook(homes, DEMO), outlook(with_open(homes, UNREAD), DEMO)
    assert more.searched.calls == few.searched.calls
    assert more.decisions == pytest.approx(few.decisions) and more.deciding == few.deciding
    assert [o.id for o in more.ranking.options] == [o.id for o in few.ranking.options]


def test_facts_that_no_stage_reads_add_no_call_where_homes_are_drawn_either() -> None:
    homes, _ = lists_closed(homes_supposed(supposing(as_found(()), DEMO.asking), DEMO))
    few = draw(homes, 6, 1, {})
    numbers = {**few.numbers, **dict.fromkeys(UNREAD, few.numbers["supply.phases"] * 0)}
    numbers["customer.email"] = few.numbers["supply.main_fuse_a"] % 3
    more = DrawnHomes(
        known={key: value for key, value in few.known.items() if key not in UNREAD},
        open=few.open,
        chances=few.chances,
        build=few.build,
        among={**few.among, **UNREAD},
        numbers=numbers,
    )
    assert found_in(more, DEMO).calls == found_in(few, DEMO).calls
    assert not more.read & set(UNREAD)


def test_drawn_homes_come_to_what_each_comes_to_by_itself() -> None:
    # Each drawn home alone is one home: nothing is shared with another, nothing is forked.
    homes, _ = lists_closed(homes_supposed(supposing(as_found(()), DEMO.asking), DEMO))
    sample = draw(homes, 5, 7, {})
    together = found_in(sample, DEMO)
    for number in range(5):
        numbers = {key: each[number : number + 1] for key, each in sample.numbers.items()}
        alone = found_in(
            DrawnHomes(homes.known, {HOME: (0,)}, {HOME: (1.0,)}, homes.build, among=homes.open,
                       numbers=numbers),
            DEMO,
        )  # fmt: skip
        assert together.decision[number] == alone.decision[0]
        assert together.usual_p[number] == pytest.approx(alone.usual_p[0], nan_ok=True)


def test_a_stage_runs_once_for_homes_in_which_it_reads_the_same() -> None:
    numbers = {"supply.main_fuse_a": [0, 1, 0, 1, 1, 0], "supply.phases": [0, 0, 0, 1, 0, 0]}
    homes, _ = lists_closed(homes_supposed(supposing(as_found(()), DEMO.asking), DEMO))
    drawn = draw(homes, 6, 1, {})
    for key, each in numbers.items():
        drawn.numbers[key][:] = each  # type: ignore[index]
    lifter, seen = DrawnLifter(drawn), []

    def stage(home: object) -> object:
        fuse = home.supply.main_fuse_a  # type: ignore[attr-defined]
        seen.append(fuse)
        return fuse

    spread = lifter.lift(stage)
    assert len(seen) == lifter.calls == 2
    at = [spread.in_home({HOME: number}) for number in range(6)]
    assert at == [homes.open["supply.main_fuse_a"][n] for n in numbers["supply.main_fuse_a"]]
