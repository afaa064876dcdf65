"""Going again to turn a point up: its hours, its road, its office, and nothing that is bought."""

from __future__ import annotations

from dataclasses import replace

from ampwright.costing.lines import Group
from ampwright.costing.second_visit import both_visits, second_visit
from ampwright.firm.rates import Rate
from ampwright.foundations.working import orphans
from tests.design.homes import basis, documented_basis, plain, worked

from .jobs import STANDARD, STANDARD_JOB, priced, with_rates


def visits(on=None):
    home, on = plain(STANDARD), on or basis()
    again = second_visit(home, on).out
    return both_visits(home, on, priced(STANDARD_JOB, on).price, again).out


def test_it_takes_half_an_hour_the_road_again_and_half_an_hour_of_the_office():
    # 0.5 h at £52, 20 miles at 50 p, 1 h of road at £30, 0.5 h at £25: £78.50; a fifth is £15.70.
    made = visits()
    assert {line.id: line.amount.usual_p for line in made.second.lines} == {
        "turn-up": 2_600, "travel_miles": 1_000, "travel_h": 3_000, "revisit_h": 1_250,
    }  # fmt: skip
    assert (made.second.net.usual_p, made.second.tax.usual_p) == (7_850, 1_570)
    assert made.total.usual_p == made.first.total.usual_p + 9_420
    assert {line.group for line in made.second.lines} == {
        Group.LABOUR, Group.TRAVEL, Group.OFFICE,
    }  # fmt: skip


def test_at_its_least_and_at_its_most():
    # 0.3 h at £50, 10 miles, 0.6 h, 0.3 h: £15 + 5 + 18 + 7.50. 0.8 h at £58, 35 miles, 1.5 h,
    # 0.8 h: £46.40 + 17.50 + 45 + 20.
    made = visits()
    assert (made.second.net.low_p, made.second.net.high_p) == (4_550, 12_890)


def test_the_first_visit_is_the_price_of_all_that_is_fitted():
    assert visits().first == priced(STANDARD_JOB).price


def test_overheads_lie_on_it_where_the_firm_puts_them_apart():
    card = replace(basis().rates.card, overheads_share=Rate(0.1, 0.1, 0.1))
    made = visits(with_rates(basis(), card=card))
    assert made.second.net.usual_p == 7_850 + 785


def test_every_penny_of_it_has_a_source():
    home, on = worked(STANDARD), documented_basis()
    again = second_visit(home, on).out
    made = both_visits(home, on, priced(STANDARD_JOB, on, worked).price, again).out
    assert made == visits()
    for line in made.second.lines:
        assert orphans((line.quantity, line.unit_p, *line.amount)) == []
    assert orphans(made.total) == []
