"""Write the page of what the engine was held against: ``python tools/docs_agreements.py``."""

from __future__ import annotations

import sys
import tomllib
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
PAGE = ROOT / "docs" / "reference" / "agreements.md"
HEAD = """# Agreements

Written by `tools/docs_agreements.py` from the cases in `tests`; do not edit.

What the engine's numbers were held against, file by file. A figure counts as **printed** only if
somebody printed it where we could read it; most such places reproduce the standards, none is a
standard itself. It counts once, however many clauses look at it, and only if it is reproduced to
its last printed digit. What is only **recalled** of a print is kept apart and never counted with
it; neither is a **second reckoning** of our own. Tables of figures that one formula generates, such
as the pilot's duty, count as many figures and prove one thing. What does not agree is on the page
of disagreements.
"""


def render() -> str:
    """Return the whole page as text."""
    sys.path.insert(0, str(ROOT))
    from tests.reference import agreement as kept

    printed = kept.cases(kept.PUBLISHED)
    figures = sum(case.counts for case in printed)
    words = sum(isinstance(case.answer, str) for case in printed)
    again = sum(case.again for case in printed)
    cut = sum(case.cut for case in printed)
    cells = sum(len(_card(path)["cells"]) for path in kept.files(kept.READINGS))
    rows = [
        f"| printed figures, reproduced to the last digit | {figures} |",
        f"| outcomes that follow from printed words | {words} |",
        f"| a printed figure looked at from another side | {again} |",
        f"| printed figures that their author cut or rounded further | {cut} |",
        f"| cells of our tables held against what a publication prints | {cells} |",
        f"| recalled figures, reproduced | {len(kept.cases(kept.RECALLED))} |",
        f"| second reckonings of our own | {len(kept.cases(kept.DERIVED))} |",
        f"| cases at a limit and one printed digit beyond | {len(kept.cases(kept.LIMITS))} |",
    ]
    parts = [HEAD, "| what | how many |\n|---|---|", *rows, ""]
    parts += ["## Printed\n", _files(kept.files(kept.PUBLISHED), "document")]
    parts += ["## Cells of tables\n", _files(kept.files(kept.READINGS), "document", "cells")]
    parts += ["## Recalled\n", _files(kept.files(kept.RECALLED), "document")]
    parts += ["## Second reckonings\n", _files(kept.files(kept.DERIVED), "how")]
    return "\n".join(parts)


def _files(paths: list[Path], source: str, inside: str = "cases") -> str:
    """Return a table with one row a file."""
    rows = ["| what | how many | from | agreement |", "|---|---|---|---|"]
    for path in paths:
        card = _card(path)
        where = f"{card[source]}; {card['place']}" if "place" in card else card[source]
        agreement = card.get("agreement", "equal" if inside == "cells" else card.get("reason", ""))
        rows.append(f"| {card['summary']} | {len(card[inside])} | {where} | {agreement} |")
    return "\n".join([*rows, ""])


def _card(path: Path) -> dict[str, str]:
    """Return what a file says."""
    return tomllib.loads(path.read_text(encoding="utf-8"))


if __name__ == "__main__":
    PAGE.write_text(render(), encoding="utf-8")
