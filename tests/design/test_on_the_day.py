"""What is proved when the work is done, and what the readings should come to."""

from __future__ import annotations

import pytest

from ampwright.design.circuit.setting import offered
from ampwright.design.on_the_day import on_the_day
from ampwright.tables.capacity import CableFamily

from .homes import SEMI, basis, plain
from .work import circuit


def proved(setting_a=32.0, point="window-lead", earthing="pme", house_limit=False, facts=SEMI):
    on = basis()
    laid, _, _ = circuit(facts, "main", "window", CableFamily.FLAT, setting_a, point)
    kind = on.catalogue.point(point)
    return on_the_day(plain(facts), on, kind, setting_a, laid, earthing, house_limit).out


def limits(out):
    return [(each.clause.id, each.limit) for each in out.each]


def test_the_readings_to_expect_of_eight_metres_of_6_and_2_5_mm2():
    # 3.08 and 7.41 Ω/km at 20 °C (IEC 60228): 8·10.49/1000 = 0.08392 Ω; ten degrees colder
    # 1 − 10·0.00393 of it, or 0.0806 Ω
    out = proved()
    assert out.r1r2_ohm == pytest.approx(0.08392, abs=0.00001)
    assert out.r1r2_cold_ohm == pytest.approx(0.0806, abs=0.0001)


def test_what_the_readings_are_held_to():
    # a B32 opens at 0.95·230/(5·32) = 1.366 Ω, of which 0.8 may be read cold
    (loop, loop_ohm), *others = limits(proved())
    assert (loop, loop_ohm) == ("loop_within_limit", pytest.approx(1.0925, abs=0.0001))
    assert others == [
        ("rcd_trips_in_time", 0.3), ("pilot_within_setting", 32.0),
        ("open_pen_device_quick", 5.0),
    ]  # fmt: skip
    assert "53.3%" in proved().each[2].how


def test_a_limit_on_the_house_is_tried_with_something_lost():
    assert limits(proved(house_limit=True))[-2:] == [
        ("limiter_quick_enough", 60.0), ("limiter_proved", None),
    ]  # fmt: skip


def test_on_a_rod_the_electrode_is_read():
    assert limits(proved(earthing="rod", house_limit=False))[0] == ("rod_stable", 200.0)
    assert len(proved(earthing="rod").each) == 3
    assert len(proved(point="bare-lead").each) == 3


# 0.6 A for each hundredth up to 85 %, 2.5 A for each over 64 beyond (IEC 61851-1, as tabled)
@pytest.mark.parametrize(("duty", "amps"), [(0.1, 6.0), (0.85, 51.0), (0.96, 80.0)])
def test_what_a_duty_offers(duty, amps):
    assert offered(basis().book, duty) == pytest.approx(amps)
