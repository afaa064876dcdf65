"""The work of one charge point, described once: every stage, in the order of the work.

Run over all homes it explores; run in one home it keeps the working. It asks for each choice
next to the stage that needs it. Results may be handed on and their parts read, nothing else.
"""

from __future__ import annotations

from dataclasses import dataclass

from ampwright.costing.labour import Labour
from ampwright.costing.price import Price
from ampwright.design.board.own import BoardRoom
from ampwright.design.circuit.cable import Cable
from ampwright.design.circuit.device import Protection
from ampwright.design.circuit.setting import point_setting
from ampwright.design.circuit.voltage import PointVolts
from ampwright.design.earthing.bonding import Bonding, bonding
from ampwright.design.earthing.point import PointEarth
from ampwright.design.route import Route
from ampwright.energy.need import (
    Charging,
    Cost,
    Need,
    Nights,
    charging_time,
    cheap_nights,
    night_alone,
    running_cost,
    yearly_need,
)
from ampwright.firm.basis import Basis
from ampwright.network.connection import Connection
from ampwright.supply.hours import NIGHT
from ampwright.supply.smart import smart_charging

from .choices import Choice
from .circuit_side import CircuitSide, circuit_side
from .criteria import Criteria
from .gates import Awaits, Gates, gates_of, work_of_others
from .price_side import PriceSide, price_side
from .runs import Run
from .search import Work
from .supply_side import Decision, SupplySide, held_decision, supply_side
from .weighing import (
    cramped,
    cramped_under_limit,
    firm_order,
    order_of,
    seen,
    shortfall,
    slowness,
    uncovered,
    usable_power,
    wait,
)


@dataclass(frozen=True, slots=True)
class Use:
    """What the point does for the cars of the home."""

    need: Need
    charging: Charging
    nights: Nights
    cost: Cost


@dataclass(frozen=True, slots=True)
class Design:
    """Everything one option comes to.

    ``decision`` is what it means for the job: what the network's tests come to, or to stop until
    somebody outside has done their part of its work.
    """

    bonding: Bonding
    supply: SupplySide
    circuit: CircuitSide
    use: Use
    costs: PriceSide
    gates: Gates
    criteria: Criteria
    decision: Decision

    @property
    def connection(self) -> Connection:
        """What the network's tests come to."""
        return self.supply.connection

    @property
    def labour(self) -> Labour:
        """The time of the work."""
        return self.costs.labour

    @property
    def price(self) -> Price:
        """What it costs the customer."""
        return self.costs.price

    @property
    def route(self) -> Route:
        """The way of the cable."""
        return self.circuit.route

    @property
    def device(self) -> Protection:
        """What protects the circuit."""
        return self.circuit.device

    @property
    def board(self) -> BoardRoom:
        """Where the device goes."""
        return self.circuit.board

    @property
    def cable(self) -> Cable:
        """The cable of the circuit."""
        return self.circuit.cable

    @property
    def volts(self) -> PointVolts:
        """Volts at the point."""
        return self.circuit.volts

    @property
    def earth(self) -> PointEarth:
        """What earths the point."""
        return self.circuit.earth


def work_of(basis: Basis) -> Work[Design]:
    """Return the description of the work on a basis."""

    def work(run: Run, choice: Choice) -> Design:
        bonds, side = before_circuit(run, basis, choice)
        circuit = circuit_side(run, basis, choice, side)
        use = use_of(run, basis, choice)
        costs = price_side(run, basis, choice, circuit)
        gates = gates_of(run, basis, choice.tap)
        awaits = run.aside(work_of_others, choice.remedies)
        weighed = weigh(run, basis, choice, side, use, costs, awaits)
        decision = run.aside(held_decision, side.decision, awaits)
        return Design(bonds, side, circuit, use, costs, gates, weighed, decision)

    return work


def before_circuit(run: Run, basis: Basis, choice: Choice) -> tuple[Bonding, SupplySide]:
    """Describe what comes before the point's own circuit: bonds, setting, supply, network."""
    bonds = run(bonding, basis)
    run(smart_charging, basis, choice.point)
    run(point_setting, basis, choice.point, choice.setting_a)
    side = supply_side(run, basis, choice.point, choice.setting_a, choice.house_limit, choice.hours)
    return bonds, side


def use_of(run: Run, basis: Basis, choice: Choice) -> Use:
    """Describe what the point does for the cars: their need, their hours and their cost."""
    need = run.aside(yearly_need, basis)
    charging = run.aside(charging_time, basis, need, choice.setting_a, choice.point.phases)
    nights = run.aside(cheap_nights, basis, charging.hours_a_day)
    if choice.hours == NIGHT:
        run(night_alone, nights)
    cost = run.aside(running_cost, need.kwh_a_year)
    return Use(need, charging, nights, cost)


def weigh(
    run: Run,
    basis: Basis,
    choice: Choice,
    side: SupplySide,
    use: Use,
    costs: PriceSide,
    awaits: Awaits,
) -> Criteria:
    """Describe what an option is compared on, each part by itself."""
    usable_kw = run.aside(usable_power, use.charging.cars, use.charging.offered_kw)
    return Criteria(
        wait=run.aside(wait, side.outcome, side.origin.strained, awaits),
        uncovered=run.aside(uncovered, use.nights.covers),
        short_kw=run.aside(shortfall, usable_kw),
        work_min=costs.labour.usual_min,
        slowness_kw=run.aside(slowness, usable_kw),
        seen=run.aside(seen, choice.place),
        cramped=room_left(run, basis, choice, side),
        order=run.aside(firm_order, order_of(basis, choice), choice.point.lead),
        price_p=costs.price.total.usual_p,
    )


def room_left(run: Run, basis: Basis, choice: Choice, side: SupplySide) -> float:
    """Describe the room that is left for what comes later."""
    carried = side.carried
    if choice.house_limit:
        return run.aside(cramped_under_limit, basis, carried.car_a, choice.point.least_a)
    return run.aside(cramped, basis, carried.carried_a, carried.rating_a)
