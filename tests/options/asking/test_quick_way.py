"""The few choices tried in drawn homes, beside all options of each home by itself.

The reference is the whole search over a home of which everything is known.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from ampwright.options.asking.asked import SEED, lists_closed
from ampwright.options.asking.drawing import draw
from ampwright.options.asking.drawn import DrawnHomes
from ampwright.options.asking.leading import always, found_in
from ampwright.options.asking.remaining import Remaining, whole
from ampwright.options.asking.supposing import homes_supposed, supposing
from ampwright.options.asking.trying import Found
from ampwright.options.asking.worth import NEAR_P
from ampwright.options.homes import Homes
from ampwright.options.open_homes import homes_of
from ampwright.options.outlook import NUMBERS, outlook
from ampwright.options.supply_side import Decision
from ampwright.survey.folding import as_found

from .plain_loop import DEMO, blanked

COUNT = 24
OPENED = ("supply.main_fuse_a", "services.gas.bond_connected", "boards.main.surge_protection")
ALIKE = 0.8
"""In so many of the homes the quick way must come to the same; a design is never made of it."""


@cache
def drawn() -> tuple[DrawnHomes, Found]:
    supposed = supposing(as_found(()), DEMO.asking)
    homes, _ = lists_closed(homes_supposed(supposed, DEMO))
    found = draw(homes, COUNT, SEED + 2, supposed.same)
    return found, found_in(found, DEMO)


@cache
def alone(number: int) -> Remaining:
    """One of the drawn homes with all its options."""
    homes, _ = drawn()
    known = {**homes.known, **homes.values_in(number)}
    return whole(outlook(Homes(known, {}, {}, homes.build), DEMO).ranking)


def test_decision_and_price_are_mostly_those_of_the_whole_search() -> None:
    _, found = drawn()
    same = 0
    for number in range(COUNT):
        home, price = alone(number), found.usual_p[number]
        near = abs(home.usual_p[0] - price) <= NEAR_P or bool(
            np.isnan(price) and np.isnan(home.usual_p[0])
        )
        same += near and home.decision[0] == found.decision[number]
    assert same >= ALIKE * COUNT


@pytest.mark.parametrize("number", range(COUNT))
def test_it_finds_nothing_that_the_whole_search_does_not(number: int) -> None:
    home, found = alone(number), drawn()[1]
    if np.isnan(home.usual_p[0]):
        assert not found.sound[number]
        assert found.decision[number] == NUMBERS[Decision.STOP_UNTIL]


def test_what_is_sound_whatever_the_answers_is_among_the_options_of_each_home() -> None:
    homes = homes_of(blanked("quillbrook-close", OPENED), DEMO)
    few = draw(homes, 12, SEED, {})
    slugs = always(few, DEMO, found_in(few, DEMO))
    assert slugs
    for number in range(12):
        known = {**few.known, **few.values_in(number)}
        options = outlook(Homes(known, {}, {}, few.build), DEMO).searched.options
        assert set(slugs) <= {replace(each.choice, remedies=()).slug for each in options}


def test_nothing_is_sound_whatever_the_answers_where_some_home_has_no_option() -> None:
    homes, found = drawn()
    assert not found.sound.all()
    assert always(homes, DEMO, found) == ()
