"""The part of the work that costs: tasks and their time, what is bought, and the price."""

from __future__ import annotations

from dataclasses import dataclass

from ampwright.costing.goods import fitted_goods, kit_goods, run_goods
from ampwright.costing.hours import every_job, priced_hours
from ampwright.costing.labour import Labour, labour
from ampwright.costing.mending import Mending, mending
from ampwright.costing.price import Price, price
from ampwright.costing.tasks import Tasks, tasks
from ampwright.design.route import LegRun
from ampwright.firm.basis import Basis

from .choices import Choice
from .circuit_side import CircuitSide
from .runs import Run


@dataclass(frozen=True, slots=True)
class PriceSide:
    """What an option takes and what it costs."""

    labour: Labour
    price: Price


@dataclass(frozen=True, slots=True)
class ToDo:
    """The work of an option: its tasks, and what its work items take."""

    tasks: Tasks
    mending: Mending


def price_side(run: Run, basis: Basis, choice: Choice, circuit: CircuitSide) -> PriceSide:
    """Describe the time, the goods and the price of an option; nothing is judged by them."""
    todo, time = time_of(run, basis, choice, circuit)
    phases = choice.point.phases
    device, board, cable = circuit.device, circuit.board, circuit.cable
    whole = choice.point.id, device.device, device.rcd, board.board, board.own
    way = circuit.route.new_legs, cable.cable, choice.family, cable.overall_mm
    return PriceSide(
        time,
        run.aside(
            price,
            basis,
            run.aside(fitted_goods, basis, *whole),
            run.aside(run_goods, basis, *way, phases, choice.house_limit),
            run.aside(kit_goods, basis, todo.tasks, phases),
            todo.mending.goods,
            run.aside(priced_hours, basis, time),
            run.aside(every_job, basis),
            todo.mending.charges,
            todo.mending.unsaid,
        ),
    )


def time_of(run: Run, basis: Basis, choice: Choice, circuit: CircuitSide) -> tuple[ToDo, Labour]:
    """Describe the work of an option and how long it takes."""
    device = circuit.device
    legs, beside, by_point = circuit.route.new_legs, device.rcd_beside, device.isolator_by_point
    return time_along(run, basis, choice, legs, beside, by_point)


def time_along(
    run: Run,
    basis: Basis,
    choice: Choice,
    legs: tuple[LegRun, ...],
    rcd_beside: bool,
    isolator_by_point: bool,
) -> tuple[ToDo, Labour]:
    """Describe the work along some legs and how long it takes."""
    work = run.aside(
        tasks,
        basis,
        legs,
        choice.tap,
        choice.place,
        choice.point.phases,
        choice.family,
        choice.earthing,
        choice.house_limit,
        rcd_beside,
        isolator_by_point,
    )
    mends = run.aside(mending, basis, choice.remedies)
    return ToDo(work, mends), run.aside(labour, basis, work, mends.times)
