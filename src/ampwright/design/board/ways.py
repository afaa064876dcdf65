"""A whole three-phase way in an existing board: free, or made free by the fewest moves.

A circuit may go to a blank outlet on its own line as far as its wires reach, so each line is a
puzzle of its own and the fewest moves are a shortest path: from the outlet wanted to a blank,
each step as long as the slack of the circuit that takes it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Value
from ampwright.foundations.checks import Check, Finding, holds, requires, undetermined
from ampwright.foundations.quantity import Count, Hours, Millimetres, Minutes
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes
from ampwright.survey.home import Home
from ampwright.survey.home_boards import Board
from ampwright.survey.if_said import if_said

from ..sources import LINES

METHOD: Final = Place("Ampwright", at="method, a way made free", trust=Trust.DERIVED)
LAYOUT: Final = Place("layout of three-phase boards", at="a device on three lines fills one way",
                      trust=Trust.COMMON_PRACTICE)  # fmt: skip
SINGLE: Final = 1
NO_SLACK: Final = Millimetres(0.0)


@dataclass(frozen=True, slots=True)
class Fed:
    """A device on one outlet, with the least slack of the wires it feeds."""

    device: str
    slack_mm: Millimetres


@dataclass(frozen=True, slots=True)
class Shift:
    """One circuit taken from an outlet to a blank one on the same line."""

    device: str
    from_way: int
    to_way: int
    line: str
    needs_mm: Millimetres
    has_mm: Millimetres

    @property
    def from_outlet(self) -> str:
        """The outlet it leaves."""
        return f"{self.from_way}-{self.line}"

    @property
    def to_outlet(self) -> str:
        """The outlet it goes to."""
        return f"{self.to_way}-{self.line}"


Column = Mapping[int, Fed | str | None]
"""One line of a board: for each way what is on it; ``None`` is blank, text says why it stays."""


@requires("a whole three-phase way is free", place=LAYOUT)
def whole_way_free(free: bool, why: str) -> Finding:
    """A device on three lines needs the three outlets of one way, one on each line.

    Spare outlets on all lines may lie in different ways: the board's chart tells.

    Examples
    --------
    >>> whole_way_free(False, "no spare outlet on L1, L2").outcome.value
    'fail'
    """
    return holds(free, why)


@requires("which outlets are blank is known", place=LAYOUT)
def outlets_known(spare_phases: str) -> Finding:
    """Spare outlets on every line may lie in one way or in three.

    Lines only, as they were told.

    Examples
    --------
    >>> outlets_known("L1 L2 L3").outcome.value
    'undetermined'
    """
    return undetermined(
        f"spare outlets on {spare_phases}: note which they are, for they may lie in different ways"
    )


@computes("d", "mm", formula="pitch * abs(from_way - to_way)", place=METHOD)
def wire_needed(pitch: Millimetres, from_way: int, to_way: int) -> Millimetres:
    """Return the slack that a circuit needs to reach another way of the same column.

    Examples
    --------
    >>> wire_needed(Millimetres(27.0), 6, 8)
    54.0
    """
    return Millimetres(pitch * abs(from_way - to_way))


@computes("d", "mm", formula="sum(moves)", place=METHOD)
def wire_moved(moves: tuple[Millimetres, ...]) -> Millimetres:
    """Return how far all moves together take the wires.

    Examples
    --------
    >>> wire_moved((Millimetres(27.0), Millimetres(54.0)))
    81.0
    """
    return Millimetres(float(sum(moves)))


@computes("T", "min", formula="60 * t * n", place=METHOD)
def minutes_of_moves(t: Hours, n: Count) -> Minutes:
    """Return the minutes of so many moves, each tested again.

    Examples
    --------
    >>> minutes_of_moves(Hours(0.5), Count(2))
    60.0
    """
    return Minutes(60 * t * n)


def whole_way(home: Home, basis: Basis, tap: str) -> Check:
    """Return whether a whole way of a board is free, with the moves that would free one.

    What was said of whole ways comes first. Where no chart of outlets is held either, a line
    without a spare outlet rules it out and anything else waits for the chart.
    """
    board = home.boards[tap]
    if if_said(lambda: board.whole_ways_spare, Count(0)) > 0:
        return whole_way_free(True, "a whole way is free, as was said")
    if not len(board.outlets):
        missing = [line for line in LINES if line not in board.spare_phases]
        if missing:
            return whole_way_free(False, f"no spare outlet on {', '.join(missing)}")
        return outlets_known(board.spare_phases)
    columns = {line: column(board, line) for line in LINES}
    ways = sorted(set.intersection(*(set(each) for each in columns.values())))
    for way in ways:
        if all(columns[line][way] is None for line in LINES):
            return whole_way_free(True, f"way {way} is free on every line")
    freed = [found for way in ways if (found := freeing(board, columns, way)) is not None]
    if not freed:
        return whole_way_free(False, f"no way can be made free: {stuck(board, columns, ways)}")
    best = min(freed, key=lambda moves: (len(moves), wire_moved(tuple(m.needs_mm for m in moves))))
    return whole_way_free(False, f"way {freed_way(best)} must be made free").mended_by(
        way_made(basis, tap, best)
    )


def column(board: Board, line: str) -> Column:
    """Return one line of a board, way by way; what fills several outlets stays where it is."""
    devices = {
        outlet: id_
        for id_, each in board.devices.so_far()
        for outlet in if_said(lambda each=each: each.outlets, "").split()  # type: ignore[misc]
    }
    found: dict[int, Fed | str | None] = {}
    for outlet, each in board.outlets.so_far():
        way, _, on = outlet.partition("-")
        if on != line or not way.isdigit():
            continue
        found[int(way)] = None if each.blank else _fed(board, devices.get(outlet, ""), outlet)
    return found


def _fed(board: Board, device: str, outlet: str) -> Fed | str:
    """Return what is on an outlet, or why it stays there."""
    if not device:
        return f"nobody noted what is on {outlet}"
    if board.devices[device].poles != SINGLE:
        return f"{device} fills several outlets"
    slacks = [
        if_said(lambda each=each: each.slack_mm, NO_SLACK)  # type: ignore[misc]
        for _, each in board.circuits.so_far()
        if if_said(lambda each=each: each.device, "") == device  # type: ignore[misc]
    ]
    return Fed(device, min(slacks, key=float, default=NO_SLACK))


def freeing(board: Board, columns: Mapping[str, Column], way: int) -> tuple[Shift, ...] | None:
    """Return the fewest moves that free one way on every line; ``None`` if none do."""
    found: list[Shift] = []
    for line in LINES:
        path = shortest(board, columns[line], line, way)
        if path is None:
            return None
        found.extend(path)
    return tuple(found)


def shortest(board: Board, here: Column, line: str, way: int) -> tuple[Shift, ...] | None:
    """Return the fewest moves that empty one outlet, the least wire of equals, last move first.

    A circuit that stands where another must go moves on first; nothing moves twice.
    """
    if here[way] is None:
        return ()
    paths: list[tuple[Shift, ...]] = [()]
    reached = {way}
    while paths:
        longer = [
            (*path, step)
            for path in paths
            for step in steps(board, here, line, path[-1].to_way if path else way)
            if step.to_way not in reached
        ]
        ended = [path for path in longer if here[path[-1].to_way] is None]
        if ended:
            return min(ended, key=lambda path: wire_moved(tuple(step.needs_mm for step in path)))
        reached |= {path[-1].to_way for path in longer}
        paths = longer
    return None


def steps(board: Board, here: Column, line: str, way: int) -> Iterator[Shift]:
    """Yield where the circuit on an outlet could go, whether or not that is blank already."""
    fed = here[way]
    if not isinstance(fed, Fed):
        return
    for other in here:
        if other == way:
            continue
        needs_mm = wire_needed(board.way_pitch_mm, way, other)
        if needs_mm <= fed.slack_mm:
            yield Shift(fed.device, way, other, line, needs_mm, fed.slack_mm)


def stuck(board: Board, columns: Mapping[str, Column], ways: list[int]) -> str:
    """Return, way by way, the first outlet that cannot be emptied."""
    words = []
    for way in ways:
        line = next(x for x in LINES if shortest(board, columns[x], x, way) is None)
        fed = columns[line][way]
        why = fed if isinstance(fed, str) else f"{fed.device if fed else ''} does not reach a blank"
        words.append(f"{way}-{line} {why}")
    return "; ".join(words)


def freed_way(moves: tuple[Shift, ...]) -> int:
    """Return the way that some moves empty: the first move of each line leaves it."""
    return moves[0].from_way


def way_made(basis: Basis, tap: str, moves: tuple[Shift, ...]) -> Remedy:
    """Return the work of making a way free, the last move of each chain made first."""
    way, task, number = freed_way(moves), basis.task("move-circuit"), Count(len(moves))
    told = "; ".join(
        f"{each.device.replace('-', ' ')} from {each.from_outlet} to {each.to_outlet} "
        f"({each.needs_mm:g} mm of wire needed, {each.has_mm:g} there)"
        for each in reversed(moves)
    )
    return Remedy(
        slug=f"free-way-{way}",
        does=f"Make way {way} of {tap} free by {number} move{'s' if number > 1 else ''} on the "
        f"same lines: {told}; test those circuits again and write the chart anew",
        changes=tuple(_changes(tap, moves)),
        minutes=(
            minutes_of_moves(task.low_h, number),
            minutes_of_moves(task.usual_h, number),
            minutes_of_moves(task.high_h, number),
        ),
    )


def _changes(tap: str, moves: tuple[Shift, ...]) -> Iterator[tuple[str, Value]]:
    """Yield the facts that the moves change: which outlets are blank, and who sits where."""
    for outlet in dict.fromkeys((*(m.to_outlet for m in moves), *(m.from_outlet for m in moves))):
        taken = any(each.to_outlet == outlet for each in moves)
        yield f"boards.{tap}.outlets.{outlet}.blank", not taken
    for each in moves:
        yield f"boards.{tap}.devices.{each.device}.outlets", each.to_outlet
