"""What several commands share: the declarations of their arguments."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Annotated

from cyclopts import Parameter

HomeFile = Path
AsJson = Annotated[bool, Parameter(negative="")]
Profile = str
Day = Annotated[date | None, Parameter(name="--date")]


def design_day(said: date | None) -> date:
    """Return the day to design for: the one said, else today by this machine's clock."""
    return said or date.today()  # noqa: DTZ011 - a day as the firm's calendar has it
