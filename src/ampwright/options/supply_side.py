"""The part of the work that the supply and the network decide, before a cable is thought of."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from ampwright.demand.compare import Compared, counted_demand
from ampwright.demand.household import Demand, household_demand
from ampwright.demand.moving import load_moves
from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.quantity import Amperes
from ampwright.foundations.stages import Made
from ampwright.network.connection import Connection, connection
from ampwright.network.generation import Generation, before_work, generation
from ampwright.network.operator import Told, operator_told
from ampwright.standards.network.connection import Step
from ampwright.supply.capacity import Capacity, supply_capacity
from ampwright.supply.headroom import Headroom, headroom
from ampwright.supply.hours import allowed_hours
from ampwright.supply.sharing import shared_limit
from ampwright.supply.voltage import Origin, origin_voltage
from ampwright.survey.home import Home

from .gates import Awaits
from .runs import Run


class Decision(Enum):
    """The decision of a job, in the words used everywhere: in files, the firm's, the customer's."""

    FIT_THEN_TELL = ("tell_after", "Fit, then tell", "You do not have to wait")
    FIT_WITH_LIMIT = (
        "tell_after_with_limit",
        "Fit with a limit, then tell",
        "You do not have to wait; the house shares",
    )
    ASK_FIRST = ("ask_first", "Ask first", "We must ask the network first")
    STOP_UNTIL = ("stop_until", "Stop until …", "Not yet: first …")
    UNDETERMINED = ("undetermined", "Tell or ask?", "One thing decides it: …")

    @property
    def file_value(self) -> str:
        """The word used in files."""
        return self.value[0]

    @property
    def words(self) -> str:
        """The firm's words."""
        return self.value[1]

    @property
    def customer_words(self) -> str:
        """The customer's words."""
        return self.value[2]


@dataclass(frozen=True, slots=True)
class Reading:
    """What the operator takes as the demand; no where its answer can change nothing."""

    counts_limiter: bool
    counts_setting: bool


def operator_reading(home: Home, limited: bool, turned_down: bool) -> Made[Reading]:
    """Return how the operator of a home reads its own rules, as far as this option needs it.

    ``limited``: the house is held to a limit; ``turned_down``: the point is set below its size.
    """
    operator = home.operator
    return Made(
        Reading(
            counts_limiter=limited and operator.counts_limiter,
            counts_setting=turned_down and operator.counts_setting,
        )
    )


def job_decision(_home: Home, outcome: Step, needs_limit: bool) -> Made[Decision]:
    """Return the decision that the network's answer and the limit come to.

    Nothing of the home bears on it beside what the network's answer already rests on.
    """
    if outcome is Step.STOP:
        return Made(Decision.STOP_UNTIL)
    if outcome is Step.TELL_AFTER:
        return Made(Decision.FIT_WITH_LIMIT if needs_limit else Decision.FIT_THEN_TELL)
    return Made(Decision.ASK_FIRST)


def held_decision(_home: Home, decision: Decision, awaits: Awaits) -> Made[Decision]:
    """Return the decision once the work of others counts: stop until they have done it.

    What the network does on being asked makes it ask first, and no less. Nothing of the home
    bears on it beside what both already rest on.
    """
    if awaits is Awaits.OTHERS or decision is Decision.STOP_UNTIL:
        return Made(Decision.STOP_UNTIL)
    return Made(Decision.ASK_FIRST if awaits is Awaits.ANSWER else decision)


@dataclass(frozen=True, slots=True)
class SupplySide:
    """What the supply and the network make of one point at one setting.

    ``demand`` is by the household table, ``counted`` the way that counts beside the others.

    ``outcome`` is the stricter of what demand and sources ask for before the work.
    """

    demand: Demand
    counted: Compared
    capacity: Capacity
    carried: Headroom
    origin: Origin
    connection: Connection
    told: Told
    generation: Generation
    outcome: Step
    decision: Decision


def supply_side(
    run: Run, basis: Basis, point: ChargePoint, setting_a: Amperes, house_limit: bool, hours: str
) -> SupplySide:
    """Describe the work from the demand to the decision."""
    demand = run(household_demand, basis.book)
    counted = run(counted_demand, basis, demand)
    capacity = run(supply_capacity, basis)
    moves = run(load_moves, basis, counted.by)
    now_a, rating_a = counted.now_a, capacity.rating_a
    sharing = run(shared_limit, basis, now_a, rating_a, house_limit, counted.by)
    carried = run(
        headroom, basis, now_a, rating_a, point, setting_a, house_limit, sharing, moves.each
    )
    run(allowed_hours, point, hours)
    origin = run(origin_voltage, basis, setting_a, hours)
    reading = run(operator_reading, house_limit, bool(setting_a < point.max_a))
    network = run(
        connection,
        basis,
        now_a,
        carried,
        point,
        setting_a,
        origin.within_law,
        reading.counts_limiter,
        reading.counts_setting,
        moves.each,
    )
    told = run(operator_told, basis)
    sources = run(generation, basis, point)
    outcome = run(before_work, network.outcome, sources.outcome)
    decision = run(job_decision, outcome, network.needs_limit)
    return SupplySide(
        demand, counted, capacity, carried, origin, network, told, sources, outcome, decision
    )
