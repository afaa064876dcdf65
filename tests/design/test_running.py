"""How a cable is held, bent, hidden and buried, and the data of a sensor beside it.

Gaps between clips and bends: the on-site guide, tables D1 and D5. Zones and depths: BS 7671,
522.6.202 and 522.8.10, and the trade's habit. Data beside power: BS EN 50174-2, 100 mm of an
unscreened pair times 0.2 beside the 2 circuits of 20 A that one of 32 A counts for.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from ampwright.design.circuit.data_beside import data_beside
from ampwright.design.circuit.running import running
from ampwright.design.route import route
from ampwright.foundations.answers import Unanswered
from ampwright.tables.capacity import CableFamily

from .homes import COTTAGE, SEMI, YARD, basis, changed, plain, without

FLAT, SHEATHED, ARMOURED = CableFamily.FLAT, CableFamily.SHEATHED, CableFamily.ARMOURED
STUD = changed(SEMI, legs__plaster__how="stud wall")
DUCT = changed(COTTAGE, legs__garden__how="duct", legs__garden__depth_mm=450.0)
LAID = changed(SEMI) | {
    "laid.old.present": True, "laid.old.from_place": "main", "laid.old.to_place": "window",
    "laid.old.left_by": "the builder", "laid.old.kind": "flat", "laid.old.size_mm2": 6.0,
    "laid.old.length_m": 9.0, "laid.old.how": "clipped inside", "laid.old.feeds_only": True,
    "laid.old.used": True,
}  # fmt: skip


def run(facts, tap="main", place="window", family=FLAT, mm=13.5, rcd_ma=30.0, in_point=False):
    home = plain(facts)
    return running(
        home, basis(), route(home, basis(), tap, place).out, family, mm, rcd_ma, in_point
    )


def found(made, id_):
    return [each for each in made.checks if each.requirement.id == id_]


def told(made):
    return {note.telling.id: note.about for note in made.notes}


def one(made, id_):
    (check,) = found(made, id_)
    return check.outcome.value


class TestWhatWeRun:
    @pytest.mark.parametrize(
        ("family", "mm", "gap_mm", "bend_mm"),
        [(FLAT, 9.0, 250.0, 27.0), (FLAT, 13.5, 300.0, 54.0), (SHEATHED, 16.6, 350.0, 66.4),
         (ARMOURED, 17.6, 350.0, 105.6), (ARMOURED, 24.6, 400.0, 147.6)],
    )  # fmt: skip
    def test_it_is_clipped_and_bent_as_the_guide_says(self, family, mm, gap_mm, bend_mm):
        made = run(SEMI, family=family, mm=mm)
        assert made.out.clip_gap_mm == gap_mm
        assert made.out.least_bend_mm == pytest.approx(bend_mm)
        assert made.checks == ()
        assert told(made) == {
            "clipped_every": (gap_mm,), "bent_no_tighter": (made.out.least_bend_mm,),
            "fixed_by_metal": (),
        }  # fmt: skip

    def test_nothing_is_clipped_in_the_ground(self):
        made = run(changed(YARD, legs__hole__how="buried"), "meter", "store", ARMOURED, 18.8)
        assert made.out.clip_gap_mm is None
        assert told(made).keys() == {"bent_no_tighter", "buried_at"}

    def test_a_loft_holds_it_up_without_counting_clips(self):
        made = run(changed(SEMI, legs__plaster__how="loft void"))
        assert made.out.clip_gap_mm is None
        assert told(made).keys() == {"bent_no_tighter", "fixed_by_metal"}

    @pytest.mark.parametrize(("corner_mm", "outcome"), [(54.0, "pass"), (53.9, "fail")])
    def test_the_tightest_corner_leaves_room_for_the_bend(self, corner_mm, outcome):
        facts = changed(SEMI, legs__plaster__corner_mm=200.0, legs__hole__corner_mm=corner_mm)
        assert one(run(facts), "bend_not_too_tight") == outcome

    def test_what_is_not_hidden_needs_no_zone(self):
        assert found(run(SEMI), "hidden_cable_safe") == []
        assert found(run(SEMI), "buried_deep_enough") == []


class TestHidden:
    def test_ours_runs_in_a_zone_behind_a_residual_current_device(self):
        assert one(run(STUD), "hidden_cable_safe") == "pass"

    @pytest.mark.parametrize(
        ("facts", "family", "outcome"),
        [({"in_zone": False}, FLAT, "fail"), ({"in_zone": True}, FLAT, "pass"),
         ({"in_zone": False}, ARMOURED, "pass"),
         ({"in_zone": False, "depth_mm": 50.0}, FLAT, "not applicable"),
         ({"in_zone": False, "depth_mm": 49.0}, FLAT, "fail")],
    )  # fmt: skip
    def test_outside_the_zones_it_is_deep_or_armoured(self, facts, family, outcome):
        said = {f"legs__plaster__{name}": value for name, value in facts.items()}
        assert one(run(changed(STUD, **said), family=family), "hidden_cable_safe") == outcome

    @pytest.mark.parametrize(
        ("rcd_ma", "in_point", "outcome"),
        [(30.0, False, "pass"), (30.0, True, "fail"), (100.0, False, "fail")],
    )
    def test_a_device_at_the_point_guards_nobody_with_a_nail(self, rcd_ma, in_point, outcome):
        made = run(STUD, rcd_ma=rcd_ma, in_point=in_point)
        assert one(made, "hidden_cable_safe") == outcome

    def test_of_what_lies_there_somebody_must_say_where_it_runs(self):
        hidden = {**LAID, "laid.old.how": "stud wall"}
        with pytest.raises(Unanswered, match=r"laid\.old\.in_zone"):
            run(hidden)
        for in_zone, outcome in ((True, "pass"), (False, "fail")):
            made = run({**hidden, "laid.old.in_zone": in_zone})
            assert one(made, "hidden_cable_safe") == outcome
        deep = {**hidden, "laid.old.in_zone": False, "laid.old.depth_mm": 60.0}
        assert one(run(deep), "hidden_cable_safe") == "not applicable"


class TestBuried:
    def test_ours_is_dug_as_deep_as_usual_and_marked(self):
        made = run(COTTAGE, "meter", "gate", ARMOURED, 17.6)
        assert told(made)["buried_at"] == (600.0,)
        assert one(made, "buried_cable_guarded") == "pass"
        assert found(made, "hidden_cable_safe") == []

    @pytest.mark.parametrize(("deep_mm", "outcome"), [(600.0, "pass"), (590.0, "fail")])
    def test_rock_or_roots_may_not_let_it(self, deep_mm, outcome):
        facts = changed(COTTAGE, legs__garden__depth_mm=deep_mm)
        made = run(facts, "meter", "gate", ARMOURED, 17.6)
        assert one(made, "buried_deep_enough") == outcome

    def test_without_armour_nothing_guards_ours_in_the_ground(self):
        assert one(run(COTTAGE, "meter", "gate", SHEATHED), "buried_cable_guarded") == "fail"

    @pytest.mark.parametrize(("deep_mm", "outcome"), [(450.0, "pass"), (440.0, "fail")])
    def test_a_duct_that_is_there_lies_at_least_as_deep_as_some_let_it(self, deep_mm, outcome):
        facts = changed(DUCT, legs__garden__depth_mm=deep_mm)
        made = run(facts, "meter", "gate", ARMOURED, 17.6)
        assert one(made, "buried_deep_enough") == outcome

    @pytest.mark.parametrize(
        ("deep_mm", "share"),
        [
            (600.0, None),
            (610.0, 0.97),
            (800.0, 0.97),
            (800.5, 0.95),
            (1000.0, 0.95),
            (1010.0, 0.94),
            (2000.0, 0.91),
            (2500.0, 0.91),
        ],
    )
    def test_deeper_than_usual_it_carries_less(self, deep_mm, share):
        """The shares are a set of the trade, recalled: 0.97 to 0.8 m, 0.95 to 1 m, 0.91 to 2 m."""
        facts = changed(DUCT, legs__garden__depth_mm=deep_mm)
        about = told(run(facts, "meter", "gate", ARMOURED, 17.6))
        found_ = about.get("carries_less_so_deep")
        assert found_ == (None if share is None else ("garden", deep_mm, share))

    def test_ours_carries_less_too_where_it_is_dug_deeper(self):
        facts = changed(COTTAGE, legs__garden__depth_mm=1000.0)
        about = told(run(facts, "meter", "gate", ARMOURED, 17.6))
        assert about["carries_less_so_deep"] == ("garden", 1000.0, 0.95)
        assert "buried_at" not in about

    def test_how_deep_it_lies_must_be_said(self):
        with pytest.raises(Unanswered, match=r"legs\.garden\.depth_mm"):
            run(without(DUCT, "legs.garden.depth_mm"), "meter", "gate", ARMOURED, 17.6)

    def test_its_tape_is_looked_for_until_somebody_saw_it(self):
        (unseen,) = found(run(DUCT, "meter", "gate", ARMOURED, 17.6), "buried_cable_guarded")
        assert unseen.outcome.value == "pass" and "tape" in unseen.caution
        for marked, outcome in ((True, "pass"), (False, "fail")):
            facts = changed(DUCT, legs__garden__marked=marked)
            (seen,) = found(run(facts, "meter", "gate", SHEATHED), "buried_cable_guarded")
            assert (seen.outcome.value, seen.caution) == (outcome, "")

    @pytest.mark.parametrize(
        ("how", "family", "outcome"),
        [("buried", ARMOURED, "pass"), ("buried", FLAT, "fail"), ("duct", FLAT, "pass")],
    )
    def test_what_lies_there_is_judged_as_it_lies(self, how, family, outcome):
        facts = {**LAID, "laid.old.how": how, "laid.old.depth_mm": 450.0, "laid.old.marked": True}
        made = run(facts, family=family)
        assert one(made, "buried_cable_guarded") == outcome
        assert one(made, "buried_deep_enough") == "pass"
        shallow = run({**facts, "laid.old.depth_mm": 449.0}, family=family)
        assert one(shallow, "buried_deep_enough") == "fail"


class TestWhatLiesThere:
    @pytest.mark.parametrize(("gap_mm", "outcome"), [(300.0, "pass"), (301.0, "fail")])
    def test_its_clips_are_counted_as_seen(self, gap_mm, outcome):
        (check,) = found(run({**LAID, "laid.old.clip_gap_mm": gap_mm}), "clips_close_enough")
        assert (check.outcome.value, check.caution) == (outcome, "")

    @pytest.mark.parametrize(("corner_mm", "outcome"), [(54.0, "pass"), (53.0, "fail")])
    def test_its_bends_are_as_seen(self, corner_mm, outcome):
        facts = {**LAID, "laid.old.corner_mm": corner_mm}
        assert one(run(facts), "bend_not_too_tight") == outcome

    @pytest.mark.parametrize("metal", [True, False])
    def test_its_fixings_are_as_seen(self, metal):
        (check,) = found(run({**LAID, "laid.old.metal_fixings": metal}), "supports_hold_in_fire")
        assert (check.outcome.value, check.caution) == ("pass" if metal else "fail", "")

    def test_what_nobody_noted_is_looked_at(self):
        made = run(LAID)
        looked = [note for note in made.notes if "look along" in note.caution]
        assert [note.telling.id for note in looked] == ["clips_looked_at", "fixings_looked_at"]
        assert "300 mm apart" in looked[0].caution


class TestDataBeside:
    @pytest.mark.parametrize(("phases", "least_mm"), [(1, 20.0), (3, 40.0)])
    def test_ours_keeps_the_gap(self, phases, least_mm):
        home = plain(SEMI)
        way = route(home, basis(), "main", "window").out
        assert told(data_beside(home, basis(), way, "flat-6", phases)) == {
            "kept_from_power": (least_mm,)
        }

    @pytest.mark.parametrize(("gap_mm", "outcome"), [(20.0, "pass"), (19.0, "fail")])
    def test_the_narrowest_place_rules(self, gap_mm, outcome):
        facts = changed(SEMI, legs__plaster__data_gap_mm=300.0, legs__hole__data_gap_mm=gap_mm)
        home = plain(facts)
        (check,) = data_beside(
            home, basis(), route(home, basis(), "main", "window").out, "", 1
        ).checks
        assert check.outcome.value == outcome

    @pytest.mark.parametrize(
        ("phases", "core_v", "outcome"),
        [(1, 230.0, "pass"), (1, 229.0, "fail"), (3, 400.0, "pass"), (3, 399.0, "fail")],
    )
    def test_cores_in_one_sheath_bear_the_power_beside_them(self, phases, core_v, outcome):
        home, stock = plain(SEMI), basis().catalogue
        cables = tuple(
            replace(each, data_core_v=core_v) if each.id == "sheathed-3-6-data" else each
            for each in stock.cables
        )
        on = replace(basis(), catalogue=replace(stock, cables=cables))
        way = route(home, basis(), "main", "window").out
        (check,) = data_beside(home, on, way, "sheathed-3-6-data", phases).checks
        assert check.requirement.id == "data_cores_insulated"
        assert check.outcome.value == outcome
