"""The numbers of an option: one, or the range over the possible homes in which it holds."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any, Final

from ampwright.foundations.answers import Missing
from ampwright.options.held import held_values, known_values
from ampwright.options.search import Option
from ampwright.options.spread import Spread
from ampwright.options.work import Design

from .facts import fact_name
from .shapes import Figure
from .words import all_of, small, span

Get = Callable[[Design], Any]
"""Gets one number of a design, or one for each line."""


@dataclass(frozen=True, slots=True)
class Spec:
    """A named number: where it stands in a design, its unit, how many decimals people want."""

    name: str
    unit: str
    get: Get
    decimals: int | None = None


SPECS: Final = (
    Spec("power_kw", "kW", lambda d: d.use.charging.offered_kw, 1),
    Spec("demand_now_a", "A", lambda d: d.supply.counted.now_a),
    Spec("demand_with_point_a", "A", lambda d: d.supply.carried.with_point_a),
    Spec("carried_a", "A", lambda d: d.supply.carried.carried_a),
    Spec("supply_rating_a", "A", lambda d: d.supply.capacity.rating_a),
    Spec("declared_a", "A", lambda d: d.connection.declared_a),
    Spec("before_asking_a", "A", lambda d: d.connection.margin_a),
    Spec("device_a", "A", lambda d: d.device.rating_a),
    Spec("cable_mm2", "mm²", lambda d: d.cable.size_mm2),
    Spec("cable_m", "m", lambda d: d.cable.length_m),
    Spec("cable_capacity_a", "A", lambda d: d.cable.capacity_a),
    Spec("drop_v", "V", lambda d: d.cable.drop_v, 2),
    Spec("drop_share", "", lambda d: d.cable.drop_share),
    Spec("loop_ohm", "Ω", lambda d: d.cable.zs_ohm),
    Spec("loop_limit_ohm", "Ω", lambda d: d.cable.zs_limit_ohm),
    Spec("lowest_volts_v", "V", lambda d: d.volts.lowest_v, 1),
    Spec("highest_volts_v", "V", lambda d: d.volts.highest_v, 1),
    Spec("charging_h_a_day", "h", lambda d: d.use.charging.hours_a_day),
    Spec("cheap_h_a_day", "h", lambda d: d.use.nights.cheap_h),
    Spec("energy_kwh_a_year", "kWh", lambda d: d.use.need.kwh_a_year),
    Spec("cost_at_night_p_a_year", "p", lambda d: d.use.cost.at_night_p),
    Spec("cost_by_day_p_a_year", "p", lambda d: d.use.cost.by_day_p),
    Spec("usual_work_min", "min", lambda d: d.labour.usual_min, 0),
    Spec("usual_mate_min", "min", lambda d: d.labour.mate_min, 0),
    Spec("price_p", "p", lambda d: d.price.total.usual_p, 0),
    Spec("price_low_p", "p", lambda d: d.price.total.low_p, 0),
    Spec("price_high_p", "p", lambda d: d.price.total.high_p, 0),
)


def figures_of(option: Option[Design]) -> dict[str, Figure]:
    """Return every named number that can be worked out for an option."""
    found = {}
    for spec in SPECS:
        values = [heaviest(value) for value in known_values(option, spec.get(option.design))]
        numbers = [value for value in values if value is not None]
        if numbers:
            low, high = min(numbers), max(numbers)
            words = span(low, high, spec.unit, spec.decimals)
            found[spec.name] = Figure(low, high, spec.unit, words)
    return found


def heaviest(value: Any) -> float | None:
    """Return a number as it is, and the largest of several lines."""
    if isinstance(value, tuple):
        return max((float(each) for each in value), default=None)
    return None if value is None else float(value)


def texts(option: Option[Design], spread: Spread[Any], write: Callable[[Any], str]) -> str:
    """Write all that a result can be, joined by *or*; what is not known names its facts."""
    written: dict[str, None] = {}
    for value in held_values(option, spread):
        written[not_known(value.keys) if isinstance(value, Missing) else write(value)] = None
    return " or ".join(written) or "–"


def not_known(keys: Iterable[str]) -> str:
    """Say what has to be asked before something can be said.

    Examples
    --------
    >>> not_known(("supply.ze_ohm",))
    'not known yet: external earth loop impedance'
    """
    return f"not known yet: {all_of([small(fact_name(key)) for key in keys])}"
