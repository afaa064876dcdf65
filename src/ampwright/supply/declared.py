"""What the network operator is told: the demand as that operator counts it."""

from __future__ import annotations

from dataclasses import dataclass

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.quantity import Amperes
from ampwright.foundations.stages import Made
from ampwright.survey.home import Home

from .headroom import Headroom, added, held, limiter_holds, room, worst


@dataclass(frozen=True, slots=True)
class Declared:
    """What the operator is told, one entry a line.

    ``point_a`` is the point's current as the operator counts it and ``most_a`` the heaviest
    line. ``tells_a`` is what could be added to each line before the operator must be asked; it
    and ``threshold_a`` are ``None`` where the operator states no figure.
    """

    point_a: Amperes
    declared_a: tuple[Amperes, ...]
    most_a: Amperes
    threshold_a: Amperes | None
    tells_a: tuple[Amperes, ...] | None


def declared_demand(
    home: Home,
    basis: Basis,
    now_a: tuple[Amperes, ...],
    carried: Headroom,
    point: ChargePoint,
    setting_a: Amperes,
    counts_limiter: bool,
    counts_setting: bool,
) -> Made[Declared]:
    """Return the demand that counts with the operator, and the room before it must be asked.

    The setting counts only where the operator takes it and it is locked; else the largest size
    of the point does. The house limit counts only where the operator takes it and the point is
    of a kind that holds it. Decides between telling and asking, never whether a point fits.
    """
    takes_setting = counts_setting and point.setting_locked
    point_a = setting_a if takes_setting else basis.cited(point).max_a
    takes_limit = counts_limiter and limiter_holds(basis, point)
    with_a = added(now_a, carried.lines, point_a)
    fixed_a = carried.sharing.beside(now_a)
    declared_a = held(fixed_a, with_a, carried.limit_a if takes_limit else None)
    threshold_a = basis.profile.threshold(int(home.supply.phases))
    tells_a = None if threshold_a is None else tuple(room(threshold_a, each) for each in now_a)
    return Made(Declared(point_a, declared_a, worst(declared_a), threshold_a, tells_a))
