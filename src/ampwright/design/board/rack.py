"""A fuse board as a rack: what sits on which outlet, how far its wires reach, what runs warm."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from ampwright.foundations.packing import Spot, Spots
from ampwright.foundations.quantity import Millimetres
from ampwright.survey.home import Home
from ampwright.survey.home_boards import Board
from ampwright.survey.home_ways import Circuit, Device
from ampwright.survey.if_said import if_said

from ..sources import LINES
from .freed import left_empty

OUTLET: Final = re.compile(r"(\d+)(?:-(L[123]))?")
NO_SLACK: Final = Millimetres(0.0)
STAYS: Final = frozenset({"RCD", "main switch", "isolator", "surge protection"})
"""Kinds of device that stay where they are: the bars are cut to them, or their wires are short."""
PARTS: Final = frozenset({"RCD", "main switch", "isolator"})
"""Kinds of device that part a row: past one, a circuit would hang on other bars."""
WARM: Final = frozenset({
    "storage heating", "floor heating", "room heating", "stored hot water", "heat pump",
    "hot tub", "battery charging", "charge point",
})  # fmt: skip
"""Kinds of load that draw for hours on end, unless their circuit is said to do otherwise."""


@dataclass(frozen=True, slots=True)
class Seat:
    """A device where it sits: the least slack of its wires, why it stays if it does, its loads.

    ``loads`` is nothing while nobody noted what some circuit of it feeds.
    """

    device: str
    spots: Spots
    slack_mm: Millimetres
    stays: str
    warm: bool
    loads: tuple[str, ...] | None


@dataclass(frozen=True)
class Rack:
    """The outlets of a board by way and line, with what sits on them; one line if it has one."""

    outlets: dict[Spot, str]
    seats: tuple[Seat, ...]
    three: bool
    parted_at: frozenset[int]

    @cached_property
    def taken(self) -> dict[Spot, Seat]:
        """What sits on each outlet that is not blank."""
        return {spot: seat for seat in self.seats for spot in seat.spots}

    @property
    def ways(self) -> list[int]:
        """The ways, in order."""
        return sorted({way for way, _ in self.outlets})

    def beside(self, spot: Spot) -> Iterator[Spot]:
        """Yield the spots that touch one: along the bars, and across them where there are three."""
        way, line = spot
        yield from ((way - 1, line), (way + 1, line))
        if self.three:
            yield from ((way, line - 1), (way, line + 1))

    def parted(self, here: int, there: int) -> bool:
        """Say whether something between two ways cuts the bars."""
        return any(min(here, there) < each < max(here, there) for each in self.parted_at)


def rack_of(home: Home, tap: str) -> Rack:
    """Return a board as far as its chart is held; outlets with ids of another form are left out."""
    board = home.boards[tap]
    three = board.phases > 1
    outlets, blank = dict[Spot, str](), set[Spot]()
    empty = left_empty(home, tap)
    for id_, outlet in board.outlets.so_far():
        spot = spot_of(id_, three)
        if spot is None:
            continue
        outlets[spot] = id_
        if outlet.blank or id_ in empty:
            blank.add(spot)
    seats = tuple(_seats(home, board, outlets, blank, three))
    parted = {
        way
        for seat in seats
        if seat.device and if_said(lambda s=seat: board.devices[s.device].kind, "") in PARTS  # type: ignore[misc]
        for way, _ in seat.spots
    }
    return Rack(outlets, seats, three, frozenset() if three else frozenset(parted))


def spot_of(outlet: str, three: bool) -> Spot | None:
    """Return way and line of an outlet by its id; on a board of one line the line is nought.

    Examples
    --------
    >>> spot_of("3-L2", three=True), spot_of("7", three=False), spot_of("spare", three=False)
    ((3, 1), (7, 0), None)
    """
    found = OUTLET.fullmatch(outlet)
    if found is None or (three and found[2] is None):
        return None
    return int(found[1]), LINES.index(found[2]) if three else 0


def _seats(
    home: Home, board: Board, outlets: dict[Spot, str], blank: set[Spot], three: bool
) -> Iterator[Seat]:
    """Yield what sits on the outlets that are not blank."""
    seen: set[Spot] = set(blank)
    for id_, device in board.devices.so_far():
        said = if_said(lambda device=device: device.outlets, "").split()  # type: ignore[misc]
        spots = tuple(spot for each in said if (spot := spot_of(each, three)) in outlets)
        if not spots or not seen.isdisjoint(spots):
            continue
        seen.update(spots)
        yield _seat(home, board, id_, device, spots)
    for spot, id_ in outlets.items():
        if spot not in seen:
            yield Seat("", (spot,), NO_SLACK, f"nobody noted what is on {id_}", False, None)


def _seat(home: Home, board: Board, id_: str, device: Device, spots: Spots) -> Seat:
    """Return one device in its place."""
    own = [
        circuit
        for _, circuit in board.circuits.so_far()
        if if_said(lambda circuit=circuit: circuit.device, "") == id_  # type: ignore[misc]
    ]
    slacks = [if_said(lambda each=each: each.slack_mm, NO_SLACK) for each in own]  # type: ignore[misc]
    kind, poles = if_said(lambda: device.kind, ""), if_said(lambda: device.poles, len(spots))
    stays = ""
    if poles != len(spots):
        stays = f"{id_} is noted as {poles} wide, on {len(spots)} outlets"
    elif kind in STAYS:
        stays = f"{id_} stays: {kind}"
    fed = [if_said(lambda each=each: each.feeds, None) for each in own]  # type: ignore[misc]
    loads = None if None in fed else tuple(load for each in fed for load in (each or "").split())
    warm = any(_warm(home, circuit) for circuit in own)
    return Seat(id_, spots, min(slacks, key=float, default=NO_SLACK), stays, warm, loads)


def _warm(home: Home, circuit: Circuit) -> bool:
    """Say whether a circuit is loaded for hours on end: as was said, or by what it feeds."""
    said = if_said(lambda: circuit.for_hours, None)
    if said is not None:
        return bool(said)
    feeds = if_said(lambda: circuit.feeds, "").split()
    return any(if_said(lambda load=load: home.loads[load].kind, "") in WARM for load in feeds)  # type: ignore[misc]
