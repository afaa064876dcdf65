"""Each benchmark still runs; what it measures is not judged here."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

BENCHMARKS = sorted((Path(__file__).parents[1] / "benchmarks").glob("bench_*.py"))
MISSED_A_MARK = 1
"""Also the status of a benchmark whose answers disagree; that one says so."""


@pytest.mark.parametrize("path", BENCHMARKS, ids=lambda path: path.stem)
def test_it_runs_quickly_through(path):
    done = subprocess.run(
        [sys.executable, path, "--quick"], capture_output=True, text=True, check=False
    )
    assert done.returncode in (0, MISSED_A_MARK), done.stderr
    assert done.stderr == ""
    assert done.stdout.strip()
    assert " NO" not in done.stdout


def test_there_are_some():
    assert len(BENCHMARKS) >= 4
