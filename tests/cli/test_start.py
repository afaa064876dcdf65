"""Help comes at once: nothing heavy is loaded until a command needs it."""

from __future__ import annotations

import re
import subprocess
import sys

import pytest

HEAVY = ("numpy", "typst", "jsonschema")


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
