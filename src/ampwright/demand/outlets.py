"""Which outlets of the main board a circuit could go to when its load changes lines."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from ampwright.foundations.quantity import Millimetres
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes
from ampwright.survey.home import Home
from ampwright.survey.home_boards import Board
from ampwright.survey.home_ways import Circuit
from ampwright.survey.if_said import if_said

METHOD: Final = Place("Ampwright", at="method, a circuit on another line", trust=Trust.DERIVED)
OUTLET: Final = re.compile(r"(\d+)-L([123])")
NO_LENGTH: Final = Millimetres(0.0)


@computes("d", "mm", formula="max(pitch, pitch * abs(ways) + across * abs(lines))", place=METHOD)
def wire_to(pitch: Millimetres, ways: int, across: Millimetres, lines: int) -> Millimetres:
    """Return the slack that a circuit needs to reach an outlet on another line.

    At right angles, and the width of one way at the least; ``across`` is the pitch of the lines.

    Examples
    --------
    >>> wire_to(Millimetres(27.0), 2, Millimetres(18.0), 1)
    72.0
    """
    return Millimetres(max(pitch, pitch * abs(ways) + across * abs(lines)))


@computes("d", "mm", formula="max(pitch, pitch * abs(ways))", place=METHOD)
def wire_along(pitch: Millimetres, ways: int) -> Millimetres:
    """Return the same where nobody measured how far the lines lie apart: along the board alone.

    Examples
    --------
    >>> wire_along(Millimetres(27.0), 2)
    54.0
    """
    return Millimetres(max(pitch, pitch * abs(ways)))


@dataclass(frozen=True, slots=True)
class Wire:
    """The circuit of one load: its device, where that sits, and how much longer it could be."""

    device: str
    outlet: str
    slack_mm: Millimetres


class Outlets:
    """The outlets of a board as its chart has them; everything reaches where there is none."""

    def __init__(self, board: Board) -> None:
        self.board = board
        self._wires: dict[str, tuple[Wire, ...]] = {}

    @cached_property
    def blank(self) -> tuple[str, ...]:
        """The outlets that are blank, in order; none without a chart."""
        found = [id_ for id_, each in self.board.outlets.so_far() if OUTLET.fullmatch(id_)
                 and if_said(lambda each=each: each.blank, False)]  # type: ignore[misc]  # fmt: skip
        return tuple(sorted(found))

    @cached_property
    def held(self) -> bool:
        """Whether a chart of the outlets is held."""
        return any(True for _ in self.board.outlets.so_far())

    def wires(self, load: str) -> tuple[Wire, ...]:
        """Return the circuits that feed a load, as far as anybody noted them."""
        if load not in self._wires:
            self._wires[load] = tuple(
                Wire(device, self._outlet_of(device), self._slack(circuit))
                for circuit, feeds in self._feeding
                if load in feeds
                for device in [if_said(lambda c=circuit: c.device, "")]  # type: ignore[misc]
            )
        return self._wires[load]

    @cached_property
    def _feeding(self) -> tuple[tuple[Circuit, tuple[str, ...]], ...]:
        """Every circuit with the loads that it feeds, as far as anybody noted them."""
        return tuple(
            (circuit, tuple(if_said(lambda c=circuit: c.feeds, "").split()))  # type: ignore[misc]
            for _, circuit in self.board.circuits.so_far()
        )

    def _outlet_of(self, device: str) -> str:
        if device not in self.board.devices:
            return ""
        return if_said(lambda: self.board.devices[device].outlets, "")

    def _slack(self, circuit: Circuit) -> Millimetres:
        """Return how much longer a wire could be; where nobody measured, as long as a way."""
        return if_said(lambda: circuit.slack_mm, self.pitch_mm)

    @cached_property
    def pitch_mm(self) -> Millimetres:
        """The width of a way; nought while nobody measured it."""
        return if_said(lambda: self.board.way_pitch_mm, NO_LENGTH)

    @cached_property
    def across_mm(self) -> Millimetres:
        """How far the lines of a way lie apart; nought while nobody measured it."""
        return if_said(lambda: self.board.line_pitch_mm, NO_LENGTH)

    def seating(self, going: Mapping[str, str]) -> dict[str, str] | None:
        """Return the outlet for each load that goes to another line; ``None`` if one finds none.

        What one leaves, another may take. A load whose outlet nobody noted wants no outlet of
        its own; without a chart nothing does, and the wire must be as long as a way is wide.
        """
        wires = {load: self.wires(load) for load in going}
        if not all(self._may_move(each) for each in wires.values()):
            return None
        if not self.held:
            return {}
        left = [each.outlet for wire in wires.values() for each in wire if each.outlet]
        noted = {load: wire[0] for load, wire in wires.items() if wire and wire[0].outlet}
        return self._seats(noted, going, (*self.blank, *left), {})

    def _may_move(self, wires: tuple[Wire, ...]) -> bool:
        """Say whether every wire is as long as a way is wide, and its device one outlet wide."""
        return all(
            each.slack_mm >= self.pitch_mm and len(each.outlet.split()) <= 1 for each in wires
        )

    def _seats(
        self, noted: Mapping[str, Wire], going: Mapping[str, str], free: tuple[str, ...],
        seats: dict[str, str],
    ) -> dict[str, str] | None:  # fmt: skip
        """Return a seat for each load after those that have one, the nearest that leave all one."""
        load = next((each for each in noted if each not in seats), None)
        if load is None:
            return seats
        for outlet in self._reached(noted[load], going[load], free):
            if outlet not in seats.values():
                found = self._seats(noted, going, free, {**seats, load: outlet})
                if found is not None:
                    return found
        return None

    def _reached(self, wire: Wire, line: str, free: tuple[str, ...]) -> Iterator[str]:
        """Yield the free outlets of a line that a wire reaches, the nearest first."""
        found = [(self.needs_mm(wire.outlet, outlet), outlet) for outlet in free
                 if outlet.endswith(line)]  # fmt: skip
        yield from (outlet for needs, outlet in sorted(found) if needs <= wire.slack_mm)

    def needs_mm(self, here: str, there: str) -> Millimetres:
        """Return the wire from one outlet to another."""
        start, end = OUTLET.fullmatch(here), OUTLET.fullmatch(there)
        if start is None or end is None:
            return self.pitch_mm
        ways, lines = int(end[1]) - int(start[1]), int(end[2]) - int(start[2])
        if not self.across_mm:
            return wire_along(self.pitch_mm, ways)
        return wire_to(self.pitch_mm, ways, self.across_mm, lines)


def outlets_of(home: Home, board: str) -> Outlets:
    """Return the outlets of a board."""
    return Outlets(home.boards[board])
