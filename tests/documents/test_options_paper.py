"""The paper of options and working: what must stand in it, whatever the printer or the eye."""

from __future__ import annotations

import io
import re
from dataclasses import fields, is_dataclass, replace
from datetime import date

import pypdf
import pytest

from ampwright.documents.options_and_working.content import CompareRow, OptionColumn, OptionsPaper
from ampwright.documents.render import render
from ampwright.foundations.errors import InputError

from . import sample

STAMP = date(2026, 11, 25)
WORDS = {
    "pass": "Pass", "fail": "Fail", "undetermined": "Undetermined",
    "not applicable": "Not applicable",
}  # fmt: skip
PROGRAM_TEXT = re.compile(r"\w_\w|\*\*| \* |next_up|sqrt|\bNone\b|\bTrue\b|\bFalse\b|>=|<=|\(\(")


def pages(paper: OptionsPaper) -> list[str]:
    reader = pypdf.PdfReader(io.BytesIO(render("options_and_working", paper, stamp=STAMP)))
    return [" ".join(page.extract_text().split()) for page in reader.pages]


@pytest.fixture(scope="module")
def draft() -> list[str]:
    return pages(sample.paper())


@pytest.fixture(scope="module")
def whole(draft) -> str:
    return " ".join(draft)


def test_edition_and_page_number_stand_on_every_page(draft):
    for number, page in enumerate(draft, 1):
        assert sample.EDITION in page
        assert f"Page {number} of {len(draft)}" in page


def test_decision_stands_first_in_both_wordings(draft):
    assert "Fit, then tell" in draft[0]
    assert sample.DECISION.sentence in draft[0]
    assert "You do not have to wait" in draft[0]


@pytest.mark.parametrize("caution", sample.CAUTIONS)
def test_every_caution_is_there(whole, caution):
    assert caution.replace("'", "’") in whole.replace("'", "’")


def texts(value):
    """Every text of a piece of content, without the drawn twins of formulas."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, tuple):
        for each in value:
            yield from texts(each)
    elif is_dataclass(value):
        for field in fields(value):
            yield from texts(getattr(value, field.name))


def test_nothing_of_the_content_is_left_out(whole):
    paper = replace(sample.paper(), working=())
    seen = squeezed(whole)
    signs = {paper.decision.sign} | {line.why for line in paper.confirm}
    ids = {option.id for option in paper.options}  # the recommended one's stands by its working
    for text in texts(paper):
        if text and text not in signs | ids:
            assert squeezed(text) in seen, text


def squeezed(text: str) -> str:
    return re.sub(r"\s", "", text).replace("'", "’")


def test_each_check_carries_its_outcome_as_a_word():
    for mark, word in WORDS.items():
        paper = sample.paper()
        groups = tuple(
            replace(group, checks=tuple(replace(check, mark=mark) for check in group.checks))
            for group in paper.working
        )
        found = " ".join(pages(replace(paper, working=groups)))
        expected = sum(len(group.checks) for group in groups)
        assert len(re.findall(rf"\b{word}\b", found)) == expected


def test_the_draft_says_what_it_lacks_and_the_checked_paper_who_checked_it(draft):
    checked = pages(sample.checked())
    assert "Not final until a named designer has checked it." in draft[0]
    assert all("DRAFT" in page for page in draft)
    assert "Tam Quennell, electrician" in checked[0]
    assert not any("DRAFT" in page or "Not final" in page for page in checked)


def test_how_each_fact_is_known_is_a_word_and_the_key_is_there(draft):
    for word in ("assumed", "told", "seen", "measured", "not asked"):
        assert word in draft[0]
    assert "A line under an answer says how we know it" in draft[0]


def test_no_text_of_the_program_is_left(whole):
    left = [found[0] for found in PROGRAM_TEXT.finditer(whole)]
    assert not left


def test_neighbouring_equal_answers_are_printed_once(draft):
    assert draft[0].count("the point only") == 1
    assert draft[0].count("57 minutes") == 1


def test_equal_answers_share_a_cell_only_when_they_are_neighbours():
    assert CompareRow("q", ("a", "b", "a")).shared == (("a", 1), ("b", 1), ("a", 1))
    assert CompareRow("q", ("a", "a", "a", "b")).shared == (("a", 3), ("b", 1))


def test_a_row_needs_one_answer_for_each_option():
    with pytest.raises(InputError, match="3 answers"):
        replace(sample.paper(), rows=(CompareRow("All in", ("£1", "£2")),))


def test_a_paper_without_its_edition_is_refused():
    with pytest.raises(InputError, match="edition"):
        replace(sample.paper(), edition="")


WELSH = "Ŵyn Llŷr ap Gwrhŷd-Ŷsbwyll o’r Llanfihangel-yng-Ngwynfa"


def test_long_names_and_welsh_letters_survive():
    home = replace(sample.HOME, customer=WELSH, address="Tŷ’n-y-Pŵll, " + "Llwybr Hir Iawn, " * 6)
    found = squeezed(pages(replace(sample.paper(), home=home))[0])
    assert squeezed(WELSH) in found
    assert squeezed("Tŷ’n-y-Pŵll") in found


def test_a_letter_and_its_accent_are_set_as_one():
    apart = replace(sample.HOME, customer="Llŷr")  # y, then a circumflex
    assert "Llŷr" in pages(replace(sample.paper(), home=apart))[0]


@pytest.mark.parametrize(
    "sign", ["tell_after", "tell_after_limit", "ask_first", "stop_until", "tell_or_ask"]
)
def test_every_sign_can_be_set(sign):
    paper = replace(sample.paper(), decision=replace(sample.DECISION, sign=sign), working=())
    assert len(pages(paper)) >= 1


@pytest.mark.parametrize("count", [2, 4])
def test_two_and_four_options_can_stand_side_by_side(count):
    options = tuple(OptionColumn(letter, f"Way {letter}") for letter in "ABCD"[:count])
    rows = (CompareRow("All in", tuple(f"£1,{n}00" for n in range(count)), leads=True),)
    found = pages(replace(sample.paper(), options=options, rows=rows))[0]
    assert all(f"£1,{n}00" in found for n in range(count))


def test_an_empty_part_leaves_no_heading_behind():
    bare = replace(
        sample.paper(), found=(), options=(), rows=(), recommended=None, work=(), confirm=(),
        cautions=(), rejected=(), working=(),
    )  # fmt: skip
    found = pages(bare)
    assert len(found) == 1
    for heading in (
        "What we found",
        "side by side",
        "The work",
        "Cautions",
        "Why not",
        "confirmed",
    ):
        assert heading not in found[0]


def test_no_page_ends_in_a_heading(draft):
    body = [page.replace(sample.EDITION, "").rstrip() for page in draft]
    headings = ["What we found", "Options side by side", "The work", "To be confirmed", "Cautions"]
    headings += ["Why not the others", *(group.title for group in sample.paper().working)]
    for page in body:
        text = re.sub(r"Page \d+ of \d+$", "", page).rstrip()
        assert not text.endswith(tuple(headings))
