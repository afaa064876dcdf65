"""Papers of sources: told within the operators' 28 days, and a limit that somebody tried."""

from __future__ import annotations

import pytest

from ampwright.standards.network.generation import GenerationStep

from ..supply.given_basis import BASIS
from .test_generation import made, source, with_sources


def mended(facts):
    """The facts with the work laid over them that the only failed check asks for."""
    (check,) = [each for each in made(facts).checks if each.outcome.value == "fail"]
    (remedy,) = check.remedies
    return remedy, {**facts, **dict(remedy.changes)}


class TestToldInTime:
    # Operators' practice for small sources: the form within 28 days of commissioning, counted
    # from the day after. The design is of 25 November 2026: 28 October is the 28th day before.
    @pytest.mark.parametrize(
        ("fitted_on", "days", "outcome"),
        [
            ("2026-11-25", 0, "pass"),
            ("2026-10-28", 28, "pass"),
            ("2026-10-27", 29, "fail"),
            ("2025-10-28", 393, "fail"),
        ],
    )
    def test_counts_from_the_day_it_was_switched_on(self, fitted_on, days, outcome):
        (check,) = made(with_sources(source("sun", 16.0, told=False, fitted_on=fitted_on))).checks
        assert (check.outcome.value, check.actual, check.limit) == (outcome, days, 28)

    def test_says_until_when(self):
        facts = with_sources(source("sun", 16.0, told=False, fitted_on="2026-11-10"))
        (check,) = made(facts).checks
        assert check.caution == "tell the network of sun by Tue 8 Dec 2026"

    def test_late_it_is_told_before_the_point_is_fitted(self):
        remedy, after = mended(
            with_sources(source("sun", 16.0, told=False, fitted_on="2026-09-01"))
        )
        assert remedy.slug == "late-form-sun"
        assert remedy.minutes == BASIS.task("late-form").minutes
        assert made(after).checks == ()
        assert made(after).out.step is GenerationStep.NOTHING

    @pytest.mark.parametrize(
        "facts",
        [
            source("sun", 16.0, told=True, fitted_on="2020-01-01"),
            source("sun", 16.0, told=False),
            source("sun", 16.0, told=False, fitted_on="2026-11-26"),
            source("sun", 16.1, told=False, fitted_on="2020-01-01"),
        ],
        ids=["told of", "no day", "still to be switched on", "had to be asked about"],
    )
    def test_nothing_is_counted(self, facts):
        assert made(with_sources(facts)).checks == ()

    def test_each_source_by_its_own_day(self):
        found = made(
            with_sources(
                source("a", 8.0, told=False, fitted_on="2026-11-01"),
                source("b", 4.0, told=True, fitted_on="2020-01-01"),
                source("c", 4.0, told=False, fitted_on="2026-10-01"),
            )
        )
        assert [each.outcome.value for each in found.checks] == ["pass", "fail"]
        assert found.checks[1].remedies[0].changes == (("sources.c.told_operator", True),)


class TestLimitProved:
    # EREC G100: what a scheme does with its limit reached, and with its sensor, its link and its
    # power lost, is tried and written down when it is fitted (from memory).
    def limited(self, **more):
        return with_sources(
            source("sun", 32.0, told=False, export_limited=True, export_limit_a=16.0, **more)
        )

    def test_seen(self):
        found = made(self.limited(limit_proved=True))
        (check,) = found.checks
        assert (check.outcome.value, found.out.step) == ("pass", GenerationStep.ASK_FAST)

    def test_nobody_has_said(self):
        found = made(self.limited())
        assert found.checks == ()
        assert "see its test sheet" in found.notes[-1].caution

    def test_never_tried_it_is_tried(self):
        remedy, after = mended(self.limited(limit_proved=False))
        assert remedy.slug == "prove-limit-sun"
        assert remedy.minutes == BASIS.task("prove-limit").minutes
        (check,) = made(after).checks
        assert check.outcome.value == "pass"

    def test_where_it_changes_nothing_it_is_no_matter(self):
        told = source("sun", 32.0, told=True, export_limited=True, export_limit_a=16.0,
                      limit_proved=False)  # fmt: skip
        large = source("sun", 32.1, told=False, export_limited=True, export_limit_a=16.0,
                       limit_proved=False)  # fmt: skip
        assert made(with_sources(told)).checks == made(with_sources(large)).checks == ()
