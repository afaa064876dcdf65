"""The stages of this room run one after the other, as an option would run them."""

from __future__ import annotations

from dataclasses import replace

from ampwright.demand.compare import TABLE
from ampwright.design.board.room import board_room
from ampwright.design.board.ways import way_found
from ampwright.design.circuit.cable import cable
from ampwright.design.circuit.device import protective_device
from ampwright.design.circuit.feed import feed, feed_bears
from ampwright.design.circuit.sizes import entry_of, sizes
from ampwright.design.route import route
from ampwright.tables.capacity import CableFamily

from .homes import basis, plain


def circuit(
    facts, tap, place, family=CableFamily.SHEATHED, setting_a=32.0, point="window-lead",
    earthing="pme", with_data=False, demand_a=(50.0,), reader=plain, on=None, **before,
):  # fmt: skip
    """The cable of one choice, with all the checks on the way to it; ``before`` is of its feed."""
    home, on = reader(facts), on or basis()
    point = on.catalogue.point(point)
    way = route(home, basis(), tap, place)
    device = protective_device(home, on, tap, point, earthing, setting_a, way.out.hidden)
    fed = feed(home, on, tap, demand_a, setting_a)
    borne = feed_bears(home, on, tap, demand_a, setting_a)
    bought = sizes(home, on, way.out, family, point.phases, with_data)
    made = cable(home, on, way.out, bought.out, device.out.guard, replace(fed.out, **before),
                 earthing, family, setting_a, point.phases,
                 entry_of(home, on, point).out)  # fmt: skip
    stages = (way, device, fed, borne, made)
    return made.out, device.out, tuple(check for stage in stages for check in stage.checks)


def board_of(home, on, tap, point, device, by=TABLE):
    """Where a device goes."""
    way = way_found(home, on, tap, point.phases, device.positions, by).out
    guard = device.rcd_type, device.rcd_ma
    return board_room(home, on, tap, point.phases, point.dc_6ma, device.positions, *guard, way)


def failed(checks) -> list[str]:
    return [each.requirement.id for each in checks if each.outcome.value == "fail"]


def outcome_of(checks, id_) -> str:
    (found,) = [each for each in checks if each.requirement.id == id_]
    return found.outcome.value
