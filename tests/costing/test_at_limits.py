"""Days and grants at their edges."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from ampwright.costing.grant import grant
from ampwright.foundations.money import Pence
from tests.design.homes import basis, changed, plain

from .jobs import STANDARD


@pytest.mark.parametrize(
    ("on", "may", "most_p"),
    [(date(2027, 3, 31), True, 50_000), (date(2027, 4, 1), False, 0)],
)
def test_a_grant_lasts_to_its_last_day(on, may, most_p):
    # government grant pages: up to £500 from 1 April 2026 to 31 March 2027
    home = plain(changed(STANDARD, customer__holds="tenant", property__kind="terrace"))
    made = grant(home, replace(basis(), design_date=on), Pence(100_000)).out
    assert (made.may, made.most_p) == (may, most_p)
