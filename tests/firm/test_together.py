"""What goes together: how the file is read, and that it speaks of facts that there are."""

from __future__ import annotations

from datetime import date

import pytest

from ampwright.firm.basis import load_basis
from ampwright.firm.together import ALWAYS, Condition, read_together
from ampwright.foundations.errors import BadFileError
from ampwright.survey.accept import accept
from ampwright.survey.layout import slot
from ampwright.survey.spoken import spoken

HEADER = "id,fact,given,answer,share\n"
SHIPPED = load_basis(design_date=date(2026, 11, 25), profile="neutral").together


def rows(*lines: str) -> str:
    return HEADER + "".join(f"{i},{line}\n" for i, line in enumerate(lines))


def test_cases_are_read_in_order_with_their_conditions() -> None:
    (earth,) = read_together(
        "together",
        rows(
            "earth,old<1940 & air=yes,TT,0.4", "earth,old<1940 & air=yes,TN-S,0.6",
            "earth,otherwise,TT,0.1", "earth,otherwise,TN-S,0.9",
        ),
    )  # fmt: skip
    assert earth.parents == ("old", "air")
    first, last = earth.cases
    assert first.given == (Condition("old", "<", "1940"), Condition("air", "=", "yes"))
    assert last.given == ()
    assert last.shares == {"TT": 0.1, "TN-S": 0.9}


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        (("a,b=1,x,0.5", "a,otherwise,x,1"), "line 2: share is 0.5; expected shares that sum to 1"),
        (("a,b=1,x,1",), "'otherwise' as the last case of a"),
        (("a,otherwise,x,1", "a,b=1,x,1"), "'otherwise' as the last case of a"),
        (("a,b,x,1", "a,otherwise,x,1"), "a fact, = or <, an answer"),
        (("a,b=1,x,1", "a,otherwise,y,1"), "the same answers as in the other cases of a"),
        (
            ("a,b=1,x,1", "a,otherwise,x,1", "b,a=x,1,1", "b,otherwise,1,1"),
            "line 2: fact is 'a'; expected facts that do not hang on themselves",
        ),
    ],
)
def test_a_file_that_does_not_hold_together_is_refused_with_its_line(lines, expected) -> None:
    with pytest.raises(BadFileError, match=expected):
        read_together("together", rows(*lines))


def test_every_fact_and_answer_of_the_shipped_file_is_one_of_the_register() -> None:
    for each in SHIPPED:
        fact = slot(each.fact).fact
        for case in each.cases:
            for answer in case.shares:
                accept(fact, spoken(fact, answer).value, each.fact)
            for condition in case.given:
                on = slot(condition.fact).fact
                if condition.sign == "=":
                    accept(on, spoken(on, condition.answer).value, condition.fact)
                else:
                    assert float(condition.answer) > 0
                    assert on.kind in (int, float)


def test_a_fact_taken_without_asking_tells_nothing_of_others() -> None:
    for each in SHIPPED:
        assert slot(each.fact).fact.stand_in is None


def test_where_nothing_else_is_known_the_shares_are_those_of_the_register() -> None:
    for each in SHIPPED:
        place = slot(each.fact)
        prior = place.standard.values if place.standard else place.fact.values
        told = {spoken(place.fact, a).value: s for a, s in each.cases[-1].shares.items()}
        assert told == pytest.approx(prior), each.fact
    assert all(not case.given for each in SHIPPED for case in each.cases[-1:])
    assert ALWAYS
