"""Reading and writing files so that what is wrong is said plainly and nothing is half done."""

from __future__ import annotations

import codecs
import difflib
from collections.abc import Callable
from pathlib import Path

from ampwright.foundations.errors import InputError, NotFoundError


def read_text(path: Path) -> str:
    """Return what a text file holds.

    Raises ``NotFoundError``, with the nearest name that is there, and ``InputError`` for what
    is no text or may not be read.
    """
    try:
        return path.read_text(encoding="utf-8-sig")
    except FileNotFoundError:
        raise not_there(path) from None
    except UnicodeDecodeError:
        raise InputError(
            "the file", str(path), "text in UTF-8", "Save it as UTF-8 and try again."
        ) from None
    except OSError as error:
        do = f"The computer says: {error.strerror or error}."
        raise InputError("the file", str(path), "a file that can be read", do) from None


def change_text(path: Path, change: Callable[[str], str]) -> None:
    """Put a changed text in the place of what a file holds, whole or not at all.

    The file keeps its ends of line and its mark at the head. Raises like ``read_text`` and
    ``write_whole``; a text that stays as it was is not written.
    """
    text = read_text(path)
    after = change(text)
    if after == text:
        return
    held = path.read_bytes()
    if held.count(b"\r\n") == held.count(b"\n"):
        after = after.replace("\n", "\r\n")
    mark = codecs.BOM_UTF8 if held.startswith(codecs.BOM_UTF8) else b""
    write_whole(path, mark + after.encode())


def not_there(path: Path) -> NotFoundError:
    """Return the error for a file that is not there, with those that are."""
    folder = path.parent
    there = sorted(str(each) for each in folder.glob(f"*{path.suffix}")) if path.suffix else []
    nearest = difflib.get_close_matches(str(path), there, 1)
    do = "Look at its name and its folder."
    return NotFoundError("file", str(path), there[:10], nearest[0] if nearest else "", do)


def write_whole(path: Path, content: bytes) -> None:
    """Put content in a file, whole or not at all; raises ``InputError`` when it cannot be."""
    if not path.parent.is_dir():
        raise InputError(
            "the folder to write in", str(path.parent), "a folder that is there", "Make it first."
        )
    path = path.resolve()  # a link stays one
    half = path.with_name(f".{path.name}.half")
    try:
        half.write_bytes(content)
        if path.exists():
            half.chmod(path.stat().st_mode)
        half.replace(path)
    except OSError as error:
        half.unlink(missing_ok=True)
        do = f"The computer says: {error.strerror or error}."
        raise InputError("the file", str(path), "a file that can be written", do) from None
