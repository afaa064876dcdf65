"""An existing board as the tap: a way for the device, what stands in front, what the bars bear."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check, Finding, Outcome, holds, requires, verdict
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.quantity import Count, Milliamperes, Share
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made, made_of
from ampwright.standards.places import wiring
from ampwright.standards.wiring.boards import devices_belong, way_free
from ampwright.standards.wiring.charging import (
    isolation_secured,
    surge_leads_short,
    surge_protection_present,
)
from ampwright.standards.wiring.earthing import rod_times_rcd, touch_voltage_limited
from ampwright.standards.wiring.rcd import (
    front_rcd_least,
    front_rcd_waits,
    no_blind_rcd_upstream,
    no_shared_rcd_upstream,
    own_rcd_not_shared,
    type_b_not_behind_lesser,
)
from ampwright.standards.wiring.sources import board_carries_sources
from ampwright.survey.home import Home
from ampwright.survey.home_boards import Board
from ampwright.survey.if_said import if_said
from ampwright.tables.charging import point_distance
from ampwright.tables.devices import point_rcd_limit_ma
from ampwright.tables.earthing import touch_limit_of_rod

from ..circuit.chain import chain_to
from ..earthing.rods import house_electrode_ohm
from ..loads import loads_of
from ..noted import noted
from ..residual import in_amperes
from ..sources import sources_on
from .extra import extra_board
from .freed import free_then, ways_left
from .front import front_times
from .mending import front_rcd, isolator_by_point, new_board, shorter_leads, surge
from .own import BoardRoom
from .ways import WayFound, needed_in, outlets_known, place_free

METHOD: Final = Place("Ampwright", at="method, room in the board", trust=Trust.DERIVED)
CONDITION: Final = Place(
    "usual practice", at="what is seen of an older board", trust=Trust.COMMON_PRACTICE
)
THREE_TIMES: Final = Place("BS 7671", "2018+A2:2022", "536.4.1.4", Trust.MEMORY, doubtful=True)
OLD: Final = frozenset({"rewireable fuses"})
HOUSE: Final = Count(1)
"""A device in front of a whole board has circuits of the house behind it, however many."""
NONE_THERE: Final = (False, Count(0))
NIGHT_LOADS: Final = "storage heating"
GAP: Final = "both are loaded for hours, so leave a gap or take the maker's factor for the heat"
IN_WRITING: Final = "keep the owner's refusal of surge protection in writing"


@dataclass(frozen=True, slots=True)
class OwnDevice:
    """What of the point's own protection bears on the devices in front of it."""

    rcd_type: str
    rcd_ma: Milliamperes
    dc_6ma: bool


@tells(CONDITION, caution=True)
def lock_to_try(board: str) -> str:
    """Have a lock tried at a board where nobody has, before somebody works on the point.

    Examples
    --------
    >>> lock_to_try("main").caution
    'try whether a device of main, or its lid, takes a lock: else an isolator by the point does'
    """
    return (
        f"try whether a device of {board}, or its lid, takes a lock: else an isolator by the point "
        "does"
    )


@requires("the board takes modern devices", place=METHOD)
def board_modern(protection: str, case: str) -> Finding:
    """A board of rewireable fuses, or one on wood, takes no device that sees residual current.

    By what is in it; its condition is for whoever opens it.

    Examples
    --------
    >>> board_modern("rewireable fuses", "metal").why
    'it is a board of rewireable fuses'
    """
    if protection in OLD:
        return holds(False, f"it is a board of {protection}")
    return holds(case != "wood", "it stands on wood" if case == "wood" else "")


@tells(CONDITION, caution=True)
def case_told(board: str) -> str:
    """Tell of a board of plastic that was there before: whoever owns it hears that it may stay.

    Only new boards in homes must keep fire in.

    Examples
    --------
    >>> case_told("main").caution
    'main has a case of plastic: it may stay, and the customer is told'
    """
    return f"{board} has a case of plastic: it may stay, and the customer is told"


@requires("the board is live at all hours", place=METHOD)
def board_live(night_only: bool) -> Finding:
    """A point hangs on no board that a time switch makes dead.

    Boards of night heaters often have a meter, or half of one, of their own.

    Examples
    --------
    >>> board_live(True).why
    'it is live in the cheap hours only'
    """
    return holds(not night_only, "it is live in the cheap hours only" if night_only else "")


@requires("surge protection declined in writing, as an owner may", place=wiring("443.4.1"))
def surge_declined(overhead: bool) -> Finding:
    """The owner of a home may go without surge protection where the loss would be bearable.

    Not where wires through the air feed the house: there the firm asks for it.

    Examples
    --------
    >>> surge_declined(True).why
    'wires through the air bring surges in: declined or not, it is fitted'
    """
    return holds(not overhead, "wires through the air bring surges in: declined or not, it is "
                 "fitted" if overhead else "the owner goes without")  # fmt: skip


def existing_board(
    home: Home,
    basis: Basis,
    tap: str,
    phases: int,
    dc_6ma: bool,
    positions: Count,
    rcd_type: str,
    rcd_ma: Milliamperes,
    way: WayFound,
) -> Made[BoardRoom]:
    """Return the way in an existing board and whether the point's circuit may begin there.

    ``way`` is the place found for the device by the board's chart. What feeds the board passes
    through its front device; a spare way beside others behind one device shares it. A surge device
    is taken to find its room. A board that must go anyway is mended as a whole, by a new one.
    """
    board = home.boards[tap]
    needed = needed_in(board, phases, positions)
    own = OwnDevice(rcd_type, rcd_ma, dc_6ma)
    unfit = (
        board_modern(board.protection, board.case),
        devices_belong(board.parts_sold),
        *_sources(home, tap, board),
    )
    room = (
        *_live(home, board),
        *_place(home, basis, tap, way, needed),
        *_in_front(home, basis, tap, board, own),
        *_surge(home, basis, tap, board),
        _locked_off(basis, tap, board, phases),
        *_case(tap, board),
    )
    made = made_of(BoardRoom(tap, False, needed, _kind_in_front(home, tap, board)), (*unfit, *room))
    if verdict(unfit) is Outcome.FAIL:
        whole = new_board(home, basis, tap)
        checks = (replace(each, remedies=()).mended_by(whole) for each in made.checks)
        made = made._replace(checks=tuple(checks))
    return made


def _locked_off(basis: Basis, tap: str, board: Board, phases: int) -> Check | Note:
    """Return whether the point can be locked off; where nobody has looked, that it is seen to."""
    fits = if_said(lambda: board.lock_fits, None)
    if fits is None:
        return lock_to_try(tap)
    return isolation_secured(fits).mended_by(isolator_by_point(basis, tap, phases))


def _place(home: Home, basis: Basis, tap: str, way: WayFound, needed: Count) -> Iterator[Check]:
    """Yield whether a board has ways enough, and a place where as many lie side by side.

    Where no move makes one, a small board beside it does.
    """
    left = ways_left(home, tap)
    spare = home.boards[tap].spare_ways
    beside = tuple(extra_board(home, basis, tap, needed))
    yield way_free(free_then(spare, left) if left else spare, needed).mended_by(*beside)
    if way.free is None:
        yield outlets_known(way.why)
    elif way.why:
        mends = (way.remedy,) if way.remedy else beside
        check = place_free(way.free, way.why).mended_by(*mends)
        yield check.with_caution(f"{way.warm}: {GAP}") if way.warm and way.free else check


def _kind_in_front(home: Home, tap: str, board: Board) -> str:
    """Return the type of the residual current device that the spare way hangs on, if any.

    The nearest in front: beside it in the board, before the board, or before one on the way.
    """
    if board.spare_behind_rcd != "none":
        return board.spare_behind_rcd
    fronts = (home.boards[each].front_rcd for each in reversed(chain_to(home, tap)))
    return next((each for each in fronts if each != "none"), "none")


def _live(home: Home, board: Board) -> Iterator[Check]:
    """Yield whether a board is live by day, where there is one for night heaters besides."""
    if len(home.boards) < 2:
        return
    if any(True for _ in loads_of(home, NIGHT_LOADS)):
        yield board_live(board.night_only)


def _in_front(
    home: Home, basis: Basis, tap: str, board: Board, own: OwnDevice
) -> Iterator[Check | Note]:
    """Yield what the devices in front of the spare way must satisfy.

    A device shared with other ways cannot be mended at the board. One in front of the whole
    board, as rod-earthed houses have, or of one on the way to it, may be changed for one that
    sees and waits, unless the house's sockets lean on it for their own protection.
    """
    beside = board.spare_behind_rcd
    shared = Count(1 if beside != "none" else 0)
    yield own_rcd_not_shared(1, shared)
    yield no_blind_rcd_upstream(beside)
    for each in reversed(chain_to(home, tap)):
        yield from _front_of(home, basis, each, own)


def _front_of(home: Home, basis: Basis, tap: str, own: OwnDevice) -> Iterator[Check | Note]:
    """Yield what the device in front of one board on the way must satisfy, if there is one."""
    board = home.boards[tap]
    front = board.front_rcd
    if front == "none":
        yield no_shared_rcd_upstream(front, *NONE_THERE)
        return
    front_ma = board.front_rcd_ma
    guards_sockets = front_ma <= point_rcd_limit_ma(basis.book)
    better = () if guards_sockets else (front_rcd(basis, tap),)
    yield no_blind_rcd_upstream(front).mended_by(*better)
    yield type_b_not_behind_lesser(front, own.rcd_type, own.dc_6ma)
    shared_front = no_shared_rcd_upstream(front, board.front_delayed, HOUSE)
    yield shared_front.mended_by(*better)
    times = noted(basis.book, "times", Share(3.0), "", THREE_TIMES)
    least_ma = front_rcd_least(own.rcd_ma, times)
    yield front_rcd_waits(board.front_delayed, front_ma, least_ma).mended_by(*better)
    for each in front_times(basis, tap, board):
        yield each.mended_by(*better) if isinstance(each, Check) else each
    if home.supply.earthing == "TT":
        touch_v = rod_times_rcd(house_electrode_ohm(home, basis.book), in_amperes(front_ma))
        yield touch_voltage_limited(touch_v, touch_limit_of_rod(basis.book))


def _surge(home: Home, basis: Basis, tap: str, board: Board) -> Iterator[Check]:
    """Yield whether surges are led away, or the owner goes without, as an owner may."""
    check = surge_protection_present(board.surge_protection)
    if check.outcome is Outcome.PASS:
        yield check
        leads_m = if_said(lambda: board.surge_leads_m, None)
        if leads_m is not None:
            most_m = point_distance(basis.book, "surge device leads most")
            yield surge_leads_short(leads_m, most_m).mended_by(shorter_leads(basis, tap))
        return
    if if_said(lambda: home.wishes.declines_surge, False):
        check = surge_declined(home.supply.overhead)
    yield check.with_caution(IN_WRITING).mended_by(surge(basis, tap))


def _case(tap: str, board: Board) -> Iterator[Note]:
    """Yield a word on the case of a board that stays."""
    if board.case == "plastic":
        yield case_told(tap)


def _sources(home: Home, tap: str, board: Board) -> Iterator[Check]:
    """Yield whether the bars bear the fuse and every source on this board, line by line."""
    for here in sources_on(home, tap):
        yield board_carries_sources(home.supply.main_fuse_a, here, board.rated_a)
