"""The work of one charge point, described once: every stage, in the order of the work.

Run over all homes it explores; run in one home it keeps the working. It asks for each choice
next to the stage that needs it. Results may be handed on and their parts read, nothing else.
"""

from __future__ import annotations

from dataclasses import dataclass

from ampwright.costing.labour import Labour, labour
from ampwright.design.board.own import BoardRoom
from ampwright.design.board.room import board_room
from ampwright.design.circuit.cable import Cable, cable
from ampwright.design.circuit.device import Protection, protective_device
from ampwright.design.circuit.faults import FaultLevels, fault_levels
from ampwright.design.circuit.feed import feed
from ampwright.design.circuit.setting import point_setting
from ampwright.design.circuit.voltage import PointVolts, volts_at_point
from ampwright.design.earthing.bonding import Bonding, bonding
from ampwright.design.earthing.point import PointEarth, point_earthing
from ampwright.design.place import point_place
from ampwright.design.route import Route, route
from ampwright.energy.need import (
    CarCharging,
    Charging,
    Cost,
    Need,
    Nights,
    charging_time,
    cheap_nights,
    running_cost,
    yearly_need,
)
from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import Lead
from ampwright.foundations.quantity import Amperes, Kilowatts, Minutes
from ampwright.foundations.stages import Made
from ampwright.network.connection import Connection
from ampwright.standards.network.connection import Step
from ampwright.survey.home import Home
from ampwright.tables.capacity import CableFamily

from .choices import METER, Choice
from .ranking import Criteria
from .runs import Run
from .search import Work
from .supply_side import Decision, SupplySide, supply_side


@dataclass(frozen=True, slots=True)
class Use:
    """What the point does for the cars of the home."""

    need: Need
    charging: Charging
    nights: Nights
    cost: Cost


@dataclass(frozen=True, slots=True)
class Design:
    """Everything one option comes to."""

    supply: SupplySide
    connection: Connection
    decision: Decision
    bonding: Bonding
    board: BoardRoom
    route: Route
    device: Protection
    faults: FaultLevels
    cable: Cable
    volts: PointVolts
    earth: PointEarth
    use: Use
    labour: Labour
    criteria: Criteria


def work_of(basis: Basis) -> Work[Design]:
    """Return the description of the work on a basis."""

    def work(run: Run, choice: Choice) -> Design:
        bonds = run(bonding, basis)
        run(point_setting, basis, choice.point, choice.setting_a)
        side = supply_side(run, basis, choice.point, choice.setting_a, choice.house_limit)
        point, setting_a = choice.point, choice.setting_a
        run(point_place, choice.place, point.ip)
        way = run(route, choice.tap, choice.place)
        device = run(protective_device, basis, point, choice.earthing, setting_a, way.hidden)
        room = run(board_room, basis, choice.tap, point, device)
        faults = run(fault_levels, point.phases, device.breaking_ka)
        earth = run(point_earthing, basis, choice.place, choice.earthing, point, device.rcd_ma)
        fed = run(feed, basis, choice.tap, side.carried.carried_a)
        run_of_cable = run(
            cable,
            basis,
            way,
            device,
            fed,
            choice.earthing,
            choice.family,
            choice.house_limit,
            setting_a,
            point,
        )
        volts = run(
            volts_at_point,
            basis,
            point.detection,
            side.origin.lowest_v,
            side.origin.highest_v,
            side.origin.read,
            side.origin.high_read,
            run_of_cable.drop_to_neutral_v,
        )
        use = use_of(run, basis, setting_a, choice)
        time = run(
            labour,
            basis,
            way.legs,
            choice.tap,
            point.phases,
            choice.family,
            choice.earthing,
            choice.house_limit,
            choice.remedies,
        )
        weighed = run(
            criteria,
            side.connection.outcome,
            use.charging.cars,
            use.charging.offered_kw,
            time.usual_min,
            point.lead,
            order_of(basis, choice),
        )
        return Design(
            supply=side,
            connection=side.connection,
            decision=side.decision,
            bonding=bonds,
            board=room,
            route=way,
            device=device,
            faults=faults,
            cable=run_of_cable,
            volts=volts,
            earth=earth,
            use=use,
            labour=time,
            criteria=weighed,
        )

    return work


def use_of(run: Run, basis: Basis, setting_a: Amperes, choice: Choice) -> Use:
    """Describe what the point does for the cars: their need, their hours and their cost."""
    need = run(yearly_need, basis)
    charging = run(charging_time, basis, need, setting_a, choice.point.phases)
    nights = run(cheap_nights, basis, charging.hours_a_day)
    cost = run(running_cost, need.kwh_a_year)
    return Use(need, charging, nights, cost)


FAMILIES = tuple(CableFamily)
WAITS = {Step.TELL_AFTER: 0.0, Step.ASK_FIRST: 1.0, Step.ASK_FIRST_SEVERAL: 1.0, Step.STOP: 2.0}
EARTHS_IN_ORDER = ("pme", "house rod", "rod")
"""What the firm would rather do where nothing else decides: what is there before what is new."""
UNWISHED = 0.5


def criteria(
    home: Home,
    outcome: Step,
    cars: tuple[CarCharging, ...],
    offered_kw: Kilowatts,
    usual_min: Minutes,
    lead: Lead,
    order: int,
) -> Made[Criteria]:
    """Return what an option is compared on; the lead that was not wished for comes later."""
    usable = max((car.power_kw for car in cars), default=offered_kw)
    wished = home.wishes.lead
    suits = wished in ("either", lead.value)
    return Made(Criteria(WAITS[outcome], -usable, usual_min, order if suits else order + UNWISHED))


def order_of(basis: Basis, choice: Choice) -> int:
    """Return where a choice stands in the firm's own order of equals.

    The home's own earth before a new one, its board before another, the cable that is quickest
    to run, and the points as the catalogue lists them.
    """
    points = basis.catalogue.points
    places = (
        (EARTHS_IN_ORDER.index(choice.earthing), len(EARTHS_IN_ORDER)),
        (int(choice.tap == METER), 2),
        (int(choice.house_limit), 2),
        (points.index(choice.point), len(points)),
        (FAMILIES.index(choice.family), len(FAMILIES)),
    )
    number = 0
    for place, size in places:
        number = number * size + place
    return number
