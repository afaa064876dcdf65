"""Solar and a battery already on the board: the answers of a careful author, worked by hand.

The expected figures are the answer sheet of the worked home this example tells, worked with a
pocket calculator: demand by the household table of an online electricians' handbook (Table 6.2),
with battery charging in full; the board's rating against the fuse and every source (BS 7671,
551.7.2); volts lost from mV/A/m; loop with resistances of IEC 60228 times 1.20. Tolerance 1.2
per cent, as the sheet says.
"""

from __future__ import annotations

import pytest

from ampwright.options.supply_side import Decision
from ampwright.standards.network.connection import Step
from tests.journeys.homes import Journey, adding, decisions, figures, journey, saying, works

SHEET = 0.012


@pytest.fixture(scope="module", params=["demo", "neutral"])
def home(request: pytest.FixtureRequest) -> Journey:
    return journey("larkspit-rise", profile=request.param)


@pytest.fixture(scope="module")
def at_full_size() -> dict[str, float]:
    # On the store's own small board at the meter; without a limit the sum passes the fuse.
    kept = journey("larkspit-rise", profile="demo")
    tried = kept.tried(
        tap="meter", point="window-lead", setting_a=32.0, house_limit=False, remedies=()
    )
    return figures(tried)


def test_the_network_is_asked_first_whatever_the_operator_counts(home: Journey) -> None:
    assert home.outlook.decision is Decision.ASK_FIRST
    assert home.outlook.deciding == ()
    for option in home.outlook.searched.options:
        assert decisions(option) == {Decision.ASK_FIRST}


def test_full_size_under_a_limit_between_the_threshold_and_the_fuse(home: Journey) -> None:
    choice = home.best.choice
    assert (choice.setting_a, choice.house_limit) == (32.0, True)
    assert 60 <= home.worked()[0].design.supply.carried.limit_a <= 80


def test_sources_nobody_told_of_run_their_own_tests() -> None:
    # 32 A on the line is not the 16 A class: the larger flow, and the stricter of the two holds
    untold = {f"sources.{each}.told_operator": False for each in ("solar", "battery")}
    kept = journey("larkspit-rise", profile="demo", change=adding(untold))
    design = kept.worked()[0].design
    generation = design.supply.generation
    assert sum(generation.line_a) == pytest.approx(32)
    assert set(generation.untold) == {"solar", "battery"}
    assert generation.outcome is Step.ASK_FIRST
    assert kept.outlook.decision is Decision.ASK_FIRST


def test_the_battery_does_not_take_the_car_for_the_house(home: Journey) -> None:
    order = home.worked()[0].design.circuit.sensors
    assert order.batteries_see_car == ()
    assert order.along.index("the point") < order.along.index("the sensor of battery")
    for option in home.options(tap="main"):
        needed = works(option)
        assert needed >= {"hold-off-battery", "new-board-main"} or not option.sound.always


def test_one_clip_never_serves_two_devices(home: Journey) -> None:
    said = [note.caution for note in home.worked()[0].notes]
    assert any("one clip never serves two devices" in each for each in said)


def test_full_size_without_a_limit_passes_the_fuse(home: Journey) -> None:
    assert (pytest.approx(93.52, rel=SHEET), 80.0) in home.refused(
        "demand ≤ what the supply can carry"
    )


def test_it_is_fed_at_the_meter_side_of_the_batterys_sensor(home: Journey) -> None:
    choice = home.best.choice
    assert (choice.tap, choice.earthing) == ("meter", "pme")
    assert choice.point.detection == "volts window"
    assert choice.point.sensor_input, "its own sensor stands upstream of everything"


def test_nothing_more_goes_on_the_board_that_is_there(home: Journey) -> None:
    # 80 A fuse + 16 A solar + 16 A battery = 112 A on a board rated 100 A
    assert (pytest.approx(112.0), 100.0) in home.refused("fuse + sources ≤ the board's rating")
    for option in home.options(tap="main"):
        assert "new-board-main" in works(option)


def test_a_board_rated_for_fuse_and_sources_may_take_it() -> None:
    larger = journey("larkspit-rise", profile="demo", change=saying({"boards.main.rated_a": 125.0}))
    assert not larger.refused("fuse + sources ≤ the board's rating")
    assert larger.options(tap="main", remedies=set())


@pytest.mark.parametrize(
    ("what", "expected"),
    [
        ("demand now", 61.52),
        ("demand with the point", 93.52),
        ("volts lost", 1.77),
        ("share lost", 0.0077),
        ("lowest volts at the point", 214.43),
        ("loop", 0.212),
        ("kWh a year", 2857),
        ("kWh a day", 7.83),
        ("hours a day", 1.06),
        ("pounds a year at night", 229),
        ("pounds a year by day", 746),
    ],
)
def test_the_figures_are_those_of_the_sheet(
    at_full_size: dict[str, float], what: str, expected: float
) -> None:
    assert at_full_size[what] == pytest.approx(expected, rel=SHEET)


def test_the_loop_limit_of_a_40_a_device_is_the_sheets() -> None:
    # 0.95 × 230 / (5 × 40) = 1.0925, printed 1.09
    from ampwright.standards.wiring.fault import breaker_loop_limit

    assert breaker_loop_limit(0.95, 230.0, 5.0, 40.0) == pytest.approx(1.09, rel=SHEET)


def test_cable_and_device_are_those_of_the_sheet() -> None:
    kept = journey("larkspit-rise", profile="demo")
    design = kept.tried(tap="meter", point="window-lead", setting_a=32.0, remedies=()).design
    cable, device = design.cable, design.device
    assert (cable.family, cable.size_mm2, cable.earth_mm2) == ("sheathed", 6, 6)
    assert cable.length_m == pytest.approx(7)
    assert device.rating_a in (32, 40)
    assert (device.rcd_type, device.rcd_ma, device.breaks_neutral) == ("A", 30, True)
    assert kept.best.choice.point.dc_6ma


def test_a_three_phase_car_takes_7_4_kw_here_and_follows_the_sun_from_1_4() -> None:
    kept = journey("larkspit-rise", profile="demo")
    design = kept.tried(tap="meter", point="window-lead", setting_a=32.0, remedies=()).design
    assert design.use.charging.cars[0].power_kw == pytest.approx(7.4, rel=SHEET)
    least = kept.tried(tap="meter", point="window-lead", setting_a=6.0, remedies=()).design
    assert least.use.charging.offered_kw == pytest.approx(1.38, rel=SHEET)


# What the sheet says of the sun (1,200 kWh not sold and driven instead lose 84 pounds at 15p and
# 8p) and of the night (3 + 16 + 32 = 51 A) has no stage yet.
def test_the_operator_is_asked_because_of_its_threshold(home: Journey) -> None:
    connection = home.worked()[0].design.connection
    assert connection.outcome is Step.ASK_FIRST
    assert connection.rests_on == ()
    assert connection.declared_a > 60
