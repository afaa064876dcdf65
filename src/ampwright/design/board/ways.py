"""A place for the point's device in an existing board: free, or made free by the fewest moves.

Fewest circuits touched come first; of as few, those that leave the fewest warm devices side by
side, then the least wire, then the most even lines. A circuit stays on its line, unless taking
one to another line saves a move and makes no line heavier than the heaviest was.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from ampwright.demand.compare import TABLE
from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Finding, holds, requires, undetermined
from ampwright.foundations.packing import Moves, Packed, Packing, Piece, Spots
from ampwright.foundations.packing import Place as Seating
from ampwright.foundations.quantity import Count, Millimetres
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.survey.home import Home
from ampwright.survey.home_boards import Board
from ampwright.survey.if_said import if_said

from ..sources import LINES
from .extra import size_words
from .freed import ways_left
from .levels import Levels
from .moved import way_made
from .own import METER
from .rack import Rack, Seat, rack_of

METHOD: Final = Place("Ampwright", at="method, a way made free", trust=Trust.DERIVED)
LAYOUT: Final = Place("layout of three-phase boards", at="a device on three lines fills one way",
                      trust=Trust.COMMON_PRACTICE)  # fmt: skip
NONE, ONE_OUTLET, THREE_OUTLETS = Count(0), Count(1), Count(3)
MOST_ACROSS: Final = 4
"""How many circuits may be touched where some change lines: more is a board to be made anew."""


@dataclass(frozen=True, slots=True)
class WayFound:
    """Whether there is a place for a device, and the work that makes one if there is not.

    ``free`` is ``None`` while the chart of the board is not held; ``warm`` names what runs warm
    beside the place, or beside what moves.
    """

    free: bool | None
    why: str
    remedy: Remedy | None = None
    warm: str = ""


@requires("the board has a place for the device", place=LAYOUT)
def place_free(free: bool, why: str) -> Finding:
    """A device needs outlets side by side: on three lines the three of one way.

    Spare outlets may lie apart: the board's chart tells.

    Examples
    --------
    >>> place_free(False, "no spare outlet on L1, L2").outcome.value
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


@computes("d", "mm", formula="along + pitch * abs(from_line - to_line)", place=METHOD)
def wire_across(
    along: Millimetres, pitch: Millimetres, from_line: int, to_line: int
) -> Millimetres:
    """Return the slack that a circuit needs to reach another line, at right angles: never less.

    Examples
    --------
    >>> wire_across(Millimetres(54.0), Millimetres(18.0), 0, 2)
    90.0
    """
    return Millimetres(along + pitch * abs(from_line - to_line))


def way_found(
    home: Home, basis: Basis, tap: str, phases: int, positions: Count, by: str
) -> Made[WayFound]:
    """Return where in an existing board a device finds its place, and the moves that make one.

    ``phases`` are those of the point, ``positions`` those of its device; ``by`` says what the
    demand is counted by, for what was measured does not say which circuit drew it. What was said of
    whole ways comes first. Where no chart of outlets is held, a board on one line is judged by its
    number of spare ways alone; of three lines one without a spare outlet rules it out and anything
    else waits for the chart.
    """
    if tap == METER:
        return Made(WayFound(True, ""))
    board = home.boards[tap]
    three = board.phases > 1
    if three and phases > 1 and if_said(lambda: board.whole_ways_spare, NONE) > 0:
        return Made(WayFound(True, "a whole way is free, as was said"))
    rack = rack_of(home, tap)
    if not rack.outlets:
        return Made(_without_chart(home, tap, board, three and phases > 1))
    needed = needed_in(board, phases, positions)
    search = Search(home, basis, tap, rack, by)
    return Made(search.found(wanted(rack, phases, needed), needed))


def _without_chart(home: Home, tap: str, board: Board, whole: bool) -> WayFound:
    """Return what the lines of the spare outlets tell by themselves."""
    if not whole:
        return WayFound(True, "")
    if ways_left(home, tap) > 1:
        return WayFound(True, "the old point leaves a whole way")
    missing = [line for line in LINES if line not in board.spare_phases]
    if missing:
        return WayFound(False, f"no spare outlet on {', '.join(missing)}")
    return WayFound(None, board.spare_phases)


def needed_in(board: Board, phases: int, positions: Count) -> Count:
    """Return the positions that a device takes: outlets of the bars where a board has three."""
    if board.phases == 1:
        return positions
    return THREE_OUTLETS if phases > 1 else ONE_OUTLET


def wanted(rack: Rack, phases: int, needed: Count) -> list[Spots]:
    """Return every place that a device could fill if nothing sat there."""
    if rack.three:
        ways = [tuple((way, line) for line in range(len(LINES))) for way in rack.ways]
        whole = [spots for spots in ways if all(spot in rack.outlets for spot in spots)]
        return whole if phases > 1 else [(spot,) for spot in rack.outlets]
    rows = [tuple((way + each, 0) for each in range(int(needed))) for way in rack.ways]
    return [spots for spots in rows if all(spot in rack.outlets for spot in spots)]


class Search:
    """The search for a place in one board."""

    def __init__(self, home: Home, basis: Basis, tap: str, rack: Rack, by: str) -> None:
        self.home, self.basis, self.tap, self.rack, self.by = home, basis, tap, rack, by
        self.board = home.boards[tap]

    def found(self, places: list[Spots], needed: Count) -> WayFound:
        """Return the best of some places, as it is or as the fewest moves leave it."""
        best = self._best(places)
        if best is None:
            instead = size_words(self.home, self.basis, self.tap, needed)
            return WayFound(False, f"no place can be made free: {self.stuck(places)}; {instead}")
        warm = ", ".join(self._warm_beside(best.freed, dict(best.moves)))
        if not best.moves:
            return WayFound(True, f"{self.named(best.freed)} is free", warm=warm)
        return WayFound(
            False, f"{self.named(best.freed)} must be made free",
            way_made(self.home, self.basis, self.tap, self.rack, best, self.needs_mm, warm), warm,
        )  # fmt: skip

    def _best(self, places: list[Spots]) -> Packed | None:
        """Return the fewest moves on their own lines, or fewer still with one to another line."""
        stays = Packing(self._pieces(across=False), self._burden).fewest(places)
        most = MOST_ACROSS if stays is None else min(len(stays.moves) - 1, MOST_ACROSS)
        if most < 1 or self.line_pitch_mm is None or self.by != TABLE:
            return stays
        pieces = self._pieces(across=True)
        levels = Levels(self.home, self.basis, self.rack)
        if not levels.known:
            return stays
        bears = lambda freed, moves: (  # noqa: E731 - the burden, but for lines made heavier
            None if levels.heavier(moves) else self._burden(freed, moves)
        )
        return Packing(pieces, bears, levels.apart).fewest(places, most=most) or stays

    @cached_property
    def line_pitch_mm(self) -> Millimetres | None:
        """How far the lines of a way lie apart; nothing where that is not measured."""
        return if_said(lambda: self.board.line_pitch_mm, None) if self.rack.three else None

    def _pieces(self, across: bool) -> Iterator[Piece]:
        """Yield every device with the places that its wires reach."""
        for seat in self.rack.seats:
            id_ = seat.device or self.rack.outlets[seat.spots[0]]
            places = () if seat.stays else tuple(self._places(seat, across))
            yield Piece(id_, seat.spots, places)

    def _places(self, seat: Seat, across: bool) -> Iterator[Seating]:
        """Yield where a device could go, whoever sits there, the nearest first."""
        lines = (
            range(len(LINES)) if across and len(seat.spots) == 1 and seat.loads is not None else ()
        )
        (way, line), *_ = seat.spots
        found = []
        for to in self.rack.ways:
            for to_line in lines or (line,):
                spots = tuple((w + to - way, x + to_line - line) for w, x in seat.spots)
                if spots == seat.spots or not all(spot in self.rack.outlets for spot in spots):
                    continue
                needs_mm = self.needs_mm(seat.spots, spots)
                if needs_mm <= seat.slack_mm and not self.rack.parted(way, to):
                    found.append(Seating(spots, (float(to_line != line), float(needs_mm))))
        yield from sorted(found, key=lambda each: (each.cost, each.spots))

    def needs_mm(self, here: Spots, there: Spots) -> Millimetres:
        """Return the wire that a circuit needs from one place to another."""
        (way, line), (to_way, to_line) = here[0], there[0]
        along_mm = wire_needed(self.board.way_pitch_mm, way, to_way)
        if line == to_line or self.line_pitch_mm is None:
            return along_mm
        return wire_across(along_mm, self.line_pitch_mm, line, to_line)

    def _burden(self, freed: Spots, moves: Moves) -> int:
        """Return how many warm devices touch the new one or one that moved."""
        return len(self._warm_beside(freed, moves)) if self._any_warm else 0

    @cached_property
    def _any_warm(self) -> bool:
        return any(seat.warm for seat in self.rack.seats)

    def _warm_beside(self, freed: Spots, moves: Moves) -> list[str]:
        """Return each pair of warm devices that touch because of some moves, in words."""
        warm = {
            seat.device: moves[seat.device].spots if seat.device in moves else seat.spots
            for seat in self.rack.seats
            if seat.warm
        }
        touched = {"the point": freed} | {id_: warm[id_] for id_ in moves if id_ in warm}
        pairs = {
            tuple(sorted((a, b)))
            for a, spots in touched.items()
            for b, there in (warm | touched).items()
            if a != b and any(next_to in there for at in spots for next_to in self.rack.beside(at))
        }
        return [f"{b} beside {a}".replace("-", " ") for a, b in sorted(pairs)]

    def named(self, freed: Spots) -> str:
        """Return what a place is called in the board."""
        return place_name(self.rack, freed)

    def stuck(self, places: list[Spots]) -> str:
        """Return, place by place, the first device that cannot leave it."""
        alone: Callable[[Spots], bool] = lambda spots: (  # noqa: E731
            Packing(self._pieces(across=False)).fewest([spots]) is not None
        )
        words = []
        for spots in places:
            spot = next((each for each in spots if not alone((each,))), spots[0])
            seat = self.rack.taken.get(spot)
            name = self.rack.outlets[spot]
            if seat is None:
                words.append(f"{name} is blank, what is beside it has nowhere to go")
            else:
                words.append(f"{name} {seat.stays or f'{seat.device} does not reach a blank'}")
        return "; ".join(dict.fromkeys(words))


def place_name(rack: Rack, freed: Spots) -> str:
    """Return what a place is called: a way of three outlets, or outlets by their ids."""
    if rack.three and len(freed) > 1:
        return f"way {freed[0][0]}"
    names = [rack.outlets[spot] for spot in freed]
    return f"outlet {names[0]}" if len(names) == 1 else f"outlets {names[0]} to {names[-1]}"
