"""How long it takes to know every option of a home, complete and with facts still open.

Run: python benchmarks/bench_options.py [--quick]

The plain loop is the oracle as well as the yardstick: every home by itself, every full choice
in it, stage by stage until one fails. Both engines run in the same process, one after the
other, and must agree in every home; only ratios of one run are worth quoting.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable, Iterator, Mapping
from datetime import date
from itertools import islice, product
from pathlib import Path
from typing import Any, TypeVar

from ampwright.firm.basis import Basis, load_basis
from ampwright.foundations.answers import Unanswered, Value
from ampwright.foundations.checks import Outcome, verdict
from ampwright.options.choices import DIMENSIONS, Choice
from ampwright.options.documented import documented
from ampwright.options.homes import Homes
from ampwright.options.laying import left_by
from ampwright.options.lifting import Lifter
from ampwright.options.menu import menu_of
from ampwright.options.open_homes import documented_home, homes_of
from ampwright.options.outlook import outlook
from ampwright.options.runs import InOneHome
from ampwright.options.search import Walk
from ampwright.options.work import work_of
from ampwright.survey.folding import FoldedHome, as_found
from ampwright.survey.homefile import read

EXAMPLE = Path(__file__).parents[1] / "examples" / "quillbrook-close.toml"
T = TypeVar("T")

BLANKED: tuple[tuple[str, tuple[Value, ...]], ...] = (
    ("supply.main_fuse_a", (60.0, 80.0, 100.0)),
    ("supply.looped", (False, True)),
    ("supply.earthing", ("TN-C-S", "TN-S")),
    ("loads.kitchen-sockets.amps_a", (10.0, 15.0, 20.0, 25.0)),
    ("boards.main.spare_ways", (0, 2)),
    ("services.gas.bond_connected", (False, True)),
    ("legs.along-the-ceiling.length_m", (5.0, 7.0, 12.0, 25.0)),
    ("supply.ze_ohm", (0.18, 0.35, 0.8)),
    ("supply.condition", ("sound", "doubtful")),
    ("tariff.night_h", (4.0, 5.0, 7.0)),
)
"""Facts of the complete home that are opened one after another, and what they may be."""

MANY: Mapping[str, tuple[Value, ...]] = {
    "supply.main_fuse_a": (60.0, 80.0, 100.0),
    "supply.looped": (False, True),
    "supply.earthing": ("TN-C-S", "TN-S", "TT"),
    "supply.ze_ohm": (0.18, 0.35, 0.8),
    "loads.kitchen-sockets.amps_a": (10.0, 15.0, 20.0, 25.0),
    "legs.along-the-ceiling.length_m": (5.0, 7.0, 12.0, 18.0, 25.0),
}
"""Facts that make 1,080 homes of the complete one."""

UNREAD: Mapping[str, tuple[Value, ...]] = {
    f"property.nobody_reads_{number}": (1.0, 2.0, 3.0) for number in range(6)
}
"""Facts that no stage reads."""

EACH = 30
"""Of many homes, every thirtieth is gone through by the plain loop."""


class FailedError(Exception):
    """A stage of the plain loop failed."""


class StopsAtFailure(InOneHome):
    """Runs stages in one home and stops at the first that fails."""

    def __call__(self, stage: Any, /, *args: Any, **kwargs: Any) -> Any:
        out = super().__call__(stage, *args, **kwargs)
        if verdict(self.stages[-1].checks) is Outcome.FAIL:
            raise FailedError
        return out


def timed(run: Callable[[], T], repeat: int = 3) -> tuple[T, float]:
    """Return what a run gives and its least processor time in milliseconds."""
    best = float("inf")
    for _ in range(repeat):
        began = time.process_time()
        result = run()
        best = min(best, (time.process_time() - began) * 1000)
    return result, best


def opened(homes: Homes, count: int) -> Homes:
    """Return the home with so many of its facts opened."""
    return with_open(homes, dict(BLANKED[:count]))


def with_open(homes: Homes, still: Mapping[str, tuple[Value, ...]]) -> Homes:
    """Return the home with some facts opened, each answer as likely as another."""
    known = {key: value for key, value in homes.known.items() if key not in still}
    shares = {key: tuple(1.0 for _ in values) for key, values in still.items()}
    return Homes(known, still, shares, homes.build)


def plainly(
    homes: Homes, choices: list[Choice], basis: Basis, each: int = 1
) -> Iterator[tuple[Mapping[str, Value], frozenset[str]]]:
    """Yield each home, or every so many-th, and the slugs of the choices that hold in it."""
    work = work_of(basis)
    for fixed, home in islice(homes.each(), 0, None, each):
        held = set()
        for choice in choices:
            run = StopsAtFailure(home)
            try:
                work(run, choice)
            except (FailedError, Unanswered):
                continue
            held.add(choice.slug)
        yield fixed, frozenset(held)


def all_choices(homes: Homes, basis: Basis) -> list[Choice]:
    """Return every full choice of the menu, without remedies."""
    menu = menu_of(Lifter(homes), basis)
    combinations = product(*(menu[name] for name in DIMENSIONS))
    return [Choice(**dict(zip(DIMENSIONS, each, strict=True))) for each in combinations]


def spread_over(homes: Homes, basis: Basis) -> Walk[Any]:
    """Walk every choice over all homes at once."""
    lifter = Lifter(homes)
    walk = Walk(lifter, menu_of(lifter, basis), work_of(basis))
    walk.run()
    return walk


def agree(walk: Walk[Any], plain: Mapping[tuple[Value, ...], frozenset[str]]) -> bool:
    """Say whether both engines hold the same choices sound in every home."""
    bare = [option for option in walk.found.options if not option.choice.remedies]
    for values, held in plain.items():
        fixed = dict(zip(walk.homes.open, values, strict=True))
        mine = {o.choice.slug for o in bare if o.sound.in_home(fixed) is not Outcome.FAIL}
        if mine != held:
            return False
    return True


def complete(folded: FoldedHome, basis: Basis) -> None:
    """Print the times for a complete home."""
    homes = homes_of(folded, basis)
    seen, ms = timed(lambda: outlook(homes_of(folded, basis), basis), 7)
    per_second = seen.searched.considered / ms * 1000
    print(f"complete home, all options verified and ranked  {ms:8.1f} ms")
    print(f"  choices considered {seen.searched.considered}, stage calls {seen.searched.calls}")
    print(f"  choices a second                              {per_second:8.0f}")
    option = seen.recommended
    assert option is not None
    likely = {key: values[0] for key, values in homes.open.items()}
    kept = basis.documented()
    plain = homes.one(likely, left_by(option.choice.remedies))
    home, _ = documented_home(folded, kept, likely, option.choice.remedies)
    _, bare = timed(lambda: work_of(basis)(InOneHome(plain), option.choice), 25)
    _, full = timed(lambda: documented(home, work_of(kept), option.choice), 25)
    print(f"one option in one home, plain                   {bare:8.2f} ms")
    print(f"one option in one home, with its whole working  {full:8.2f} ms  {full / bare:.1f} x")


def bonded(folded: FoldedHome, basis: Basis) -> Homes:
    """Return the example with its water bonded and its operator's readings settled."""
    return homes_of(folded, basis).knowing(
        {"services.water.bond_mm2": 10.0, "services.water.bond_connected": True,
         "operator.counts_limiter": False, "operator.counts_setting": False},
    )  # fmt: skip


def with_open_facts(folded: FoldedHome, basis: Basis, counts: tuple[int, ...]) -> bool:
    """Print the spread engine beside the plain loop; return whether they agree."""
    whole = bonded(folded, basis)
    same = True
    print("\nopen  homes  choices      plain     spread   ratio  stage calls  agree")
    for count in counts:
        homes = opened(whole, count)
        choices = all_choices(homes, basis)
        walk, fast = timed(lambda count=count: spread_over(opened(whole, count), basis), 2)
        found, slow = timed(
            lambda homes=homes, choices=choices: {
                tuple(fixed.values()): held for fixed, held in plainly(homes, choices, basis)
            },
            1,
        )
        here = agree(walk, found)
        same = same and here
        print(
            f"{count:4d} {homes.count:6d} {len(choices):8d} {slow:8.0f} ms {fast:8.0f} ms"
            f" {slow / fast:7.1f} {walk.found.calls:12d}  {'yes' if here else 'NO'}"
        )
    return same


def many_homes(folded: FoldedHome, basis: Basis, each: int) -> bool:
    """Print the walk over 1,080 homes beside the plain loop; return whether they agree."""
    homes = with_open(bonded(folded, basis), MANY)
    choices = all_choices(homes, basis)
    walk, fast = timed(lambda: spread_over(with_open(bonded(folded, basis), MANY), basis), 3)
    began = time.process_time()
    found = {tuple(fixed.values()): held for fixed, held in plainly(homes, choices, basis, each)}
    slow = (time.process_time() - began) * 1000 * homes.count / len(found)
    same = agree(walk, found)
    print(
        f"\n{homes.count} homes, {len(choices)} choices: one walk {fast:.0f} ms, plain loop"
        f" {slow:.0f} ms by {len(found)} of them, {slow / fast:.0f} x,"
        f" {'the same choices hold' if same else 'THEY DIFFER'}"
    )
    return same


def curve(folded: FoldedHome, basis: Basis, counts: tuple[int, ...]) -> bool:
    """Print what more open facts cost, read and unread; return whether unread ones cost nothing."""
    whole = bonded(folded, basis)
    free = True
    print("\nopen  homes  all options    stage calls  with six more that no stage reads")
    for count in counts:
        seen, ms = timed(lambda count=count: outlook(opened(whole, count), basis), 3)
        wide = {**dict(BLANKED[:count]), **UNREAD}
        more, more_ms = timed(lambda wide=wide: outlook(with_open(whole, wide), basis), 3)
        calls, further = seen.searched.calls, more.searched.calls
        free = free and calls == further and seen.decisions == more.decisions
        print(
            f"{count:4d} {opened(whole, count).count:6d} {ms:9.0f} ms {calls:14d}"
            f" {more_ms:9.0f} ms {further:9d}"
        )
    return free


def main(words: list[str]) -> int:
    """Print every table; exit 1 when the engines disagree or an unread fact costs a call."""
    quick = "--quick" in words
    basis = load_basis(design_date=date(2026, 11, 25), profile="neutral")
    folded = as_found(read(EXAMPLE.read_text("utf-8"), EXAMPLE.name).records)
    complete(folded, basis)
    same = with_open_facts(folded, basis, (0, 1) if quick else (0, 1, 2, 3, 4))
    same = many_homes(folded, basis, 1080 if quick else EACH) and same
    free = curve(folded, basis, (0, 2) if quick else (0, 2, 4, 6, 8, 10))
    return 0 if same and free else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
