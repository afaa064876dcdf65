"""Two points under one limit, how long a car pauses, and what each sensor sees."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ampwright.demand.compare import LOGGER, TABLE
from ampwright.demand.household import household_demand
from ampwright.foundations.answers import Unanswered
from ampwright.foundations.checks import Outcome
from ampwright.foundations.quantity import Amperes, Minutes
from ampwright.foundations.working import orphans
from ampwright.supply.headroom import headroom
from ampwright.supply.pauses import pauses
from ampwright.supply.sensors import sensors
from ampwright.supply.sharing import shared_limit

from ..demand.homes import HALF_SPEED, PLAIN, THREE_PHASE, home_of, loads
from .given_basis import BASIS, LEAD

OLD = {**HALF_SPEED, **loads(("old", "charge point", 32.0)), "loads.old.shares_limit": True}


def carried(facts, limited=True, setting=32.0, rating=80.0, documented=False):
    home = home_of(facts, documented=documented)
    basis = BASIS.documented() if documented else BASIS
    now = household_demand(home, basis.book).out.now_a
    sharing = shared_limit(home, basis, now, Amperes(rating), limited, TABLE).out
    return headroom(home, basis, now, Amperes(rating), LEAD, Amperes(setting), limited, sharing, ())


class TestTwoPoints:
    # A house of 37.88 A by the table, as worked home 21, with a point of 32 A there already.
    def test_the_limit_holds_both_and_the_house_stays_under_it(self):
        out = carried(OLD).out
        assert out.sharing.points == ("old",)
        assert (out.limit_a, out.carried_a) == (60.0, (60.0,))
        assert out.with_point_a == pytest.approx((101.88,))

    def test_what_is_left_is_for_both_cars(self):
        out = carried(OLD).out
        assert out.car_a == pytest.approx(22.12)
        assert not out.pauses

    def test_one_that_does_not_follow_stands_in_the_way(self):
        made = carried({**OLD, "loads.old.shares_limit": False})
        assert made.out.sharing.points == ()
        assert made.out.limit_a == 80.0  # 69.88 A by itself passes the firm's 60
        assert made.out.car_a == pytest.approx(10.12)

    def test_below_six_amperes_for_both_they_pause(self):
        facts = {**OLD, "loads.boiler.amps_a": 17.13}
        assert carried(facts).out.pauses
        assert not carried({**OLD, "loads.boiler.amps_a": 17.1}).out.pauses

    def test_a_house_over_the_limit_without_any_car_is_not_cured(self):
        facts = {**OLD, "loads.boiler.amps_a": 30.0}
        made = carried(facts, rating=60.0)
        assert Outcome.FAIL in {check.outcome for check in made.checks}

    def test_without_a_limit_nobody_is_asked_whether_it_follows(self):
        facts = {key: value for key, value in OLD.items() if "shares_limit" not in key}
        assert carried(facts, limited=False, rating=200.0).out.sharing.points == ()
        with pytest.raises(Unanswered, match="shares_limit"):
            carried(facts)

    def test_in_a_measured_peak_nobody_can_tell_it_from_the_house(self):
        made = shared_limit(home_of(OLD), BASIS, (Amperes(90.0),), Amperes(80.0), True, LOGGER)
        assert made.out.points == ()

    def test_where_the_limit_holds_without_it_the_old_one_is_left_alone(self):
        facts = {**OLD, "loads.old.amps_a": 22.0}  # 59.88 A with it
        assert carried(facts).out.sharing.points == ()
        assert carried({**OLD, "loads.old.amps_a": 22.2}).out.sharing.points == ("old",)
        assert carried(facts, rating=59.0).out.sharing.points == ("old",)

    def test_each_line_has_its_own(self):
        facts = {
            **THREE_PHASE, **loads(("old", "charge point", 16.0, "L3")),
            "loads.old.shares_limit": True,
        }  # fmt: skip
        now = (Amperes(34.0), Amperes(50.0), Amperes(61.0))
        made = shared_limit(home_of(facts), BASIS, now, Amperes(80.0), True, TABLE)
        assert made.out.line_a == (0.0, 0.0, 16.0)

    def test_documented_agrees_and_only_the_choices_lack_a_source(self):
        shown, plain = carried(OLD, documented=True).out, carried(OLD).out
        assert (shown.carried_a, shown.car_a) == (plain.carried_a, plain.car_a)
        assert set(map(float, orphans((shown.carried_a, shown.car_a)))) == {32.0, 80.0}


class TestPauses:
    def minutes(self, drawn, limit=60.0, least=6.0):
        return pauses(tuple(map(Amperes, drawn)), Minutes(30.0), Amperes(limit), Amperes(least))

    def test_only_where_less_than_the_least_is_left(self):
        made = self.minutes([54.0, 54.1, 60.0, 70.0, 20.0, 55.0])
        assert (made.paused_min, made.longest_min, made.read_min) == (120.0, 90.0, 180.0)

    def test_never_in_a_quiet_house(self):
        assert self.minutes([10.0] * 48).paused_min == 0.0
        assert self.minutes([]).longest_min == 0.0

    @given(st.lists(st.floats(0.0, 100.0), max_size=60), st.floats(40.0, 80.0))
    def test_a_higher_limit_never_pauses_longer(self, drawn, limit):
        low, high = self.minutes(drawn, limit), self.minutes(drawn, limit + 5.0)
        assert high.paused_min <= low.paused_min
        assert high.longest_min <= high.paused_min <= high.read_min


SUNNY = {
    **PLAIN, "sources.all_listed": True,
    "sources.sun.present": True, "sources.sun.sensor_at": "on the tails",
    "sources.store.present": True, "sources.store.sensor_at": "at the meter",
}  # fmt: skip


class TestSensors:
    def seen(self, facts, lines=(True,), limited=True, tap="meter"):
        return sensors(home_of(facts), lines, limited, tap).out.sensors

    def test_the_points_own_sees_every_load_net_of_the_sources(self):
        # Worked home 3: the point's own sensor sits upstream of everything.
        own = self.seen(SUNNY)[0]
        assert (own.of, own.conductor) == ("the point", "the L1 tail")
        assert own.sees == ("the house", "the point")
        assert set(own.net_of) == {"sun", "store"}
        assert "not the board" in own.words

    def test_without_sources_it_guards_the_board_too(self):
        (own,) = self.seen({**PLAIN, "sources.all_listed": True})
        assert own.net_of == ()
        assert "the board behind it" in own.words

    def test_without_a_limit_the_point_has_none(self):
        assert self.seen({**PLAIN, "sources.all_listed": True}, limited=False) == ()

    @pytest.mark.parametrize(
        ("tap", "sun", "store"), [("meter", False, True), ("main", True, True)]
    )
    def test_whose_sensor_takes_the_car_for_the_house(self, tap, sun, store):
        # Worked home 3: tapped on the meter side of the battery's sensor, it does not see the car.
        found = {each.of: each for each in self.seen(SUNNY, tap=tap)}
        assert ("the point" in found["sun"].sees) is sun
        assert ("the point" in found["store"].sees) is store

    def test_one_on_each_line_the_point_charges_on(self):
        facts = {**THREE_PHASE, "sources.all_listed": True}
        assert len(self.seen(facts, (True, True, True))) == 3
        (only,) = self.seen(facts, (False, False, True))
        assert only.conductor == "the L3 tail"

    def test_a_source_whose_sensor_nobody_noted_is_looked_at(self):
        facts = {**PLAIN, "sources.all_listed": True, "sources.sun.present": True}
        assert "before the tap is chosen" in self.seen(facts)[1].words

    def test_one_without_a_sensor_has_none(self):
        facts = {**SUNNY, "sources.sun.sensor_at": "none"}
        assert [each.of for each in self.seen(facts)] == ["the point", "store"]

    def test_each_is_put_in_words_for_the_one_who_fits_it(self):
        made = sensors(home_of(SUNNY), (True,), True, "meter")
        said = [note.says for note in made.notes]
        assert len(said) == len(made.out.sensors)
        assert not any(note.caution for note in made.notes)
        assert said[0].startswith("sensor of the point on the L1 tail, between the meter and")
        assert "sees the house and the point, less what comes from" in said[0]
        assert "arrow from the network to the house, proved with a known load" in said[1]
        assert not any("less what comes from" in each for each in said[1:])
