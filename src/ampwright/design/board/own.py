"""A small board of the point's own at the meter end."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import SmallBoard
from ampwright.firm.outside import SUPPLIER
from ampwright.foundations.checks import Check, Finding, holds, requires
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.plural import count
from ampwright.foundations.quantity import Count, Metres
from ampwright.foundations.remedies import Part, Remedy
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made, made_of
from ampwright.standards.wiring.adequacy import feed_short_enough, switch_carries_fuse
from ampwright.standards.wiring.boards import case_will_not_burn, way_free
from ampwright.standards.wiring.charging import surge_protection_present
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said

METER: Final = "meter"
METHOD: Final = Place("Ampwright", at="method, room in the board", trust=Trust.DERIVED)
SEALS: Final = Place(
    "network operators' usual rule", at="seals of the cut-out and the meter",
    trust=Trust.COMMON_PRACTICE,
)  # fmt: skip
ON_A_ROD: Final = (
    "no residual current device stands in front of it: tails and switch are kept from its metal "
    "by insulation"
)
CABINET: Final = "outside cabinet"
NOTHING_OF_OURS: Final = (
    "nothing of ours goes into the meter's cabinet: the small board hangs on the wall behind it "
    "or in a weatherproof case of its own, its tails through the wall sheathed and short"
)
ISOLATOR_OF: Final = {1: "two pole", 3: "four pole"}


@dataclass(frozen=True, slots=True)
class BoardRoom:
    """Where the point's device goes.

    ``board`` is the id of an existing board, or of the catalogue's small board if ``own``;
    ``needed`` counts the positions the device takes there, ``front_rcd`` is the type of the
    residual current device its feed passes through, ``none`` if there is none.
    """

    board: str
    own: bool
    needed: Count
    front_rcd: str


@requires("the catalogue has a small board for the meter end", place=METHOD)
def board_offered(found: bool, phases: int) -> Finding:
    """The firm buys a small board with as many lines as the point.

    Its rating and its positions are other checks.

    Examples
    --------
    >>> board_offered(False, 3).why
    'no small board of 3 lines in the catalogue'
    """
    return holds(
        found, "" if found else f"no small board of {count(phases, 'line')} in the catalogue"
    )


@requires("the tails can be made dead without breaking a seal", place=SEALS)
def isolator_there(isolator: str, phases: int) -> Finding:
    """There is a switch after the meter that breaks every live conductor.

    Two poles on one line, four on three; only whoever owns the seals may put one in.

    Examples
    --------
    >>> isolator_there("none", 1).why
    'there is no isolator after the meter'
    """
    if isolator == "none":
        return holds(False, "there is no isolator after the meter")
    if phases > 1 and isolator != "four pole":
        return holds(False, "the isolator breaks two poles of a three-phase supply")
    return holds(True)


@tells(SEALS, caution=True)
def off_the_cabinet() -> str:
    """Say that the meter's own cabinet belongs to others, whatever room it has.

    The small board hangs on a wall of the house, or outdoors in a case made for it.
    """
    return NOTHING_OF_OURS


@tells(SEALS, caution=True)
def room_looked_for() -> str:
    """Ask for a look at the room beside a meter whose place nobody has noted."""
    return "see that there is room for a small board beside the meter"


def own_board(home: Home, basis: Basis, phases: int, positions: Count) -> Made[BoardRoom]:
    """Return the small board beside the meter, on tails within a metre or so of it.

    It stands in front of whatever the house has, so nothing blinds or is shared with its device.
    """
    small = _board(basis, phases)
    if small is None:
        out = BoardRoom("", True, positions, "none")
        return Made(out, (board_offered(False, phases),))
    found = (
        board_offered(True, phases),
        way_free(small.positions, positions),
        switch_carries_fuse(home.supply.main_fuse_a, basis.cited(small).switch_a),
        _isolator(home),
        *_hangs(home, basis),
        surge_protection_present(small.surge_protection),
        _case(home, small),
    )
    return made_of(BoardRoom(small.id, True, positions, "none"), found)


def _board(basis: Basis, phases: int) -> SmallBoard | None:
    """Return the first small board of the catalogue with so many lines."""
    return next((each for each in basis.catalogue.boards if each.phases == phases), None)


def _isolator(home: Home) -> Check:
    """Return whether the tails can be made dead, with who must see to it if not."""
    phases = home.supply.phases
    check = isolator_there(home.supply.isolator, phases)
    poles = ISOLATOR_OF[phases]
    return check.mended_by(
        Remedy(
            slug="isolator",
            does=f"Have a {poles} isolator put in after the meter before the visit",
            changes=(("supply.isolator", poles), ("supply.isolator_a", 100.0)),
            by=SUPPLIER,
        )
    )


def _hangs(home: Home, basis: Basis) -> Iterator[Check | Note]:
    """Yield where the small board may hang: not in the meter's cabinet, not far from it."""
    where = if_said(lambda: home.supply.meter_in, "")
    tails_m = if_said(lambda: home.supply.own_board_m, None)
    if tails_m is not None:
        yield _tails(home, basis, tails_m)
    if where == CABINET:
        yield off_the_cabinet()
    elif not where:
        yield room_looked_for()


def _tails(home: Home, basis: Basis, tails_m: Metres) -> Check:
    """Return whether the tails to the small board may lean on the service fuse."""
    limit_m, fuse_a = basis.rules.own_device_over_m, home.supply.main_fuse_a
    fused = tails_m > limit_m and if_said(lambda: home.supply.own_board_fused, False)
    return feed_short_enough(tails_m, limit_m, fused).mended_by(
        Remedy(
            slug="own-board-fuse",
            does=f"Put a switch-fuse, {fuse_a:g} A at most, at the meter end of the tails to the "
            "small board",
            changes=(("supply.own_board_fused", True),),
            parts=(Part(f"switch-fuse {fuse_a:g} A, {home.supply.phases}-phase", 1.0),),
            minutes=basis.task("own-board").minutes,
        )
    )


def _case(home: Home, small: SmallBoard) -> Check:
    """Return whether the board's case keeps fire in; on a rod its metal wants more care."""
    check = case_will_not_burn(small.case)
    return check.with_caution(ON_A_ROD) if home.supply.earthing == "TT" else check
