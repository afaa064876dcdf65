"""Cases kept as data: what a clause is given, what it should answer, how far it may stray.

A file names one function, where its answers come from and the tolerance with its reason. The same
cases test the clauses and stand against deliberate faults in them.

``cases`` holds what others printed and we read there; ``recalled`` what is only remembered of a
print; ``derived`` a second reckoning of our own; ``readings`` cells of our tables that a
publication prints, another one or the same read anew; ``disagreements`` what does not agree.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, fields, is_dataclass
from importlib import import_module
from pathlib import Path
from types import ModuleType
from typing import Any

from ampwright.foundations.checks import Check
from ampwright.foundations.rulings import Ruling

TESTS = Path(__file__).resolve().parents[1]
PUBLISHED = TESTS / "reference" / "cases"
RECALLED = TESTS / "reference" / "recalled"
DERIVED = TESTS / "reference" / "derived"
READINGS = TESTS / "reference" / "readings"
DISAGREEMENTS = TESTS / "reference" / "disagreements"
LIMITS = TESTS / "standards" / "limits"

EVERYWHERE = {"summary", "function", "tolerance", "reason"}
NEEDED = {
    PUBLISHED: EVERYWHERE | {"document", "place", "found", "agreement"},
    RECALLED: EVERYWHERE | {"document", "place", "found", "agreement"},
    DERIVED: EVERYWHERE | {"how"},
    LIMITS: EVERYWHERE | {"limit"},
}
"""What each kind of file must say of itself."""
REFUSED = "refused"
"""The answer to an input that nothing should accept."""
ROUNDING = 1e-9
"""Slack for the last binary digit, far below any printed one."""


@dataclass(frozen=True)
class Case:
    """One case: the function's full name, its inputs and the answer to agree with."""

    id: str
    function: str
    inputs: Mapping[str, Any]
    answer: Any
    tolerance: float
    row: int | None = None
    why: str = ""
    again: bool = False
    """The printed figure is counted in another case, which looks at it from another side."""
    cut: bool = False
    """The author cut or rounded beyond the last digit: also among the disagreements."""

    @property
    def counts(self) -> bool:
        """Whether this is one more figure that was printed and is reproduced to its last digit."""
        return not (self.again or self.cut or isinstance(self.answer, str))

    @property
    def module(self) -> str:
        return self.function.rpartition(".")[0]

    @property
    def name(self) -> str:
        return self.function.rpartition(".")[2]


def files(folder: Path) -> list[Path]:
    """Return the case files of a folder."""
    return sorted(folder.glob("*.toml"))


def read(path: Path) -> list[Case]:
    """Return the cases of one file."""
    card = tomllib.loads(path.read_text(encoding="utf-8"))
    fixed = card.get("fixed", {})
    return [
        Case(
            id=f"{path.stem}-{number}",
            function=each.get("function", card["function"]),
            inputs={k: plain(v) for k, v in (fixed | each["inputs"]).items()},
            answer=each["answer"],
            tolerance=each.get("tolerance", card["tolerance"]),
            row=each.get("row"),
            why=each.get("why", ""),
            again=each.get("again", card.get("again", False)),
            cut=each.get("cut", card.get("cut", False)),
        )
        for number, each in enumerate(card["cases"], 1)
    ]


def plain(value: Any) -> Any:
    """Return a value as a clause takes it: rows as tuples, *no figure* as nothing."""
    if isinstance(value, list):
        return tuple(plain(each) for each in value)
    return None if value == "no figure" else value


def cases(*folders: Path) -> list[Case]:
    """Return every case of some folders."""
    return [case for folder in folders for path in files(folder) for case in read(path)]


def difference(case: Case, module: ModuleType | Mapping[str, Any] | None = None) -> str:
    """Return how a module's answer differs from the case's; nothing where they agree."""
    found = module if module is not None else import_module(case.module)
    space = found if isinstance(found, Mapping) else vars(found)
    thing = space[case.name]
    if isinstance(thing, Ruling):
        return _ruled(case, thing, space)
    try:
        answer = thing(**case.inputs)
    except ValueError:
        if case.answer == REFUSED:
            return ""
        raise
    if isinstance(answer, Check):
        if case.why and case.why != answer.why:
            return f"because {answer.why!r} instead of {case.why!r}"
        answer = answer.outcome.value
    if isinstance(case.answer, str):
        return "" if answer == case.answer else f"{answer} instead of {case.answer}"
    stray = abs(answer - case.answer)
    within = stray <= case.tolerance + ROUNDING
    return "" if within else f"{answer!r} is {stray:.3g} from {case.answer!r}"


def _ruled(case: Case, ruling: Ruling[Any, Any], space: Mapping[str, Any]) -> str:
    """Return how a ruling differs in its outcome or in the row that decided."""
    ruled = ruling.decide(_shape(case, space)(**case.inputs))
    outcome = getattr(ruled.outcome, "value", ruled.outcome)
    if outcome != case.answer:
        return f"{outcome} by row {ruled.row} ({ruled.words}) instead of {case.answer}"
    if case.row not in (None, ruled.row):
        return f"row {ruled.row} ({ruled.words}) instead of row {case.row}"
    return ""


def _shape(case: Case, space: Mapping[str, Any]) -> Any:
    """Return the kind of case that a module's ruling looks at: the one with these facts."""
    return next(
        each
        for each in space.values()
        if is_dataclass(each) and {fact.name for fact in fields(each)} == case.inputs.keys()
    )
