"""Four outcomes, both numbers, and the remedies a failed check may name."""

from __future__ import annotations

import pytest

from ampwright.foundations.checks import (
    Finding,
    Outcome,
    at_least,
    at_most,
    holds,
    not_applicable,
    requires,
    undetermined,
    verdict,
)
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.rulings import Row, Ruling
from ampwright.foundations.source import Place

AT = Place("a book")
BOND = Remedy("bond-water", "bond the water pipe", (("services.water.bond_mm2", 10.0),))


@requires("Ib ≤ In", unit="A", place=AT)
def carries(Ib: float, In: float) -> Finding:
    """Check that the device carries the current."""
    return at_most(Ib, In)


@pytest.mark.parametrize(
    ("finding", "outcome"),
    [
        (at_most(32.0, 32.0), Outcome.PASS),
        (at_most(32.1, 32.0), Outcome.FAIL),
        (at_least(207.0, 207.0), Outcome.PASS),
        (at_least(206.9, 207.0), Outcome.FAIL),
        (holds(True), Outcome.PASS),
        (holds(False), Outcome.FAIL),
        (not_applicable("no gas"), Outcome.NOT_APPLICABLE),
        (undetermined("not asked"), Outcome.UNDETERMINED),
    ],
)
def test_each_way_to_find_gives_its_outcome(finding: Finding, outcome: Outcome) -> None:
    assert finding.outcome is outcome


def test_a_check_is_tied_to_its_clause_and_holds_both_numbers() -> None:
    check = carries(33.0, 32.0)
    assert (check.requirement.id, check.actual, check.limit) == ("carries", 33.0, 32.0)
    assert check.used == pytest.approx(33 / 32)


def test_only_a_failed_check_names_remedies_and_only_a_pass_a_caution() -> None:
    assert carries(33.0, 32.0).mended_by(BOND).remedies == (BOND,)
    assert carries(31.0, 32.0).mended_by(BOND).remedies == ()
    assert carries(31.0, 32.0).with_caution("a stand-in").caution == "a stand-in"
    assert carries(33.0, 32.0).with_caution("a stand-in").caution == ""


def test_the_verdict_is_the_worst() -> None:
    good, bad = carries(1.0, 2.0), carries(3.0, 2.0)
    assert verdict(()) is Outcome.PASS
    assert verdict((good, bad)) is Outcome.FAIL
    unsure = requires("x", place=AT)(lambda: undetermined("not asked"))()
    assert verdict((good, unsure)) is Outcome.UNDETERMINED
    assert verdict((unsure, bad)) is Outcome.FAIL


def test_equal_checks_are_one_and_differ_by_clause() -> None:
    assert carries(1.0, 2.0) == carries(1.0, 2.0)
    other = requires("Ib ≤ In", unit="A", place=AT)(lambda: at_most(1.0, 2.0))()
    assert other != carries(1.0, 2.0)


def test_a_ruling_takes_the_first_row_and_can_list_all_that_hit() -> None:
    ruling: Ruling[float, str] = Ruling(
        "size",
        (
            Row("over ten", lambda x: x > 10, "large", AT),
            Row("over five", lambda x: x > 5, "middle", AT),
            Row("otherwise", lambda _: True, "small", AT),
        ),
    )
    assert ruling.decide(11.0).outcome == "large"
    assert [hit.row for hit in ruling.hits(11.0)] == [1, 2, 3]
    assert ruling.decide(5.0).row == 3
    with pytest.raises(LookupError, match="no row"):
        Ruling("none", ruling.rows[:2]).decide(1.0)
