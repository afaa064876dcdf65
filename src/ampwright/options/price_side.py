"""The part of the work that costs: tasks and their time, what is bought, and the price."""

from __future__ import annotations

from dataclasses import dataclass

from ampwright.costing.goods import every_job, priced_goods, priced_hours
from ampwright.costing.labour import Labour, labour
from ampwright.costing.mending import Mending, mending
from ampwright.costing.parts import Parts, parts
from ampwright.costing.price import Price, price
from ampwright.costing.tasks import Tasks, tasks
from ampwright.firm.basis import Basis

from .choices import Choice
from .circuit_side import CircuitSide
from .runs import Run


@dataclass(frozen=True, slots=True)
class PriceSide:
    """What an option takes and what it costs."""

    labour: Labour
    parts: Parts
    price: Price


def price_side(run: Run, basis: Basis, choice: Choice, circuit: CircuitSide) -> PriceSide:
    """Describe the time, the goods and the price of an option; nothing is judged by them."""
    todo, time = time_of(run, basis, choice, circuit)
    bought = parts_of(run, basis, choice, circuit, todo)
    goods = run.aside(priced_goods, basis, bought)
    hours = run.aside(priced_hours, basis, time)
    rest = run.aside(every_job, basis)
    return PriceSide(time, bought, run.aside(price, basis, goods, hours, rest, choice.remedies))


def time_of(run: Run, basis: Basis, choice: Choice, circuit: CircuitSide) -> tuple[Tasks, Labour]:
    """Describe the tasks of an option and how long they take."""
    todo = run.aside(
        tasks,
        circuit.route.legs,
        choice.tap,
        choice.place,
        choice.point.phases,
        choice.family,
        choice.earthing,
        choice.house_limit,
        circuit.device.rcd_beside,
        circuit.device.isolator_by_point,
    )
    return todo, run.aside(labour, basis, todo, choice.remedies)


def parts_of(run: Run, basis: Basis, choice: Choice, circuit: CircuitSide, todo: Tasks) -> Parts:
    """Describe what is bought for an option."""
    return run.aside(
        parts,
        basis,
        circuit.route.legs,
        todo,
        choice.point.id,
        choice.point.phases,
        circuit.device.device,
        circuit.device.rcd,
        circuit.board.board,
        circuit.board.own,
        circuit.cable.cable,
        choice.family,
        circuit.cable.overall_mm,
        choice.house_limit,
        mends.pieces,
    )
