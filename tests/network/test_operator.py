"""Whom the work is told to, and by whose rules it was judged."""

from __future__ import annotations

import pytest

from ampwright.network.operator import operator_told

from ..demand.homes import HALF_SPEED, home_of
from ..supply.given_basis import BASIS, LEAD, NEUTRAL
from .test_connection import decided


def told(meter_point=None, operator=None, basis=BASIS):
    said = {"supply.meter_point": meter_point, "supply.operator": operator}
    home = home_of({key: value for key, value in said.items() if value is not None})
    return operator_told(home, basis)


class TestWhom:
    # Lists of distributor ids, two copies that agree: 10 is Eastern England, 24 an independent.
    def test_an_areas_own_operator(self):
        made = told("1012345678903", "demo")
        assert (made.out.area, made.out.kind) == ("Eastern England", "area operator")
        assert not any(note.caution for note in made.notes)

    def test_an_independent_network_is_told_itself(self):
        made = told("24 1234567890 5", "demo")
        assert made.out.kind == "independent operator"
        assert "number 24, runs the wires of this estate" in made.notes[0].caution

    def test_whose_network_feeds_an_independent_one_is_asked(self):
        asked = told("2412345678905", "demo").notes[1]
        assert "which area's operator feeds its network" in asked.caution
        home = home_of({"supply.meter_point": "2412345678905", "supply.fed_by": "the area's"})
        made = operator_told(home, BASIS)
        assert made.out.fed_by == "the area's"
        assert made.notes[1].caution == ""
        assert made.notes[1].says.endswith("fed by the area's")

    def test_an_areas_own_network_is_not_asked_who_feeds_it(self):
        made = told("1012345678903", "demo")
        assert [note.telling.id for note in made.notes] == ["notice_addressed"]
        home = home_of({"supply.meter_point": "1012345678903", "supply.fed_by": "the area's"})
        assert operator_told(home, BASIS).out.fed_by == ""

    # The lists of distributor ids end at 38 and say that 39 and above exist.
    def test_a_number_newer_than_the_list_is_most_likely_independent(self):
        made = told("3912345678905", "demo")
        assert made.out.kind == "operator newer than the list"
        assert "number 39 is newer than the list" in made.notes[0].caution
        assert "most likely an independent" in made.notes[0].caution
        assert "which area's operator feeds its network" in made.notes[1].caution

    def test_a_network_that_is_closed_is_asked_about(self):
        assert "ask the supplier" in told("2812345678905", "demo").notes[0].caution

    @pytest.mark.parametrize("number", ["0912345678905", "81 1234 5678 9", "39 1234 5678 90"])
    def test_a_number_on_no_list_is_no_mistake(self, number):
        made = told(number, "the wires people")
        assert made.out.kind == ""
        assert "the wires people" in made.notes[0].caution

    def test_without_the_number_its_first_two_digits_are_wanted(self):
        made = told()
        assert "first two digits" in made.notes[0].caution
        assert (made.out.area, made.out.named) == ("", "")

    @pytest.mark.parametrize("number", [None, "1012345678903", "2412345678905", "3912345678905"])
    def test_never_makes_an_option_unsound(self, number):
        assert told(number).checks == ()


class TestWhoseRules:
    def test_the_profile_a_home_names_is_taken_where_it_exists(self):
        assert NEUTRAL.for_operator("demo").profile.id == "demo"
        assert NEUTRAL.for_operator("the wires people") is NEUTRAL
        assert NEUTRAL.for_operator("") is NEUTRAL
        assert NEUTRAL.for_operator("neutral") is NEUTRAL

    def test_its_numbers_keep_their_sources(self):
        shown = NEUTRAL.documented().for_operator("demo")
        assert shown.profile.threshold_a == 60.0
        assert "operators' form" in str(shown.profile.threshold_a.step.source)

    def test_another_profile_than_the_homes_is_said(self):
        assert "neutral" in told("1012345678903", "demo", NEUTRAL).notes[1].caution
        assert len(told("1012345678903", "neutral", NEUTRAL).notes) == 1


class TestWhoseReading:
    @pytest.mark.parametrize(
        ("basis", "counts", "words"),
        [(BASIS, True, "the operator profile demo has it: confirm with the operator"),
         (BASIS, False, "the operator's own word, against its profile demo"),
         (NEUTRAL, True, "on record or still to be asked for"),
         (NEUTRAL, False, "on record or still to be asked for")],
    )  # fmt: skip
    def test_the_answer_says_on_whose_reading_it_rests(self, basis, counts, words):
        made = decided(HALF_SPEED, 16.0, LEAD, counts_setting=counts, basis=basis)
        (rests,) = made.rests_on
        assert words in rests
