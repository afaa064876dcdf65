"""The device in front of a whole board: how soon it was read to open, and not too soon."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.quantity import Seconds
from ampwright.foundations.source import Place, Trust
from ampwright.standards.wiring.rcd import delayed_rcd_waits_long_enough, rcd_trips_in_time
from ampwright.survey.home_boards import Board
from ampwright.survey.if_said import if_said
from ampwright.tables.devices import rcd_time_ms

from ..residual import in_seconds

METHOD: Final = Place("Ampwright", at="method, times of residual current", trust=Trust.DERIVED)
READ: Final = Place("usual practice", at="a device that a new circuit leans on is tested",
                    trust=Trust.COMMON_PRACTICE)  # fmt: skip
GENERAL, DELAYED = "general", "delayed"
HOLDS: Final = "holds at least at rated residual current"


@tells(READ, caution=True)
def front_tested(board: str, limit: Seconds, not_before: Seconds | None) -> str:
    """Ask for a test of a device in front of the point that nobody has a reading of.

    Its limit goes with its kind; ``not_before`` where it is a delayed one.

    Examples
    --------
    >>> front_tested("main", Seconds(0.3), None).caution[-22:]
    ' it opens within 0.3 s'
    """
    waits = "" if not_before is None else f", and not before {not_before:g} s"
    return (
        f"test the device in front of {board} at its rated residual current: it opens within "
        f"{limit:g} s{waits}"
    )


def front_times(basis: Basis, tap: str, board: Board) -> Iterator[Check | Note]:
    """Yield whether the device in front of a board was read to open in time, and not too soon."""
    book = basis.book
    kind = DELAYED if board.front_delayed else GENERAL
    limit_s = in_seconds(rcd_time_ms(book, kind))
    holds_s = in_seconds(rcd_time_ms(book, kind, HOLDS)) if board.front_delayed else None
    read_s = if_said(lambda: board.front_trips_in_s, None)
    if read_s is None:
        yield front_tested(tap, limit_s, holds_s)
        return
    yield rcd_trips_in_time(read_s, limit_s)
    if holds_s is not None:
        yield delayed_rcd_waits_long_enough(read_s, holds_s)
