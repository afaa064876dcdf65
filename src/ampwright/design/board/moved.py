"""The work of moving circuits in a board: step by step, what is dead when, and the new chart."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.times import task_minutes
from ampwright.foundations.answers import Value
from ampwright.foundations.packing import Packed, Piece, Spots, Step, in_order
from ampwright.foundations.quantity import Millimetres
from ampwright.foundations.remedies import Remedy
from ampwright.survey.home import Home

from ..sources import LINES
from .levels import Levels
from .rack import Rack, Seat

POINT: Final = "the charge point"
BLANK: Final = "–"


def way_made(
    home: Home, basis: Basis, tap: str, rack: Rack, best: Packed,
    needs_mm: Callable[[Spots, Spots], Millimetres], warm: str,
) -> Remedy:  # fmt: skip
    """Return the work of making a place free, each circuit into an outlet that is empty by then."""
    seats = {seat.device: seat for seat in rack.seats}
    steps = in_order([Piece(id_, seat.spots) for id_, seat in seats.items()], best.moves)
    lines = Levels(home, basis, rack).lines_after(dict(best.moves))
    went = tuple(
        f"{plain(step.id)} from {_at(rack, seats[step.id].spots)} to {_at(rack, step.spots)}"
        for step in steps
    )
    told = tuple(
        f"{each} ({needs_mm(seats[step.id].spots, step.spots):g} mm of wire needed, "
        f"{seats[step.id].slack_mm:g} there)"
        for each, step in zip(went, steps, strict=True)
    )
    number = len(steps)
    where = f"way {best.freed[0][0]}" if rack.three else "a place"
    slug = "free-way" if rack.three else "free-place"
    return Remedy(
        slug=f"{slug}-{best.freed[0][0]}",
        does=f"Make {where} of {tap} free by {number} move{'s' if number > 1 else ''} "
        f"{_on_lines(lines)}: {_all_of(went)}; test those circuits again and write the chart "
        "anew",
        changes=tuple(_changes(tap, rack, seats, steps, lines)),
        minutes=task_minutes(basis.task("move-circuit"), number),
        steps=tuple(_steps(tap, rack, steps, told, best, lines, warm)),
        chart=tuple(chart(rack, steps, best.freed)),
    )


def _on_lines(lines: dict[str, str]) -> str:
    """Say whether all circuits stay on their lines."""
    return "with the demand of every line worked out again" if lines else "on the same lines"


def _at(rack: Rack, spots: Spots) -> str:
    """Return where a device sits: its outlet, or each of several."""
    return _all_of([rack.outlets[spot] for spot in spots])


def _all_of(names: Sequence[str]) -> str:
    """Join names in a sentence."""
    *others, last = names
    return f"{', '.join(others)} and {last}" if others else last


def _steps(
    tap: str, rack: Rack, steps: tuple[Step, ...],
    told: tuple[str, ...], best: Packed, lines: dict[str, str], warm: str,
) -> Iterator[str]:  # fmt: skip
    """Yield the work in order, with what is dead from when to when."""
    yield (
        f"Switch {tap} off, lock it and prove it dead: all that hangs on it is dead from here on. "
        "The terminals in front of its main switch stay live"
    )
    for each in (step for step in steps if step.hung):
        yield f"Take {plain(each.id)} out and let it hang: its new place is not empty yet"
    yield from (f"Move {each}" for each in told)
    yield (
        f"{_place(rack, best.freed).capitalize()} is empty now: the point's device goes there, "
        "and a cover in every gap"
    )
    moved = ", ".join(plain(step.id) for step in steps)
    yield (
        f"Test {moved} while dead, then switch {tap} on with these still off: all else is live "
        "again"
    )
    yield f"Test {moved} live, one after the other; each is in use again when its test is passed"
    if warm:
        yield f"Leave a gap, or take the maker's factor for the heat: {warm}, all loaded for hours"
    for load, line in lines.items():
        yield f"{plain(load).capitalize()} is on {line} now: write that beside it"
    yield "Write the chart anew, as below"


def _place(rack: Rack, freed: Spots) -> str:
    """Return what the place made free is called."""
    if rack.three:
        return f"way {freed[0][0]}"
    return _at(rack, freed)


def chart(rack: Rack, steps: tuple[Step, ...], freed: Spots) -> Iterator[tuple[str, ...]]:
    """Yield the chart as the moves leave it: its heads, then way by way what is on each line."""
    moved = {step.id for step in steps}
    stays = [seat for seat in rack.seats if seat.device not in moved]
    on = {spot: plain(seat.device) or "not noted" for seat in stays for spot in seat.spots}
    on |= {spot: plain(step.id) for step in steps for spot in step.spots}
    on |= dict.fromkeys(freed, POINT)
    lines = range(len(LINES)) if rack.three else range(1)
    yield ("way", *LINES) if rack.three else ("way", "feeds")
    for way in rack.ways:
        yield (str(way), *(on.get((way, line), BLANK) for line in lines))


def plain(device: str) -> str:
    """Return the name of a device as people read it."""
    return device.replace("-", " ")


def _changes(
    tap: str, rack: Rack, seats: dict[str, Seat], steps: tuple[Step, ...], lines: dict[str, str]
) -> Iterator[tuple[str, Value]]:
    """Yield the facts that the moves change: what is blank, who sits where, on which line."""
    taken = {spot for step in steps for spot in step.spots}
    left = {spot for step in steps for spot in seats[step.id].spots}
    for spot in sorted(taken | left):
        yield f"boards.{tap}.outlets.{rack.outlets[spot]}.blank", spot not in taken
    for step in steps:
        outlets = " ".join(rack.outlets[spot] for spot in step.spots)
        yield f"boards.{tap}.devices.{step.id}.outlets", outlets
    for load, line in lines.items():
        yield f"loads.{load}.phase", line
