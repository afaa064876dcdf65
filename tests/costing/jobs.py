"""One job, priced stage by stage as an option would be."""

from __future__ import annotations

from dataclasses import replace
from typing import Any, NamedTuple

from ampwright.costing.goods import fitted_goods, kit_goods, run_goods
from ampwright.costing.hours import every_job, priced_hours
from ampwright.costing.labour import Labour, labour
from ampwright.costing.mending import mending
from ampwright.costing.price import Price, price
from ampwright.costing.tasks import Tasks, tasks
from ampwright.design.route import route
from ampwright.firm.basis import Basis
from ampwright.foundations.notes import Note
from ampwright.tables.capacity import CableFamily
from tests.design.homes import COTTAGE, SEMI, YARD, basis, changed, leg, plain

FLAT, SHEATHED, ARMOURED = CableFamily.FLAT, CableFamily.SHEATHED, CableFamily.ARMOURED


class Job(NamedTuple):
    """What an option has chosen, as far as its price is concerned."""

    facts: dict[str, Any]
    tap: str
    place: str
    point: str
    device: str
    cable: str
    board: str = ""
    rcd: str = ""
    earthing: str = "pme"
    house_limit: bool = False
    rcd_beside: bool = False
    isolator_by_point: bool = False
    remedies: tuple[Any, ...] = ()


class Priced(NamedTuple):
    """What a job comes to."""

    tasks: Tasks
    labour: Labour
    price: Price
    notes: tuple[Note, ...]

    @property
    def lines(self) -> dict[str, Any]:
        """The lines by their ids; those that stand twice are added under one."""
        found: dict[str, list[Any]] = {}
        for line in self.price.lines:
            found.setdefault(line.id, []).append(line)
        return found


def priced(job: Job, on: Basis | None = None, reader: Any = plain) -> Priced:
    """Run the stages of the price in one home."""
    on = on or basis()
    home = reader(job.facts)
    point, cable = on.catalogue.point(job.point), by_id(on.catalogue.cables, job.cable)
    legs = route(home, basis(), job.tap, job.place).out.legs
    todo = tasks(
        home, on, legs, job.tap, job.place, point.phases, cable.family, job.earthing,
        job.house_limit, job.rcd_beside, job.isolator_by_point,
    ).out  # fmt: skip
    mends = mending(home, on, job.remedies).out
    time = labour(home, on, todo, mends.times).out
    own = bool(job.board)
    whole = fitted_goods(home, on, point.id, job.device, job.rcd, job.board, own).out
    run = run_goods(
        home, on, legs, cable.id, cable.family, on.cited(cable).overall_mm, point.phases,
        job.house_limit,
    ).out  # fmt: skip
    made = price(
        home, on, whole, run, kit_goods(home, on, todo, point.phases).out, mends.goods,
        priced_hours(home, on, time).out, every_job(home, on).out, mends.charges, mends.unsaid,
    )  # fmt: skip
    return Priced(todo, time, made.out, made.notes)


def by_id(rows: Any, id_: str) -> Any:
    """One row of the catalogue."""
    (found,) = [each for each in rows if each.id == id_]
    return found


def with_rates(on: Basis, **changes: Any) -> Basis:
    """A basis whose rates are changed in one respect."""
    return replace(on, rates=replace(on.rates, **changes))


STANDARD = changed(SEMI, property__wall_kind="brick cavity", places__window__on="wall")
"""Seven metres clipped and a cavity wall: a free way, nothing to mend."""
STANDARD_JOB = Job(STANDARD, "main", "window", "window-lead", "rcbo-a-32", "flat-6")
IN_THE_YARD = {
    **{key: value for key, value in YARD.items() if key != "legs"},
    "property": {"wall_kind": "block"},
    "places": {"store": {**YARD["places"]["store"], "on": "outbuilding"}},
    "legs": {
        "inside": leg("meter", "wall", 2.7, "clipped inside"),
        "hole": leg("wall", "store", 0.3, "through wall"),
    },
}
YARD_JOB = Job(
    IN_THE_YARD, "meter", "store", "three-socket", "rcbo-a-3-20", "armoured-5-6",
    board="own-board-3", house_limit=True,
)  # fmt: skip
POST_JOB = Job(
    changed(COTTAGE, property__wall_kind="rubble stone", places__gate__on="post",
            legs__garden__surface="gravel"),
    "meter", "gate", "window-lead", "rcbo-a-32", "armoured-3-6", board="own-board",
    earthing="rod", house_limit=True,
)  # fmt: skip
