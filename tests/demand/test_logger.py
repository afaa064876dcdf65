"""A logger's minutes: the highest half-hour of each line, its peak, and what may be wrong."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ampwright.demand.logger import read_log
from ampwright.foundations.errors import BadFileError


def file_of(*currents, header="time,A", start="2026-01-05 17:00", minutes=1, leave=()):
    at = datetime.fromisoformat(start)
    rows = [
        f"{at + timedelta(minutes=minutes * i):%Y-%m-%d %H:%M},{','.join(map(str, each))}"
        for i, each in enumerate(currents) if i not in leave
    ]  # fmt: skip
    return "\n".join([header, *rows])


def one(values, **how):
    return file_of(*((each,) for each in values), **how)


def read(text, phases=1):
    return read_log("log.csv", text, phases)


class TestSums:
    def test_any_half_hour_and_not_only_those_of_the_clock(self):
        # 30 A from ten past to twenty to: the clock's halves hold 20 and 10 minutes of it.
        values = [6.0] * 10 + [30.0] * 30 + [6.0] * 20
        (line,) = read(one(values)).lines
        assert (line.half_hour_a, line.half_hour_at) == (30.0, "2026-01-05 17:39")

    def test_a_kettle_is_a_peak_and_little_in_a_half_hour(self):
        # Three minutes of 13 A more on 2 A: 2 + 13 × 3 / 30.
        values = [2.0] * 30 + [15.0] * 3 + [2.0] * 30
        (line,) = read(one(values)).lines
        assert line.peak_a == 15.0
        assert line.half_hour_a == pytest.approx(3.3)

    def test_each_line_by_itself(self):
        minutes = [(10.0, 20.0, 5.0)] * 30 + [(12.0, 8.0, 5.0)] * 30
        header = "time,L1 (A),L3 (A),L2 (A)"
        lines = read(file_of(*minutes, header=header), 3).lines
        assert [each.line for each in lines] == ["L1", "L2", "L3"]
        assert [each.half_hour_a for each in lines] == [12.0, 5.0, 20.0]

    def test_five_minute_steps(self):
        log = read(one([10.0] * 6 + [20.0] * 6, minutes=5))
        assert (log.step_min, log.lines[0].half_hour_a) == (5.0, 20.0)


class TestWrong:
    def test_no_half_hour_reaches_across_a_gap(self):
        values = [6.0] * 30 + [30.0] * 20 + [0.0] * 5 + [30.0] * 20 + [6.0] * 30
        log = read(one(values, leave=range(50, 55)))
        assert log.lines[0].half_hour_a == pytest.approx((10 * 6 + 20 * 30) / 30)
        assert "'5 missing'" in str(log.problems[0])

    @pytest.mark.parametrize(
        ("text", "phases", "why"),
        [
            (one([5.0] * 40, minutes=10), 1, "at most 5 minutes"),
            (one([5.0] * 40, minutes=4), 1, "divides the half-hour"),
            (one([5.0] * 29), 1, "half an hour of readings"),
            (one([5.0] * 60), 3, "a column in A for each of L1, L2, L3"),
            (file_of(*[(1.0, 2.0, 3.0)] * 60, header="time,a A,b A,c A"), 3, "Name the lines"),
            (one([5.0] * 60, header="time,kWh"), 1, "names a time"),
        ],
    )
    def test_refused(self, text, phases, why):
        with pytest.raises(BadFileError, match=why):
            read(text, phases)


@given(st.lists(st.floats(0.0, 100.0), min_size=30, max_size=90))
def test_agrees_with_the_plain_sum_over_every_window(values):
    values = [round(each, 3) for each in values]
    (line,) = read(one(values)).lines
    windows = [sum(values[i : i + 30]) / 30 for i in range(len(values) - 29)]
    assert line.half_hour_a == pytest.approx(max(windows))
    assert line.peak_a == max(values)
    assert line.half_hour_a <= line.peak_a + 1e-9
