"""Write the page of commands and the schemas of their JSON: ``python tools/docs_commands.py``."""

from __future__ import annotations

import io
import json
from pathlib import Path
from textwrap import fill

from rich.console import Console

from ampwright.actions.answering import Answered
from ampwright.actions.asking_shapes import AskAnswer
from ampwright.actions.demanding import DemandAnswer
from ampwright.actions.gating import GatesAnswer
from ampwright.actions.homes import Validated
from ampwright.actions.json_shape import schema_of
from ampwright.actions.price_shapes import PriceAnswer
from ampwright.actions.rejections import WhyNot
from ampwright.actions.shapes import OptionsAnswer
from ampwright.actions.sums_shapes import SumsAnswer
from ampwright.actions.working_shapes import WorkingAnswer
from ampwright.cli.main import COMMANDS, LISTS, make_app

REFERENCE = Path(__file__).resolve().parents[1] / "docs" / "reference"
PAGE = REFERENCE / "commands.md"
WIDTH = 80
ANSWERS = {
    "options": OptionsAnswer,
    "price": PriceAnswer,
    "sums": SumsAnswer,
    "working": WorkingAnswer,
    "why-not": WhyNot,
    "ask": AskAnswer,
    "answer": Answered,
    "demand": DemandAnswer,
    "gates": GatesAnswer,
    "validate": Validated,
}
WIDE = 100
LINKS = ", ".join(f"[{name}]({name}.schema.json)" for name in ANSWERS)
ABOUT = f"""Every command writes plain text of at most 80 columns; colour only on a
terminal, and never there when `NO_COLOR` is set. With `--json` it writes one JSON document instead,
whose schema stands beside this page: {LINKS}. What is wrong goes to standard error, in words."""
HEAD = f"""# Commands

Written by `tools/docs_commands.py` from the commands' own help; do not edit.

{fill(" ".join(ABOUT.split()), WIDE, break_on_hyphens=False)}
"""


def render() -> str:
    """Return the whole page as text."""
    parts = [HEAD, section("ampwright", ())]
    parts += [section(f"ampwright {name}", (name,)) for name, _, _ in COMMANDS]
    parts += [section(f"ampwright list {name}", ("list", name)) for name, _, _ in LISTS]
    return "\n".join(parts)


def section(title: str, words: tuple[str, ...]) -> str:
    """Return the help of one command under its name."""
    out = io.StringIO()
    console = Console(file=out, width=WIDTH, force_terminal=False)
    make_app()([*words, "--help"], console=console, result_action="return_value")
    lines = [line.rstrip() for line in out.getvalue().strip().splitlines()]
    return "\n".join([f"## `{title}`", "", "```text", *lines, "```", ""])


def schemas() -> dict[Path, str]:
    """Return the schema of every command's JSON by its file."""
    return {
        REFERENCE / f"{name}.schema.json": json.dumps(
            schema_of(kind, f"The answer of ampwright {name} --json"), ensure_ascii=False, indent=1
        )
        + "\n"
        for name, kind in ANSWERS.items()
    }


if __name__ == "__main__":
    PAGE.parent.mkdir(parents=True, exist_ok=True)
    PAGE.write_text(render(), encoding="utf-8")
    for path, text in schemas().items():
        path.write_text(text, encoding="utf-8")
