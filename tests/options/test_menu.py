"""What there is to choose from: nothing that is known to be gone."""

from __future__ import annotations

import pytest
from tests.journeys.homes import adding, journey

NAME = "quillbrook-close"


@pytest.mark.parametrize(("present", "places"), [(True, 2), (False, 1)])
def test_a_place_that_is_gone_is_not_offered(present, places):
    home = journey(
        NAME, change=adding({"places.side.outdoors": True, "places.side.present": present})
    )
    rejected = {each.made.get("place") for each in home.outlook.searched.rejections} - {None}
    offered = {option.choice.place for option in home.outlook.ranking.options}
    assert len(rejected | offered) == places


def test_a_board_that_is_gone_is_no_tap():
    said = {"boards.annexe.from_meter_m": 2.0, "boards.annexe.present": False}
    home = journey(NAME, change=adding(said))
    taps = {each.made.get("tap") for each in home.outlook.searched.rejections}
    taps |= {option.choice.tap for option in home.outlook.ranking.options}
    assert taps - {None} == {"main", "meter"}
