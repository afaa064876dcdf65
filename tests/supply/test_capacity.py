"""What a supply can carry, and whether its own parts carry one another."""

from __future__ import annotations

import pytest

from ampwright.foundations.checks import Outcome, verdict
from ampwright.foundations.working import orphans
from ampwright.supply.capacity import supply_capacity

from ..demand.homes import HALF_SPEED, PLAIN, THREE_PHASE, WEAK_LINE, home_of
from .given_basis import BASIS


def made(**changes):
    changed = {key.replace("__", "."): value for key, value in changes.items()}
    facts = {**PLAIN, "boards.main.parts_sold": True, **changed}
    return supply_capacity(home_of(facts), BASIS)


@pytest.mark.parametrize(
    ("facts", "rating"),
    [(PLAIN, 80.0), (THREE_PHASE, 80.0), (WEAK_LINE, 60.0), (HALF_SPEED, 80.0)],
)
def test_worked_homes(facts, rating):
    # Worked homes 1, 8, 11 and 21: the fuse is the least in each, and all of it is sound.
    capacity = supply_capacity(home_of(facts), BASIS)
    assert capacity.out.rating_a == rating
    assert verdict(capacity.checks) is Outcome.PASS


@pytest.mark.parametrize(
    ("switch", "isolator", "rating", "outcome"),
    [(80.0, 100.0, 80.0, Outcome.PASS), (79.0, 100.0, 79.0, Outcome.FAIL),
     (100.0, 63.0, 63.0, Outcome.FAIL)],
)  # fmt: skip
def test_the_weakest_switch_bears_what_the_fuse_lets_through(switch, isolator, rating, outcome):
    capacity = made(boards__main__main_switch_a=switch, supply__isolator_a=isolator)
    assert capacity.out.rating_a == rating
    assert verdict(capacity.checks) is outcome


def test_without_an_isolator_its_rating_is_not_asked():
    facts = {key: value for key, value in PLAIN.items() if key != "supply.isolator_a"}
    assert supply_capacity(home_of({**facts, "supply.isolator": "none"}), BASIS).out.rating_a == 80


class TestTails:
    def test_thin_tails_behind_a_large_fuse_fail_and_name_their_cure(self):
        capacity = made(supply__tails_mm2=16.0, supply__main_fuse_a=100.0)
        failed = capacity.checks[0]
        assert failed.outcome is Outcome.FAIL
        assert failed.actual > failed.limit == capacity.out.rating_a
        (cure,) = failed.remedies
        assert cure.changes == (("supply.tails_mm2", 25.0),)
        assert cure.minutes == (36.0, 48.0, 72.0)
        assert (cure.parts[0].quantity, cure.by) == (2.0, "")

    def test_three_phases_have_four_tails(self):
        capacity = made(
            supply__tails_mm2=16.0, supply__main_fuse_a=100.0, supply__phases=3,
            boards__main__main_switch_a=125.0,
        )  # fmt: skip
        assert capacity.checks[0].remedies[0].parts[0].quantity == 4.0

    def test_the_cure_mends_it(self):
        mended = made(supply__tails_mm2=25.0, supply__main_fuse_a=100.0)
        assert verdict(mended.checks) is Outcome.PASS

    def test_without_an_isolator_somebody_else_makes_them_dead(self):
        capacity = made(supply__tails_mm2=16.0, supply__main_fuse_a=100.0, supply__isolator="none")
        assert "no isolator" in capacity.checks[0].remedies[0].by


def test_documented_agrees_and_every_number_has_a_source():
    made_of = supply_capacity(home_of(PLAIN, documented=True), BASIS.documented())
    assert made_of.out.rating_a == 80.0
    assert not orphans(made_of.out.rating_a)
    assert not [each for check in made_of.checks for each in orphans((check.actual, check.limit))]


def test_tails_that_no_table_holds_go_first():
    capacity = made(supply__tails_mm2=6.0)
    (check,) = capacity.checks
    assert check.outcome is Outcome.FAIL
    (remedy,) = check.remedies
    assert ("supply.tails_mm2", 25.0) in remedy.changes
    assert verdict(made(supply__tails_mm2=25.0).checks) is Outcome.PASS


class TestLargerSwitch:
    # Sizes of household switches and what changing one takes: common practice and memory.
    def work(self, **changes):
        checks = made(**changes).checks
        return [remedy for check in checks for remedy in check.remedies]

    def test_a_small_main_switch_is_replaced_by_the_next_that_bears_the_fuse(self):
        (work,) = self.work(boards__main__main_switch_a=63.0)
        assert work.changes == (("boards.main.main_switch_a", 80.0),)
        assert work.does == "Put in a main switch of 80 A, as large as the service fuse at least"
        assert (work.minutes, work.by) == ((18.0, 30.0, 48.0), "")

    def test_an_isolator_is_behind_the_seals(self):
        (work,) = self.work(supply__isolator_a=63.0)
        assert work.changes == (("supply.isolator_a", 80.0),)
        assert "meter operator" in work.by
        assert "there is no isolator" not in work.by

    def test_both_at_once(self):
        (work,) = self.work(boards__main__main_switch_a=63.0, supply__isolator_a=63.0)
        assert dict(work.changes) == {"boards.main.main_switch_a": 80.0, "supply.isolator_a": 80.0}
        assert work.parts[0].quantity == 2.0
        assert work.minutes == (36.0, 60.0, 96.0)

    def test_without_an_isolator_somebody_else_makes_it_dead(self):
        (work,) = self.work(boards__main__main_switch_a=63.0, supply__isolator="none")
        assert "meter operator" in work.by

    def test_a_board_for_which_nothing_is_sold_gets_none(self):
        assert self.work(boards__main__main_switch_a=63.0, boards__main__parts_sold=False) == []
