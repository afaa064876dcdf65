"""Records go into a file and come back the same; one more goes in and nothing else moves."""

from __future__ import annotations

import re
from datetime import date

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from ampwright.foundations.answers import CannotSay, Is, OneOf
from ampwright.foundations.errors import BadFileError, InputError
from ampwright.foundations.source import Evidence
from ampwright.survey.homefile import read
from ampwright.survey.layout import slot
from ampwright.survey.records import Moment, Record
from ampwright.survey.scan import lines_of
from ampwright.survey.writing import add, write

from .generating import IDS, record, records

NUMBER_LINE = re.compile(r"(\w+) = (-?[\d.e+-]+)$")


@given(records(), st.text(max_size=8))
@settings(max_examples=120)
def test_reading_what_was_written_gives_the_same_records(rows, title):
    found = read(write(rows, title))
    assert set(found.records) == set(rows)
    assert found.title == title


@given(records(max_size=8))
def test_what_was_read_is_written_the_same_again(rows):
    text = write(rows)
    assert write(read(text).records) == text


@given(records(max_size=8), st.lists(record(), min_size=1, max_size=4))
@settings(max_examples=50)
def test_adding_adds_just_that(rows, more):
    text = write(rows)
    for each in more:
        text = add(text, each)
    assert set(read(text).records) == {*rows, *more}
    assert add(text, more[0]) == text


@given(records(max_size=8), record())
@settings(max_examples=60)
def test_nothing_that_stood_there_is_touched_by_an_addition(rows, new):
    remarked = [
        f"{line}  # remark {number}" if re.match(r"\w+ = .*[^\[]$", line) else line
        for number, line in enumerate(write(rows).splitlines())
    ]
    text = "# first\n" + "\n".join(remarked) + "\n# last\n"
    after = iter(add(text, new))
    missing = [letter for letter in text if letter not in after]  # an iterator: in their order
    assert not missing


SAME = [
    "[loads.kiln]\namps_a = 9\n[loads.saw]\n",
    "loads.kiln.amps_a = 9\nloads.saw = {}\n",
    "[loads]\nkiln.amps_a = 9  # plate\nsaw = {}\n",
    "[loads]\nkiln = { amps_a = 9 }\nsaw = { }",
    "loads = { kiln = { amps_a = 9 }, saw = {} }\n",
    "[loads.kiln]\namps_a = [9, { is = 9, told = 'twice' }]\n[loads.saw]\n",
    "[loads.kiln]\namps_a = [\n  9,  # a remark with ]\n  { is = 9, told = 'twice' } # and\n"
    "  # last\n]\n[loads.saw]\n",
    "[[loads.kiln.amps_a]]\nis = 9\n# between\n[loads.saw]\n",
    "[loads.kiln.amps_a]\nis = 9\n\n[loads.saw]\n",
]
"""Ways to write the same, of which only some come from our own hand."""
MORE = [
    ("loads.kiln.amps_a", Is(12.0)),
    ("loads.kiln.kind", Is("fixed")),
    ("loads.saw.amps_a", Is(4.0)),
    ("loads.shower.present", Is(False)),
    ("supply.phases", Is(1)),
    ("supply.readings.tea.volts_v", Is(231.0)),
    ("boards.main.outlets.3-L2.label", Is("kiln")),
]


@pytest.mark.parametrize("key, answer", MORE, ids=[key for key, _ in MORE])
@pytest.mark.parametrize("text", SAME)
def test_every_way_of_writing_takes_one_more(text, key, answer):
    text = f'home = "cot" # remark\nsaid.evidence = "told"\n{text}'
    record = Record(home="cot", key=key, answer=answer, how="call")
    after = add(text, record)
    assert set(read(after).records) == {*read(text).records, record}
    assert after != text
    letters = iter(after)
    assert [letter for letter in text if letter not in letters] == []
    for line in text.splitlines():
        if "#" in line:
            assert line.partition("#")[2] in after


def test_an_answer_spread_over_lines_is_refused_with_what_to_do():
    text = 'said.evidence = "told"\nsupply.main_fuse_a.is = 80\n'
    with pytest.raises(InputError, match="Write it on one line"):
        add(text, Record(home="", key="supply.main_fuse_a", answer=Is(60.0)))


@given(records(), st.data())
@settings(max_examples=50)
def test_a_wrong_figure_is_reported_at_its_line(rows, data):
    lines = write(rows).splitlines()
    figures = [at for at, line in enumerate(lines) if NUMBER_LINE.match(line)]
    assume(figures)
    at = data.draw(st.sampled_from(figures))
    lines[at] = NUMBER_LINE.sub(r'\1 = "18O"', lines[at])
    with pytest.raises(BadFileError) as caught:
        read("\n".join(lines))
    (problem,) = caught.value.problems
    assert problem.line == at + 1
    assert problem.value == "18O"


@given(records())
def test_every_key_is_found_at_its_line(rows):
    text = write(rows)
    lines = text.splitlines()
    places = lines_of(text)
    for row in rows:
        name = row.key.rpartition(".")[2]
        assert lines[places[tuple(row.key.split("."))] - 1].startswith(f"{name} = ")


FUSE = Record(home="cot", key="supply.main_fuse_a", answer=Is(80.0), by="Jess")


def test_an_answer_grows_into_a_list_and_keeps_its_remark():
    text = (
        'home = "cot"\n\n[supply]\n# at the head\nmain_fuse_a = { is = 100, told = "" } # says he\n'
    )
    seen = Record(
        home="cot", key=FUSE.key, answer=Is(80.0), evidence=Evidence.SEEN, how="photo 2",
        by="Ro", on=date(2026, 11, 24),
    )  # fmt: skip
    assert add(text, seen).splitlines()[3:] == [
        "# at the head",
        "main_fuse_a = [",
        '  { is = 100, told = "" },',
        '  { is = 80, seen = "photo 2", by = "Ro", on = 2026-11-24 },',
        "] # says he",
    ]


def test_a_thing_that_was_only_named_stays_when_it_is_described():
    text = '[said]\nevidence = "told"\n[loads.kiln]\n'
    (named,) = read(text).records
    assert (named.key, named.answer) == ("loads.kiln.present", Is(True))
    kind = Record(home="", key="loads.kiln.kind", answer=Is("fixed"))
    assert set(read(add(text, kind)).records) == {named, kind}


def test_a_list_of_tables_takes_one_more():
    text = (
        '[[supply.main_fuse_a]]\nis = 100\ntold = ""\n[[supply.main_fuse_a]]\nis = 80\ntold = "x"\n'
    )
    assert len(read(text).records) == len(read(add(text, Record(
        home="", key="supply.main_fuse_a", answer=Is(60.0)))).records) - 1  # fmt: skip


def test_a_record_of_another_home_does_not_go_in():
    with pytest.raises(InputError, match="as the file says"):
        add('home = "barn"\n', FUSE)
    with pytest.raises(InputError, match="one home"):
        write([FUSE, Record(home="barn", key=FUSE.key, answer=Is(80.0))])


def test_moments_ids_and_links_come_back():
    rows = [
        FUSE,
        Record(home="cot", key=FUSE.key, answer=None, withdraws=(FUSE.id,), id="undo-1"),
        Record(home="cot", key=FUSE.key, answer=Is(60.0), since=(FUSE.id,), job="j1"),
        Record(home="cot", key=FUSE.key, answer=Is(60.0), moment=Moment.LEFT, job="j1"),
        Record(home="cot", key="supply.looped", answer=OneOf((True, False)), phone="p7"),
        Record(home="cot", key="loads.shower.present", answer=CannotSay("never looked")),
    ]
    assert set(read(write(rows)).records) == set(rows)


def test_nothing_makes_an_empty_file():
    assert write([]) == ""
    assert read("").records == ()


def test_the_ids_used_here_are_of_the_register():
    for path, things in IDS.items():
        assert slot(f"{path}.{things[0]}.present")
