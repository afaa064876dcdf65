"""No fault in a stage goes unnoticed by figures that were worked outside the code.

The stages are those of the rooms between the survey and the options. Who must notice: the answer
sheets of the worked homes, tables and documents, sums done by hand beside the case, and cases
exactly at a limit. Who does not count is named in ``LEFT_OUT``. Who survives is listed with a
reason, and the list holds nobody who was killed since.
"""

from __future__ import annotations

import re
import sys
import time
import tomllib
from collections import Counter
from dataclasses import dataclass
from fnmatch import fnmatchcase
from functools import cache
from pathlib import Path

import pytest

from tests.reference.agreement import Case, difference, read

from .swapping import Noticer, by_function, fate, faults, modules_of, noticers
from .tree import ROOT

ROOMS = ("demand", "supply", "network", "energy", "design", "costing")
SURVIVORS = Path(__file__).with_name("surviving_stage_mutants.toml")
LEFT_OUT = {
    "documented": "sets the documented run beside the plain one: a fault would stand in both",
    "test_working": "the same, for a whole room",
    "test_properties": "says which way a stage goes, not what it comes to",
    "agrees": "sets one way of the code beside another",
}


@dataclass(frozen=True)
class Survivors:
    """Faults that nobody notices: where, how they read, how many, and why that is no loss."""

    function: str
    reads: str
    faults: int | None
    reason: str

    def has(self, fault: str) -> bool:
        """Say whether a fault is one of these."""
        function, _, reads = fault.partition(": ")
        return fnmatchcase(function, self.function) and bool(re.search(self.reads, reads))


def left_out(name: str) -> bool:
    """Say whether a test may not notice."""
    return any(word in name for word in LEFT_OUT)


def sums() -> list[Case]:
    """The sums done by hand for each room, kept as data."""
    found = [ROOT / "tests" / room / "sums.toml" for room in ROOMS]
    return [case for path in found if path.exists() for case in read(path)]


def hold(case: Case) -> None:
    """Raise ``AssertionError`` where the code differs from a sum."""
    assert difference(case) == ""


def all_noticers() -> list[Noticer]:
    """Everything that may notice a fault in a stage."""
    tests = [Noticer(case.id, lambda case=case: hold(case)) for case in sums()]
    for room in ROOMS:
        for path in sorted((ROOT / "tests" / room).glob("test_*.py")):
            if not left_out(path.stem):
                tests += noticers(path, left_out)
    return tests


@cache
def run() -> tuple[dict[str, str], float]:
    """What became of every fault, and how long a processor took."""
    began = time.process_time()
    through = by_function(all_noticers())
    found = {
        fault.id: fate(fault, through) for module in modules_of(ROOMS) for fault in faults(module)
    }
    return found, time.process_time() - began


@cache
def listed() -> tuple[Survivors, ...]:
    """Who is known to survive."""
    kept = tomllib.loads(SURVIVORS.read_text(encoding="utf-8"))
    return tuple(
        Survivors(each["function"], each.get("reads", ""), each.get("faults"),
                  kept["reasons"][each["why"]])
        for each in kept["survivors"]
    )  # fmt: skip


def sorted_out(alive: list[str]) -> tuple[list[str], Counter[Survivors]]:
    """Return the survivors that nobody listed, and how many each entry of the list covers."""
    unlisted, covered = [], Counter()
    for fault in alive:
        entry = next((each for each in listed() if each.has(fault)), None)
        if entry is None:
            unlisted.append(fault)
        else:
            covered[entry] += 1
    return unlisted, covered


@pytest.mark.parametrize("case", sums(), ids=lambda case: case.id)
def test_the_sums_are_the_code(case):
    hold(case)


def test_every_fault_is_noticed_or_listed(record_property, capsys):
    found, took = run()
    counts = Counter(found.values())
    said = f"{len(found) - counts['not code']} faults in stages: " + ", ".join(
        f"{counts[end]} {end}" for end in ("killed", "alive")
    )
    record_property("faults in stages", said)
    with capsys.disabled():
        sys.stdout.write(f"\n{said} ({took:.1f} s)\n")
    unlisted, covered = sorted_out([fault for fault, end in found.items() if end == "alive"])
    assert unlisted == []
    for entry in listed():
        wanted = covered[entry] if entry.faults is None else entry.faults
        assert covered[entry] == wanted > 0, f"{entry.function} /{entry.reads}/: {covered[entry]}"
    assert counts["out of reach"] == 0
    assert counts["killed"] > 1000


def test_every_survivor_has_a_reason():
    kept = tomllib.loads(SURVIVORS.read_text(encoding="utf-8"))
    assert {each["why"] for each in kept["survivors"]} == set(kept["reasons"])
    assert all(len(reason) > 20 for reason in kept["reasons"].values())


def test_a_fault_put_in_is_taken_out_again():
    from ampwright.energy import need

    assert need.hours_at(10.0, 5.0) == 2.0
    through = by_function(all_noticers()[:1])
    fault = next(each for each in faults("ampwright.energy.need") if each.function == "hours_at")
    assert fate(fault, through) == "alive"
    assert need.hours_at(10.0, 5.0) == 2.0
