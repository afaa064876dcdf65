"""Boards in a chain: which feeds lie between the meter and a board, and what each carries."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Finding, holds, requires
from ampwright.foundations.quantity import Amperes, Metres
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said

from ..sources import LINES

METHOD: Final = Place("Ampwright", at="method, the feed of the board", trust=Trust.DERIVED)
METER: Final = "meter"
MAIN: Final = "main"


@dataclass(frozen=True, slots=True)
class Link:
    """The feed of one board: from the meter or from the board before it in the chain."""

    board: str
    begins: str
    length_m: Metres


@computes("L", "m", formula="to_board - to_parent", place=METHOD)
def link_length(to_board: Metres, to_parent: Metres) -> Metres:
    """Return the length of a feed that begins at another board, both told from the meter.

    Examples
    --------
    >>> link_length(Metres(60.0), Metres(45.0))
    15.0
    """
    return Metres(to_board - to_parent)


@computes("Ifeed", "A", formula="max(lines)", place=METHOD)
def worst_line(lines: tuple[Amperes, ...]) -> Amperes:
    """Return the current of the most loaded line.

    Examples
    --------
    >>> worst_line((Amperes(33.6), Amperes(36.6), Amperes(30.0)))
    36.6
    """
    return Amperes(max(lines))


@computes("Iline", "A", formula="sum(loads) + Ipoint", place=METHOD)
def on_the_line(loads: tuple[Amperes, ...], Ipoint: Amperes) -> Amperes:  # noqa: N803
    """Return what one line of a lesser board carries: its loads in full, and the point.

    Examples
    --------
    >>> on_the_line((Amperes(6.0), Amperes(3.0)), Amperes(16.0))
    25.0
    """
    return Amperes(float(sum(loads)) + Ipoint)


@requires("each board lies beyond the one that feeds it", place=METHOD)
def chain_in_order(board: str, begins: str, beyond: bool) -> Finding:
    """A board fed through another is further along the cable, and no chain bites its tail.

    By what was told of fed-from and of lengths; one of the two is amiss otherwise.

    Examples
    --------
    >>> chain_in_order("barn", "main", False).why
    'look again which feeds which, and how far off they are: barn and main'
    """
    why = f"look again which feeds which, and how far off they are: {board} and {begins}"
    return holds(beyond, "" if beyond else why)


def fed_from(home: Home, board: str) -> str:
    """Return what feeds a board: the meter, as far as nobody said otherwise."""
    return if_said(lambda: home.boards[board].fed_from, METER)


def chain_to(home: Home, tap: str) -> tuple[str, ...]:
    """Return the boards on the way from the meter to a board, itself the last; none at the meter.

    A board that comes twice ends the chain.
    """
    boards: list[str] = []
    here = tap
    while here != METER and here not in boards:
        boards.append(here)
        here = fed_from(home, here)
    return tuple(reversed(boards))


def links_to(home: Home, basis: Basis, tap: str) -> tuple[Link, ...]:
    """Return the feeds between the meter and a board that count, from the meter end.

    Tails count for nothing: a board on them begins the chain, and what it feeds is taken to
    come from the meter all the way. A board fed through another always has a feed.
    """
    found: list[Link] = []
    begins, from_m = METER, None
    for board in chain_to(home, tap):
        to_m = home.boards[board].from_meter_m
        if begins == METER and to_m <= basis.rules.own_device_over_m:
            begins = board
            continue
        found.append(Link(board, begins, to_m if from_m is None else link_length(to_m, from_m)))
        begins, from_m = board, to_m
    return tuple(found)


def behind(home: Home, board: str) -> frozenset[str]:
    """Return the boards that hang on one, itself among them."""
    return frozenset(id_ for id_ in home.boards.ids if board in chain_to(home, id_)) | {board}


def load_on(home: Home, board: str, demand_a: tuple[Amperes, ...], setting_a: Amperes) -> Amperes:
    """Return what the most loaded line of a board's feed carries with the point behind it.

    ``demand_a`` is that of the whole house, which passes through what feeds the main board.
    """
    whole = MAIN in behind(home, board)
    return worst_line(demand_a if whole else board_load(home, board, setting_a))


def board_load(home: Home, board: str, setting_a: Amperes) -> tuple[Amperes, ...]:
    """Return what each line of a lesser board carries with the point on it or behind it."""
    phases, boards = home.supply.phases, behind(home, board)
    here = [each for _, each in home.loads.listed() if each.board in boards]
    return tuple(
        on_the_line(
            tuple(each.amps_a for each in here if phases == 1 or each.phase in (line, "all")),
            setting_a,
        )
        for line in LINES[:phases]
    )
