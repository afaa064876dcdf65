"""Limits that readings of a new circuit are held against."""

from __future__ import annotations

from typing import NamedTuple

from ampwright.foundations.quantity import Share, Volts

from .book import Book


class InsulationTest(NamedTuple):
    """The direct voltage to test with and the least resistance to find, in megohms."""

    test_v: Volts
    least_mohm: float


def insulation_test(book: Book, circuit: str = "up to 500 V") -> InsulationTest:
    """Return how insulation is tested and the least that passes.

    ``circuit`` is "extra-low voltage, separated", "up to 500 V" or "over 500 V". Source:
    BS 7671, Table 64.

    Examples
    --------
    >>> insulation_test(Book())
    InsulationTest(test_v=500.0, least_mohm=1.0)
    """
    name = "verification/insulation"
    return InsulationTest(
        Volts(book.number(name, "test_v", circuit=circuit)),
        book.number(name, "least_mohm", circuit=circuit),
    )


def cold_loop_share(book: Book) -> Share:
    """Return the share of the loop limit that a reading on cold conductors may take.

    Source: BS 7671, Appendix 3, as a trade magazine gives it.

    Examples
    --------
    >>> cold_loop_share(Book())
    0.8
    """
    item = "measured at room temperature"
    return Share(book.number("verification/loop_share", "share", item=item))


def order_of_tests(book: Book) -> tuple[str, ...]:
    """Return the tests in their order, dead ones first.

    Source: BS 7671, 643.

    Examples
    --------
    >>> order_of_tests(Book())[0]
    'continuity of protective and bonding conductors'
    """
    return tuple(row.texts["test"] for row in book.rows("verification/sequence"))


def certificate_items(book: Book, form: str = "certificate") -> tuple[str, ...]:
    """Return the data items of the "certificate" or the "schedule of test results", in our words.

    Source: BS 7671, Appendix 6; never the wording of the model forms.

    Examples
    --------
    >>> certificate_items(Book())[:2]
    ('client', 'address')
    """
    return tuple(
        row.texts["item"] for row in book.rows("verification/certificate_items", form=form)
    )
