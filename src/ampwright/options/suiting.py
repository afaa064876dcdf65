"""Settings that suit what is there: the volts that were read, a cable that lies there already."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import product
from math import floor

from ampwright.design.circuit.voltage import low_end
from ampwright.design.route import paced, route
from ampwright.firm.basis import Basis
from ampwright.foundations.quantity import Amperes, Metres, MilliVoltsPerAmpMetre, Ohms
from ampwright.foundations.stages import Made
from ampwright.standards.wiring.voltage_drop import drop
from ampwright.supply.voltage import most_current, origin_voltage, service_loop
from ampwright.survey.home import Home
from ampwright.tables.charging import window_low_v
from ampwright.tables.voltage_drop import drop_mv

from .choices import METER
from .lifting import Lifter

UNLOADED = Amperes(0.0)


def kept_by_volts(
    lifter: Lifter, basis: Basis, ways: Sequence[tuple[str, str]], hours: Sequence[str]
) -> Iterator[Amperes]:
    """Yield the greatest whole setting that each way and each hours leave, in some home."""
    for (tap, place), each in product(ways, hours):
        for value in lifter.lift(greatest_setting, basis, tap, place, each).values:
            if isinstance(value, Made) and value.out is not None:
                yield value.out


def greatest_setting(
    home: Home, basis: Basis, tap: str, place: str, hours: str
) -> Made[Amperes | None]:
    """Return the greatest whole setting under which a point keeps the low end of its window.

    With the firm's margin, by what was read, along the way in the thinnest cable that the firm
    fits, a board's own feed counted as if it were of that too: never more than the design then
    finds. ``None`` where nothing was read. A choice to try, not a printed number.
    """
    origin = origin_voltage(home, basis, UNLOADED, hours).out
    if not origin.read:
        return Made(None)
    length_m = paced(route(home, basis, tap, place).out).length_m
    if tap != METER:
        length_m = Metres(length_m + home.boards[tap].from_meter_m)
    keep_v = low_end(window_low_v(basis.book), basis.rules.voltage_margin_v)
    cable_ohm = Ohms(drop(worst_mv(basis), Amperes(1.0), length_m))
    most_a = most_current(origin.lowest_v, keep_v, service_loop(home, basis), cable_ohm)
    return Made(Amperes(float(floor(most_a))))


def worst_mv(basis: Basis) -> MilliVoltsPerAmpMetre:
    """Return what the thinnest cable of any family the firm buys loses, a metre and an ampere."""
    least_mm2 = float(basis.rules.least_point_mm2)
    bought = {each.family for each in basis.catalogue.cables if each.size_mm2 == least_mm2}
    return max(drop_mv(basis.book, family, 1, least_mm2) for family in bought)


def kept_by_laid(basis: Basis) -> Iterator[Amperes]:
    """Yield the settings that a cable already laid may bear: each rating of a device.

    Which of them it bears is for the design to find.
    """
    yield from dict.fromkeys(each.rating_a for each in basis.catalogue.devices)
