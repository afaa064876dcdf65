"""Whether the tap has room for the point's device, at the meter end or in an existing board."""

from __future__ import annotations

from ampwright.firm.basis import Basis
from ampwright.foundations.quantity import Count, Milliamperes
from ampwright.foundations.stages import Made
from ampwright.survey.home import Home

from .existing import existing_board
from .own import METER, BoardRoom, own_board
from .ways import WayFound


def board_room(
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
    """Return where the point's device goes, at the tap chosen, and what stands in its way.

    ``tap`` is ``meter``, where the point gets a small board of its own, or the id of a board;
    ``phases`` and ``dc_6ma`` are those of the point, ``way`` is the place
    found for its device in an existing board, the rest that of the device.
    """
    if tap == METER:
        return own_board(home, basis, phases, positions)
    return existing_board(home, basis, tap, phases, dc_6ma, positions, rcd_type, rcd_ma, way)
