"""Notices and labels that stay for whoever comes next: ours go up with the work.

Where somebody has looked and one is missing, putting it up is a work item; where nobody has, it
is part of handing over, which takes labels and the circuit chart with it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check, Outcome
from ampwright.foundations.remedies import Part, Remedy
from ampwright.foundations.stages import Made
from ampwright.standards.wiring.notices import (
    circuit_chart_present,
    earth_label_present,
    isolator_label_present,
    sources_notice_present,
    test_notice_present,
)
from ampwright.survey.home import Home
from ampwright.survey.home_boards import Board
from ampwright.survey.if_said import if_said

METER: Final = "meter"
NO_RCD: Final = frozenset({"breakers only", "rewireable fuses"})
"""Boards in which no device sees residual current, unless one stands in front of all."""


def notices(home: Home, basis: Basis, tap: str, rcd_in_point: bool, gives_back: bool) -> Made[None]:
    """Return whether chart, notices and labels will be there when the work is done.

    A device inside the point alone wants no notice at the board. ``gives_back`` says that the
    point can feed the car's current into the house.
    """
    house = tuple(_of_the_house(home))
    board = () if tap == METER else tuple(_of_board(home, tap, rcd_in_point, gives_back))
    found = (*board, *house)
    missing = tuple(key for key, check in found if check.outcome is Outcome.FAIL)
    checks = tuple(check for _, check in found)
    if missing:
        put_up = _put_up(basis, tap, missing)
        checks = tuple(check.mended_by(put_up) for check in checks)
    return Made(None, checks)


def _of_the_house(home: Home) -> Iterator[tuple[str, Check]]:
    """Yield what is labelled once for the whole house, each with its fact."""
    labelled = _seen(lambda: home.earthing.labelled)
    yield "earthing.labelled", earth_label_present(labelled)
    named = _seen(lambda: home.supply.isolator_labelled)
    yield "supply.isolator_labelled", isolator_label_present(named)


def _of_board(
    home: Home, tap: str, rcd_in_point: bool, gives_back: bool
) -> Iterator[tuple[str, Check]]:
    """Yield what belongs at the board that feeds the point, each with its fact."""
    board = home.boards[tap]
    key = f"boards.{tap}"
    yield f"{key}.chart", circuit_chart_present(_seen(lambda: board.chart))
    sees = not rcd_in_point or _sees(board)
    told = _seen(lambda: board.test_notice)
    yield f"{key}.test_notice", test_notice_present(sees, told)
    sources = gives_back or any(True for _ in home.sources.listed())
    warned = _seen(lambda: board.sources_notice)
    yield f"{key}.sources_notice", sources_notice_present(sources, warned)


def _sees(board: Board) -> bool:
    """Say whether anything in a board, or in front of it, sees residual current."""
    return board.front_rcd != "none" or board.protection not in NO_RCD


def _seen(read: Callable[[], bool]) -> bool:
    """Return whether a notice is there; one that nobody has looked for goes up with the work."""
    return if_said(read, True)


def _put_up(basis: Basis, tap: str, missing: tuple[str, ...]) -> Remedy:
    """Return the work of putting up what is missing, all of it at once."""
    lacking = ", ".join(WHAT[key.rpartition(".")[2]] for key in missing)
    return Remedy(
        slug=f"notices-{tap}",
        does=f"Put up the notices and labels that are missing, namely {lacking}",
        changes=tuple((key, True) for key in missing),
        parts=(Part("labels and the circuit chart", 1.0),),
        minutes=basis.task("notices").minutes,
    )


WHAT: Final = {
    "labelled": "labels at the main earth and at each clamp",
    "isolator_labelled": "the label of the isolator after the meter",
    "chart": "the chart of circuits",
    "test_notice": "the notice to press the test button",
    "sources_notice": "the notices of a second source",
}
"""What each fact is about, for the person who puts it up."""
