"""Words that people say or type become the answer they mean, or are refused with the reason."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ampwright.foundations.answers import Between, CannotSay, Is, OneOf
from ampwright.foundations.errors import InputError
from ampwright.survey.layout import slot
from ampwright.survey.spoken import choices, spoken
from ampwright.survey.wording import as_words

from .generating import SLOTS, values


@pytest.mark.parametrize(
    ("key", "words", "meant"),
    [
        ("supply.main_fuse_a", "80", Is(80.0)),
        ("supply.main_fuse_a", "80A", Is(80.0)),
        ("supply.main_fuse_a", " 60  or 80 amps ", OneOf((60.0, 80.0))),
        ("supply.main_fuse_a", "60, 80 or 100", OneOf((60.0, 80.0, 100.0))),
        ("supply.main_fuse_a", "60 to 80", Between(60.0, 80.0)),
        ("supply.phases", "3", Is(3)),
        ("legs.a.length_m", "between 5 and 9.5 metres", Between(5.0, 9.5)),
        ("legs.a.length_m", "5-9", Between(5.0, 9.0)),
        ("cars.0.miles_a_year", "10,000 miles", Is(10000.0)),
        ("supply.looped", "yes", Is(True)),
        ("supply.looped", "yes or no", OneOf((True, False))),
        ("supply.earthing", "pme", Is("TN-C-S")),
        ("supply.earthing", "tn-s or rod", OneOf(("TN-S", "TT"))),
        ("supply.meter_in", "garage or store", Is("garage or store")),
        ("supply.meter_in", "indoors or garage or store", OneOf(("indoors", "garage or store"))),
        ("supply.smart_meter", "yes, half-hourly", Is("yes, half-hourly")),
        ("supply.smart_meter", "yes or no", OneOf(("yes", "no"))),
        ("customer.own_words", "left or right, 60 or 80", Is("left or right, 60 or 80")),
        ("supply.looped", "Two", Is(True)),
        ("supply.phases", "three", Is(3)),
        ("supply.tails_mm2", "a finger", Is(25.0)),
        ("supply.isolator", "no", Is("none")),
        ("supply.earthing", "to a rod in the ground or TN-S", OneOf(("TT", "TN-S"))),
        ("loads.shower.present", "cannot say", CannotSay()),
        ("loads.shower.present", "Can't say: never looked", CannotSay("never looked")),
    ],
)  # fmt: skip
def test_what_words_mean(key, words, meant):
    assert spoken(slot(key).fact, words, key) == meant


@pytest.mark.parametrize(
    ("key", "words", "says"),
    [
        ("supply.main_fuse_a", "18O", "letter O"),
        ("supply.main_fuse_a", "8 kW", "figure in A"),
        ("supply.main_fuse_a", "63", "Is it 60?"),
        ("supply.main_fuse_a", "about 80", "Write the figure alone"),
        ("supply.main_fuse_a", "", "one of"),
        ("legs.a.length_m", "9 to 5", "lower figure first"),
        ("supply.looped", "perhaps", "true for yes"),
        ("supply.looped", "north", "true for yes"),
        ("supply.earthing", "TNX", "Did you mean"),
        ("supply.earthing", "tn-s or", "one of"),
        ("customer.own_words", "  ", "words"),
    ],
)
def test_what_means_nothing_is_refused(key, words, says):
    with pytest.raises(InputError, match=says):
        spoken(slot(key).fact, words, key)


@given(st.sampled_from(SLOTS).flatmap(lambda s: st.tuples(st.just(s), values(s.fact))))
def test_every_value_in_words_is_heard_as_itself(found):
    where, value = found
    fact = where.fact
    if isinstance(value, float):
        value = float(as_words(value))
    if isinstance(value, str) and not fact.allowed:
        return  # free words stand as they are written, less their blanks
    if fact.is_number and fact.between and not fact.between[0] <= value <= fact.between[1]:
        return  # rounded out of the range
    said = f"{as_words(value)} {fact.unit}" if fact.is_number and fact.unit else as_words(value)
    if "e" in as_words(value) and fact.is_number:
        return  # nobody says a figure in powers of ten
    assert spoken(fact, said, where.key) == Is(value)


@given(st.sampled_from([each for each in SLOTS if each.fact.allowed]))
def test_every_choice_is_heard_as_what_it_stands_for(where):
    heard = [spoken(where.fact, words, where.key) for words in choices(where.fact)]
    assert heard == [Is(value) for value in where.fact.in_order]
