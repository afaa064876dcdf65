"""One more answer into the text of a home file; no letter of what stands there is touched.

Works on the places that the scan of the text gives. What cannot be added to without writing over
something is refused.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, field

from ampwright.foundations.errors import InputError

from .scan import Block, Held, Path, Scan, Token, tokens

INDENT = "  "


@dataclass(slots=True)
class Text:
    """A text and where everything stands in it; every change gives another text."""

    whole: str
    pieces: list[Token] = field(init=False)
    values: dict[Path, Held] = field(init=False)
    blocks: list[Block] = field(init=False)
    tables: set[Path] = field(init=False)

    def __post_init__(self) -> None:
        """Find out where everything stands."""
        self.pieces = list(tokens(self.whole))
        scan = Scan(self.pieces)
        scan.places()
        self.values, self.blocks = scan.values, scan.blocks
        spoken_of = [*self.values, *(block.path for block in self.blocks)]
        self.tables = {path[:end] for path in spoken_of for end in range(len(path) + 1)}

    def with_at(self, at: int, words: str) -> str:
        """Return the text with some words at a place."""
        return f"{self.whole[:at]}{words}{self.whole[at:]}"

    def with_line(self, after: int, words: str) -> str:
        """Return the text with lines of their own below the line of a place."""
        end = self.whole.find("\n", after)
        if end < 0:
            return f"{self.whole}\n{words}\n"
        return f"{self.whole[: end + 1]}{words}\n{self.whole[end + 1 :]}"

    def heading(self, path: Path) -> Block | None:
        """Return the last block under a heading, if there is any."""
        return next((each for each in reversed(self.blocks) if each.path == path), None)

    def last(self, held: Held) -> Token:
        """Return the last piece before the sign that closes a list or a table on one line."""
        inside = [p for p in self.pieces if p.end < held.end and p.text != "\n"]
        return inside[-1]


def with_top(text: str, line: str) -> str:
    """Return a text with one more line above its first heading."""
    top = Text(text).blocks[0]
    return Text(text).with_line(top.end, line) if top.end else f"{line}\n{text}"


def with_answer(
    text: str, key: str, one: str, lines: Sequence[str], things: Collection[str]
) -> str:
    """Return a text with one more answer to a key; a key with an answer grows into a list.

    ``one`` is the answer on one line, ``lines`` the same as a table; ``things`` are the paths in
    the key that name a thing. Raises ``InputError`` for a form that takes no more.
    """
    path: Path = tuple(key.split("."))
    here = Text(text)
    if path in here.values:
        return with_another(here, here.values[path], one)
    block = here.heading(path)
    if block is not None:
        return with_table(here, block, key, lines)
    if path in here.tables:
        do = "Write it on one line, as name = { is = …, told = … }."
        raise InputError(key, "spread over several lines", "an answer on one line", do)
    for thing in sorted(things, key=len):
        text = with_presence(Text(text), tuple(thing.split(".")))
    return with_first(Text(text), path, one)


def with_another(here: Text, held: Held, one: str) -> str:
    """Return a text in which an answer, or a list of them, has one more beside it."""
    old = here.whole[held.start : held.end]
    if not old.startswith("["):
        both = f"[{old}, {one}]" if held.inside else f"[\n{INDENT}{old},\n{INDENT}{one},\n]"
        return f"{here.whole[: held.start]}{both}{here.whole[held.end :]}"
    last = here.last(held)
    comma = "" if last.text == "," else ","
    if "\n" not in here.whole[last.end : held.end]:
        return here.with_at(last.end, f"{comma} {one}")
    separated = Text.with_at(here, last.end, comma)
    return Text(separated).with_line(last.end + len(comma), f"{INDENT}{one},")


def with_table(here: Text, block: Block, key: str, lines: Sequence[str]) -> str:
    """Return a text in which an answer under a heading of its own has one more below it."""
    after = here.with_line(block.end, "\n".join(["", f"[[{key}]]", *lines]))
    if block.listed:
        return after
    return f"{after[: block.start]}[{after[block.start : block.opens]}]{after[block.opens :]}"


def with_presence(here: Text, thing: Path) -> str:
    """Return a text in which a thing that was only named is said to be there."""
    block, held = here.heading(thing), here.values.get(thing)
    inside = any(each[: len(thing)] == thing and each != thing for each in here.tables)
    if inside or (block is None and held is None):
        return here.whole
    if held is not None:
        return with_first(here, (*thing, "present"), "true")
    assert block is not None
    return here.with_line(block.opens, "present = true")


def with_first(here: Text, path: Path, one: str) -> str:
    """Return a text with the first answer to a key, where the rest of its table stands."""
    for end in range(len(path) - 1, 0, -1):
        table = path[:end]
        rest = f"{'.'.join(map(str, path[end:]))} = {one}"
        if table in here.values:
            return with_entry(here, here.values[table], rest)
        block = here.heading(table)
        if block is not None and end == len(path) - 1:
            return here.with_line(block.end, rest)
        dotted = written_below(here, table)
        if dotted is not None and end == len(path) - 1:
            below = f"{'.'.join(map(str, path[len(dotted.path) :]))} = {one}"
            return here.with_line(dotted.end, below)
    return with_heading(here, path, one)


def with_entry(here: Text, held: Held, entry: str) -> str:
    """Return a text in which a table on one line has one more entry."""
    last = here.last(held)
    if last.at <= held.start:
        return here.with_at(last.end, f" {entry} ")
    return here.with_at(last.end, f", {entry}")


def written_below(here: Text, table: Path) -> Block | None:
    """Return the block in which a table without a heading is written with dots, if there is any."""
    for block in here.blocks:
        if len(block.path) < len(table) and table[: len(block.path)] == block.path:
            for path, held in here.values.items():
                below = path[: len(table)] == table and not held.inside
                if below and block.opens <= held.start < block.end:
                    return block
    return None


def with_heading(here: Text, path: Path, one: str) -> str:
    """Return a text with a heading of its own for a key, below what it has most in common with."""
    table = ".".join(map(str, path[:-1]))
    near = max(here.blocks, key=lambda block: (alike(block.path, path), block.start))
    if not alike(near.path, path):
        near = here.blocks[-1]
    lines = [f"[{table}]", f"{path[-1]} = {one}"]
    if not here.whole.strip():
        return here.whole + "\n".join([*lines, ""])
    return here.with_line(near.end or len(here.whole), "\n".join(["", *lines]))


def alike(one: Iterable[object], other: Iterable[object]) -> int:
    """Return how many steps two paths share from the beginning."""
    shared = 0
    for a, b in zip(one, other, strict=False):
        if a != b:
            break
        shared += 1
    return shared
