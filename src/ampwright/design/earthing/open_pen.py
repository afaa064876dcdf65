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
    electrode_pull,
    phase_voltage,
    shift_across,
    shift_along,
    touch_voltage,
    unbalance,
)
from ampwright.survey.home import Home
from ampwright.survey.if_said import if_said
from ampwright.tables.book import Book
from ampwright.tables.charging import touch_limit_v
from ampwright.tables.supply_limits import cmax, nominal_v

from ..noted import noted
from .bonding import COMBINED, doubted_earthing

METHOD: Final = Place("Ampwright", at="method, a broken street neutral", trust=Trust.DERIVED)


@dataclass(frozen=True, slots=True)
class BrokenNeutral:
    """What the earth terminal stands at with the street's neutral broken.

    ``touch_v`` is without an electrode and ``held_v`` with the one that is joined to the earth
    terminal; without one they are the same. ``lines_v`` is what the loads of each line then see,
    and ``needed_ohm`` the electrode that would hold the touch voltage to its limit, nought
    where none is needed.
    """

    touch_v: Volts
    held_v: Volts
    lines_v: tuple[Volts, ...]
    needed_ohm: Ohms


@computes("Isum", "A", formula="sum(lines)", place=METHOD)
def all_lines(lines: tuple[Amperes, ...]) -> Amperes:
    """Return the currents of all lines together.

    Examples
    --------
    >>> all_lines((Amperes(60.0), Amperes(30.0), Amperes(30.0)))
    120.0
    """
    return Amperes(float(sum(lines)))


def broken_neutral(home: Home, basis: Basis) -> Made[BrokenNeutral | None]:
    """Return what a broken street neutral would do to a house whose earth it is as well.

    Under the worst credible unbalance: one line loaded to the main fuse, the others idle. What
    guards the point is judged where the point is earthed; nothing here is. ``None`` where the
    house does not stand on a combined neutral and earth.
    """
    if doubted_earthing(home) != COMBINED:
        return Made(None)
    return Made(with_neutral_broken(home, basis, worst_loads(home, basis)))


def worst_loads(home: Home, basis: Basis) -> tuple[Amperes, ...]:
    """Return the worst credible unbalance: all the fuse carries on one line, nothing elsewhere."""
    idle = noted(basis.book, "I", Amperes(0.0), "A", METHOD)
    return (home.supply.main_fuse_a, idle, idle)[: home.supply.phases]


def with_neutral_broken(home: Home, basis: Basis, loads_a: tuple[Amperes, ...]) -> BrokenNeutral:
    """Return what the earth terminal would stand at under the loads on each line.

    Hand in the worst credible unbalance, never a diversified demand: 60, 30 and 30 A give
    57.5 V at the nominal voltage, 60, 0 and 0 A give all of it. Nothing on: nothing to shift it.
    """
    book = basis.book
    nominal, highest, total_a = nominal_v(book), cmax(book), all_lines(loads_a)
    if not total_a:
        return BrokenNeutral(Volts(0.0), Volts(0.0), (), Ohms(0.0))
    alone_a = noted(book, "IRA", Amperes(0.0), "A", METHOD)
    pull_a = _pull(home, book, alone_a)
    apart_a = total_a if len(loads_a) == 1 else unbalance(*loads_a)
    touch_v = touch_voltage(highest, nominal, apart_a, total_a, alone_a)
    return BrokenNeutral(
        touch_v=touch_v,
        held_v=touch_voltage(highest, nominal, apart_a, total_a, pull_a) if pull_a else touch_v,
        lines_v=_lines(book, loads_a, pull_a),
        needed_ohm=_needed(book, touch_v, apart_a, total_a, len(loads_a)),
    )


def _pull(home: Home, book: Book, alone_a: Amperes) -> Amperes:
    """Return the current that an electrode joined to the earth terminal draws, nought without."""
    if not if_said(lambda: home.earthing.electrode_joined, False):
        return alone_a
    return electrode_pull(nominal_v(book), home.earthing.electrode_ohm)


def _lines(book: Book, loads_a: tuple[Amperes, ...], pull_a: Amperes) -> tuple[Volts, ...]:
    """Return what the loads of each line see between it and the neutral that broke away."""
    idle_a = noted(book, "I", Amperes(0.0), "A", METHOD)
    found = []
    for first in range(len(loads_a)):
        one_a, next_a, last_a = (*loads_a[first:], *loads_a[:first], idle_a, idle_a)[:3]
        along = shift_along(one_a, next_a, last_a, pull_a)
        across = shift_across(one_a, next_a, last_a, pull_a)
        found.append(phase_voltage(cmax(book), nominal_v(book), along, across))
    return tuple(found)


def _needed(book: Book, touch_v: Volts, apart_a: Amperes, total_a: Amperes, lines: int) -> Ohms:
    """Return the electrode that would hold the touch voltage down; nought where it is low."""
    most_v = touch_limit_v(book)
    if touch_v <= most_v:
        return noted(book, "RA", Ohms(0.0), "Ω", METHOD)
    if lines == 1:
        return electrode_needed_single(most_v, nominal_v(book), total_a, cmax(book))
    return electrode_needed(cmax(book), apart_a, most_v, total_a, nominal_v(book))
