"""Which loads could go to another line of a three-phase supply, and what that would leave."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, product
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.times import task_minutes
from ampwright.foundations.answers import Value
from ampwright.foundations.quantity import Amperes, Millimetres
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said

from .compare import TABLE
from .household import ALL_LINES, LINES, Counting, Load, read_loads
from .outlets import Outlets, outlets_of

METHOD: Final = Place("Ampwright", at="method, a way made free", trust=Trust.DERIVED)
BOARD: Final = "main"
LINE: Final = re.compile(r"L[123]")
EASIEST_FIRST: Final = (
    "stored hot water", "floor heating", "storage heating", "room heating", "motor", "fixed",
    "sockets", "cooking", "instant shower", "hot tub", "lighting",
)  # fmt: skip
"""Kinds of load whose circuit may go to another line, in the order in which we would ask.

What charges, and a heat pump, was agreed with the network on the line where it stands.
"""


@dataclass(frozen=True, slots=True)
class Going:
    """One load that goes to another line: its device and both outlets where the chart has them."""

    load: str
    from_line: str
    to_line: str
    device: str = ""
    from_outlet: str = ""
    to_outlet: str = ""
    needs_mm: Millimetres | None = None
    has_mm: Millimetres | None = None


@dataclass(frozen=True, slots=True)
class Move:
    """One or two loads on other lines: the demand that leaves and the lines of the spare ways."""

    going: tuple[Going, ...]
    now_a: tuple[Amperes, ...]
    spare: tuple[str, ...]

    @property
    def load(self) -> str:
        """The load that moves, or the first of two."""
        return self.going[0].load

    @property
    def to_line(self) -> str:
        """The line it goes to."""
        return self.going[0].to_line


@dataclass(frozen=True, slots=True)
class Moves:
    """Every move of one load, the one we would rather make first, then of two; none on one line."""

    each: tuple[Move, ...]


def load_moves(home: Home, basis: Basis, by: str) -> Made[Moves]:
    """Return what moving a load to another line would leave on each, load by load, then for two.

    Only what stands on one line, and on the main board as far as anybody noted another. Where
    its chart is held, only to outlets that are blank, or that the other of two leaves, as far as
    the wire reaches; where only the lines of its spare ways are noted, only to those. Of two
    loads together only the most even, where no single one comes up to it. None where the demand
    is not counted ``by`` the table: what was measured does not say which load drew it.
    """
    phases = int(home.supply.phases)
    if phases == 1 or by != TABLE:
        return Made(Moves(()))
    moving = Moving(home, basis, read_loads(home, phases))
    single = moving.single()
    return Made(Moves((*single, *moving.double(single))))


class Moving:
    """The loads of a home, and where those that may change lines could go."""

    def __init__(self, home: Home, basis: Basis, loads: tuple[Load, ...]) -> None:
        self.home, self.basis, self.loads = home, basis, loads
        self.outlets: Outlets = outlets_of(home, BOARD)
        self._counting = Counting(basis.book)
        self.spare = noted(home)
        self.none_spare = not self.spare and if_said(
            lambda: home.boards[BOARD].spare_ways == 0, False
        )
        self.movable = [
            each
            for each in loads
            if each.kind in EASIEST_FIRST and each.line != ALL_LINES and self._on_main_board(each)
        ]

    def single(self) -> list[Move]:
        """Return every move of one load; what people notice least comes first."""
        found = [
            move
            for load in self.movable
            for line in LINES
            if line != load.line and (move := self._move({load: line})) is not None
        ]
        kinds = {load.id: load.kind for load in self.loads}
        return sorted(
            found,
            key=lambda move: (
                EASIEST_FIRST.index(kinds[move.load]),
                sorted(move.now_a, reverse=True),
            ),
        )

    def double(self, single: Sequence[Move]) -> Iterator[Move]:
        """Yield the most even of all moves of two, if it is more so than any of one."""
        found = (
            going
            for two in combinations(self.movable, 2)
            for lines in product(LINES, LINES)
            if all(load.line != line for load, line in zip(two, lines, strict=True))
            and self._seats(going := dict(zip(two, lines, strict=True))) is not None
        )
        evenest = min(found, key=lambda going: heaviest_first(self._now_a(going)), default={})
        best = self._move(evenest) if evenest else None
        as_it_is = self._now_a({})
        others = (as_it_is, *(each.now_a for each in single))
        if best and all(max(best.now_a) < max(each) for each in others):
            yield best

    def _move(self, going: dict[Load, str]) -> Move | None:
        """Return one move with what it leaves; nothing if the board has no room for it."""
        seats = self._seats(going)
        if seats is None:
            return None
        told = tuple(self._going(load, line, seats) for load, line in going.items())
        return Move(told, self._now_a(going), self.spare)

    def _seats(self, going: dict[Load, str]) -> dict[str, str] | None:
        """Return the outlets of a move; nothing if the board has no room for it."""
        if not self._lines_spare(going):
            return None
        return self.outlets.seating({load.id: line for load, line in going.items()})

    def _now_a(self, going: dict[Load, str]) -> tuple[Amperes, ...]:
        """Return what the loads ask on each line once some have gone to another."""
        lines = {load.id: line for load, line in going.items()}
        on = [(each, lines.get(each.id, each.line)) for each in self.loads]
        return tuple(
            self._counting.line_a([load for load, at in on if at in (line, ALL_LINES)])
            for line in LINES
        )

    def _lines_spare(self, going: dict[Load, str]) -> bool:
        """Say whether nothing speaks against free outlets on the lines where the loads go."""
        if self.outlets.held or not (self.spare or self.none_spare):
            return True
        free = (*self.spare, *(load.line for load in going))
        own = all(line in self.spare or line in left_by_others(load, going)
                  for load, line in going.items())  # fmt: skip
        lines = tuple(going.values())
        return own and all(lines.count(line) <= free.count(line) for line in lines)

    def _going(self, load: Load, line: str, seats: dict[str, str]) -> Going:
        """Return one load on its way, with the outlets where the chart has them."""
        if load.id not in seats:
            return Going(load.id, load.line, line)
        wire, *_ = self.outlets.wires(load.id)
        there = seats[load.id]
        going = Going(load.id, load.line, line, wire.device, wire.outlet, there)
        needs_mm = self.outlets.needs_mm(wire.outlet, there)
        return replace(going, needs_mm=needs_mm, has_mm=wire.slack_mm) if needs_mm else going

    def _on_main_board(self, load: Load) -> bool:
        """Say whether nothing speaks against a load being fed from the main board itself."""
        return if_said(lambda: self.home.loads[load.id].board, BOARD) == BOARD


def heaviest_first(now_a: Iterable[Amperes]) -> list[float]:
    """Return the demand of the lines, the heaviest first."""
    return sorted(map(float, now_a), reverse=True)


def left_by_others(load: Load, going: dict[Load, str]) -> list[str]:
    """Return the lines that the other loads of a move leave."""
    return [other.line for other in going if other is not load]


def noted(home: Home) -> tuple[str, ...]:
    """Return the lines of the spare ways as noted, one entry a way; empty if nobody noted them."""
    return tuple(LINE.findall(if_said(lambda: home.boards[BOARD].spare_phases, "")))


def remedy_of(move: Move, basis: Basis) -> Remedy:
    """Return the work of a move: each circuit goes over with its device, and is tested again."""
    told = " and ".join(_told(each, bool(move.spare)) for each in move.going)
    return Remedy(
        slug="move-" + "-and-".join(f"{each.load}-to-{each.to_line}" for each in move.going),
        does=f"Move {told}, with the demand of every line worked out again",
        changes=tuple(_changes(move)),
        minutes=task_minutes(basis.task("move-circuit"), len(move.going)),
    )


def _told(going: Going, spare: bool) -> str:
    """Return where one circuit goes, in words."""
    name = f"the circuit of the {going.load.replace('-', ' ')}"
    if going.to_outlet:
        told = f"{name} from {going.from_outlet} to {going.to_outlet}"
        if going.needs_mm is None:
            return told
        return f"{told} ({going.needs_mm:g} mm of wire needed, {going.has_mm:g} there)"
    where = "its free outlet" if spare else "a free outlet, which nobody has noted yet,"
    return f"{name} from {going.from_line} to {where} on {going.to_line}"


def _changes(move: Move) -> Iterator[tuple[str, Value]]:
    """Yield the facts that a move changes."""
    for each in move.going:
        yield f"loads.{each.load}.phase", each.to_line
    seated = [each for each in move.going if each.to_outlet]
    taken = {each.to_outlet for each in seated}
    for outlet in sorted(taken | {each.from_outlet for each in seated}):
        yield f"boards.{BOARD}.outlets.{outlet}.blank", outlet not in taken
    for each in seated:
        yield f"boards.{BOARD}.devices.{each.device}.outlets", each.to_outlet
    if move.spare:
        left = Counter(move.spare) + Counter(each.from_line for each in move.going)
        left.subtract(each.to_line for each in move.going)
        yield f"boards.{BOARD}.spare_phases", " ".join(sorted(left.elements()))
