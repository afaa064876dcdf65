"""How the clauses of this room name the documents they stand in.

The recalled text of the wiring rules is that of 2022 to 2024; a later amendment is in force.
A place that somebody printed where we could read it is *published* and says who printed it.
"""

from __future__ import annotations

from ampwright.foundations.source import Place, Trust

WIRING_EDITION = "2018+A2:2022"
"""The edition of BS 7671 that the recalled clauses were taken from."""


def wiring(at: str, quoted_by: str = "", *, doubtful: bool = False) -> Place:
    """Return a place in the wiring rules: from memory, unless somebody we read quoted it.

    Examples
    --------
    >>> print(wiring("433.1.1 (i)"))
    BS 7671:2018+A2:2022, 433.1.1 (i) (memory)
    >>> print(wiring("551.7.2", "a trade page"))
    BS 7671:2018+A2:2022, 551.7.2, as quoted by a trade page
    """
    if quoted_by:
        at = f"{at}, as quoted by {quoted_by}"
    trust = Trust.PUBLISHED if quoted_by else Trust.MEMORY
    return Place("BS 7671", WIRING_EDITION, at, trust, doubtful)
