"""Whether the number of a meter point adds up."""

from __future__ import annotations

from typing import Final

from ampwright.foundations.checks import Finding, Outcome, requires
from ampwright.foundations.source import Place

WEIGHTS: Final = (3, 5, 7, 13, 17, 19, 23, 29, 31, 37, 41, 43)
"""The primes from 3 to 43 without 11, one for each digit before the last."""

CHECK_DIGIT = Place(
    "encyclopaedia article on the meter point administration number",
    "two further copies agree",
    "check digit",
)


@requires("the last digit is what the other twelve add up to", place=CHECK_DIGIT)
def meter_point_adds_up(meter_point: str) -> Finding:
    """Check the last of the thirteen digits of a meter point in Great Britain.

    Twelve digits by their weights, summed, modulo 11, modulo 10. It finds a wrong digit and
    most swaps, not whether the meter point exists. Northern Ireland numbers have no such digit.
    Raises ``ValueError`` unless there are thirteen digits.

    Examples
    --------
    >>> meter_point_adds_up("1012345678903").outcome.value
    'pass'
    >>> wrong = meter_point_adds_up("1012345678904")
    >>> wrong.outcome.value, wrong.actual, wrong.limit
    ('fail', 4.0, 3.0)
    """
    if len(meter_point) != len(WEIGHTS) + 1 or not (
        meter_point.isascii() and meter_point.isdigit()
    ):
        raise ValueError(f"a meter point has thirteen digits, not {meter_point!r}")
    *digits, last = map(int, meter_point)
    expected = sum(d * w for d, w in zip(digits, WEIGHTS, strict=True)) % 11 % 10
    outcome = Outcome.PASS if last == expected else Outcome.FAIL
    return Finding(outcome, float(last), float(expected))
