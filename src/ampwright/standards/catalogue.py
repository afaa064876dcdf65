"""Every clause of this room, found by looking: what it is called, says and rests on."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum
from importlib import import_module
from inspect import getdoc
from pkgutil import walk_packages
from types import ModuleType
from typing import Any, cast

from ampwright.foundations.checks import Requirement
from ampwright.foundations.rulings import Ruling
from ampwright.foundations.source import Place
from ampwright.foundations.working import Formula


class Kind(Enum):
    """The three kinds of clause."""

    COMPUTES = "computes"
    REQUIRES = "requires"
    DECIDES = "decides"


@dataclass(frozen=True, slots=True)
class ClauseInfo:
    """One clause: ``says`` is its printed formula, what it requires or the question it decides.

    ``places`` has one entry, or one a row for a clause that decides; ``rows`` are that
    clause's rows in words with the outcome of each. ``clause`` is the thing itself.
    """

    name: str
    kind: Kind
    says: str
    summary: str
    symbol: str
    unit: str
    places: tuple[Place, ...]
    rows: tuple[tuple[str, str], ...]
    clause: Any

    @property
    def id(self) -> str:
        """The last part of the name."""
        return self.name.rpartition(".")[2]

    @property
    def module(self) -> str:
        """The module the clause stands in."""
        return self.name.rpartition(".")[0]


def clauses(room: str = "ampwright.standards") -> tuple[ClauseInfo, ...]:
    """Return every clause of a room, module by module in the order they are written.

    Examples
    --------
    >>> found = {clause.id: clause for clause in clauses()}
    >>> found["cable_carries_device"].kind.value, found["cable_carries_device"].says
    ('requires', 'In ≤ Iz')
    """
    return tuple(found for module in modules(room) for found in clauses_of(module))


def modules(room: str = "ampwright.standards") -> Iterator[ModuleType]:
    """Yield the modules of a room, packages before what is in them.

    Examples
    --------
    >>> next(modules()).__name__
    'ampwright.standards'
    """
    package = import_module(room)
    yield package
    for found in walk_packages(package.__path__, f"{room}."):
        yield import_module(found.name)


def clauses_of(module: ModuleType) -> Iterator[ClauseInfo]:
    """Yield the clauses written in one module.

    Examples
    --------
    >>> from ampwright.standards.wiring import boards
    >>> [clause.id for clause in clauses_of(boards)]
    ['way_free', 'devices_belong', 'case_will_not_burn']
    """
    for name, thing in vars(module).items():
        full = f"{module.__name__}.{name}"
        if isinstance(thing, Ruling):
            yield _deciding(full, thing)
        clause = getattr(thing, "clause", None)
        if isinstance(clause, Formula) and clause.name == full:
            yield _computing(clause, thing)
        if isinstance(clause, Requirement) and clause.name == full:
            yield _requiring(clause, thing)


def _computing(clause: Formula, function: Any) -> ClauseInfo:
    step = clause.step
    return ClauseInfo(
        clause.name,
        Kind.COMPUTES,
        step.formula,
        _summary(function),
        step.symbol,
        step.unit,
        (cast(Place, step.source),),
        (),
        function,
    )


def _requiring(clause: Requirement, function: Any) -> ClauseInfo:
    return ClauseInfo(
        clause.name,
        Kind.REQUIRES,
        clause.says,
        _summary(function),
        "",
        clause.unit,
        (clause.place,),
        (),
        function,
    )


def _deciding(name: str, ruling: Ruling[Any, Any]) -> ClauseInfo:
    rows = tuple(
        (row.words, str(getattr(row.outcome, "value", row.outcome))) for row in ruling.rows
    )
    return ClauseInfo(
        name,
        Kind.DECIDES,
        ruling.name,
        ruling.name,
        "",
        "",
        tuple(row.place for row in ruling.rows),
        rows,
        ruling,
    )


def _summary(function: Any) -> str:
    """Return the first line of a function's docstring."""
    return (getdoc(function) or "").partition("\n")[0]
