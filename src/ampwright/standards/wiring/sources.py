"""A board that is fed from more than one side."""

from __future__ import annotations

from ampwright.foundations.checks import Finding, at_most, holds, requires
from ampwright.foundations.quantity import Amperes
from ampwright.foundations.working import computes

from ..places import wiring

BOARD = wiring("551.7.2", "a trade page")


@computes("Iall", "A", formula="fuse + sum(sources)", place=BOARD)
def current_from_all_sides(fuse: Amperes, sources: tuple[Amperes, ...]) -> Amperes:
    """Most that can flow in a board's bars: from the network and every source at once.

    The device in front of the board and the rated current of each source that feeds it, on
    one phase.

    Examples
    --------
    >>> current_from_all_sides(Amperes(80.0), (Amperes(16.0), Amperes(16.0)))
    112.0
    """
    return Amperes(fuse + sum(sources))


@requires("fuse + sources ≤ the board's rating", unit="A", place=BOARD)
def board_carries_sources(fuse: Amperes, sources: tuple[Amperes, ...], rated: Amperes) -> Finding:
    """The board bears the network's current and the sources' together.

    Nothing but the device in front and the sources limits what its bars carry.

    Examples
    --------
    >>> check = board_carries_sources(Amperes(80.0), (Amperes(16.0),) * 2, Amperes(100.0))
    >>> check.outcome.value, check.actual
    ('fail', 112.0)
    """
    return at_most(current_from_all_sides(fuse, sources), rated)


@requires("devices suit current both ways", place=wiring("530.3.201"))
def device_suits_both_ways(both_ways: bool) -> Finding:
    """A device that a source can feed from its load side is made for it.

    For circuits of sun, battery and a point that gives back.

    Examples
    --------
    >>> device_suits_both_ways(False).outcome.value
    'fail'
    """
    return holds(both_ways, "" if both_ways else "made for current one way, or not known")
