"""What the network operator of a home has said of how it reads its own rules."""

from __future__ import annotations

from ampwright.foundations.source import Place, Trust

from .register import Part, fact

NOBODY_ASKED = Place("even chances: no operator was asked", "November 2026", trust=Trust.MEMORY)


class Operator(Part):
    """How the operator counts a demand that is held down by a device.

    One answer settles it for a whole area; an operator profile that holds the answer is used
    before these are asked.
    """

    counts_limiter: bool = fact(
        ask="If a device holds the whole house to a figure and fails safe, is that figure the "
        "demand we declare to you?",
        trade="Whether the operator counts a limiter's figure as the demand",
        look="A letter, an e-mail or the current form of the operator; keep it with its date.",
        values={True: 0.5, False: 0.5},
        prior=NOBODY_ASKED,
        ages_after=365,
    )
    counts_setting: bool = fact(
        ask="If a point is locked below its largest size, do you count the setting or the size?",
        trade="Whether the operator counts the locked setting of a point, not its largest size",
        look="A letter, an e-mail or the current form of the operator; keep it with its date.",
        values={True: 0.5, False: 0.5},
        said_as={True: "the setting", False: "the size"},
        prior=NOBODY_ASKED,
        ages_after=365,
    )
