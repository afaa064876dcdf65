"""The usual cautions of the work; those that a design calls for are added to them."""

from __future__ import annotations

from collections.abc import Collection
from typing import Final

from .words import capital

ALWAYS: Final = (
    "This is a calculation, not a permission to start: a competent, licensed person decides, "
    "against the current standard, the maker's instructions and the operator's own rules.",
    "Isolate, lock off and prove dead before touching anything. Part of a board stays live with "
    "its main switch off: the top terminals.",
    "Do not break the seals and do not pull the main fuse. If there is no switch after the meter, "
    "stop and book one.",
)
DIGGING: Final = "Look for buried cables and pipes before digging."
DRILLING: Final = (
    "Look for cables and pipes before drilling, and for asbestos in a wall or ceiling of unknown "
    "make."
)
HEIGHT: Final = "Work at height needs the right means of access, and a second person at the foot."
BY_WAY_OF_RUNNING: Final = {
    "buried": DIGGING, "duct": DIGGING, "through wall": DRILLING, "stud wall": DRILLING,
    "loft void": HEIGHT,
}  # fmt: skip


def cautions_for(ways_of_running: Collection[str], own: Collection[str]) -> tuple[str, ...]:
    """Return the cautions of a design: the usual, those of how its cable runs, and its own.

    Examples
    --------
    >>> cautions_for(("buried", "duct"), ())[-1]
    'Look for buried cables and pipes before digging.'
    """
    of_way = (BY_WAY_OF_RUNNING[how] for how in ways_of_running if how in BY_WAY_OF_RUNNING)
    return tuple(dict.fromkeys((*ALWAYS, *of_way, *map(capital, own))))
