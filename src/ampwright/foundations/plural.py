"""How many there are of something, in words."""

from __future__ import annotations


def count(many: int, one: str, more: str = "") -> str:
    """Write how many there are of something.

    Examples
    --------
    >>> count(1, "home"), count(1200, "home"), count(2, "way", "ways")
    ('1 home', '1,200 homes', '2 ways')
    """
    return f"{many:,} {one if many == 1 else more or one + 's'}"
