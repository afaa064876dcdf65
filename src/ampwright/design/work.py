"""How long the work takes that a remedy names, from the firm's usual times."""

from __future__ import annotations

from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.quantity import Hours, Metres, Minutes
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.working import computes

METHOD: Final = Place("Ampwright", at="method, time of a work item", trust=Trust.DERIVED)


@computes("T", "min", formula="60 * (t + t_m * L)", place=METHOD)
def minutes_of_run(t: Hours, t_m: Hours, L: Metres) -> Minutes:  # noqa: N803 - as printed
    """Return the minutes of a set-up and of so many metres after it.

    Examples
    --------
    >>> minutes_of_run(Hours(0.5), Hours(0.08), Metres(9.0))
    73.2
    """
    return Minutes(60 * (t + t_m * L))


def run_minutes(
    basis: Basis, set_up: str, per_metre: str, length_m: Metres
) -> tuple[float, float, float]:
    """Return the minutes of two tasks together: when all goes well, usually, when it does not."""
    once, along = basis.task(set_up), basis.task(per_metre)
    return (
        minutes_of_run(once.low_h, along.low_h, length_m),
        minutes_of_run(once.usual_h, along.usual_h, length_m),
        minutes_of_run(once.high_h, along.high_h, length_m),
    )
