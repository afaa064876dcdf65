"""Who outside the firm must act on some jobs, in the words in which their work names them."""

from __future__ import annotations

from typing import Final

NETWORK: Final = "the network operator"
SUPPLIER: Final = "the supplier or the meter operator"
"""Whoever may break the seals of the meter and put a switch after it."""
FREEHOLDER: Final = "the freeholder or the managing agent"
LANDLORD: Final = "the landlord"
