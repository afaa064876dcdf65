"""Chart, notices and labels: BS 7671, 514.1.1, 514.9.1, 514.12.2, 514.13.1 and 514.15.1."""

from __future__ import annotations

import pytest

from ampwright.design.notices import notices

from .homes import SEMI, SUNNY, basis, changed, plain
from .work import failed, outcome_of


def made(facts, tap="main", in_point=False, gives_back=False):
    return notices(plain(facts), basis(), tap, in_point, gives_back)


def test_of_what_nobody_looked_for_nothing_is_judged():
    found = made(SEMI)
    assert [each.outcome.value for each in found.checks] == ["not applicable"]
    (note,) = found.notes
    assert note.says == (
        "nobody has looked for the chart of circuits, the notice to press the test button, labels "
        "at the main earth and at each clamp, the label of the isolator after the meter: what is "
        "missing goes up when handing over"
    )


def test_what_was_looked_for_is_not_looked_for_again():
    found = made(changed(SEMI, earthing__labelled=True, boards__main__chart=False))
    assert outcome_of(found.checks, "earth_label_present") == "pass"
    (note,) = found.notes
    assert "labels" not in note.says and "chart" not in note.says


@pytest.mark.parametrize(
    ("key", "id_", "what"),
    [
        ("boards.main.chart", "circuit_chart_present", "the chart of circuits"),
        ("boards.main.test_notice", "test_notice_present", "press the test button"),
        ("earthing.labelled", "earth_label_present", "at each clamp"),
        ("supply.isolator_labelled", "isolator_label_present", "the isolator after the meter"),
    ],
)
def test_what_is_missing_is_put_up(key, id_, what):
    facts = changed(SEMI) | {key: False}
    assert failed(made(facts).checks) == [id_]
    (check,) = [each for each in made(facts).checks if each.outcome.value == "fail"]
    (remedy,) = check.remedies
    assert what in remedy.does
    assert remedy.changes == ((key, True),)
    assert not failed(made(facts | dict(remedy.changes)).checks)
    assert not failed(made(changed(SEMI) | {key: True}).checks)


def test_all_that_is_missing_is_one_work_item():
    facts = changed(SEMI, boards__main__chart=False, earthing__labelled=False)
    checks = [each for each in made(facts).checks if each.outcome.value == "fail"]
    assert len(checks) == 2
    (first,), (second,) = (each.remedies for each in checks)
    assert first == second
    assert first.does == (
        "Put up the notices and labels that are missing, namely the chart of circuits, labels at "
        "the main earth and at each clamp"
    )
    assert [part.what for part in first.parts] == ["labels and the circuit chart"]


@pytest.mark.parametrize(
    ("protection", "front", "in_point", "says"),
    [("RCBOs", "none", True, "pass"), ("breakers only", "none", True, "not applicable"),
     ("breakers only", "none", False, "pass"), ("rewireable fuses", "A", True, "pass"),
     ("rewireable fuses", "none", True, "not applicable")],
)  # fmt: skip
def test_where_nothing_sees_residual_current_no_notice_asks_to_test_it(
    protection, front, in_point, says
):
    facts = changed(SEMI, boards__main__protection=protection, boards__main__front_rcd=front,
                    boards__main__test_notice=True)  # fmt: skip
    assert outcome_of(made(facts, in_point=in_point).checks, "test_notice_present") == says


@pytest.mark.parametrize(
    ("facts", "gives_back", "says"),
    [(SEMI, False, "not applicable"), (SEMI, True, "fail"), (SUNNY, False, "fail")],
)
def test_a_second_source_is_told_of(facts, gives_back, says):
    facts = changed(facts, boards__main__sources_notice=False)
    checks = made(facts, gives_back=gives_back).checks
    assert outcome_of(checks, "sources_notice_present") == says
    there = made(changed(facts, boards__main__sources_notice=True), gives_back=gives_back)
    assert not failed(there.checks)


def test_a_board_of_the_points_own_comes_with_its_notices():
    facts = changed(SEMI, boards__main__chart=False, boards__main__test_notice=False,
                    earthing__labelled=True, supply__isolator_labelled=True)  # fmt: skip
    assert [each.requirement.id for each in made(facts, "meter").checks] == [
        "earth_label_present", "isolator_label_present",
    ]  # fmt: skip
    assert not failed(made(facts, "meter").checks)
