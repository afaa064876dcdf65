"""What several commands share: the declarations of their arguments and the looks of words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date as Date  # noqa: N812 - beside the option of that name
from pathlib import Path
from typing import Annotated, Final

from cyclopts import Parameter

from ampwright.actions.seeing import Terms
from ampwright.actions.shapes import HomeHead, InHand
from ampwright.actions.words import small
from ampwright.actions.working_shapes import Taken

from .sheet import Look, Sheet, in_pieces

AsJson = Annotated[bool, Parameter(negative="")]
Flag = Annotated[bool, Parameter(negative="")]

LOOK_OF: Final[dict[str, Look]] = {
    "tell_after": "sound",
    "tell_after_with_limit": "sound",
    "ask_first": "ask",
    "stop_until": "stop",
    "undetermined": "ask",
    "pass": "sound",
    "fail": "stop",
    "not applicable": "quiet",
}
"""The look of each decision and each outcome; the words carry the meaning."""


@Parameter(name="*")
@dataclass(frozen=True, kw_only=True, slots=True)
class ToDesign:
    """What a command about a home works to.

    Parameters
    ----------
    profile
        Network operator's profile. Unless given, the one the home names.
    date
        Day to design for, as 2026-12-10. Unless given, today.
    firm
        Folder of the firm's own data, in the place of the shipped.
    """

    profile: str = ""
    date: Date | None = None
    firm: Path | None = None

    @property
    def terms(self) -> Terms:
        """The same for an action: on the day said, else today by this machine's clock."""
        return Terms(today(self.date), self.profile, self.firm)


@Parameter(name="*")
@dataclass(frozen=True, kw_only=True, slots=True)
class ToJudge(ToDesign):
    """The same where nothing is designed: the day is judged on.

    Parameters
    ----------
    date
        Day to judge on, as 2026-12-10. Unless given, today.
    """

    date: Date | None = None


@Parameter(name="*")
@dataclass(frozen=True, kw_only=True, slots=True)
class ToCompare(ToDesign):
    """The same with the profiles explained, in the command that most people meet first.

    Parameters
    ----------
    profile
        Network operator's profile: neutral leaves open what operators have not said, demo
        fills that with common practice and says so. Unless given, the one the home names.
    """

    profile: str = ""


def today(on: Date | None = None) -> Date:
    """Return the day said, else today by this machine's clock."""
    return on or Date.today()  # noqa: DTZ011 - a day of the firm's calendar


def whose_home(head: HomeHead) -> str:
    """Write whose home it is and how to reach them, as far as anyone said."""
    parts = (head.customer, head.address, head.postcode, head.telephone)
    return ", ".join(part for part in parts if part)


def to_have(each: InHand) -> str:
    """Write one thing to have in hand, and from whom."""
    says = each.says if each.certain else f"perhaps: {small(each.says)}"
    return f"{says}, from {each.from_whom}"


def which_option(letter: str, name: str, id: str, sheet: Sheet) -> None:
    """Write which option an answer is about."""
    sheet.say(f"{letter}  {name}" if letter else name, "strong")
    sheet.say(in_pieces(id, 0), "quiet")


def which_home(done: str, taken: Iterable[Taken], sheet: Sheet) -> None:
    """Write in which of the homes that are still possible something was done, if in one of many."""
    values = [f"{each.what}: {each.value}" for each in taken]
    if values:
        sheet.gap()
        sheet.say(f"{done} in the most usual of the homes that are still possible:")
        sheet.points(values)
