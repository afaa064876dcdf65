"""What may be fitted along a way: the sizes of a family that are bought, and what each carries."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import Cable as Stock
from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.quantity import (
    Amperes,
    Celsius,
    Millimetres,
    MilliVoltsPerAmpMetre,
    Ohms,
    SquareMm,
)
from ampwright.foundations.stages import Made
from ampwright.survey.home import Home
from ampwright.tables.capacity import CableFamily, used_at_c
from ampwright.tables.conductors import earth_core_mm2
from ampwright.tables.voltage_drop import drop_mv

from ..route import IN_GROUND, Laid, Route, paced
from .capacity import LegCapacity, least_capacity, leg_capacity, may_protect
from .faults import cores_ohm

CORES: Final = {1: 3, 3: 5}
"""Power cores by the lines of a point: lines, neutral and earth."""


@dataclass(frozen=True, slots=True)
class Size:
    """A cable that could be fitted, what it carries along the whole way, and on its worst leg.

    ``may_protect_a`` is the largest rating that may protect it: less than it carries where the
    ground warms in the end. ``drop_mv`` is of all its lines loaded, ``one_line_mv`` of one alone;
    ``r1r2_ohm`` is of the whole way, hot.
    """

    stock: Stock
    capacity_a: Amperes
    may_protect_a: Amperes
    worst: LegCapacity
    earth_mm2: SquareMm
    conductor_c: Celsius
    drop_mv: MilliVoltsPerAmpMetre
    one_line_mv: MilliVoltsPerAmpMetre
    r1r2_ohm: Ohms


@dataclass(frozen=True, slots=True)
class Entry:
    """What of a point bears on its cable: the terminals and the entry."""

    terminal_mm2: SquareMm
    terminal_c: Celsius
    gland_least_mm: Millimetres
    gland_mm: Millimetres


def entry_of(_home: Home, basis: Basis, point: ChargePoint) -> Made[Entry]:
    """Return the terminals and the entry of a point; the same for points that are alike there."""
    row = basis.cited(point)
    return Made(Entry(row.terminal_mm2, row.terminal_c, row.gland_least_mm, row.gland_mm))


def sizes(
    _home: Home, basis: Basis, way: Route, family: CableFamily, phases: int, with_data: bool
) -> Made[tuple[Size, ...]]:
    """Return the sizes that could serve along a way, smallest first; of a laid cable, its own.

    None where the firm buys none of the family, or none by which to judge what lies there. What
    they carry hangs on the way alone. Raises ``Unanswered`` where no way has been paced.
    """
    way = paced(way)
    if way.laid is not None:
        found = alike(basis, way.laid, family, phases)
    else:
        found = stocked(basis, family, phases, with_data)
    return Made(tuple(sized(basis, stock, way, phases) for stock in found))


def sized(basis: Basis, stock: Stock, way: Route, phases: int) -> Size:
    """Return one size with what it carries leg by leg."""
    legs = tuple(
        leg_capacity(basis.book, stock.family, phases, stock.size_mm2, leg) for leg in way.legs
    )
    capacity_a = least_capacity(tuple(leg.capacity_a for leg in legs))
    book, family, size_mm2 = basis.book, stock.family, stock.size_mm2
    earth_mm2 = earth_core_mm2(book, family, size_mm2)
    return Size(
        stock=stock,
        capacity_a=capacity_a,
        may_protect_a=protected_up_to(basis, capacity_a, way, legs),
        worst=worst(legs),
        earth_mm2=earth_mm2,
        conductor_c=used_at_c(book, family),
        drop_mv=drop_mv(book, family, phases, size_mm2),
        one_line_mv=drop_mv(book, family, 1, size_mm2),
        r1r2_ohm=cores_ohm(book, family, size_mm2, earth_mm2, way.length_m),
    )


def protected_up_to(
    basis: Basis, capacity_a: Amperes, way: Route, legs: tuple[LegCapacity, ...]
) -> Amperes:
    """Return the largest rating that may protect a cable: less than it carries in the ground."""
    if not any(leg.how in IN_GROUND for leg in way.legs):
        return capacity_a
    each = zip(legs, way.legs, strict=True)
    return least_capacity(
        tuple(may_protect(basis.book, leg.capacity_a, run.how) for leg, run in each)
    )


def worst(legs: tuple[LegCapacity, ...]) -> LegCapacity:
    """Return the leg on which the cable carries least."""
    return min(legs, key=lambda leg: leg.capacity_a)


def alike(basis: Basis, laid: Laid, family: CableFamily, phases: int) -> Iterator[Stock]:
    """Yield what lies there as a cable of the catalogue of the same kind, cores and size.

    How thick it is over its sheath is that of a new one of its kind.
    """
    for each in basis.catalogue.cables:
        same = each.family is family and each.cores == CORES[phases]
        if same and each.size_mm2 == laid.size_mm2:
            yield replace(basis.cited(each), size_mm2=laid.size_mm2)
            return


def stocked(basis: Basis, family: CableFamily, phases: int, with_data: bool) -> Iterator[Stock]:
    """Yield the cables of a family that the firm fits, smallest first.

    With data cores where the family is bought with them; else a data cable runs beside.
    """
    bought = [
        each
        for each in basis.catalogue.cables
        if each.family is family
        and each.cores == CORES[phases]
        and each.size_mm2 >= basis.rules.least_point_mm2
    ]
    data = with_data and any(each.data_cores for each in bought)
    for each in sorted(bought, key=lambda row: row.size_mm2):
        if each.data_cores is data:
            yield basis.cited(each)
