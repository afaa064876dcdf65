"""Write the page of deliberate faults from a fresh run: ``python tools/docs_mutants.py``."""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
PAGE = ROOT / "docs" / "reference" / "mutants.md"

if __name__ == "__main__":
    sys.path.insert(0, str(ROOT))
    from tests.code_rules.test_mutants import page

    PAGE.write_text(page(), encoding="utf-8")
