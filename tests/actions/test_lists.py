"""The lists say everything there is and are narrowed by a word."""

from __future__ import annotations

import pytest

from ampwright.actions.lists import list_clauses, list_facts, list_tables
from ampwright.foundations.errors import InputError, NotFoundError
from ampwright.tables.loader import table_names


def test_every_table_is_listed_with_its_place_and_trust():
    listed = list_tables()
    assert [each.name for each in listed] == list(table_names())
    assert all(each.place and each.rows and each.covers and each.gives for each in listed)
    flat = next(each for each in listed if each.name == "capacity/flat_70")
    assert flat.covers[1:] == ("loaded conductors: 2", "S: 1 to 16 mm²")


def test_facts_name_their_key_and_their_answers():
    fuse = {each.key: each for each in list_facts()}["supply.main_fuse_a"]
    assert fuse.answers == "one of 30, 40, 45, 60, 80 or 100 A"
    assert fuse.needed_for == ("seen before quoting, fitting and certifying",)


def test_things_inside_collections_are_listed_too():
    keys = {each.key for each in list_facts()}
    assert {"loads.all_listed", "loads.<id>.amps_a", "services.<id>.bond_mm2"} <= keys


def test_clauses_name_where_they_are_written():
    listed = {each.id: each for each in list_clauses()}
    assert listed["cable_carries_device"].says == "In ≤ Iz"
    assert listed["loop"].says == "Zs (Ω) = Ze + R1R2"
    assert all(each.places for each in listed.values())


@pytest.mark.parametrize("lister", [list_facts, list_tables, list_clauses])
class TestNarrowing:
    def test_by_a_word_whatever_its_case(self, lister):
        few = lister("CABLE")
        assert 0 < len(few) < len(lister())
        assert few == lister("cable")

    def test_all_parts_of_a_word_must_be_there(self, lister):
        assert len(lister("of the")) <= len(lister("of"))

    def test_a_slip_is_answered_with_the_nearest_word(self, lister):
        with pytest.raises(NotFoundError, match="Did you mean conductor"):
            lister("condcutor")

    def test_a_word_like_no_other_is_refused(self, lister):
        with pytest.raises(InputError, match="Try another word"):
            lister("xqqzw")
