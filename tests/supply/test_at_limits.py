"""Sensors line by line, and a house just as large as its limit."""

from __future__ import annotations

import pytest

from ampwright.demand.compare import TABLE
from ampwright.foundations.quantity import Amperes
from ampwright.supply.sensors import sensors
from ampwright.supply.sharing import shared_limit

from ..demand.homes import THREE_PHASE, home_of
from .given_basis import BASIS
from .test_sharing import OLD

SUN = {
    "sources.all_listed": True, "sources.sun.present": True, "sources.sun.phase": "L2",
    "sources.sun.sensor_at": "on the tails",
}  # fmt: skip


def seen(facts, tap="meter", lines=(True, True, True)):
    return sensors(home_of({**THREE_PHASE, **facts}), lines, True, tap).out.sensors


def test_a_source_on_one_line_has_its_sensor_there_alone():
    found = seen(SUN)
    assert [each.net_of for each in found[:3]] == [(), ("sun",), ()]
    (own,) = found[3:]
    assert (own.of, own.conductor) == ("sun", "the L2 tail")


@pytest.mark.parametrize(
    ("where", "tap", "words", "conductor"),
    [
        ("on the tails", "meter", "does not see the car", "the L2 tail"),
        ("on the tails", "main", "takes the car for house load", "the L2 tail"),
        ("in the board", "main", "takes the car for house load", "L2 in the board"),
        ("at the meter", "meter", "takes the car for house load", "the L2 tail"),
    ],
)
def test_whether_it_takes_the_car_for_the_house(where, tap, words, conductor):
    (own,) = seen({**SUN, "sources.sun.sensor_at": where}, tap)[3:]
    assert (own.words, own.conductor) == (words, conductor)


# A house with a point that follows the limit: shared only where it passes 60 A, or the supply.
@pytest.mark.parametrize(
    ("now_a", "rating_a", "shared"),
    [(60.0, 80.0, False), (60.1, 80.0, True), (45.0, 45.0, False), (45.1, 45.0, True)],
)
def test_a_house_just_at_its_limit_shares_nothing(now_a, rating_a, shared):
    home = home_of(OLD)
    made = shared_limit(home, BASIS, (Amperes(now_a),), Amperes(rating_a), True, TABLE)
    assert (made.out.points == ("old",)) is shared
