"""The firm's data files: the shipped ones, any of which a firm may replace by its own."""

from __future__ import annotations

import difflib
import hashlib
import tomllib
from collections.abc import Sequence
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path

from ampwright.foundations.errors import InputError, NotFoundError, TableCardError
from ampwright.tables.loader import data_folder, table_names

NAMES = (
    "points", "devices", "boards", "origin_devices", "cables", "tasks", "rules", "limits",
    "operators", "driving", "rates", "prices", "materials", "kits", "third_party",
    "asking", "usual", "longer", "together",
)  # fmt: skip
NEVER_REPLACED = ("limits",)
OWN_CELLS = "own_cells"
ONLY_A_FIRMS = (OWN_CELLS,)
"""Files that do not ship: a firm may write them."""


@dataclass(frozen=True, slots=True)
class File:
    """One data file: its name, what it holds and whether a firm wrote it."""

    name: str
    text: str
    title: str
    own: bool

    @property
    def digest(self) -> str:
        """The sha256 of its content."""
        return hashlib.sha256(self.text.encode()).hexdigest()


def read_files(folder: Path | None) -> dict[str, File]:
    """Return every data file by name, the firm's own before the shipped one.

    ``limits`` always comes from the package: what the law allows is not the firm's to change.
    Raises ``TableCardError`` when a shipped file does not match its card, ``InputError`` for a
    folder that is not there, and ``NotFoundError`` for a file in it that nothing reads.
    """
    own = _own(folder) if folder is not None else {}
    return {name: own.get(name) or shipped(name) for name in NAMES} | own


def _own(folder: Path) -> dict[str, File]:
    """Return the files that a firm wrote, by name."""
    if not folder.is_dir():
        raise InputError(
            "the firm's folder", str(folder), "a folder that is there", "Make it, or name another."
        )
    may_be = (*(name for name in NAMES if name not in NEVER_REPLACED), *ONLY_A_FIRMS)
    found = {}
    for path in sorted(folder.glob("*.csv")):
        name = path.stem
        if name not in may_be:
            raise NotFoundError(
                "data file of a firm", name, may_be, *difflib.get_close_matches(name, may_be, 1)
            )
        found[name] = File(name, path.read_text(encoding="utf-8-sig"), f"own {name}", own=True)
    return found


def shipped(name: str) -> File:
    """Return a packaged file, proved to be the one its card describes."""
    data = files("ampwright.firm") / "data"
    card = tomllib.loads((data / f"{name}.toml").read_text(encoding="utf-8"))
    text = (data / f"{name}.csv").read_text(encoding="utf-8")
    file = File(name, text, card["title"], own=False)
    if card.get("sha256") != file.digest:
        raise TableCardError(
            f"{name}.csv is not the file its card describes: its sha256 is {file.digest}. "
            "Read the change a second time, then put that figure on the card."
        )
    return file


def digest_of(parts: Sequence[str]) -> str:
    """Return one sha256 over several, in a stated order."""
    return hashlib.sha256("\n".join(parts).encode()).hexdigest()


def table_cards() -> tuple[str, ...]:
    """Return the sha256 of the card of every published table; a card holds its table's own."""
    folder = data_folder()
    return tuple(
        hashlib.sha256(folder.joinpath(f"{name}.toml").read_bytes()).hexdigest()
        for name in table_names()
    )
