"""Currents, pilot, voltages and hours of charging points."""

from __future__ import annotations

from ampwright.foundations.quantity import (
    Amperes,
    Hours,
    Metres,
    Milliamperes,
    Seconds,
    Share,
    Volts,
)

from .book import Book


def least_charging_a(book: Book) -> Amperes:
    """Return the least current a phase that a pilot can ask for; below it a car pauses.

    Source: BS EN IEC 61851-1, Annex A.

    Examples
    --------
    >>> least_charging_a(Book())
    6.0
    """
    return Amperes(book.number("charging/currents", "current_a", item="least"))


def pilot_slope(book: Book, duty: Share) -> tuple[Amperes, Share]:
    """Return the slope of the pilot at a duty, for the whole of it, and the duty taken off first.

    From 10 to 96 %; elsewhere the duty means no current or a fixed one, and
    ``OutOfTableError`` is raised. Source: BS EN IEC 61851-1, Annex A.

    Examples
    --------
    >>> pilot_slope(Book(), Share(0.5)), pilot_slope(Book(), Share(0.9))
    ((60.0, 0.0), (250.0, 0.64))
    """
    name = "charging/pilot_duty"
    return (
        Amperes(book.number(name, "slope_a", up_to_share=duty)),
        Share(book.number(name, "offset_share", up_to_share=duty)),
    )


def pilot_bands(book: Book) -> tuple[Share, Share]:
    """Return the highest duty of the lower and of the upper band of a pilot.

    A little above the lower band the upper one holds. Source: BS EN IEC 61851-1, Annex A.

    Examples
    --------
    >>> pilot_bands(Book())
    (0.85, 0.96)
    """
    rows = book.rows("charging/pilot_duty")
    low, high = (row.numbers["up_to_share"] for row in rows if "slope_a" in row.numbers)
    return Share(low), Share(high)


def pilot_volts(book: Book, state: str) -> Volts:
    """Return the positive voltage on the pilot in a state, "A" to "F".

    Source: BS EN IEC 61851-1, Annex A.

    Examples
    --------
    >>> pilot_volts(Book(), "C")
    6.0
    """
    return Volts(book.number("charging/pilot_states", "pilot_v", state=state))


def lead_current(book: Book, resistor_ohm: float, phases: int) -> Amperes:
    """Return the current that the resistor in a plug allows its lead.

    ``resistor_ohm`` is 1500, 680, 220 or 100. Source: BS EN IEC 61851-1, Annex B.

    Examples
    --------
    >>> lead_current(Book(), 220, 1)
    32.0
    """
    name = "charging/proximity"
    return Amperes(book.number(name, "current_a", resistor_ohm=resistor_ohm, phases=phases))


def window_low_v(book: Book) -> Volts:
    """Return the voltage below which a point with a volts window opens.

    Source: BS 7671, 722.411.4.1 (iv).

    Examples
    --------
    >>> window_low_v(Book())
    207.0
    """
    return _open_pen_volts(book, "window low")


def window_high_v(book: Book) -> Volts:
    """Return the voltage above which a point with a volts window opens.

    Source: BS 7671, 722.411.4.1 (iv).

    Examples
    --------
    >>> window_high_v(Book())
    253.0
    """
    return _open_pen_volts(book, "window high")


def touch_limit_v(book: Book) -> Volts:
    """Return the voltage to Earth that a main earthing terminal must not pass on an open PEN.

    Source: BS 7671, 722.411.4.1 (i) to (iii).

    Examples
    --------
    >>> touch_limit_v(Book())
    70.0
    """
    return _open_pen_volts(book, "touch limit")


def open_pen_time(book: Book, item: str = "opens within") -> Seconds:
    """Return a time of open-PEN protection: "opens within" or "may ignore".

    Source: BS 7671, 722.411.4.1 (iii) and (iv).

    Examples
    --------
    >>> open_pen_time(Book()), open_pen_time(Book(), "may ignore")
    (5.0, 4.0)
    """
    return Seconds(book.number("charging/open_pen_times", "time_s", item=item))


def point_distance(book: Book, item: str) -> Metres:
    """Return a distance at a charge point, such as "reach between earths".

    Source: as its row says; heights and buried separation are doubtful.

    Examples
    --------
    >>> point_distance(Book(), "reach between earths")
    2.5
    """
    return Metres(book.number("charging/distances", "metres_m", item=item))


def outdoor_enclosure(book: Book) -> str:
    """Return the least code of a point's case outdoors, dust and water.

    Source: BS 7671, 722.512.2.

    Examples
    --------
    >>> outdoor_enclosure(Book())
    'IP44'
    """
    return book.text("charging/enclosures", "code", item="point outdoors")


def dc_detection(book: Book) -> Milliamperes:
    """Return the smooth direct current at which a point's own detection acts.

    Source: BS 7671, 722.531.3.101, and BS IEC 62955.

    Examples
    --------
    >>> dc_detection(Book())
    6.0
    """
    item = "smooth direct current detected at"
    return Milliamperes(book.number("charging/residual_current", "current_ma", item=item))


def peak_hours(book: Book) -> tuple[tuple[Hours, Hours], ...]:
    """Return the stretches of a weekday in which charging is off by default.

    Hours after midnight, start and end. Great Britain. Source: the smart charge point
    regulations of 2021, regulation 2.

    Examples
    --------
    >>> peak_hours(Book())
    ((8.0, 11.0), (16.0, 22.0))
    """
    name = "charging/smart_hours"
    return tuple(
        (
            Hours(book.number(name, "start_h", number=row.numbers["number"])),
            Hours(book.number(name, "end_h", number=row.numbers["number"])),
        )
        for row in book.rows(name)
    )


def random_delay(book: Book, item: str = "random delay able to reach") -> Seconds:
    """Return a length of the random delay of smart charging.

    ``item`` may also be "random delay by default up to". Source: the smart charge point
    regulations of 2021, regulation 11.

    Examples
    --------
    >>> random_delay(Book())
    1800.0
    """
    return Seconds(book.number("charging/smart_times", "time_s", item=item))


def _open_pen_volts(book: Book, item: str) -> Volts:
    return Volts(book.number("charging/open_pen_voltages", "volts_v", item=item))
