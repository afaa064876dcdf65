"""The ways that old charge points leave when they are taken out with this work."""

from __future__ import annotations

from typing import Final

from ampwright.foundations.quantity import Count
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes
from ampwright.survey.home import Home
from ampwright.survey.home_loads import STANDARD_LOADS
from ampwright.survey.if_said import if_said

METHOD: Final = Place("Ampwright", at="method, a way that an old point leaves", trust=Trust.DERIVED)
POINT: Final = "charge point"
ONE_OUTLET, WHOLE_WAY = Count(1), Count(3)
ALL_LINES: Final = "all"


@computes("n", "", formula="spare + left", place=METHOD)
def free_then(spare: Count, left: Count) -> Count:
    """Return the free ways of a board once what is to go is gone.

    Examples
    --------
    >>> free_then(Count(1), Count(2))
    3
    """
    return Count(spare + left)


def points_gone(home: Home) -> tuple[str, ...]:
    """Return the old points that this work has taken out: said to go, and not there any more."""
    return tuple(
        id_
        for id_ in home.loads.ids
        if id_ not in STANDARD_LOADS
        and if_said(lambda id_=id_: home.loads[id_].kind, "") == POINT  # type: ignore[misc]
        and if_said(lambda id_=id_: home.loads[id_].goes, False)  # type: ignore[misc]
        and not home.loads[id_].present
    )


def left_empty(home: Home, tap: str) -> frozenset[str]:
    """Return the outlets of a board whose device fed nothing but a point that is gone."""
    gone = set(points_gone(home))
    if not gone:
        return frozenset()
    board = home.boards[tap]
    fed: dict[str, set[str]] = {}
    for _, circuit in board.circuits.so_far():
        device = if_said(lambda c=circuit: c.device, "")  # type: ignore[misc]
        feeds = if_said(lambda c=circuit: c.feeds, "?")  # type: ignore[misc]
        fed.setdefault(device, set()).update(feeds.split())
    return frozenset(
        outlet
        for id_, device in board.devices.so_far()
        if fed.get(id_) and fed[id_] <= gone
        for outlet in if_said(lambda d=device: d.outlets, "").split()  # type: ignore[misc]
    )


def ways_left(home: Home, tap: str) -> Count:
    """Return how many ways of a board the points that are gone leave free.

    Those of its device where the chart names it; else one, or a whole way of a point on all
    lines, if the point is said to hang on this board or there is no other. A point whose board
    nobody knows leaves none.
    """
    gone = points_gone(home)
    if not gone:
        return Count(0)
    outlets = left_empty(home, tap)
    if outlets:
        return Count(len(outlets))
    only: tuple[str, ...] = if_said(lambda: tuple(id_ for id_, _ in home.boards.listed()), ())
    by_itself = tap if only == (tap,) else ""
    here = [
        if_said(lambda id_=id_: home.loads[id_].phase, "") == ALL_LINES  # type: ignore[misc]
        for id_ in gone
        if if_said(lambda id_=id_: home.loads[id_].board, by_itself) == tap  # type: ignore[misc]
    ]
    three = home.boards[tap].phases > 1
    return Count(sum(WHOLE_WAY if three and on_all else ONE_OUTLET for on_all in here))
