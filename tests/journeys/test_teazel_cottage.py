"""A listed cottage on a rod: the answers of a careful author, worked by hand.

The expected figures are the answer sheet of the worked home this example tells, worked with a
pocket calculator: demand by the household table of an online electricians' handbook (Table 6.2),
touch voltage as rod times residual current (BS 7671, 411.5.3), two equal rods a rod's length
apart by BS 7430, volts lost from mV/A/m. Tolerance 1.2 per cent, as the sheet says.
"""

from __future__ import annotations

import pytest

from ampwright.foundations.checks import Outcome
from ampwright.options.gates import closed
from ampwright.options.supply_side import Decision
from ampwright.standards.network.connection import Step
from ampwright.standards.wiring.earthing import rod_times_rcd
from tests.journeys.homes import Journey, decisions, figures, journey, saying, works

SHEET = 0.012


@pytest.fixture(scope="module")
def home() -> Journey:
    # The answer leans on a limiter's figure, which this operator takes as the demand.
    return journey("teazel-cottage", profile="demo")


def test_fitted_at_full_size_under_a_limit_on_the_house(home: Journey) -> None:
    choice = home.best.choice
    assert home.outlook.decision is Decision.FIT_WITH_LIMIT
    assert (choice.setting_a, choice.house_limit) == (32.0, True)
    assert (choice.earthing, choice.place, choice.family) == (
        "house rod", "gate-post", "armoured",
    )  # fmt: skip
    design = home.worked()[0].design
    assert 50 <= design.supply.carried.limit_a <= 60
    assert design.connection.outcome is Step.TELL_AFTER
    assert design.connection.notice_days == 28
    assert design.connection.needs_limit


def test_with_the_operators_reading_not_known_both_branches_stand() -> None:
    unasked = journey("teazel-cottage", profile="neutral")
    assert unasked.outlook.decision is Decision.UNDETERMINED
    assert "operator.counts_limiter" in unasked.outlook.deciding
    (full, *_) = unasked.options(setting_a=32.0, house_limit=True, tap="meter")
    assert decisions(full) == {Decision.FIT_WITH_LIMIT, Decision.ASK_FIRST}


def test_no_option_leaves_the_rod_as_it_is(home: Journey) -> None:
    # 182 Ω in wet ground passes 200 Ω in summer: another beside it, or the same driven deeper
    for option in home.outlook.searched.options:
        assert {"second-rod", "deeper-rod"} & works(option)


def test_a_second_rod_a_rods_length_apart_gives_106_to_108_ohms(home: Journey) -> None:
    joined_ohm = home.tried(tap="meter", remedies=("second-rod",)).design.earth.electrode_ohm
    assert 106 * (1 - SHEET) <= joined_ohm <= 108 * (1 + SHEET)


def test_a_second_rod_needs_room_and_where_there_is_none_the_first_goes_deeper(
    home: Journey,
) -> None:
    for fixed in home.each("earthing.second_electrode_room"):
        rods = {
            tuple(remedy.slug for remedy in option.choice.remedies)
            for option in home.options(setting_a=32.0, house_limit=True, tap="meter")
            if option.sound.in_home(fixed) is Outcome.PASS
        }
        with_room = {("second-rod",), ("deeper-rod",)}
        assert rods == (with_room if fixed["earthing.second_electrode_room"] else {("deeper-rod",)})


def test_the_touch_voltages_of_the_rod_as_it_is(home: Journey) -> None:
    tried = home.tried(remedies=()).design
    assert tried.earth.touch_v == pytest.approx(5.46, rel=SHEET)
    assert rod_times_rcd(182.0, 0.1) == pytest.approx(18.2, rel=SHEET)
    assert home.basis.rules.aim_rod_ohm == 100


# The sheet changes the front device to Type A ahead of both boards. With a board of its own at
# the meter the point does not hang on that device, which the sheet calls sound too.
def test_a_plain_wave_never_stands_in_front_of_the_point(home: Journey) -> None:
    # Either it has its own board ahead of the old device, or that device goes.
    assert home.best.choice.tap == "meter"
    for option in home.options(tap="main"):
        assert "front-rcd-main" in works(option)
    for option in home.outlook.searched.options:
        assert option.design.board.front_rcd.values != ("AC",)


def test_nothing_is_booked_before_the_planning_office_has_answered(home: Journey) -> None:
    gates = {gate.slug: always for gate, always in closed(home.best.design.gates)}
    assert gates["listed"], "whatever is still open"


def test_a_house_that_is_not_listed_has_no_such_gate() -> None:
    plain = journey(
        "teazel-cottage", profile="demo", change=saying({"property.listed_building": False})
    )
    assert "listed" not in {gate.slug for gate, _ in closed(plain.best.design.gates)}


def test_the_residual_current_device_and_not_the_breaker_opens(home: Journey) -> None:
    design = home.worked()[0].design
    device = design.device
    assert device.rating_a in (32, 40)
    assert (device.rcd_type, device.rcd_ma, device.breaks_neutral) == ("A", 30, True)
    assert not device.rcd_in_point
    assert design.cable.zs_limit_ohm == pytest.approx(50 / 0.03, rel=SHEET)


def test_the_cable_is_that_of_the_sheet(home: Journey) -> None:
    cable = home.worked()[0].design.cable
    assert (cable.family, cable.cores, cable.size_mm2, cable.earth_mm2) == ("armoured", 3, 6, 6)
    assert cable.length_m == 17


def test_its_own_board_brings_surge_protection_against_the_overhead_line(home: Journey) -> None:
    small = {each.id: each for each in home.basis.catalogue.boards}
    assert small[home.worked()[0].design.board.board].surge_protection


@pytest.mark.parametrize(
    ("what", "expected"),
    [
        ("demand now", 48.24),
        ("demand with the point", 80.24),
        ("left for the car", 11.8),
        ("volts lost", 4.30),
        ("share lost", 0.0187),
        ("lowest volts at the point", 211.90),
        ("kWh a year", 3175),
        ("kWh a day", 8.70),
        ("hours a day", 1.18),
        ("pounds a year at night", 254),
        ("pounds a year by day", 829),
    ],
)
def test_the_figures_are_those_of_the_sheet(home: Journey, what: str, expected: float) -> None:
    assert figures(home.worked()[0])[what] == pytest.approx(expected, rel=SHEET)
