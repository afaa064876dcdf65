"""Earth and lines of a feed behind its fuse: Table 54.7 by hand, and k²S² against I²t for 5 s.

An 80 A service fuse wants 0.475 Ω to open in 5 s, so 484 A; at more it opens sooner.
"""

from __future__ import annotations

import pytest

from ampwright.design.circuit.feed_earth import by_rule, feed_earth

from .homes import SEMI, YARD, basis, changed, plain
from .work import failed

FAR = changed(SEMI, boards__main__from_meter_m=12.0, boards__main__feed_mm2=16.0,
              boards__main__feed_kind="armoured", boards__main__feed_device_a=80.0)  # fmt: skip


def earth(facts, **changes):
    return feed_earth(plain(changed(facts, **changes)), basis(), "main").checks


@pytest.mark.parametrize(
    ("line", "earth_mm2"), [(10.0, 10.0), (16.0, 16.0), (25.0, 16.0), (35.0, 16.0), (50.0, 25.0)]
)
def test_by_rule(line, earth_mm2):
    assert by_rule(basis().book, line) == earth_mm2


def test_a_large_armour_by_rule():
    # 16 mm² of copper is 16·143/46 = 49.74 mm² of steel; the armour of 4 × 25 has 70
    core, line = earth(YARD)
    assert (core.actual, core.limit) == (pytest.approx(49.74, abs=0.01), 70.0)
    # 143²·25²/484.2² = 54.5 s
    assert (line.actual, line.limit) == (pytest.approx(54.5, abs=0.1), 5.0)


def test_a_smaller_armour_by_the_sum():
    # the armour of 2 × 16 has 41 mm²; √(484.2²·5)/46 = 23.54 mm²
    core, line = earth(FAR)
    assert (core.actual, core.limit) == (pytest.approx(23.54, abs=0.01), 41.0)
    assert line.actual == pytest.approx(143**2 * 16**2 / 484.2**2, rel=0.001)


def test_a_weak_earth_lets_less_flow():
    # 1 Ω outside and 0.0698 Ω of the feed: 215 A
    core, _ = earth(FAR, supply__ze_ohm=1.0)
    assert core.actual == pytest.approx((214.99**2 * 5) ** 0.5 / 46, rel=0.001)


def test_a_thin_feed_behind_a_large_fuse():
    thin = earth(FAR, boards__main__feed_kind="flat", boards__main__feed_mm2=2.5)
    assert failed(thin) == ["earth_core_withstands", "feed_line_outlasts"]


def test_without_a_device_of_its_own_the_main_fuse_counts():
    assert earth(FAR, boards__main__feed_device_a=0.0)[0].actual == earth(FAR)[0].actual


def test_a_fuse_that_no_table_holds():
    # 230 / (0.18 + 0.0698) = 920.6 A for the whole of 5 s: √(920.6²·5)/46 = 44.75 mm²
    core, _ = earth(FAR, boards__main__feed_device_a=81.0)
    assert (core.actual, core.outcome.value) == (pytest.approx(44.75, abs=0.02), "fail")


def test_none_is_asked_near_the_meter_or_on_a_rod():
    assert earth(FAR, boards__main__from_meter_m=3.0) == ()
    assert earth(FAR, supply__earthing="TT") == ()


def test_a_size_that_no_table_holds_is_measured():
    (check,) = earth(FAR, boards__main__feed_mm2=300.0)
    assert check.outcome.value == "undetermined"
