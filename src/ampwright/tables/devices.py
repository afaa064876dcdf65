"""Breakers, fuses and residual current devices: ratings, how they act, what they let through."""

from __future__ import annotations

from ampwright.foundations.quantity import (
    Amperes,
    AmpereSquaredSeconds,
    Kiloamperes,
    Milliamperes,
    Ohms,
    Seconds,
    Share,
)

from .book import Book


def standard_ratings(book: Book, family: str = "point device") -> tuple[Amperes, ...]:
    """Return the rated currents in which a kind of device is sold, smallest first.

    ``family`` is "breaker", "point device" (two-pole, with residual current, for a charge
    point), "service fuse" or "switch". Source: trade practice; BS EN 60898-1 for breakers.

    Examples
    --------
    >>> standard_ratings(Book())
    (16.0, 20.0, 25.0, 32.0, 40.0, 50.0, 63.0)
    """
    name = "devices/standard_ratings"
    return tuple(
        Amperes(book.number(name, "rating_a", family=family, number=row.numbers["number"]))
        for row in book.rows(name, family=family)
    )


def trip_multiple(book: Book, curve: str) -> float:
    """Return the multiple of its rating at which a breaker acts at once at the latest.

    ``curve`` is "B", "C" or "D". Source: BS EN 60898-1, Table 7.

    Examples
    --------
    >>> trip_multiple(Book(), "B")
    5.0
    """
    return book.number("devices/trip_multiples", "multiple", curve=curve, acts="at the latest")


def hold_multiple(book: Book, curve: str) -> float:
    """Return the multiple of its rating below which a breaker does not act at once.

    Source: BS EN 60898-1, Table 7.

    Examples
    --------
    >>> hold_multiple(Book(), "B")
    3.0
    """
    return book.number("devices/trip_multiples", "multiple", curve=curve, acts="not below")


def let_through(
    book: Book, curve: str, rating_a: float, breaking_ka: float
) -> AmpereSquaredSeconds:
    """Return the most energy that a breaker of limiting class 3 lets through.

    At any fault current up to ``breaking_ka``, its rated short-circuit capacity (6 or 10).
    Types B and C to 40 A; 40 A is doubtful. Raises ``OutOfTableError`` beyond. Source:
    BS EN 60898-1, Annex ZA.

    Examples
    --------
    >>> let_through(Book(), "B", 32, 6), let_through(Book(), "B", 10, 6)
    (45000.0, 35000.0)
    """
    return AmpereSquaredSeconds(
        book.number(
            "devices/let_through",
            "let_through_a2s",
            curve=curve,
            breaking_ka=breaking_ka,
            rating_a=rating_a,
        )
    )


def breaking_capacities(book: Book) -> tuple[Kiloamperes, ...]:
    """Return the rated short-circuit capacities that breakers are made with, least first.

    The last, 16 kA, is a rating of a whole consumer unit behind a service fuse. Source:
    BS EN 60898-1 and BS EN 61439-3.

    Examples
    --------
    >>> breaking_capacities(Book())
    (3.0, 4.5, 6.0, 10.0, 15.0, 16.0)
    """
    name = "devices/breaking_capacities"
    return tuple(
        Kiloamperes(book.number(name, "breaking_ka", number=row.numbers["number"]))
        for row in book.rows(name)
    )


def breaker_loop_limit(book: Book, curve: str, rating_a: float, time_s: float) -> Ohms:
    """Return the largest loop impedance for a breaker as the table prints it.

    Rounded to two digits; design with the clause that computes it. Source: BS 7671, Table 41.3.

    Examples
    --------
    >>> breaker_loop_limit(Book(), "B", 40, 0.4)
    1.09
    """
    name = "devices/breaker_loop_limits"
    return Ohms(book.number(name, "limit_ohm", curve=curve, time_s=time_s, rating_a=rating_a))


def fuse_loop_limit(book: Book, kind: str, rating_a: float, time_s: float) -> Ohms:
    """Return the largest loop impedance for a fuse.

    ``kind`` is "BS 88-3", "BS 1361", "BS 88-2" or "BS 88-2.2 and 88-6"; ``time_s`` 0.4 or 5.
    Source: BS 7671, Tables 41.2 and 41.4.

    Examples
    --------
    >>> fuse_loop_limit(Book(), "BS 88-3", 32, 0.4)
    0.91
    """
    name = "devices/fuse_loop_limits"
    return Ohms(book.number(name, "limit_ohm", kind=kind, time_s=time_s, rating_a=rating_a))


def service_fuse_5s_a(book: Book, kind: str, rating_a: float) -> Amperes:
    """Return the current that operates a service fuse within 5 s.

    ``kind`` is "BS 88-3" (63, 80, 100 A; doubtful) or "BS 1361" (60, 80, 100 A). Raises
    ``OutOfTableError`` for other ratings. Source: worked back from loop limits found.

    Examples
    --------
    >>> service_fuse_5s_a(Book(), "BS 1361", 80)
    460.0
    """
    return service_fuse_point(book, kind, rating_a, "operates within 5 s")


def service_fuse_point(book: Book, kind: str, rating_a: float, point: str) -> Amperes:
    """Return the current of one point of a service fuse's time and current zone.

    An envelope, never leave to load a fuse above its rating. Source: as its row says.

    Examples
    --------
    >>> service_fuse_point(Book(), "BS 88-3", 80, "holds for the conventional time")
    100.0
    """
    name = "devices/service_fuse_points"
    return Amperes(book.number(name, "current_a", kind=kind, rating_a=rating_a, point=point))


def disconnection_time(book: Book, system: str, volts_v: float) -> Seconds:
    """Return the longest disconnection time of the final circuits that the short times cover.

    ``system`` is "TN" or "TT". Source: BS 7671, Table 41.1.

    Examples
    --------
    >>> disconnection_time(Book(), "TN", 230), disconnection_time(Book(), "TT", 230)
    (0.4, 0.2)
    """
    return Seconds(
        book.number("devices/disconnection_times", "time_s", system=system, up_to_v=volts_v)
    )


def disconnection_time_beyond(book: Book, system: str) -> Seconds:
    """Return the longest disconnection time of circuits that the short times do not cover.

    ``system`` is "TN" or "TT". Source: BS 7671, 411.3.2.3 and 411.3.2.4.

    Examples
    --------
    >>> disconnection_time_beyond(Book(), "TN")
    5.0
    """
    return Seconds(book.number("devices/disconnection_beyond", "time_s", system=system))


def short_time_covers_a(book: Book, circuit: str) -> Amperes:
    """Return the largest rating of final circuits that the short disconnection times cover.

    ``circuit`` is "final, with sockets" or "final, fixed equipment only". Source: BS 7671,
    411.3.2.2, as a certification body gives it.

    Examples
    --------
    >>> short_time_covers_a(Book(), "final, fixed equipment only")
    32.0
    """
    return Amperes(book.number("devices/disconnection_scope", "up_to_a", circuit=circuit))


def rcd_time_ms(
    book: Book, kind: str, test: str = "trips within at rated residual current"
) -> float:
    """Return one time of a residual current device, in milliseconds.

    ``kind`` is "general" or "delayed". Source: BS 7671, 643.7, and the product standards.

    Examples
    --------
    >>> rcd_time_ms(Book(), "general")
    300.0
    """
    return book.number("devices/rcd_times", "time_ms", kind=kind, test=test)


def smooth_dc_borne(book: Book, kind: str) -> Milliamperes:
    """Return the smooth direct current under which a device of that type still works.

    ``kind`` is "AC", "A" or "F"; type B sees smooth direct current and has no such figure.
    Source: BS 7671, 531.3.3.

    Examples
    --------
    >>> smooth_dc_borne(Book(), "A")
    6.0
    """
    return Milliamperes(book.number("devices/rcd_types", "smooth_dc_ma", kind=kind))


def leakage_share(book: Book) -> Share:
    """Return the share of its rated residual current that may leak in normal service.

    Source: BS 7671, 531.3.2.

    Examples
    --------
    >>> leakage_share(Book())
    0.3
    """
    return Share(book.number("devices/leakage_share", "share", item="standing leakage"))


def opens_at_once_s(book: Book) -> Seconds:
    """Return the longest that a breaker takes whose magnet opens it.

    Source: BS EN 60898-1, Table 7.

    Examples
    --------
    >>> opens_at_once_s(Book())
    0.1
    """
    return Seconds(book.number("devices/opens_at_once", "time_s", item="at once within"))


def rcd_tests(book: Book, kind: str) -> tuple[tuple[Share, str], ...]:
    """Return the tests within which a residual current device trips, from the most current down.

    Each with the multiple of its rated residual current. ``kind`` is "general" or "delayed".
    Source: BS 7671, 643.7, and the product standards.

    Examples
    --------
    >>> [times for times, _ in rcd_tests(Book(), "general")]
    [5.0, 2.0, 1.0]
    """
    found = [
        (Share(row.numbers["multiple"]), row.texts["test"])
        for row in book.rows("devices/rcd_times", kind=kind)
        if "trips within" in row.texts["test"]
    ]
    return tuple(sorted(found, reverse=True))


def rod_limit(book: Book, rated_ma: float) -> Ohms:
    """Return the largest electrode resistance for a residual current device.

    Source: BS 7671, Table 41.5.

    Examples
    --------
    >>> rod_limit(Book(), 30)
    1667.0
    """
    return Ohms(book.number("devices/rod_limits", "limit_ohm", rated_ma=rated_ma))


def overload_multiple(book: Book, rating_a: float, test: str = "must trip") -> Share:
    """Return the multiple of its rating at which a breaker must hold or trip in the end.

    ``test`` is "must hold", "must trip" or "must trip between". Source: BS EN 60898-1, Table 7.

    Examples
    --------
    >>> overload_multiple(Book(), 32), overload_multiple(Book(), 32, "must hold")
    (1.45, 1.13)
    """
    return Share(book.number("devices/thermal_tests", "multiple", test=test, up_to_a=rating_a))


def overload_trips_within(book: Book, rating_a: float, test: str = "must trip between") -> Seconds:
    """Return the longest that a breaker may take by its heat, at the current of a test.

    ``test`` is "must trip" or "must trip between". Source: BS EN 60898-1, Table 7.

    Examples
    --------
    >>> overload_trips_within(Book(), 32), overload_trips_within(Book(), 40, "must trip")
    (60.0, 3600.0)
    """
    return Seconds(book.number("devices/thermal_tests", "most_s", test=test, up_to_a=rating_a))


def point_rcd_limit_ma(book: Book) -> Milliamperes:
    """Return the largest rated residual current of the device before a charging point.

    Source: BS 7671, 722.531.3.1.

    Examples
    --------
    >>> point_rcd_limit_ma(Book())
    30.0
    """
    item = "rated residual current at most"
    return Milliamperes(book.number("charging/residual_current", "current_ma", item=item))
