"""The project's own files, as the code rules read them."""

from __future__ import annotations

import ast
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "src" / "ampwright"
MADE_BY_TOOLS = {"out", "dist", "__pycache__", "node_modules"}


def texts() -> dict[str, str]:
    """Every text file that belongs to the project, by its path from the top."""
    found = {}
    for path in sorted(ROOT.rglob("*")):
        place = path.relative_to(ROOT)
        hidden = any(part[0] == "." and part not in {".ci", ".gitignore"} for part in place.parts)
        if hidden or MADE_BY_TOOLS & set(place.parts) or not path.is_file():
            continue
        try:
            found[place.as_posix()] = path.read_text(encoding="utf-8")
        except UnicodeDecodeError:
            continue  # a font or a picture
    return found


def sources() -> dict[str, str]:
    """Every module of the package, by its path from the top."""
    return {place: text for place, text in texts().items() if place.startswith("src/")}


def modules() -> dict[str, ast.Module]:
    """Every module of the package, parsed."""
    return {place: ast.parse(text) for place, text in sources().items() if place.endswith(".py")}


def rooms() -> list[Path]:
    """The folders of the rooms that exist."""
    return sorted(path.parent for path in PACKAGE.glob("*/__init__.py"))
