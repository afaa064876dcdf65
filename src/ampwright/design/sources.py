"""Beside sun and battery: whose sensor sees what, which devices bear it, who is told."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check, Finding, Outcome, holds, requires
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.quantity import Amperes
from ampwright.foundations.remedies import Part, Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made, made_of
from ampwright.standards.wiring.sources import (
    BOARD,
    current_from_all_sides,
    device_suits_both_ways,
)
from ampwright.survey.home import Home
from ampwright.survey.home_loads import Source

SENSORS: Final = Place(
    "usual practice with batteries", at="which loads a sensor sees", trust=Trust.COMMON_PRACTICE
)
POWER_CUT: Final = Place(
    "usual practice with batteries", at="what stays on in a power cut",
    trust=Trust.COMMON_PRACTICE,
)  # fmt: skip
EXPORT: Final = Place(
    "Engineering Recommendation G100", at="a limit holds at the supply terminals",
    trust=Trust.MEMORY,
)  # fmt: skip
METER: Final = "meter"
POINT: Final = "the point"
POINT_SENSOR: Final = "the point's sensor"
BATTERY: Final = "battery"
METER_END: Final = "at the meter"
BEHIND: Final = ("on the tails", "in the board")
LINES: Final = ("L1", "L2", "L3")
NET_OF_SOURCES: Final = (
    "a clip of its own, ahead of the tap: one clip never serves two devices; it sees the house "
    "net of what sun and battery give, so it guards the fuse and not the board; arrow and figure "
    "are proved with a known load"
)
EACH_LINE: Final = (
    "a sensor on each of the three tails, each on its own line: order and arrows are proved with a "
    "known load on every line"
)


@dataclass(frozen=True, slots=True)
class SensorOrder:
    """What follows what from the street inwards: sensors, tap and board.

    ``batteries_see_car`` names the batteries whose sensor takes the car for house load.
    """

    along: tuple[str, ...]
    batteries_see_car: tuple[str, ...]


@requires("the battery does not take the car for house load", place=SENSORS)
def battery_leaves_car(battery: str, sees: bool, holds_off: bool) -> Finding:
    """A battery does not empty itself into the car.

    It gives what its sensor says the house draws; a setting may bar it while the car charges.

    Examples
    --------
    >>> battery_leaves_car("store", True, False).why
    'the sensor of store sees the car as house load'
    """
    if not sees:
        return holds(True, f"the tap lies on the meter side of the sensor of {battery}")
    if holds_off:
        return holds(True, f"{battery} gives nothing while the car charges")
    return holds(False, f"the sensor of {battery} sees the car as house load")


@tells(SENSORS)
def point_sensor_first() -> str:
    """Say where the sensor goes that holds the house to its limit: ahead of whatever draws."""
    return (
        "the point's sensor comes first behind the meter: it sees every load, the point among them"
    )


@tells(SENSORS, caution=True)
def clip_of_its_own() -> str:
    """Say what the point's sensor sees where something else gives current, and has its own."""
    return NET_OF_SOURCES


@tells(SENSORS, caution=True)
def sensor_on_each_line() -> str:
    """Ask for a sensor on each tail of three, and for the proof of their order."""
    return EACH_LINE


@tells(BOARD, caution=True)
def way_to_record(source: str) -> str:
    """Ask for a look at a device that was there before, on another board than the point's.

    Not our circuit: for whoever owns it.

    Examples
    --------
    >>> way_to_record("sun").caution[:31]
    'the device that feeds sun: reco'
    """
    return (
        f"the device that feeds {source}: record whether it suits current both ways; replace it "
        "if not"
    )


@tells(BOARD)
def left_board_told(board: str, fed: Amperes, rated: Amperes) -> str:
    """Say what fuse and sources come to on a board that is left as it is.

    Examples
    --------
    >>> left_board_told("main", Amperes(96.0), Amperes(100.0)).says
    'main is left as it is: fuse and sources come to 96 A on its bars, rated 100 A'
    """
    return (
        f"{board} is left as it is: fuse and sources come to {fed:g} A on its bars, rated "
        f"{rated:g} A"
    )


@tells(BOARD, caution=True)
def left_board_full(board: str, fed: Amperes, rated: Amperes) -> str:
    """Tell of a board that sources overload already: it is left as it was found.

    Nothing is added to it, so it does not stand in the way.

    Examples
    --------
    >>> left_board_full("main", Amperes(112.0), Amperes(100.0)).caution[:42]
    'fuse and sources come to 112 A on the bars'
    """
    return (
        f"fuse and sources come to {fed:g} A on the bars of {board}, rated {rated:g} A: nothing "
        "more goes on it, and the customer is told"
    )


@requires("the point is not on the side that a battery keeps going", place=POWER_CUT)
def not_backed_up(battery: str, backs_up: str, at_meter: bool) -> Finding:
    """A car does not hang on a battery that carries the house through a power cut.

    It would empty the battery within the hour, or be more than its inverter can give.

    Examples
    --------
    >>> not_backed_up("store", "the whole house", False).why
    'store keeps the whole house going: every way of the board lies on its side'
    """
    if backs_up == "the whole house" and not at_meter:
        return holds(False, f"{battery} keeps the whole house going: every way of the board lies "
                     "on its side")  # fmt: skip
    return holds(True)


@tells(EXPORT, caution=True)
def export_limit_told(source: str) -> str:
    """Ask that the operator hears of a limit on export behind the tap of the point.

    What the car takes lies beyond its sensor, so it limits more than it need; the operator
    agreed to another arrangement.

    Examples
    --------
    >>> export_limit_told("sun").caution
    'tell the operator: the export limit of sun is now measured behind the tap'
    """
    return f"tell the operator: the export limit of {source} is now measured behind the tap"


def sensor_order(home: Home, basis: Basis, tap: str, limited: bool) -> Made[SensorOrder]:
    """Return the order of sensors and taps, and whether a battery takes the car for the house.

    ``limited`` says that the point holds the house to a limit by a sensor of its own.
    """
    batteries = tuple((id_, each) for id_, each in home.sources.listed() if each.kind == BATTERY)
    seeing = tuple(id_ for id_, each in batteries if _sees(each, tap))
    along = tuple(_along(tap, limited, batteries))
    checks = tuple(_left_alone(basis, tap, id_, each) for id_, each in batteries)
    notes = tuple(_first(home)) if limited else ()
    return Made(SensorOrder(along, seeing), checks, notes=notes)


def _first(home: Home) -> Iterator[Note]:
    """Yield where the point's sensor goes, with what to see to when it is fitted."""
    yield point_sensor_first()
    if home.supply.phases > 1:
        yield sensor_on_each_line()
    if _any_source(home):
        yield clip_of_its_own()


def _any_source(home: Home) -> bool:
    """Say whether anything in the home gives current."""
    return any(True for _ in home.sources.listed())


def _sees(battery: Source, tap: str) -> bool:
    """Say whether a battery's sensor sees a point that is fed at a tap."""
    where = battery.sensor_at
    return where == METER_END or (tap != METER and where in BEHIND)


def _along(tap: str, limited: bool, batteries: tuple[tuple[str, Source], ...]) -> Iterator[str]:
    """Yield what follows what, from the meter inwards."""
    at_meter = [f"the sensor of {id_}" for id_, each in batteries if each.sensor_at == METER_END]
    behind = [f"the sensor of {id_}" for id_, each in batteries if each.sensor_at in BEHIND]
    yield METER
    if limited:
        yield POINT_SENSOR
    yield from at_meter
    if tap == METER:
        yield POINT
    yield from behind
    yield "the board" if tap == METER else tap
    if tap != METER:
        yield POINT


def _left_alone(basis: Basis, tap: str, id_: str, battery: Source) -> Check:
    """Return whether one battery leaves the car alone, with what would mend it."""
    sees = _sees(battery, tap)
    check = battery_leaves_car(id_, sees, sees and battery.holds_off_for_car)
    if check.outcome is Outcome.PASS:
        if tap == METER and battery.sensor_at == "on the tails":
            return check.with_caution(
                f"the service connectors go on the meter side of the sensor of {id_}, which "
                "stays on the tail of the house alone"
            )
        return check
    if tap == METER:
        check = check.mended_by(_sensor_moved(basis, id_))
    return check.mended_by(_held_off(basis, id_))


def _sensor_moved(basis: Basis, id_: str) -> Remedy:
    """Return the work of moving a battery's sensor behind the tap of the point."""
    return Remedy(
        slug=f"move-sensor-{id_}",
        does=f"Move the sensor of {id_} to the tail of the house, behind the tap of the point, as "
        "its maker allows, and prove it with a known load",
        changes=((f"sources.{id_}.sensor_at", "on the tails"),),
        minutes=basis.task("sensor").minutes,
    )


def _held_off(basis: Basis, id_: str) -> Remedy:
    """Return the work of barring a battery from discharging while the car charges."""
    return Remedy(
        slug=f"hold-off-{id_}",
        does=f"Set {id_} so that it gives nothing while the car charges, and prove it",
        changes=((f"sources.{id_}.holds_off_for_car", True),),
        minutes=basis.task("commission").minutes,
    )


def source_ways(home: Home, basis: Basis, tap: str) -> Made[None]:
    """Return what the ways of sources must bear, and what a board that is left as it is bears.

    On the board of the point the devices must suit current both ways; on any other it is noted
    and told, as is a board that fuse and sources overload together.
    """
    boards: dict[str, list[tuple[str, Source]]] = {}
    for id_, each in home.sources.listed():
        boards.setdefault(each.board, []).append((id_, each))
    found: list[Check | Note] = []
    for board, sources in boards.items():
        if board != tap and board in home.boards:
            found.extend(_left(home, board))
        found.extend(_devices(basis, tap, board, sources))
    return made_of(None, found)


def sources_on(home: Home, board: str) -> Iterator[tuple[Amperes, ...]]:
    """Yield, for each line that something feeds, what the sources on a board give to it."""
    phases = home.supply.phases
    feeding = [each for _, each in home.sources.listed() if each.board == board]
    for line in LINES[:phases] if feeding else ():
        here = tuple(each.amps_a for each in feeding if phases == 1 or each.phase in (line, "all"))
        if here:
            yield here


def _left(home: Home, board: str) -> Iterator[Note]:
    """Yield, line by line, what a board bears to which nothing is added."""
    fuse_a, rated_a = home.supply.main_fuse_a, home.boards[board].rated_a
    for here in sources_on(home, board):
        fed_a = current_from_all_sides(fuse_a, here)
        told = left_board_told if fed_a <= rated_a else left_board_full
        yield told(board, fed_a, rated_a)


def _devices(
    basis: Basis, tap: str, board: str, found: list[tuple[str, Source]]
) -> Iterator[Check | Note]:
    """Yield whether the device on the way of each source bears current both ways."""
    for id_, each in found:
        if board == tap:
            check = device_suits_both_ways(each.way_both_ways)
            yield check.mended_by(_device_changed(basis, id_))
            continue
        if not each.way_both_ways:
            yield way_to_record(id_)


def _device_changed(basis: Basis, id_: str) -> Remedy:
    """Return the work of a device for current both ways on the way of a source."""
    return Remedy(
        slug=f"both-ways-{id_}",
        does=f"Change the device that feeds {id_} for one that suits current both ways",
        changes=((f"sources.{id_}.way_both_ways", True),),
        parts=(Part("device of the board's make that suits current both ways", 1.0),),
        minutes=basis.task("land-on-way").minutes,
    )


def backed_up(home: Home, tap: str) -> Made[None]:
    """Return whether the point stays off the side that a battery keeps going in a power cut."""
    checks = []
    for id_, each in home.sources.listed():
        if each.kind != BATTERY or each.backs_up == "nothing":
            continue
        check = not_backed_up(id_, each.backs_up, tap == METER)
        checks.append(check.with_caution(_off_the_backed_side(id_, tap)))
    return Made(None, tuple(checks))


def _off_the_backed_side(id_: str, tap: str) -> str:
    """Return what to see to where a battery keeps part of a house going."""
    if tap == METER:
        return f"the tap goes on the network's side of the changeover of {id_}"
    return f"the point goes on no way that {id_} keeps going in a power cut"


def export_limits(home: Home, tap: str) -> Made[None]:
    """Return the export limits whose sensor is no longer at the supply terminals.

    Only a tap at the meter end moves in front of it.
    """
    if tap != METER:
        return Made(None)
    told = (export_limit_told(id_) for id_, each in home.sources.listed() if each.export_limited)
    return Made(None, notes=tuple(told))
