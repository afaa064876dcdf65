"""What must be in hand before booking stands beside the network's outcome, never in it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from tests.journeys.homes import basis, journey, saying, without

from ampwright.options.gates import closed, council
from ampwright.options.open_homes import documented_home, homes_of
from ampwright.options.outlook import outlook
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
    closed_now = [(gate.slug, sure) for gate, sure in closed(made.best.design.gates)]
    assert [each for each in closed_now if each[0] != "grant"] == [(slug, True)]


@pytest.mark.parametrize(
    ("country", "registered", "slug"),
    [
        ("England", True, []), ("England", False, ["council"]), ("Wales", False, ["council"]),
        ("Wales", True, []), ("Scotland", True, ["building-standards"]),
        ("Northern Ireland", False, []),
    ],
)  # fmt: skip
def test_who_is_told_of_the_work_before_it_starts(country, registered, slug) -> None:
    # England: regulation 20(3) lets a registered person tell afterwards; regulation 12 else
    facts = journey("quillbrook-close", change=saying({"property.country": country}))
    rules = replace(basis().rules, registered_person=registered)
    home, _ = documented_home(facts.folded, replace(basis(), rules=rules), {})
    gate = council(home, replace(basis(), rules=rules)).out
    assert ([] if gate is None else [gate.slug]) == slug


def test_an_owners_plain_house_has_none() -> None:
    made = journey("quillbrook-close")
    assert list(closed(made.best.design.gates)) == []


def test_a_gate_that_nobody_can_judge_yet_closes_no_other() -> None:
    def change(records):
        return saying({"customer.holds": "tenant"})(without("property.kind")(records))

    made = journey("quillbrook-close", change=change)
    assert [gate.slug for gate, _ in closed(made.best.design.gates)] == ["landlord", "grant"]


def test_a_listed_cottage_waits_for_the_planning_answer() -> None:
    # the answer sheet of the rod-earthed cottage: planning answered in writing before booking
    made = journey("teazel-cottage", profile="demo")
    assert "listed" in [gate.slug for gate, _ in closed(made.best.design.gates)]
    assert made.outlook.decision is Decision.FIT_WITH_LIMIT


@pytest.mark.parametrize(
    ("change", "day", "asked"),
    [
        ({"customer.holds": "tenant"}, date(2027, 3, 31), True),
        ({"customer.holds": "tenant"}, date(2027, 4, 1), False),  # the last row ends
        ({"property.kind": "flat"}, date(2026, 11, 25), True),
        ({"customer.holds": "leaseholder"}, date(2026, 11, 25), False),
    ],
)
def test_a_grant_is_asked_for_before_any_work_and_only_where_it_may_be_had(change, day, asked):
    # Government grant pages: renters and owners of flats, to 31 March 2027, approval first.
    plain = journey("quillbrook-close", change=saying(change))
    on = replace(plain.basis, design_date=day)
    gates = outlook(homes_of(plain.folded, on), on).recommended.design.gates
    assert ("grant" in [gate.slug for gate, _ in closed(gates)]) is asked
