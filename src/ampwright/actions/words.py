"""How numbers, times, days and answers are written wherever people read them.

The only place that rounds. Figures keep their unit; a range is written once, with one unit.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from decimal import ROUND_HALF_UP, Decimal

from ampwright.foundations.answers import Answer, Between, CannotSay, Is, OneOf, Value
from ampwright.foundations.dates import day as day
from ampwright.foundations.money import Pence, pounds
from ampwright.foundations.plural import count as count
from ampwright.foundations.working import figure

BRACKETED = re.compile(r" \([^()]*\)")
STOPS = re.compile(r"[,;:]")

MINUTES_AS_MINUTES = 120
"""From so many minutes on, a time is written in hours."""
MINUS = "−"


def number(value: float, decimals: int | None = None) -> str:
    """Write a number: to so many decimals, else to three figures, whole from a hundred on.

    Examples
    --------
    >>> number(53.65), number(0.2811), number(32.0), number(2540.3), number(-0.5, 1)
    ('53.7', '0.281', '32', '2,540', '−0.5')
    >>> number(7.36, 1), number(216.2), number(0.0)
    ('7.4', '216', '0')
    """
    if decimals is None:
        decimals = _decimals(abs(value))
    step = Decimal(1).scaleb(-decimals)
    # A half goes up as people do it: 53.65 is a little less in binary.
    rounded = Decimal(repr(float(abs(value)))).quantize(step, ROUND_HALF_UP)
    text = f"{rounded:,.{decimals}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return f"{MINUS}{text}" if value < 0 and text != "0" else text


def _decimals(size: float) -> int:
    """Return how many decimals show three figures of a number."""
    for decimals, least in enumerate((100, 10, 1)):
        if size >= least:
            return decimals
    return 3


def amount(value: float, unit: str, decimals: int | None = None) -> str:
    """Write a number with its unit.

    Examples
    --------
    >>> amount(32.0, "A"), amount(7.36, "kW", 1), amount(0.05, "")
    ('32 A', '7.4 kW', '0.05')
    """
    return f"{number(value, decimals)} {unit}".rstrip()


def span(low: float, high: float, unit: str, decimals: int | None = None) -> str:
    """Write a range with one unit, or the one value when both ends read the same.

    Examples
    --------
    >>> span(12.0, 15.04, "h"), span(32.0, 32.0, "A"), span(0.81, 0.8101, "V")
    ('12 to 15 h', '32 A', '0.81 V')
    """
    first, last = number(low, decimals), number(high, decimals)
    joined = first if first == last else f"{first} to {last}"
    return f"{joined} {unit}".rstrip()


def against(actual: float, limit: float, unit: str) -> str:
    """Write a number beside the one it is held to, with figures enough to tell them apart.

    Examples
    --------
    >>> against(53.65, 60.0, "A"), against(60.00004, 60.0, "A"), against(32.0, 32.0, "A")
    ('53.65 A against 60 A', '60.00004 A against 60 A', '32 A against 32 A')
    """
    digits = 4
    while figure(actual, digits) == figure(limit, digits) and actual != limit:
        digits += 1
    sides = (f"{figure(each, digits)} {unit}".rstrip() for each in (actual, limit))
    return " against ".join(side.replace("-", MINUS) for side in sides)


def by_line(line_a: Sequence[float]) -> str:
    """Write what each of three lines carries, or what the one does.

    Examples
    --------
    >>> by_line((33.64, 36.6, 29.98)), by_line((53.65,))
    ('L1 33.6, L2 36.6, L3 30 A', '53.7 A')
    """
    if len(line_a) == 1:
        return amount(line_a[0], "A")
    parts = [f"L{i} {amount(each, 'A')}" for i, each in enumerate(line_a, 1)]
    return ", ".join(part.removesuffix(" A") for part in parts) + " A"


def from_to(now_a: Sequence[float], then_a: Sequence[float]) -> str:
    """Write what each of three lines carries now and then.

    Examples
    --------
    >>> from_to((33.64, 36.6, 29.98), (49.64, 52.6, 29.98))
    'L1 33.6 → 49.6, L2 36.6 → 52.6, L3 30 A'
    """
    pairs = [(number(now), number(then)) for now, then in zip(now_a, then_a, strict=True)]
    parts = [now if now == then else f"{now} → {then}" for now, then in pairs]
    return f"{', '.join(f'L{i} {each}' for i, each in enumerate(parts, 1))} A"


def percent(share: float) -> str:
    """Write a share of one in hundredths.

    Examples
    --------
    >>> percent(0.0081), percent(0.05)
    ('0.81 %', '5 %')
    """
    return f"{number(share * 100, 2)} %"


def hours(value: float) -> str:
    """Write a time in hours as people say it.

    Examples
    --------
    >>> hours(0.95), hours(1.75), hours(8.0), hours(0.0), hours(13.52)
    ('57 min', '1 h 45 min', '8 h', '0 min', '13 h 31 min')
    """
    whole, rest = divmod(round(value * 60), 60)
    parts = ([f"{whole} h"] if whole else []) + ([f"{rest} min"] if rest else [])
    return " ".join(parts) or "0 min"


def minutes(low: float, high: float) -> str:
    """Write a range of minutes, in quarter hours once it is long.

    Examples
    --------
    >>> minutes(50.0, 70.0), minutes(45.0, 45.0), minutes(190.0, 304.0), minutes(0.0, 0.0)
    ('50 to 70 min', '45 min', '3¼ to 5 h', '')
    """
    if not high:
        return ""
    if high < MINUTES_AS_MINUTES:
        return span(low, high, "min", 0)
    first, last = _quarters(low), _quarters(high)
    return f"{first} h" if first == last else f"{first} to {last} h"


def _quarters(value: float) -> str:
    """Write minutes as hours and quarters of an hour, to the nearest."""
    whole, rest = divmod(round(value / 15), 4)
    part = ("", "¼", "½", "¾")[rest]
    return f"{whole or ''}{part}" or "0"


def money(pence: float) -> str:
    """Write a sum to the nearest pound.

    Examples
    --------
    >>> money(20318.4), money(129800)
    ('£203', '£1,298')
    """
    return pounds(Pence(round(pence / 100) * 100))


def value(said: Value, unit: str = "") -> str:
    """Write one value of a fact.

    Examples
    --------
    >>> value(True), value(80.0, "A"), value("TN-C-S"), value(1985)
    ('yes', '80 A', 'TN-C-S', '1985')
    """
    if isinstance(said, bool):
        return "yes" if said else "no"
    if isinstance(said, str):
        return said
    return f"{said:.10g} {unit}".rstrip()


def any_of(values: Iterable[Value], unit: str = "") -> str:
    """Write values of which one is meant.

    Examples
    --------
    >>> any_of((60.0, 80.0, 100.0), "A"), any_of((True,))
    ('60, 80 or 100 A', 'yes')
    """
    *most, last = [value(each) for each in values]
    joined = f"{', '.join(most)} or {last}" if most else last
    return f"{joined} {unit}".rstrip()


def all_of(texts: Sequence[str]) -> str:
    """Write several things as one list.

    Examples
    --------
    >>> all_of(("a", "b", "c")), all_of(("a",)), all_of(())
    ('a, b and c', 'a', '')
    """
    *most, last = texts or ("",)
    return f"{', '.join(most)} and {last}" if most else last


def answer(said: Answer, unit: str = "") -> str:
    """Write what was said of a fact.

    Examples
    --------
    >>> answer(OneOf((60.0, 80.0)), "A"), answer(Between(5.0, 9.0), "m"), answer(CannotSay())
    ('60 or 80 A', '5 to 9 m', 'could not say')
    """
    match said:
        case Is():
            return value(said.value, unit)
        case OneOf():
            return any_of(said.values, unit)
        case Between():
            return f"{value(said.low)} to {value(said.high, unit)}"
        case CannotSay():
            return f"could not say: {said.why}" if said.why else "could not say"


def brief(text: str) -> str:
    """Return the first part of a sentence, up to its first stop, without what is in brackets.

    Examples
    --------
    >>> brief("Run a bond to the water service, clamped before any branch")
    'Run a bond to the water service'
    >>> brief("Move it to 8-L3 (54 mm of wire needed, 300 there); test it again")
    'Move it to 8-L3'
    """
    return STOPS.split(BRACKETED.sub("", text), maxsplit=1)[0]


def small(text: str) -> str:
    """Write a text with a small letter at its head, unless it begins with an abbreviation.

    Examples
    --------
    >>> small("Run a bond"), small("RCD in front")
    ('run a bond', 'RCD in front')
    """
    return text if text[1:2].isupper() else text[:1].lower() + text[1:]


def with_article(noun: str) -> str:
    """Write a noun that begins with a figure after *a* or *an*, as it is read out.

    Examples
    --------
    >>> with_article("7.4 kW point"), with_article("11 kW point"), with_article("8.5 kW shower")
    ('a 7.4 kW point', 'an 11 kW point', 'an 8.5 kW shower')
    """
    whole = noun.partition(" ")[0].partition(".")[0]
    return f"{'an' if whole.startswith('8') or whole in ('11', '18') else 'a'} {noun}"


def capital(text: str) -> str:
    """Write a text with a capital at its head and the rest as it is.

    Examples
    --------
    >>> capital("bond the water"), capital("PME kept")
    ('Bond the water', 'PME kept')
    """
    return text[:1].upper() + text[1:]
