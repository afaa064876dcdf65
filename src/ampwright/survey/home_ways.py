"""Facts of what sits in a fuse board: its outlets, its devices and the circuits they feed."""

from __future__ import annotations

from typing import Literal

from ampwright.foundations.quantity import Amperes, Count, Kiloamperes, Milliamperes, Millimetres

from .register import Agree, Thing, fact

RcdKind = Literal["none", "AC", "A", "F", "B"]
DeviceKind = Literal[
    "RCBO", "breaker", "RCD", "fuse", "main switch", "surge protection", "isolator", "other"
]
Curve = Literal["B", "C", "D", "none"]
RCD_MARKS = (
    "The mark on each RCD: one plain wave is AC; a wave over a row of bumps is A. "
    "Photo close up; open only a flap that needs no tool."
)


class Outlet(Thing):
    """One position on the busbar: its id is its way and line, as 3-L2."""

    label: str = fact(
        ask="What does the chart say this one feeds?",
        trade="Label of the position",
        look="Photo of the chart inside the lid, every line readable.",
        who="photo",
    )
    blank: bool = fact(
        ask="Is this position empty, with only a plastic cover in it?",
        trade="Blank position",
        look="Photo of the row with the flap open.",
        who="photo",
    )


class Device(Thing):
    """A breaker, RCD or other device in a board."""

    kind: DeviceKind = fact(
        ask="What kind of switch is it?",
        trade="Kind of device",
        look="A test button makes it an RCD or an RCBO; photo close up.",
        who="photo",
    )
    rating_a: Amperes = fact(
        ask="What number stands on it, with a letter such as B32?",
        trade="Rated current",
        look="Photo close up; the letter is its curve, the number its amps.",
        who="photo",
        between=(0.5, 250.0),
        symbol="In",
    )
    curve: Curve = fact(
        ask="Which letter stands before the number?",
        trade="Curve",
        look="B, C or D in front of the amps.",
        who="photo",
    )
    poles: Count = fact(
        ask="How many positions wide is it?",
        trade="Poles",
        look="Count the widths of the narrowest one beside it.",
        who="photo",
        between=(1, 4),
    )
    breaking_ka: Kiloamperes = fact(
        ask="What number stands in the small box on its face, such as 6000?",
        trade="Rated short-circuit capacity",
        look="6000 in a box is 6 kA. Photo close up.",
        who="photo",
        between=(1.0, 100.0),
        symbol="Icn",
    )
    rcd_type: RcdKind = fact(
        ask="Which wave is drawn on its face?",
        trade="RCD type",
        look=RCD_MARKS,
        who="photo",
        values={"none": 0.5, "AC": 0.25, "A": 0.24, "F": 0.005, "B": 0.005},
    )
    rcd_ma: Milliamperes = fact(
        ask="What stands on it in mA or as 0.03 A?",
        trade="RCD residual current",
        look="30 mA and 0.03 A are the same.",
        who="photo",
        between=(6.0, 1000.0),
        symbol="IΔn",
    )
    outlets: str = fact(
        ask="Which positions does it fill?",
        trade="Positions filled, by id, with spaces between",
        look="In order along the busbar, as 1-L1 1-L2 1-L3.",
        who="photo",
    )


class Circuit(Thing):
    """A circuit that leaves a board."""

    name: str = fact(
        ask="What does it feed?",
        trade="Name of the circuit",
        look="As on the chart in the board.",
        who="photo",
    )
    device: str = fact(
        ask="Which device feeds it?",
        trade="Fed by device",
        look="Follow its wire up to the device.",
        who="site",
        refers="devices",
    )
    slack_mm: Millimetres = fact(
        ask="How much spare length do its wires have in the board?",
        trade="Slack of the circuit's wires",
        look="Only with the cover off and the board dead: our electrician measures it.",
        who="site",
        between=(0.0, 3000.0),
        agree=Agree(20.0, "lower"),
        symbol="slack",
    )
    feeds: str = fact(
        ask="Which of the listed loads are on it?",
        trade="Loads fed, by id, with spaces between",
        look="Switch it off and see what stops, if the house agrees.",
        who="site",
    )
    for_hours: bool = fact(
        ask="Does what is on it draw much for hours on end, as a kiln or a heater does?",
        trade="Loaded for hours on end",
        look="Its switch feels warm after an evening; a gap or something idle belongs beside it.",
    )
