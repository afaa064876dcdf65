"""Asking, keeping by turns, and what stands while facts are open."""

from __future__ import annotations

import io
import json
import re
import tomllib
from functools import cache
from pathlib import Path

import jsonschema
import pytest

from ampwright.cli import main as cli
from ampwright.cli.main import YOURS_TO_MEND, main
from ampwright.survey.homefile import read

ROOT = Path(__file__).resolve().parents[2]
QUILLBROOK = ROOT / "examples" / "quillbrook-close.toml"
DAY = ("--date", "2026-11-25")
ON = ("--on", "2026-11-25")
WIDEST = 80
LOOPED = ("looped = { is = false", "looped = { one_of = [true, false]")
SHOWER = "\n[loads.shower]\npresent = { one_of = [true, false] }\namps_a = 37\n"


@cache
def schema(command: str) -> dict:
    return json.loads((ROOT / f"docs/reference/{command}.schema.json").read_text("utf-8"))


@pytest.fixture
def run(capsys, monkeypatch):
    """Runs a command line, with lines typed, and returns its status and what it said."""
    monkeypatch.delenv("FORCE_COLOR", raising=False)

    def call(*words, typed=""):
        monkeypatch.setattr(cli.sys, "stdin", io.StringIO(typed))
        try:
            status = main([str(word) for word in words])
        except SystemExit as stop:
            status = stop.code
        said = capsys.readouterr()
        return status, said.out, said.err

    return call


@pytest.fixture
def home(tmp_path):
    """A known home in which two things are open: a shower, and a second cable at the fuse."""
    text = QUILLBROOK.read_text("utf-8").replace(*LOOPED) + SHOWER
    path = tmp_path / "home.toml"
    path.write_text(text, encoding="utf-8")
    return path


class TestAsk:
    def test_what_can_be_said_comes_first_and_then_one_question(self, run, home):
        status, out, err = run("ask", home, *DAY)
        assert (status, err) == (0, "")
        assert out.startswith("Tell or ask?\n")
        text = " ".join(out.split())
        assert text.index("Say now") < text.index("Certain") < text.index("Ask now")
        assert "Ask now on the telephone, under a minute" in text
        assert "Is there an electric shower anywhere, even one you never use?" in text
        assert "no · yes · cannot say" in text
        assert "The decision turns on it" in text
        assert "VAT included" in text

    def test_a_channel_is_asked_only_what_it_can_answer(self, run, home):
        out = " ".join(run("ask", home, *DAY, "--channel", "photo")[1].split())
        assert "How many thick cables go into the bottom of the big fuse?" in out
        assert "electric shower anywhere" not in out.partition("Ask now")[2]
        assert "ring 105 at once" in out, "a caution before anybody looks at the meter"
        assert '--seen "photo …"' in out

    def test_all_lists_every_errand_and_what_was_taken(self, run, home):
        out = " ".join(run("ask", home, *DAY, "--all")[1].split())
        assert "electric shower anywhere" in out
        assert "How many thick cables" in out
        assert "Taken as usual" in out

    def test_what_no_answer_would_change_is_not_asked(self, run):
        status, out, _ = run("ask", QUILLBROOK, *DAY)
        assert status == 0
        assert out.startswith("Fit, then tell\n")
        assert "You do not have to wait." in out
        assert "Is there an electric shower" not in out

    def test_what_a_person_could_not_say_they_are_not_asked_again(self, run, home):
        words = ("answer", home, "loads.shower.present", "cannot say", "--told", "call")
        assert run(*words, "--by", "Tamsin", *ON)[0] == 0
        out = run("ask", home, *DAY, "--channel", "phone")[1]
        assert "electric shower anywhere" not in out.partition("Ask now")[2]

    def test_chances_are_words_and_never_stand_in_what_is_said_to_the_customer(self, run, home):
        answer = json.loads(run("ask", home, *DAY, "--json")[1])
        jsonschema.validate(answer, schema("ask"))
        said = " ".join(answer["say"])
        assert not re.search(r"likely|even|%|0\.\d", said.replace("very likely", ""))
        assert {each["chance"] for each in answer["now"]["could_be"]} <= {
            "very likely", "likely", "about even", "less likely", "unlikely",
        }  # fmt: skip

    def test_a_wrong_channel_is_refused(self, run, home):
        status, _, err = run("ask", home, "--channel", "post")
        assert status == YOURS_TO_MEND
        assert "phone" in err

    @pytest.mark.parametrize("more", [(), ("--all",), ("--channel", "photo")])
    def test_no_line_is_too_wide(self, run, home, more):
        out = run("ask", home, *DAY, *more)[1]
        lines = [line for line in out.splitlines() if not line.startswith("ampwright ")]
        assert max(map(len, lines)) <= WIDEST


class TestInterview:
    def test_each_answer_is_in_the_file_before_the_next_question(self, run, home):
        before = set(read(home.read_text("utf-8")).records)
        words = ("interview", home, "--by", "Tamsin", *ON, *DAY)
        status, out, _ = run(*words, typed="no\n")
        assert status == 0
        (new,) = set(read(home.read_text("utf-8")).records) - before
        assert (new.key, new.answer.value, new.by) == ("loads.shower.present", False, "Tamsin")
        assert f"Every answer is in {home}." in out

    def test_the_range_is_shown_before_and_after(self, run, home):
        out = run("interview", home, "--by", "Tamsin", *ON, *DAY, typed="no\n")[1]
        assert re.search(r"Kept: .*shower: no\.", out)
        assert re.search(r"£[\d,]+ to £[\d,]+ → £[\d,]+ to £[\d,]+", out)

    def test_what_is_not_understood_is_asked_again_and_later_is_left_out(self, run, home):
        before = home.read_bytes()
        out = run("interview", home, "--by", "T", *DAY, typed="perhaps\nlater\n")[1]
        assert "The answers are no or yes, or cannot say." in out
        assert out.count("Is there an electric shower") == 1, "it stands just above"
        assert out.count("> ") >= 2
        assert "Left for later: 1 question." in out
        assert home.read_bytes() == before

    def test_a_figure_with_a_letter_in_it_is_told_so(self, run, home):
        out = run("interview", home, "--by", "T", *DAY, "--channel", "photo", typed="8O\nstop\n")[1]
        assert "has a letter O in it" in " ".join(out.split()) or "is not an answer" in out

    def test_an_answer_is_kept_in_the_words_it_was_asked_in(self, run, home):
        words = ("interview", home, "--by", "Ro", "--channel", "photo", "--how", "photo 3")
        out = run(*words, *ON, *DAY, typed="one\n")[1]
        assert re.search(r"one · two", out)
        assert re.search(r"Kept: [^:]+: one\.", out)

    def test_back_takes_the_last_answer_back_and_asks_again(self, run, home):
        out = run("interview", home, "--by", "Tamsin", *ON, *DAY, typed="no\nback\nback\n")[1]
        assert re.search(r"Taken back: .*shower: no\.", out)
        assert out.count("Is there an electric shower") == 2
        assert "No answer was given yet" in out
        *_, first, back = tomllib.loads(home.read_text("utf-8"))["loads"]["shower"]["present"]
        assert (first["is"], len(back["withdraws"])) == (False, 1)

    def test_what_was_taken_back_can_be_said_again(self, run, home):
        out = run("interview", home, "--by", "Tamsin", *ON, *DAY, typed="no\nback\nno\n")[1]
        assert len(re.findall(r"Kept: .*shower: no\.", out)) == 2
        said = " ".join(run("ask", home, *DAY, "--channel", "phone")[1].split())
        assert "electric shower anywhere" not in said

    def test_one_empty_line_ends_nothing(self, run, home):
        out = run("interview", home, "--by", "T", *DAY, typed="\nhelp\n\nno\nstop\n")[1]
        assert "Nothing typed." in out
        assert "Kept:" in out

    @pytest.mark.parametrize("typed", ["", "\n", "stop\n"])
    def test_it_ends_when_told_to_and_nothing_is_lost(self, run, home, typed):
        before = home.read_bytes()
        status, out, _ = run("interview", home, "--by", "T", *DAY, typed=typed)
        assert status == 0
        assert "Every answer is in" in out
        assert home.read_bytes() == before

    def test_cannot_say_is_an_answer(self, run, home):
        run("interview", home, "--by", "Tamsin", *ON, *DAY, typed="not sure\n")
        assert 'cannot_say = ""' in home.read_text("utf-8")

    def test_photographs_are_read_by_a_name_and_kept_as_seen(self, run, home):
        words = ("interview", home, "--by", "Ro", "--channel", "photo", "--how", "photo 3")
        run(*words, *ON, *DAY, typed="one\n")
        loads = tomllib.loads(home.read_text("utf-8"))["supply"]["looped"]
        assert loads[-1] | {"on": 0} == {"is": False, "seen": "photo 3", "by": "Ro", "on": 0}

    @pytest.mark.parametrize("said", ["it is burnt on one side", "80, and it buzzes", "wet"])
    def test_danger_ends_it_at_once_and_is_kept(self, run, home, said):
        words = ("interview", home, "--by", "T", "--channel", "photo", *ON, *DAY)
        status, out, _ = run(*words, typed=f"{said}\none\n")
        assert status == 0
        assert "ring 105 now" in " ".join(out.split())
        assert out.count("> ") == 1, "nothing more is asked"
        held = tomllib.loads(home.read_text("utf-8"))
        assert held["notes"]["danger-1"]["text"]["is"] == said
        assert held["supply"]["condition"][-1]["one_of"] == ["dangerous", "doubtful"]

    def test_what_is_said_not_to_be_so_ends_nothing(self, run, home):
        out = run("interview", home, "--by", "T", *DAY, typed="no, nothing burnt\nstop\n")[1]
        assert "105" not in out


class TestOptions:
    def test_while_facts_are_open_what_is_possible_and_the_range_stand_there(self, run, home):
        out = " ".join(run("options", home, *DAY)[1].split())
        assert "Possible by how common answers are" in out
        assert re.search(r"network \w[\w ]+: the network", out)
        assert re.search(r"Range VAT included.*£[\d,]+ to £[\d,]+; nine homes in ten", out)

    def test_with_nothing_open_there_is_no_range_of_homes(self, run):
        answer = json.loads(run("options", QUILLBROOK, *DAY, "--json")[1])
        jsonschema.validate(answer, schema("options"))
        assert answer["now"] is None
