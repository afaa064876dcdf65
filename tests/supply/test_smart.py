"""The smart charging law: peaks of 8 to 11 and 16 to 22 h, half an hour of random delay."""

from __future__ import annotations

from dataclasses import replace

import pytest

from ampwright.foundations.checks import Outcome
from ampwright.supply.smart import in_peaks, smart_charging

from ..demand.homes import home_of
from .given_basis import BASIS, LEAD

ENGLAND = home_of({"property.country": "England"})


def failed(point, home=ENGLAND):
    made = smart_charging(home, BASIS, point)
    return [each.requirement.id for each in made.checks if each.outcome is Outcome.FAIL]


@pytest.mark.parametrize(
    ("start", "length", "peak_h"),
    [
        (0.0, 5.0, 0.0), (11.0, 5.0, 0.0), (10.0, 2.0, 1.0), (15.5, 1.0, 0.5),
        (22.0, 10.0, 0.0), (22.0, 10.5, 0.5), (21.0, 13.0, 3.0), (0.0, 24.0, 9.0),
        (12.0, 24.0, 9.0),
    ],
)  # fmt: skip
def test_hours_in_the_peaks_of_a_weekday(start, length, peak_h):
    assert in_peaks(BASIS.book, start, length) == pytest.approx(peak_h)


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({}, []),
        ({"smart": False}, ["point_is_smart"]),
        ({"default_from_h": 17.0}, ["default_hours_off_peak"]),
        ({"delay_to_s": 1799.0}, ["delay_long_enough"]),
        ({"statement": False}, ["statement_given"]),
    ],
)
def test_what_a_point_lacks(change, says):
    point = replace(LEAD, **change)
    assert failed(point) == failed(point, home_of({})) == says


def test_northern_ireland_is_outside():
    made = smart_charging(
        home_of({"property.country": "Northern Ireland"}), BASIS, replace(LEAD, smart=False)
    )
    assert made.out is None
    assert made.checks == ()
    assert "outside the smart charging law" in made.notes[0].says


def test_the_paper_says_what_to_hand_over():
    (given,) = [c for c in smart_charging(ENGLAND, BASIS, LEAD).checks if c.caution]
    assert "statement of compliance" in given.caution
