"""What goes with the options: two visits, settings where the answer turns, what to have in hand."""

from __future__ import annotations

from typing import Any, cast

from ampwright.options.breaks import Break, Comes, breaks
from ampwright.options.choices import Choice
from ampwright.options.gates import closed
from ampwright.options.search import Option
from ampwright.options.supply_side import Decision

from .deciding import either_of
from .seeing import Seen
from .shapes import InHand, Sign, Turn, TwoVisits
from .words import amount

TOO_MUCH = "more than the supply carries"


def two_visits(seen: Seen) -> TwoVisits | None:
    """Return the best way to fit now and turn up later, if there is any."""
    if not seen.outlook.staged:
        return None
    best = seen.outlook.staged[0]
    now, later = best.now.choice, best.later.choice
    limit = " and the house limit" if later.house_limit and not now.house_limit else ""
    return TwoVisits(
        best.id,
        best.now.id,
        best.later.id,
        f"Fit {seen.name(now)}, set to {amount(now.setting_a, 'A')}, and tell the operator; ask "
        f"for {amount(later.setting_a, 'A')}{limit} meanwhile and turn it up when they agree.",
    )


def turns(seen: Seen, choice: Choice) -> tuple[Turn, ...]:
    """Return where along the settings of the leading point decision or fit changes."""
    found = breaks(seen.outlook.homes, seen.basis, choice.point, choice.house_limit)
    return tuple(map(turn, found))


def turn(found: Break) -> Turn:
    """Return one such place in plain pieces."""
    below, above = said(found.below), said(found.above)
    up_to, beyond = amount(found.up_to_a, "A"), amount(found.from_a, "A")
    return Turn(
        float(found.up_to_a),
        signs(found.below),
        float(found.from_a),
        signs(found.above),
        f"up to {up_to}: {below}; from {beyond}: {above}",
    )


def said(comes: Comes) -> str:
    """Write the decisions that a setting leads to."""
    return either_of([each for each in Decision if each in comes]) or TOO_MUCH


def signs(comes: Comes) -> tuple[Sign, ...]:
    """Return the decisions that a setting leads to, as files have them."""
    return tuple(cast(Sign, each.file_value) for each in Decision if each in comes)


def in_hand(option: Option[Any]) -> tuple[InHand, ...]:
    """Return what must be in hand before a day is booked."""
    return tuple(
        InHand(gate.slug, gate.says, gate.from_whom, str(gate.place), certain)
        for gate, certain in closed(option.design.gates)
    )
