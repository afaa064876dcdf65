"""What must be in hand before booking stands beside the network's outcome, never in it."""

from __future__ import annotations

import pytest
from tests.journeys.homes import journey, saying, without

from ampwright.options.gates import closed, unasked
from ampwright.options.supply_side import Decision


@pytest.mark.parametrize(
    ("change", "slug"),
    [
        ({"customer.holds": "tenant"}, "landlord"),
        ({"customer.holds": "leaseholder"}, "freeholder"),
        ({"property.listed_building": True}, "listed"),
        ({"property.conservation_area": True}, "designated"),
        ({"property.kind": "flat", "property.own_parking": False}, "parking"),
    ],
)
def test_a_gate_is_named_and_leaves_the_decision_alone(change, slug) -> None:
    made = journey("quillbrook-close", change=saying(change))
    assert made.outlook.decision is Decision.FIT_THEN_TELL
    assert [(gate.slug, sure) for gate, sure in closed(made.best.design.gates)] == [(slug, True)]


def test_an_owners_plain_house_has_none() -> None:
    made = journey("quillbrook-close")
    assert list(closed(made.best.design.gates)) == []
    assert unasked(made.best.design.gates) == ()


def test_an_unasked_gate_is_a_question_and_no_other_gate_is_lost() -> None:
    def change(records):
        return saying({"customer.holds": "tenant"})(without("property.kind")(records))

    made = journey("quillbrook-close", change=change)
    assert [gate.slug for gate, _ in closed(made.best.design.gates)] == ["landlord"]
    assert unasked(made.best.design.gates) in ((), ("property.kind",))


def test_a_listed_cottage_waits_for_the_planning_answer() -> None:
    # the answer sheet of the rod-earthed cottage: planning answered in writing before booking
    made = journey("teazel-cottage", profile="demo")
    assert "listed" in [gate.slug for gate, _ in closed(made.best.design.gates)]
    assert made.outlook.decision is Decision.FIT_WITH_LIMIT
