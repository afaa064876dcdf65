"""Where each key, each value and each entry of a list stands in a TOML text.

The standard reader gives values without places; this walks over the same text and notes
where each path begins. It does not judge: a text that does not parse never comes here.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, NamedTuple

Path = tuple[str | int, ...]

TOKEN: Final = re.compile(
    r"""
    (?P<skip>[ \t\r]+|\#[^\n]*)
    |(?P<text>\"{3}(?:\\.|[^\\])*?\"{3,5}|'{3}.*?'{3,5}|"(?:\\.|[^"\\\n])*"|'[^'\n]*')
    |(?P<sign>[=\[\]{},\n])
    |(?P<word>[^\s=\[\]{},\#"']+)
    """,
    re.VERBOSE | re.DOTALL,
)


class Token(NamedTuple):
    """A piece of the text: what it is, how it reads, the line it begins on, where it begins."""

    kind: str
    text: str
    line: int
    at: int

    @property
    def end(self) -> int:
        """Where it ends."""
        return self.at + len(self.text)


@dataclass(slots=True)
class Block:
    """A heading and the statements below it; the first block of a text has no heading.

    ``listed``: one more table in a list. The heading runs from ``start`` to ``opens``, the last
    statement to ``end``.
    """

    path: Path
    listed: bool
    start: int
    opens: int
    end: int


class Held(NamedTuple):
    """Where the value of a key begins and ends; ``inside`` a table on one line or not."""

    start: int
    end: int
    inside: bool


def lines_of(text: str) -> dict[Path, int]:
    r"""Return the line on which each key, table and list entry begins, by its path.

    Examples
    --------
    >>> lines_of('[supply]\nphases = 1\nreadings.tea = { volts_v = [\n  1,\n  2] }')[
    ...     ("supply", "readings", "tea", "volts_v", 1)]
    5
    """
    return Scan(list(tokens(text))).places()


def line_of(path: Path, lines: dict[Path, int]) -> int:
    """Return the line of a path, or of the nearest table around it; 1 for the whole file."""
    for end in range(len(path), 0, -1):
        if path[:end] in lines:
            return lines[path[:end]]
    return 1


def tokens(text: str) -> Iterator[Token]:
    """Yield the pieces of a TOML text, without blanks and comments."""
    line = 1
    for match in TOKEN.finditer(text):
        kind = match.lastgroup or ""
        if kind != "skip":
            yield Token(kind, match[0], line, match.start())
        line += match[0].count("\n")


class Scan:
    """One walk over the pieces of a text."""

    def __init__(self, pieces: list[Token]) -> None:
        self._pieces, self._at = pieces, 0
        self.blocks = [Block((), False, 0, 0, 0)]
        self.values: dict[Path, Held] = {}
        self._depth = 0
        self._lines: dict[Path, int] = {}
        self._counts: dict[Path, int] = {}

    def places(self) -> dict[Path, int]:
        """Walk over statement after statement and return the places."""
        table: Path = ()
        while self._at < len(self._pieces):
            sign = self._pieces[self._at].text
            if sign == "\n":
                self._at += 1
            elif sign == "[":
                table = self._heading()
            else:
                self._statement(table)
        return self._lines

    def _next(self) -> Token | None:
        return self._pieces[self._at] if self._at < len(self._pieces) else None

    def _heading(self) -> Path:
        """Take the heading of a table, or of one more table in a list."""
        line, start = self._pieces[self._at].line, self._pieces[self._at].at
        listed = self._pieces[self._at + 1 : self._at + 2][0].text == "["
        self._at += 2 if listed else 1
        path: Path = self._key("]")
        self._at += 2 if listed else 1
        end = self._pieces[self._at - 1].end
        self.blocks.append(Block(path, listed, start, end, end))
        self._note(path, line)
        if listed:
            number = self._counts.get(path, 0)
            self._counts[path] = number + 1
            path = (*path, number)
            self._note(path, line)
        return path

    def _statement(self, table: Path) -> None:
        """Take a key, the sign of equality and a value."""
        line = self._pieces[self._at].line
        path = (*table, *self._key("="))
        self._at += 1
        for end in range(len(table) + 1, len(path) + 1):
            self._note(path[:end], line)
        start = self._pieces[self._at].at
        self._value(path)
        end = self._pieces[self._at - 1].end
        self.values[path] = Held(start, end, self._depth > 0)
        self.blocks[-1].end = end

    def _key(self, until: str) -> Path:
        """Take the steps of a key, quoted or not, up to a sign."""
        steps: list[str] = []
        while (piece := self._next()) and piece.text != until:
            if piece.kind == "text":
                steps.append(piece.text[1:-1])
            else:
                steps += [step for step in piece.text.split(".") if step]
            self._at += 1
        return tuple(steps)

    def _value(self, path: Path) -> None:
        piece = self._next()
        self._at += 1
        if piece and piece.text == "[":
            self._list(path)
        elif piece and piece.text == "{":
            self._inline(path)

    def _list(self, path: Path) -> None:
        number = 0
        while (piece := self._next()) and piece.text != "]":
            if piece.text in ",\n":
                number += piece.text == ","
                self._at += 1
            else:
                self._note((*path, number), piece.line)
                self._value((*path, number))
        self._at += 1

    def _inline(self, path: Path) -> None:
        self._depth += 1
        while (piece := self._next()) and piece.text != "}":
            if piece.text in ",\n":
                self._at += 1
            else:
                self._statement(path)
        self._at += 1
        self._depth -= 1

    def _note(self, path: Path, line: int) -> None:
        self._lines.setdefault(path, line)
