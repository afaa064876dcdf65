"""Danger at which a survey stops, burnt, cracked, wet or buzzing: signs of it, and what to do."""

from __future__ import annotations

import re
from typing import Final

SIGN: Final = (
    r"(?:burn(?:t|ed|ing|s)?|scorch(?:ed|ing)?|sing(?:ed|eing)|char(?:red|ring)|melt(?:ed|ing)?"
    r"|smok(?:e|es|ing|y)(?! alarm| detector)|spark(?:s|ed|ing)?|arc(?:s|ed|ing)|fizz(?:es|ing)?"
    r"|crack(?:s|ed|ing)?|wet(?! room| under| heating| system)|damp|water in|dripping"
    r"|leak(?:s|ed|ing)?|buzz(?:es|ed|ing)?|hum(?:s|ming)|crackl(?:es|ed|ing)|hot to touch"
    r"|too hot|shock(?:s|ed)?|tingl(?:es|ed|ing)|bare (?:wire|copper)|live wire)"
)
"""What a customer may say of heat, damage, water or noise at the intake; *common practice*."""
SIGNS: Final = re.compile(rf"\b{SIGN}\b", re.IGNORECASE)
NOT: Final = re.compile(
    r"\b(?:no|not|nothing|none|never|neither|nor|without|\w+n't)\b", re.IGNORECASE
)
OPENING: Final = re.compile(
    r"\s*(?:no|yes|well|oh|(?:i'm )?not sure|don't know)\s*[,.;:!]\s*", re.IGNORECASE
)
PARTS: Final = re.compile(
    rf"[.;!?]|\b(?:but|though|except|only)\b|,(?!\s*(?:or |and |nor )?{SIGN}\b)", re.IGNORECASE
)


STOP_WORDS: Final = (
    "If anything there is burnt, cracked, wet or buzzing: touch nothing, stand away, ring 105 at "
    "once, then us."
)
"""Said before anybody looks. That 105 reaches the network wherever one is: *memory*."""
STOP_NOW: Final = (
    "Stop here. Touch nothing, stand away from it, and ring 105 now: that is the network's "
    "emergency line. Then ring us. Nobody looks any closer."
)
"""Said as soon as somebody tells of it."""


def tells_of_danger(words: str) -> bool:
    """Say whether words tell of danger; what somebody says is *not* so does not count.

    Errs on the side of stopping: a sign stands unless a *no* or *not* comes before it in the same
    part of the sentence.

    Examples
    --------
    >>> tells_of_danger("it is a bit burnt on one side"), tells_of_danger("80, and it buzzes")
    (True, True)
    >>> tells_of_danger("no, nothing cracked, wet or hot"), tells_of_danger("no, a bit burnt")
    (False, True)
    """
    for part in PARTS.split(OPENING.sub("", words, count=1) if OPENING.match(words) else words):
        sign = SIGNS.search(part)
        if sign and not NOT.search(part[: sign.start()]):
            return True
    return False
