"""Totals add up in whole pence, whatever the lines and however they are bundled.

Tax is rounded as the tax office has it: under half a penny down, half a penny or more up (HMRC
internal manual VATREC12030, "What do we mean by rounding up and down?"). What several rates on
one bill come to is held against the example bills that the public e-invoicing standard
EN 16931 publishes with its Peppol profile (BIS Billing 3.0): taxable amount, tax and total.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ampwright.costing.lines import (
    CHARGE_POINT,
    PAID_AS_ASKED,
    Amount,
    Group,
    Line,
    amount,
    bundle,
    marked_up,
)
from ampwright.costing.price import add_up, tax_on
from ampwright.foundations.errors import OutOfTableError
from ampwright.foundations.money import Pence
from ampwright.foundations.quantity import Share
from ampwright.foundations.source import SetBy
from ampwright.tables.book import Book, Override
from tests.design.homes import basis

BATTERY = "battery, fitted"
SOLD = (CHARGE_POINT, BATTERY, PAID_AS_ASKED)
RATES = {CHARGE_POINT: Fraction(1, 5), BATTERY: Fraction(0)}


def line(pence: int, sold: str = CHARGE_POINT, group: Group = Group.MATERIALS, spread: int = 0):
    amounts = Amount(Pence(pence - spread), Pence(pence), Pence(pence + spread))
    return Line(group, "x", "something", 1.0, "", Pence(pence), amounts, "", sold)


def by_hand(lines, level: int) -> tuple[int, int, int]:
    """Net, tax and total with decimals, one rounding for each thing sold."""
    net, tax, asked = Decimal(0), Decimal(0), 0
    for sold in SOLD:
        sums = sum(each.amount[level] for each in lines if each.vat == sold)
        if sold == PAID_AS_ASKED:
            asked = sums
            continue
        rate = Decimal(RATES[sold].numerator) / Decimal(RATES[sold].denominator)
        net += sums
        tax += (sums * rate).quantize(Decimal(1), ROUND_HALF_UP)
    return int(net), int(tax), int(net + tax + asked)


lines_of_any_job = st.lists(
    st.builds(
        line,
        st.integers(100, 400_000),
        st.sampled_from(SOLD),
        st.sampled_from(list(Group)),
        st.integers(0, 100),
    ),
    max_size=30,
)


@given(lines_of_any_job)
def test_lines_sum_to_the_totals_and_the_tax_is_that_of_the_sums(lines):
    made = add_up(basis(), (bundle(tuple(lines)),))
    for level in range(3):
        net, tax, total = by_hand(lines, level)
        assert (made.net[level], made.tax[level], made.total[level]) == (net, tax, total)
        groups = sum(each.amount[level] for each in made.subtotals)
        assert groups == sum(each.amount[level] for each in lines)
    assert all(type(each) is int for each in (*made.net, *made.tax, *made.total))


@given(lines_of_any_job, st.randoms(use_true_random=False), st.integers(0, 30))
def test_order_and_bundling_change_nothing_but_the_order(lines, chance, cut):
    mixed = list(lines)
    chance.shuffle(mixed)
    one = add_up(basis(), (bundle(tuple(lines)),))
    two = add_up(basis(), (bundle(tuple(mixed[:cut])), bundle(tuple(mixed[cut:]))))
    assert sorted(one.lines) == sorted(two.lines)
    assert replace(one, lines=()) == replace(two, lines=())


@given(st.floats(0.01, 300.0), st.integers(0, 200_000), st.integers(0, 100))
def test_amounts_are_the_nearest_penny_and_a_mark_up_never_loses(n, p, percent):
    exact = Fraction(n) * p
    assert abs(amount(n, Pence(p)) - exact) <= Fraction(1, 2) + Fraction(1, 10**6)
    asked = marked_up(Pence(p), Share(percent / 100))
    assert asked == int((Decimal(p) * (100 + percent) / 100).quantize(Decimal(1), ROUND_HALF_UP))
    assert asked >= p


@pytest.mark.parametrize(
    ("rate", "pence", "tax"),
    [
        (0.05, 1009, 50),  # 50.45: less than half a penny over, down
        (0.05, 1010, 51),  # 50.5: half a penny or more, up
        (0.05, 1011, 51),
        (0.20, 1002, 200),  # 200.4
        (0.20, 1003, 201),  # 200.6
        (0.175, 1020, 179),  # 178.5, at the rate of 2010
        (0.0, 123_457, 0),
    ],
)
def test_half_a_penny_goes_up_and_less_goes_down(rate, pence, tax):
    assert tax_on(Share(rate), (Pence(pence),)) == tax


# EN 16931 in the Peppol profile, example bills "Vat-category-S" and "Allowance-example": the
# lines, charges and discounts of each rate, the tax printed for it, and the total to pay.
TWO_RATES = {0.25: ((400_000, 90_000, 20_000, -10_000), 125_000), 0.15: ((200_000,), 30_000)}
WITH_AN_EXEMPT_LINE = {0.25: ((400_000, 90_000, 20_000, -20_000), 122_500), 0.0: ((100_000,), 0)}


@pytest.mark.parametrize(
    ("bill", "net", "total"),
    [(TWO_RATES, 700_000, 855_000), (WITH_AN_EXEMPT_LINE, 590_000, 712_500)],
)
def test_a_bill_with_two_rates_is_that_of_the_published_example(bill, net, total):
    (first, (ours, tax)), (second, (theirs, other_tax)) = bill.items()
    made = add_up(
        with_tax({CHARGE_POINT: first, BATTERY: second}),
        (
            bundle(tuple(line(each) for each in ours)),
            bundle(tuple(line(each, BATTERY) for each in theirs)),
        ),
    )
    assert {each.sold: each.tax.usual_p for each in made.taxes} == {
        CHARGE_POINT: tax, BATTERY: other_tax,
    }  # fmt: skip
    assert (made.net.usual_p, made.total.usual_p) == (net, total)


def with_tax(rates):
    """The basis with other rates of tax laid over the table."""
    days = {CHARGE_POINT: "2011-01-04", BATTERY: "2024-02-01"}
    laid = tuple(
        Override("regulation/vat", (("item", item), ("from_date", days[item])), "rate", rate,
                 SetBy("example"))
        for item, rate in rates.items()
    )  # fmt: skip
    return replace(basis(), book=Book(overrides=laid))


@pytest.mark.parametrize(
    ("day", "battery", "tax", "total"),
    [
        # Battery £4,200, point and its work £999.77. VAT Notice 708/6: energy-saving materials
        # nil to 31 March 2027, 5 % after; the point 20 % throughout. Own arithmetic: a fifth of
        # 99,977 is 19,995.4; a twentieth of 420,000 is 21,000.
        (date(2027, 3, 31), 0, 19_995, 539_972),
        (date(2027, 4, 1), 21_000, 40_995, 560_972),
    ],
)
def test_a_mixed_job_splits_its_tax_by_line_and_by_day(day, battery, tax, total):
    made = add_up(
        replace(basis(), design_date=day),
        (bundle((line(420_000, BATTERY), line(50_400), line(49_577, group=Group.LABOUR))),),
    )
    assert {each.sold: each.tax.usual_p for each in made.taxes} == {
        BATTERY: battery, CHARGE_POINT: 19_995,
    }  # fmt: skip
    assert (made.tax.usual_p, made.total.usual_p) == (tax, total)


def test_what_others_charge_is_in_the_total_as_they_ask_it():
    made = add_up(basis(), (bundle((line(10_000), line(6_000, PAID_AS_ASKED, Group.OTHERS))),))
    assert (made.net.usual_p, made.tax.usual_p, made.total.usual_p) == (10_000, 2_000, 18_000)


def test_a_thing_whose_tax_nobody_knows_is_refused():
    with pytest.raises(OutOfTableError):
        add_up(basis(), (bundle((line(100, "hot tub, fitted"),)),))
