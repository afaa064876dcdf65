"""Facts that only make an answer more exact: without them it stands as it is."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from ampwright.foundations.answers import Unanswered

T = TypeVar("T")


def if_said(read: Callable[[], T], otherwise: T) -> T:
    """Return what a fact says, or something else while nobody has answered it.

    Only for facts whose absence must not leave a result undetermined: one that chooses between
    methods of which one is usual, or that only adds to what is said. An open fact still forks.

    Examples
    --------
    >>> def blank() -> str:
    ...     raise Unanswered("supply.operator")
    >>> if_said(blank, "nobody has said"), if_said(lambda: "demo", "nobody has said")
    ('nobody has said', 'demo')
    """
    try:
        return read()
    except Unanswered:
        return otherwise
