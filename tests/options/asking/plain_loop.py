"""The plain loop beside which asking is tested: every home by itself, run stage by stage."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from itertools import product
from typing import Any

from tests.journeys.homes import basis, records_of

from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Missing, Value
from ampwright.options.chances import joint
from ampwright.options.laying import left_by
from ampwright.options.ranking import Ranking
from ampwright.options.runs import InOneHome
from ampwright.options.spread import in_order
from ampwright.options.supply_side import Decision
from ampwright.options.work import work_of
from ampwright.survey.folding import FoldedHome, as_found

DEMO = basis("demo")


@dataclass(frozen=True)
class Come:
    """What one home comes to, run plainly."""

    fixed: Mapping[str, Value]
    weight: float
    decision: Decision
    low_p: float | None
    usual_p: float | None
    high_p: float | None


def blanked(name: str, keys: Iterable[str]) -> FoldedHome:
    """Fold a shipped home without what was said of some keys."""
    gone = set(keys)
    return as_found(record for record in records_of(name) if record.key not in gone)


def plainly(ranking: Ranking, facts: tuple[str, ...], rests: Basis = DEMO) -> list[Come]:
    """Run what is best in each home in that home alone, on plain numbers.

    The homes differ in the facts given; every other open fact is as it most often is. How likely
    facts are together is not tested here.
    """
    homes = ranking.cells.homes
    usual = {
        key: max(zip(homes.chances[key], values, strict=True), key=lambda pair: pair[0])[1]
        for key, values in homes.open.items()
    }
    found = []
    order = in_order(homes, facts)
    weights = joint(homes, order)
    for combination in product(*(homes.open[fact] for fact in facts)):
        told = dict(zip(facts, combination, strict=True))
        fixed = {**usual, **told}
        weight = float(weights[tuple(homes.open[fact].index(told[fact]) for fact in order)])
        cell = cell_of(ranking, fixed)
        number = int(ranking.best[cell])
        if number < 0:
            found.append(Come(told, weight, Decision.STOP_UNTIL, None, None, None))
            continue
        option = ranking.options[number]
        laid = option.laid.in_home(fixed) or ()
        choice = replace(option.choice, remedies=laid)
        design: Any = work_of(rests)(InOneHome(homes.one(fixed, left_by(laid))), choice)
        total = design.price.total
        decision = design.decision
        found.append(
            Come(
                told,
                weight,
                Decision.UNDETERMINED if isinstance(decision, Missing) else decision,
                *(
                    None if isinstance(total, Missing) else float(getattr(total, name))
                    for name in ("low_p", "usual_p", "high_p")
                ),
            )
        )
    return found


def cell_of(ranking: Ranking, fixed: Mapping[str, Value]) -> int:
    """Return the cell of the ranking in which its facts have these values."""
    cells = ranking.cells
    return next(
        number
        for number in range(cells.count)
        if all(fixed[fact] == value for fact, value in cells.home(number).items())
    )
