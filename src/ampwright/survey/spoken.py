"""An answer as somebody says or types it: words in, the answer of a fact out."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import Final

from ampwright.foundations.answers import Answer, Between, CannotSay, Is, OneOf, Value
from ampwright.foundations.errors import InputError

from .accept import accept, accept_few, accept_range, expected_of
from .register import Fact
from .wording import as_words

CANNOT: Final = re.compile(
    r"(?:cannot|can't|could not) say(?:\s*[:,]\s*(?P<why>.+))?", re.IGNORECASE
)
FIGURE: Final = re.compile(r"(?P<figure>[-−]?[0-9]+(?:\.[0-9]+)?)\s*(?P<unit>\D*)")
RANGE: Final = re.compile(
    r"(?:between\s+)?(?P<low>[0-9][0-9.]*)\s*(?:\bto\b|\band\b|-|–)\s*(?P<high>.+)", re.IGNORECASE
)
THOUSANDS: Final = re.compile(r"(?<=[0-9]),(?=[0-9]{3}\b)")
NEXT: Final = re.compile(r"\s*,?\s*\bor\b\s*|\s*,\s*", re.IGNORECASE)
YES_NO: Final[dict[str, Value]] = {
    "yes": True, "y": True, "true": True, "no": False, "n": False, "false": False,
}  # fmt: skip
UNITS: Final = {
    "A": ("amp", "amps", "amperes"),
    "kA": ("kiloamps",),
    "mA": ("milliamps",),
    "V": ("volt", "volts"),
    "Ω": ("ohm", "ohms"),
    "m": ("metre", "metres"),
    "mm": ("millimetres",),
    "mm²": ("mm2", "square millimetres"),
    "kW": ("kilowatt", "kilowatts"),
    "min": ("minutes",),
    "h": ("hour", "hours"),
    "p/kWh": ("p", "pence"),
}
"""Other ways in which people name a unit."""


def spoken(fact: Fact, words: str, key: str = "") -> Answer:
    """Return the answer that some words give; ``InputError`` when they give none.

    One answer, several with *or* between, a range with *to*, or *cannot say*. A unit may stand
    after a figure, and an answer may go by another of its names or by how a customer says it.

    Examples
    --------
    >>> fuse = Fact(ask="?", trade="fuse", kind=float, unit="A", allowed=(60.0, 80.0, 100.0))
    >>> spoken(fuse, "80 amps"), spoken(fuse, "60 or 80 A")
    (Is(value=80.0), OneOf(values=(60.0, 80.0)))
    >>> way = Fact(ask="?", trade="length", kind=float, unit="m", between=(0.1, 100.0))
    >>> spoken(way, "5 to 9 m"), spoken(way, "cannot say: never looked")
    (Between(low=5.0, high=9.0), CannotSay(why='never looked'))
    """
    name = key or fact.name
    text = " ".join(words.split())
    if cannot := CANNOT.fullmatch(text):
        return CannotSay(cannot["why"] or "")
    for value, said in fact.heard_as.items():
        if text.casefold() == said.casefold():
            return Is(value)
    if fact.is_number:
        return _figures(fact, text, name)
    if not fact.allowed:
        return Is(accept(fact, text, name))
    several = _named(fact, text)
    if len(several) > 1:
        return OneOf(accept_few(fact, several, name))
    return Is(accept(fact, several[0] if several else text, name))


def choices(fact: Fact) -> tuple[str, ...]:
    """Return the answers to choose from as a customer says them; none where there is no list.

    Examples
    --------
    >>> fuse = Fact(ask="?", trade="fuse", kind=float, unit="A", allowed=(60.0, 80.0))
    >>> choices(fuse), choices(Fact(ask="?", trade="a shower", kind=bool, allowed=(False, True)))
    (('60', '80'), ('no', 'yes'))
    """
    return tuple(fact.heard_as.get(value) or as_words(value) for value in fact.in_order)


def _figures(fact: Fact, text: str, name: str) -> Answer:
    """Return the answer that one figure gives, or several, or the ends of a range."""
    text = THOUSANDS.sub("", text)
    if ends := RANGE.fullmatch(text):
        low, high = _figure(fact, ends["low"], name), _figure(fact, ends["high"], name)
        return Between(*accept_range(fact, low, high, name))
    few = [_figure(fact, each, name) for each in NEXT.split(text) if each]
    if len(few) > 1:
        return OneOf(accept_few(fact, few, name))
    return Is(accept(fact, few[0] if few else text, name))


def _figure(fact: Fact, text: str, name: str) -> object:
    """Return a figure without its unit, or the text where it is none."""
    found = FIGURE.fullmatch(text)
    if found is None:
        return text
    unit = found["unit"].strip()
    said = (fact.unit, *UNITS.get(fact.unit, ()))
    if unit and unit.casefold() not in [each.casefold() for each in said]:
        if unit[0] in "oO":
            return text  # a letter in the place of a nought, not a unit
        do = f"Write the figure in {fact.unit}." if fact.unit else "Write the figure alone."
        raise InputError(name, text, expected_of(fact), do)
    number = float(found["figure"].replace("−", "-"))
    return int(number) if number == int(number) else number


def _named(fact: Fact, text: str) -> Sequence[Value]:
    """Return the answers of a short list that a text names, or none if it names anything else.

    The longest names first: some hold a comma or an *or* of their own.
    """
    meant: dict[str, Value] = dict(YES_NO) if fact.kind is bool else {}
    meant |= {str(each).casefold(): each for each in fact.allowed if fact.kind is not bool}
    meant |= {each.casefold(): value for each, value in fact.known_as.items()}
    meant |= {said.casefold(): value for value, said in fact.heard_as.items()}
    by_length = sorted(meant, key=len, reverse=True)
    rest, found = text.casefold(), list[Value]()
    while name := _first(by_length, rest):
        found.append(meant[name])
        rest = rest[len(name) :]
        if not rest:
            return found
        if not (between := NEXT.match(rest)):
            return ()
        rest = rest[between.end() :]
    return ()


def _first(names: Iterable[str], text: str) -> str:
    """Return the first of some names with which a text begins, or nothing."""
    return next((name for name in names if text.startswith(name)), "")
