"""What options are compared on beside price, wait and speed; and what the customer said matters."""

from __future__ import annotations

import pytest
from tests.design.homes import SEMI, basis, changed, plain
from tests.journeys.homes import Journey, adding, journey, without

from ampwright.foundations.answers import Missing, Unanswered
from ampwright.foundations.quantity import Amperes
from ampwright.foundations.remedies import Remedy
from ampwright.options.gates import Awaits, work_of_others
from ampwright.options.supply_side import Decision, held_decision
from ampwright.options.weighing import cramped, cramped_under_limit, seen, wait
from ampwright.standards.network.connection import Step


@pytest.mark.parametrize(("street", "worse"), [(True, 1), (False, 0)])
def test_a_point_that_the_street_sees_is_seen(street, worse) -> None:
    home = plain(changed(SEMI, places__window__street_view=street))
    assert seen(home, "window").out == worse


def test_where_nobody_has_said_it_cannot_be_said() -> None:
    with pytest.raises(Unanswered):
        seen(plain(SEMI), "window")


# Further loads of 16 A each: a heat pump, or a second car at half speed.
@pytest.mark.parametrize(
    ("carried_a", "refused"),
    [(48.0, 0), (48.1, 1), (53.65, 1), (64.0, 1), (64.1, 2), (80.0, 2)],
)
def test_a_supply_of_80_amperes_has_room_for_as_many(carried_a, refused) -> None:
    made = cramped(plain(SEMI), basis(), (Amperes(20.0), Amperes(carried_a)), Amperes(80.0))
    assert made.out == refused


@pytest.mark.parametrize(("car_a", "refused"), [(38.0, 0), (37.9, 1), (22.0, 1), (21.9, 2)])
def test_under_a_limit_the_car_gives_way_down_to_six_amperes(car_a, refused) -> None:
    made = cramped_under_limit(plain(SEMI), basis(), Amperes(car_a), Amperes(6.0))
    assert made.out == refused


def stated(priority: str, name: str = "tarrant-rise") -> Journey:
    bare, added = without("wishes.priority"), adding({"wishes.priority": priority})
    return journey(name, profile="demo", change=lambda records: added(bare(records)))


def figure(made: Journey, name: str) -> float:
    (value,) = {
        float(each)
        for each in getattr(made.best.design.criteria, name).values
        if not isinstance(each, Missing)
    }
    return value


def test_who_wants_speed_is_led_to_the_faster_setting_that_must_be_asked_for() -> None:
    # The home where half speed is enough: 3.7 kW told after costs least, 7.4 kW must be asked.
    usual, fast = journey("tarrant-rise", profile="demo"), stated("speed")
    assert figure(fast, "slowness_kw") == pytest.approx(-7.36)
    assert figure(fast, "slowness_kw") < figure(usual, "slowness_kw")
    assert stated("none stated").best.id == usual.best.id
    assert figure(stated("room to grow"), "cramped") <= figure(usual, "cramped")


def test_who_wants_the_price_is_led_to_the_cheapest_that_covers_the_need() -> None:
    cheap = stated("price", "quillbrook-close")
    covering = [o for o in cheap.options() if o.design.criteria.uncovered.only == 0]
    least = min(option.design.price.only.total.usual_p for option in covering)
    assert cheap.best.design.price.only.total.usual_p == least
    usual = journey("quillbrook-close", profile="demo").best
    assert least < usual.design.price.only.total.usual_p  # slower than was asked for


def test_options_that_differ_only_in_room_stand_beside_each_other() -> None:
    made = journey("quillbrook-close")
    front = {(o.choice.setting_a, o.choice.house_limit) for o in made.outlook.ranking.front}
    assert len(front) == len(made.outlook.ranking.front) > 1


FUSE, TAILS = (
    Remedy(slug, "", (), by=by)
    for slug, by in (("fuse-100", "the network operator"), ("new-tails", "the supplier"))
)
BOND, ISOLATOR = Remedy("bond-gas", "", ()), Remedy("isolator", "", (), by="the supplier")


@pytest.mark.parametrize(
    ("work", "awaits"),
    [
        ((), Awaits.NOTHING),
        ((BOND, ISOLATOR), Awaits.NOTHING),  # a switch by others holds up the day alone
        ((BOND, FUSE), Awaits.ANSWER),
        ((FUSE, TAILS), Awaits.OTHERS),
    ],
)
def test_what_the_work_of_others_makes_the_job_await(work, awaits) -> None:
    assert work_of_others(plain(SEMI), work).out is awaits


@pytest.mark.parametrize(
    ("decision", "awaits", "held"),
    [
        (Decision.FIT_THEN_TELL, Awaits.NOTHING, Decision.FIT_THEN_TELL),
        (Decision.FIT_WITH_LIMIT, Awaits.ANSWER, Decision.ASK_FIRST),
        (Decision.ASK_FIRST, Awaits.OTHERS, Decision.STOP_UNTIL),
        (Decision.STOP_UNTIL, Awaits.ANSWER, Decision.STOP_UNTIL),
    ],
)
def test_a_fuse_is_asked_for_and_work_of_others_stops(decision, awaits, held) -> None:
    assert held_decision(plain(SEMI), decision, awaits).out is held


@pytest.mark.parametrize(
    ("outcome", "strained", "awaits", "longer_than"),
    [
        (Step.ASK_FIRST, False, Awaits.NOTHING, (Step.TELL_AFTER, False, Awaits.NOTHING)),
        (Step.TELL_AFTER, False, Awaits.ANSWER, (Step.ASK_FIRST, False, Awaits.NOTHING)),
        (Step.ASK_FIRST, True, Awaits.NOTHING, (Step.ASK_FIRST, False, Awaits.NOTHING)),
        (Step.TELL_AFTER, False, Awaits.OTHERS, (Step.ASK_FIRST, True, Awaits.ANSWER)),
        (Step.STOP, False, Awaits.ANSWER, (Step.ASK_FIRST, True, Awaits.ANSWER)),
    ],
)
def test_who_waits_longer(outcome, strained, awaits, longer_than) -> None:
    home = plain(SEMI)
    assert wait(home, outcome, strained, awaits).out > wait(home, *longer_than).out
