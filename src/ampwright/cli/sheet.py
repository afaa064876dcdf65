"""A sheet of text for a terminal or a file: at most 80 columns, colour only on a terminal.

Nothing leans on colour: every mark is a word. ``NO_COLOR`` is respected.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Iterable, Sequence
from typing import Final, Literal, TextIO

from rich.console import Console, RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

WIDEST: Final = 80
INDENT: Final = 2
GAP: Final = 2

Look = Literal["", "strong", "quiet", "sound", "ask", "stop"]
LOOKS: Final[dict[str, str]] = {
    "": "", "strong": "bold", "quiet": "dim", "sound": "bold green", "ask": "bold yellow",
    "stop": "bold red",
}  # fmt: skip

Cell = str | Text


class Sheet:
    """Lines of text, written from the top down and shown at the end."""

    def __init__(self, out: TextIO | None = None) -> None:
        self._out = out or sys.stdout
        console = Console(file=self._out, highlight=False, markup=False, emoji=False)
        console.width = min(console.width, WIDEST)
        self._console = console
        self._parts: list[RenderableType] = []

    def say(self, words: Cell, look: Look = "", indent: int = 0) -> None:
        """Write a paragraph."""
        self._parts.append(Padding(styled(words, look), (0, 0, 0, indent)))

    def name(self, words: str) -> None:
        """Write a line with a name in it that must stay whole, whatever its length."""
        self._parts.append(Text(words, no_wrap=True, overflow="ignore"))

    def gap(self) -> None:
        """Leave one line empty."""
        self._parts.append(Text(""))

    def heading(self, words: str, beside: str = "") -> None:
        """Start a part, with a quiet remark beside its name."""
        self.gap()
        line = Text(words, style=LOOKS["strong"])
        if beside:
            line.append(f"  {beside}", style=LOOKS["quiet"])
        self._parts.append(line)

    def points(self, items: Iterable[Cell], indent: int = INDENT) -> None:
        """Write short lines under one another; what runs over hangs under its own words."""
        self.rows((("·", item) for item in items), (None, None), indent, gap=1)

    def rows(
        self,
        rows: Iterable[Sequence[Cell]],
        widths: Sequence[int | None],
        indent: int = INDENT,
        gap: int = GAP,
        head: Sequence[str] = (),
    ) -> None:
        """Write columns that line up; a width of ``None`` takes what the words need."""
        table = Table.grid(padding=(0, gap, 0, 0))
        for width in widths:
            table.add_column(width=width, overflow="fold")
        if head:
            table.add_row(*(Text(each, style=LOOKS["quiet"]) for each in head))
        for row in rows:
            table.add_row(*(styled(cell) for cell in row))
        self._parts.append(Padding(table, (0, 0, 0, indent), expand=False))

    def show(self) -> None:
        """Put the sheet out, without spaces at the ends of lines."""
        with self._console.capture() as held:
            for part in self._parts:
                whole = isinstance(part, Text) and bool(part.no_wrap)
                self._console.print(part, soft_wrap=whole)
        text = "\n".join(line.rstrip() for line in held.get().splitlines())
        self._out.write(f"{text}\n")


def in_pieces(name: str, indent: int) -> str:
    """Break a long name after one of its strokes or plus signs, never within a word.

    Examples
    --------
    >>> print(in_pieces("yard/meter/" + "three-socket/" * 5 + "pme", 2))
    yard/meter/three-socket/three-socket/three-socket/three-socket/three-socket/
    pme
    """
    lines = [""]
    for piece in re.findall(r"[^/+]*[/+]?", name):
        if len(lines[-1]) + len(piece) > WIDEST - indent:
            lines.append("")
        lines[-1] += piece
    return "\n".join(lines)


def styled(words: Cell, look: Look = "") -> Text:
    """Return words with a look; words that have theirs keep it."""
    return words if isinstance(words, Text) else Text(words, style=LOOKS[look])


def marked(words: str, look: Look) -> Text:
    """Return words with a look, for a cell."""
    return Text(words, style=LOOKS[look])
