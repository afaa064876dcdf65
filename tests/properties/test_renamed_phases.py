"""L1, L2 and L3 are names: a home whose lines are called otherwise is the same home.

From the demand up to the options that hold and what they cost; the ids of places in a board that
are lines are left out, since a three-phase board has an order that its makers give it.
"""

from __future__ import annotations

import re
from functools import cache
from itertools import permutations

import pytest
from tests.demand.homes import THREE_PHASE, home_of
from tests.journeys.homes import EXAMPLES, basis

from ampwright.demand.household import household_demand
from ampwright.foundations.checks import Outcome
from ampwright.options.lifting import Lifter
from ampwright.options.menu import menu_of
from ampwright.options.open_homes import homes_of
from ampwright.options.ranking import bare
from ampwright.options.search import Walk
from ampwright.options.work import work_of
from ampwright.survey.folding import as_found
from ampwright.survey.homefile import read
from ampwright.tables.book import Book

LINES = ("L1", "L2", "L3")
ORDERS = list(permutations(LINES))


def renamed(text: str, order: tuple[str, ...]) -> str:
    """Call the lines otherwise, wherever a text names one."""
    names = dict(zip(LINES, order, strict=True))
    return re.sub(r"\bL[123]\b", lambda line: names[line[0]], text)


def lines_of(facts: dict[str, object]) -> tuple[float, ...]:
    return household_demand(home_of(facts), Book()).out.now_a


@pytest.mark.parametrize("order", ORDERS, ids="-".join)
def test_the_demand_of_each_line_goes_with_its_name(order):
    facts = {
        key: renamed(value, order) if isinstance(value, str) else value
        for key, value in THREE_PHASE.items()
    }
    before, after = lines_of(THREE_PHASE), lines_of(facts)
    for line, called in zip(range(3), order, strict=True):
        assert after[LINES.index(called)] == pytest.approx(before[line])


@cache
def sound(name: str, order: tuple[str, ...]) -> dict[object, int]:
    """The choices that hold, without their work, and how often: once for each way of moving."""
    text = renamed((EXAMPLES / f"{name}.toml").read_text("utf-8"), order)
    shipped = basis()
    homes = homes_of(as_found(tuple(read(text, name).records)), shipped)
    lifter = Lifter(homes)
    options = Walk(lifter, menu_of(lifter, shipped), work_of(shipped)).run().options
    held: dict[object, int] = {}
    for option in options:
        if Outcome.PASS in option.sound.possible:
            held[bare(option.choice)] = held.get(bare(option.choice), 0) + 1
    return held


@pytest.mark.parametrize("order", [("L2", "L1", "L3"), ("L2", "L3", "L1")], ids="-".join)
@pytest.mark.parametrize("name", ["pump-yard", "kiln-house"])
def test_the_same_options_hold_whatever_the_lines_are_called(name, order):
    as_written = sound(name, LINES)
    assert as_written
    assert sound(name, order) == as_written
