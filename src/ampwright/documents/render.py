"""The one renderer: content and a template in, an archival and accessible PDF out.

Same content, same drawings, same date: same bytes. The content travels inside the file, so a
paper can be set again as it was.
"""

from __future__ import annotations

import json
import unicodedata
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from datetime import UTC, date, datetime, time
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any, Protocol

from ampwright.foundations.errors import AmpwrightError, InputError, NotFoundError

from .faces import FOLDER, FaceError, characters, shipped

if TYPE_CHECKING:
    import typst

ROOT = Path(__file__).parent
STANDARDS: list[typst.PDFStandard] = ["a-3a", "ua-1"]
EXPECTED_WARNING = "current font is not designed for math"
"""The faces hold every sign that fractions and roots need, only not a table of their spacing."""
LINES_OF_BLAME = 20


class PaperError(AmpwrightError):
    """A template that could not be set, with the setter's own words."""


class Content(Protocol):
    """A frozen dataclass of ready words with the title and the author of the paper."""

    @property
    def title(self) -> str:
        """What the paper is called."""

    @property
    def author(self) -> str:
        """Whose paper it is."""


def templates() -> tuple[str, ...]:
    """Return the names of the papers that can be set."""
    return tuple(sorted(path.parent.name for path in ROOT.glob("*/template.typ")))


def render(
    template: str, content: Content, *, drawings: Mapping[str, bytes] | None = None, stamp: date
) -> bytes:
    """Set a paper as PDF/A-3a and PDF/UA-1, with its content inside as ``content.json``.

    ``drawings`` are SVG by the name under which the content calls for them. Raises
    ``NotFoundError`` for an unknown template, ``InputError`` for a character that no shipped
    face holds, ``FaceError`` when a face is missing or altered, ``PaperError`` when the template
    cannot be set without a fault or a warning.
    """
    if template not in templates():
        raise NotFoundError("paper", template, templates())
    words = spread(content)
    refuse_unknown_characters(words)
    text = json.dumps(words, ensure_ascii=False, separators=(",", ":"))
    pictures = {name: svg.decode() for name, svg in sorted((drawings or {}).items())}
    given = {"content": text, "drawings": json.dumps(pictures, ensure_ascii=False)}
    return typeset(ROOT / template / "template.typ", given, stamp)


def typeset(template: Path, given: dict[str, str], stamp: date) -> bytes:
    """Run the typesetter on one template; its warnings are faults."""
    import typst  # a paper is the only thing that needs it

    at = datetime.combine(stamp, time(12), UTC)
    try:
        made, warnings = typst.compile_with_warnings(
            str(template), root=str(ROOT), font_paths=fonts(), ignore_system_fonts=True,
            sys_inputs=given, format="pdf", pdf_standards=STANDARDS, timestamp=at,
        )  # fmt: skip
    except typst.TypstError as error:
        where = "\n".join(error.diagnostic.splitlines()[:LINES_OF_BLAME])
        raise PaperError(f"{template.parent.name}: {error.message}\n{where}") from None
    faults = [each.message for each in warnings if each.message != EXPECTED_WARNING]
    if faults:
        raise PaperError(f"{template.parent.name}: {'; '.join(faults)}")
    return made


@cache
def fonts() -> typst.Fonts:
    """Return the shipped faces and no others; raises ``FaceError`` if one cannot be used."""
    import typst  # a paper is the only thing that needs it

    faces = shipped(FOLDER)
    found = typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(FOLDER)]
    )
    have = {(font.family, font.weight) for font in found.fonts()}
    lacking = [f"{face.family} {face.weight}" for face in faces
               if (face.family, face.weight) not in have]  # fmt: skip
    if lacking:
        raise FaceError(f"the typesetter cannot use {', '.join(lacking)}")
    return found


def spread(value: object) -> Any:
    """Turn content into what JSON holds: its fields, and what it works out of them.

    Texts are composed (NFC), so that a letter and its accent are one character.
    """
    if isinstance(value, str):
        return unicodedata.normalize("NFC", value)
    if isinstance(value, tuple):
        return [spread(each) for each in value]
    if is_dataclass(value) and not isinstance(value, type):
        own = [field.name for field in fields(value)]
        worked_out = [
            name for name, kind in vars(type(value)).items() if isinstance(kind, property)
        ]
        return {name: spread(getattr(value, name)) for name in (*own, *worked_out)}
    return value


def refuse_unknown_characters(words: object) -> None:
    """Raise ``InputError`` for the first text that the shipped faces cannot show."""
    for place, text in texts(words):
        strange = set(text) - characters()
        if strange:
            listed = " ".join(f"{each} (U+{ord(each):04X})" for each in sorted(strange))
            raise InputError(
                place, text, "characters that the papers' faces hold",
                f"They lack {listed}. Write it in Latin letters.",
            )  # fmt: skip


def texts(value: object, place: str = "") -> Iterator[tuple[str, str]]:
    """Yield every text of a payload with the path that leads to it."""
    if isinstance(value, str):
        yield place, value
    elif isinstance(value, dict):
        for name, each in value.items():
            yield from texts(each, f"{place}.{name}".strip("."))
    elif isinstance(value, list):
        for number, each in enumerate(value):
            yield from texts(each, f"{place}[{number}]")
