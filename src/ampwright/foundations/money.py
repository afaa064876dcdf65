"""Money in whole pence; pounds exist only in print."""

from __future__ import annotations

from typing import NewType

Pence = NewType("Pence", int)


def pounds(amount: Pence) -> str:
    """Render pence as pounds, without pence when they are nought.

    Examples
    --------
    >>> pounds(Pence(129800)), pounds(Pence(-5)), pounds(Pence(123456789))
    ('£1,298', '−£0.05', '£1,234,567.89')
    """
    sign = "−" if amount < 0 else ""
    whole, rest = divmod(abs(int(amount)), 100)
    return f"{sign}£{whole:,}.{rest:02d}" if rest else f"{sign}£{whole:,}"
