"""Faults of the point's circuit: its loop, its earth core, and the worst its device must break."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.checks import Check, Finding, requires, undetermined
from ampwright.foundations.errors import OutOfTableError
from ampwright.foundations.quantity import Kiloamperes, Metres, Ohms, Share, SquareMm
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.wiring.fault import (
    adiabatic_size,
    breaker_loop_limit,
    device_breaks_fault,
    earth_core_withstands,
    line_and_earth,
    loop,
    resistance_hot,
)
from ampwright.standards.wiring.prospective import DOUBLE, three_phase_from_single
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.book import Book
from ampwright.tables.capacity import CableFamily, used_at_c
from ampwright.tables.conductors import k_of_family, resistance_20, temperature_multiplier
from ampwright.tables.devices import let_through, trip_multiple
from ampwright.tables.supply_limits import cmin, nominal_v

from ..earthing.rods import house_electrode_ohm
from ..noted import noted
from ..residual import largest_electrode
from .device import Guard

METHOD: Final = Place("Ampwright", at="method, faults of the circuit", trust=Trust.DERIVED)
NETWORK_EARTH: Final = "pme"
HOUSE_ROD: Final = "house rod"
NOT_READ: Final = (
    "nobody has read the fault current between lines: twice that of one line stands in; read it"
)


@dataclass(frozen=True, slots=True)
class FaultLevels:
    """The largest fault current at the device, as read at the origin."""

    prospective_ka: Kiloamperes


@computes("Ipf", "kA", formula="max(read)", place=METHOD)
def largest_fault(read: tuple[Kiloamperes, ...]) -> Kiloamperes:
    """Return the largest of the fault currents read at the origin.

    Examples
    --------
    >>> largest_fault((Kiloamperes(1.21), Kiloamperes(2.3)))
    2.3
    """
    return Kiloamperes(max(read))


@requires("what the device lets through is known", place=METHOD)
def let_through_known(curve: str, found: str) -> Finding:
    """A table or the maker says how much energy the device passes before it opens.

    Only for devices that the table of limiting classes does not reach.

    Examples
    --------
    >>> let_through_known("B", "no row for 63 A").why
    'ask the maker for the energy this curve B device lets through: no row for 63 A'
    """
    return undetermined(
        f"ask the maker for the energy this curve {curve} device lets through: {found}"
    )


def doubled(book: Book, one_ka: Kiloamperes) -> Kiloamperes:
    """Return the fault current of three lines as the rule of thumb has it, where nobody read it."""
    return three_phase_from_single(one_ka, noted(book, "times", Share(2.0), "", DOUBLE))


def fault_levels(
    home: Home, basis: Basis, point_phases: int, breaking_ka: Kiloamperes
) -> Made[FaultLevels]:
    """Return the largest fault current at the device and whether the device breaks it.

    The reading at the origin stands for every board beyond it, which errs on the safe side. On
    three lines the current between them counts as well, by the rule of thumb until it is read.
    """
    one_ka = home.supply.fault_current_ka
    if point_phases == 1:
        return Made(FaultLevels(one_ka), (device_breaks_fault(one_ka, breaking_ka),))
    three_ka = if_said(lambda: home.supply.fault_current_3ph_ka, None)
    largest_ka = largest_fault(
        (one_ka, doubled(basis.book, one_ka) if three_ka is None else three_ka)
    )
    check = device_breaks_fault(largest_ka, breaking_ka)
    return Made(
        FaultLevels(largest_ka), (check.with_caution(NOT_READ) if three_ka is None else check,)
    )


def loop_before(home: Home, basis: Basis, earthing: str, feed_ohm: Ohms) -> Ohms:
    """Return the loop up to the point's circuit: the network's earth or an electrode.

    The point's own electrode is not there yet and counts for the most the firm lets it be.
    """
    if earthing == NETWORK_EARTH:
        origin = home.supply.ze_ohm
    elif earthing == HOUSE_ROD:
        origin = house_electrode_ohm(home, basis.book)
    else:
        return basis.rules.stable_rod_ohm
    return loop(origin, feed_ohm) if feed_ohm else origin


def loop_limit_ohm(book: Book, earthing: str, guard: Guard) -> Ohms:
    """Return the largest loop for the device, or for its residual current where a rod earths it."""
    if earthing == NETWORK_EARTH:
        multiple = Share(trip_multiple(book, guard.curve))
        return breaker_loop_limit(cmin(book), nominal_v(book), multiple, guard.rating_a)
    return largest_electrode(book, guard.rcd_ma)


def cores_ohm(
    book: Book, family: CableFamily, line_mm2: SquareMm, earth_mm2: SquareMm, length_m: Metres
) -> Ohms:
    """Return line and earth core together at the temperature the cable works at."""
    hot = temperature_multiplier(book, used_at_c(book, family))
    return line_and_earth(
        resistance_hot(resistance_20(book, line_mm2), hot),
        resistance_hot(resistance_20(book, earth_mm2), hot),
        length_m,
    )


def earth_core_check(book: Book, family: CableFamily, earth_mm2: SquareMm, guard: Guard) -> Check:
    """Return whether the earth core bears what the device lets through at its worst."""
    try:
        energy = let_through(book, guard.curve, guard.rating_a, guard.breaking_ka)
    except OutOfTableError as outside:
        return let_through_known(guard.curve, str(outside))
    return earth_core_withstands(adiabatic_size(energy, k_of_family(book, family)), earth_mm2)
