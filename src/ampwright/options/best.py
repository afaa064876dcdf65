"""The best option in each home: the soundest, then what tells most, part by part."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from .criteria import NONE, Order, Standing, at

ROOM: Final = 1 << 20
"""So many numbers are compared at once: more would take memory and save no time."""


def best_of(standings: Sequence[Standing], count: int, order: Order) -> NDArray[np.int64]:
    """Return the best option in each of so many cells: the soundest, then part by part.

    Of options that are equal in every part, the first.
    """
    best = np.full(count, NONE, np.int64)
    at_once = max(1, ROOM // max(1, len(standings)))
    for start in range(0, count if standings else 0, at_once):
        here = slice(start, min(start + at_once, count))
        best[here] = _best(standings, here, order)
    return best


def _best(standings: Sequence[Standing], here: slice, order: Order) -> NDArray[np.int64]:
    """Return the best in some of the cells; options that lead nowhere are left out on the way."""
    size = here.stop - here.start
    severity = stacked([at(each.severity, here) for each in standings], size)
    left = np.broadcast_to(
        (severity == severity.min(axis=0)) & (severity < 2), (len(standings), size)
    )
    rows = np.arange(len(standings))
    for part in order:
        alive = left.any(axis=1)
        rows, left = rows[alive], left[alive]
        if not len(rows) or left.sum(axis=0).max() <= 1:
            break
        numbers = stacked([at(standings[row].criteria[part], here) for row in rows.tolist()], size)
        least = np.where(left, numbers, np.inf).min(axis=0)
        left = left & (numbers == least)
    if not len(rows):
        return np.full(size, NONE, np.int64)
    return np.where(left.any(axis=0), rows[left.argmax(axis=0)], NONE)


def stacked(arrays: Sequence[NDArray[Any]], count: int) -> NDArray[Any]:
    """Return arrays below one another, each over so many cells, or over one that stands for all."""
    made = np.empty(
        (len(arrays), count if any(each.ndim for each in arrays) else 1), arrays[0].dtype
    )
    for row, array in zip(made, arrays, strict=True):
        row[:] = array
    return made


def best_variant(standings: Sequence[Standing], count: int, order: Order) -> Standing:
    """Return soundness and criteria of whichever variant is best in each home."""
    if len(standings) == 1:
        return standings[0]
    best = best_of(standings, count, order)
    chosen = np.maximum(best, 0)

    def taken(arrays: Sequence[NDArray[Any]]) -> NDArray[Any]:
        if all(each is arrays[0] for each in arrays):
            return arrays[0]
        each = np.broadcast_to(stacked(arrays, count), (len(arrays), count))
        found: NDArray[Any] = each[chosen, np.arange(count)]
        return found

    severity = taken([each.severity for each in standings])
    parts = zip(*(each.criteria for each in standings), strict=True)
    return Standing(np.where(best == NONE, 2, severity), tuple(taken(part) for part in parts))
