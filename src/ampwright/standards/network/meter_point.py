"""Whether a meter number can be one: how many digits it has, and whether they add up."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import Final

from ampwright.foundations.rulings import Row, Ruling
from ampwright.foundations.source import Place, Trust

WEIGHTS: Final = (3, 5, 7, 13, 17, 19, 23, 29, 31, 37, 41, 43)
"""The primes from 3 to 43 without 11, one for each digit before the last."""
DIGITS: Final = len(WEIGHTS) + 1
NORTHERN_IRELAND_DIGITS: Final = 11
NORTHERN_IRELAND_STARTS: Final = "81"

CHECK_DIGIT = Place(
    "encyclopaedia article on the meter point administration number",
    "two further copies agree",
    "check digit",
)
NORTH = Place("meter point numbers of Northern Ireland", "", "eleven digits", Trust.MEMORY)


class Adds(Enum):
    """What a meter number comes to when its digits are counted and added up."""

    UP = "it can be one"
    NOT_DIGITS = "it holds something else than digits"
    OTHER_COUNT = "it has too many digits or too few"
    NOT_UP = "a digit is wrong or two are swapped"


@dataclass(frozen=True, slots=True)
class MeterNumber:
    """A meter number as it was written, without blanks."""

    text: str


def check_digit(first_twelve: str) -> int:
    """Return the last digit of the thirteen of a meter point in Great Britain.

    Twelve digits by their weights, summed, modulo 11, modulo 10. Raises ``ValueError`` unless
    there are twelve.

    Examples
    --------
    >>> check_digit("101234567890")
    3
    """
    each = zip(map(int, first_twelve), WEIGHTS, strict=True)
    return sum(digit * weight for digit, weight in each) % 11 % 10


def _digits_alone(number: MeterNumber) -> bool:
    """Say whether there is nothing but the digits from 0 to 9."""
    return number.text.isascii() and number.text.isdigit()


METER_NUMBER: Ruling[MeterNumber, Adds] = Ruling(
    "Whether a meter number can be one",
    (
        Row(
            "something else than digits",
            lambda number: not _digits_alone(number),
            Adds.NOT_DIGITS,
            CHECK_DIGIT,
        ),
        Row(
            "Northern Ireland's: eleven digits from 81, none of them a check digit",
            lambda number: (
                len(number.text) == NORTHERN_IRELAND_DIGITS
                and number.text.startswith(NORTHERN_IRELAND_STARTS)
            ),
            Adds.UP,
            NORTH,
        ),
        Row(
            "not thirteen digits",
            lambda number: len(number.text) != DIGITS,
            Adds.OTHER_COUNT,
            CHECK_DIGIT,
        ),
        Row(
            "the last digit is what the other twelve add up to",
            lambda number: int(number.text[-1]) == check_digit(number.text[:-1]),
            Adds.UP,
            CHECK_DIGIT,
        ),
        Row("the last digit is another", lambda _: True, Adds.NOT_UP, CHECK_DIGIT),
    ),
)
"""A wrong digit and most swaps are found, not whether there is such a meter point."""
