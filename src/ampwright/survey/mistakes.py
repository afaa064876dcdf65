"""What is wrong with a text that is not TOML, said so that it can be mended at once."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from typing import Any, Final

from ampwright.foundations.errors import Problem

MOST: Final = 20
"""After so many mistakes of form the rest of the text is not looked at."""

NAME: Final = re.compile(r"[\w.-]+(?=\s*=)")


def parsed(text: str) -> tuple[dict[str, Any], list[Problem]]:
    """Return what a text holds and its mistakes of form, each with its line.

    A line that cannot be read is set aside and the rest is read, so that its mistakes are
    found too. What is returned beside a mistake is for finding more mistakes, never for use.
    """
    lines = text.replace("\r\n", "\n").split("\n")
    problems: list[Problem] = []
    while True:
        try:
            return tomllib.loads("\n".join(lines)), problems
        except tomllib.TOMLDecodeError as error:
            number = _line(error, lines)
            problems.append(_problem(lines, number, str(error)))
            if len(problems) == MOST or not _may_be_set_aside(lines[number - 1]):
                return {}, problems
            lines[number - 1] = ""


def _line(error: tomllib.TOMLDecodeError, lines: list[str]) -> int:
    """Return the line that an error names; the reader gives it only in words.

    What is never closed is noticed at the end: then the last line that opens something.
    """
    if found := re.search(r"at line (\d+)", str(error)):
        return min(int(found[1]), len(lines))
    opening = [at for at, line in enumerate(lines, 1) if re.search(r"[\[{\"']\s*[^\]}\"']*$", line)]
    return opening[-1] if opening else len(lines)


def _problem(lines: list[str], number: int, message: str) -> Problem:
    """Return what is wrong with one line, under the key that it seems to answer."""
    content = lines[number - 1].strip()
    table = ""
    for line in lines[: number - 1]:
        if found := re.match(r"\s*\[+\s*([^\]]+?)\s*\]", line):
            table = f"{found[1]}."
    do = _do(message, content)
    if name := NAME.match(content):
        return Problem(number, f"{table}{name[0]}", content, "an answer that can be read", do)
    return Problem(number, "the text", content, "a name, an equals sign and an answer", do)


def _may_be_set_aside(line: str) -> bool:
    """Whether a line is an answer or stray words by itself, so that the rest can be read."""
    closed = all(line.count(a) == line.count(b) for a, b in ("[]", "{}"))
    heading = line.lstrip().startswith("[")
    return bool(line.strip()) and closed and not heading and not re.search(r"\"{3}|'{3}", line)


def _do(message: str, content: str) -> str:
    """Return what to do about one mistake of form."""
    for pattern, advice in _by_message():
        if re.search(pattern, message):
            return advice
    whole = not NAME.match(content)
    for pattern, advice in _by_line() if whole else _by_answer():
        if re.match(pattern, content if whole else content.partition("=")[2].strip()):
            return advice
    return "Words stand in quotes, figures alone, and yes or no is true or false."


def _by_line() -> Iterator[tuple[str, str]]:
    yield r"\[[^\]]*$", "Close the heading with ]."
    yield r"\[", "A list above this line is not closed with ], or the heading has blanks in it."
    yield r"=", "Put the name of the fact before the equals sign."
    yield r"", "Put # in front to make it a remark."


def _by_message() -> Iterator[tuple[str, str]]:
    yield (
        r"Cannot overwrite",
        "It is answered twice. Keep one, or put both in a list, as [ { … }, { … } ].",
    )
    yield r"Cannot declare|Cannot mutate", "This heading stands twice. Put all of it under one."


def _by_answer() -> Iterator[tuple[str, str]]:
    yield r"$", "There is no answer. Give one, or leave the line out."
    yield r"(?i)(yes|true|on)\b", "Write true for yes."
    yield r"(?i)(no|false|off)\b", "Write false for no."
    yield r"\d+,\d", "Write the decimal comma as a point."
    yield r"\d*[oO]\d*\b", "This has a letter O in it. Write the figure 0."
    yield r"0\d", "Write the figure without the nought in front, or put it in quotes."
    yield r"-?\d[\d.]*\s*[A-Za-zΩ²°]", "Write the figure alone, without its unit."
    yield r"[\"'][^\"']*$", "Close the quotes."
    yield r"[A-Za-z]", "Put words in quotes."
    yield r"\{[^}]*$", "Keep all that stands between { and } on one line."
    yield r"[\[{]", "Close every bracket, with a comma between the entries."
