"""A walk through the questions says after each answer what is said of the file as it then is."""

from __future__ import annotations

import shutil
from datetime import date
from pathlib import Path

from ampwright.actions.answering import Telling
from ampwright.actions.asking import ask
from ampwright.actions.interviewing import Interview
from ampwright.actions.seeing import Terms
from ampwright.foundations.source import Evidence

CALLS = Path(__file__).parents[2] / "examples" / "calls"
DAY = date(2026, 11, 25)
TERMS = Terms(DAY)


def test_what_is_kept_from_answer_to_answer_changes_nothing(tmp_path: Path) -> None:
    path = Path(shutil.copy(CALLS / "fellside-cottage.toml", tmp_path))
    walk = Interview(path, TERMS, "", Telling(Evidence.TOLD, "phone", "op", DAY))
    for _ in range(2):
        assert walk.next is not None
        question = walk.next[1]
        assert walk.hear(question.choices[0] if question.choices else "12").became == "kept"
        assert walk.now == ask(path, TERMS)
    assert walk.hear("back").became == "taken back"
    assert walk.now == ask(path, TERMS)
    assert walk.next is not None
    assert walk.next[1].key == question.key, "it is put again"
