"""Charge points that a house has already and that one limit holds back with the new one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.demand.compare import TABLE
from ampwright.demand.household import ALL_LINES, LINES, nothing
from ampwright.firm.basis import Basis
from ampwright.foundations.quantity import Amperes
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.diversity import total
from ampwright.survey.home import Home
from ampwright.survey.home_loads import Load

METHOD: Final = Place("Ampwright", at="method, points that share a limit", trust=Trust.DERIVED)
POINT: Final = "charge point"


@computes("Ihouse", "A", formula="I - Ishared", place=METHOD)
def without_points(I: Amperes, Ishared: Amperes) -> Amperes:  # noqa: E741, N803 - as printed
    """Return what a line carries beside the points that a limit can hold back."""
    return Amperes(I - Ishared)


@dataclass(frozen=True, slots=True)
class Sharing:
    """The points that the limit holds back with the new one, and what they take of each line.

    Without such points nothing is told of the lines.
    """

    points: tuple[str, ...]
    line_a: tuple[Amperes, ...]

    def beside(self, now_a: tuple[Amperes, ...]) -> tuple[Amperes, ...]:
        """Return what the limit cannot hold back, of a demand with those points in full."""
        if not self.points:
            return now_a
        return tuple(without_points(a, b) for a, b in zip(now_a, self.line_a, strict=True))


NONE: Final = Sharing((), ())
"""No point follows the limit but the new one."""


def shared_limit(
    home: Home,
    basis: Basis,
    now_a: tuple[Amperes, ...],
    rating_a: Amperes,
    limited: bool,
    by: str,
) -> Made[Sharing]:
    """Return the charge points of the home that the limit on the house covers as well.

    Only where the house with them passes the limit by itself: two under one control are asked
    about, and a limit that need not cover the old one spares that. Only those that were said to
    follow it, and only where the demand is counted ``by`` the table: in a measured peak nobody
    can tell the car from the house.
    """
    limit_a = basis.rules.house_limit_a
    over = any(each > limit_a or each > rating_a for each in now_a)
    if not limited or not over or by != TABLE:
        return Made(NONE)
    found = tuple(
        (id_, load) for id_, load in home.loads.listed() if load.kind == POINT and load.shares_limit
    )
    return Made(_together(home, basis, found) if found else NONE)


def _together(home: Home, basis: Basis, found: tuple[tuple[str, Load], ...]) -> Sharing:
    """Return some points with what they take of each line."""
    phases = int(home.supply.phases)
    line_a = []
    for line in LINES[:phases]:
        here = tuple(
            load.amps_a for _, load in found if phases == 1 or load.phase in (line, ALL_LINES)
        )
        line_a.append(total(here) if here else nothing(basis.book, "no point shares this line"))
    return Sharing(tuple(id_ for id_, _ in found), tuple(line_a))
