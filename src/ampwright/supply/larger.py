"""The larger service fuse that the network is asked for where the house alone beats its own."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.outside import NETWORK
from ampwright.foundations.quantity import Amperes
from ampwright.foundations.remedies import Remedy
from ampwright.survey.home import Home
from ampwright.tables.devices import standard_ratings

SERVICE: Final = "service fuse"
FUSE: Final = "fuse-"
"""How the work of a larger fuse is named, before its size."""


def beaten(room_a: tuple[Amperes, ...], lines: tuple[bool, ...], least_a: Amperes) -> bool:
    """Say whether a supply has no room for even the least current of a point, at any setting.

    ``room_a`` is what each line could still carry and ``lines`` says on which the point charges.

    Examples
    --------
    >>> beaten((Amperes(5.0),), (True,), Amperes(6.0)), beaten((Amperes(6.0),), (True,), Amperes(6))
    (True, False)
    """
    return any(left < (least_a if on else 0.0) for left, on in zip(room_a, lines, strict=True))


def larger_fuse(home: Home, basis: Basis, holds: Callable[[Amperes], bool]) -> tuple[Remedy, ...]:
    """Return the least larger service fuse with which all holds, put in by the network; else none.

    Tails and main switch must then carry it too; whether the service behind it can, only the
    network can say.
    """
    fuse_a = home.supply.main_fuse_a
    sizes = (size for size in standard_ratings(basis.book, SERVICE) if size > fuse_a)
    size_a = next((size for size in sizes if holds(size)), None)
    if size_a is None:
        return ()
    return (
        Remedy(
            slug=f"{FUSE}{size_a:g}",
            does=f"Have the network fit a {size_a:g} A service fuse in the place of {fuse_a:g} A "
            "before anything is connected",
            changes=(("supply.main_fuse_a", float(size_a)),),
            by=NETWORK,
        ),
    )
