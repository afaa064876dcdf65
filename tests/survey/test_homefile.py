"""A home file is read whole or refused with every problem, each at its line."""

from __future__ import annotations

import pytest

from ampwright.foundations.answers import Between, CannotSay, Is, OneOf
from ampwright.foundations.errors import BadFileError
from ampwright.foundations.source import Evidence
from ampwright.survey.homefile import read
from ampwright.survey.records import Moment

HEAD = '[said]\nevidence = "told"\nby = "Jess"\non = 2026-11-24\n'


def problems(text):
    with pytest.raises(BadFileError) as caught:
        read(text)
    return [(each.line, each.path, str(each)) for each in caught.value.problems]


def only(text):
    (found,) = problems(text)
    return found


def test_every_form_of_answer():
    text = f"""title = "A cottage"
home = "cot"
{HEAD}
[supply]
phases = 1
main_fuse_a = [
  {{ is = 100, by = "him" }},
  {{ one_of = [60, 80], seen = "photo 2, blurred", by = "Ro", moment = "left", job = "j1" }},
]
ze_ohm = {{ between = [0.1, 0.3], measured = "tester 2" }}
looped = {{ cannot_say = "dark cupboard" }}
[boards.main.outlets]
3-L2 = {{ blank = true, label = {{ is = "spare", id = "r-1" }} }}
"""
    found = read(text)
    assert (found.home, found.title) == ("cot", "A cottage")
    by_key = {}
    for row in found.records:
        by_key.setdefault(row.key, []).append(row)
    assert by_key["supply.phases"][0].answer == Is(1)
    assert by_key["supply.phases"][0].by == "Jess"
    told, seen = by_key["supply.main_fuse_a"]
    assert (told.evidence, told.by, told.answer) == (Evidence.TOLD, "him", Is(100.0))
    assert seen.answer == OneOf((60.0, 80.0))
    assert (seen.evidence, seen.how, seen.moment, seen.job) == (
        Evidence.SEEN, "photo 2, blurred", Moment.LEFT, "j1"
    )  # fmt: skip
    assert by_key["supply.ze_ohm"][0].answer == Between(0.1, 0.3)
    assert by_key["supply.looped"][0].answer == CannotSay("dark cupboard")
    assert by_key["boards.main.outlets.3-L2.label"][0].id == "r-1"


def test_all_problems_at_once_and_nothing_read():
    text = f"""{HEAD}
[supply]
main_fuse_a = "18O"      # line 7
earthing = "PME"
looped = "no"
main_fuse = 80

[loads.kil n]
kind = "fixed"
"""
    text = text.replace("[loads.kil n]", '[loads."kil n"]')
    found = problems(text)
    assert [line for line, _, _ in found] == [7, 8, 9, 10, 12]
    assert [path for _, path, _ in found] == [
        "supply.main_fuse_a", "supply.earthing", "supply.looped", "supply.main_fuse",
        "loads.kil n",
    ]  # fmt: skip
    assert "Did you mean main_fuse_a?" in found[3][2]


@pytest.mark.parametrize(
    ("body", "line", "says"),
    [
        ("[supply]\nphases = { is = 1, on = 2026-11-24T10:00:00 }", 6, "a date"),
        ("[supply]\nphases = { is = 1, moment = 'later' }", 6, "one of found, planned, left"),
        ("[supply]\nphases = { is = 1, one_of = [1, 3] }", 6, "Make it two records"),
        ("[supply]\nphases = { is = 1, told = '', seen = 'photo' }", 6, "one kind of evidence"),
        ("[supply]\nphases = { is = 1, scene = 'photo' }", 6, "Did you mean seen"),
        ("[supply]\nphases = { is = 1, seen = '' }", 6, "who read it"),
        ("[supply]\nphases = { is = 1, seen = 'photo 1', by = '' }", 6, "who read it"),
        ("[supply]\nphases = { is = 1, measured = '' }", 6, "the instrument"),
        ("[supply]\nphases = { told = 'yes' }", 6, "an answer"),
        ("[supply]\nphases = { cannot_say = 3 }", 6, "words in quotes"),
        ("[supply]\nphases = { is = 1, by = 3 }", 6, "words in quotes"),
        ("[supply]\nphases = { is = 1, id = 'a b' }", 6, "an id of letters"),
        ("[supply]\nphases = { is = 1, withdraws = 'gone' }", 6, "another record of this fact"),
        ("[supply]\nphases = { is = 1, withdraws = 3 }", 6, "the id of a record"),
        ("[supply]\nphases = []", 6, "Leave the line out"),
        ("[supply]\nphases = { one_of = 1 }", 6, "a list in square brackets"),
        ("[supply]\nmain_fuse_a = { between = [60] }", 6, "two figures"),
        ("[supply]\nmain_fuse_a = [\n  80,\n  81,\n]", 8, "Is it 80"),
        ("supply = 3", 5, "evidence"),
        ("[[loads]]\nkind = 'fixed'", 5, "Put its answers under"),
        ("[loads]\nkiln = 3", 6, "Put its answers under [loads.kiln]"),
        ("[services.drain]\npresent = true", 5, "one of water, gas, oil"),
        ("[suply]\nphases = 1", 5, "Did you mean supply?"),
        ("[supply]\nphases = 1\n[supply.readings.tea]\nvolts = 230", 8, "Did you mean volts_v?"),
        ("[supply]\nphases = [{ is = 1, id = 'a' }, { is = 3, id = 'a' }]", 6, "has this id"),
    ],
)
def test_one_problem_at_its_line(body, line, says):
    found = problems(HEAD + body)
    if body == "supply = 3":
        assert "one of evidence, how, by" in found[0][2]
        return
    assert len(found) == 1
    assert found[0][0] == line
    assert says in found[0][2]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("[supply]\nphases = 1", "Say told, seen or measured here"),
        ("said = 3", "a table"),
        ('[said]\nevidence = "tolled"', "Did you mean told?"),
        ('[said]\nwho = "Jess"', "one of evidence, how, by"),
        ("title = 3", "words in quotes"),
        ("[said]\non = 24", "Without quotes"),
    ],
)
def test_what_a_file_says_of_all_answers(text, says):
    assert says in only(text)[2]


def test_a_withdrawal_may_not_name_the_record_of_another_fact():
    text = HEAD + "[supply]\nphases = { is = 1, id = 'a' }\nlooped = { withdraws = 'a' }\n"
    assert only(text)[:2] == (7, "supply.looped")


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("main_fuse_a = 80 A", "without its unit"),
        ("main_fuse_a = 8O", "letter O"),
        ("main_fuse_a = 080", "nought in front"),
        ("ze_ohm = 0,18", "decimal comma"),
        ("looped = no", "Write false for no"),
        ("looped = Yes", "Write true for yes"),
        ("earthing = TT", "Put words in quotes"),
        ('earthing = "TT', "Close the quotes"),
        ("earthing =", "There is no answer"),
        ("phases = 1", "answered twice"),
        ("main_fuse_a = { is = 80", "on one line"),
        ("main_fuse_a = [80 60]", "Close every bracket"),
    ],
)
def test_what_is_not_toml_is_explained_at_its_line(line, says):
    at, path, words = only(f"{HEAD}[supply]\nphases = 1\n{line}\nlooped_too = false\n".replace(
        "looped_too = false\n", ""))  # fmt: skip
    assert at == 7
    assert path == f"supply.{line.split()[0]}"
    assert says in words


def test_mistakes_of_form_do_not_hide_the_others():
    text = f"{HEAD}[supply]\nphases = one\nlooped = no\nearthing = 'PME'\n[loads.kiln]\nkid = 1\n"
    assert [line for line, _, _ in problems(text)] == [6, 7, 8, 10]


@pytest.mark.parametrize(
    ("text", "line", "says"),
    [
        ("[supply]\n[loads]\n[supply]\n", 3, "This heading stands twice"),
        ("[supply]\nphases = [\n  1,\n\n[loads]\n", 5, "A list above this line is not closed"),
        ("[supply]\nphases = [\n  1,\n", 2, "Close every bracket"),
        ("[supply]\nphases = { is = 1,\n told = '' }\n", 2, "on one line"),
        ("[supply\nphases = 1\n", 1, "Close the heading"),
        ("= 3\n", 1, "Put the name of the fact"),
        ("just words\n", 1, "to make it a remark"),
    ],
)
def test_a_text_without_the_form_of_a_file(text, line, says):
    at, _, words = only(text)
    assert at == line
    assert says in words


def test_the_message_names_the_file_and_counts():
    with pytest.raises(BadFileError, match=r"cot.toml: 2 problems, nothing was read") as caught:
        read("[supply]\nphases = 9\nlooped = 9\n", "cot.toml")
    assert "line 2: supply.phases is 9; expected one of 1 or 3. Is it 3?" in str(caught.value)
