"""The answer of one check: four outcomes and both numbers, never a bare true or false."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from enum import Enum
from functools import wraps
from typing import Any, NamedTuple, ParamSpec, cast

from .remedies import Remedy
from .source import Place
from .working import Line, working

P = ParamSpec("P")


class Outcome(Enum):
    """What a check may say."""

    PASS = "pass"
    FAIL = "fail"
    UNDETERMINED = "undetermined"
    NOT_APPLICABLE = "not applicable"

    __hash__ = object.__hash__  # every check is hashed by it, and members are compared by identity


@dataclass(frozen=True, slots=True, eq=False)
class Requirement:
    """A clause that requires something: its name, what it says and where it is written."""

    name: str
    says: str
    unit: str
    place: Place
    body: Callable[..., Finding]

    @property
    def id(self) -> str:
        """The last part of the name: short enough for a table, unique in the catalogue."""
        return self.name.rpartition(".")[2]


class Finding(NamedTuple):
    """What a requirement found, before it is tied to its clause."""

    outcome: Outcome
    actual: float | None = None
    limit: float | None = None
    why: str = ""


@dataclass(frozen=True, slots=True)
class Check:
    """A requirement, what was found, and what would mend it if it failed.

    ``caution`` is set on a pass that leans on a stand-in or a doubtful value.
    """

    requirement: Requirement
    outcome: Outcome
    actual: float | None = None
    limit: float | None = None
    why: str = ""
    caution: str = ""
    remedies: tuple[Remedy, ...] = ()

    @property
    def used(self) -> float | None:
        """Share of the limit taken up; 1.0 is exactly at it."""
        if self.actual is None or not self.limit:
            return None
        return self.actual / self.limit

    def mended_by(self, *remedies: Remedy) -> Check:
        """Name what would mend this, if it failed."""
        if self.outcome is not Outcome.FAIL:
            return self
        return replace(self, remedies=(*self.remedies, *remedies))

    def with_caution(self, caution: str) -> Check:
        """Say what a pass leans on."""
        return replace(self, caution=caution) if self.outcome is Outcome.PASS else self

    def working(self) -> Iterator[Line]:
        """Yield the working of both sides."""
        yield from working(tuple(x for x in (self.actual, self.limit) if x is not None))


def at_most(actual: float, limit: float, why: str = "") -> Finding:
    """Find that a number does not exceed its limit.

    Examples
    --------
    >>> at_most(32.0, 32.0).outcome
    <Outcome.PASS: 'pass'>
    """
    return Finding(Outcome.PASS if actual <= limit else Outcome.FAIL, actual, limit, why)


def at_least(actual: float, limit: float, why: str = "") -> Finding:
    """Find that a number does not fall short of its limit.

    Examples
    --------
    >>> at_least(206.9, 207.0).outcome
    <Outcome.FAIL: 'fail'>
    """
    return Finding(Outcome.PASS if actual >= limit else Outcome.FAIL, actual, limit, why)


def holds(statement: bool, why: str = "") -> Finding:
    """Find that a statement is true; ``why`` says what makes it so or not.

    Examples
    --------
    >>> holds(False, "a clamp hangs loose").why
    'a clamp hangs loose'
    """
    return Finding(Outcome.PASS if statement else Outcome.FAIL, why=why)


def not_applicable(why: str) -> Finding:
    """Find that a requirement does not apply here, and say why.

    Examples
    --------
    >>> not_applicable("no pipe of metal enters").outcome
    <Outcome.NOT_APPLICABLE: 'not applicable'>
    """
    return Finding(Outcome.NOT_APPLICABLE, why=why)


def undetermined(why: str) -> Finding:
    """Find that a requirement cannot be judged yet, and say what is lacking.

    Examples
    --------
    >>> undetermined("no route from the meter has been paced").outcome
    <Outcome.UNDETERMINED: 'undetermined'>
    """
    return Finding(Outcome.UNDETERMINED, why=why)


def requires(
    says: str, *, place: Place, unit: str = ""
) -> Callable[[Callable[P, Finding]], Callable[P, Check]]:
    """Declare what a function requires; its finding becomes a check tied to the clause.

    ``says`` is printed with both numbers; the declaration is reachable as ``.clause`` and
    the body as ``.plain``.

    Examples
    --------
    >>> @requires("Ib ≤ In", unit="A", place=Place("example"))
    ... def carries(Ib: float, In: float) -> Finding:
    ...     return at_most(Ib, In)
    >>> check = carries(32.0, 40.0)
    >>> check.outcome.value, check.requirement.id, check.used
    ('pass', 'carries', 0.8)
    """

    def decorate(body: Callable[P, Finding]) -> Callable[P, Check]:
        clause = Requirement(f"{body.__module__}.{body.__qualname__}", says, unit, place, body)

        @wraps(body)
        def check(*args: P.args, **kwargs: P.kwargs) -> Check:
            return Check(clause, *body(*args, **kwargs))

        made = cast(Any, check)
        made.plain = body
        made.clause = clause
        return check

    return decorate


def clause_of(requirement: Callable[..., Check]) -> Requirement:
    """Return the declaration behind a function that requires something."""
    return cast(Requirement, cast(Any, requirement).clause)


def verdict(checks: Iterable[Check]) -> Outcome:
    """Sum up: fail if any fails, else undetermined if any is, else pass."""
    worst = Outcome.PASS
    for check in checks:
        if check.outcome is Outcome.FAIL:
            return Outcome.FAIL
        if check.outcome is Outcome.UNDETERMINED:
            worst = Outcome.UNDETERMINED
    return worst
