"""What weaker evidence says otherwise is asked about only where something turns on it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.journeys.homes import records_of, told

from ampwright.firm.asking import Channel
from ampwright.foundations.answers import Is, Value
from ampwright.foundations.source import Evidence
from ampwright.options.asking.asked import Asked, asked
from ampwright.survey.folding import as_found
from ampwright.survey.records import Record

from .plain_loop import DEMO

FUSE = "supply.main_fuse_a"


def said_on_the_phone(key: str, value: Value) -> list[Record]:
    """The complete home, of which one fact was told otherwise than it was seen."""
    records = list(records_of("quillbrook-close"))
    seen = next(each for each in records if each.key == key)
    assert seen.evidence is Evidence.SEEN
    return [
        *records,
        replace(seen, answer=Is(value), evidence=Evidence.TOLD, how="call", id="said-on-the-phone"),
    ]


def asking(key: str, value: Value) -> Asked:
    folded = as_found(said_on_the_phone(key, value))
    assert folded.at(key).overruled and folded.at(key).answer != Is(value)
    return asked(folded, DEMO)


def test_a_fuse_that_would_change_the_decision_is_looked_at_again() -> None:
    # 21.65 A and 32 A for the car on 80 A as seen; on 40 A only under a limit (53.65 A).
    said = asking(FUSE, 40.0)
    (fact,) = said.deciding
    assert (fact.key, fact.overruled, fact.disputed) == (FUSE, True, False)
    assert fact.changes == pytest.approx(0.5, abs=0.01)  # of two sayings that count alike
    assert (
        fact.channel is Channel.PHOTO
    )  # it was seen: to ask again on the telephone settles nothing


def test_it_stands_in_no_decision() -> None:
    said = asking(FUSE, 40.0)
    assert said.holds.certain is told("quillbrook-close", "demo").outlook.decision
    assert said.ranking is not None and not said.ranking.facts


def test_a_fuse_that_would_change_nothing_is_not_asked_about() -> None:
    said = asking(FUSE, 100.0)
    assert not said.deciding and said.next is None
