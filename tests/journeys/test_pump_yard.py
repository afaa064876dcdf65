"""Three phases that arrive in the yard: the answers of a careful author, worked by hand.

The expected figures are the answer sheet of the worked home this example tells, worked with a
pocket calculator: demand line by line by the household table of an online electricians' handbook
(Table 6.2), volts lost from mV/A/m as a share of 400 V, loop with resistances of IEC 60228 times
1.20. Tolerance 1.2 per cent, as the sheet says.
"""

from __future__ import annotations

from typing import Any

import pytest

from ampwright.options.supply_side import Decision
from ampwright.standards.network.connection import Step
from ampwright.standards.wiring.voltage_drop import drop
from ampwright.tables.capacity import CableFamily
from ampwright.tables.voltage_drop import drop_mv
from tests.journeys.homes import Journey, decisions, figures, journey, works

SHEET = 0.012
MOVED = "move-immersion-to-L3"
FED = "feed-device-main"


@pytest.fixture(scope="module")
def home() -> Journey:
    # A setting below the point's size, or a limit, counts with this operator.
    return journey("pump-yard", profile="demo")


@pytest.fixture(scope="module")
def unasked() -> Journey:
    return journey("pump-yard", profile="neutral")


@pytest.fixture(scope="module")
def moved(unasked: Journey) -> dict[str, Any]:
    """The sheet's answer: 16 A a line at the meter, the immersion on L3."""
    (option, *_) = unasked.options(
        tap="meter", phases=3, setting_a=16.0, house_limit=False, remedies={FED, MOVED}
    )
    return figures(unasked.worked(option)[0])


# Asked for 22 kW where a limit counts, the first choice is 32 A a line under 60 A, which the
# sheet calls sound too; its own is 16 A a line, 11 kW, with the immersion on L3.
def test_nobody_waits(home: Journey, unasked: Journey) -> None:
    # The sheet calls either right: no limit once the immersion is moved, or a limit without.
    without_wait = {Decision.FIT_THEN_TELL, Decision.FIT_WITH_LIMIT}
    assert set(home.outlook.decisions) <= without_wait
    assert set(unasked.outlook.decisions) <= without_wait


def test_it_is_fed_at_the_meter_and_not_from_the_house(home: Journey, unasked: Journey) -> None:
    for kept in (home, unasked):
        assert kept.best.choice.tap == "meter"
        assert kept.worked()[0].design.cable.length_m == pytest.approx(3)


def test_16_a_a_line_with_the_immersion_moved_needs_no_limit_and_no_operators_reading(
    unasked: Journey,
) -> None:
    best = unasked.best
    assert (best.choice.setting_a, best.choice.house_limit) == (16.0, False)
    assert [remedy.slug for remedy in best.choice.remedies] == [FED, MOVED]
    assert decisions(best) == {Decision.FIT_THEN_TELL}
    connection = unasked.worked()[0].design.connection
    assert (connection.outcome, connection.notice_days) == (Step.TELL_AFTER, 28)
    assert connection.rests_on == ()


def test_where_a_setting_counts_a_larger_point_may_be_set_to_16_a(home: Journey) -> None:
    (option, *_) = home.options(
        phases=3, setting_a=16.0, house_limit=False, point="three-socket", remedies={FED, MOVED}
    )
    assert decisions(option) == {Decision.FIT_THEN_TELL}
    (rests,) = home.worked(option)[0].design.connection.rests_on
    assert "locked setting" in rests


def test_without_the_move_the_second_line_passes_the_threshold(home: Journey) -> None:
    for option in home.options(phases=3, setting_a=16.0, house_limit=False, remedies={FED}):
        assert decisions(option) == {Decision.ASK_FIRST}


def test_32_a_a_line_is_never_told_after_without_a_limit(home: Journey) -> None:
    for option in home.options(phases=3, setting_a=32.0, house_limit=False):
        assert decisions(option) == {Decision.ASK_FIRST}
    (limited, *_) = home.options(phases=3, setting_a=32.0, house_limit=True, tap="meter")
    assert 60 <= home.worked(limited)[0].design.supply.carried.limit_a <= 80


def test_a_single_line_on_l3_is_cheaper_and_told_after(home: Journey) -> None:
    (option, *_) = home.options(phases=1, setting_a=32.0, tap="meter", house_limit=False)
    assert decisions(option) == {Decision.FIT_THEN_TELL}
    assert home.worked(option)[0].design.supply.carried.lines == (False, False, True)


def test_the_feed_to_the_house_gets_a_device_of_its_own(home: Journey, unasked: Journey) -> None:
    for kept in (home, unasked):
        for option in kept.outlook.searched.options:
            assert "feed-device-main" in works(option)


def test_everything_of_the_first_choice_has_a_price(home: Journey) -> None:
    assert home.worked()[0].design.price.unpriced == ()


def test_what_watches_one_line_is_never_put_on_three(home: Journey) -> None:
    for option in home.options(phases=3, earthing="pme"):
        assert option.choice.point.detects_three_phase
    assert home.refused("on three phases the detection watches all of them")


@pytest.mark.parametrize(
    ("what", "expected"),
    [
        ("demand now", (33.64, 36.6, 29.98)),
        ("demand with the point", (49.64, 52.6, 45.98)),
        ("kWh a year", 4762),
        ("kWh a day", 13.05),
        ("hours a day", 1.18),
        ("loop", 0.212),
        ("pounds a year at night", 381),
        ("pounds a year by day", 1243),
    ],
)
def test_the_figures_are_those_of_the_sheet(
    moved: dict[str, Any], what: str, expected: float | tuple[float, ...]
) -> None:
    assert moved[what] == pytest.approx(expected, rel=SHEET)


def test_the_demand_as_it_is_and_with_32_a_a_line(home: Journey) -> None:
    tried = figures(
        home.tried(
            tap="meter", point="three-socket", setting_a=32.0, house_limit=False, remedies=()
        )
    )
    assert tried["demand now"] == pytest.approx((33.64, 49.6, 16.98), rel=SHEET)
    moved = figures(
        home.tried(
            tap="meter", point="three-socket", setting_a=32.0, house_limit=False, remedies=(MOVED,)
        )
    )
    assert moved["demand with the point"] == pytest.approx((65.64, 68.6, 61.98), rel=SHEET)
    assert moved["volts lost"] == pytest.approx(0.65, rel=SHEET)
    assert moved["share lost"] == pytest.approx(0.00163, rel=SHEET)


def test_the_long_way_round_loses_far_more(home: Journey) -> None:
    # 48 m of 10 mm² five-core at 32 A, before the 45 m feed of the house is counted
    book = home.basis.book
    mv = drop_mv(book, CableFamily.ARMOURED, 3, 10.0)
    assert drop(mv, 32.0, 48.0) == pytest.approx(6.14, rel=SHEET)
    tried = home.tried(tap="main", point="three-socket", setting_a=32.0, remedies=()).design
    assert tried.cable.length_m == pytest.approx(48)
    assert tried.cable.drop_v > 6.14


def test_the_cable_and_device_are_those_of_the_sheet(home: Journey) -> None:
    design = home.tried(tap="meter", point="three-socket", setting_a=32.0, remedies=()).design
    cable, device = design.cable, design.device
    assert (cable.cores, cable.size_mm2, cable.earth_mm2) == (5, 6, 6)
    assert device.rating_a in (20, 25, 32, 40)
    assert (device.rcd_type, device.rcd_ma, device.breaks_neutral) == ("A", 30, True)
    assert home.best.choice.point.dc_6ma


def test_the_hours_at_11_and_at_7_kw(home: Journey) -> None:
    at_11 = home.tried(point="three-socket", setting_a=16.0).design.use.charging.cars[0]
    at_7 = home.tried(point="earth-lead", setting_a=32.0).design.use.charging.cars[0]
    assert (at_11.hours_a_day, at_7.hours_a_day) == pytest.approx((1.18, 1.77), rel=SHEET)
    assert (at_11.full_h, at_7.full_h) == pytest.approx((7.6, 11.3), rel=SHEET)
