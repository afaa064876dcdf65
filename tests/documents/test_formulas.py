"""Formulas as people write them say the same arithmetic, and nothing of the program's text."""

from __future__ import annotations

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ampwright.documents.faces import characters
from ampwright.documents.formulas import drawn, readable
from ampwright.documents.symbols import Drawn, plain, symbol, words
from ampwright.foundations.errors import InputError
from ampwright.standards.catalogue import Kind, clauses

PROGRAM_TEXT = re.compile(r"_| \* |\*\*|next_up|\bmax\(|\bmin\(|sqrt|>=|<=")

# How an electricians' book prints them; Zs = Ze + (R1 + R2) is the form of every such book.
IN_PRINT = {
    "Ze + R1R2": "Ze + (R1 + R2)",
    "mv * Ib * L / 1000": "(mV × Ib × L) / 1000",
    "Cmin * U0 / (m * In)": "(Cmin × U0) / (m × In)",
    "sqrt(I2t) / k": "√(I²t) / k",
    "It * Ca * Cg * Ci": "It × Ca × Cg × Ci",
    "next_up(Ib, ratings)": "next size up from Ib among ratings",
    "max(I) + s * (sum(I) - max(I))": "largest(I) + s × (sum(I) − largest(I))",
    "largest(I, 2)": "sum of the 2 largest(I)",
    "share * Zs_max": "share × Zs max",
    "1.2e-05 * L": "1.2 × 10⁻⁵ × L",
    "a - (b - c)": "a − (b − c)",
    "a - b - c": "a − b − c",
    "-a * b": "(−a) × b",
    "-3 + 2": "−3 + 2",
    "abs(x)": "|x|",
}


@pytest.mark.parametrize("formula", IN_PRINT)
def test_reads_as_a_book_prints_it(formula):
    assert readable(formula) == IN_PRINT[formula]


@pytest.mark.parametrize(
    ("name", "printed"),
    [
        ("Ib", ("sub", "I", "b")),
        ("R1R2", ("row", "(", ("sub", "R", "1"), " + ", ("sub", "R", "2"), ")")),
        ("Zs_max", ("sub", "Z", "s max")),
        ("RA_max", ("sub", "R", "A max")),
        ("Idn_a", ("sub", "I", "Δn")),
        ("U0", ("sub", "U", "0")),
        ("r1", ("sub", "r", "1")),
        ("house_limit_a", "house limit"),
        ("tails", "tails"),
        ("L", "L"),
    ],
)
def test_symbols_lower_what_follows_their_letter(name, printed):
    assert symbol(name) == printed


def test_a_fraction_is_drawn_as_one():
    assert drawn("a / b") == ("over", "a", "b")


@pytest.mark.parametrize(
    "text", ["a if b else c", "f(x)", "x[0]", "a // b", "a and b", "import os", "a +", "'s'"]
)
def test_anything_else_is_refused(text):
    with pytest.raises(InputError, match="formula"):
        drawn(text)


@pytest.mark.parametrize(
    "prose", ["In a garage, no point", "It is buried", "own RCD ≤ 30 mA", "the least that counts"]
)
def test_words_stay_words(prose):
    assert words(prose) == prose


def test_symbols_in_a_requirement_are_set():
    assert words("Ib ≤ In") == ("row", ("sub", "I", "b"), " ≤ ", ("sub", "I", "n"))
    assert plain(words("Zs_max >= Zs")) == "Zs max ≥ Zs"


def numbers() -> st.SearchStrategy[str]:
    return st.one_of(
        st.integers(1, 400).map(str),
        st.floats(0.001, 99.0).map("{:.4g}".format),
        st.sampled_from(["1.2e-05", "3.7e+04"]),
    )


def larger(parts: st.SearchStrategy[str]) -> st.SearchStrategy[str]:
    pair = st.tuples(parts, parts)
    return st.one_of(
        *[pair.map(f"({{0[0]}}) {sign} ({{0[1]}})".format) for sign in "+-*/"],
        parts.map("({})**2".format),
        parts.map("sqrt(abs({}))".format),
        parts.map("-({})".format),
        pair.map("min({0[0]}, {0[1]})".format),
        pair.map("max({0[0]}, {0[1]})".format),
    )


def worked_out(text: str) -> float:
    """The value of a formula as people write it, worked out apart from the code under test."""
    text = re.sub(r"10(⁻?)([⁴⁵])", r"10**\1\2", text)
    for written, means in {
        "×": "*", "−": "-", "²": "**2", "⁻": "-", "⁴": "4", "⁵": "5", "√": "math.sqrt",
        "least": "min", "largest": "max",
    }.items():  # fmt: skip
        text = text.replace(written, means)
    text = re.sub(r"math\.sqrt([0-9.]+)", r"math.sqrt(\1)", text)
    while "|" in text:
        text = re.sub(r"\|([^|]*)\|", r"abs(\1)", text, count=1)
    return float(eval(text, {"math": math}))


@given(st.recursive(numbers(), larger, max_leaves=6))
def test_what_people_read_works_out_the_same(formula):
    if formula.count("abs") > 1:
        return  # nested bars cannot be told apart by the simple reader of this test
    try:
        expected = eval(formula, {"sqrt": math.sqrt})
        found = worked_out(readable(formula))
    except ZeroDivisionError:
        return
    assert found == pytest.approx(expected, rel=1e-9)


def every_text(node: Drawn) -> str:
    return node if isinstance(node, str) else "".join(every_text(part) for part in node[1:])


@pytest.mark.parametrize("clause", clauses(), ids=lambda clause: clause.name)
def test_every_clause_can_be_set(clause):
    set_text = drawn(clause.says) if clause.kind is Kind.COMPUTES else words(clause.says)
    shown = every_text(set_text) + plain(set_text)
    places = [str(place) for place in clause.places]
    rows = [text for row in clause.rows for text in row]
    assert not PROGRAM_TEXT.search(shown)
    assert set("".join([shown, clause.unit, *places, *rows])) <= characters()
