"""What a broken street neutral would do to the point's earth, and the electrode it would take.

Information beside a point on the network's earth, never a reason to leave out its guard.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.foundations.quantity import Amperes, Ohms, Volts
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.standards.wiring.open_pen import (
    electrode_needed,
    electrode_needed_single,
    touch_voltage,
    unbalance,
)
from ampwright.survey.home import Home
from ampwright.tables.charging import touch_limit_v
from ampwright.tables.supply_limits import cmax, nominal_v

from ..noted import noted

METHOD: Final = Place("Ampwright", at="method, a broken street neutral", trust=Trust.DERIVED)


@dataclass(frozen=True, slots=True)
class BrokenNeutral:
    """Touch voltage with the neutral broken and no electrode, and the electrode to tame it.

    ``electrode_ohm`` is nought where none is needed.
    """

    touch_v: Volts
    electrode_ohm: Ohms


@computes("Isum", "A", formula="sum(lines)", place=METHOD)
def all_lines(lines: tuple[Amperes, ...]) -> Amperes:
    """Return the currents of all lines together.

    Examples
    --------
    >>> all_lines((Amperes(60.0), Amperes(30.0), Amperes(30.0)))
    120.0
    """
    return Amperes(float(sum(lines)))


def broken_neutral(home: Home, basis: Basis, loads_a: tuple[Amperes, ...]) -> Made[BrokenNeutral]:
    """Return what the earth terminal would stand at under the loads on each line.

    Hand in the worst credible unbalance, never a diversified demand: 60, 30 and 30 A give
    57.5 V at the nominal voltage, 60, 0 and 0 A give all of it. Nothing on: nothing to shift it.
    """
    book = basis.book
    most_v, nominal, highest = touch_limit_v(book), nominal_v(book), cmax(book)
    total_a = all_lines(loads_a)
    if not total_a:
        return Made(BrokenNeutral(Volts(0.0), Ohms(0.0)))
    no_electrode_a = noted(book, "IRA", Amperes(0.0), "A", METHOD)
    if home.supply.phases == 1:
        touch_v = touch_voltage(highest, nominal, total_a, total_a, no_electrode_a)
        return Made(
            BrokenNeutral(touch_v, electrode_needed_single(most_v, nominal, total_a, highest))
        )
    apart_a = unbalance(*loads_a)
    touch_v = touch_voltage(highest, nominal, apart_a, total_a, no_electrode_a)
    if touch_v <= most_v:
        return Made(BrokenNeutral(touch_v, noted(book, "RA", Ohms(0.0), "Ω", METHOD)))
    return Made(
        BrokenNeutral(touch_v, electrode_needed(highest, apart_a, most_v, total_a, nominal))
    )
