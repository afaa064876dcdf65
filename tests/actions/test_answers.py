"""What is answered about a home: no surer than the facts, and the same wherever it is shown."""

from __future__ import annotations

from datetime import date
from functools import cache
from pathlib import Path

import pytest

from ampwright.actions.deciding import chance_words, filled
from ampwright.actions.design_run import run_design
from ampwright.actions.figures import SPECS, heaviest
from ampwright.actions.naming import find_option, is_same_offer
from ampwright.actions.options import answer_for
from ampwright.actions.papers import content_of, paper_of
from ampwright.actions.seeing import Terms, see
from ampwright.actions.working import working_of
from ampwright.foundations.errors import NotFoundError
from ampwright.foundations.working import orphans
from ampwright.options.supply_side import Decision

ROOT = Path(__file__).resolve().parents[2]
QUILLBROOK = ROOT / "examples" / "quillbrook-close.toml"
TERMS = Terms(date(2026, 11, 25))


@cache
def seen(name="quillbrook-close"):
    return see(ROOT / "examples" / f"{name}.toml", TERMS)


@cache
def answered(name="quillbrook-close"):
    return answer_for(seen(name))


def varied(tmp_path, *changes):
    text = QUILLBROOK.read_text("utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    path = tmp_path / "home.toml"
    path.write_text(text, encoding="utf-8")
    return see(path, TERMS)


class TestOneEngine:
    @pytest.mark.parametrize("name", ["quillbrook-close", "tarrant-rise", "larkspit-rise"])
    def test_the_numbers_shown_are_those_of_the_working(self, name):
        here = seen(name)
        run = run_design(here.home.folded, here.basis, here.best)
        figures = answered(name).options[0].figures
        for spec in SPECS:
            worked = heaviest(spec.get(run.design))
            if spec.name in figures and worked is not None:
                low, high = figures[spec.name].low, figures[spec.name].high
                assert low - 1e-9 <= worked <= high + 1e-9, spec.name

    def test_every_number_of_the_working_has_a_source(self):
        here = seen()
        run = run_design(here.home.folded, here.basis, here.best)
        for stage in run.stages:
            for check in stage.checks:
                for side in (check.actual, check.limit):
                    # Counts stay plain everywhere; they print as what the stage rests on.
                    lost = [] if side is None else orphans(side)
                    assert not [each for each in lost if isinstance(each, float)], check

    def test_working_answers_for_the_same_option(self):
        answer = working_of(QUILLBROOK, TERMS, "A")
        assert answer.id == answered().options[0].id
        checks = [check for stage in answer.stages for check in stage.checks]
        assert {check.outcome for check in checks} <= {"pass", "not applicable"}
        numbers = [line.number for stage in answer.stages for check in stage.checks
                   for line in check.lines]  # fmt: skip
        assert len(numbers) == len(set(numbers))


class TestDecision:
    def test_a_complete_home_has_one_decision_and_nothing_open(self):
        answer = answered()
        assert answer.decision.value == "tell_after"
        assert answer.decision.could_be == ()
        assert not [each for each in answer.open if each.decides]

    def test_an_undetermined_one_names_what_decides_and_what_it_could_be(self, tmp_path):
        here = varied(tmp_path, ("looped = { is = false", "looped = { one_of = [true, false]"))
        answer = answer_for(here)
        assert answer.decision.value == "undetermined"
        assert answer.decision.turns_on == ("supply.looped",)
        assert {each.value for each in answer.decision.could_be} == {"tell_after", "ask_first"}
        assert "thick cables" in answer.decision.customer_words
        assert answer.recommended.heading == "Leading so far"

    def test_a_customer_is_not_asked_what_only_the_operator_knows(self):
        path = ROOT / "examples" / "teazel-cottage.toml"
        answer = answer_for(see(path, Terms(TERMS.design_date, "neutral")))
        assert "operator.counts_limiter" in answer.decision.turns_on
        assert "network operator" in answer.decision.customer_words
        assert {each.answered_by for each in answer.open if each.decides} == {"operator"}

    def test_a_blank_fact_in_the_way_is_named(self, tmp_path):
        here = varied(tmp_path, ("all_listed = true  # no shower", "# no shower"))
        answer = answer_for(here)
        assert answer.decision.value == "undetermined"
        assert "loads.all_listed" in answer.decision.lacking
        assert "carried_a" not in answer.options[0].figures

    def test_stop_says_until_what(self, tmp_path):
        here = varied(tmp_path, ('condition = { is = "sound"', 'condition = { is = "dangerous"'))
        answer = answer_for(here)
        assert answer.decision.value == "stop_until"
        assert "dangerous" in answer.decision.words
        assert answer.recommended.heading != "Recommended"

    def test_words_leave_no_blank(self):
        for decision in Decision:
            assert "…" not in filled(decision.words, "x") + filled(decision.customer_words, "")

    @pytest.mark.parametrize("chance", [0.0, 0.05, 0.1, 0.4, 0.6, 0.9, 1.0])
    def test_chances_are_words(self, chance):
        assert not any(letter.isdigit() for letter in chance_words(chance))


class TestOptions:
    def test_work_that_only_some_homes_need_is_no_option_of_its_own(self):
        offered = list(seen("tarrant-rise").offered.values())
        for i, option in enumerate(offered):
            assert not any(is_same_offer(option, other) for other in offered[i + 1 :])
        assert [work.slug for work in answered("tarrant-rise").options[0].may_need] == ["bond-gas"]

    def test_counts_add_up(self):
        counts = answered().counts
        assert counts.considered == counts.ruled_out + counts.beaten + counts.left

    def test_beaten_options_lose_to_one_that_is_there(self):
        known = {option.id for option in seen().outlook.ranking.options}
        assert {each.loses_to for each in answered().beaten} <= known

    def test_letters_names_and_beginnings_find_an_option(self):
        here = seen()
        first = here.best
        assert find_option(here.outlook, here.offered, "a") is first
        assert find_option(here.outlook, here.offered, first.id) is first
        with pytest.raises(NotFoundError, match="Did you mean"):
            find_option(here.outlook, here.offered, first.id.replace("flat", "flet"))
        with pytest.raises(NotFoundError, match="there is no option 'front'"):
            find_option(here.outlook, here.offered, "front")

    def test_a_beaten_option_can_be_worked_too(self):
        lost = answered().beaten[-1].id
        assert working_of(QUILLBROOK, TERMS, lost).letter in ("", "B", "C", "D", "E")


class TestConfirm:
    def test_stand_ins_and_recalled_tables_are_on_the_list(self):
        said = {(each.why, each.what.partition(":")[0]) for each in answered().confirm}
        assert ("assumed", "Lowest supply voltage, line to neutral") in said
        assert ("memory", "BS 7671") in said

    def test_what_was_seen_is_not(self):
        assert not [each for each in answered().confirm if "fuse-link" in each.what]

    def test_a_told_fuse_must_be_seen_first(self, tmp_path):
        here = varied(
            tmp_path,
            ('main_fuse_a = { is = 80, seen = "photo 1, label of the carrier", by = "Ro Quince" }',
             "main_fuse_a = 80"),
        )  # fmt: skip
        found = [each for each in answer_for(here).confirm if "fuse-link" in each.what]
        assert [each.why for each in found] == ["see first"]


class TestPaper:
    def test_says_what_the_screen_says(self):
        answer = answered()
        paper = content_of(seen(), answer)
        assert paper.decision.sentence == answer.decision.sentence
        assert [column.id for column in paper.options] == [o.id for o in answer.options[:3]]
        assert paper.edition == answer.basis.edition
        assert not paper.home.designer, "nobody has put a name to it"

    def test_same_home_same_day_same_bytes(self):
        first = paper_of(seen(), answered())
        assert first.startswith(b"%PDF-")
        assert paper_of(seen(), answered()) == first

    @pytest.mark.parametrize("text", ['title = "somebody rang"\n', ""])
    def test_a_home_of_which_nothing_is_known_has_one_too(self, tmp_path, text):
        path = tmp_path / "home.toml"
        path.write_text(text, encoding="utf-8")
        here = see(path, TERMS)
        assert paper_of(here, answer_for(here)).startswith(b"%PDF-")


def test_a_larger_fuse_is_said_to_be_asked_for_and_why(tmp_path):
    shower = (
        '[loads.shower]\npresent = true\nkind = "instant shower"\namps_a = 45\n\n[loads.lighting]'
    )
    here = varied(tmp_path, ("main_fuse_a = { is = 80,", "main_fuse_a = { is = 60,"),
                  ("[loads.lighting]", shower))  # fmt: skip
    said = answer_for(here).decision.sentence
    assert said.startswith(
        "Ask the network operator before fitting: the house alone leaves the service fuse no room "
        "for a car; "
    )
    assert "have the network fit a 100 A service fuse in the place of 60 A" in said
