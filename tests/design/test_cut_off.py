"""How soon a fault at the point is cut off, against the times of BS 7671, tables 41.1 and 411.3.2.

A breaker of curve B opens at once from 5 times its rating (BS EN 60898-1, table 7), by its heat
within a minute from 2.55 times; a residual current device of 30 mA within 40 ms from 150 mA,
150 ms from 60 mA and 300 ms from 30 mA (BS 7671, 643.7, and its product's standard).
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from ampwright.design.circuit.cut_off import cut_off
from ampwright.design.circuit.device import protective_device

from .homes import SEMI, basis, plain

BOOK = basis().book


def device(point="window-lead", setting_a=32.0, **changes):
    on = basis()
    made = protective_device(
        plain(SEMI), on, "main", on.catalogue.point(point), "pme", setting_a, False
    )
    return replace(made.out, **changes)


def times(zs_ohm, earthing="pme", point="window-lead", **changes):
    check = cut_off(BOOK, earthing, device(point, **changes), zs_ohm)
    return check.actual, check.limit, check.outcome.value


# 230 V over 160 A, 5 times 32 A, is 1.4375 Ω; over 81.6 A, 2.55 times it, 2.8186 Ω
@pytest.mark.parametrize(
    ("zs_ohm", "seconds", "outcome"),
    [(1.4375, 0.1, "pass"), (1.4376, 60.0, "fail"), (2.8186, 60.0, "fail"),
     (2.8187, 3600.0, "fail")],
)  # fmt: skip
def test_a_breaker_before_a_point_that_sees_residual_current_itself(zs_ohm, seconds, outcome):
    assert times(zs_ohm, point="window-socket") == (seconds, 0.4, outcome)


# 230 V over 150 mA is 1533.3 Ω, over 60 mA 3833.3 Ω, over 30 mA 7666.7 Ω
@pytest.mark.parametrize(
    ("zs_ohm", "seconds", "outcome"),
    [(200.0, 0.04, "pass"), (1533.0, 0.04, "pass"), (1534.0, 0.15, "pass"),
     (3833.0, 0.15, "pass"), (3834.0, 0.3, "fail"), (7666.0, 0.3, "fail"),
     (7667.0, 3600.0, "fail")],
)  # fmt: skip
def test_on_a_rod_the_residual_current_device_opens_it(zs_ohm, seconds, outcome):
    assert times(zs_ohm, "house rod") == (seconds, 0.2, outcome)


# 230 V over 0.5 A, five times 100 mA, is 460 Ω; over 0.2 A 1150 Ω, over 0.1 A 2300 Ω
@pytest.mark.parametrize(
    ("zs_ohm", "seconds"), [(460.0, 0.04), (1150.0, 0.15), (2300.0, 0.3), (2301.0, 3600.0)]
)
def test_exactly_at_the_currents_of_its_tests(zs_ohm, seconds):
    assert times(zs_ohm, "house rod", rcd_ma=100.0)[0] == seconds


def test_one_at_the_origin_opens_before_the_breaker():
    assert times(0.281) == (0.04, 0.4, "pass")


@pytest.mark.parametrize(
    ("rating_a", "earthing", "limit"),
    [(63.0, "pme", 0.4), (64.0, "pme", 5.0), (63.0, "rod", 0.2), (64.0, "rod", 1.0)],
)
def test_a_point_counts_as_a_socket_up_to_63_a(rating_a, earthing, limit):
    check = cut_off(BOOK, earthing, device(rating_a=rating_a), 0.1)
    assert check.limit == limit
