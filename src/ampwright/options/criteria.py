"""What options are compared on, and how an option stands in each of some homes."""

from __future__ import annotations

from typing import Any, Final, NamedTuple

from numpy.typing import NDArray

from .cells import Numbers

NONE: Final = -1
"""The number of no option."""

Order = tuple[int, ...]
"""Places among the criteria, the most telling first."""


class Criteria(NamedTuple):
    """What options are compared on, in this order; less is better in every part.

    ``wait``: nought when the network operator is told afterwards, one when it must be asked
    first, two when the line must be strengthened as well, three when work must stop.
    ``uncovered``: one where the cheap hours do not hold the cars' need with the firm's margin.
    ``short_kw``: what is lacking of the power asked for, as far as the cars can use it.
    ``price_p``: the usual price with tax, in pence. ``work_min``: the usual minutes.
    ``slowness_kw``: the usable power with its sign turned. ``seen``: one where the point is seen
    from the street. ``cramped``: of two further loads, how many find no room. ``order``: the
    firm's own order among equals.

    While exploring each part is a spread of its own; one that cannot be worked out yet counts
    alike for every option.
    """

    wait: float
    uncovered: float
    short_kw: float
    price_p: float
    work_min: float
    slowness_kw: float
    seen: float
    cramped: float
    order: float


class Standing(NamedTuple):
    """An option's soundness and criteria in each cell; a single one where all are alike."""

    severity: NDArray[Any]
    criteria: tuple[Numbers, ...]


def at(array: NDArray[Any], cells: Any) -> NDArray[Any]:
    """Return something in some of the cells; the single one where all are alike."""
    return array[cells] if array.ndim else array
