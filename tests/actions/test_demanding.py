"""Files of readings beside the household table, through the command a person runs.

The figures are written into the files below, so each is known by hand.
"""

from __future__ import annotations

import json
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest

from ampwright.actions.demanding import demand
from ampwright.actions.seeing import Terms
from ampwright.cli.main import main
from ampwright.foundations.errors import BadFileError, InputError

ROOT = Path(__file__).resolve().parents[2]
PLAIN = ROOT / "examples" / "quillbrook-close.toml"
TERMS = Terms(date(2026, 11, 25))
START = datetime(2026, 1, 10, tzinfo=UTC)


def meter(tmp_path: Path, *, highest_kwh: float = 2.4, missing: int = 100) -> Path:
    """Ten days of half-hours at 0.3 kWh, one higher and one missing."""
    rows = ["time,kWh import"]
    for number in range(480):
        if number != missing:
            at = START + timedelta(minutes=30 * number)
            rows.append(f"{at:%Y-%m-%d %H:%M},{highest_kwh if number == 77 else 0.3}")
    path = tmp_path / "meter.csv"
    path.write_text("\n".join(rows), "utf-8")
    return path


def logger(tmp_path: Path, amps: float = 31.0) -> Path:
    """Ten hours by the minute at 4 A, forty minutes of them higher."""
    rows = ["time,L1 A"]
    rows += [
        f"{START + timedelta(minutes=number):%Y-%m-%d %H:%M},{amps if 200 <= number < 240 else 4}"
        for number in range(600)
    ]
    path = tmp_path / "log.csv"
    path.write_text("\n".join(rows), "utf-8")
    return path


def test_three_ways_stand_side_by_side_and_the_table_counts_unless_stated(tmp_path) -> None:
    said = demand(PLAIN, TERMS, meter(tmp_path), logger(tmp_path))
    ways = {way.by: way for way in said.ways}
    # 21.65 A by the household table (worked home 1); 2.4 kWh in half an hour is 4.8 kW, 20.87 A
    # at 230 V; the highest thirty minutes of the logger are all at 31 A.
    assert ways["household table"].line_a == pytest.approx((21.65,), abs=0.005)
    assert ways["half-hour readings"].line_a == pytest.approx((20.87,), abs=0.005)
    assert ways["logger"].line_a == pytest.approx((31.0,))
    assert [way.by for way in said.ways if way.counts] == ["household table"]
    (caution,) = said.cautions
    assert "by logger L1 drew more" in caution
    assert any("1 missing" in each for each in said.problems)


def test_the_figures_to_keep_are_answers_of_the_register(tmp_path) -> None:
    said = demand(PLAIN, TERMS, meter(tmp_path), logger(tmp_path))
    assert {(each.key, each.value) for each in said.keep} == {
        ("supply.highest_half_hour_kw", "4.8"), ("supply.logged_l1_a", "31"),
    }  # fmt: skip


def test_a_stated_way_counts_by_its_file_before_its_figure_is_kept(tmp_path) -> None:
    home = tmp_path / "home.toml"
    text = PLAIN.read_text("utf-8").replace("[supply]", '[supply]\ndemand_by = "logger"', 1)
    home.write_text(text, "utf-8")
    said = demand(home, TERMS, logger=logger(tmp_path))
    assert [way.by for way in said.ways if way.counts] == ["logger"]
    with pytest.raises(InputError, match=r"supply\.logged_l1_a"):
        demand(home, TERMS)


def test_readings_of_another_step_are_refused_with_the_file_named(tmp_path) -> None:
    hourly = tmp_path / "hourly.csv"
    rows = [f"{START + timedelta(hours=n):%Y-%m-%d %H:%M},0.6" for n in range(48)]
    hourly.write_text("\n".join(["time,kWh", *rows]), "utf-8")
    with pytest.raises(BadFileError, match=r"hourly\.csv"):
        demand(PLAIN, TERMS, hourly)


def test_the_command_prints_them_and_writes_nothing(tmp_path, capsys) -> None:
    before = PLAIN.read_bytes()
    words = ["demand", str(PLAIN), "--half-hours", str(meter(tmp_path)), "--date", "2026-11-25"]
    assert main(words) == 0
    shown = capsys.readouterr().out
    assert "half-hour readings    20.9 A" in shown and "21.7 A  counts" in shown
    assert main([*words, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["keep"][0]["value"] == "4.8"
    assert PLAIN.read_bytes() == before
    assert main(["demand", str(PLAIN), "--logger", str(tmp_path / "none.csv")]) == 2
