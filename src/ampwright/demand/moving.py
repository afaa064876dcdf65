"""Which loads could go to another line of a three-phase supply, and what that would leave."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.answers import Value
from ampwright.foundations.quantity import Amperes, Millimetres
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.stages import Made
from ampwright.survey.home import Home
from ampwright.survey.home_ways import Circuit
from ampwright.survey.if_said import if_said

from .compare import TABLE
from .household import ALL_LINES, LINES, Load, demand_of, read_loads

BOARD: Final = "main"
NO_LENGTH: Final = Millimetres(0.0)
LINE: Final = re.compile(r"L[123]")
EASIEST_FIRST: Final = (
    "stored hot water", "floor heating", "storage heating", "room heating", "motor", "fixed",
    "sockets", "cooking", "instant shower", "hot tub", "lighting",
)  # fmt: skip
"""Kinds of load whose circuit may go to another line, in the order in which we would ask.

What charges, and a heat pump, was agreed with the network on the line where it stands.
"""


@dataclass(frozen=True, slots=True)
class Move:
    """One load on another line: the demand that leaves and, if noted, where the spare ways are."""

    load: str
    from_line: str
    to_line: str
    now_a: tuple[Amperes, ...]
    spare: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Moves:
    """Every move of one load, the one we would rather make first; none on a single line."""

    each: tuple[Move, ...]


def load_moves(home: Home, basis: Basis, by: str) -> Made[Moves]:
    """Return what moving one load to another line would leave on each, load by load.

    Only what stands on one line, and on the main board as far as anybody noted another. Where
    the lines of its spare ways are noted, only to those: a move wants a free outlet there. What
    is moved leaves its own outlet free. None where the demand is not counted ``by`` the table:
    what was measured does not say which load drew it.
    """
    phases = int(home.supply.phases)
    spare = _spare_lines(home) if phases > 1 and by == TABLE else ()
    if not spare:
        return Made(Moves(()))
    loads = read_loads(home, phases)
    found = [
        Move(load.id, load.line, line, _left(loads, load, line, phases, basis), noted(home))
        for load in loads
        if load.kind in EASIEST_FIRST
        and load.line != ALL_LINES
        and _on_main_board(home, load)
        and _wire_reaches(home, load)
        for line in spare
        if line != load.line
    ]
    kinds = {load.id: load.kind for load in loads}
    found.sort(
        key=lambda move: (
            EASIEST_FIRST.index(kinds[move.load]),
            sorted(move.now_a, reverse=True),
        )
    )
    return Made(Moves(tuple(found)))


def _spare_lines(home: Home) -> tuple[str, ...]:
    """Return the lines that may have a free outlet: those noted, or all if nobody noted them."""
    lines = tuple(dict.fromkeys(noted(home)))
    if lines:
        return lines
    none_free = if_said(lambda: home.boards[BOARD].spare_ways == 0, False)
    return () if none_free else LINES


def noted(home: Home) -> tuple[str, ...]:
    """Return the lines of the spare ways as noted, one entry a way; empty if nobody noted them."""
    return tuple(LINE.findall(if_said(lambda: home.boards[BOARD].spare_phases, "")))


def _on_main_board(home: Home, load: Load) -> bool:
    """Say whether nothing speaks against a load being fed from the main board itself."""
    return if_said(lambda: home.loads[load.id].board, BOARD) == BOARD


def _wire_reaches(home: Home, load: Load) -> bool:
    """Say whether nothing speaks against the wire of a load reaching another way.

    It needs the width of one way at the least; where the spare length or the width was not
    measured, whoever opens the board finds out.
    """
    board = home.boards[BOARD]
    pitch_mm = if_said(lambda: board.way_pitch_mm, NO_LENGTH)
    own = (each for _, each in board.circuits.so_far() if load.id in _fed_by(each))
    return all(_spare_length(each, pitch_mm) >= pitch_mm for each in own)


def _fed_by(circuit: Circuit) -> list[str]:
    """Return the ids of the loads that a circuit feeds, as far as anybody noted them."""
    return if_said(lambda: circuit.feeds, "").split()


def _spare_length(circuit: Circuit, otherwise: Millimetres) -> Millimetres:
    """Return how much longer than needed the wire of a circuit is."""
    return if_said(lambda: circuit.slack_mm, otherwise)


def _left(
    loads: tuple[Load, ...], which: Load, line: str, phases: int, basis: Basis
) -> tuple[Amperes, ...]:
    """Return the demand of each line with one load on another."""
    moved = tuple(replace(load, line=line) if load is which else load for load in loads)
    return demand_of(moved, phases, basis.book).now_a


def remedy_of(move: Move, basis: Basis) -> Remedy:
    """Return the work of a move: the circuit goes over with its device, and is tested again."""
    name = move.load.replace("-", " ")
    where = "its free outlet" if move.spare else "a free outlet, which nobody has noted yet,"
    return Remedy(
        slug=f"move-{move.load}-to-{move.to_line}",
        does=f"Move the circuit of the {name} from {move.from_line} to {where} on "
        f"{move.to_line}, with the demand of every line worked out again",
        changes=tuple(_changes(move)),
        minutes=basis.task("move-circuit").minutes,
    )


def _changes(move: Move) -> Iterator[tuple[str, Value]]:
    """Yield the facts that a move changes."""
    yield f"loads.{move.load}.phase", move.to_line
    if move.spare:
        left = list(move.spare)
        left.remove(move.to_line)
        yield f"boards.{BOARD}.spare_phases", " ".join(sorted([*left, move.from_line]))
