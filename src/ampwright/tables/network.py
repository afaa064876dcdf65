"""Who runs a home's network, what decides whether they are told or asked, and in how many days."""

from __future__ import annotations

from dataclasses import dataclass
from typing import cast

from ampwright.foundations.errors import InputError
from ampwright.foundations.quantity import Amperes, Count, Kilowatts, Seconds

from .book import Book


@dataclass(frozen=True, slots=True)
class NetworkArea:
    """Who a meter point number belongs to: an area's operator or an independent one."""

    id: str
    area: str
    kind: str


def operator_of(meter_point: str, book: Book | None = None) -> NetworkArea:
    """Return who runs the network that a meter point hangs on, by its first two digits.

    Takes the 13-digit core, blanks allowed. Great Britain only. Raises ``InputError`` for
    digits that name nobody known. Source: lists of distributor ids, in two places.

    Examples
    --------
    >>> operator_of("1012345678903")
    NetworkArea(id='10', area='Eastern England', kind='area operator')
    """
    book = book or Book()
    digits = meter_point.replace(" ", "")
    known = book.table("network/meter_points").values_of("distributor_id")
    if len(digits) != 13 or not digits.isdigit() or digits[:2] not in known:
        raise InputError(
            "supply.meter_point",
            meter_point,
            "13 digits that begin with a known operator's two",
            "Read the lower line of the number on the bill.",
        )
    row = book.row("network/meter_points", distributor_id=digits[:2])
    return NetworkArea(digits[:2], row.texts["area"], row.texts["kind"])


def check_weights(book: Book) -> tuple[int, ...]:
    """Return the weights of the twelve digits before a meter point's check digit.

    Source: lists of the numbering, in two places.

    Examples
    --------
    >>> check_weights(Book())
    (3, 5, 7, 13, 17, 19, 23, 29, 31, 37, 41, 43)
    """
    return tuple(int(row.numbers["weight"]) for row in book.rows("network/check_weights"))


def notice_days(book: Book, event: str) -> Count:
    """Return the days allowed after an event, such as "demand told after".

    See ``days_are`` for whether they are working days. Raises ``OutOfTableError`` for an event
    that is not listed. Source: as its row says.

    Examples
    --------
    >>> int(notice_days(Book(), "demand told after"))
    28
    """
    return cast(Count, book.number("network/deadlines", "days", event=event))


def days_are(book: Book, event: str) -> str:
    """Return whether the days of an event are "calendar" or "working" days.

    Examples
    --------
    >>> days_are(Book(), "generation offer")
    'working'
    """
    return book.text("network/deadlines", "counted", event=event)


def threshold_a(book: Book, item: str) -> Amperes:
    """Return a current that decides whether an operator is told or asked.

    Only to fill an operator's profile, which rules: "dwelling demand", "largest device",
    "generation told after" … Source: operators' forms and pages.

    Examples
    --------
    >>> threshold_a(Book(), "dwelling demand"), threshold_a(Book(), "generation told after")
    (60.0, 16.0)
    """
    return Amperes(book.number("network/currents", "current_a", item=item))


def generation_kw(book: Book, item: str, phases: int) -> Kilowatts:
    """Return a power that decides how generation is asked for.

    ``item`` is "told after", "simple form" or "fast track". Source: operators' pages.

    Examples
    --------
    >>> generation_kw(Book(), "told after", 1), generation_kw(Book(), "simple form", 3)
    (3.68, 50.0)
    """
    return Kilowatts(book.number("network/powers", "power_kw", item=item, phases=phases))


def limiting_time(book: Book, item: str = "at most") -> Seconds:
    """Return how soon a limiting scheme must be back within its limit.

    Source: EREC G100, Issue 2.

    Examples
    --------
    >>> limiting_time(Book()), limiting_time(Book(), "typically back within")
    (60.0, 15.0)
    """
    return Seconds(book.number("network/limitation_times", "time_s", item=item))
