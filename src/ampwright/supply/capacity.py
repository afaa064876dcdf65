"""What the supply can carry on each line, and whether its own parts carry one another."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.outside import SUPPLIER
from ampwright.firm.times import task_minutes
from ampwright.foundations.checks import Check, Finding, Outcome, holds, requires
from ampwright.foundations.errors import OutOfTableError
from ampwright.foundations.quantity import Amperes, Count
from ampwright.foundations.remedies import Part, Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.wiring.adequacy import (
    TAILS,
    supply_rating,
    switch_carries_fuse,
    tails_carry_fuse,
)
from ampwright.survey.home import Home
from ampwright.tables.devices import standard_ratings
from ampwright.tables.earthing import tails_capacity

METHOD: Final = Place("Ampwright", at="method", trust=Trust.DERIVED)
MAIN_BOARD: Final = "main"
MAIN_SWITCH: Final = f"boards.{MAIN_BOARD}.main_switch_a"
ISOLATOR: Final = "supply.isolator_a"
TAILS_BY_PHASES: Final = {1: 2.0, 3: 4.0}
"""How many tails a supply has."""
AFTER_METER: Final = f"{SUPPLIER}: there is no isolator after the meter"
BEFORE_ISOLATOR: Final = f"{SUPPLIER}: the tails to the isolator must be dead"


@computes("Iswitch", "A", formula="min(I)", place=METHOD)
def weakest(I: tuple[Amperes, ...]) -> Amperes:  # noqa: E741, N803 - as in the household table
    """Return the rating of the weakest of the switches that all of it passes."""
    return Amperes(min(I))


@dataclass(frozen=True, slots=True)
class Capacity:
    """What fuse, switches and tails allow on each line of a supply."""

    rating_a: Amperes


@requires("a table says what the tails carry", place=TAILS)
def tails_judged(found: str) -> Finding:
    """Tails thinner than any that operators still pass are replaced before anything is added.

    By their size alone.

    Examples
    --------
    >>> tails_judged("no row for 6 mm²").why
    'new tails first: no row for 6 mm²'
    """
    return holds(False, f"new tails first: {found}")


def supply_capacity(home: Home, basis: Basis) -> Made[Capacity]:
    """Return the weakest of service fuse, switches and tails, and whether each fits.

    Tails of a size that no table holds, as very old ones are, go first. The switches are that
    of the main board and the isolator after the meter, if there is one.
    Tails clipped or in free air. Says nothing of the network behind the fuse.
    """
    fuse_a = home.supply.main_fuse_a
    switches = tuple(rating_a for _, rating_a in _by_fact(home))
    switch_a = switches[0] if len(switches) == 1 else weakest(switches)
    try:
        tails_a = tails_capacity(basis.book, home.supply.tails_mm2)
    except OutOfTableError as outside:
        unknown = _mended(tails_judged(str(outside)), home, basis)
        return Made(Capacity(Amperes(0.0)), (unknown,))
    checks = (
        _mended(tails_carry_fuse(fuse_a, tails_a), home, basis),
        switch_carries_fuse(fuse_a, switch_a).mended_by(*_larger_switches(home, basis)),
    )
    return Made(Capacity(supply_rating(fuse_a, switch_a, tails_a)), checks)


def _larger_switches(home: Home, basis: Basis) -> Iterator[Remedy]:
    """Yield the one work that puts in a switch as large as the fuse wherever one is smaller.

    Not in a board for which no parts are sold: only a new board mends that.
    """
    fuse_a = home.supply.main_fuse_a
    small = [key for key, rating_a in _by_fact(home) if rating_a < fuse_a]
    if not small or (MAIN_SWITCH in small and not home.boards[MAIN_BOARD].parts_sold):
        return
    sold = (each for each in standard_ratings(basis.book, "switch") if each >= fuse_a)
    size_a = next(sold, None)
    if size_a is None:
        return
    yield Remedy(
        slug="larger-switch",
        does=f"Put in {_called(small)} of {size_a:g} A, as large as the service fuse at least",
        changes=tuple((key, float(size_a)) for key in small),
        parts=(Part(f"switch {size_a:g} A, {home.supply.phases}-phase", float(len(small))),),
        minutes=task_minutes(basis.task("switch"), Count(len(small))),
        by=BEFORE_ISOLATOR if ISOLATOR in small else _made_dead_by(home),
    )


def _made_dead_by(home: Home) -> str:
    """Return who else must make the tails dead; nobody where there is an isolator."""
    return AFTER_METER if home.supply.isolator == "none" else ""


def _called(keys: list[str]) -> str:
    """Return what the switches of some facts are called together."""
    names = {MAIN_SWITCH: "a main switch", ISOLATOR: "an isolator after the meter"}
    return " and ".join(names[key] for key in keys)


def _by_fact(home: Home) -> Iterator[tuple[str, Amperes]]:
    """Yield the fact and the rating of each switch between the service fuse and the house."""
    yield MAIN_SWITCH, home.boards[MAIN_BOARD].main_switch_a
    if home.supply.isolator != "none":
        yield ISOLATOR, home.supply.isolator_a


def _mended(check: Check, home: Home, basis: Basis) -> Check:
    """Name the new tails that would mend a fuse too large for those there."""
    if check.outcome is not Outcome.FAIL:
        return check
    size_mm2 = float(basis.rules.least_tails_mm2)
    return check.mended_by(
        Remedy(
            slug="new-tails",
            does=f"Run new {size_mm2:g} mm² meter tails",
            changes=(("supply.tails_mm2", size_mm2),),
            parts=(Part(f"meter tail {size_mm2:g} mm²", TAILS_BY_PHASES[int(home.supply.phases)]),),
            minutes=basis.task("tails").minutes,
            by=_made_dead_by(home),
        )
    )
