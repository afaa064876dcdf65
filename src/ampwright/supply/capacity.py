"""What the supply can carry on each line, and whether its own parts carry one another."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check, Finding, Outcome, holds, requires
from ampwright.foundations.errors import OutOfTableError
from ampwright.foundations.quantity import Amperes
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
from ampwright.tables.earthing import tails_capacity

METHOD: Final = Place("Ampwright", at="method", trust=Trust.DERIVED)
MAIN_BOARD: Final = "main"
TAILS_BY_PHASES: Final = {1: 2.0, 3: 4.0}
"""How many tails a supply has."""
AFTER_METER: Final = "the supplier or the meter operator: there is no isolator after the meter"


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
    switches = _switches(home)
    switch_a = switches[0] if len(switches) == 1 else weakest(switches)
    try:
        tails_a = tails_capacity(basis.book, home.supply.tails_mm2)
    except OutOfTableError as outside:
        unknown = _mended(tails_judged(str(outside)), home, basis)
        return Made(Capacity(Amperes(0.0)), (unknown,))
    checks = (
        _mended(tails_carry_fuse(fuse_a, tails_a), home, basis),
        switch_carries_fuse(fuse_a, switch_a),
    )
    return Made(Capacity(supply_rating(fuse_a, switch_a, tails_a)), checks)


def _switches(home: Home) -> tuple[Amperes, ...]:
    """Return the rating of each switch between the service fuse and the house."""
    main_a = home.boards[MAIN_BOARD].main_switch_a
    if home.supply.isolator == "none":
        return (main_a,)
    return (main_a, home.supply.isolator_a)


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
            by=AFTER_METER if home.supply.isolator == "none" else "",
        )
    )
