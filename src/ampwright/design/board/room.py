"""Whether the tap has room for the point's device, at the meter end or in an existing board."""

from __future__ import annotations

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.stages import Made
from ampwright.survey.home import Home

from ..circuit.device import Protection
from .existing import existing_board
from .own import BoardRoom, own_board


def board_room(
    home: Home, basis: Basis, tap: str, point: ChargePoint, device: Protection
) -> Made[BoardRoom]:
    """Return where the point's device goes, at the tap chosen, and what stands in its way.

    ``tap`` is ``meter``, where the point gets a small board of its own, or the id of a board.
    Moving other circuits to make a way is not tried here.
    """
    if tap == "meter":
        return own_board(home, basis, point.phases, device)
    return existing_board(home, basis, tap, point, device)
