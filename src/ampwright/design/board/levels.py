"""What the lines of a three-phase home carry once circuits have changed lines in the board."""

from __future__ import annotations

from dataclasses import replace
from functools import cached_property

from ampwright.demand.household import Load, demand_of, read_loads
from ampwright.firm.basis import Basis
from ampwright.foundations.packing import Moves
from ampwright.foundations.quantity import Amperes
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said

from ..sources import LINES
from .rack import Rack


class Levels:
    """The demand of each line by the household table, before and after some moves."""

    def __init__(self, home: Home, basis: Basis, rack: Rack) -> None:
        self.home, self.basis, self.rack = home, basis, rack
        self.before = {seat.device: seat for seat in rack.seats}

    @cached_property
    def loads(self) -> tuple[Load, ...]:
        """Every load of the home."""
        return read_loads(self.home, len(LINES))

    @property
    def known(self) -> bool:
        """Say whether the demand can be worked out at all."""
        return if_said(lambda: self.loads, None) is not None

    def after(self, moves: Moves) -> tuple[Amperes, ...]:
        """Return the demand of each line once some circuits have moved."""
        to = self.lines_after(moves)
        loads = tuple(replace(each, line=to.get(each.id, each.line)) for each in self.loads)
        return demand_of(loads, len(LINES), self.basis.book).now_a

    def lines_after(self, moves: Moves) -> dict[str, str]:
        """Return the new line of every load whose circuit changes lines."""
        return {
            load: LINES[place.spots[0][1]]
            for id_, place in moves.items()
            if place.spots[0][1] != self.before[id_].spots[0][1]
            for load in self.before[id_].loads or ()
        }

    def heavier(self, moves: Moves) -> bool:
        """Say whether some moves leave a line heavier than the heaviest is now."""
        return bool(max(self.after(moves)) > max(self.after({})))

    def apart(self, moves: Moves) -> float:
        """Return how far the heaviest line and the lightest lie apart after some moves."""
        after = self.after(moves)
        return float(max(after) - min(after))
