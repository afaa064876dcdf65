"""What is said of a home while facts are open, beside the plain loop over every home it may be."""

from __future__ import annotations

from itertools import combinations, product

import pytest
from tests.journeys.homes import records_of, told

from ampwright.firm.asking import Channel
from ampwright.foundations.answers import CannotSay
from ampwright.options.asking.asked import Asked, asked, visit_p
from ampwright.options.asking.errands import place_of
from ampwright.options.asking.supposing import supposing
from ampwright.options.asking.worth import NEAR_P
from ampwright.options.supply_side import Decision
from ampwright.survey.danger import STOP_WORDS
from ampwright.survey.folding import as_found

from .plain_loop import DEMO, Come, blanked, plainly

OPENED = {
    "a fuse and a bond": (
        "quillbrook-close",
        ("supply.main_fuse_a", "services.gas.bond_connected", "boards.main.surge_protection"),
    ),
    "a loop and a list": ("quillbrook-close", ("supply.looped", "sources.all_listed")),
}


@pytest.fixture(scope="module", params=sorted(OPENED))
def both(request: pytest.FixtureRequest) -> tuple[Asked, list[Come]]:
    said = asked(blanked(*OPENED[request.param]), DEMO)
    assert said.ranking is not None
    facts = (
        *OPENED[request.param][1],
        *said.ranking.facts,
        *(w.key for w in said.deciding),
    )
    return said, plainly(said.ranking, tuple(dict.fromkeys(facts)))


def pairs(homes: list[Come], fact: str) -> list[tuple[float, Come, Come]]:
    """Pair homes alike in all but one fact, with the chance of the two answers in that order."""
    rest: dict[tuple[object, ...], list[Come]] = {}
    for each in homes:
        rest.setdefault(tuple(v for k, v in each.fixed.items() if k != fact), []).append(each)
    found = []
    for group in rest.values():
        total = sum(each.weight for each in group)
        for one, other in combinations(group, 2):
            found.append((2 * one.weight * other.weight / total, one, other))
    return found


def test_a_printed_worth_is_that_of_the_plain_loop(both: tuple[Asked, list[Come]]) -> None:
    said, homes = both
    assert said.deciding
    for each in said.deciding:
        alike = pairs(homes, each.key)
        changes = sum(chance for chance, one, other in alike if one.decision != other.decision)
        moves = sum(
            chance * abs(one.usual_p - other.usual_p)
            for chance, one, other in alike
            if one.usual_p is not None and other.usual_p is not None
        )
        assert each.turns.settles == pytest.approx(settling(homes, each.key), abs=1e-9)
        assert each.changes == pytest.approx(changes, abs=1e-9)
        assert each.turns.moves_p == pytest.approx(moves, abs=1e-6)
        assert each.worth_p == pytest.approx(moves + changes * visit_p(DEMO), abs=1e-6)
        assert each.narrows_p == pytest.approx(narrowing(homes, each.key), abs=1e-6)


def settling(homes: list[Come], fact: str) -> float:
    """Return how far the chance falls that two homes are not alike, pair by pair."""

    def unlike(some: list[Come]) -> float:
        total = sum(each.weight for each in some)
        found = 0.0
        for one, other in product(some, some):
            if one.usual_p is None or other.usual_p is None:
                near = one.usual_p is other.usual_p
            else:
                near = abs(one.usual_p - other.usual_p) <= NEAR_P
            if one.decision is not other.decision or not near:
                found += one.weight * other.weight / total**2
        return found

    after = 0.0
    for value in {each.fixed[fact] for each in homes}:
        some = [each for each in homes if each.fixed[fact] == value]
        after += sum(each.weight for each in some) * unlike(some)
    return max(0.0, unlike(homes) - after)


def narrowing(homes: list[Come], fact: str) -> float:
    """Return by how much the range of price narrows with the answer, on the average."""

    def width(some: list[Come]) -> float:
        low = [each.low_p for each in some if each.low_p is not None]
        high = [each.high_p for each in some if each.high_p is not None]
        return max(high) - min(low) if low else 0.0

    after = 0.0
    for value in {each.fixed[fact] for each in homes}:
        some = [each for each in homes if each.fixed[fact] == value]
        after += sum(each.weight for each in some) * width(some)
    return max(0.0, width(homes) - after)


def test_the_facts_that_decide_are_those_of_the_plain_loop(
    both: tuple[Asked, list[Come]],
) -> None:
    said, homes = both
    deciding = {
        fact
        for fact in homes[0].fixed
        if any(
            (one.decision, one.low_p, one.usual_p, one.high_p)
            != (other.decision, other.low_p, other.usual_p, other.high_p)
            for _, one, other in pairs(homes, fact)
        )
    }
    assert {each.key for each in said.deciding} == deciding


def test_decisions_and_range_are_those_of_the_plain_loop(both: tuple[Asked, list[Come]]) -> None:
    said, homes = both
    chances = {
        decision: sum(each.weight for each in homes if each.decision is decision)
        for decision in {each.decision for each in homes}
    }
    assert dict(said.holds.decisions) == pytest.approx(chances)
    assert said.holds.price is not None
    assert said.holds.price.low_p == min(e.low_p for e in homes if e.low_p is not None)
    assert said.holds.price.high_p == max(e.high_p for e in homes if e.high_p is not None)
    assert said.holds.wasted == pytest.approx(1 - max(chances.values()))


def test_nothing_is_asked_of_a_complete_home() -> None:
    said = asked(as_found(records_of("quillbrook-close")), DEMO)
    assert said.next is None and not said.deciding and not said.errands
    assert said.holds.certain is told("quillbrook-close", "demo").outlook.decision
    assert said.holds.wasted == 0 and said.holds.speakable


def test_what_was_told_is_never_taken() -> None:
    folded = as_found(records_of("tarrant-rise"))
    taken = supposing(folded, DEMO.asking).taken
    assert not {key for key in taken if folded.at(key).answer is not None}
    assert all(sum(shares.values()) == pytest.approx(1) for shares in taken.values())


def test_what_is_taken_stands_in_no_design() -> None:
    # The home's own facts are left as they were: only the supposed ones hold more.
    folded = blanked("tarrant-rise", ("legs.along-the-wall.length_m",))
    before = dict(folded.facts)
    supposing(folded, DEMO.asking)
    assert dict(folded.facts) == before


@pytest.fixture(scope="module")
def first_call() -> Asked:
    return asked(as_found(()), DEMO)


def test_of_a_home_nobody_has_described_something_can_be_said(first_call: Asked) -> None:
    assert first_call.ranking is None and first_call.holds.draws > 0
    assert first_call.holds.price is not None and first_call.holds.likely is not None
    assert first_call.holds.price.low_p <= first_call.holds.likely.low_p
    assert first_call.holds.likely.high_p <= first_call.holds.price.high_p
    assert "boards.main.present" in first_call.taken and first_call.next is not None


def test_on_the_telephone_the_first_questions_are_those_a_practitioner_asks() -> None:
    said = asked(as_found(()), DEMO, Channel.PHONE)
    assert all(each.channel is Channel.PHONE for each in said.errands)
    first = {each.facts[0].key for each in said.errands[:4]}
    assert {"loads.shower.present", "loads.cooker.present"} <= first
    assert any(key.startswith("legs.") for key in first)


def test_photographs_of_one_place_share_the_walk_and_settle_something(first_call: Asked) -> None:
    photos = [each for each in first_call.errands if each.channel is Channel.PHOTO]
    assert len({each.place for each in photos}) == len(photos)
    deciding = {each.key for each in first_call.deciding}
    for errand in photos:
        assert errand.facts and {each.key for each in errand.facts} <= deciding
        assert errand.minutes < sum(each.minutes for each in errand.facts) or len(errand.facts) == 1
        assert all(place_of(each.key, Channel.PHOTO) == errand.place for each in errand.facts)


def test_before_anybody_looks_at_something_live_they_hear_when_to_stop(first_call: Asked) -> None:
    looks = [e for e in first_call.errands if e.channel is Channel.PHOTO]
    assert {e.caution for e in looks if e.place in ("meter", "boards.main")} == {STOP_WORDS}
    assert "105" in STOP_WORDS


def test_who_cannot_say_is_not_asked_again() -> None:
    records = list(records_of("tarrant-rise"))
    asked_once = asked(as_found(records), DEMO)
    (fact,) = (w for w in asked_once.deciding if w.key == "services.gas.bond_mm2")
    assert any(isinstance(r.answer, CannotSay) for r in records if r.key == fact.key)
    assert fact.channel is Channel.SITE
    on_photo = asked(as_found(records), DEMO, Channel.PHOTO)
    assert fact.key not in {w.key for errand in on_photo.errands for w in errand.facts}


def test_lists_that_may_be_longer_are_open() -> None:
    said = asked(blanked("quillbrook-close", ("sources.all_listed",)), DEMO)
    assert "sources.all_listed" in {each.key for each in said.deciding}
    assert said.holds.certain is None
    assert dict(said.holds.decisions)[Decision.UNDETERMINED] == pytest.approx(
        float(DEMO.asking.longer["sources"])
    )
