"""A second visit: the point is turned up once the network has agreed; what that adds to a price."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.stages import Made
from ampwright.survey.home import Home

from .hours import HOURS, hours_line, rated, travel
from .labour import timed
from .lines import Amount, Bundle, Group, bundle, summed
from .price import Price, add_up, overheads
from .tasks import Task

TURN_UP: Final = Task("turn-up", 1.0, "the network has agreed to more")


@dataclass(frozen=True, slots=True)
class BothVisits:
    """What each of two visits costs the customer, and both; each is billed by itself."""

    first: Price
    second: Price
    total: Amount


def second_visit(_home: Home, basis: Basis) -> Made[Bundle]:
    """Return the lines of going again to turn a point up: time, road and office, no goods."""
    time, card = timed(basis, TURN_UP), basis.rates.card
    return Made(
        bundle(
            (
                hours_line(time, time.does, card.labour_p_per_h),
                *travel(basis),
                rated(Group.OFFICE, "revisit_h", HOURS, card.revisit_h, card.office_p_per_h),
            )
        )
    )


def both_visits(_home: Home, basis: Basis, fitted: Price, again: Bundle) -> Made[BothVisits]:
    """Return the price of two visits: all goods at the first, as the second stage wants them.

    ``fitted`` is the price of the second stage fitted at once. Tax is worked out bill by bill.
    """
    second = add_up(basis, (again, *overheads(basis, (again,))))
    return Made(BothVisits(fitted, second, summed((fitted.total, second.total))))
