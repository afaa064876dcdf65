"""Volts at the point against the window of its open-PEN detection, low end and high."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from ampwright.firm.basis import Basis
from ampwright.firm.catalogue import Detection
from ampwright.foundations.checks import Check, Finding, at_least, requires
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.quantity import Share, Volts
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made, made_of
from ampwright.foundations.working import computes
from ampwright.standards.wiring.charging import window_held, window_held_high
from ampwright.standards.wiring.voltage_drop import volts_after
from ampwright.survey.home import Home
from ampwright.survey.home_loads import Source
from ampwright.survey.if_said import if_said
from ampwright.tables.charging import window_high_v, window_low_v
from ampwright.tables.supply_limits import lowest_legal_v, nominal_v

METHOD: Final = Place("Ampwright", at="method, volts at the point", trust=Trust.DERIVED)
FED: Final = Place(
    "Ampwright", at="method, the legal floor less the drop the rules advise", trust=Trust.DERIVED
)
FIRM: Final = Place("firm rule", at="margin to the trip window", trust=Trust.COMMON_PRACTICE)
SUN: Final = "solar"
SUNNY: Final = (
    "sun on the roof raises the volts by day, and nobody has read them: read at noon on a bright "
    "day, for the point opens above its window too"
)


@dataclass(frozen=True, slots=True)
class PointVolts:
    """Volts at the point, line to neutral: charging at its setting, and idle on a high day.

    ``read`` says whether an instrument stands behind the lowest.
    """

    lowest_v: Volts
    highest_v: Volts
    read: bool


@computes("Ulow", "V", formula="window + margin", place=FIRM)
def low_end(window: Volts, margin: Volts) -> Volts:
    """Return the least volts that keep the firm's margin above the window's low end.

    Examples
    --------
    >>> low_end(Volts(207.0), Volts(3.0))
    210.0
    """
    return Volts(window + margin)


@computes("Uhigh", "V", formula="window - margin", place=FIRM)
def high_end(window: Volts, margin: Volts) -> Volts:
    """Return the most volts that keep the firm's margin below the window's high end.

    Examples
    --------
    >>> high_end(Volts(253.0), Volts(3.0))
    250.0
    """
    return Volts(window - margin)


@tells(METHOD)
def window_reckoned(U: Volts, low: Volts) -> str:  # noqa: N803 - as in the clause
    """Say what the point keeps at the lowest volts the law allows, where nobody read them.

    Examples
    --------
    >>> window_reckoned(Volts(212.4), Volts(210.0)).says
    'at the lowest volts the law allows, the point keeps 212.4 V; it needs 210 V'
    """
    return f"at the lowest volts the law allows, the point keeps {U:.1f} V; it needs {low:.0f} V"


@tells(METHOD, caution=True)
def window_doubted(U: Volts, low: Volts) -> str:  # noqa: N803 - as in the clause
    """Ask for a reading where the legal floor, standing in for one, would open the point.

    Never a failure: nobody has read that the volts go so low.

    Examples
    --------
    >>> window_doubted(Volts(204.0), Volts(210.0)).caution[-34:]
    's at tea time before relying on it'
    """
    return (
        f"at the lowest volts the law allows, the point would stand at {U:.1f} V, under the "
        f"{low:.0f} V it needs; read the volts at tea time before relying on it"
    )


@tells(METHOD)
def window_not_watched(detection: str) -> str:
    """Say that a point that does not watch line to neutral is not opened by low or high volts.

    Examples
    --------
    >>> window_not_watched("none").says[:60]
    'its detection is none: it does not watch line to neutral; lo'
    """
    return (
        f"its detection is {detection}: it does not watch line to neutral; low volts stay a matter "
        "for the operator"
    )


@computes("Uworst", "V", formula="floor - share * U0", place=FED)
def least_fed(floor: Volts, share: Share, U0: Volts) -> Volts:  # noqa: N803 - as printed
    """Return the least volts that the rules foresee at equipment.

    Examples
    --------
    >>> least_fed(Volts(216.2), Share(0.05), Volts(230.0))
    204.7
    """
    return Volts(floor - share * U0)


@requires("volts at the point ≥ the least that equipment is fed with", unit="V", place=FED)
def volts_borne(U: Volts, least: Volts) -> Finding:  # noqa: N803 - as in the clause
    """A point and a car are not left with fewer volts than any supply in order would give.

    By what was read; a detection that does not watch the volts opens nothing, and the car may
    stop all the same.

    Examples
    --------
    >>> volts_borne(Volts(195.9), Volts(204.7)).outcome.value
    'fail'
    """
    return at_least(U, least)


def volts_at_point(
    home: Home,
    basis: Basis,
    detection: Detection,
    lowest_v: Volts,
    highest_v: Volts,
    read: bool,
    high_read: bool,
    drop_v: Volts,
) -> Made[PointVolts]:
    """Return the volts at the point and whether its detection leaves it alone.

    ``drop_v`` is from the origin, to neutral, at the setting. Read volts keep the firm's margin
    to both ends or fail. The legal floor, where none were read, warns inside the margin; the
    legal ceiling is the window's own high end, so there a margin would warn in every home and
    none is asked. A point that does not watch them needs what equipment is fed with at worst:
    the legal floor less the drop the rules advise. Sun on the home's own roof, with its volts
    never read, is a warning.
    """
    out = PointVolts(volts_after(lowest_v, drop_v), highest_v, read)
    if detection is not Detection.VOLTS_WINDOW:
        borne = (_borne(basis, out.lowest_v),) if read else ()
        return Made(out, borne, notes=(window_not_watched(detection.value),))
    found = (_low(basis, out.lowest_v, read), _high(home, basis, highest_v, high_read))
    return made_of(out, found)


def _borne(basis: Basis, volts_v: Volts) -> Check:
    """Return whether a point that does not watch its volts still has enough of them."""
    book = basis.book
    least_v = least_fed(lowest_legal_v(book), basis.rules.drop_share, nominal_v(book))
    return volts_borne(volts_v, least_v)


def _low(basis: Basis, volts_v: Volts, read: bool) -> Check | Note:
    """Return whether the point stays on while it charges."""
    low_v = low_end(window_low_v(basis.book), basis.rules.voltage_margin_v)
    if read:
        return window_held(volts_v, low_v)
    return (window_reckoned if volts_v >= low_v else window_doubted)(volts_v, low_v)


def _high(home: Home, basis: Basis, volts_v: Volts, read: bool) -> Check:
    """Return whether the point stays on when the street is full of sun."""
    window_v = window_high_v(basis.book)
    if read:
        return window_held_high(volts_v, high_end(window_v, basis.rules.voltage_margin_v))
    check = window_held_high(volts_v, window_v)
    sunny = any(if_said(kind_of(each), "") == SUN for _, each in home.sources.so_far())
    return check.with_caution(SUNNY) if sunny else check


def kind_of(source: Source) -> Callable[[], str]:
    """Return how to read what a source is."""
    return lambda: source.kind
