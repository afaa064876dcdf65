"""The part of the work from the tap to the point: way, device, board, earth, cable, volts."""

from __future__ import annotations

from dataclasses import dataclass

from ampwright.design.board.feeds import house_feeds
from ampwright.design.board.own import BoardRoom
from ampwright.design.board.room import board_room
from ampwright.design.board.ways import way_found
from ampwright.design.circuit.cable import Cable, cable
from ampwright.design.circuit.data_beside import data_beside
from ampwright.design.circuit.device import Protection, protective_device
from ampwright.design.circuit.faults import FaultLevels, fault_levels
from ampwright.design.circuit.feed import Feed, feed, feed_bears
from ampwright.design.circuit.feed_earth import feed_earth
from ampwright.design.circuit.running import running
from ampwright.design.circuit.sizes import entry_of, sizes
from ampwright.design.circuit.voltage import PointVolts, volts_at_point
from ampwright.design.earthing.armour import ArmourEnds, armour_ends
from ampwright.design.earthing.open_pen import broken_neutral
from ampwright.design.earthing.outbuilding import board_earth, outbuilding
from ampwright.design.earthing.point import PointEarth, point_earthing
from ampwright.design.notices import notices
from ampwright.design.old_points import old_points
from ampwright.design.on_the_day import on_the_day
from ampwright.design.place import point_place
from ampwright.design.route import Route, route
from ampwright.design.sources import (
    SensorOrder,
    backed_up,
    export_limits,
    sensor_order,
    source_ways,
)
from ampwright.firm.basis import Basis
from ampwright.supply.sensors import Sensing, sensors
from ampwright.supply.voltage import Origin

from .choices import Choice
from .runs import Run
from .supply_side import SupplySide


@dataclass(frozen=True, slots=True)
class CircuitSide:
    """What one point's own circuit comes to."""

    route: Route
    device: Protection
    board: BoardRoom
    sensors: SensorOrder
    sensing: Sensing
    faults: FaultLevels
    earth: PointEarth
    armour: ArmourEnds
    cable: Cable
    volts: PointVolts


def circuit_side(run: Run, basis: Basis, choice: Choice, side: SupplySide) -> CircuitSide:
    """Describe the work of the point's own circuit, cheapest questions first."""
    point, setting_a = choice.point, choice.setting_a
    run(old_points, basis)
    run(point_place, basis, choice.place, point.ip)
    way = run(route, basis, choice.tap, choice.place)
    device = run(
        protective_device, basis, choice.tap, point, choice.earthing, setting_a, way.hidden
    )
    room = room_of(run, basis, choice, device, side.counted.by)
    run(notices, basis, choice.tap, device.rcd_in_point, point.gives_back_a > 0)
    order = beside_sources(run, basis, choice)
    sensing = run.aside(sensors, side.carried.lines, choice.house_limit, choice.tap)
    faults = run(fault_levels, basis, point.phases, device.breaking_ka)
    earth = run(point_earthing, basis, choice.place, choice.earthing, point, device.rcd_ma)
    run.note(broken_neutral, basis)
    run(board_earth, basis, choice.tap, choice.earthing)
    run(outbuilding, basis, choice.tap, choice.place, choice.earthing, way.length_m)
    run(house_feeds, basis, choice.tap)
    run(feed_earth, basis, choice.tap)
    run(feed_bears, basis, choice.tap, side.carried.carried_a, setting_a)
    fed = run(feed, basis, choice.tap, side.carried.carried_a, setting_a)
    armour = run(armour_ends, basis, way.laid, choice.earthing, choice.family)
    laid = cable_of(run, basis, choice, way, device, fed)
    volts = volts_of(run, basis, choice, side.origin, laid)
    along(run, basis, choice, way, device, laid)
    run.note(on_the_day, basis, point, setting_a, laid, choice.earthing, choice.house_limit)
    return CircuitSide(way, device, room, order, sensing, faults, earth, armour, laid, volts)


def room_of(run: Run, basis: Basis, choice: Choice, device: Protection, by: str) -> BoardRoom:
    """Describe the room at the tap: only what of point and device bears on it."""
    way = run(way_found, basis, choice.tap, choice.point.phases, device.positions, by)
    return run(
        board_room,
        basis,
        choice.tap,
        choice.point.phases,
        choice.point.dc_6ma,
        device.positions,
        device.rcd_type,
        device.rcd_ma,
        way,
    )


def cable_of(
    run: Run, basis: Basis, choice: Choice, way: Route, device: Protection, fed: Feed
) -> Cable:
    """Describe the cable; a limit on the house asks for data cores where there are any."""
    phases = choice.point.phases
    return run(
        cable,
        basis,
        way,
        run(sizes, basis, way, choice.family, phases, choice.house_limit),
        device.guard,
        fed,
        choice.earthing,
        choice.family,
        choice.setting_a,
        phases,
        run(entry_of, basis, choice.point),
    )


def along(
    run: Run, basis: Basis, choice: Choice, way: Route, device: Protection, laid: Cable
) -> None:
    """Describe how the cable is held, hidden and buried, and a sensor's data beside it."""
    guard = device.rcd_ma, device.rcd_in_point
    run(running, basis, way, choice.family, laid.overall_mm, *guard)
    if choice.house_limit:
        run(data_beside, basis, way, laid.cable, choice.point.phases)


def beside_sources(run: Run, basis: Basis, choice: Choice) -> SensorOrder:
    """Describe what sun and battery ask of the point, and what is told about them."""
    run(source_ways, basis, choice.tap)
    run(backed_up, choice.tap)
    run(export_limits, choice.tap)
    return run(sensor_order, basis, choice.tap, choice.house_limit)


def volts_of(run: Run, basis: Basis, choice: Choice, origin: Origin, laid: Cable) -> PointVolts:
    """Describe the volts at the point, from those at the origin."""
    return run(
        volts_at_point,
        basis,
        choice.point.detection,
        origin.lowest_v,
        origin.highest_v,
        origin.read,
        origin.high_read,
        laid.drop_to_neutral_v,
    )
