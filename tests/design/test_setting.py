"""The setting of a point and the duty of the pilot that offers it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from ampwright.design.circuit.setting import duty_of, point_setting

from .homes import SEMI, basis, plain
from .work import failed


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
