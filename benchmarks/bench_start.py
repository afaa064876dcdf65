"""How long the command takes to say what it can do.

Run: python benchmarks/bench_start.py [--quick]

Cold is without compiled modules, as right after an update; warm is as every day. The median of ten
processes each, beside that of Python itself.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from statistics import median

HELP = "import sys; from ampwright.cli.main import main; sys.exit(main(['--help']))"
MOST_WARM_S = 0.25


def seconds(code: str, env: dict[str, str]) -> float:
    """Return how long one process takes."""
    began = time.perf_counter()
    subprocess.run(
        [sys.executable, "-c", code],
        check=True,
        stdout=subprocess.DEVNULL,
        env={**os.environ, **env},
    )
    return time.perf_counter() - began


def cold() -> float:
    """Return how long the help takes when nothing is compiled yet."""
    with tempfile.TemporaryDirectory() as folder:
        return seconds(HELP, {"PYTHONPYCACHEPREFIX": folder})


def main(words: list[str]) -> int:
    """Print three medians; exit 1 when the warm one misses its mark."""
    tries = 2 if "--quick" in words else 10
    bare = median(seconds("pass", {}) for _ in range(tries))
    first = median(cold() for _ in range(tries))
    seconds(HELP, {})
    warm = median(seconds(HELP, {}) for _ in range(tries))
    print(f"Python alone          {bare:6.3f} s")
    print(f"ampwright --help cold {first:6.3f} s")
    print(f"ampwright --help warm {warm:6.3f} s  of {MOST_WARM_S:.2f}")
    return 0 if "--quick" in words or warm <= MOST_WARM_S else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
