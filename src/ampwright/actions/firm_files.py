"""A firm's own data: the shipped files written out, to be changed."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from ampwright.firm.files import NAMES, NEVER_REPLACED, OWN_CELLS, shipped
from ampwright.firm.own_cells import HEADER
from ampwright.foundations.errors import InputError

from .files import write_whole


@dataclass(frozen=True, slots=True)
class FirmFile:
    """One data file of a firm: what it is about, and whether it was there already."""

    path: str
    about: str
    there: bool


def write_firm(folder: Path) -> tuple[FirmFile, ...]:
    """Write the data files of a firm into a folder; a file that is there stays as it is.

    With them a file, still empty, for the cells that the firm reads in its own copies of the
    published tables. Raises ``InputError`` where the folder is no folder.
    """
    if folder.exists() and not folder.is_dir():
        raise InputError("the firm's folder", str(folder), "a folder, or a new name")
    folder.mkdir(parents=True, exist_ok=True)
    ours = {name: shipped(name) for name in NAMES if name not in NEVER_REPLACED}
    texts = {name: (file.title, file.text) for name, file in ours.items()}
    texts[OWN_CELLS] = ("Cells of the firm's own copies of published tables", f"{HEADER}\n")
    return tuple(_written(folder / f"{name}.csv", *texts[name]) for name in texts)


def _written(path: Path, title: str, text: str) -> FirmFile:
    """Write one file unless it is there."""
    there = path.exists()
    if not there:
        write_whole(path, text.encode())
    return FirmFile(path.name, title, there)
