#!/usr/bin/env python3
"""Set Ampwright up from a fresh clone and run it, with nothing but Python 3.11 or later.

python3 dev.py demo            design the example home: the decision, the options, a paper in out/
python3 dev.py test [CHECK …]  run all that a change must pass, or only the checks named
python3 dev.py setup           only make .venv, with the developer's tools

The first run fetches the pinned packages; later ones find them in place.
"""

from __future__ import annotations

import hashlib
import importlib.util
import os
import shutil
import subprocess
import sys
import time
import venv
from pathlib import Path

ROOT = Path(__file__).resolve().parent
VENV = ROOT / ".venv"
BIN = VENV / ("Scripts" if os.name == "nt" else "bin")
STAMP = VENV / "made-from"
PINS = ROOT / "requirements"
HOME = "examples/quillbrook-close.toml"
PAPER = "out/quillbrook-close.pdf"
CHECKS = {
    "format": ("ruff", "format", "--check", "."),
    "lint": ("ruff", "check", "."),
    "types": ("mypy",),
    "rooms": ("lint-imports", "--no-logo"),
    "tests": ("pytest", "--quiet", "--numprocesses=auto", "--maxprocesses=4"),
}


def main(words: list[str]) -> int:
    """Do what the first word asks and return an honest exit status."""
    command, rest = (words or ["help"])[0], words[1:]
    if command == "demo" and not rest:
        return demo()
    if command == "test" and CHECKS.keys() >= set(rest):
        return test(rest or list(CHECKS))
    if command == "setup" and not rest:
        return set_up("dev")
    print(__doc__, f"Checks: {', '.join(CHECKS)}.", sep="\n")
    return 0 if command in ("help", "-h", "--help") else 2


def demo() -> int:
    """Design the example home and write its paper."""
    set_up("runtime")
    (ROOT / PAPER).parent.mkdir(exist_ok=True)
    return call("ampwright", "options", HOME, "--pdf", PAPER)


def test(names: list[str]) -> int:
    """Run every check named, whatever the earlier ones said, then say which failed."""
    set_up("dev")
    failed = []
    for name in names:
        print(f"\n== {name}", flush=True)
        if call(*CHECKS[name]):
            failed.append(name)
    print(f"\nFailed: {', '.join(failed)}." if failed else f"\nAll passed: {', '.join(names)}.")
    return 1 if failed else 0


def set_up(group: str) -> int:
    """Fill .venv with the pinned packages and no others, unless they are there already."""
    made = STAMP.read_text().split() if STAMP.exists() else []
    if made[:1] == ["dev"]:
        group = "dev"  # it holds the runtime one, and whoever has it keeps it
    if made == [group, stamp(group)]:
        return 0
    began = time.monotonic()
    print(f"Setting up .venv ({group}) ...", flush=True)
    STAMP.unlink(missing_ok=True)
    installer = PINS / "installer.txt"
    if not all(shutil.which(program, path=str(BIN)) for program in ("python", "uv")):
        make_venv()
        must("python", "-m", "pip", "install", "--quiet", "--require-hashes", "-r", installer)
    fetch = ("uv", "pip", "sync", "--quiet", "--require-hashes", "--compile-bytecode")
    must(*fetch, installer, PINS / f"{group}.txt")
    link = ("uv", "pip", "install", "--quiet", "--offline", "--no-deps", "--no-build-isolation")
    must(*link, "--editable", ROOT)
    STAMP.write_text(f"{group} {stamp(group)}")
    print(f"Ready in {time.monotonic() - began:.1f} s.", flush=True)
    return 0


def make_venv() -> None:
    """Make an empty .venv, first adding the piece that Debian leaves out of its Python."""
    if importlib.util.find_spec("ensurepip") is None:
        package = f"python{sys.version_info.major}.{sys.version_info.minor}-venv"
        if not shutil.which("apt-get") or os.geteuid() != 0:
            sys.exit(f"This Python cannot make a .venv yet. Once: sudo apt-get install {package}")
        for step in (["update"], ["install", "--yes", package]):
            subprocess.run(["apt-get", "-qq", *step], check=True, stdout=subprocess.DEVNULL)
    venv.create(VENV, clear=True, with_pip=True)


def stamp(group: str) -> str:
    """Name what a .venv is made from: Python, place, pins and the package's declaration."""
    files = PINS / "installer.txt", PINS / f"{group}.txt", ROOT / "pyproject.toml"
    here = f"{sys.version_info[:2]} {ROOT}".encode()
    return hashlib.sha256(b"\0".join([here, *(file.read_bytes() for file in files)])).hexdigest()


def call(program: str, *words: str | Path) -> int:
    """Run a program of the .venv from the project's folder and return its exit status."""
    # The machine's own certificates count: many firms look into their traffic.
    env = {"UV_SYSTEM_CERTS": "1", **os.environ, "PYTHONUTF8": "1", "VIRTUAL_ENV": str(VENV)}
    return subprocess.run([BIN / program, *words], cwd=ROOT, env=env, check=False).returncode


def must(program: str, *words: str | Path) -> None:
    """Run a step that the rest of the set-up cannot do without."""
    if status := call(program, *words):
        sys.exit(f"Set-up stopped: {program} ended with {status}. The same command tries again.")


if __name__ == "__main__":
    if sys.version_info < (3, 11):  # noqa: UP036 - this file may meet an older Python first
        sys.exit(f"Ampwright needs Python 3.11 or later; this is {sys.version.split()[0]}.")
    sys.exit(main(sys.argv[1:]))
