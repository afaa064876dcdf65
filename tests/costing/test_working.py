"""Every penny opens to why it is there: formula, rate, fact; and the shown price is the same."""

from __future__ import annotations

from dataclasses import fields, replace

import pytest

from ampwright.costing.lines import Group
from ampwright.foundations.money import pounds
from ampwright.foundations.working import Worked, orphans, working
from tests.design.homes import documented_basis, worked

from .jobs import POST_JOB, STANDARD_JOB, YARD_JOB, priced
from .test_jobs import BOND, ISOLATOR

JOBS = {
    "standard": STANDARD_JOB._replace(remedies=(BOND, ISOLATOR)),
    "yard": YARD_JOB,
    "post": POST_JOB,
}


@pytest.fixture(scope="module", params=sorted(JOBS))
def both(request):
    job = JOBS[request.param]
    return priced(job), priced(job, documented_basis(), worked)


def test_the_documented_price_is_the_explored_one(both):
    plain, shown = both
    for each in fields(plain.price):
        assert getattr(shown.price, each.name) == getattr(plain.price, each.name)
    assert shown.labour == plain.labour


def test_every_amount_keeps_its_working_down_to_sources(both):
    _, shown = both
    price = shown.price
    numbers = [price.net, price.tax, price.total]
    numbers += [line.amount for line in price.lines] + [sub.amount for sub in price.subtotals]
    for amounts in numbers:
        for each in amounts:
            assert type(each) is Worked
            assert orphans(each) == []
    for line in price.lines:
        assert orphans((line.quantity, line.unit_p)) == []
        assert line.why


def test_workings_are_whole_pence_where_they_are_money(both):
    _, shown = both
    for each in shown.price.total:
        assert float(each).is_integer()
        assert pounds(each) == pounds(int(each))


def test_a_line_of_cable_prints_metres_offcuts_mark_up_and_rounding():
    shown = priced(JOBS["standard"], documented_basis(), worked)
    (line,) = shown.lines["flat-6"]
    text = "\n".join(str(step) for step in working(line.amount.usual_p))
    assert "legs.plaster.length_m" in text
    assert "L = (1 + w) * sum(L) = (1 + 0.1) * sum(7, 1) = 8.8 m" in text
    assert "ends and offcuts of what is sold by the metre (common practice)" in text
    assert "price list: flat twin and earth 6 mm², usual trade price (memory)" in text
    assert "p = nearest((1 + a) * p) = nearest((1 + 0.15) * 280) = 322 p" in text
    assert "K = nearest(n * p) = nearest(8.8 * 322) = 2834 p" in text
    assert "VATREC12030" in text


def test_the_tax_prints_its_rate_its_table_and_one_rounding():
    shown = priced(JOBS["standard"], documented_basis(), worked)
    (tax,) = shown.price.taxes
    text = "\n".join(str(step) for step in working(tax.tax.usual_p))
    assert "VAT Notice 708/6" in text
    assert "K = nearest(r * sum(K)) = nearest(0.2 * sum(" in text


def test_group_and_id_tell_goods_apart(both):
    plain, _ = both
    goods = [(line.group, line.id) for line in plain.price.lines if line.group is not Group.LABOUR]
    assert len(goods) == len(set(goods))


def test_plain_rates_are_not_touched_by_documented_ones():
    rates = documented_basis().rates
    assert rates.documented() is rates
    assert type(rates.card.office_h.usual) is Worked
    assert replace(rates, keeps_working=False).keeps_working is False
