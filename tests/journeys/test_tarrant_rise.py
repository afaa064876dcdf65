"""Half speed is enough: the answers of a careful author, worked by hand.

The expected figures are the answer sheet of the worked home this example tells, worked with a
pocket calculator: demand by the household table of an online electricians' handbook (Table 6.2),
volts lost from mV/A/m, loop with resistances of IEC 60228 times 1.20, the board's rating against
the fuse and every source (BS 7671, 551.7.2). Tolerance 1.2 per cent, minutes 0.6.
"""

from __future__ import annotations

from typing import Any

import pytest

from ampwright.options.supply_side import Decision
from ampwright.standards.network.connection import Step
from tests.journeys.homes import Journey, adding, decisions, figures, journey, works

SHEET = 0.012
BOND = ("services.gas.bond_mm2", "services.gas.bond_connected")
SUN: dict[str, Any] = {
    "sources.solar.kind": "solar",
    "sources.solar.amps_a": 16.0,
    "sources.solar.board": "main",
    "boards.main.rated_a": 100.0,
}
BATTERY: dict[str, Any] = {
    "sources.battery.kind": "battery",
    "sources.battery.amps_a": 16.0,
    "sources.battery.board": "main",
}


@pytest.fixture(scope="module")
def home() -> Journey:
    return journey("tarrant-rise", profile="neutral")


@pytest.fixture(scope="module")
def counted() -> Journey:
    return journey("tarrant-rise", profile="demo")


@pytest.fixture(scope="module")
def half(home: Journey) -> dict[str, Any]:
    return figures(home.worked(at(home, 16.0))[0])


def at(kept: Journey, setting_a: float) -> Any:
    """Return the best option from its own small board at a setting, without a limit."""
    return kept.options(tap="meter", earthing="pme", setting_a=setting_a, house_limit=False)[0]


def test_fitted_at_half_speed_whatever_the_operator_counts(home: Journey) -> None:
    choice = home.best.choice
    assert home.outlook.decision is Decision.FIT_THEN_TELL
    assert home.outlook.deciding == ()
    assert (choice.setting_a, choice.house_limit) == (16.0, False)
    assert (choice.tap, choice.earthing, choice.family) == ("meter", "pme", "sheathed")
    assert choice.point.detection == "volts window"
    connection = home.worked()[0].design.connection
    assert (connection.outcome, connection.notice_days) == (Step.TELL_AFTER, 28)
    assert connection.rests_on == ()


def test_where_settings_count_no_wait_rests_on_that_reading(counted: Journey) -> None:
    # The least that covers the need is recommended, though up to 22 A might be told after.
    assert counted.best.choice.setting_a == 16.0
    assert counted.outlook.decision is Decision.FIT_THEN_TELL
    (option, *_) = counted.options(
        tap="meter", setting_a=16.0, house_limit=False, point="window-lead"
    )
    (rests,) = counted.worked(option)[0].design.connection.rests_on
    assert "locked setting" in rests


def test_a_point_turned_down_rests_on_a_reading_nobody_has_asked(home: Journey) -> None:
    (option, *_) = home.options(
        tap="meter", setting_a=16.0, house_limit=False, point="window-lead"
    ) or home.options(tap="meter", setting_a=22.0, house_limit=False, point="window-lead")
    assert decisions(option) == {Decision.FIT_THEN_TELL, Decision.ASK_FIRST}


def test_32_a_is_asked_first_and_under_a_limit_only_if_the_limit_does_not_count(
    home: Journey,
) -> None:
    unlimited = home.options(setting_a=32.0, house_limit=False)
    limited = home.options(setting_a=32.0, house_limit=True)
    assert unlimited and limited
    for option in unlimited:
        assert decisions(option) == {Decision.ASK_FIRST}
    for option in limited:
        assert decisions(option) == {Decision.FIT_WITH_LIMIT, Decision.ASK_FIRST}


def test_the_most_without_a_limit_is_22_a(counted: Journey) -> None:
    # 60 − 37.88 = 22.12
    settings = {
        option.choice.setting_a
        for option in counted.options(house_limit=False, tap="meter")
        if decisions(option) == {Decision.FIT_THEN_TELL}
    }
    assert max(settings) == 22.0
    design = counted.worked(at(counted, 22.0))[0].design
    assert design.connection.margin_a + 22 == pytest.approx(22.12, rel=SHEET)


def test_half_now_and_full_when_the_network_has_answered(counted: Journey) -> None:
    later = {(pair.now.choice.setting_a, pair.later.choice.setting_a) for pair in
             counted.outlook.staged}  # fmt: skip
    assert any(now <= 22 and then == 32 for now, then in later)


def test_the_spare_way_behind_a_plain_wave_is_never_used(home: Journey, counted: Journey) -> None:
    for kept in (home, counted):
        for option in kept.options(tap="main"):
            assert "new-board-main" in works(option)


def test_the_gas_bond_is_named_until_somebody_has_seen_it(home: Journey) -> None:
    assert set(BOND) <= set(home.outlook.ranking.facts)
    for fixed in home.each(*BOND):
        each = {**first_values(home), **fixed}
        best = home.outlook.ranking.best_in(each)
        assert best is not None
        bonded = fixed[BOND[0]] >= 10 and fixed[BOND[1]]  # type: ignore[operator]
        assert ("bond-gas" in works(best)) is not bonded


def first_values(home: Journey) -> dict[str, Any]:
    return {key: values[0] for key, values in home.outlook.homes.open.items()}


def test_the_bond_is_10_mm2(home: Journey) -> None:
    found = {
        dict(remedy.changes)[BOND[0]]
        for option in home.outlook.searched.options
        for remedy in option.choice.remedies
        if remedy.slug == "bond-gas"
    }
    assert found == {10.0}


def test_its_own_small_board_brings_surge_protection(home: Journey) -> None:
    small = {each.id: each for each in home.basis.catalogue.boards}
    assert small[home.worked()[0].design.board.board].surge_protection


def test_the_cable_and_device_are_those_of_the_sheet(home: Journey) -> None:
    # The device is of 16 A, which carries 16 A; the sheet lists 20 A and up. The maker decides.
    design = home.worked()[0].design
    cable, device = design.cable, design.device
    assert (cable.family, cable.size_mm2, cable.earth_mm2) == ("sheathed", 6, 6)
    assert cable.length_m == pytest.approx(7)
    assert (device.rcd_type, device.rcd_ma, device.breaks_neutral) == ("A", 30, True)
    assert home.best.choice.point.dc_6ma


@pytest.mark.parametrize(
    ("what", "expected"),
    [
        ("demand now", 37.88),
        ("demand with the point", 53.88),
        ("volts lost", 0.88),
        ("lowest volts at the point", 215.32),
        ("loop", 0.262),
        ("kWh a year", 2349),
        ("kWh a day", 6.44),
        ("pounds a year at night", 188),
        ("pounds a year by day", 613),
    ],
)
def test_the_figures_are_those_of_the_sheet(
    half: dict[str, Any], what: str, expected: float
) -> None:
    assert half[what] == pytest.approx(expected, rel=SHEET)


def test_the_figures_at_full_speed(home: Journey, half: dict[str, Any]) -> None:
    full = figures(home.worked(at(home, 32.0))[0])
    assert full["demand with the point"] == pytest.approx(69.88, rel=SHEET)
    assert full["volts lost"] == pytest.approx(1.77, rel=SHEET)
    assert half["hours a day"] * 60 == pytest.approx(105, abs=0.6)
    assert full["hours a day"] * 60 == pytest.approx(52, abs=0.6)
    assert full["pounds a year at night"] == half["pounds a year at night"]


def test_a_shower_would_mean_asking_first_at_any_setting() -> None:
    # 8.5 kW at 230 V is 37.0 A: 74.8 A before the car
    shower = {"loads.shower.present": True, "loads.shower.amps_a": 37.0}
    wet = journey("tarrant-rise", profile="neutral", change=adding(shower))
    assert wet.outlook.decision is Decision.ASK_FIRST
    assert figures(wet.worked()[0])["demand now"] == pytest.approx(74.8, rel=SHEET)
    # 5.2 A are left on 80 A, less than a car takes: a larger fuse is asked for, and where the tails
    # do not bear it nothing may be fitted, if there is no isolator, until somebody made them dead.
    for option in wet.outlook.searched.options:
        assert Decision.ASK_FIRST in decisions(option) or "new-tails" in works(option)
        assert decisions(option) <= {Decision.ASK_FIRST, Decision.STOP_UNTIL}


def test_solar_later_stays_within_the_boards_rating_and_a_battery_passes_it() -> None:
    # 80 + 16 = 96 A of 100; with a battery 112
    says = "fuse + sources ≤ the board's rating"
    sun = journey("tarrant-rise", profile="demo", change=adding(SUN))
    both = journey("tarrant-rise", profile="demo", change=adding(SUN | BATTERY))
    assert not sun.refused(says)
    assert both.refused(says) == [(pytest.approx(112.0), 100.0)]
