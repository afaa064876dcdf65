"""How long whole commands take, from the shell to the last line.

Run: python benchmarks/bench_commands.py [--quick]

Each command is a process of its own; the best of several tries is quoted, because a busy machine
only ever adds.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).parents[1]
HOME = str(ROOT / "examples" / "quillbrook-close.toml")
CALL = "import sys; from ampwright.cli.main import main; sys.exit(main(sys.argv[1:]))"


def commands(folder: str) -> tuple[tuple[float, tuple[str, ...]], ...]:
    """Return each command line with the seconds it should take at most."""
    return (
        (0.25, ("--help",)),
        (0.6, ("options", HOME)),
        (0.6, ("options", HOME, "--json")),
        (1.3, ("options", HOME, "--pdf", f"{folder}/paper.pdf")),
        (0.8, ("working", HOME, "A")),
        (0.6, ("why-not", HOME)),
        (0.4, ("validate", HOME)),
        (0.4, ("list", "facts")),
    )


def seconds(words: tuple[str, ...]) -> float:
    """Return how long one command takes."""
    began = time.perf_counter()
    subprocess.run([sys.executable, "-c", CALL, *words], check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - began


def main() -> int:
    """Print one line a command, and fail when one misses its mark."""
    tries = 2 if "--quick" in sys.argv[1:] else 7
    missed = 0
    with tempfile.TemporaryDirectory() as folder:
        for most, words in commands(folder):
            best = min(seconds(words) for _ in range(tries))
            missed += best > most
            shown = " ".join(Path(word).name for word in words)
            mark = "" if best <= most else "  missed"
            print(f"{best:5.2f} s  of {most:.2f}  ampwright {shown}{mark}")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
