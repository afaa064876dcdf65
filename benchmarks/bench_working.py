"""What it takes to keep the working of every number, and to read a home.

Run: python benchmarks/bench_working.py [--quick]

Of each shipped home the best option is run in one home twice, plainly and with its whole working;
both in one process, so that the ratio is worth quoting. Reading is from the text of the file to
the answers of every key.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import TypeVar

from ampwright.firm.basis import Basis, load_basis
from ampwright.foundations.checks import Check
from ampwright.foundations.working import walk
from ampwright.options.documented import Documented, documented
from ampwright.options.held import most_usual_home
from ampwright.options.laying import left_by
from ampwright.options.open_homes import documented_home, homes_of
from ampwright.options.outlook import outlook
from ampwright.options.runs import InOneHome
from ampwright.options.work import work_of
from ampwright.survey.folding import FoldedHome, as_found
from ampwright.survey.homefile import read

EXAMPLES = Path(__file__).parents[1] / "examples"
T = TypeVar("T")


def timed(run: Callable[[], T], repeat: int) -> tuple[T, float]:
    """Return what a run gives and its best time in milliseconds."""
    best = float("inf")
    for _ in range(repeat):
        began = time.perf_counter()
        result = run()
        best = min(best, (time.perf_counter() - began) * 1000)
    return result, best


def numbers_behind(found: Documented) -> int:
    """Count the numbers that stand behind the checks of an option."""
    sides = tuple(side for check in found.checks for side in sides_of(check))
    return sum(1 for _ in walk(sides))


def sides_of(check: Check) -> tuple[float, ...]:
    return tuple(side for side in (check.actual, check.limit) if side is not None)


def measure(name: str, folded: FoldedHome, basis: Basis, repeat: int) -> None:
    """Print the two runs of the best option of one home."""
    homes = homes_of(folded, basis)
    best = outlook(homes, basis).recommended
    if best is None:
        print(f"{name:18} no option")
        return
    fixed = most_usual_home(best)
    remedies = best.choice.remedies
    plain = homes.one(fixed, left_by(remedies))
    kept = basis.documented()
    home, _ = documented_home(folded, kept, fixed, remedies)
    _, bare = timed(lambda: work_of(basis)(InOneHome(plain), best.choice), repeat)
    found, full = timed(lambda: documented(home, work_of(kept), best.choice), repeat)
    numbers = numbers_behind(found)
    print(f"{name:18} {bare:8.2f} ms {full:8.2f} ms {full / bare:6.1f} x {numbers:8d}")


def main(words: list[str]) -> int:
    """Print one line a home for each of the two questions."""
    quick = "--quick" in words
    repeat = 3 if quick else 50
    basis = load_basis(design_date=date(2026, 11, 25), profile="neutral")
    paths = sorted(EXAMPLES.glob("*.toml"))[: 1 if quick else None]
    texts = {path.stem: path.read_text("utf-8") for path in paths}
    print("home                  plain  with working   ratio  numbers behind its checks")
    for name, text in texts.items():
        measure(name, as_found(read(text, name).records), basis, repeat)
    print("\nhome                   reading    folding  records")
    for name, text in texts.items():
        file, reading = timed(lambda text=text, name=name: read(text, name), min(repeat, 20))
        _, folding = timed(lambda file=file: as_found(file.records), min(repeat, 20))
        print(f"{name:18} {reading:8.1f} ms {folding:7.1f} ms {len(file.records):8d}")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
