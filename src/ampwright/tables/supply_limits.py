"""What the public supply is declared to be."""

from __future__ import annotations

from ampwright.foundations.quantity import Kiloamperes, Ohms, Share, Volts

from .book import Book


def nominal_v(book: Book) -> Volts:
    """Return the nominal voltage, line to neutral.

    Source: the supply regulations of 2002, regulation 27.

    Examples
    --------
    >>> nominal_v(Book())
    230.0
    """
    return _volts(book, "nominal")


def nominal_between_lines_v(book: Book) -> Volts:
    """Return the nominal voltage between two lines.

    Source: the supply regulations of 2002, regulation 27.

    Examples
    --------
    >>> nominal_between_lines_v(Book())
    400.0
    """
    return _volts(book, "nominal between lines")


def lowest_legal_v(book: Book) -> Volts:
    """Return the lowest voltage an operator may supply, line to neutral.

    Source: the supply regulations of 2002, regulation 27.

    Examples
    --------
    >>> lowest_legal_v(Book())
    216.2
    """
    return _volts(book, "lowest")


def highest_legal_v(book: Book) -> Volts:
    """Return the highest voltage an operator may supply, line to neutral.

    Source: the supply regulations of 2002, regulation 27.

    Examples
    --------
    >>> highest_legal_v(Book())
    253.0
    """
    return _volts(book, "highest")


def declared_ze_ohm(book: Book, earthing: str) -> Ohms:
    """Return the largest external loop impedance that operators declare; a measurement rules.

    ``earthing`` is "TN-C-S", "TN-S" or "TT" (then the operator's side only). Source: EREC P23.

    Examples
    --------
    >>> declared_ze_ohm(Book(), "TN-C-S")
    0.35
    """
    return Ohms(book.number("supply/declared_impedance", "ze_ohm", earthing=earthing))


def declared_fault_ka(book: Book, phases: int) -> Kiloamperes:
    """Return the largest fault current that operators declare for design.

    ``phases`` is 1 or 3; services up to 100 A. Source: EREC P25.

    Examples
    --------
    >>> declared_fault_ka(Book(), 1)
    16.0
    """
    return Kiloamperes(book.number("supply/declared_fault_current", "fault_ka", phases=phases))


def cmin(book: Book) -> Share:
    """Return the factor for the least supply voltage in fault calculations.

    Source: BS 7671, Appendix 3 and 411.4.4.

    Examples
    --------
    >>> cmin(Book())
    0.95
    """
    return Share(book.number("supply/voltage_factors", "factor", item="least"))


def cmax(book: Book) -> Share:
    """Return the factor for the greatest supply voltage in fault calculations.

    Source: BS 7671, Appendix 3.

    Examples
    --------
    >>> cmax(Book())
    1.1
    """
    return Share(book.number("supply/voltage_factors", "factor", item="greatest"))


def _volts(book: Book, item: str) -> Volts:
    return Volts(book.number("supply/voltages", "volts_v", item=item))
