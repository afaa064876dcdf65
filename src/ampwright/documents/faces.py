"""The faces that papers are set in: whole, unaltered since they were chosen, and what they hold."""

from __future__ import annotations

import hashlib
import struct
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from ampwright.foundations.errors import AmpwrightError

FOLDER = Path(__file__).parent / "fonts"
UNITS = 65536


class FaceError(AmpwrightError):
    """A face that papers need is missing, altered or cannot be read."""


@dataclass(frozen=True, slots=True)
class Face:
    """One shipped font file, as its card describes it."""

    file: str
    family: str
    weight: int
    licence: str
    sha256: str


def shipped(folder: Path = FOLDER) -> tuple[Face, ...]:
    """Return the faces on the card; raises ``FaceError`` unless every file is as described."""
    card = folder / "faces.toml"
    if not card.is_file():
        raise FaceError(f"{card} is missing. Install the package again.")
    listed = tomllib.loads(card.read_text(encoding="utf-8"))["face"]
    faces = tuple(
        Face(row["file"], row["family"], row["weight"], row["licence"], row["sha256"])
        for row in listed
    )
    for face in faces:
        check(folder, face)
    return faces


def check(folder: Path, face: Face) -> None:
    """Hold a font file to its card; raises ``FaceError`` naming the file."""
    path = folder / face.file
    if not path.is_file():
        raise FaceError(f"the face {path} is missing. Install the package again.")
    if hashlib.sha256(path.read_bytes()).hexdigest() != face.sha256:
        raise FaceError(f"the face {path} differs from its card. Install the package again.")
    if not (folder / face.licence).is_file():
        raise FaceError(f"the licence {folder / face.licence} is missing. Install it again.")


@cache
def characters() -> frozenset[str]:
    """Return every character that the shipped faces hold at every weight they come in."""
    held: dict[int, set[str]] = {}
    for face in shipped():
        held.setdefault(face.weight, set()).update(characters_of((FOLDER / face.file).read_bytes()))
    return frozenset(set.intersection(*held.values())) | {"\n"}


def characters_of(font: bytes) -> Iterator[str]:
    """Yield the characters of a font: its table of code points, in the common format 4."""
    start = table(font, b"cmap")
    count = struct.unpack_from(">H", font, start + 2)[0]
    records = [struct.unpack_from(">HHL", font, start + 4 + 8 * each) for each in range(count)]
    offset = next(at for platform, encoding, at in records if (platform, encoding) == (3, 1))
    yield from segments(font, start + offset)


def table(font: bytes, tag: bytes) -> int:
    """Return where a table of a font begins; raises ``FaceError`` when there is none."""
    count = struct.unpack_from(">H", font, 4)[0]
    for each in range(count):
        name, _, offset, _ = struct.unpack_from(">4sLLL", font, 12 + 16 * each)
        if name == tag:
            return int(offset)
    raise FaceError(f"a face has no table {tag.decode()}")


def segments(font: bytes, at: int) -> Iterator[str]:
    """Yield the characters of a format 4 table, leaving out those that lead to no glyph."""
    layout, _, _, doubled = struct.unpack_from(">HHHH", font, at)
    if layout != 4:
        raise FaceError(f"a face has a table of characters in format {layout}; expected 4")
    count = doubled // 2

    def row(number: int, kind: str) -> tuple[int, ...]:
        where = at + 14 + number * doubled + (2 if number else 0)
        return struct.unpack_from(f">{count}{kind}", font, where)

    ends, starts, deltas, ranges = row(0, "H"), row(1, "H"), row(2, "h"), row(3, "H")
    ranges_at = at + 16 + 3 * doubled
    for number, (first, last) in enumerate(zip(starts, ends, strict=True)):
        for code in range(first, min(last, 0xFFFE) + 1):
            glyph = code
            if ranges[number]:
                where = ranges_at + 2 * number + ranges[number] + 2 * (code - first)
                glyph = struct.unpack_from(">H", font, where)[0]
                if not glyph:
                    continue
            if (glyph + deltas[number]) % UNITS:
                yield chr(code)
