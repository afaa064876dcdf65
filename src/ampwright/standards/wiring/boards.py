"""Room in a board and what may stand in it."""

from __future__ import annotations

from ampwright.foundations.checks import Finding, at_least, holds, requires
from ampwright.foundations.source import Place, Trust

from ..places import wiring

ROOM = Place("arithmetic", at="positions free against positions needed", trust=Trust.DERIVED)


@requires("free positions ≥ positions needed", place=ROOM)
def way_free(spare: int, needed: int) -> Finding:
    """The board has the positions that the new device takes up.

    On a three-phase board count whole ways, not loose positions.

    Examples
    --------
    >>> way_free(2, 1).outcome.value
    'pass'
    """
    return at_least(spare, needed)


@requires(
    "devices of the board's own make, or proved with it",
    place=wiring("536.4.203", "the engineers' institution's magazine"),
)
def devices_belong(parts_sold: bool) -> Finding:
    """Devices fitted to a board are those its maker proved in it.

    Other devices make whoever fits them answerable for the proof.

    Examples
    --------
    >>> devices_belong(True).outcome.value
    'pass'
    """
    return holds(parts_sold, "" if parts_sold else "the maker sells no parts for it any more")


@requires("board's case does not burn", place=wiring("421.1.201", "a trade page"))
def case_will_not_burn(case: str) -> Finding:
    """A new board in a home stands in a case of metal, or in one that keeps fire in.

    For boards put in now; one that was there already is for the condition report.

    Examples
    --------
    >>> case_will_not_burn("metal").outcome.value
    'pass'
    """
    return holds(case == "metal", f"its case is {case}")
