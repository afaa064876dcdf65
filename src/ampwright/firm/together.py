"""Which facts of a home go together, and how common each answer is beside the others.

These weigh the homes that the answers allow; they never stand in for an answer. A share of
nought says that the two are not found together.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import isclose
from typing import Final

from ampwright.foundations.errors import BadFileError, Problem
from ampwright.foundations.quantity import Share

from .rows import column, read_rows

ALWAYS: Final = "otherwise"
SIGNS: Final = ("<", "=")


@dataclass(frozen=True, slots=True)
class Row:
    """One answer of a fact in one case, and how common it is there."""

    id: str
    fact: str
    given: str
    answer: str
    share: Share = column("p", "how common it is in that case")


@dataclass(frozen=True, slots=True)
class Condition:
    """What another fact must be: an answer, or a number below one."""

    fact: str
    sign: str
    answer: str


@dataclass(frozen=True, slots=True)
class Case:
    """How common each answer of a fact is where all conditions hold."""

    given: tuple[Condition, ...]
    shares: Mapping[str, Share]


@dataclass(frozen=True, slots=True)
class GoesWith:
    """The cases of one fact, the first that holds first; the last always does."""

    fact: str
    cases: tuple[Case, ...]

    @property
    def parents(self) -> tuple[str, ...]:
        """The facts on which its answers hang, each once."""
        found = (each.fact for case in self.cases for each in case.given)
        return tuple(dict.fromkeys(found))


def read_together(name: str, text: str) -> tuple[GoesWith, ...]:
    """Return the facts that go with others, in the order of the file.

    Raises ``BadFileError`` for a condition that does not read, a case whose shares do not sum to
    one or that lists other answers than the rest, a fact whose last case is not ``otherwise``,
    and facts that hang on each other in a ring.
    """
    rows = read_rows(name, text, Row)
    cases: dict[str, dict[str, dict[str, Share]]] = {}
    for row in rows:
        cases.setdefault(row.fact, {}).setdefault(row.given, {})[row.answer] = row.share
    problems = [found for fact, each in cases.items() for found in _problems(fact, each)]
    if problems:
        raise BadFileError(name, [_placed(rows, *each) for each in problems])
    made = tuple(GoesWith(fact, tuple(_cases(each))) for fact, each in cases.items())
    if ring := _in_a_ring({each.fact: each.parents for each in made}):
        expected = "facts that do not hang on themselves"
        raise BadFileError(name, [_placed(rows, fact, "", "fact", expected) for fact in ring])
    return made


def _cases(each: Mapping[str, Mapping[str, Share]]) -> Iterator[Case]:
    for given, shares in each.items():
        yield Case(tuple(_conditions(given)), shares)


def _placed(rows: Sequence[Row], fact: str, given: str, column_: str, expected: str) -> Problem:
    """Return a problem with the first line of its case, or of its fact."""
    lines = (
        (line, row)
        for line, row in enumerate(rows, 2)
        if row.fact == fact and given in ("", row.given)
    )
    line, row = next(lines)
    return Problem(line, column_, getattr(row, column_), expected)


def _problems(
    fact: str, cases: Mapping[str, Mapping[str, Share]]
) -> Iterator[tuple[str, str, str, str]]:
    """Yield what is wrong with the cases of a fact: fact, case, column and what was expected."""
    *before, last = cases
    if last != ALWAYS or ALWAYS in before:
        yield fact, last, "given", f"{ALWAYS!r} as the last case of {fact}"
    for given, shares in cases.items():
        if not isclose(sum(shares.values()), 1.0, abs_tol=1e-6) or min(shares.values()) < 0:
            yield fact, given, "share", f"shares that sum to 1 where {given}"
        if shares.keys() != cases[last].keys():
            yield fact, given, "answer", f"the same answers as in the other cases of {fact}"
        if given != ALWAYS and not all(map(_reads, given.split(" & "))):
            yield fact, given, "given", "a fact, = or <, an answer; several joined by ' & '"


def _reads(part: str) -> bool:
    """Say whether a condition has a fact, a sign and an answer."""
    return any(all(part.partition(sign)) for sign in SIGNS)


def _conditions(given: str) -> Iterator[Condition]:
    """Yield the conditions of a case; none where it always holds."""
    for part in given.split(" & ") if given != ALWAYS else ():
        sign = next(each for each in SIGNS if each in part)
        fact, _, answer = part.partition(sign)
        yield Condition(fact, sign, answer)


def _in_a_ring(parents: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    """Return the facts that hang on themselves, by whatever way."""
    left = dict(parents)
    while free := [fact for fact, on in left.items() if not any(each in left for each in on)]:
        for fact in free:
            del left[fact]
    return tuple(left)
