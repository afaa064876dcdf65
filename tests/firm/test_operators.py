"""Operator profiles are dated, keep what is not known apart from no, and say their source."""

from __future__ import annotations

from datetime import date
from importlib.resources import files

import pytest

from ampwright.firm.operators import read_operators
from ampwright.foundations.errors import BadFileError
from ampwright.foundations.source import Trust

TEXT = (files("ampwright.firm") / "data" / "operators.csv").read_text(encoding="utf-8")
ON = date(2026, 11, 25)


def profiles(text: str = TEXT, on: date = ON):
    return {each.id: each for each in read_operators("operators", text, on)}


class TestShipped:
    def test_the_neutral_profile_does_not_know_what_nobody_asked(self):
        neutral = profiles()["neutral"]
        assert neutral.counts_limiter is None
        assert neutral.counts_setting is None

    def test_the_demonstration_counts_both_and_says_to_confirm(self):
        demo = profiles()["demo"]
        assert demo.counts_limiter is demo.counts_setting is True
        assert "confirm with the operator" in str(demo.sources["counts_limiter"])
        assert demo.sources["counts_setting"].trust is Trust.COMMON_PRACTICE

    def test_sixty_amperes_is_published_for_one_phase_and_recalled_for_three(self):
        # Operators' association form for low-carbon technologies, earlier form, cover notes:
        # above 60 A (13.8 kVA on one phase) the operator is asked first.
        neutral = profiles()["neutral"]
        assert neutral.threshold(1) == 60.0
        assert neutral.sources["threshold_a"].trust is Trust.PUBLISHED
        assert neutral.threshold(3) == 60.0
        assert neutral.sources["threshold_each_line_a"].doubtful

    def test_an_operator_may_state_no_figure(self):
        assert profiles()["no-figure"].threshold(1) is None

    def test_the_largest_device_is_from_memory(self):
        assert profiles()["neutral"].sources["largest_device_a"].trust is Trust.MEMORY

    def test_a_figure_for_one_phase_and_another_for_each_of_three(self):
        text = TEXT.replace(
            "neutral,2020-01-01,threshold_each_line_a,60",
            "neutral,2020-01-01,threshold_each_line_a,50",
        )
        neutral = profiles(text)["neutral"]
        assert (neutral.threshold(1), neutral.threshold(3)) == (60.0, 50.0)


class TestDates:
    LATER = TEXT + "neutral,2027-04-01,threshold_a,45,a form of 2027,,,published,no\n"

    def test_a_value_holds_from_its_day(self):
        assert profiles(self.LATER, date(2027, 3, 31))["neutral"].threshold_a == 60.0
        assert profiles(self.LATER, date(2027, 4, 1))["neutral"].threshold_a == 45.0

    def test_before_its_first_day_a_profile_does_not_exist(self):
        assert profiles(on=date(2019, 12, 31)) == {}


class TestRefusals:
    @pytest.mark.parametrize(
        ("was", "bad", "expected"),
        [
            ("counts_limiter,yes", "counts_limiter,maybe", "yes or no"),
            ("threshold_a,60", "threshold_a,sixty", "a number"),
            ("2020-01-01", "1 Jan 2020", "a date such as"),
            ("common practice,no", "hearsay,no", "one of published"),
            ("memory,yes", "memory,perhaps", "yes or no"),
            ("threshold_a,60", "threshold_a,not known", "a number"),
            ("largest_device_a,32", "biggest_a,32", "one of id, words"),
        ],
    )
    def test_a_bad_cell_is_named_with_its_line(self, was, bad, expected):
        with pytest.raises(BadFileError, match=rf"line \d+: .*{expected}"):
            profiles(TEXT.replace(was, bad, 1))

    def test_a_missing_value_is_named(self):
        lines = [line for line in TEXT.splitlines() if "demo,2020-01-01,notice" not in line]
        with pytest.raises(BadFileError, match="also rows for notice_days"):
            profiles("\n".join(lines))
