"""What turns up every month, each in a home of its own: a decision, or a question with a name.

The homes are invented and worked by hand with a pocket calculator; the sums stand at the head of
each file. Sources: demand by the household table of an online electricians' handbook (Table 6.2);
capacity, volts lost and resistance by the tables that reproduce BS 7671 and IEC 60228; 216.2 to
253 V by the Electricity Safety, Quality and Continuity Regulations 2002, reg. 27; whom to tell by
the lists of distributor ids. Tolerance 1.2 per cent, as the worked homes have it; amperes to the
digit.
"""

from __future__ import annotations

import pytest

from ampwright.foundations.checks import Outcome
from ampwright.foundations.stages import cautions as cautions_in
from ampwright.options.supply_side import Decision
from tests.journeys.homes import Journey, decisions, figures, journey, saying, works

SHEET = 0.012


def at(name: str) -> Journey:
    return journey(name, profile="demo")


def cautions(found: Journey) -> str:
    worked = found.worked()[0]
    return " ".join(cautions_in(worked.checks, worked.notes))


def ruled_out_by(found: Journey) -> set[str]:
    return {reason.requirement.id for reason in found.outlook.reasons}


# The sums at the head of each file: the decision, amperes without and with the car where the
# first choice is what was wished for.
HOMES = {
    "kestrel-mead": (Decision.FIT_THEN_TELL, 20.98, 52.98),
    "tallow-row": (Decision.STOP_UNTIL, 48.24, 80.24),
    "byre-bungalow": (Decision.ASK_FIRST, 66.22, 98.22),
    "marl-house": (Decision.FIT_WITH_LIMIT, 47.64, 79.64),
    "cinder-lane": (Decision.FIT_THEN_TELL, 21.98, 53.98),
    "weir-barn": (Decision.FIT_THEN_TELL, (21.98, 16.6, 19.0), (37.98, 32.6, 35.0)),
}


@pytest.mark.parametrize(("name", "expected"), HOMES.items())
def test_decision_and_demand_are_those_at_the_head_of_the_file(
    name: str, expected: tuple[Decision, object, object]
) -> None:
    decision, now, with_point = expected
    found = at(name)
    assert found.outlook.decision is decision
    worked = figures(found.worked()[0])
    assert worked["demand now"] == pytest.approx(now, abs=0.005)
    assert worked["demand with the point"] == pytest.approx(with_point, abs=0.005)


class TestANewEstate:
    NAME = "kestrel-mead"

    def test_the_independent_operator_is_told_and_who_feeds_it_is_asked(self) -> None:
        told = at(self.NAME).worked()[0].design.supply.told
        assert (told.kind, told.area) == ("independent operator", "anywhere")
        assert "number 24" in cautions(at(self.NAME))
        assert "which area's operator feeds its network" in cautions(at(self.NAME))

    def test_the_builders_cable_serves_once_it_is_proved(self) -> None:
        found = at(self.NAME)
        assert works(found.best) == {"use-builders"}
        worked = figures(found.worked()[0])
        assert worked["volts lost"] == pytest.approx(3.54, rel=SHEET)
        assert worked["share lost"] == pytest.approx(0.0154, rel=SHEET)
        (on_pme, *_) = found.options(earthing="pme", tap="main", setting_a=32.0)
        assert figures(found.worked(on_pme)[0])["loop"] == pytest.approx(0.303, rel=SHEET)

    def test_a_noon_of_251_v_opens_whatever_watches_a_window(self) -> None:
        found = at(self.NAME)
        assert not found.options(detection="volts window")
        assert "window_held_high" in ruled_out_by(found)

    def test_a_noon_alone_says_nothing_of_tea_time(self) -> None:
        # the legal floor stands in: 216.2 − 3.54 = 212.7 V at the point
        volts = at(self.NAME).worked()[0].design.volts
        assert (volts.read, volts.lowest_v) == (False, pytest.approx(212.66, abs=0.01))

    def test_nothing_of_ours_goes_into_the_cabinet(self) -> None:
        tried = at(self.NAME).tried(tap="meter", remedies=())
        assert any("nothing of ours" in note.caution for note in tried.notes)

    def test_the_board_bears_fuse_and_sun_together(self) -> None:
        (check, *_) = [
            each
            for each in at(self.NAME).worked()[0].checks
            if each.limit == 125 and each.actual is not None
        ]
        assert (check.actual, check.outcome) == (96.0, Outcome.PASS)


class TestALostEarth:
    NAME = "tallow-row"

    def test_every_choice_waits_for_the_network_operator(self) -> None:
        found = at(self.NAME)
        assert found.outlook.searched.options
        for option in found.outlook.searched.options:
            assert "network-earth" in works(option)
            assert decisions(option) == {Decision.STOP_UNTIL}

    def test_the_old_board_is_passed_by_or_replaced(self) -> None:
        for option in at(self.NAME).outlook.searched.options:
            assert option.choice.tap == "meter" or "new-board-main" in works(option)

    def test_held_to_60_a_the_car_is_sure_of_11_76_a(self) -> None:
        assert figures(at(self.NAME).worked()[0])["left for the car"] == pytest.approx(11.76)

    def test_31_a_is_the_most_that_fits_without_a_limit(self) -> None:
        free = at(self.NAME).options(house_limit=False)
        assert max(option.choice.setting_a for option in free) == 31.0

    def test_an_earth_that_is_only_high_is_reported_and_stops_nobody(self) -> None:
        high = journey(self.NAME, profile="demo", change=saying({"supply.ze_ohm": 0.95}))
        assert high.outlook.decision is Decision.FIT_WITH_LIMIT
        assert "report it with the reading" in cautions(high)


class TestStorageHeaters:
    NAME = "byre-bungalow"

    def test_nothing_goes_on_the_night_board(self) -> None:
        found = at(self.NAME)
        assert {option.choice.tap for option in found.outlook.searched.options} == {"main", "meter"}
        assert "board_live" in ruled_out_by(found)

    def test_the_house_passes_60_a_by_itself_so_the_fuse_is_the_limit(self) -> None:
        found = at(self.NAME)
        (limited, *_) = found.options(house_limit=True)
        carried = found.worked(limited)[0].design.supply.carried
        assert carried.limit_a == 80
        assert carried.car_a == pytest.approx(13.78)
        assert not carried.pauses

    def test_without_a_limit_13_a_is_the_most(self) -> None:
        free = at(self.NAME).options(house_limit=False)
        assert max(option.choice.setting_a for option in free) == 13.0
        use = free[0].design.use
        assert float(use.need.kwh_a_year.only) == pytest.approx(1587, rel=SHEET)  # type: ignore[attr-defined]

    def test_bottled_gas_moves_the_point_along(self) -> None:
        for option in at(self.NAME).outlook.searched.options:
            assert "clear-of-gas-side" in works(option)


class TestABatteryAndAnOldPoint:
    NAME = "marl-house"

    def test_the_old_point_goes_and_its_amperes_with_it(self) -> None:
        found = at(self.NAME)
        for option in found.outlook.searched.options:
            assert "take-out-old-point" in works(option)
        stays = journey(self.NAME, profile="demo", change=saying({"loads.old-point.goes": False}))
        assert figures(stays.worked()[0])["demand now"] == pytest.approx(79.64)

    def test_the_point_stays_off_the_side_that_the_battery_keeps_going(self) -> None:
        found = at(self.NAME)
        assert {option.choice.tap for option in found.outlook.searched.options} == {"meter"}
        assert "network's side of the changeover" in cautions(found)

    def test_12_a_is_told_after_without_a_limit_and_turned_up_later(self) -> None:
        found = at(self.NAME)
        (low, *_) = found.options(setting_a=12.0, house_limit=False)
        assert decisions(low) == {Decision.FIT_THEN_TELL}
        assert found.outlook.staged[0].now.choice.setting_a == 12.0

    def test_the_figures_at_the_head_of_the_file(self) -> None:
        worked = figures(at(self.NAME).worked()[0])
        assert worked["left for the car"] == pytest.approx(12.36)
        assert worked["volts lost"] == pytest.approx(2.28, rel=SHEET)
        assert worked["share lost"] == pytest.approx(0.0099, rel=SHEET)

    def test_each_sensor_is_said_in_words(self) -> None:
        said = [note.says for note in at(self.NAME).worked()[0].notes]
        assert any(each.startswith("sensor of the point on the L1 tail") for each in said)
        assert any("sensor of store" in each and "does not see the car" in each for each in said)


class TestAHalfDoneJob:
    NAME = "cinder-lane"

    def test_what_was_left_there_bears_20_a_and_no_more(self) -> None:
        used = at(self.NAME).options(needing="use-half-done")
        assert max(option.choice.setting_a for option in used) == 20.0
        assert "left by another firm: prove it from end to end" in " ".join(
            check.caution for check in at(self.NAME).worked(used[0])[0].checks
        )
        worked = figures(at(self.NAME).worked(used[0])[0])
        assert worked["volts lost"] == pytest.approx(2.34, rel=SHEET)
        assert worked["hours a day"] == pytest.approx(1.51, rel=SHEET)

    def test_full_speed_through_the_insulation_takes_10_mm2(self) -> None:
        (full, *_) = at(self.NAME).options(setting_a=32.0, family="flat", sparing="use-half-done")
        assert at(self.NAME).worked(full)[0].design.cable.size_mm2 == 10

    def test_the_landlord_is_asked_beside_the_network(self) -> None:
        gates = [gate for gate in at(self.NAME).worked()[0].design.gates if gate is not None]
        assert "landlord" in {gate.slug for gate in gates}


class TestThreeLinesLowAtTeaTime:
    NAME = "weir-barn"

    def test_by_night_alone_it_is_told_after_and_at_any_hour_asked_for(self) -> None:
        found = at(self.NAME)
        (night, *_) = found.options(setting_a=16.0, phases=3, hours="night", house_limit=False)
        assert decisions(night) == {Decision.FIT_THEN_TELL}
        (any_hour, *_) = found.options(setting_a=16.0, phases=3, hours="any", house_limit=False)
        assert decisions(any_hour) == {Decision.ASK_FIRST}
        assert "in doubt" in found.worked(any_hour)[0].design.connection.words

    def test_the_volts_at_the_origin_are_those_at_the_head_of_the_file(self) -> None:
        found = at(self.NAME)
        (night, *_) = found.options(setting_a=16.0, phases=3, hours="night")
        origin = found.worked(night)[0].design.supply.origin
        assert (origin.lowest_v, origin.within_law) == (pytest.approx(227.4, abs=0.05), True)
        (any_hour, *_) = found.options(setting_a=16.0, phases=3, hours="any")
        origin = found.worked(any_hour)[0].design.supply.origin
        assert (origin.lowest_v, origin.within_law) == (pytest.approx(212.1, abs=0.05), False)

    def test_rotation_is_proved_and_every_line_is_watched(self) -> None:
        found = at(self.NAME)
        assert "note the phase rotation" in cautions(found)
        for option in found.options(phases=3, earthing="pme"):
            assert option.choice.point.detects_three_phase
