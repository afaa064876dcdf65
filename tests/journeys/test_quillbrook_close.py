"""A plain semi whose water pipe lost its bond: the answers of a careful author, worked by hand.

The expected figures are the answer sheet of the worked home this example tells, worked with a
pocket calculator from the sums it names: demand by the household table of an online
electricians' handbook (Table 6.2), volts lost from mV/A/m, loop with resistances of IEC 60228
times 1.20, the loop limit as 0.95 × 230 / (5 In). Tolerance 1.2 per cent, as the sheet says.
"""

from __future__ import annotations

import pytest

from ampwright.foundations.checks import Outcome
from ampwright.options.supply_side import Decision
from ampwright.standards.network.connection import Step
from tests.journeys.homes import Journey, journey, saying, without

SHEET = 0.012

SOCKETS = "loads.kitchen-sockets.amps_a"
BOND = ("services.water.bond_mm2", "services.water.bond_connected")


@pytest.fixture(scope="module")
def home() -> Journey:
    return journey("quillbrook-close")


def test_the_decision_is_certain_and_no_limit_is_needed(home: Journey) -> None:
    assert home.outlook.decision is Decision.FIT_THEN_TELL
    assert home.outlook.decisions == {Decision.FIT_THEN_TELL: 1.0}
    assert home.outlook.deciding == ()
    assert home.outlook.lacking == ()


def test_a_full_size_point_is_fitted_with_the_bond_as_work(home: Journey) -> None:
    choice = home.best.choice
    assert (choice.setting_a, choice.house_limit, choice.earthing) == (32.0, False, "pme")
    assert [remedy.slug for remedy in choice.remedies] == ["bond-water"]
    assert choice.point.detection == "volts window"
    assert home.best.sound.always


@pytest.mark.parametrize(
    ("what", "expected"),
    [
        ("demand now", 21.65),
        ("demand with the point", 53.65),
        ("volts lost", 1.87),
        ("share lost", 0.0081),
        ("lowest volts at the point", 214.33),
        ("loop", 0.281),
        ("kWh a year", 2540),
        ("kWh a day", 6.96),
        ("hours a day at full rate", 0.95),
        ("pounds a year at night", 203),
        ("pounds a year by day", 663),
    ],
)
def test_the_figures_are_those_of_the_sheet(home: Journey, what: str, expected: float) -> None:
    design = home.worked()[0].design
    figures = {
        "demand now": design.supply.demand.now_a[0],
        "demand with the point": design.supply.carried.with_point_a[0],
        "volts lost": design.cable.drop_v,
        "share lost": design.cable.drop_share,
        "lowest volts at the point": design.volts.lowest_v,
        "loop": design.cable.zs_ohm,
        "kWh a year": design.use.need.kwh_a_year,
        "kWh a day": design.use.need.kwh_a_day,
        "hours a day at full rate": design.use.charging.hours_a_day,
        "pounds a year at night": design.use.cost.at_night_p / 100,
        "pounds a year by day": design.use.cost.by_day_p / 100,
    }
    assert figures[what] == pytest.approx(expected, rel=SHEET)


def test_cable_device_and_notice_are_those_of_the_sheet(home: Journey) -> None:
    design = home.worked()[0].design
    assert (design.cable.family, design.cable.size_mm2, design.cable.earth_mm2) == ("flat", 6, 2.5)
    assert design.cable.length_m == 8
    assert design.device.rating_a in (32, 40)
    assert (design.device.rcd_type, design.device.rcd_ma) == ("A", 30)
    assert design.device.breaks_neutral
    assert home.best.choice.point.dc_6ma
    assert design.connection.outcome is Step.TELL_AFTER
    assert design.connection.notice_days == 28


def test_the_loop_limit_of_a_40_a_device_is_the_sheets() -> None:
    # 0.95 × 230 / (5 × 40) = 1.0925, printed 1.09
    from ampwright.standards.wiring.fault import breaker_loop_limit

    assert breaker_loop_limit(0.95, 230.0, 5.0, 40.0) == pytest.approx(1.09, rel=SHEET)


def test_the_bond_is_10_mm2_and_the_whole_way_long(home: Journey) -> None:
    (bond,) = home.best.choice.remedies
    assert dict(bond.changes) == {BOND[0]: 10.0, BOND[1]: True}
    assert any("10 mm²" in part.what and part.quantity == 9.0 for part in bond.parts)


def test_never_fitted_with_the_water_unbonded(home: Journey) -> None:
    for option in home.outlook.searched.options:
        assert "bond-water" in {remedy.slug for remedy in option.choice.remedies}


def test_with_the_bond_there_the_remedy_is_gone() -> None:
    mended = journey("quillbrook-close", change=saying({BOND[0]: 10.0, BOND[1]: True}))  # fmt: skip
    assert mended.best.choice.remedies == ()
    assert mended.outlook.decision is Decision.FIT_THEN_TELL


def test_with_the_bond_facts_withdrawn_the_remedy_is_no_longer_part_of_every_option() -> None:
    # Nobody has looked: the bond may be there, and then the same design needs no work on it.
    unasked = journey("quillbrook-close", change=without(*BOND))
    assert set(BOND) <= set(unasked.outlook.ranking.facts)
    for fixed in unasked.each(*BOND):
        best = unasked.outlook.ranking.best_in(fixed)
        assert best is not None
        bonded = fixed[BOND[0]] >= 10 and fixed[BOND[1]]  # type: ignore[operator]
        assert [r.slug for r in best.choice.remedies] == ([] if bonded else ["bond-water"])


def test_a_4_mm2_bond_is_not_enough_on_pme() -> None:
    thin = journey("quillbrook-close", change=saying({BOND[0]: 4.0, BOND[1]: True}))  # fmt: skip
    assert [r.slug for r in thin.best.choice.remedies] == ["bond-water"]


def test_kitchen_sockets_over_21_35_a_flip_it_to_asking_first() -> None:
    # 1.65 + s + 0.4 × 10 + 1 + 32 = 60 where s = 21.35
    under = journey("quillbrook-close", change=saying({SOCKETS: 21.35}))
    over = journey("quillbrook-close", change=saying({SOCKETS: 21.4}))
    full = [o for o in over.outlook.searched.options if o.choice.setting_a == 32.0]
    assert under.outlook.decision is Decision.FIT_THEN_TELL
    assert all(
        o.design.decision.only is Decision.ASK_FIRST for o in full if not o.choice.house_limit
    )


def test_every_choice_is_an_option_or_counted_as_rejected(home: Journey) -> None:
    found = home.outlook.searched
    rejected = sum(rejection.stands_for for rejection in found.rejections)
    assert len(found.options) + rejected == found.considered


def test_the_documented_run_gives_the_explored_numbers(home: Journey) -> None:
    for option in home.outlook.ranking.options[:25]:
        worked, _ = home.worked(option)
        assert worked.outcome is Outcome.PASS
        assert worked.design.cable.zs_ohm == option.design.cable.only.zs_ohm
        assert worked.design.volts.lowest_v == option.design.volts.only.lowest_v
        assert worked.design.labour.usual_min == option.design.labour.only.usual_min
