"""Cables that lie there already, and old points: a decision or a question, never silence."""

from __future__ import annotations

import pytest

from ampwright.design.old_points import old_points
from ampwright.design.route import route
from ampwright.survey.home_loads import STANDARD_LOADS
from ampwright.tables.capacity import CableFamily

from .homes import SEMI, basis, changed, documented_basis, plain, worked
from .work import circuit, failed, outcome_of

FLAT, ARMOURED = CableFamily.FLAT, CableFamily.ARMOURED
BUILDERS = changed(SEMI) | {
    "laid.builders.present": True, "laid.builders.left_by": "the builder",
    "laid.builders.from_place": "window", "laid.builders.to_place": "main",
    "laid.builders.kind": "flat", "laid.builders.size_mm2": 6.0,
    "laid.builders.length_m": 11.0, "laid.builders.how": "stud wall",
    "laid.builders.feeds_only": True,
}  # fmt: skip


def use(facts):
    """The facts with the offer of the way laid over them."""
    (offer,) = route(plain(facts), basis(), "main", "window").offers
    return {**facts, **dict(offer.changes)}


def test_it_is_offered_beside_a_new_cable():
    made = route(plain(BUILDERS), basis(), "main", "window")
    assert [each.id for each in made.out.legs] == ["plaster", "hole"]
    assert [each.slug for each in made.offers] == ["use-builders"]
    assert route(plain(SEMI), basis(), "main", "window").offers == ()
    assert route(plain(BUILDERS), basis(), "meter", "window").offers == ()


def test_used_it_is_the_way_and_nothing_is_run():
    made = route(plain(use(BUILDERS)), basis(), "main", "window")
    assert (made.out.length_m, made.out.new_legs) == (11.0, ())
    assert outcome_of(made.checks, "own_circuit") == "pass"
    assert "end to end" in made.checks[0].caution
    assert made.offers == ()


def test_its_own_size_and_run_are_judged():
    out, device, checks = circuit(use(BUILDERS), "main", "window", FLAT, 16.0)
    assert not failed(checks)
    assert (out.size_mm2, out.length_m, out.worst_leg) == (6.0, 11.0, "builders")
    # 6 mm² flat in a stud wall, as not touching the lining: 35 A (Table 4D5, method 102)
    assert out.capacity_a == 35.0
    assert device.rating_a <= 35.0


def test_a_thin_one_is_refused_by_the_firm_and_by_its_load():
    facts = use({**BUILDERS, "laid.builders.size_mm2": 4.0})
    _, _, checks = circuit(facts, "main", "window", FLAT, 32.0)
    assert "laid_size" in failed(checks)
    # 4 mm² there: 27 A, under the 32 A of its device
    assert "cable_carries_device" in failed(checks)


def test_no_other_kind_is_read_into_it():
    _, _, checks = circuit(use(BUILDERS), "main", "window", ARMOURED, 32.0)
    assert failed(checks) == ["laid_kind"]


def test_a_size_nobody_can_judge_it_by():
    facts = use({**BUILDERS, "laid.builders.size_mm2": 25.0})
    _, _, checks = circuit(facts, "main", "window", FLAT, 32.0)
    assert failed(checks) == ["cable_offered"]


def test_it_must_feed_the_point_alone():
    facts = use({**BUILDERS, "laid.builders.feeds_only": False})
    assert failed(route(plain(facts), basis(), "main", "window").checks) == ["own_circuit"]


class TestCertificate:
    # BS 7671 644.1: new circuits are certified with their schedules; a spur may be minor works.
    def made(self, **said):
        facts = use(BUILDERS | {f"laid.builders.{name}": value for name, value in said.items()})
        return facts, route(plain(facts), basis(), "main", "window")

    def test_seen(self):
        assert outcome_of(self.made(certificate=True)[1].checks, "certificate_given") == "pass"

    def test_there_is_none(self):
        facts, made = self.made(certificate=False)
        assert failed(made.checks) == ["certificate_given"]
        (remedy,) = made.checks[1].remedies
        assert (remedy.slug, remedy.minutes) == (
            "certify-builders", basis().task("prove-laid").minutes,
        )  # fmt: skip
        mended = {**facts, **dict(remedy.changes)}
        assert not failed(route(plain(mended), basis(), "main", "window").checks)

    def test_nobody_has_said(self):
        _, made = self.made()
        assert [each.requirement.id for each in made.checks] == ["own_circuit"]
        assert made.notes[0].caution.startswith("ask for the certificate of the cable builders")

    def test_a_spur_needs_none(self):
        assert failed(self.made(certificate=False, feeds_only=False)[1].checks) == ["own_circuit"]


@pytest.mark.parametrize("has_earth", [True, False])
def test_its_earth_is_no_neutral(has_earth):
    facts = use({**BUILDERS, "laid.builders.earth_core": has_earth})
    _, _, checks = circuit(facts, "main", "window", FLAT, 16.0)
    says = "pass" if has_earth else "fail"
    assert outcome_of(checks, "neutral_and_earth_apart") == says


def test_of_its_kind_it_has_an_earth():
    _, _, checks = circuit(use(BUILDERS), "main", "window", FLAT, 16.0)
    assert outcome_of(checks, "neutral_and_earth_apart") == "pass"


def test_an_old_point_on_it_goes():
    (offer,) = route(
        plain({**BUILDERS, "laid.builders.of_load": "old"}), basis(), "main", "window"
    ).offers
    assert ("loads.old.present", False) in offer.changes


def test_its_working_is_whole():
    facts = use(BUILDERS)
    plainly, _, checks = circuit(facts, "main", "window", FLAT, 16.0)
    kept, _, shown = circuit(facts, "main", "window", FLAT, 16.0, reader=worked,
                             on=documented_basis())  # fmt: skip
    assert plainly == kept
    assert [c.outcome for c in checks] == [c.outcome for c in shown]


class TestOldPoints:
    OLD = changed(SEMI) | {
        **{f"loads.{id_}.present": False for id_ in STANDARD_LOADS},
        "loads.old.present": True, "loads.old.kind": "charge point", "loads.old.amps_a": 32.0,
    }  # fmt: skip

    def made(self, facts):
        return old_points(plain(facts), basis())

    def test_nobody_said(self):
        (check,) = self.made(self.OLD).checks
        assert check.outcome.value == "pass"
        assert "ask whether old stays" in check.caution

    def test_it_stays(self):
        (check,) = self.made({**self.OLD, "loads.old.goes": False}).checks
        assert check.caution == "old counts in full in the demand"

    def test_it_goes(self):
        facts = {**self.OLD, "loads.old.goes": True}
        (check,) = self.made(facts).checks
        assert check.outcome.value == "fail"
        (remedy,) = check.remedies
        assert self.made({**facts, **dict(remedy.changes)}).checks == ()

    @pytest.mark.parametrize("facts", [SEMI, {**OLD, "loads.old.kind": "fixed"}])
    def test_none(self, facts):
        assert self.made(facts).checks == ()

    # IEC 61851-1, annex A: the duty of the pilot says what a car may take.
    @pytest.mark.parametrize(("pilot_a", "outcome"), [(32.0, "pass"), (32.1, "fail")])
    def test_its_pilot_is_held_to_what_it_counts_for(self, pilot_a, outcome):
        _, check = self.made({**self.OLD, "loads.old.pilot_a": pilot_a}).checks
        assert (check.requirement.id, check.outcome.value) == ("pilot_within_setting", outcome)
        assert (check.actual, check.limit) == (pilot_a, 32.0)

    def test_one_that_offers_more_is_set_again(self):
        facts = {**self.OLD, "loads.old.goes": False, "loads.old.pilot_a": 40.0}
        (remedy,) = self.made(facts).checks[1].remedies
        assert (remedy.slug, remedy.minutes) == ("set-old", basis().task("turn-up").minutes)
        assert remedy.does == "Set old to 32 A, lock the setting and read its pilot again"
        again = self.made({**facts, **dict(remedy.changes)}).checks
        assert [each.outcome.value for each in again] == ["pass", "pass"]

    def test_one_that_goes_is_not_set_again(self):
        facts = {**self.OLD, "loads.old.goes": True, "loads.old.pilot_a": 40.0}
        assert failed(self.made(facts).checks) == ["old_point_settled"]
