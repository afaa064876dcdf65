"""What can go wrong. Failing a check or lacking an answer is not here: those are results."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

LONGEST = 60
"""So many letters of a value are shown beside what is wrong with it."""


class AmpwrightError(Exception):
    """Base of every error raised on purpose."""


class InputError(AmpwrightError):
    """A value that nothing should accept, with what was expected and what to do.

    Examples
    --------
    >>> print(InputError("supply.main_fuse_a", "18O", "a number of amperes",
    ...                  "Write the figure on the label, for example 80."))
    supply.main_fuse_a is '18O'; expected a number of amperes. Write the figure on the label, \
for example 80.
    """

    def __init__(self, name: str, value: object, expected: str, do: str = "") -> None:
        self.name, self.value, self.expected, self.do = name, value, expected, do
        super().__init__(f"{name} is {value!r}; expected {expected}. {do}".strip())


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong with a file: where it stands, what it says and what was expected."""

    line: int
    path: str
    value: object
    expected: str
    do: str = ""

    def __str__(self) -> str:
        """Render as one sentence with its line; of a long value only the beginning."""
        value = repr(self.value)
        value = value if len(value) <= LONGEST else f"{value[:LONGEST]}…"
        said = f"line {self.line}: {self.path} is {value}; expected {self.expected}."
        return f"{said} {self.do}".strip()


class BadFileError(AmpwrightError):
    """A file that was refused whole, with every problem in it at once."""

    def __init__(self, what: str, problems: Sequence[Problem]) -> None:
        self.what, self.problems = what, tuple(problems)
        listed = "\n".join(f"  {each}" for each in self.problems)
        count = f"{len(self.problems)} problem{'s' if len(self.problems) != 1 else ''}"
        super().__init__(f"{what}: {count}, nothing was read.\n{listed}")


class NotFoundError(AmpwrightError):
    """A name that leads to nothing, with the nearest names that exist; or, unnamed, nothing at all.

    Examples
    --------
    >>> print(NotFoundError("option", "", (), do="Nothing can be fitted here."))
    there is no option. Nothing can be fitted here.
    """

    def __init__(
        self, kind: str, name: str, known: Sequence[str], nearest: str = "", do: str = ""
    ) -> None:
        self.kind, self.name, self.known = kind, name, tuple(known)
        listed = f"Known: {', '.join(known)}." if known else do or "There are none."
        hint = f"Did you mean {nearest}?" if nearest else listed
        super().__init__(f"there is no {kind}{f' {name!r}' if name else ''}. {hint}")


class OutOfTableError(AmpwrightError):
    """A look-up outside what the published table covers; never extrapolated."""

    def __init__(self, table: str, column: str, asked: object, covers: str) -> None:
        self.table, self.column, self.asked, self.covers = table, column, asked, covers
        super().__init__(f"{table} has no row with {column} = {asked}; it covers {covers}.")


class TableCardError(AmpwrightError):
    """A data file whose card is missing, incomplete or does not match it."""
