from __future__ import annotations

import pytest

from ampwright.design.circuit.device import protective_device
from ampwright.survey.home_loads import STANDARD_LOADS

from .homes import COTTAGE, HALF_SPEED, PACKED, SEMI, SUNNY, YARD, basis, changed, plain
from .work import board_of, failed, outcome_of


def room(facts, tap="main", point="window-lead", setting_a=32.0):
    home, on = plain(facts), basis()
    point = on.catalogue.point(point)
    device = protective_device(home, on, tap, point, "pme", setting_a, False).out
    return board_of(home, on, tap, point, device)


def remedies(made, id_):
    (check,) = [each for each in made.checks if each.requirement.id == id_]
    return [each.slug for each in check.remedies]


class TestExisting:
    def test_two_blanks_take_a_two_pole_device(self):
        made = room(SEMI)
        assert not failed(made.checks)
        assert (made.out.board, made.out.own, made.out.needed) == ("main", False, 2)

    def test_one_blank_does_not(self):
        assert failed(room(changed(SEMI, boards__main__spare_ways=1)).checks) == ["way_free"]

    def test_a_way_shared_behind_a_blind_device_cannot_be_mended(self):
        made = room(HALF_SPEED)
        assert set(failed(made.checks)) == {
            "way_free", "own_rcd_not_shared", "no_blind_rcd_upstream", "surge_protection_present",
        }  # fmt: skip
        assert remedies(made, "own_rcd_not_shared") == []
        assert made.out.front_rcd == "AC"

    def test_surge_protection_is_added(self):
        made = room(changed(SEMI, boards__main__surge_protection=False))
        assert failed(made.checks) == ["surge_protection_present"]
        assert remedies(made, "surge_protection_present") == ["surge-main"]

    # the leads of a surge device come to 1 m together at most (BS 7671, 534.4.8)
    @pytest.mark.parametrize(("metres", "says"), [(1.0, []), (1.1, ["surge_leads_short"])])
    def test_the_leads_of_a_surge_device_are_short(self, metres, says):
        facts = changed(SEMI, boards__main__surge_leads_m=metres)
        made = room(facts)
        assert failed(made.checks) == says
        if says:
            (check,) = [each for each in made.checks if each.outcome.value == "fail"]
            (remedy,) = check.remedies
            assert remedy.slug == "surge-leads-main"
            assert not failed(room(facts | dict(remedy.changes)).checks)

    def test_leads_that_nobody_measured_are_not_judged(self):
        assert "surge_leads_short" not in {each.requirement.id for each in room(SEMI).checks}

    @pytest.mark.parametrize(
        ("point", "part"), [("window-lead", "two-pole"), ("three-socket", "four-pole")]
    )
    def test_where_no_lock_fits_an_isolator_by_the_point_takes_one(self, point, part):
        three = {"boards.main.whole_ways_spare": 1, "boards.main.spare_ways": 3}
        facts = changed(SEMI if part == "two-pole" else YARD, boards__main__lock_fits=False)
        made = room(facts | (three if part == "four-pole" else {}), point=point)
        (check,) = [each for each in made.checks if each.requirement.id == "isolation_secured"]
        (remedy,) = check.remedies
        assert remedy.parts[0].what == f"{part} isolator in a case"
        assert outcome_of(room(facts | dict(remedy.changes)).checks, "isolation_secured") == "pass"
        assert "isolation_secured" not in {each.requirement.id for each in room(SEMI).checks}
        assert any("takes a lock" in each.caution for each in room(SEMI).notes)

    def test_sources_count_with_the_fuse(self):
        made = room(SUNNY)
        (check,) = [each for each in made.checks if each.requirement.id == "board_carries_sources"]
        assert (check.outcome.value, check.actual, check.limit) == ("fail", 112.0, 100.0)
        assert remedies(made, "board_carries_sources") == ["new-board-main"]

    def test_sources_at_the_limit(self):
        facts = changed(SUNNY, sources__store__amps_a=4.0)
        assert outcome_of(room(facts).checks, "board_carries_sources") == "pass"

    def test_sources_on_another_board_do_not_count(self):
        facts = changed(SUNNY, sources__sun__board="meter", sources__store__board="meter")
        assert not failed(room(facts).checks)

    def test_line_by_line_on_three_phases(self):
        facts = changed(YARD, boards__main__rated_a=100.0)
        facts |= {"sources.sun.present": True, "sources.sun.amps_a": 16.0,
                  "sources.sun.board": "main", "sources.sun.phase": "L2",
                  "sources.store.present": True, "sources.store.amps_a": 16.0,
                  "sources.store.board": "main", "sources.store.phase": "all"}  # fmt: skip
        made = room(facts, point="three-socket")
        bars = [each for each in made.checks if each.requirement.id == "board_carries_sources"]
        assert [each.actual for each in bars] == [96.0, 112.0, 96.0]

    def test_an_old_board_is_mended_by_a_new_one_alone(self):
        facts = changed(
            SEMI, boards__main__protection="rewireable fuses", boards__main__spare_ways=0,
            boards__main__surge_protection=False,
        )  # fmt: skip
        made = room(facts)
        assert set(failed(made.checks)) == {
            "board_modern", "way_free", "surge_protection_present",
        }  # fmt: skip
        for each in made.checks:
            if each.outcome.value == "fail":
                assert [remedy.slug for remedy in each.remedies] == ["new-board-main"]
        (remedy,) = made.checks[0].remedies
        assert not failed(room({**facts, **dict(remedy.changes)}).checks)

    def test_a_board_on_wood_goes(self):
        made = room(changed(SEMI, boards__main__case="wood"))
        assert failed(made.checks) == ["board_modern"]
        assert remedies(made, "board_modern") == ["new-board-main"]

    def test_a_case_of_plastic_stays_and_is_told(self):
        made = room(changed(SEMI, boards__main__case="plastic"))
        assert not failed(made.checks)
        assert any("case of plastic" in each.caution for each in made.notes)
        assert not any("plastic" in each.caution for each in room(SEMI).notes)

    @pytest.mark.parametrize(("overhead", "says"), [(False, []), (True, ["surge_declined"])])
    def test_an_owner_may_decline_surge_protection_but_not_on_overhead_wires(self, overhead, says):
        facts = changed(SEMI, boards__main__surge_protection=False, wishes__declines_surge=True,
                        supply__overhead=overhead)  # fmt: skip
        made = room(facts)
        assert failed(made.checks) == says
        if overhead:
            assert remedies(made, "surge_declined") == ["surge-main"]
        else:
            assert any("refusal" in each.caution for each in made.checks)

    def test_not_on_a_board_that_is_dead_by_day(self):
        facts = changed(SEMI) | {
            "boards.night.present": True, "loads.all_listed": True, "loads.heaters.present": True,
            "loads.heaters.kind": "storage heating", "boards.main.night_only": True,
        } | {f"loads.{id_}.present": False for id_ in STANDARD_LOADS}  # fmt: skip
        assert failed(room(facts).checks) == ["board_live"]
        live = {**facts, "boards.main.night_only": False}
        assert outcome_of(room(live).checks, "board_live") == "pass"
        no_heaters = {**facts, "loads.heaters.kind": "fixed"}
        assert not failed(room(no_heaters).checks)


class TestFrontDevice:
    # 182 Ω and 100 mA: 18.2 V (the answer sheet of the rod-earthed cottage)
    def test_touch_voltage_of_the_front_device(self):
        made = room(COTTAGE)
        (touch,) = [c for c in made.checks if c.requirement.id == "touch_voltage_limited"]
        assert (touch.outcome.value, touch.actual) == ("pass", pytest.approx(18.2))
        facts = changed(COTTAGE, boards__main__front_rcd_ma=300.0)
        assert outcome_of(room(facts).checks, "touch_voltage_limited") == "fail"

    def test_type_ac_in_front_is_changed(self):
        made = room(COTTAGE)
        assert outcome_of_front(made) == "fail"
        facts = changed(COTTAGE, boards__main__surge_protection=True)
        (check,) = [each for each in room(facts).checks if each.outcome.value == "fail"]
        (remedy,) = check.remedies
        assert remedy.slug == "front-rcd-main"
        assert not failed(room({**facts, **dict(remedy.changes)}).checks)

    @pytest.mark.parametrize(("ma", "says"), [(100.0, "pass"), (90.0, "pass"), (30.0, "fail")])
    def test_it_waits_at_three_times(self, ma, says):
        facts = changed(COTTAGE, boards__main__front_rcd="A", boards__main__front_rcd_ma=ma)
        assert outcome_of(room(facts).checks, "front_rcd_waits") == says

    def test_one_that_guards_the_sockets_is_not_taken_away(self):
        facts = changed(SEMI, boards__main__front_rcd="AC", boards__main__front_rcd_ma=30.0,
                        boards__main__front_delayed=False)  # fmt: skip
        for check in room(facts).checks:
            assert check.remedies == ()


class TestFrontTimes:
    """A device in front as the last certificate reads it: 300 ms; marked S, 130 to 500 ms."""

    @pytest.mark.parametrize(
        ("delayed", "seconds", "says"),
        [
            (True, 0.5, []), (True, 0.51, ["rcd_trips_in_time"]), (True, 0.13, []),
            (True, 0.12, ["delayed_rcd_waits_long_enough"]),
            (False, 0.3, []), (False, 0.31, ["rcd_trips_in_time"]), (False, 0.02, []),
        ],
    )  # fmt: skip
    def test_what_was_read(self, delayed, seconds, says):
        facts = changed(COTTAGE, boards__main__front_rcd="A", boards__main__front_rcd_ma=100.0,
                        boards__main__front_delayed=delayed,
                        boards__main__front_trips_in_s=seconds,
                        boards__main__surge_protection=True)  # fmt: skip
        made = room(facts)
        timed = [each for each in failed(made.checks) if "rcd_" in each and "front" not in each]
        assert [each for each in timed if each != "no_shared_rcd_upstream"] == says
        for check in made.checks:
            for remedy in check.remedies if check.requirement.id in says else ():
                assert not failed(room({**facts, **dict(remedy.changes)}).checks)

    def test_unread_it_is_tested_with_the_work(self):
        facts = changed(COTTAGE, boards__main__front_rcd="A", boards__main__front_rcd_ma=100.0,
                        boards__main__front_delayed=True)  # fmt: skip
        (note,) = [n for n in room(facts).notes if n.telling.id == "front_tested"]
        assert "within 0.5 s, and not before 0.13 s" in note.caution

    @pytest.mark.parametrize(
        ("front", "delayed", "says"),
        [("none", False, "not applicable"), ("A", True, "pass"), ("A", False, "fail")],
    )
    def test_nothing_undelayed_in_front_of_the_house(self, front, delayed, says):
        facts = changed(COTTAGE, boards__main__front_rcd=front, boards__main__front_rcd_ma=100.0,
                        boards__main__front_delayed=delayed)  # fmt: skip
        assert outcome_of(room(facts).checks, "no_shared_rcd_upstream") == says


def outcome_of_front(made):
    return [
        each.outcome.value for each in made.checks if each.requirement.id == "no_blind_rcd_upstream"
    ][-1]


class TestThreePhase:
    def test_whole_way_wanted(self):
        made = room(YARD, point="three-socket")
        assert set(failed(made.checks)) == {"way_free", "place_free"}

    def test_outlets_on_all_lines_may_be_in_one_way(self):
        facts = changed(YARD, boards__main__spare_ways=3, boards__main__spare_phases="L1 L2 L3")
        assert outcome_of(room(facts, point="three-socket").checks, "outlets_known") == (
            "undetermined"
        )

    def test_a_way_is_made_in_the_packed_board(self):
        facts = changed(PACKED)
        made = room(facts, point="three-socket", setting_a=16.0)
        assert failed(made.checks) == ["place_free"]
        assert remedies(made, "place_free") == ["free-way-6"]
        ((remedy,),) = [each.remedies for each in made.checks if each.remedies]
        after = room({**facts, **dict(remedy.changes)}, point="three-socket", setting_a=16.0)
        assert not failed(after.checks)
        assert after.out.needed == 3

    def test_a_point_on_one_line_takes_one_outlet(self):
        assert room(YARD).out.needed == 1


class TestAtTheMeter:
    def test_a_small_board_of_its_own(self):
        made = room(SUNNY, "meter")
        assert not failed(made.checks)
        assert (made.out.board, made.out.own) == ("own-board", True)

    def test_three_phases(self):
        made = room(YARD, "meter", "three-socket")
        assert not failed(made.checks)
        assert made.out.board == "own-board-3"

    @pytest.mark.parametrize(("facts", "isolator", "poles"), [
        (SEMI, "none", "two pole"), (YARD, "two pole", "four pole"),
    ])  # fmt: skip
    def test_no_isolator_is_for_whoever_owns_the_seals(self, facts, isolator, poles):
        made = room(changed(facts, supply__isolator=isolator), "meter",
                    "three-socket" if facts is YARD else "window-lead")  # fmt: skip
        (check,) = [each for each in made.checks if each.outcome.value == "fail"]
        (remedy,) = check.remedies
        assert remedy.by
        assert ("supply.isolator", poles) in remedy.changes

    def test_on_a_rod_its_metal_wants_care(self):
        made = room(COTTAGE, "meter")
        assert not failed(made.checks)
        assert [each.caution for each in made.checks if each.caution]

    @pytest.mark.parametrize(("metres", "says"), [(3.0, []), (3.1, ["feed_short_enough"])])
    def test_long_tails_begin_at_a_device_of_their_own(self, metres, says):
        facts = changed(SUNNY, supply__own_board_m=metres)
        made = room(facts, "meter")
        assert failed(made.checks) == says
        named = [remedy.slug for check in made.checks for remedy in check.remedies]
        assert named == (["own-board-fuse"] if says else [])
        for check in made.checks:
            for remedy in check.remedies:
                assert not failed(room({**facts, **dict(remedy.changes)}, "meter").checks)

    @pytest.mark.parametrize(("metres", "says"), [(3.0, "pass"), (3.1, "not applicable")])
    def test_a_device_at_their_head_is_looked_for_on_long_tails_alone(self, metres, says):
        facts = changed(SUNNY, supply__own_board_m=metres, supply__own_board_fused=True)
        assert outcome_of(room(facts, "meter").checks, "feed_short_enough") == says

    @pytest.mark.parametrize(("where", "word"), [
        ("outside cabinet", "nothing of ours"), ("indoors", ""),
    ])  # fmt: skip
    def test_nothing_of_ours_in_the_meters_cabinet(self, where, word):
        made = room(changed(SUNNY, supply__meter_in=where), "meter")
        cautions = [each.caution for each in made.notes]
        assert [word in each for each in cautions] == ([True] if word else [])
        assert any("room for a small board" in n.caution for n in room(SUNNY, "meter").notes)
