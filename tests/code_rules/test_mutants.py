"""No fault in what says a home is safe goes unnoticed by other people's figures or by the limits.

That a printed formula is the code does not count: a fault could stand in both. Who survives is
listed with a reason, and the list holds nobody who was killed since.
"""

from __future__ import annotations

import sys
import time
import tomllib
from collections import Counter
from functools import cache
from pathlib import Path

import pytest

from ampwright.standards.catalogue import clauses
from tests.reference.agreement import LIMITS, PUBLISHED, cases, difference

from .mutation import Subject, fate, mutants
from .tree import ROOT

SURVIVORS = Path(__file__).with_name("surviving_mutants.toml")
LONGEST_S = 30.0
PAGE = """# Deliberate faults

Written by `tools/docs_mutants.py` from a run; do not edit.

Operators, comparisons, `min` and `max`, *and* and *or*, at most and at least, and every constant
are changed one at a time, in clauses and in the rows of those that decide. Only figures that others
published, and cases exactly at a limit and one printed digit beyond, count as noticing; that a
printed formula is the code does not. Faults that cannot run at all are left out.

The stages of the work, between the survey and the options, are treated the same way by
`tests/code_rules/test_stage_mutants.py`, which prints how many it made; there the answer sheets of
worked homes count too, and who survives stands in `tests/code_rules/surviving_stage_mutants.toml`.

{made} faults: {killed} noticed, {alive} not; those are listed with their reasons in
`tests/code_rules/surviving_mutants.toml`.

| module | faults | not noticed |
|---|---|---|
"""


def standards() -> list[Subject]:
    """Every module of clauses, with the published and the at-the-limit cases of its own."""
    known = cases(PUBLISHED, LIMITS)
    return [
        Subject(
            module,
            tuple(
                (case.name, lambda names, case=case: difference(case, names))
                for case in known
                if case.module == module
            ),
        )
        for module in dict.fromkeys(clause.module for clause in clauses())
    ]


SUBJECTS: list[Subject] = [*standards()]
"""Rooms of stages add their modules here, each with the cases that must notice."""


@cache
def run() -> tuple[dict[str, str], float]:
    """What became of every mutant, and how long it took."""
    start = time.perf_counter()
    found = {mutant.id: fate(mutant) for subject in SUBJECTS for mutant in mutants(subject)}
    return found, time.perf_counter() - start


@pytest.fixture
def fates() -> tuple[dict[str, str], float]:
    return run()


def page() -> str:
    """The page that says, module by module, how many faults were made and noticed."""
    found, _ = run()
    rows = []
    for subject in SUBJECTS:
        short = subject.module.removeprefix("ampwright.")
        ends = Counter(end for mutant, end in found.items() if owner(mutant) == short)
        rows.append(f"| `{short}` | {ends['killed'] + ends['alive']} | {ends['alive']} |")
    whole = Counter(found.values())
    made = whole["killed"] + whole["alive"]
    return PAGE.format(made=made, killed=whole["killed"], alive=whole["alive"]) + "\n".join(
        [*rows, ""]
    )


def owner(mutant: str) -> str:
    """The module a mutant's name begins with."""
    return mutant.partition(":")[0].rpartition(".")[0]


def listed() -> dict[str, str]:
    """The mutants known to survive, each with its reason."""
    kept = tomllib.loads(SURVIVORS.read_text(encoding="utf-8"))
    return {each["mutant"]: each["reason"] for each in kept.get("survivor", [])}


def test_nobody_survives_unlisted(fates):
    found, _ = fates
    alive = [mutant for mutant, end in found.items() if end == "alive"]
    assert sorted(set(alive) - listed().keys()) == []


def test_the_list_names_only_survivors(fates):
    found, _ = fates
    assert [mutant for mutant in listed() if found.get(mutant) != "alive"] == []


def test_every_survivor_has_a_reason():
    assert all(len(reason) > 10 for reason in listed().values())


def test_it_is_quick_and_says_how_many(fates, record_property, capsys):
    found, took = fates
    counts = Counter(found.values())
    said = f"{len(found) - counts['not code']} mutants: " + ", ".join(
        f"{counts[end]} {end}" for end in ("killed", "alive")
    )
    record_property("mutants", said)
    with capsys.disabled():
        sys.stdout.write(f"\n{said} ({took:.1f} s)\n")
    assert took < LONGEST_S
    assert counts["killed"] > 300


def test_the_page_says_what_a_run_gives():
    written = (ROOT / "docs" / "reference" / "mutants.md").read_text(encoding="utf-8")
    assert written == page(), "run tools/docs_mutants.py"


def test_a_fault_in_each_kind_of_spot_is_made():
    from . import mutation

    tree = mutation.ast.parse(
        "def f(a, b):\n"
        " if a and b < 2.0:\n"
        "  return holds(a)\n"
        " return at_most(min(a, b) * 3.0, b, 'words 1' if a else 'others')\n"
    )
    made = sum(1 for _, statement in mutation.judging(tree) for _ in mutation.spots(statement))
    # and/or, two for <, two for 2.0, holds; at_least, max, division, two for 3.0
    assert made == 11
