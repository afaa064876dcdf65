"""Facts of readings at the origin: volts by the hour."""

from __future__ import annotations

from ampwright.foundations.quantity import Amperes, Volts

from .register import Thing, fact


class Reading(Thing):
    """One voltage read at the house, with the hour and what the house was drawing."""

    at: str = fact(
        ask="What time was it?",
        trade="Time of the reading",
        look="The hour matters: tea time and the small hours differ most.",
        form="time",
        who="site",
    )
    volts_v: Volts = fact(
        ask="What did the meter or tester show?",
        trade="Supply voltage, line to neutral",
        look="Photo of the tester with its figure and the time in view.",
        between=(150.0, 290.0),
        step=1.0,
        who="site",
    )
    house_a: Amperes = fact(
        ask="What was the house drawing at that moment?",
        trade="Load at the time of the reading",
        look="A clamp on one tail, or the figure on the display of a smart meter.",
        between=(0.0, 300.0),
        step=1.0,
        who="site",
    )
