"""Notices and labels that stay for whoever comes next: ours go up with the work.

Where somebody has looked and one is missing, putting it up is a work item; where nobody has, it
is part of handing over, which takes labels and the circuit chart with it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check, Outcome
from ampwright.foundations.notes import tells
from ampwright.foundations.remedies import Part, Remedy
from ampwright.foundations.source import Place, Trust
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

METHOD: Final = Place("Ampwright", at="method, notices and labels", trust=Trust.DERIVED)
METER: Final = "meter"
NO_RCD: Final = frozenset({"breakers only", "rewireable fuses"})
"""Boards in which no device sees residual current, unless one stands in front of all."""


@tells(METHOD)
def notices_to_look_for(what: tuple[str, ...]) -> str:
    """Say which notices nobody has looked for: no work is reckoned for them.

    Examples
    --------
    >>> notices_to_look_for(("the chart of circuits",)).says
    'nobody has looked for the chart of circuits: what is missing goes up when handing over'
    """
    return f"nobody has looked for {', '.join(what)}: what is missing goes up when handing over"


def notices(home: Home, basis: Basis, tap: str, rcd_in_point: bool, gives_back: bool) -> Made[None]:
    """Return whether chart, notices and labels are there, of those that somebody looked for.

    A device inside the point alone wants no notice at the board. ``gives_back`` says that the
    point can feed the car's current into the house.
    """
    house = tuple(_of_the_house(home))
    board = () if tap == METER else tuple(_of_board(home, tap, rcd_in_point, gives_back))
    found = (*board, *house)
    checks = tuple(check for _, check in found if check is not None)
    missing = tuple(key for key, check in found if check and check.outcome is Outcome.FAIL)
    if missing:
        put_up = _put_up(basis, tap, missing)
        checks = tuple(check.mended_by(put_up) for check in checks)
    unseen = tuple(what_of(key) for key, check in found if check is None)
    return Made(None, checks, notes=(notices_to_look_for(unseen),) if unseen else ())


Looked = tuple[str, Check | None]
"""A fact, and what is found of it; nothing where nobody has looked."""


def _of_the_house(home: Home) -> Iterator[Looked]:
    """Yield what is labelled once for the whole house."""
    yield "earthing.labelled", _judged(earth_label_present, lambda: home.earthing.labelled)
    named = _judged(isolator_label_present, lambda: home.supply.isolator_labelled)
    yield "supply.isolator_labelled", named


def _of_board(home: Home, tap: str, rcd_in_point: bool, gives_back: bool) -> Iterator[Looked]:
    """Yield what belongs at the board that feeds the point; what it has no need of applies not."""
    board = home.boards[tap]
    key = f"boards.{tap}"
    yield f"{key}.chart", _judged(circuit_chart_present, lambda: board.chart)
    sees = not rcd_in_point or _sees(board)
    told = _judged(partial(test_notice_present, sees), lambda: board.test_notice, sees)
    yield f"{key}.test_notice", told
    sources = gives_back or any(True for _ in home.sources.listed())
    warned = _judged(
        partial(sources_notice_present, sources), lambda: board.sources_notice, sources
    )
    yield f"{key}.sources_notice", warned


def _judged(
    clause: Callable[[bool], Check], read: Callable[[], bool], wanted: bool = True
) -> Check | None:
    """Return what a clause finds of what was seen; nothing of what is wanted and not looked for."""
    seen = if_said(read, None)
    return None if wanted and seen is None else clause(bool(seen))


def _sees(board: Board) -> bool:
    """Say whether anything in a board, or in front of it, sees residual current."""
    return board.front_rcd != "none" or board.protection not in NO_RCD


def _put_up(basis: Basis, tap: str, missing: tuple[str, ...]) -> Remedy:
    """Return the work of putting up what is missing, all of it at once."""
    lacking = ", ".join(map(what_of, missing))
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


def what_of(key: str) -> str:
    """Return what a fact is about.

    Examples
    --------
    >>> what_of("boards.main.chart")
    'the chart of circuits'
    """
    return WHAT[key.rpartition(".")[2]]
