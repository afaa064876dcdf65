"""The command ``ampwright``: where its commands are, and what a failure comes to.

Commands are named by text and loaded only when called, so that help comes at once.
"""

from __future__ import annotations

import gc
import sys
from collections.abc import Sequence
from typing import Final

from cyclopts import App, CycloptsError

from ampwright.foundations.errors import AmpwrightError, BadFileError, InputError, NotFoundError

from .help_page import HelpPage

COLLECT_AFTER: Final = 100_000
"""Objects made before circles among them are looked for: there are hardly any, and a tenth of the
time went into looking."""
OUR_FAULT: Final = 1
YOURS_TO_MEND: Final = 2

ABOUT: Final = """\
Designs a home's car charge point from one file of facts, and shows the working.

It computes and explains; it signs nothing. A competent, licensed person decides.
"""
STATUS: Final = (
    "Exit status: 0 when the work was done, whatever the decision; 2 when something given "
    "must be mended first (nothing is left half done); 1 when the program's own data is at fault."
)
COMMANDS: Final = (
    ("options", "options:options", "Decide a job and compare its options."),
    ("price", "price:price", "Build up what an option costs."),
    ("sums", "sums:sums", "Work out what a customer asks."),
    ("working", "working:working", "Show how one option is worked out."),
    ("why-not", "why_not:why_not", "Say why a choice is not among the options."),
    ("ask", "ask:ask", "Say what is certain, what it costs, and what to ask next."),
    ("interview", "interview:interview", "Ask by turns and keep each answer at once."),
    ("answer", "answer:answer", "Put one answer in a home's file."),
    ("demand", "demand:demand", "Set what a home draws three ways side by side."),
    ("gates", "gates:gates", "Say what is missing before the next stage of a job."),
    ("validate", "validate:validate", "Check a home's file."),
    ("firm", "firm:firm", "Write out the firm's data, to be changed."),
)
LISTS: Final = (
    ("facts", "lists:facts", "What may be said of a home."),
    ("tables", "lists:tables", "The published tables in use."),
    ("clauses", "lists:clauses", "The clauses that are worked to."),
)
"""Each command: its name, its module and function in this room, what it does."""


def in_words(error: CycloptsError) -> str:
    """Say what is wrong with a command line."""
    from .mistakes import in_words as said  # wanted only when something is

    return said(error)


def version() -> str:
    """Return the version of the program."""
    from importlib.metadata import version as version_of  # slow to load, and seldom asked for

    return version_of("ampwright")


def make_app() -> App:
    """Return the application with every command in its place, in the order of the work."""
    app = App(
        name="ampwright",
        help=ABOUT,
        help_epilogue=STATUS,
        help_formatter=HelpPage(),
        error_formatter=in_words,
        version=version,
        version_flags=["--version"],
    )
    about = "List what the program knows: facts, tables, clauses."
    lists = App(name="list", help=about, sort_key=len(COMMANDS))
    for group, commands in ((app, COMMANDS), (lists, LISTS)):
        for number, (name, where, says) in enumerate(commands):
            at = f"ampwright.cli.{where}"
            group.command(at, name=name, help=says, help_epilogue="", sort_key=number)
    app.command(lists)
    return app


def main(words: Sequence[str] | None = None) -> int:
    """Run the command line and return its exit status."""
    speak_utf8()
    gc.set_threshold(COLLECT_AFTER)
    try:
        status: int = make_app()(
            list(sys.argv[1:] if words is None else words),
            result_action="return_int_as_exit_code_else_zero",
        )
    except AmpwrightError as error:
        print(f"ampwright: {error}", file=sys.stderr)
        return status_of(error)
    return status


def status_of(error: AmpwrightError) -> int:
    """Say whose an error is to mend."""
    if isinstance(error, InputError | BadFileError | NotFoundError):
        return YOURS_TO_MEND
    return OUR_FAULT


def speak_utf8() -> None:
    """Let a terminal with an old code page show what it can of ≤, Ω and their like."""
    for stream in (sys.stdout, sys.stderr):
        if (reconfigure := getattr(stream, "reconfigure", None)) is not None:
            reconfigure(errors="replace")
