"""Facts of what the house draws and what it makes: loads, solar, batteries."""

from __future__ import annotations

from typing import Literal

from ampwright.foundations.quantity import Amperes, KilowattHours, Kilowatts

from .register import SEEN, TOLD, Agree, Standard, Thing, fact

LoadKind = Literal[
    "lighting", "sockets", "cooking", "instant shower", "room heating", "storage heating",
    "floor heating", "stored hot water", "heat pump", "hot tub", "battery charging",
    "charge point", "motor", "fixed",
]  # fmt: skip
Phase = Literal["L1", "L2", "L3", "all"]
SourceKind = Literal["solar", "battery", "bidirectional point", "other"]
SensorAt = Literal["at the meter", "on the tails", "in the board", "none"]
BacksUp = Literal["nothing", "a few circuits", "the whole house"]
PHASE_VALUES = {"L1": 0.3, "L2": 0.3, "L3": 0.3, "all": 0.1}


class Load(Thing):
    """Something that draws current for long enough to matter."""

    kind: LoadKind = fact(
        ask="What is it?",
        trade="Kind of load, for diversity",
        look="What it does: cook, heat a room, heat water, turn something.",
        needs={"quote": TOLD, "fit": TOLD},
    )
    name: str = fact(
        ask="What do you call it?",
        trade="Name",
        look="As on the label of the fuse board, if it has one.",
    )
    amps_a: Amperes = fact(
        ask="What does its plate say, in kilowatts or amps?",
        trade="Current at 230 V",
        look="Photo of the plate: inside the door of an oven, under a shower, on the side of a "
        "heater. Kilowatts times 1,000 over 230 is the amps. Not the size of its breaker. Of a "
        "charge point, the current it is set to.",
        who="photo",
        between=(0.1, 200.0),
        step=1.0,
        agree=Agree(1.0, "higher", share=0.05),
        needs={"quote": TOLD, "fit": SEEN},
        symbol="I load",
    )
    phase: Phase = fact(
        ask="Which of the three lines feeds it?",
        trade="Phase",
        look="From the chart in the board or the colour at its breaker.",
        who="site",
        values=PHASE_VALUES,
    )
    socket_on_switch: bool = fact(
        ask="Does the cooker's big switch on the wall have a socket beside it?",
        trade="Socket outlet on the cooker control unit",
        look="Photo of the switch.",
        values={False: 0.6, True: 0.4},
    )
    board: str = fact(
        ask="Which fuse board feeds it?",
        trade="Fed from board",
        look="The board whose chart names it.",
        refers="boards",
    )
    goes: bool = fact(
        ask="If it is an old charge point: does it go when the new one comes?",
        trade="Taken out with this work",
        look="Two points share what the house has; an old one may also stay as the only one.",
    )
    pilot_a: Amperes = fact(
        ask="If it is a charge point: what current does its pilot offer a tester?",
        trade="Current that its pilot offers, read with a tester",
        look="A tester in the place of the car, the point at the setting it is kept at.",
        who="site",
        between=(0.0, 80.0),
        step=1.0,
        agree=Agree(0.5, "higher"),
        symbol="I pilot",
    )
    shares_limit: bool = fact(
        ask="If it is a charge point: can the new one tell it to slow down, or switch it off?",
        trade="Held back by the limiter of the new point",
        look="Both makers' sheets must say so; two of the same make often can.",
        who="site",
        values={False: 0.7, True: 0.3},
        needs={"fit": SEEN},
    )


class Source(Thing):
    """Something that can feed into the house: solar, battery, a point that works both ways."""

    kind: SourceKind = fact(
        ask="What is it: solar panels, a battery, something else?",
        trade="Kind of source",
        look="Photo of each box by the meter or in the loft.",
        needs={"quote": TOLD, "fit": SEEN},
    )
    name: str = fact(ask="What do you call it?", trade="Name", look="As on its label.")
    amps_a: Amperes = fact(
        ask="What is the most amps the plate on its box says it gives?",
        trade="Rated output current per phase",
        look="Photo of the plate on the inverter.",
        who="photo",
        between=(0.1, 200.0),
        step=1.0,
        needs={"quote": TOLD, "fit": SEEN},
        symbol="I source",
    )
    kw: Kilowatts = fact(
        ask="How many kilowatts does the plate on its box say?",
        trade="Rated output",
        look="Photo of the plate on the inverter, not the size of the panels.",
        who="photo",
        between=(0.1, 100.0),
        step=0.1,
        needs={"fit": SEEN},
        on_papers=True,
        symbol="P source",
    )
    phase: Phase = fact(
        ask="Which of the three lines does it feed?",
        trade="Phase",
        look="From the chart in the board or its papers.",
        who="site",
        values=PHASE_VALUES,
    )
    board: str = fact(
        ask="Which fuse board does it feed into?",
        trade="Connected to board",
        look="The way labelled solar or battery.",
        who="photo",
        refers="boards",
    )
    type_tested: bool = fact(
        ask="Do its papers name G98 or G99?",
        trade="Type tested to the generation rules",
        look="The commissioning form or the maker's sheet.",
        values={True: 0.9, False: 0.1},
    )
    told_operator: bool = fact(
        ask="Is there a letter or a form that shows the network was told about it?",
        trade="Network operator notified",
        look="A commissioning form with a date, or a letter back.",
        values={True: 0.75, False: 0.25},
        needs={"fit": SEEN},
    )
    fitted_on: str = fact(
        ask="On what day was it switched on?",
        trade="Commissioned on",
        look="Its commissioning form, the handover papers, or its app.",
        form="date",
    )
    yearly_kwh: KilowattHours = fact(
        ask="How much did it make last year?",
        trade="Generation in a year",
        look="From its app, or last year's meter readings.",
        between=(0.0, 100000.0),
        step=100.0,
        ages_after=365,
    )
    yearly_export_kwh: KilowattHours = fact(
        ask="How much of that was sold to the grid?",
        trade="Export in a year",
        look="From the supplier's export statement.",
        between=(0.0, 100000.0),
        step=100.0,
        ages_after=365,
    )
    storage_kwh: KilowattHours = fact(
        ask="How many kilowatt-hours does the battery hold?",
        trade="Usable storage",
        look="On its plate or in its app.",
        between=(0.1, 500.0),
        step=0.5,
    )
    export_limit_a: Amperes = fact(
        ask="Is there a limit on what it may send out, and how many amps is it?",
        trade="Export limit per phase",
        look="In the network's letter, or the inverter's settings on site.",
        who="site",
        between=(0.0, 200.0),
        step=1.0,
    )
    export_limited: bool = fact(
        ask="Did the network set a limit on what it may send out?",
        trade="Export limitation scheme",
        look="In the network's letter.",
        values={False: 0.85, True: 0.15},
        needs={"fit": SEEN},
    )
    limit_proved: bool = fact(
        ask="Is there a test sheet that shows the limit was tried?",
        trade="Export limit proved by test",
        look="Papers of its commissioning: the limit tried, and its sensor, link and power lost "
        "one at a time.",
        who="photo",
        needs={"fit": SEEN},
    )
    sensor_at: SensorAt = fact(
        ask="Where is its clip-on sensor: at the meter, on the cables to the fuse board, or in "
        "the board?",
        trade="Position of its current sensor",
        look="Photo of every clip-on sensor and the box each one's wire goes to. Wired in beside "
        "the meter, so that all the house goes through it, is at the meter.",
        who="photo",
        values={"on the tails": 0.75, "in the board": 0.1, "at the meter": 0.15, "none": 0.0},
        needs={"fit": SEEN},
    )
    way_both_ways: bool = fact(
        ask="Do the papers of the switch that feeds it in the board say that it may carry current "
        "in both directions?",
        trade="Device on its way suitable for current both ways",
        look="Marks LINE and LOAD on its face mean it may not; the maker's sheet settles it.",
        who="site",
        values={True: 0.5, False: 0.5},
        needs={"fit": SEEN},
    )
    backs_up: BacksUp = fact(
        ask="Does it keep anything going in a power cut: a few things, or the whole house?",
        trade="Circuits it backs up",
        look="A changeover switch or a second small board beside the battery.",
        values={"nothing": 0.75, "a few circuits": 0.2, "the whole house": 0.05},
        needs={"fit": TOLD},
    )
    holds_off_for_car: bool = fact(
        ask="Is it set not to give anything while a car charges?",
        trade="Barred from discharging while a car charges",
        look="In its app or its commissioning sheet.",
        values={False: 0.9, True: 0.1},
    )


# Amps at 230 V of what is on sale: an instant shower of 7.5, 8.5, 9.5 or 10.5 kW, and so on.
STANDARD_LOADS = {
    "shower": Standard(
        ask="Is there an electric shower anywhere, even one you never use?",
        trade="Instantaneous electric shower",
        look="A white box on the wall that heats the water itself, often with a cord switch.",
        values={True: 0.45, False: 0.55},
        implies={"kind": "instant shower", "name": "electric shower"},
        priors={"amps_a": {32.6: 0.2, 37.0: 0.4, 41.3: 0.3, 45.7: 0.1}},
    ),
    "cooker": Standard(
        ask="Does anything in the kitchen cook by electricity on a big switch of its own: a hob, "
        "an oven, a range?",
        trade="Electric cooking on its own circuit",
        look="A large red or neon switch near the cooker. A gas hob with a plug-in oven is no.",
        values={True: 0.7, False: 0.3},
        implies={"kind": "cooking", "name": "cooker"},
        priors={"amps_a": {13.0: 0.35, 32.0: 0.4, 44.0: 0.25}},
    ),
    "heat-pump": Standard(
        ask="Is there a heat pump: a large fan in a box outside that heats the house?",
        trade="Heat pump",
        look="Photo of the plate on the box outside.",
        values={True: 0.03, False: 0.97},
        implies={"kind": "heat pump", "name": "heat pump"},
        priors={"amps_a": {10.0: 0.3, 16.0: 0.4, 25.0: 0.3}},
    ),
    "hot-tub": Standard(
        ask="Is there a hot tub or a heated pool?",
        trade="Hot tub or pool heater",
        look="Photo of the plate on its control box.",
        values={True: 0.04, False: 0.96},
        implies={"kind": "hot tub", "name": "hot tub"},
        priors={"amps_a": {13.0: 0.5, 32.0: 0.5}},
    ),
    "immersion": Standard(
        ask="Is there a hot-water tank with an electric heater in it?",
        trade="Immersion heater",
        look="A switch marked water heater near the airing cupboard.",
        values={True: 0.35, False: 0.65},
        implies={"kind": "stored hot water", "name": "immersion heater"},
        priors={"amps_a": {13.0: 1.0}},
    ),
    "storage-heaters": Standard(
        ask="Are there storage heaters: thick, heavy ones that charge up overnight?",
        trade="Storage heating",
        look="Count them; the amps are those of all of them together.",
        values={True: 0.05, False: 0.95},
        implies={"kind": "storage heating", "name": "storage heaters"},
        priors={"amps_a": {30.0: 0.4, 45.0: 0.4, 60.0: 0.2}},
    ),
    "sauna": Standard(
        ask="Is there a sauna or a steam room?",
        trade="Sauna heater",
        look="Photo of the plate on the heater.",
        values={True: 0.01, False: 0.99},
        implies={"kind": "fixed", "name": "sauna"},
        priors={"amps_a": {16.0: 0.4, 32.0: 0.6}},
    ),
    "air-conditioning": Standard(
        ask="Is there air conditioning fixed to a wall or a ceiling?",
        trade="Fixed air conditioning",
        look="Photo of the plate on the box outside.",
        values={True: 0.03, False: 0.97},
        implies={"kind": "motor", "name": "air conditioning"},
        priors={"amps_a": {5.0: 0.5, 10.0: 0.5}},
    ),
}
"""The loads that are asked after in every home."""
