"""Resistance of conductors, their temperatures, the earth core and the armour of each cable."""

from __future__ import annotations

from ampwright.foundations.quantity import AdiabaticK, Celsius, OhmsPerKm, Share, SquareMm

from .book import Book
from .capacity import CableFamily


def resistance_20(book: Book, size_mm2: float, kind: str = "copper_class_2") -> OhmsPerKm:
    """Return the largest resistance of a conductor at 20 °C.

    ``kind`` is "copper_class_2" (solid or stranded), "copper_class_5" (flexible) or
    "aluminium_class_2". Raises ``OutOfTableError`` for a size the table lacks. Source:
    IEC 60228, Tables 2 and 3.

    Examples
    --------
    >>> resistance_20(Book(), 6), resistance_20(Book(), 6, "copper_class_5")
    (3.08, 3.3)
    """
    return OhmsPerKm(book.number(f"conductors/{kind}", "r20_ohm_per_km", size_mm2=size_mm2))


def earth_core_mm2(book: Book, family: CableFamily, size_mm2: float) -> SquareMm:
    """Return the size of the protective conductor inside a cable.

    Reduced in flat cable; in the others a core of the same size as the lines. Singles have no
    core of their own. Raises ``OutOfTableError`` for a size or family not listed. Source:
    BS 6004 and trade practice.

    Examples
    --------
    >>> earth_core_mm2(Book(), CableFamily.FLAT, 6), earth_core_mm2(Book(), CableFamily.ARMOURED, 6)
    (2.5, 6.0)
    """
    name = "conductors/earth_cores"
    return SquareMm(book.number(name, "earth_core_mm2", family=family.value, size_mm2=size_mm2))


def temperature_multiplier(book: Book, conductor_c: float) -> Share:
    """Return the resistance of copper at working temperature over that at 20 °C.

    Listed for 20, 30, 70 and 90 °C only; raises ``OutOfTableError`` for others. Source: an
    online electricians' handbook and the IET On-Site Guide.

    Examples
    --------
    >>> temperature_multiplier(Book(), 70.0), temperature_multiplier(Book(), 90.0)
    (1.2, 1.28)
    """
    return Share(
        book.number("conductors/temperature_multipliers", "multiplier", conductor_c=conductor_c)
    )


def day_multiplier(book: Book, ambient_c: float) -> Share:
    """Return the resistance of copper on a day of that temperature over that at 20 °C.

    From 5 to 30 °C, on a straight line between rows. Source: IET On-Site Guide, Table I2.

    Examples
    --------
    >>> day_multiplier(Book(), 10.0), round(day_multiplier(Book(), 12.5), 4)
    (0.96, 0.97)
    """
    return Share(book.number("conductors/ambient_of_test", "multiplier", ambient_c=ambient_c))


def temperature_coefficient(book: Book, metal: str = "copper") -> Share:
    """Return the rise of resistance for each kelvin from 20 °C, as a share.

    ``metal`` is "copper", "copper, rounded" (0.004, as the trade's factors take it) or
    "aluminium". Source: IEC 60228.

    Examples
    --------
    >>> temperature_coefficient(Book())
    0.00393
    """
    return Share(book.number("conductors/coefficients", "per_kelvin", metal=metal))


def armour_mm2(
    book: Book, cores: int, size_mm2: float, insulation: str = "thermosetting"
) -> SquareMm:
    """Return the cross-section of a cable's steel armour; doubtful, confirm with the maker.

    ``insulation`` is "thermosetting" or "thermoplastic". Source: BS 5467 and BS 6346.

    Examples
    --------
    >>> armour_mm2(Book(), 3, 6)
    23.0
    """
    return SquareMm(
        book.number(f"conductors/armour_{insulation}", "area_mm2", cores=cores, size_mm2=size_mm2)
    )


def armour_resistance_20(book: Book, cores: int, size_mm2: float) -> OhmsPerKm:
    """Return the resistance at 20 °C of the steel armour of a cross-linked cable; doubtful.

    Source: BS 5467.

    Examples
    --------
    >>> armour_resistance_20(Book(), 3, 6)
    6.6
    """
    name = "conductors/armour_thermosetting"
    return OhmsPerKm(book.number(name, "r20_ohm_per_km", cores=cores, size_mm2=size_mm2))


def k_factor(book: Book, conductor: str, insulation: str) -> AdiabaticK:
    """Return the factor k of the adiabatic equation, for disconnection within 5 s.

    ``conductor`` is "copper core", "separate copper", "steel armour" and the like;
    ``insulation`` such as "70 °C thermoplastic" or "90 °C thermosetting". Source: BS 7671,
    Tables 43.1 and 54.2 to 54.6.

    Examples
    --------
    >>> k_factor(Book(), "copper core", "70 °C thermoplastic")
    115.0
    """
    return AdiabaticK(
        book.number("conductors/adiabatic_k", "k", conductor=conductor, insulation=insulation)
    )


def temperatures_of_k(book: Book, conductor: str, insulation: str) -> tuple[Celsius, Celsius]:
    """Return the temperatures before and after the fault that a factor k stands for.

    Source: as ``k_factor``.

    Examples
    --------
    >>> temperatures_of_k(Book(), "copper core", "70 °C thermoplastic")
    (70.0, 160.0)
    """
    start, end = (
        Celsius(
            book.number(
                "conductors/adiabatic_k", column, conductor=conductor, insulation=insulation
            )
        )
        for column in ("start_c", "end_c")
    )
    return start, end


def k_of_family(book: Book, family: CableFamily) -> AdiabaticK:
    """Return the factor k of the earth core inside a cable of that family.

    Flat cable and singles have 70 °C insulation, the others 90 °C. Source: as ``k_factor``.

    Examples
    --------
    >>> k_of_family(Book(), CableFamily.FLAT), k_of_family(Book(), CableFamily.SHEATHED)
    (115.0, 143.0)
    """
    hot = family in (CableFamily.SHEATHED, CableFamily.ARMOURED, CableFamily.FIVE_CORE)
    return k_factor(book, "copper core", "90 °C thermosetting" if hot else "70 °C thermoplastic")
