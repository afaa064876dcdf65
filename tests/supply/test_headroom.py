"""The room for a point under what the supply carries, with and without a house limit."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ampwright.demand.compare import TABLE
from ampwright.demand.household import household_demand
from ampwright.demand.moving import load_moves
from ampwright.foundations.checks import Outcome, verdict
from ampwright.foundations.quantity import Amperes
from ampwright.foundations.working import orphans
from ampwright.supply.headroom import headroom, limiter_holds
from ampwright.supply.larger import larger_fuse
from ampwright.supply.sharing import Sharing

from ..demand.homes import HALF_SPEED, PLAIN, THREE_PHASE, WEAK_LINE, home_of
from .given_basis import BARE, BASIS, CARRIES_ON, LEAD, OPEN_SETTING, THREE

LARGEST = {"supply.main_fuse_a": 100.0}
ONE = home_of({"supply.phases": 1, **LARGEST})
THREE_LINES = home_of({"supply.phases": 3, **LARGEST})
ALONE = {1: Sharing((), (Amperes(0.0),)), 3: Sharing((), (Amperes(0.0),) * 3)}


def made(
    now_a, setting_a, rating_a=80.0, point=LEAD, limited=False, basis=BASIS, moves=(), shared=None
):
    home = ONE if len(now_a) == 1 else THREE_LINES
    return headroom(
        home, basis, tuple(map(Amperes, now_a)), Amperes(rating_a), point, Amperes(setting_a),
        limited, shared or ALONE[len(now_a)], moves,
    )  # fmt: skip


def failed(result):
    return [check.requirement.id for check in result.checks if check.outcome is Outcome.FAIL]


class TestPhaseRotation:
    # BS 7671, 643.9: phase sequence is verified on three-phase work; handbooks of testing list it
    # among the functional tests of a three-phase point.
    def said(self, now_a, point):
        return [note.caution for note in made(now_a, 16.0, point=point).notes]

    def test_it_is_noted_and_proved_wherever_there_are_three_lines(self):
        (words,) = self.said((10.0, 10.0, 10.0), LEAD)
        assert "note the phase rotation at the meter before anything is dead" in words
        assert "at the point" not in words

    def test_at_a_point_on_three_lines_it_is_proved_too(self):
        (words,) = self.said((10.0, 10.0, 10.0), THREE)
        assert "prove it at the point too" in words

    def test_one_line_has_none(self):
        assert self.said((10.0,), LEAD) == []


class TestWorkedHomes:
    @pytest.mark.parametrize(
        ("facts", "setting", "point", "answer"),
        [
            (PLAIN, 32.0, LEAD, (53.65,)),
            (HALF_SPEED, 16.0, LEAD, (53.88,)),
            (HALF_SPEED, 32.0, LEAD, (69.88,)),
            (WEAK_LINE, 16.0, LEAD, (52.88,)),
            (WEAK_LINE, 32.0, LEAD, (68.88,)),
            (THREE_PHASE, 16.0, THREE, (49.64, 65.6, 32.98)),
            ({**THREE_PHASE, "loads.immersion.phase": "L3"}, 16.0, THREE, (49.64, 52.6, 45.98)),
            ({**THREE_PHASE, "loads.immersion.phase": "L3"}, 32.0, THREE, (65.64, 68.6, 61.98)),
        ],
    )
    def test_demand_with_the_point(self, facts, setting, point, answer):
        now = household_demand(home_of(facts), BASIS.book).out.now_a
        assert made(now, setting, point=point).out.with_point_a == pytest.approx(answer, abs=0.005)

    def test_what_passes_sixty_may_still_fit(self):
        # Worked home 9: 65.6 A fits the 80 A fuse and passes the operator's 60.
        result = made((42.16, 49.6, 41.64), 16.0, point=THREE)
        assert max(result.out.carried_a) == pytest.approx(65.6)
        assert verdict(result.checks) is Outcome.PASS


class TestLines:
    def test_a_point_for_one_phase_goes_where_least_is_carried(self):
        assert made((33.64, 49.6, 16.98), 32.0).out.lines == (False, False, True)

    def test_a_point_for_three_phases_needs_three(self):
        assert failed(made((20.0,), 16.0, point=THREE)) == ["supply_has_lines"]


class TestFits:
    @pytest.mark.parametrize(("now", "fails"), [(48.0, []), (48.01, ["supply_carries_demand"])])
    def test_at_the_rating_and_just_over(self, now, fails):
        assert failed(made((now,), 32.0)) == fails

    @pytest.mark.parametrize(("now", "fits"), [(48.0, True), (48.01, False)])
    def test_whether_it_would_without_a_limit(self, now, fits):
        assert made((now,), 32.0, limited=True).out.fits_unlimited is fits

    def test_the_room_before_the_point(self):
        # Worked home 8 with the immersion left on L2: 65.6 A fits an 80 A fuse at 16 A a line.
        assert made((33.64, 49.6, 16.98), 16.0, point=THREE).out.fits_a == pytest.approx(
            (46.36, 30.4, 63.02)
        )


class TestLimit:
    def test_a_limit_holds_the_house_to_the_firms_figure(self):
        result = made((37.88,), 32.0, limited=True)
        assert result.out.carried_a == (60.0,)
        assert result.out.limit_a == 60.0
        assert result.out.fits_unlimited
        assert verdict(result.checks) is Outcome.PASS

    def test_a_smaller_supply_sets_the_limit_itself(self):
        result = made((37.88,), 32.0, rating_a=45.0, limited=True)
        assert result.out.limit_a == 45.0
        assert not result.out.fits_unlimited
        assert verdict(result.checks) is Outcome.PASS

    def test_a_supply_already_beaten_is_not_cured(self):
        # Worked home 3: 61.52 A without the car.
        result = made((61.52,), 32.0, rating_a=60.0, limited=True)
        assert failed(result) == ["supply_carries_demand", "house_under_limit"]
        assert result.out.carried_a == pytest.approx((93.52,))

    @pytest.mark.parametrize(
        ("point", "why"),
        [
            (OPEN_SETTING, ["limiter_locked"]),
            (CARRIES_ON, ["limiter_fails_safe"]),
            (BARE, ["point_senses_house", "limiter_fails_safe"]),
            (replace(LEAD, falls_to_a=6.0), []),
            (replace(LEAD, falls_to_a=6.1), ["limiter_fails_safe"]),
        ],
    )
    def test_a_limiter_that_may_not_be_relied_on(self, point, why):
        assert failed(made((37.88,), 32.0, point=point, limited=True)) == why

    @pytest.mark.parametrize(("now", "pauses"), [(54.0, False), (54.01, True)])
    def test_below_six_amperes_of_room_the_car_pauses(self, now, pauses):
        result = made((now,), 32.0, limited=True)
        assert result.out.pauses is pauses
        assert verdict(result.checks) is Outcome.PASS

    @pytest.mark.parametrize(("now", "carried"), [(60.0, 60.0), (60.01, 92.01)])
    def test_a_house_just_at_the_limit_is_held_and_one_over_it_is_not(self, now, carried):
        assert made((now,), 32.0, rating_a=100.0, limited=True).out.carried_a == pytest.approx(
            (carried,)
        )

    def test_a_house_held_very_low_is_not_worth_it(self):
        assert failed(made((20.0,), 16.0, rating_a=39.0, limited=True)) == ["limit_worth_setting"]


class TestMoving:
    # Worked home 8 at 31 A: L2 would carry 80.6 A behind an 80 A fuse; by the sheet's sums the
    # immersion on L3 leaves 64.64, 67.6 and 60.98 A.
    MOVES = load_moves(home_of(THREE_PHASE), BASIS, TABLE).out.each
    NOW = household_demand(home_of(THREE_PHASE), BASIS.book).out.now_a

    def test_what_would_not_fit_is_mended_by_moving_one_load(self):
        result = made(self.NOW, 31.0, point=THREE, moves=self.MOVES)
        assert failed(result) == ["supply_carries_demand"]
        (remedy,) = result.checks[1].remedies
        assert remedy.slug == "move-immersion-to-L3"

    def test_laid_over_the_home_it_holds(self):
        after = {**THREE_PHASE, "loads.immersion.phase": "L3"}
        now = household_demand(home_of(after), BASIS.book).out.now_a
        assert made(now, 31.0, point=THREE).out.carried_a == pytest.approx((64.64, 67.6, 60.98))

    def test_what_fits_is_left_alone(self):
        result = made(self.NOW, 30.0, point=THREE, moves=self.MOVES)
        assert not any(check.remedies for check in result.checks)

    def test_no_move_helps_where_all_lines_together_are_too_much(self):
        # 100.22 A over three lines leave each 33.4 A; with 32 A more none is under 60 A.
        result = made(self.NOW, 32.0, 60.0, point=THREE, moves=self.MOVES)
        assert failed(result)
        assert not any(check.remedies for check in result.checks)

    def test_a_house_over_the_firms_limit_by_itself_is_held_to_what_the_supply_carries(self):
        # The house alone passes 60 A on L2; at 80 A the limiter guards the fuse.
        heavy = home_of({**THREE_PHASE, "loads.immersion.amps_a": 25.0})
        now = household_demand(heavy, BASIS.book).out.now_a
        assert max(now) > 60.0
        result = made(now, 32.0, point=THREE, limited=True)
        assert failed(result) == []
        assert result.out.limit_a == 80.0
        assert max(result.out.carried_a) == pytest.approx(80.0)


amps = st.floats(0.0, 120.0)


@given(amps, st.floats(6.0, 32.0), st.sampled_from([45.0, 60.0, 80.0, 100.0]), st.booleans())
def test_a_limit_holds_a_house_that_is_under_it_and_never_adds(now, setting, rating, limited):
    out = made((now,), setting, rating, limited=limited).out
    free = made((now,), setting, rating).out
    assert out.carried_a[0] <= free.carried_a[0]
    if limited and now <= out.limit_a:
        assert out.carried_a[0] <= out.limit_a <= rating


def test_documented_agrees_and_every_number_has_a_source():
    basis = BASIS.documented()
    home = home_of(THREE_PHASE, documented=True)
    now = household_demand(home, basis.book).out.now_a
    rating = Amperes(80.0)
    plain = household_demand(home_of(THREE_PHASE), BASIS.book).out.now_a
    shown = headroom(home, basis, now, rating, THREE, Amperes(16.0), True, ALONE[3], ()).out
    assert shown == made(plain, 16.0, point=THREE, limited=True).out
    assert set(map(float, orphans(shown.carried_a))) == {16.0, 80.0}  # the choice and the rating


# a limiting scheme is back within its limit after 60 s at most (EREC G100, as told)
@pytest.mark.parametrize(("seconds", "says"), [(60.0, []), (60.1, ["limiter_quick_enough"])])
def test_a_limiter_is_quick(seconds, says):
    point = replace(LEAD, id="slow", limits_within_s=seconds)
    assert failed(made((40.0,), 32.0, point=point, limited=True)) == says
    assert limiter_holds(BASIS, point) is (not says)


class TestLargerFuse:
    # The operators' tests (EREC-based tell-or-ask rules, row D06): where the demand on a line
    # passes the cut-out fuse the network is asked, and the supply is inadequate until it is larger.
    # Fuses of household cut-outs go up to 100 A (BS 88-3, BS 1361): common practice.
    def work(self, now_a, setting_a, fuse_a=60.0, point=LEAD, **more):
        home = home_of({"supply.phases": len(now_a), "supply.main_fuse_a": fuse_a})
        result = headroom(
            home, BASIS, tuple(map(Amperes, now_a)), Amperes(fuse_a), point, Amperes(setting_a),
            more.get("limited", False), ALONE[len(now_a)], more.get("moves", ()),
        )  # fmt: skip
        return {remedy.slug for check in result.checks for remedy in check.remedies}

    @pytest.mark.parametrize(
        ("now", "setting", "slugs"),
        [
            (68.0, 32.0, {"fuse-100"}),  # 68 + 32 = 100
            (68.1, 32.0, set()),  # more than the largest carries
            (61.0, 16.0, {"fuse-80"}),  # 77 A
            (54.0, 32.0, set()),  # 6 A are left: a lower setting or a limit fits
            (54.1, 32.0, {"fuse-100"}),  # not even the least current fits
        ],
    )
    def test_the_least_that_carries_house_and_car(self, now, setting, slugs):
        assert self.work((now,), setting) == slugs

    def test_under_a_limit_the_car_gives_way(self):
        assert self.work((70.0,), 32.0, limited=True) == {"fuse-80"}

    def test_a_line_beaten_beside_that_of_the_car_counts(self):
        assert self.work((62.0, 10.0, 10.0), 32.0) == {"fuse-63"}

    def test_the_network_does_it(self):
        home = home_of({"supply.phases": 1, "supply.main_fuse_a": 60.0})
        (work,) = larger_fuse(home, BASIS, lambda size_a: size_a >= 100)
        assert work.changes == (("supply.main_fuse_a", 100.0),)
        assert work.by == "the network operator"
        assert larger_fuse(home, BASIS, lambda _: False) == ()
        (work,) = larger_fuse(home, BASIS, lambda size_a: size_a >= 60)
        assert work.slug == "fuse-63"  # not the one that is there
