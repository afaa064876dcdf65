"""Half-hour readings: files as suppliers write them, and what may be wrong with them."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ampwright.demand.half_hours import (
    current_of_power,
    mean_power,
    power_of_current,
    read_half_hours,
)
from ampwright.foundations.errors import BadFileError
from ampwright.foundations.quantity import Amperes, KilowattHours, Kilowatts, Minutes, Volts

V = Volts(230.0)
MOST = Kilowatts(23.0)

# One home's first evening of 2013 in the London trial of smart meters, open data of the trial's
# network operator, as a public copy of it prints them: 2.31 kWh from half past six.
LONDON = """LCLid,tstp,energy(kWh/hh)
MAC000010,2013-01-01 15:30:00.0000000, 1.2869999
MAC000010,2013-01-01 16:00:00.0000000, 1.2819999
MAC000010,2013-01-01 16:30:00.0000000, 2.0350001
MAC000010,2013-01-01 17:00:00.0000000, 2.1400001
MAC000010,2013-01-01 17:30:00.0000000, 1.3430001
MAC000010,2013-01-01 18:00:00.0000000, 1.345
MAC000010,2013-01-01 18:30:00.0000000, 2.3099999
MAC000010,2013-01-01 19:00:00.0000000, 1.3329999
MAC000010,2013-01-01 19:30:00.0000000, 0.614
"""


def read(text, most=MOST):
    return read_half_hours("meter.csv", text, V, most)


def file_of(*rows, header="time,import (kWh)"):
    return "\n".join([header, *(",".join(map(str, row)) for row in rows)])


def every(start, values, minutes=30):
    at = datetime.fromisoformat(start)
    return [
        (f"{at + timedelta(minutes=minutes * i):%Y-%m-%d %H:%M}", value)
        for i, value in enumerate(values)
    ]


class TestSums:
    def test_energy_over_half_an_hour_is_twice_as_many_kilowatts(self):
        # An article on maximum demand: 150 kWh over half an hour are 300 kW.
        assert mean_power(KilowattHours(150.0), Minutes(30.0)) == 300.0

    def test_kilowatts_and_amperes(self):
        # Operators' form for low-carbon devices: 60 A is 13.8 kVA on one phase.
        assert current_of_power(Kilowatts(13.8), V) == pytest.approx(60.0)
        assert power_of_current(Amperes(60.0), V) == pytest.approx(13.8)

    def test_an_evening_of_the_london_trial(self):
        found = read(LONDON)
        assert found.highest.at == "2013-01-01 18:30:00.0000000"
        assert found.highest.kw == pytest.approx(4.62, abs=1e-6)
        assert current_of_power(found.highest.kw, V) == pytest.approx(20.1, abs=0.02)
        assert (len(found.each), found.days, found.problems) == (9, 1, ())


class TestForms:
    @pytest.mark.parametrize(
        ("header", "value", "kw"),
        [("start,use (kWh)", 2.0, 4.0), ("start,use [Wh]", 2000.0, 4.0), ("start,kW", 4.0, 4.0),
         ("start,Power W", 4000.0, 4.0), ("start,A", 20.0, 4.6), ("start,current (amps)", 20, 4.6),
         ("DateTime,KWH/hh (per half hour) ", 2.0, 4.0)],
    )  # fmt: skip
    def test_units(self, header, value, kw):
        text = file_of(*every("2026-01-05 17:00", [value, value]), header=header)
        assert read(text).highest.kw == pytest.approx(kw)

    @pytest.mark.parametrize(
        "text",
        [
            "kWh,start,end\n0.4,2026-01-05T17:00:00+00:00,2026-01-05T17:30:00+00:00\n"
            "0.5,2026-01-05T17:30:00+00:00,2026-01-05T18:00:00+00:00",
            "time;kWh\n05/01/2026 17:00;0.4\n05/01/2026 17:30;0.5",
            "date\ttime\tkWh\n2026-01-05\t17:00\t0.4\n2026-01-05\t17:30\t0.5",
            "\ufefftime,import kWh,export kWh\n2026-01-05 17:00,0.4,9\n2026-01-05 17:30,0.5,9",
            "Account 12\nSite, Kiln House\n\ntime,kWh\n2026-01-05 17:00,0.4\n2026-01-05 17:30,0.5",
            "time,kWh\n2026-01-05 17:30,0.5\n2026-01-05 17:00,0.4\n",
            "time,kWh\n2026-01-05 17:30Z,0.4\n2026-01-05T19:00+01:00,0.5",
        ],
        ids=["start and end", "semicolons", "date apart", "export beside", "lines before",
             "newest first", "zones"],
    )  # fmt: skip
    def test_files_as_they_come(self, text):
        found = read(text)
        assert [each.kw for each in found.each] == [0.8, 1.0]
        assert found.problems == ()


class TestWrong:
    def problems(self, *rows, **how):
        return [str(each) for each in read(file_of(*rows, **how)).problems]

    def test_a_gap_is_named_with_how_many(self):
        rows = every("2026-01-05 17:00", [1.0] * 6)
        (gap,) = self.problems(*rows[:2], *rows[4:])
        assert "2026-01-05 17:30 to 2026-01-05 19:00" in gap
        assert "'2 missing'" in gap

    def test_the_same_twice_is_kept_once(self):
        rows = every("2026-01-05 17:00", [1.0, 2.0, 1.0])
        found = read(file_of(*rows, rows[1]))
        assert len(found.each) == 3
        assert "one is kept" in str(found.problems[0])

    def test_of_two_that_differ_the_larger_stands(self):
        rows = every("2026-01-05 17:00", [1.0, 2.0, 1.0])
        found = read(file_of(*rows, (rows[1][0], 3.0)))
        assert found.highest.kw == 6.0
        assert "larger is kept" in str(found.problems[0])

    @pytest.mark.parametrize("labels", [("01:00", "01:30"), ("01:30", "02:00")])
    def test_the_night_the_clocks_go_back(self, labels):
        first, second = (f"2026-10-25 {label}" for label in labels)
        before = every("2026-10-25 00:00", [0.1, 0.1] + [0.1] * (labels[0] == "01:30"))
        rows = [*before, (first, 0.2), (second, 0.2), (first, 0.3), (second, 0.3)]
        found = read(file_of(*rows))
        assert len(found.each) == len(rows)
        assert len(found.problems) == 2
        assert all("clocks go back" in str(each) for each in found.problems)

    @pytest.mark.parametrize("last", ["00:30", "01:00"])
    def test_the_night_the_clocks_go_forward(self, last):
        after = {"00:30": "02:00", "01:00": "02:30"}[last]
        rows = [*every("2026-03-29 00:00", [0.1, 0.1]), (f"2026-03-29 {last}", 0.1)]
        more = every(f"2026-03-29 {after}", [0.2, 0.2])
        found = read(file_of(*dict.fromkeys([*rows, *more])))
        assert "clocks go forward" in str(found.problems[-1])
        assert "nothing is missing" in str(found.problems[-1])

    def test_with_zones_no_clock_matters(self):
        rows = every("2026-10-25 00:00", [0.1] * 6)
        assert self.problems(*((f"{at}Z", value) for at, value in rows)) == []

    def test_the_wrong_unit_is_noticed_by_what_the_supply_can_pass(self):
        # 400 W of a half-hour written as kWh: 800 kW through an 100 A fuse.
        (too_much,) = self.problems(*every("2026-01-05 17:00", [400.0, 350.0, 0.4]))
        assert "2 such in all" in too_much
        assert "unit" in too_much

    @pytest.mark.parametrize("cell", ["Null", "", "n/a", "0,4 kWh", "-0.5", "nan", "inf"])
    def test_a_row_without_a_reading_is_left_out_and_named(self, cell):
        rows = every("2026-01-05 17:00", [0.4, cell, 0.5, 0.6, 0.7])
        found = read(file_of(*rows))
        assert len(found.each) == 4
        assert found.problems[0].line == 3

    @pytest.mark.parametrize("at", ["2026-13-01 17:30", "31/02/2026 17:30", "half five", "17:30"])
    def test_a_time_that_is_none_is_named(self, at):
        rows = every("2026-01-05 17:00", [0.4, 0.5])
        assert read(file_of(*rows, (at, 0.6))).problems[0].path == "time"


class TestRefused:
    @pytest.mark.parametrize(
        ("text", "why"),
        [
            ("", "names a time"),
            ("2026-01-05 17:00,0.4", "names a time"),
            ("time,units\n2026-01-05 17:00,0.4", "names a time"),
            ("time,day kWh,night kWh\n2026-01-05 17:00,1,2\n2026-01-05 17:30,1,2", "one column"),
            (file_of(*every("2026-01-05 17:00", [1.0] * 4, minutes=60)), "half an hour"),
            (file_of(*every("2026-01-05 17:00", [100.0 + i for i in range(60)])), "each half-hour"),
            ("time,kWh\n2026-01-05 17:00,none", "a reading"),
        ],
        ids=["empty", "no header", "no unit", "two rates", "hourly", "the dial", "nothing read"],
    )
    def test_whole(self, text, why):
        with pytest.raises(BadFileError, match=why):
            read(text)


@given(st.lists(st.floats(0.0, 11.0), min_size=2, max_size=96), st.randoms())
def test_the_highest_is_that_of_any_order_of_the_rows(values, chance):
    rows = every("2026-01-05 00:00", [*values, 0.0])
    chance.shuffle(rows)
    found = read(file_of(*rows))
    assert found.highest.kw == pytest.approx(2 * max(values))
    assert found.problems == ()
