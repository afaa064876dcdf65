"""An old charge point of the house: it goes, or it stays and shares, but never by silence."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check, Finding, holds, requires
from ampwright.foundations.remedies import Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.standards.charging.pilot import pilot_within_setting
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said

from .loads import loads_of

PRACTICE: Final = Place(
    "usual practice for charge points", at="a second point", trust=Trust.COMMON_PRACTICE
)
POINT: Final = "charge point"


@requires("what becomes of an old point is settled", place=PRACTICE)
def old_point_settled(point: str, goes: bool) -> Finding:
    """A point that goes is taken out with this work; one that stays counts in the demand.

    By what the customer said.

    Examples
    --------
    >>> old_point_settled("old", True).why
    'old is to go, and is still there'
    """
    return holds(not goes, f"{point} is to go, and is still there" if goes else "")


def old_points(home: Home, basis: Basis) -> Made[None]:
    """Return what becomes of each charge point that the house has already.

    One that stays counts in full in the demand, unless the two share a limit of their own: what
    its pilot offers, where a tester read it, is held to what it counts for.
    """
    checks = []
    for id_ in loads_of(home, POINT):
        said = if_said(lambda id_=id_: home.loads[id_].goes, None)  # type: ignore[misc]
        check = old_point_settled(id_, bool(said)).mended_by(_taken_out(basis, id_))
        told = f"{id_} counts in full in the demand"
        if said is None:
            told = f"ask whether {id_} stays: {told} until it is said to go"
        checks.append(check.with_caution(told))
        if not said:
            checks.extend(_pilot(home, basis, id_))
    return Made(None, tuple(checks))


def _pilot(home: Home, basis: Basis, id_: str) -> Iterator[Check]:
    """Yield whether a point that is there offers no more than it counts for, if anybody read it."""
    pilot_a = if_said(lambda: home.loads[id_].pilot_a, None)
    if pilot_a is None:
        return
    counted_a = home.loads[id_].amps_a
    yield pilot_within_setting(pilot_a, counted_a).mended_by(
        Remedy(
            slug=f"set-{id_}",
            does=f"Set {id_} to {counted_a:g} A, lock the setting and read its pilot again",
            changes=((f"loads.{id_}.pilot_a", float(counted_a)),),
            minutes=basis.task("turn-up").minutes,
        )
    )


def _taken_out(basis: Basis, id_: str) -> Remedy:
    """Return the work of taking an old point out."""
    return Remedy(
        slug=f"take-out-{id_}",
        does=f"Take out {id_}, make its circuit safe at the board, and tell the operator that it "
        "is gone",
        changes=((f"loads.{id_}.present", False),),
        minutes=basis.task("land-on-way").minutes,
    )
