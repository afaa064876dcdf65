"""Sums of several cars, done by hand."""

from __future__ import annotations

import pytest

from ampwright.energy.need import yearly_need

from ..demand.homes import PLAIN, TOLERANCE, car, home_of
from ..supply.given_basis import BASIS


def test_two_cars_need_what_each_needs():
    # twice 8,000 miles at 3.5 miles a kWh and 0.9 at the wall: 2 × 2,540 kWh
    second = {key.replace("cars.a.", "cars.b."): v for key, v in car(7.4, 1, 40, 8000.0).items()}
    need = yearly_need(home_of({**PLAIN, **second}), BASIS).out
    assert need.kwh_a_year == pytest.approx(5080, rel=TOLERANCE)
    assert need.kwh_a_day == pytest.approx(13.92, rel=TOLERANCE)
