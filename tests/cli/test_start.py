"""Help comes at once: nothing heavy is loaded until a command needs it."""

from __future__ import annotations

import os
import re
import subprocess
import sys
import time

import pytest

HEAVY = ("numpy", "typst", "tomlkit", "jsonschema")
BUDGET_S = 0.25
TRIES = 5


def start(*words):
    code = f"import sys; from ampwright.cli.main import main; sys.exit(main({list(words)!r}))"
    return [sys.executable, *(["-X", "importtime"]), "-c", code]


@pytest.mark.parametrize("words", [("--help",), ("--version",), ()])
def test_help_loads_nothing_heavy(words):
    done = subprocess.run(start(*words), capture_output=True, text=True, check=True)
    loaded = {line.rpartition("|")[2].strip() for line in done.stderr.splitlines()}
    assert "ampwright.cli.main" in loaded
    assert not {name for name in loaded if name.partition(".")[0] in HEAVY}
    assert not {name for name in loaded if name.startswith("ampwright.options")}


def test_it_would_be_noticed():
    words = ("list", "facts", "fuse")
    done = subprocess.run(start(*words), capture_output=True, text=True, check=True)
    assert re.search(r"\| +ampwright\.survey\.home$", done.stderr, re.MULTILINE)


def test_listing_and_checking_load_no_typesetter():
    words = ("list", "facts", "fuse")
    done = subprocess.run(start(*words), capture_output=True, text=True, check=True)
    assert not re.search(r"\| +typst", done.stderr)


def test_help_comes_at_once():
    code = "import sys; from ampwright.cli.main import main; sys.exit(main(['--help']))"
    best = min(timed([sys.executable, "-c", code]) for _ in range(TRIES))
    assert best <= BUDGET_S


def timed(command):
    began = time.perf_counter()
    subprocess.run(command, capture_output=True, check=True, env=os.environ)
    return time.perf_counter() - began
