"""The setting of a point and the duty of the pilot, and how large one is with a new home.

At least 7 kW in England: Approved Document S of 2021, section 1.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from ampwright.design.circuit.setting import duty_of, point_setting

from .homes import SEMI, basis, changed, plain
from .work import failed

NEW = changed(SEMI, property__new_home=True, property__country="England")


def made(facts, **changes):
    point = replace(basis().catalogue.point("window-lead"), **changes)
    return point_setting(plain(facts), basis(), point, 6.0)


# 7 kW over 230 V is 30.435 A on one line, 10.145 A on three; the setting does not count
@pytest.mark.parametrize(
    ("phases", "most_a", "says"),
    [(1, 30.44, []), (1, 30.43, ["new_home_point_large_enough"]), (3, 10.15, []),
     (3, 10.14, ["new_home_point_large_enough"])],
)  # fmt: skip
def test_a_point_that_comes_with_a_new_home(phases, most_a, says):
    assert failed(made(NEW, phases=phases, max_a=most_a).checks) == says


@pytest.mark.parametrize(
    "facts",
    [SEMI, changed(NEW, property__new_home=False), changed(NEW, property__country="Wales")],
)
def test_elsewhere_the_customer_chooses(facts):
    assert not failed(made(facts, max_a=16.0).checks)


# 0.6 A for each hundredth up to 85 %, 2.5 A for each over 64 beyond (IEC 61851-1, as tabled)
@pytest.mark.parametrize(
    ("amps", "duty"), [(6.0, 0.1), (32.0, 0.5333), (51.0, 0.85), (52.5, 0.85), (80.0, 0.96)]
)
def test_the_duty_of_a_setting(amps, duty):
    assert duty_of(basis().book, amps) == pytest.approx(duty, abs=0.0001)


def test_below_what_the_pilot_can_say():
    point = replace(basis().catalogue.point("window-lead"), least_a=5.0)
    made = point_setting(plain(SEMI), basis(), point, 5.0)
    assert failed(made.checks) == ["setting_not_below_floor"]
