"""What several commands share: the declarations of their arguments and the looks of words."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Annotated, Final

from cyclopts import Parameter

from ampwright.actions.seeing import Terms

from .sheet import Look

AsJson = Annotated[bool, Parameter(negative="")]
Flag = Annotated[bool, Parameter(negative="")]
Day = Annotated[date | None, Parameter(name="--date")]

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


def terms(profile: str, on: date | None, firm: Path | None = None) -> Terms:
    """Return what to work to: on the day said, else today by this machine's clock."""
    return Terms(today(on), profile, firm)


def today(on: date | None = None) -> date:
    """Return the day said, else today by this machine's clock."""
    return on or date.today()  # noqa: DTZ011 - a day of the firm's calendar
