"""What may stand as an answer, and what is said about the rest."""

from __future__ import annotations

from datetime import date, time

import pytest

from ampwright.foundations.errors import InputError
from ampwright.survey.accept import accept, accept_few, accept_range
from ampwright.survey.layout import slot


def answer(key, value):
    return accept(slot(key).fact, value, key)


@pytest.mark.parametrize(
    ("key", "given", "kept"),
    [
        ("supply.main_fuse_a", 80, 80.0),
        ("supply.main_fuse_a", 45, 45.0),
        ("supply.phases", 3, 3),
        ("supply.phases", 3.0, 3),
        ("supply.looped", False, False),
        ("supply.earthing", "TT", "TT"),
        ("legs.a.length_m", 7, 7.0),
        ("property.postcode", "zz14qb", "ZZ1 4QB"),
        ("property.postcode", "ZZ11 4FC", "ZZ11 4FC"),
        ("cars.a.arrives_on", date(2026, 12, 19), "2026-12-19"),
        ("cars.a.arrives_on", "2026-12-19", "2026-12-19"),
        ("supply.readings.tea.at", time(18, 30), "18:30"),
        ("supply.readings.tea.at", "7:05", "07:05"),
        ("supply.meter_point", "10 1234 5678 903", "1012345678903"),
        ("supply.meter_point", "81234567890", "81234567890"),
        ("customer.name", "  Tamsin ", "Tamsin"),
    ],
)
def test_is_kept_in_one_form(key, given, kept):
    found = answer(key, given)
    assert found == kept
    assert type(found) is type(kept)


@pytest.mark.parametrize(
    ("key", "given", "says"),
    [
        ("supply.main_fuse_a", "18O", '"18O" has a letter O in it. Write .* for example 60'),
        ("supply.main_fuse_a", "80 A", "Write 80 alone, without quotes or unit"),
        ("supply.main_fuse_a", 81, "expected one of 30, 40, 45, 60.* Is it 80"),
        ("supply.main_fuse_a", True, "as a figure"),
        ("supply.main_fuse_a", float("nan"), "as a figure"),
        ("supply.phases", 2.5, "whole number"),
        ("supply.looped", "no", "Write false, without quotes"),
        ("supply.looped", 1, "true for yes"),
        ("supply.earthing", "PME", 'Write "TN-C-S" here'),
        ("supply.earthing", "tt", 'Write "TT" here'),
        ("supply.earthing", "TNC-S", 'Did you mean "TN-C-S"'),
        ("supply.earthing", "zzz", "Leave the line out"),
        ("supply.earthing", 3, "Put the answer in quotes"),
        ("supply.ze_ohm", 1e6, "from 0.01 to 5000 Ω"),
        ("supply.ze_ohm", "0,18", "Write 0.18 alone"),
        ("supply.ze_ohm", "low", "Write the figure alone"),
        ("property.postcode", "QUILLBROOK", "a postcode"),
        ("property.postcode", "Z", "a postcode"),
        ("supply.meter_point", "1012345678930", "a meter number that adds up.* Read the last four"),
        ("supply.meter_point", "101234567890", "has 12 digits"),
        ("supply.meter_point", "S012345678903", "Only digits"),
        ("supply.readings.tea.at", "25:10", "a time of day"),
        ("cars.a.arrives_on", "19 December", "a date, as"),
        ("loads.a.same_as", "two words", "the id of a thing"),
        ("customer.name", "  ", "Leave the line out"),
    ],
)
def test_is_refused_with_what_to_do(key, given, says):
    if given == "1012345678930":
        given = "1012345678913"
    with pytest.raises(InputError, match=says) as caught:
        answer(key, given)
    assert caught.value.name == key


def test_a_range_runs_upward_over_possible_answers():
    fuse, ze = slot("supply.main_fuse_a").fact, slot("supply.ze_ohm").fact
    assert accept_range(fuse, 50, 90, "f") == (50.0, 90.0)
    assert accept_range(ze, 0.1, 0.35, "z") == (0.1, 0.35)
    for fact, low, high, says in [
        (fuse, 61, 79, "None of these lies in the range"),
        (fuse, "60", 80, "without quotes"),
        (ze, 0.35, 0.35, "the lower figure first"),
        (ze, 0.35, 0.1, "the lower figure first"),
        (ze, 0, 0.1, "from 0.01"),
        (slot("supply.looped").fact, False, True, "only for numbers"),
    ]:
        with pytest.raises(InputError, match=says):
            accept_range(fact, low, high, "k")


def test_a_few_are_at_least_two():
    fuse = slot("supply.main_fuse_a").fact
    assert accept_few(fuse, [60, 80, 60.0], "f") == (60.0, 80.0)
    for few in ([], [60], [60, 60.0]):
        with pytest.raises(InputError, match="two answers or more"):
            accept_few(fuse, few, "f")
