"""An existing board as the tap: a way for the device, what stands in front, what the bars bear."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.checks import (
    Check,
    Finding,
    Outcome,
    holds,
    requires,
    undetermined,
    verdict,
)
from ampwright.foundations.quantity import Count, Share
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.standards.wiring.boards import devices_belong, way_free
from ampwright.standards.wiring.charging import surge_protection_present
from ampwright.standards.wiring.rcd import (
    front_rcd_least,
    front_rcd_waits,
    no_blind_rcd_upstream,
    own_rcd_not_shared,
    type_b_not_behind_lesser,
)
from ampwright.standards.wiring.sources import board_carries_sources
from ampwright.survey.home import Home
from ampwright.survey.home_boards import Board
from ampwright.tables.devices import point_rcd_limit_ma

from ..circuit.device import Protection
from ..noted import noted
from ..sources import LINES, sources_on
from .mending import front_rcd, new_board, surge
from .own import BoardRoom

METHOD: Final = Place("Ampwright", at="method, room in the board", trust=Trust.DERIVED)
LAYOUT: Final = Place("layout of three-phase boards", at="a device on three lines fills one way",
                      trust=Trust.COMMON_PRACTICE)  # fmt: skip
THREE_TIMES: Final = Place("BS 7671", "2018+A2:2022", "536.4.1.4", Trust.MEMORY, doubtful=True)
OLD: Final = frozenset({"rewireable fuses"})
ONE_OUTLET: Final = Count(1)
THREE_OUTLETS: Final = Count(3)


@requires("the board takes modern devices", place=METHOD)
def board_modern(protection: str) -> Finding:
    """A board of rewireable fuses has no place for a device that sees residual current.

    By what is in it; its condition is for whoever opens it.

    Examples
    --------
    >>> board_modern("rewireable fuses").why
    'it is a board of rewireable fuses'
    """
    return holds(protection not in OLD, f"it is a board of {protection}" if protection in OLD
                 else "")  # fmt: skip


@requires("a whole three-phase way is free", place=LAYOUT)
def whole_way_free(spare_phases: str) -> Finding:
    """A device on three lines needs the three outlets of one way, one on each line.

    Spare outlets on all lines may lie in different ways: the board's chart tells.

    Examples
    --------
    >>> whole_way_free("L3 L3").why
    'no spare outlet on L1, L2'
    """
    missing = [line for line in LINES if line not in spare_phases]
    if missing:
        return holds(False, f"no spare outlet on {', '.join(missing)}")
    return undetermined("note which outlets are blank: the spare ones may lie in different ways")


def existing_board(
    home: Home, basis: Basis, tap: str, point: ChargePoint, device: Protection
) -> Made[BoardRoom]:
    """Return the way in an existing board and whether the point's circuit may begin there.

    What feeds the board passes through its front device; a spare way beside others behind one
    device shares it. A surge device is taken to find its room. A board that must go anyway is
    mended as a whole, by a new one.
    """
    board = home.boards[tap]
    needed = needed_in(board, point.phases, device)
    unfit = (
        board_modern(board.protection),
        devices_belong(board.parts_sold),
        *_sources(home, tap, board),
    )
    room = (
        way_free(board.spare_ways, needed),
        *((whole_way_free(board.spare_phases),) if point.phases > 1 else ()),
        *_in_front(basis, tap, board, point, device),
        surge_protection_present(board.surge_protection).mended_by(surge(basis, tap)),
    )
    checks = (*unfit, *room)
    if verdict(unfit) is Outcome.FAIL:
        checks = tuple(replace(each, remedies=()) for each in checks)
        checks = tuple(each.mended_by(new_board(home, basis, tap)) for each in checks)
    return Made(BoardRoom(tap, False, needed, _kind_in_front(board)), checks)


def needed_in(board: Board, phases: int, device: Protection) -> Count:
    """Return the positions that a device takes: outlets of the bars where a board has three."""
    if board.phases == 1:
        return device.positions
    return THREE_OUTLETS if phases > 1 else ONE_OUTLET


def _kind_in_front(board: Board) -> str:
    """Return the type of the residual current device that the spare way hangs on, if any."""
    if board.spare_behind_rcd != "none":
        return board.spare_behind_rcd
    return board.front_rcd


def _in_front(
    basis: Basis, tap: str, board: Board, point: ChargePoint, device: Protection
) -> Iterator[Check]:
    """Yield what the devices in front of the spare way must satisfy.

    A device shared with other ways cannot be mended at the board. One in front of the whole
    board, as rod-earthed houses have, may be changed for one that sees and waits, unless the
    house's sockets lean on it for their own protection.
    """
    beside, front = board.spare_behind_rcd, board.front_rcd
    shared = Count(1 if beside != "none" else 0)
    yield own_rcd_not_shared(1, shared)
    yield no_blind_rcd_upstream(beside)
    if front == "none":
        return
    guards_sockets = board.front_rcd_ma <= point_rcd_limit_ma(basis.book)
    better = () if guards_sockets else (front_rcd(basis, tap),)
    yield no_blind_rcd_upstream(front).mended_by(*better)
    yield type_b_not_behind_lesser(front, device.rcd_type, point.dc_6ma)
    times = noted(basis.book, "times", Share(3.0), "", THREE_TIMES)
    least_ma = front_rcd_least(device.rcd_ma, times)
    yield front_rcd_waits(board.front_delayed, board.front_rcd_ma, least_ma).mended_by(*better)


def _sources(home: Home, tap: str, board: Board) -> Iterator[Check]:
    """Yield whether the bars bear the fuse and every source on this board, line by line."""
    for here in sources_on(home, tap):
        yield board_carries_sources(home.supply.main_fuse_a, here, board.rated_a)
