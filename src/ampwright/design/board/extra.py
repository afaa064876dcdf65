"""A small extra board where an existing one has no room: how large, and where it goes."""

from __future__ import annotations

from collections.abc import Iterator

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import SmallBoard
from ampwright.foundations.answers import Value
from ampwright.foundations.plural import count
from ampwright.foundations.quantity import Amperes, Count
from ampwright.foundations.remedies import Part, Remedy
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said

from ..circuit.feed import near


def small_board(home: Home, basis: Basis, tap: str, needed: Count) -> SmallBoard | None:
    """Return the smallest board of the catalogue with the lines of another and room enough.

    Its switch carries whatever the device in front lets through: that at the head of the feed
    where there is one, else the service fuse.
    """
    lines, least_a = home.boards[tap].phases, front_a(home, basis, tap)
    fitting = (
        each
        for each in basis.catalogue.boards
        if each.phases == lines and each.positions >= needed and each.switch_a >= least_a
    )
    return min(fitting, key=lambda each: (each.positions, each.switch_a), default=None)


def front_a(home: Home, basis: Basis, tap: str) -> Amperes:
    """Return the rating of what stands in front of a board."""
    fuse_a = home.supply.main_fuse_a
    if near(home, basis, tap):
        return fuse_a
    return if_said(lambda: home.boards[tap].feed_device_a, Amperes(0.0)) or fuse_a


def size_words(home: Home, basis: Basis, tap: str, needed: Count) -> str:
    """Say how large a small board instead must be; at the meter end it is a choice of its own."""
    small = small_board(home, basis, tap, needed)
    if small is None:
        return "no small board of the catalogue would do instead"
    where = "at the meter end" if near(home, basis, tap) else f"beside {tap}"
    return (
        f"a small board {where} instead needs {count(needed, 'place')}, "
        f"{count(small.phases, 'line')} and a switch of "
        f"{front_a(home, basis, tap):g} A at the least: one of {small.positions} places and "
        f"{small.switch_a:g} A would do"
    )


def extra_board(home: Home, basis: Basis, tap: str, needed: Count) -> Iterator[Remedy]:
    """Yield the work of a small board beside a full one, on the same feed.

    Only for a board away from the meter: at the meter end a small board is a tap of its own.
    """
    small = small_board(home, basis, tap, needed)
    if small is None or near(home, basis, tap):
        return
    yield Remedy(
        slug=f"extra-board-{tap}",
        does=f"Put a small board of {small.positions} places and {small.switch_a:g} A beside "
        f"{tap}, on the same feed through a block, for the point's device",
        changes=tuple(_changes(home, tap, small)),
        parts=(Part(f"small board beside another, {small.phases}-phase", 1.0),),
        minutes=basis.task("own-board").minutes,
    )


def _changes(home: Home, tap: str, small: SmallBoard) -> Iterator[tuple[str, Value]]:
    """Yield the facts of a board and a small one beside it together."""
    key = f"boards.{tap}"
    yield f"{key}.spare_ways", int(small.positions)
    yield f"{key}.spare_behind_rcd", "none"
    yield f"{key}.surge_protection", small.surge_protection
    if small.phases > 1:
        yield f"{key}.whole_ways_spare", 1
    yield from chart_gone(home, tap)


def chart_gone(home: Home, tap: str) -> Iterator[tuple[str, Value]]:
    """Yield that the outlets of a board are no longer those of its chart."""
    for outlet in home.boards[tap].outlets.ids:
        yield f"boards.{tap}.outlets.{outlet}.present", False
