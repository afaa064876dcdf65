"""Whether a value may stand as the answer to a fact, and how it is then written."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date, time
from difflib import get_close_matches
from math import isfinite
from typing import Final

from ampwright.foundations.answers import Value
from ampwright.foundations.errors import InputError
from ampwright.foundations.plural import count
from ampwright.standards.network.meter_point import METER_NUMBER, Adds, MeterNumber

from .register import ID, Fact
from .wording import as_words, either

POSTCODE: Final = re.compile(r"[A-Z]{1,2}[0-9][A-Z0-9]? [0-9][A-Z]{2}")
TIME: Final = re.compile(r"([01][0-9]|2[0-3]):[0-5][0-9]")
YES_NO: Final = {"yes": "true", "no": "false", "y": "true", "n": "false"}


def accept(fact: Fact, value: object, key: str = "") -> Value:
    """Return a value in the form in which the fact is kept; ``InputError`` says what is wrong.

    Examples
    --------
    >>> fuse = Fact(ask="?", trade="fuse", kind=float, unit="A", allowed=(60.0, 80.0, 100.0))
    >>> accept(fuse, 80)
    80.0
    >>> accept(fuse, "8O", "supply.main_fuse_a")
    Traceback (most recent call last):
        ...
    ampwright.foundations.errors.InputError: supply.main_fuse_a is '8O'; expected one of 60, \
80 or 100 A, as a figure. "8O" has a letter O in it. Write the figure on the label, for example 80.
    """
    name = key or fact.name
    if fact.kind is bool:
        return _yes_or_no(value, name)
    if fact.is_number:
        return _number(fact, value, name)
    return _text(fact, value, name)


def expected_of(fact: Fact) -> str:
    """Return in words what a fact accepts.

    Examples
    --------
    >>> expected_of(Fact(ask="?", trade="length", kind=float, unit="m", between=(0.1, 100.0)))
    'a number from 0.1 to 100 m'
    """
    unit = f" {fact.unit}" if fact.unit else ""
    if fact.kind is bool:
        return "true or false"
    if fact.allowed:
        quoted = either([_as_kept(fact, each) for each in fact.in_order])
        return f"one of {quoted}{unit}"
    if fact.between:
        whole = "whole number" if fact.kind is int else "number"
        return f"a {whole} from {as_words(fact.between[0])} to {as_words(fact.between[1])}{unit}"
    return FORMS[fact.form][0]


def _as_kept(fact: Fact, value: Value) -> str:
    """Return an answer as a file has it, with what it means where that is not plain."""
    kept = f'"{value}"' if isinstance(value, str) else as_words(value)
    return f"{kept} ({fact.written_as[value]})" if value in fact.written_as else kept


def _yes_or_no(value: object, name: str) -> bool:
    if isinstance(value, bool):
        return value
    meant = YES_NO.get(str(value).strip().lower())
    do = f"Write {meant}, without quotes." if meant else "Write true for yes, false for no."
    raise InputError(name, value, "true or false", do)


def _number(fact: Fact, value: object, name: str) -> Value:
    expected = expected_of(fact)
    if isinstance(value, str):
        raise InputError(name, value, f"{expected}, as a figure", _figure_hint(fact, value))
    if isinstance(value, bool) or not isinstance(value, int | float) or not isfinite(value):
        raise InputError(name, value, f"{expected}, as a figure", "Leave it out if nobody knows.")
    if fact.kind is int and value != int(value):
        raise InputError(name, value, expected, "Write a whole number.")
    number: int | float = fact.kind(value)
    if fact.allowed and number not in fact.allowed:
        near = min(fact.allowed, key=lambda each: abs(float(each) - float(number)))
        raise InputError(name, value, expected, f"Is it {as_words(near)}? Read the label again.")
    if fact.between and not fact.between[0] <= number <= fact.between[1]:
        raise InputError(name, value, expected, "Look at the unit and the decimal point.")
    return number


def _figure_hint(fact: Fact, text: str) -> str:
    """Return what to do about a figure given as text."""
    digits = text.strip().replace("O", "0").replace("o", "0")
    if digits != text.strip() and (found := re.match(r"[0-9.]+", digits)):
        figure = found[0]
        if fact.allowed and figure not in {f"{each:g}" for each in fact.allowed}:
            figure = f"{fact.allowed[0]:g}"
        return (
            f'"{text}" has a letter O in it. Write the figure on the label, for example {figure}.'
        )
    if found := re.match(r"\s*(-?[0-9]+)[,.]?([0-9]*)", text):
        figure = found[1] + (f".{found[2]}" if found[2] else "")
        return f"Write {figure} alone, without quotes or unit."
    return "Write the figure alone, without quotes or unit."


def _text(fact: Fact, value: object, name: str) -> str:
    if fact.form in ("date", "time") and isinstance(value, date | time):
        value = value.isoformat()[: 5 if isinstance(value, time) else 10]
    if not isinstance(value, str):
        raise InputError(name, value, expected_of(fact), "Put the answer in quotes.")
    text = value.strip()
    if not text:
        raise InputError(name, value, expected_of(fact), "Leave the line out if nobody knows.")
    if fact.allowed and text not in fact.allowed:
        raise InputError(name, value, expected_of(fact), nearest_answer(fact, text))
    return FORMS[fact.form][1](text, name)


def nearest_answer(fact: Fact, text: str) -> str:
    """Return which of the allowed answers was probably meant, in a sentence."""
    known = {name.lower(): meant for name, meant in fact.known_as.items()}
    answers = {str(each).lower(): each for each in fact.allowed}
    lower = text.lower()
    if lower in known or lower in answers:
        return f'Write "{known.get(lower, answers.get(lower))}" here.'
    near = get_close_matches(lower, [*answers, *known], 1)
    if near:
        return f'Did you mean "{answers.get(near[0], known.get(near[0]))}"?'
    return "Leave the line out if nobody knows."


def _any(text: str, name: str) -> str:
    del name
    return text


def _id(text: str, name: str) -> str:
    if ID.fullmatch(text):
        return text
    raise InputError(name, text, FORMS["id"][0], "It has letters, figures and hyphens.")


def _date(text: str, name: str) -> str:
    try:
        return date.fromisoformat(text).isoformat()
    except ValueError:
        raise InputError(name, text, FORMS["date"][0], "Year, month, day.") from None


def _time(text: str, name: str) -> str:
    padded = text if text[1:2] != ":" else f"0{text}"
    if TIME.fullmatch(padded):
        return padded
    raise InputError(name, text, FORMS["time"][0], "Hours and minutes, 24 hours to the day.")


def _postcode(text: str, name: str) -> str:
    letters = "".join(text.upper().split())
    written = f"{letters[:-3]} {letters[-3:]}"
    if POSTCODE.fullmatch(written):
        return written
    raise InputError(name, text, FORMS["postcode"][0], "Read it again, letter by letter.")


def _meter_point(text: str, name: str) -> str:
    digits = "".join(text.split())
    expected = FORMS["meter point"][0]
    adds = METER_NUMBER.decide(MeterNumber(digits)).outcome
    if adds is Adds.NOT_DIGITS:
        raise InputError(name, text, expected, "Only digits; the letter S is not part of it.")
    if adds is Adds.OTHER_COUNT:
        do = f"This has {count(len(digits), 'digit')}. Take the bottom line of the box marked S."
        raise InputError(name, text, expected, do)
    if adds is Adds.NOT_UP:
        do = "A digit is wrong or two are swapped. Read the last four again."
        raise InputError(name, text, "a meter number that adds up", do)
    return digits


FORMS: Final = {
    "text": ("words in quotes", _any),
    "id": ("the id of a thing, in quotes", _id),
    "date": ("a date, as 2026-12-19", _date),
    "time": ("a time of day, as 18:30", _time),
    "postcode": ("a postcode, as ZZ1 4QB", _postcode),
    "meter point": ("the thirteen digits of the meter number", _meter_point),
}
"""For each form of text: what is expected, and what puts it in that form."""


def accept_range(fact: Fact, low: object, high: object, key: str) -> tuple[float, float]:
    """Return both ends of a range that a number may lie in; ``InputError`` if it cannot be."""
    said = [low, high]
    if not fact.is_number:
        raise InputError(key, said, expected_of(fact), "A range is only for numbers.")
    ends = [_end(fact, end, key) for end in said]
    if ends[0] >= ends[1]:
        raise InputError(key, said, "a range from low to high", "Put the lower figure first.")
    if fact.allowed and not any(ends[0] <= float(each) <= ends[1] for each in fact.allowed):
        raise InputError(key, said, expected_of(fact), "None of these lies in the range.")
    return ends[0], ends[1]


def _end(fact: Fact, end: object, key: str) -> float:
    """Return one end; with a short list of answers an end need not be one of them."""
    if not fact.allowed:
        return float(accept(fact, end, key))
    if isinstance(end, bool) or not isinstance(end, int | float) or not isfinite(end):
        raise InputError(key, end, "a figure", "Write the figure alone, without quotes.")
    return float(end)


def accept_few(fact: Fact, values: Sequence[object], key: str) -> tuple[Value, ...]:
    """Return the few values that a fact may have; ``InputError`` unless there are several."""
    few = tuple(dict.fromkeys(accept(fact, value, key) for value in values))
    if len(few) < 2:
        raise InputError(key, list(values), "two answers or more", "With one, write it alone.")
    return few
