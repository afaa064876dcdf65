"""How cable is fixed, bent, buried and kept apart from data."""

from __future__ import annotations

from ampwright.foundations.quantity import Millimetres, Share

from .book import Book


def clip_spacing(book: Book, cable: str, diameter_mm: float) -> tuple[Millimetres, Millimetres]:
    """Return the greatest spacing of clips on a level run, and on a run up or down.

    ``cable`` is "not armoured" or "armoured" (over 15 mm, doubtful). Raises
    ``OutOfTableError`` beyond 40 mm. Source: IET On-Site Guide, Table D1.

    Examples
    --------
    >>> clip_spacing(Book(), "not armoured", 12)
    (300.0, 400.0)
    """
    name = "practice/clip_spacing"
    return (
        Millimetres(book.number(name, "across_mm", cable=cable, diameter_up_to_mm=diameter_mm)),
        Millimetres(book.number(name, "up_mm", cable=cable, diameter_up_to_mm=diameter_mm)),
    )


def bend_radius_multiple(book: Book, cable: str, diameter_mm: float) -> Share:
    """Return the least inner radius of a bend over the overall diameter of the cable.

    ``cable`` is "not armoured", "armoured", "armoured, shaped cores" or "mineral"; the maker's
    sheet rules. Source: IET On-Site Guide, Table D5.

    Examples
    --------
    >>> bend_radius_multiple(Book(), "not armoured", 12)
    4.0
    """
    name = "practice/bend_radius"
    return Share(book.number(name, "times", cable=cable, diameter_up_to_mm=diameter_mm))


def data_gap_mm(book: Book, power: str, data: str, divider: str = "none") -> Millimetres:
    """Return the least gap between a data cable and a power cable.

    ``power`` and ``data`` are "screened" or "unscreened", ``divider`` "none", "aluminium" or
    "steel". The edition of 2000, since replaced. Source: BS EN 50174-2:2000, Table 1.

    Examples
    --------
    >>> data_gap_mm(Book(), "unscreened", "unscreened")
    200.0
    """
    name = "practice/data_separation"
    return Millimetres(book.number(name, "gap_mm", power=power, data=data, divider=divider))


def data_gap_of_class_mm(book: Book, data_class: str) -> Millimetres:
    """Return the gap of a class of data cable, "a" to "d", without a divider; "a" is doubtful.

    To be multiplied by ``data_circuits_factor``. Source: BS EN 50174-2:2009, Table 5.

    Examples
    --------
    >>> data_gap_of_class_mm(Book(), "b")
    100.0
    """
    return Millimetres(
        book.number("practice/data_separation_class", "gap_mm", data_class=data_class)
    )


def data_circuits_factor(book: Book, circuits: float) -> Share:
    """Return the share of that gap for so many power circuits of 20 A.

    A circuit of 32 A counts 2 on one phase and 6 on three. Source: BS EN 50174-2:2009, Table 6.

    Examples
    --------
    >>> data_circuits_factor(Book(), 2), data_circuits_factor(Book(), 6)
    (0.2, 0.4)
    """
    return Share(
        book.number("practice/data_separation_circuits", "factor", circuits_up_to=circuits)
    )


def distance_mm(book: Book, item: str) -> Millimetres:
    """Return a distance of the trade, such as "burial usual" or "warning tape under the surface".

    Source: as its row says.

    Examples
    --------
    >>> distance_mm(Book(), "burial usual")
    600.0
    """
    return Millimetres(book.number("practice/distances", "distance_mm", item=item))
