"""Each command: what it says when all is well, and how it refuses."""

from __future__ import annotations

import io
import json
import re
from datetime import date
from functools import cache
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path

import jsonschema
import pytest

from ampwright.actions import files
from ampwright.actions.cautions import ALWAYS
from ampwright.actions.design_run import run_design
from ampwright.actions.json_shape import json_of
from ampwright.actions.options import answer_for
from ampwright.actions.seeing import Terms, see
from ampwright.actions.working import stage_answers
from ampwright.cli import working
from ampwright.cli.main import COMMANDS, LISTS, OUR_FAULT, YOURS_TO_MEND, main, status_of
from ampwright.cli.options import show
from ampwright.cli.sheet import Sheet
from ampwright.foundations.errors import AmpwrightError, TableCardError

ROOT = Path(__file__).resolve().parents[2]
EXAMPLES = sorted((ROOT / "examples").glob("*.toml"))
QUILLBROOK = ROOT / "examples" / "quillbrook-close.toml"
DAY = ("--date", "2026-11-25")
WIDEST = 80

TOOL = spec_from_file_location("docs_commands", ROOT / "tools" / "docs_commands.py")
docs_commands = module_from_spec(TOOL)
TOOL.loader.exec_module(docs_commands)


@cache
def schema(command: str) -> dict:
    return json.loads((ROOT / f"docs/reference/{command}.schema.json").read_text("utf-8"))


@pytest.fixture
def run(capsys, monkeypatch):
    """Runs a command line and returns its status, what it said and what it complained of."""
    monkeypatch.delenv("FORCE_COLOR", raising=False)

    def call(*words):
        try:
            status = main([str(word) for word in words])
        except SystemExit as stop:
            status = stop.code
        said = capsys.readouterr()
        return status, said.out, said.err

    return call


def changed(tmp_path, *changes):
    """The example home with some words of its file changed."""
    text = QUILLBROOK.read_text("utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    path = tmp_path / "home.toml"
    path.write_text(text, encoding="utf-8")
    return path


class TestOptions:
    def test_the_decision_comes_first_in_its_own_words(self, run):
        status, out, err = run("options", QUILLBROOK, *DAY)
        assert (status, err) == (0, "")
        assert out.startswith("Fit, then tell\n")
        assert "Work that A needs first" in out
        assert "then tell the network operator within 28 days." in " ".join(out.split())

    # The home is the first of the worked homes; its numbers were reckoned by hand beforehand.
    @pytest.mark.parametrize("said", [
        "53.7 A of 80 A", "6 mm² flat twin and earth, 8 m", "1.87 V, 0.81 %", "214.3 V",
        "0.281 Ω", "2,540 kWh: £203 at night, £663 by day", "57 min of 5 h",
    ])  # fmt: skip
    def test_numbers_reckoned_by_hand_are_there(self, run, said):
        _, out, _ = run("options", QUILLBROOK, *DAY)
        assert said in " ".join(out.split())

    @pytest.mark.parametrize(
        ("change", "first"),
        [
            (('condition = { is = "sound"', 'condition = { is = "dangerous"'), "Stop until"),
            (("amps_a = 15", "amps_a = 32"), "Fit with a limit, then tell"),
            (("looped = { is = false", "looped = { is = true"), "Ask first"),
            (("looped = { is = false", "looped = { one_of = [true, false]"), "Tell or ask?"),
        ],
    )
    def test_every_decision_has_its_words(self, run, tmp_path, change, first):
        status, out, _ = run("options", changed(tmp_path, change), *DAY)
        assert status == 0
        assert out.startswith(first)

    def test_an_open_fact_is_asked_for_and_its_values_named(self, run, tmp_path):
        path = changed(tmp_path, ("looped = { is = false", "looped = { one_of = [true, false]"))
        _, out, _ = run("options", path, *DAY)
        assert re.search(r"decides +How many thick cables", out)
        assert "Leading so far: A" in out
        assert "very likely" in out or "likely" in out
        assert not re.search(r"\b0\.\d+ (chance|likely)", out)

    def test_what_is_not_known_is_not_made_up(self, run, tmp_path):
        path = changed(tmp_path, ("all_listed = true  # no shower", "# all_listed  # no shower"))
        _, out, _ = run("options", path, *DAY)
        assert out.startswith("Tell or ask?")
        assert re.search(r"not known yet +[\w ,;]*supply carries", " ".join(out.split()))

    def test_an_empty_home_is_answered_with_the_first_question(self, run, tmp_path):
        path = tmp_path / "empty.toml"
        path.write_text('title = "somebody rang"\n', encoding="utf-8")
        status, out, _ = run("options", path, *DAY)
        assert status == 0
        assert out.startswith("Tell or ask?")
        assert "Cautions" in out

    def test_the_operator_named_in_the_home_stands_unless_another_is_given(self, run):
        assert "Operator profile demo:" in run("options", QUILLBROOK, *DAY)[1]
        assert (
            "Operator profile neutral:"
            in run("options", QUILLBROOK, *DAY, "--profile", "neutral")[1]
        )

    def test_a_profile_nobody_wrote_is_refused(self, run):
        status, out, err = run("options", QUILLBROOK, "--profile", "neutrl")
        assert (status, out) == (YOURS_TO_MEND, "")
        assert "Did you mean neutral?" in err

    def test_the_day_is_an_argument(self, run):
        assert (
            "Designed for Thu 10 Dec 2026" in run("options", QUILLBROOK, "--date", "2026-12-10")[1]
        )
        status, out, err = run("options", QUILLBROOK, "--date", "soon")
        assert (status, out) == (YOURS_TO_MEND, "")
        assert "soon" in err

    def test_the_edition_and_who_decides_are_always_said(self, run):
        out = " ".join(run("options", QUILLBROOK, *DAY)[1].split())
        assert "A4:2026" in out
        assert "a competent, licensed person decides" in out

    def test_a_paper_is_written_and_named(self, run, tmp_path):
        paper = tmp_path / "paper.pdf"
        status, out, _ = run("options", QUILLBROOK, *DAY, "--pdf", paper)
        assert status == 0
        assert paper.read_bytes().startswith(b"%PDF-")
        assert out.rstrip().endswith("paper.pdf.")

    def test_a_paper_that_cannot_be_written_leaves_nothing(self, run, tmp_path):
        status, out, err = run("options", QUILLBROOK, *DAY, "--pdf", tmp_path / "no" / "p.pdf")
        assert (status, out) == (YOURS_TO_MEND, "")
        assert "Make it first" in err
        assert not list(tmp_path.iterdir())


class TestWorking:
    def test_each_check_has_its_outcome_its_numbers_and_its_place(self, run):
        status, out, _ = run("working", QUILLBROOK, "A", *DAY)
        text = " ".join(out.split())
        assert status == 0
        assert "All checks together: pass" in out
        assert "In ≤ Iz: 32 A against 47 A [BS 7671:2018+A2:2022, 433.1.1" in text
        assert "Zs = Ze + (R1 + R2) = 0.18 + 0.1007 = 0.2807 Ω [BS 7671" in text
        assert "measured, loop tester 2" in text
        assert "(memory)" in text

    def test_an_option_may_be_named_by_the_beginning_of_its_id(self, run):
        whole = json.loads(run("options", QUILLBROOK, *DAY, "--json")[1])["options"][0]["id"]
        assert (
            run("working", QUILLBROOK, whole, *DAY)[1] == run("working", QUILLBROOK, "a", *DAY)[1]
        )
        assert run("working", QUILLBROOK, whole[:-3], *DAY)[0] == 0

    def test_a_wrong_option_is_answered_with_the_nearest(self, run):
        status, out, err = run(
            "working", QUILLBROOK, "front-window/main/1ph-32a/flat/pme/window-lead+bond-gas", *DAY
        )
        assert (status, out) == (YOURS_TO_MEND, "")
        assert "Did you mean front-window/main/1ph-32a/flat/pme/window-lead+bond-water?" in err

    def test_a_beginning_that_fits_several_names_them(self, run):
        status, _, err = run("working", QUILLBROOK, "front-window/main/1ph-32a/flat/pme", *DAY)
        assert status == YOURS_TO_MEND
        assert "window-socket+bond-water" in err

    def test_one_home_of_several_is_named(self, run, tmp_path):
        path = changed(tmp_path, ("looped = { is = false", "looped = { one_of = [true, false]"))
        out = run("working", path, "A", *DAY)[1]
        assert "Worked out in the most usual of the homes" in out
        assert "Looped or shared service: no" in out


class TestWhyNot:
    def test_counts_add_up(self, run):
        answer = json.loads(run("why-not", QUILLBROOK, *DAY, "--json")[1])
        offered = answer["nothing_beats"]
        assert answer["considered"] == answer["choices_ruled_out"] + answer["beaten"] + offered
        assert answer["beaten"] == sum(each["choices"] for each in answer["beaten_by"])

    def test_parts_of_a_choice_share_out_the_whole(self, run):
        def count(word):
            return json.loads(run("why-not", QUILLBROOK, word, *DAY, "--json")[1])["considered"]

        assert count("pme") + count("rod") == count("")
        assert count("flat") + count("sheathed") + count("armoured") == count("")

    def test_what_loses_to_one_option_stands_in_one_line_whatever_work_some_homes_need(self, run):
        answer = json.loads(run("why-not", ROOT / "examples/tarrant-rise.toml", *DAY, "--json")[1])
        lines = [(each["loses_to"], tuple(each["in_what"])) for each in answer["beaten_by"]]
        assert len(lines) == len(set(lines))
        assert not any(each.endswith("+bond-gas") for each in answer["offered"])
        assert len(answer["offered"]) < answer["nothing_beats"]
        assert all(each["letter"] for each in answer["beaten_by"])

    def test_says_what_fails_with_both_numbers(self, run):
        out = " ".join(run("why-not", QUILLBROOK, *DAY)[1].split())
        assert "main bond present, connected and ≥ its least size 0 mm² against 10 mm²" in out

    def test_an_unknown_word_is_answered_with_what_is_known(self, run):
        status, out, err = run("why-not", QUILLBROOK, "armored", *DAY)
        assert (status, out) == (YOURS_TO_MEND, "")
        assert "Did you mean armoured?" in err

    def test_three_lines_on_a_supply_with_one(self, run):
        status, _, err = run("why-not", QUILLBROOK, "3ph", *DAY)
        assert status == YOURS_TO_MEND
        assert "this supply has fewer" in err


class TestValidate:
    def test_a_sound_file_is_summed_up(self, run):
        status, out, _ = run("validate", QUILLBROOK)
        assert status == 0
        assert out.startswith("Sound\n")
        assert "loads: boiler" in out

    def test_a_bad_file_is_refused_whole_with_every_problem_and_its_line(self, run, tmp_path):
        path = changed(
            tmp_path,
            ("main_fuse_a = { is = 80", 'main_fuse_a = { is = "8O"'),
            ("tails_mm2", "tails_mm3"),
            ('earthing = { is = "TN-C-S"', 'earthing = { is = "PME"'),
        )
        lines = path.read_text("utf-8").splitlines()
        for command in ("validate", "options"):
            status, out, err = run(command, path)
            assert (status, out) == (YOURS_TO_MEND, "")
            assert "3 problems, nothing was read" in err
            for word in ("main_fuse_a = ", "tails_mm3", "earthing = { is"):
                number = next(i for i, line in enumerate(lines, 1) if line.startswith(word))
                assert f"line {number}:" in err

    def test_people_who_disagree_are_shown(self, run, tmp_path):
        both = "overhead = [{ is = true, told = 'call' }, { is = false, told = 'second call' }]"
        out = run("validate", changed(tmp_path, ("overhead = false", both)))[1]
        assert "Disputed" in out
        assert "Overhead service" in out


class TestLists:
    @pytest.mark.parametrize("name", [name for name, _, _ in LISTS])
    def test_whole_and_narrowed(self, run, name):
        whole, few = run("list", name)[1], run("list", name, "conductor")[1]
        assert 0 < few.count("\n") < whole.count("\n")
        assert json.loads(run("list", name, "conductor", "--json")[1])

    def test_a_slip_is_answered(self, run):
        status, out, err = run("list", "facts", "fuze")
        assert (status, out) == (YOURS_TO_MEND, "")
        assert "Did you mean fuse?" in err


class TestAnswer:
    def test_one_answer_goes_in_and_all_else_stays(self, run, tmp_path):
        path = changed(tmp_path)
        before = path.read_text("utf-8").splitlines()
        words = ("answer", path, "supply.meter_in", "outside", "--told", "call", "--by", "Tamsin")
        status, out, err = run(*words, "--on", "2026-11-25")
        assert (status, err) == (0, "")
        assert out.startswith("Kept\nPlace of the meter: outside cabinet\n")
        added = [line for line in path.read_text("utf-8").splitlines() if line not in before]
        assert [line for line in added if "meter_in" in line] == [
            'meter_in = { is = "outside cabinet", told = "call", by = "Tamsin", on = 2026-11-25 }'
        ]
        assert run(*words, "--on", "2026-11-25")[1].startswith("The file says so already")

    def test_weaker_evidence_is_kept_and_overruled(self, run, tmp_path):
        path = changed(tmp_path)
        words = ("answer", path, "supply.main_fuse_a", "100 amps", "--told", "call", "--by", "Tim")
        out = run(*words)[1]
        assert "Overruled by better evidence, and kept: told 100 A, call." in out
        assert "We work with 80 A, seen." in out

    def test_what_was_never_so_is_taken_back(self, run, tmp_path):
        path = changed(tmp_path)
        words = ("answer", path, "supply.ze_ohm", "0.3", "--measured", "tester 2", "--by", "Ro")
        assert "People disagree" in run(*words)[1]
        out = " ".join(run(*words, "--never-so")[1].split())
        assert "Taken back: measured 0.18 Ω, loop tester 2 and measured 0.3 Ω, tester 2" in out
        assert "People disagree" not in out

    def test_json_keeps_to_its_schema(self, run, tmp_path):
        path = changed(tmp_path)
        words = ("answer", path, "loads.shower.present", "cannot say: never looked")
        status, out, _ = run(*words, "--told", "call", "--by", "Tamsin", "--json")
        assert status == 0
        jsonschema.validate(json.loads(out), schema("answer"))
        assert json.loads(out)["fact"]["could_not_say"] == ["Tamsin: never looked"]

    @pytest.mark.parametrize(
        ("words", "says"),
        [
            (("supply.main_fuse_a", "18O", "--told", "call", "--by", "Ro"), "letter O"),
            (("supply.main_fuse_a", "8 kW", "--told", "call", "--by", "Ro"), "figure in A"),
            (("supply.main_fuze_a", "80", "--told", "call", "--by", "Ro"), "main_fuse_a?"),
            (("supply.main_fuse_a", "80", "--by", "Ro"), "--told, --seen or --measured"),
            (("supply.main_fuse_a", "80", "--told", "call"), "--by"),
            (("supply.main_fuse_a", "80", "--seen", "", "--by", "Ro"), "picture or paper"),
        ],
    )
    def test_what_is_wrong_is_said_and_nothing_is_written(self, run, tmp_path, words, says):
        path = changed(tmp_path)
        before = path.read_bytes()
        status, out, err = run("answer", path, *words)
        assert (status, out) == (YOURS_TO_MEND, "")
        assert says in err
        assert path.read_bytes() == before


class TestGates:
    def test_a_fact_that_no_design_reads_is_not_asked_for(self, run):
        out = run("gates", QUILLBROOK, *DAY)[1]
        assert re.search(r"^quoting +nothing is missing$", out, re.MULTILINE)
        assert "Earth electrode resistance" not in out, "nothing here stands on a rod"
        assert "Asbestos known or suspected" in out, "papers and people want it all the same"

    def test_evidence_too_weak_is_named_with_what_is_needed(self, run, tmp_path):
        told = ('is = 80, seen = "photo 1, label of the carrier"', 'is = 80, told = "call"')
        out = run("gates", changed(tmp_path, told), *DAY)[1]
        assert re.search(r"quoting +1 fact not known well enough", out)
        assert re.search(r"Cut-out fuse-link rating +told 80 A +seen +seen +seen", out)

    def test_before_booking_stands_what_must_be_in_hand(self, run):
        out = run("gates", QUILLBROOK.with_name("teazel-cottage.toml"), *DAY)[1]
        assert re.search(r"booking a day +[0-9] things to have in hand first", out)
        assert "from the planning office" in out

    def test_an_old_answer_is_asked_again(self, run):
        out = run("gates", QUILLBROOK, "--date", "2032-01-05")[1]
        assert re.search(r"Ask again.*External earth loop impedance +0.18 Ω", out, re.DOTALL)

    def test_an_empty_home_wants_everything(self, run, tmp_path):
        path = tmp_path / "empty.toml"
        path.write_text('title = "somebody rang"\n', encoding="utf-8")
        out = run("gates", path, *DAY)[1]
        assert "nothing to book: no option holds yet" in out
        assert re.search(r"Cut-out fuse-link rating +not asked +seen +seen +seen", out)


WITH_HOME = [("options",), ("working", "A"), ("why-not",), ("gates",), ("validate",)]


def with_home(words, home):
    command, *rest = words
    day = () if command == "validate" else DAY
    return (command, home, *rest, *day)


@pytest.mark.parametrize("words", WITH_HOME, ids=lambda words: words[0])
class TestEveryCommandOnAHome:
    def test_a_file_that_is_not_there(self, run, words):
        status, out, err = run(*with_home(words, QUILLBROOK.with_name("quilbrook-close.toml")))
        assert (status, out) == (YOURS_TO_MEND, "")
        assert "Did you mean" in err
        assert "Traceback" not in err

    def test_json_keeps_to_its_schema(self, run, words):
        status, out, _ = run(*with_home(words, QUILLBROOK), "--json")
        assert status == 0
        jsonschema.validate(json.loads(out), schema(words[0]))

    def test_no_line_is_too_wide_and_nothing_is_coloured(self, run, words):
        _, out, _ = run(*with_home(words, QUILLBROOK))
        assert max(map(len, out.splitlines())) <= WIDEST
        assert "\x1b" not in out
        assert not [line for line in out.splitlines() if line != line.rstrip()]


@pytest.mark.parametrize("home", EXAMPLES, ids=lambda path: path.stem)
def test_every_example_home_is_answered(home):
    seen = see(home, Terms(date(2026, 11, 25)))
    answer = answer_for(seen)
    assert answer.options, "an example home has something to choose from"
    jsonschema.validate(json.loads(json_of(answer)), schema("options"))
    shown = io.StringIO()
    sheet = Sheet(shown)
    show(answer, sheet, home.name)
    for stage in stage_answers(run_design(seen.home.folded, seen.basis, seen.best)):
        working.stage(stage, sheet)
    sheet.show()
    assert max(map(len, shown.getvalue().splitlines())) <= WIDEST


def test_a_way_nobody_has_described_leaves_no_caution_out():
    """A home in which the way of the cable is blank is answered like any other."""
    seen = see(ROOT / "examples" / "calls" / "teazel-cottage.toml", Terms(date(2026, 11, 25)))
    answer = answer_for(seen)
    assert answer.options
    assert len(answer.cautions) >= len(ALWAYS)


class TestColour:
    @pytest.fixture
    def terminal(self, monkeypatch, capsys):
        monkeypatch.setenv("TERM", "xterm-256color")
        monkeypatch.delenv("NO_COLOR", raising=False)
        monkeypatch.setenv("FORCE_COLOR", "1")  # as rich has it: taken for a terminal
        return capsys

    def test_on_a_terminal_the_decision_has_one(self, terminal):
        main(["options", str(QUILLBROOK), *DAY])
        assert "\x1b[1;32mFit, then tell" in terminal.readouterr().out

    def test_never_where_nobody_wants_it(self, terminal, monkeypatch):
        monkeypatch.setenv("NO_COLOR", "1")
        main(["options", str(QUILLBROOK), *DAY])
        assert not re.search(r"\x1b\[[\d;]*3\dm", terminal.readouterr().out)


class TestErrors:
    def test_whose_an_error_is(self):
        assert status_of(TableCardError("a card")) == OUR_FAULT
        assert status_of(AmpwrightError("something")) == OUR_FAULT

    def test_ours_are_told_in_words_too(self, run, monkeypatch):
        def broken(_path):
            raise TableCardError("capacity.csv is not the file its card describes")

        monkeypatch.setattr(files.Path, "read_text", lambda *_, **__: broken(None))
        status, out, err = run("validate", QUILLBROOK)
        assert (status, out) == (OUR_FAULT, "")
        assert err == "ampwright: capacity.csv is not the file its card describes\n"

    @pytest.mark.parametrize("words", [("optins",), ("options",), ("options", "x", "--jsn")])
    def test_a_wrong_command_line_is_refused_in_words(self, run, words):
        status, out, err = run(*words)
        assert (status, out) == (YOURS_TO_MEND, "")
        assert err.startswith("ampwright: ")

    @pytest.mark.parametrize(
        ("words", "says"),
        [
            (("optins",), "there is no command 'optins'. Did you mean options?"),
            (("options",), "HOME is missing; expected the home's file."),
            (("options", "x", "--jsn"), "there is no option --jsn. Did you mean --json?"),
            (("options", "x", "--date", "2026-13-01"),
             "--date is '2026-13-01'; expected a day, as 2026-12-10."),
            (("ask", "x", "--channel", "fhone"),
             "--channel is 'fhone'; expected phone, photo or site. Did you mean phone?"),
            (("answer", "x", "supply.phases", "1"), "--by is missing; expected who says it."),
            (("gates", "x", "quote"), "'quote' is one word too many; take it away"),
        ],
    )  # fmt: skip
    def test_it_names_the_field_the_value_and_what_is_expected(self, run, words, says):
        status, _, err = run(*words)
        told = " ".join(err.split())
        assert status == YOURS_TO_MEND
        assert says in told
        assert re.search(r"See ampwright( \w+)? --help\.$", told)


class TestReference:
    def test_the_page_of_commands_is_in_step(self):
        assert docs_commands.PAGE.read_text("utf-8") == docs_commands.render(), (
            "run tools/docs_commands.py"
        )

    def test_the_schemas_are_in_step(self):
        for path, text in docs_commands.schemas().items():
            assert path.read_text("utf-8") == text, "run tools/docs_commands.py"
            jsonschema.Draft202012Validator.check_schema(json.loads(text))

    def test_every_command_is_on_the_page(self):
        page = docs_commands.render()
        assert all(f"## `ampwright {name}`" in page for name, _, _ in COMMANDS)
        assert all(f"## `ampwright list {name}`" in page for name, _, _ in LISTS)


OWN_CELL = (
    "capacity/flat_70,method=102; loaded=2; size_mm2=10,capacity_a,46,"
    "BS 7671,2018+A4:2026,Table 4D5,R Quince,2026-11-02\n"
)


def test_a_firms_data_is_written_once_and_then_used(run, tmp_path):
    firm = tmp_path / "ours"
    assert run("firm", firm)[0] == 0
    rules = firm / "rules.csv"
    rules.write_text(rules.read_text("utf-8").replace("house_limit_a,60", "house_limit_a,55"))
    with (firm / "own_cells.csv").open("a", encoding="utf-8") as file:
        file.write(OWN_CELL)
    status, said, _ = run("firm", firm)
    assert (status, "there already" in said) == (0, True)
    assert "house_limit_a,55" in rules.read_text("utf-8")

    def digest(*words):
        return json.loads(run("options", QUILLBROOK, "--json", *DAY, *words)[1])["basis"]["digest"]

    assert digest("--firm", firm) != digest()
    said = run("list", "tables", "flat_70", "--firm", firm)[1]
    assert "46 in the place of 47" in " ".join(said.split())
    assert "R Quince" in said


def test_a_firms_folder_that_is_not_there_is_refused(run, tmp_path):
    status, said, complained = run("options", QUILLBROOK, "--firm", tmp_path / "nowhere")
    assert (status, said) == (YOURS_TO_MEND, "")
    assert "expected a folder that is there" in complained
