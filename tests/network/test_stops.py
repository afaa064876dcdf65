"""Who outside must act first, by what fails."""

from __future__ import annotations

import pytest

from ampwright.design.route import way_paced
from ampwright.foundations.quantity import Amperes, Count, Volts
from ampwright.foundations.remedies import Remedy
from ampwright.network.stops import ANOTHER_PLACE, BY_REQUIREMENT, held_up_by
from ampwright.standards.catalogue import Kind, clauses
from ampwright.standards.network.connection import Step
from ampwright.standards.wiring.adequacy import supply_carries_demand
from ampwright.standards.wiring.charging import window_held
from ampwright.supply.headroom import house_under_limit, limiter_locked, supply_has_lines

TELL, STOP = Step.TELL_AFTER, Step.STOP


def slugs(*failed, outcome=TELL, holds=""):
    return [each.slug for each in held_up_by(outcome, failed, holds)]


class TestNetwork:
    def test_danger_stops_all_work_until_the_network_has_made_it_safe(self):
        # Operators' pages: unsafe service equipment is reported to the operator before any work.
        (until,) = held_up_by(STOP, (), "owner")
        assert until.body == "the network operator"
        assert "made the dangerous service safe" in until.firm
        assert "today" in until.customer

    def test_said_once_though_two_tests_say_it(self):
        failed = (
            supply_carries_demand(Amperes(90.0), Amperes(80.0)),
            house_under_limit(Amperes(90.0), Amperes(80.0)),
        )
        assert slugs(*failed) == ["larger-supply"]

    @pytest.mark.parametrize(
        ("failed", "slug"),
        [(supply_carries_demand(Amperes(90.0), Amperes(80.0)), "larger-supply"),
         (supply_has_lines(Count(3), Count(1)), "three-phase-supply"),
         (window_held(Volts(200.0), Volts(210.0)), "volts-in-order")],
    )  # fmt: skip
    def test_what_only_the_network_can_lift(self, failed, slug):
        assert slugs(failed) == [slug]
        (until,) = held_up_by(TELL, (failed,), "")
        assert until.body == "the network operator"


class TestOthers:
    def locked(self, *remedies):
        return limiter_locked(False).mended_by(*remedies)

    def test_what_the_firm_can_mend_stops_nobody(self):
        assert slugs(self.locked(Remedy("lock", "Lock it", ()))) == []
        assert slugs(self.locked()) == []

    def test_work_that_somebody_else_must_do_is_theirs(self):
        theirs = Remedy("seal", "Take off the seal", (), by="the supplier or the meter operator")
        (until,) = held_up_by(TELL, (self.locked(theirs),), "")
        assert (until.slug, until.body) == ("seal", "the supplier or the meter operator")
        assert "Take off the seal" in until.firm

    def test_not_where_the_firm_has_a_way_of_its_own(self):
        theirs = Remedy("seal", "Take off the seal", (), by="the supplier or the meter operator")
        ours = Remedy("lock", "Lock it", ())
        assert slugs(self.locked(theirs, ours)) == []

    def test_what_passes_stops_nobody(self):
        assert slugs(supply_carries_demand(Amperes(60.0), Amperes(80.0))) == []


class TestOwners:
    @pytest.mark.parametrize(
        ("holds", "body"),
        [("leaseholder", "the freeholder or the managing agent"), ("tenant", "the landlord")],
    )
    def test_another_place_is_the_owners_to_give(self, holds, body):
        failed = way_paced("main", "bay", 0, True)
        (until,) = held_up_by(TELL, (failed,), holds)
        assert until.body == body
        assert held_up_by(TELL, (failed,), "owner") == ()
        assert held_up_by(TELL, (failed,), "") == ()


def test_every_requirement_named_exists():
    rooms = ("ampwright.standards", "ampwright.supply", "ampwright.design")
    known = {each.id for room in rooms for each in clauses(room) if each.kind is Kind.REQUIRES}
    assert known >= BY_REQUIREMENT.keys() | ANOTHER_PLACE
