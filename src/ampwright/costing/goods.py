"""The goods of an option as lines of its price: the point, the cable's run, what tasks take.

Each stage is handed few things, so that options which share them share the lines too.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from ampwright.design.route import CLIPPED, LegRun
from ampwright.firm.basis import Basis
from ampwright.foundations.quantity import Metres, Millimetres
from ampwright.foundations.stages import Made
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.capacity import CableFamily
from ampwright.tables.practice import clip_spacing

from .lines import Bundle
from .parts import Piece, bought, clips_along, counted, kit
from .tasks import Tasks

TAILS_M: Final = Metres(1.0)
"""How far from the meter a small board of its own mostly stands: *memory*."""


def fitted_goods(
    _home: Home, basis: Basis, point: str, device: str, rcd: str, board: str, own: bool
) -> Made[Bundle]:
    """Return the lines of what is fitted whole: the point, its devices, a board of its own.

    All are ids of the catalogue, empty where there is none; ``own`` says that the board is the
    point's own.
    """
    one = counted(basis, 1.0, "one of it")
    pieces = (
        Piece(point, one, "the point of this option"),
        Piece(device, one, "protects its circuit"),
        Piece(rcd, one, "sees residual current for its circuit"),
        Piece(board if own else "", one, "the point's own board at the meter"),
    )
    return Made(bought(basis, (piece for piece in pieces if piece.good)))


def run_goods(
    _home: Home,
    basis: Basis,
    legs: tuple[LegRun, ...],
    cable: str,
    family: CableFamily,
    overall_mm: Millimetres,
    phases: int,
    house_limit: bool,
) -> Made[Bundle]:
    """Return the lines of what runs from tap to point: the cable, its clips, a sensor's cable.

    A limiter's data cable runs along the way of the cable, unless that has data cores; its few
    metres from the meter to a board are within the sensor's lead.
    """
    pieces = list(cable_pieces(basis, legs, cable, family, overall_mm))
    if family is CableFamily.SHEATHED:
        pieces.extend(kit(basis, "sheathed-ends", 1.0, phases, "both ends of the cable"))
    if house_limit and not has_data_cores(basis, cable):
        for leg in legs:
            pieces.extend(kit(basis, "data-run", leg.length_m, phases, "the limiter's sensor"))
    return Made(bought(basis, pieces))


def has_data_cores(basis: Basis, cable: str) -> bool:
    """Say whether a cable of the catalogue has cores for the sensor beside its power cores."""
    return any(each.data_cores for each in basis.catalogue.cables if each.id == cable)


def cable_pieces(
    basis: Basis,
    legs: tuple[LegRun, ...],
    cable: str,
    family: CableFamily,
    overall_mm: Millimetres,
) -> Iterator[Piece]:
    """Yield the cable leg by leg, and the clips of the legs that are clipped."""
    if not cable:
        return
    for leg in legs:
        yield Piece(cable, leg.length_m, "the way from tap to point, leg by leg, with offcuts")
    clipped = tuple(leg for leg in legs if leg.how in CLIPPED)
    if not clipped:
        return
    armoured = family is CableFamily.ARMOURED
    cable_kind, clip = ("armoured", "cleat") if armoured else ("not armoured", "clip")
    spacing_mm, _ = clip_spacing(basis.book, cable_kind, overall_mm)
    for leg in clipped:
        clips = clips_along(leg.length_m, spacing_mm)
        yield Piece(clip, clips, "at the greatest spacing of a level run")


def kit_goods(home: Home, basis: Basis, work: Tasks, phases: int) -> Made[Bundle]:
    """Return the lines of what the tasks take beside cable and devices, by the firm's kits.

    The tails of a board of the point's own are a metre long where nobody has said how long.
    """
    pieces: list[Piece] = []
    for task in work.each:
        pieces.extend(kit(basis, task.task, task.quantity, phases, basis.task(task.task).does))
        if task.task == "own-board":
            tails_m = if_said(lambda: home.supply.own_board_m, TAILS_M)
            pieces.extend(kit(basis, "own-board-tails", tails_m, phases, "tails to that board"))
    return Made(bought(basis, pieces))
