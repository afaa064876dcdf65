"""What is wrong with a command line, in words: the field, what was given, what is expected."""

from __future__ import annotations

import difflib
from datetime import date
from typing import TYPE_CHECKING, Any, Final, get_args

from cyclopts import CoercionError, CycloptsError, MissingArgumentError, UnusedCliTokensError
from cyclopts.exceptions import UnknownCommandError, UnknownOptionError

from ampwright.actions.words import any_of, small

if TYPE_CHECKING:
    from cyclopts import Argument

EXPECTED: Final[dict[type, str]] = {
    date: "a day, as 2026-12-10", int: "a whole number", float: "a number",
}  # fmt: skip


def in_words(error: CycloptsError) -> str:
    """Say what is wrong with a command line and where the right one stands."""
    said = what_is_wrong(error)
    command = " ".join(("ampwright", *(error.command_chain or ())))
    return f"ampwright: {said} See {command} --help."


def what_is_wrong(error: CycloptsError) -> str:
    """Say what is wrong: the field, its value, what is expected, and what to do."""
    match error:
        case MissingArgumentError(argument=argument) if argument is not None:
            return f"{argument.name} is missing; expected {meaning(argument, error.app)}."
        case CoercionError(argument=argument, token=token) if argument is not None and token:
            wanted = expected(argument, token.value) or f"expected {meaning(argument, error.app)}."
            return f"{argument.name} is {token.value!r}; {wanted}"
        case UnknownCommandError(unused_tokens=[word, *_]):
            known = commands_of(error.app)
            return f"there is no command {word!r}. {meant(word, known)}Known: {', '.join(known)}."
        case UnusedCliTokensError(unused_tokens=words) if words:
            return (
                f"{' '.join(words)!r} is one word too many; take it away, or quote what has spaces."
            )
        case UnknownOptionError(token=token) if token is not None:
            options = names_of(error.argument_collection)
            return (
                f"there is no option {token.keyword}. {meant(str(token.keyword), options)}".strip()
            )
        case _:
            return str(error)


def meaning(argument: Argument, app: Any) -> str:
    """Return what an argument is, from the help of its command."""
    arguments = app.assemble_argument_collection(parse_docstring=True)
    helps = (each.parameter.help for each in arguments if each.name == argument.name)
    return small(str(next(helps, "") or "a value").partition("\n")[0].rstrip("."))


def expected(argument: Argument, given: str) -> str:
    """Say what an argument takes, where its kind tells it; else nothing."""
    choices = [each for each in get_args(argument.hint) if isinstance(each, str) and each]
    if choices:
        return f"expected {any_of(choices)}. {meant(given, choices)}".strip()
    types = {argument.hint, *get_args(argument.hint)}
    found = [words for kind, words in EXPECTED.items() if kind in types]
    return f"expected {found[0]}." if found else ""


def meant(word: str, known: list[str]) -> str:
    """Return the nearest of the known words as a question, or nothing."""
    near = difflib.get_close_matches(word, known, 1, cutoff=0.7)
    return f"Did you mean {near[0]}? " if near else ""


def commands_of(app: Any) -> list[str]:
    """Return the names of the commands of an application."""
    return [name for name in app if not name.startswith("-")] if app is not None else []


def names_of(arguments: Any) -> list[str]:
    """Return the names of the options of a command."""
    return [name for each in arguments or () for name in each.names if name.startswith("--")]
