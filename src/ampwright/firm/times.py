"""Minutes of work, from the hours that a task usually takes."""

from __future__ import annotations

from typing import Final

from ampwright.foundations.quantity import Hours, Minutes
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

from .catalogue import Task

METHOD: Final = Place("Ampwright", at="method, time of the work", trust=Trust.DERIVED)


@computes("T", "min", formula="60 * t * n", place=METHOD)
def minutes_of(t: Hours, n: float) -> Minutes:
    """Return the minutes of a task done so many times, or over so many metres.

    Examples
    --------
    >>> minutes_of(Hours(0.5), 3)
    90.0
    """
    return Minutes(60 * t * n)


def task_minutes(task: Task, n: float) -> tuple[Minutes, Minutes, Minutes]:
    """Return the same when all goes well, usually, and when it does not."""
    low, usual, high = (minutes_of(t, n) for t in (task.low_h, task.usual_h, task.high_h))
    return low, usual, high
