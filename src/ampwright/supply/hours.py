"""At which hours the point may charge: at any, or locked to the cheap ones at night."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from ampwright.firm.catalogue import ChargePoint
from ampwright.foundations.checks import Finding, holds, requires
from ampwright.foundations.errors import InputError
from ampwright.foundations.quantity import Hours, Minutes
from ampwright.foundations.source import Place, Trust
from ampwright.foundations.stages import Made
from ampwright.foundations.working import computes
from ampwright.survey.home import Home

ANY: Final = "any"
NIGHT: Final = "night"
METHOD: Final = Place("Ampwright", at="method, hours allowed", trust=Trust.DERIVED)
CLOCK: Final = re.compile(r"(\d\d?):(\d\d)(?::\d\d)?")


@computes("t", "min", formula="60 * h + m", place=METHOD)
def minute_of(h: Hours, m: Minutes) -> Minutes:
    """Return the minute of the day of a time on the clock."""
    return Minutes(60 * h + m)


@computes("tend", "min", formula="t + 60 * h", place=METHOD)
def ends(t: Minutes, h: Hours) -> Minutes:
    """Return the minute at which some hours end that begin at a minute; it may be tomorrow's."""
    return Minutes(t + 60 * h)


@computes("tnext", "min", formula="t + 24 * 60", place=METHOD)
def tomorrow(t: Minutes) -> Minutes:
    """Return the same minute of the next day."""
    return Minutes(t + 24 * 60)


@requires("the hours at which the point may charge are locked", place=METHOD)
def hours_locked(setting_locked: bool) -> Finding:
    """A point that may only charge by night is one that nobody can start by day.

    One that may charge at any hour needs no lock; the default hours of a smart point are none.

    Its schedule is locked with its setting, and a button or an app does not override it.

    Examples
    --------
    >>> hours_locked(False).why
    'anyone can start it by day'
    """
    return holds(setting_locked, "" if setting_locked else "anyone can start it by day")


@dataclass(frozen=True, slots=True)
class HoursAllowed:
    """When the point may charge: ``any``, or ``night`` for the tariff's cheap hours alone."""

    hours: str


def allowed_hours(_home: Home, point: ChargePoint, hours: str) -> Made[HoursAllowed]:
    """Return the hours a point may charge at, and whether it can be held to them.

    No fact of the home bears on whether a point can be locked.
    """
    checks = (hours_locked(point.setting_locked),) if hours == NIGHT else ()
    return Made(HoursAllowed(hours), checks)


def within_hours(home: Home, at: str, hours: str) -> bool:
    """Say whether the point may charge at a time of day.

    The cheap hours begin at the tariff's time, that minute included, and end after its hours,
    that minute left out; they may pass midnight. Raises ``InputError`` for what is no time.
    """
    if hours == ANY:
        return True
    starts = clock(home.tariff.night_from, "tariff.night_from")
    stops = ends(starts, home.tariff.night_h)
    now = clock(at, "supply.readings")
    return starts <= now < stops or tomorrow(now) < stops


def clock(text: str, name: str) -> Minutes:
    """Return the minute of the day of a time such as 18:30.

    Examples
    --------
    >>> clock("18:30", "at"), clock("00:30:00", "at")
    (1110.0, 30.0)
    """
    found = CLOCK.fullmatch(text)
    if found is None:
        raise InputError(name, text, "a time such as 18:30", "Write hours and minutes.")
    return minute_of(Hours(float(found[1])), Minutes(float(found[2])))
