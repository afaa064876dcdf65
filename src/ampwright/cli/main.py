"""The command ``ampwright``: where its commands are, and what a failure comes to.

Commands are named by text and loaded only when called, so that help comes at once.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from typing import Final

from cyclopts import App, CycloptsError

from ampwright.foundations.errors import AmpwrightError, BadFileError, InputError, NotFoundError

from .help_page import HelpPage

DONE: Final = 0
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


def in_words(error: CycloptsError) -> str:
    """Say what is wrong with a command line."""
    return f"ampwright: {error}"


def version() -> str:
    """Return the version of the program."""
    from importlib.metadata import version as version_of  # slow to load, and seldom asked for

    return version_of("ampwright")


def make_app() -> App:
    """Return the application with every command in its place."""
    app = App(
        name="ampwright",
        help=ABOUT,
        help_epilogue=STATUS,
        help_formatter=HelpPage(),
        error_formatter=in_words,
        version=version,
        version_flags=["--version"],
    )
    lists = App(name="list", help="List what the program knows: facts, tables, clauses.")
    at = "ampwright.cli"
    app.command(f"{at}.options:options", name="options", help="Decide, and compare the options.")
    app.command(f"{at}.working:working", name="working", help="Show how one option is worked out.")
    app.command(f"{at}.why_not:why_not", name="why-not", help="Say what ruled a choice out.")
    app.command(f"{at}.validate:validate", name="validate", help="Check a home's file.")
    app.command(lists)
    lists.command(f"{at}.lists:facts", name="facts", help="What may be said of a home.")
    lists.command(f"{at}.lists:tables", name="tables", help="The published tables in use.")
    lists.command(f"{at}.lists:clauses", name="clauses", help="The clauses that are worked to.")
    return app


def main(words: Sequence[str] | None = None) -> int:
    """Run the command line and return its exit status."""
    speak_utf8()
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
    return (
        YOURS_TO_MEND if isinstance(error, InputError | BadFileError | NotFoundError) else OUR_FAULT
    )


def speak_utf8() -> None:
    """Let a terminal with an old code page show what it can of ≤, Ω and their like."""
    for stream in (sys.stdout, sys.stderr):
        if (reconfigure := getattr(stream, "reconfigure", None)) is not None:
            reconfigure(errors="replace")
