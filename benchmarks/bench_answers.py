"""What one answer costs while facts are open: the first look, then answers one after the other.

Run: python benchmarks/bench_answers.py [--quick]

Each answer is worked out twice in one process, with what is known from the homes before it and
as if nothing were; only the ratio is worth quoting. The run fails where the two do not say the
same of the home.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path
from statistics import median
from typing import TypeVar

from bench_options import BLANKED, EXAMPLE, bonded, with_open

from ampwright.firm.basis import Basis, load_basis
from ampwright.foundations.answers import Answer, Is, Value
from ampwright.foundations.source import Evidence
from ampwright.options.asking.asked import Asked, Explored, asked, explore
from ampwright.options.homes import Homes
from ampwright.options.memory import Memory
from ampwright.survey.folding import Folded, FoldedHome, as_found, ids_of
from ampwright.survey.homefile import read

T = TypeVar("T")
CALL = Path(__file__).parents[1] / "examples" / "calls" / "fellside-cottage.toml"
ELEVENTH: Mapping[str, tuple[Value, ...]] = {"supply.isolator": ("none", "two pole")}
"""Answered in the example: with the ten it makes eleven, of which ten are left by an answer."""
NOT_RECKONED_WITH: Mapping[str, Value] = {
    "legs.along-the-ceiling.length_m": 9.5,
    "supply.ze_ohm": 0.27,
    "supply.main_fuse_a": 63.0,
}
"""Answers that are none of those that were thought possible."""


def timed(run: Callable[[], T]) -> tuple[T, float]:
    """Return what a run gives and its processor time in milliseconds."""
    began = time.process_time()
    result = run()
    return result, (time.process_time() - began) * 1000


def alone(homes: Homes) -> Homes:
    """Return the same homes with nothing kept."""
    return replace(homes, pool={}, memory=Memory())


def one_answer(before: Explored, key: str, value: Value, basis: Basis) -> tuple[float, float, bool]:
    """Return the time of an answer with what is known, the time without, and if they agree."""
    homes = before.homes.knowing({key: value})
    mine, quick = timed(lambda: explore(homes, basis, {}, before))
    other, slow = timed(lambda: explore(alone(homes), basis, {}))
    return quick, slow, mine.holds == other.holds and mine.turns == other.turns


def with_ten_left(basis: Basis, quick: bool) -> bool:
    """Print what an answer costs that leaves ten facts open; return whether all agree."""
    folded = as_found(read(EXAMPLE.read_text("utf-8"), EXAMPLE.name).records)
    further = {**dict(BLANKED[: 2 if quick else len(BLANKED)]), **ELEVENTH}
    homes = with_open(bonded(folded, basis), further)
    before, first = timed(lambda: explore(alone(homes), basis, {}))
    print(f"{len(homes.open)} facts open, {homes.count} homes: first look {first:.0f} ms")
    likely = [(key, value) for key, values in further.items() for value in values]
    other = [(key, value) for key, value in NOT_RECKONED_WITH.items() if key in further]
    same = True
    for words, answers in (("of those reckoned with", likely), ("not reckoned with", other)):
        found = [one_answer(before, key, value, basis) for key, value in answers]
        ms, plain, agree = zip(*found, strict=True)
        same = same and all(agree)
        print(
            f"{len(found):3d} answers {words:22}  middle {median(ms):4.0f} ms, worst {max(ms):4.0f}"
            f"; afresh {median(plain):5.0f}; ratio"
            f" {median(s / q for q, s, _ in found):5.1f}  {'agree' if all(agree) else 'DIFFER'}"
        )
    return same


def told(folded: FoldedHome, key: str, answer: Answer) -> FoldedHome:
    """Return a home with one answer more, told by the customer."""
    facts = {**folded.facts, key: Folded(answer, Evidence.TOLD)}
    return FoldedHome(facts, ids_of(facts))


def usual(found: Asked) -> Answer:
    """Return the most common answer to the next question."""
    assert found.next is not None
    homes, key = found.explored.homes, found.next.key
    if key not in homes.open:
        return Is(True)
    return Is(max(zip(homes.chances[key], homes.open[key], strict=True))[1])


def along_a_call(basis: Basis, answers: int) -> bool:
    """Print what answers of a first call cost, one after the other; return whether all agree."""
    folded = as_found(read(CALL.read_text("utf-8"), CALL.name).records)
    found, first = timed(lambda: asked(folded, basis))
    print(f"\na first call, homes drawn: first look {first:.0f} ms")
    same = True
    for _ in range(answers):
        if found.next is None:
            break
        key = found.next.key
        folded = told(folded, key, usual(found))
        found, quick = timed(lambda folded=folded, found=found: asked(folded, basis, before=found))
        other, slow = timed(lambda folded=folded: asked(folded, basis))
        agree = found.holds == other.holds
        same = same and agree
        print(
            f"  {key:34} {quick:5.0f} ms; afresh {slow:5.0f}; ratio {slow / quick:4.1f}"
            f"  {'agree' if agree else 'DIFFER'}"
        )
    return same


def main(words: list[str]) -> int:
    """Print both tables; exit 1 where an answer leaves something else than the homes come to."""
    quick = "--quick" in words
    basis = load_basis(design_date=date(2026, 11, 25), profile="neutral")
    same = with_ten_left(basis, quick)
    same = along_a_call(basis, 1 if quick else 6) and same
    return 0 if same else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
