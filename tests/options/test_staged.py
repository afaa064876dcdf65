"""Staged options and the breakpoints of the setting, on the home where half speed is enough."""

from __future__ import annotations

import pytest
from tests.journeys.homes import Journey, journey

from ampwright.foundations.checks import Outcome
from ampwright.options.breaks import breaks, comes_to
from ampwright.options.lifting import Lifter
from ampwright.options.supply_side import Decision


@pytest.fixture(scope="module")
def counted() -> Journey:
    return journey("tarrant-rise", profile="demo")


def test_the_answer_flips_between_22_and_23_amperes(counted: Journey) -> None:
    # 37.88 + 22 = 59.88 is under 60, 37.88 + 23 = 60.88 is over: the home's answer sheet
    point = counted.basis.catalogue.point("window-lead")
    (only,) = breaks(counted.outlook.homes, counted.basis, point, False)
    assert (only.up_to_a, only.from_a) == (22.0, 23.0)
    assert only.below == {Decision.FIT_THEN_TELL}
    assert only.above == {Decision.ASK_FIRST}


def test_breaks_are_all_there_are(counted: Journey) -> None:
    point = counted.basis.catalogue.point("window-lead")
    homes, basis = counted.outlook.homes, counted.basis
    found = {each.up_to_a for each in breaks(homes, basis, point, False)}
    lifter = Lifter(homes)
    comes = {a: comes_to(lifter, basis, point, float(a), False) for a in range(6, 33)}
    assert found == {a for a in range(6, 32) if comes[a] != comes[a + 1]}


def test_half_speed_now_and_full_speed_later_share_all_that_is_fitted(counted: Journey) -> None:
    first = counted.outlook.staged[0]
    now, later = first.now.choice, first.later.choice
    assert (now.setting_a, later.setting_a) == (22.0, 32.0)
    assert (now.point, now.place, now.tap, now.family) == (
        later.point, later.place, later.tap, later.family
    )  # fmt: skip
    assert now.remedies == later.remedies
    for stage in (first.now, first.later):
        assert Outcome.PASS in stage.sound.possible


def test_a_home_that_may_be_told_after_at_full_size_has_no_stages() -> None:
    assert journey("quillbrook-close").outlook.staged == ()


def test_what_must_be_asked_for_at_any_setting_has_no_stages() -> None:
    # A weak line: the first visit would have to wait for the operator as well.
    assert journey("fellside-cottage", profile="demo").outlook.staged == ()
