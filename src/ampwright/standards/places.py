"""How the clauses of this room name the documents they stand in.

The recalled text of the wiring rules is that of 2022 to 2024; a later amendment is in force.
A place that somebody printed where we could read it is *published* and says who printed it.
"""

from __future__ import annotations

from ampwright.foundations.source import Place, Trust

WIRING_EDITION = "2018+A2:2022"
"""The edition of BS 7671 that the recalled clauses were taken from."""


def wiring(at: str, shown_by: str = "", *, doubtful: bool = False) -> Place:
    """Return a place in the wiring rules: from memory, unless somebody printed it where we read.

    What was printed is the substance; the number of the clause may still be recalled.

    Examples
    --------
    >>> print(wiring("433.1.1 (i)"))
    BS 7671:2018+A2:2022, 433.1.1 (i) (memory)
    >>> print(wiring("551.7.2", "a trade page"))
    BS 7671:2018+A2:2022, 551.7.2, as shown by a trade page
    """
    if shown_by:
        at = f"{at}, as shown by {shown_by}"
    trust = Trust.PUBLISHED if shown_by else Trust.MEMORY
    return Place("BS 7671", WIRING_EDITION, at, trust, doubtful)
