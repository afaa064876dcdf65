"""Facts of the house: its address, its walls, the places for the point."""

from __future__ import annotations

from typing import Literal

from ampwright.foundations.quantity import (
    Count,
    Metres,
    Millimetres,
    SquareMm,
    Year,
)

from .register import SEEN, TOLD, Agree, Part, Thing, fact

Country = Literal["England", "Wales", "Scotland", "Northern Ireland"]
HouseKind = Literal[
    "semi-detached", "detached", "terrace", "flat", "cottage", "farmhouse", "bungalow",
    "converted building",
]  # fmt: skip
WallKind = Literal["brick cavity", "solid brick", "stone", "block", "timber frame", "rubble stone"]
WallFace = Literal["bare", "render", "cladding", "tiles"]
Heating = Literal[
    "gas", "oil", "LPG", "electric", "heat pump", "solid fuel", "shared heat network", "none"
]
StandsOn = Literal["wall", "post", "garage inside", "outbuilding"]
Signal = Literal["good", "fair", "none"]
NearGas = Literal["nothing", "gas meter", "flue or vent", "oil tank", "gas bottles or tank"]


class Property(Part):
    """The building and its address."""

    address: str = fact(
        ask="What is the address?",
        trade="Address",
        look="House name or number, road, place.",
        needs={"quote": TOLD},
        on_papers=True,
    )
    postcode: str = fact(
        ask="And the postcode?",
        trade="Postcode",
        look="Say it back letter by letter.",
        form="postcode",
        needs={"quote": TOLD},
        on_papers=True,
    )
    country: Country = fact(
        ask="Is the house in England, Wales, Scotland or Northern Ireland?",
        trade="Country, for building and planning rules",
        look="Building and planning rules differ, and so does the network's form.",
        values={"England": 0.86, "Wales": 0.05, "Scotland": 0.07, "Northern Ireland": 0.02},
        needs={"quote": TOLD},
        on_papers=True,
    )
    kind: HouseKind = fact(
        ask="What kind of house is it?",
        trade="Kind of dwelling",
        look="Photo from the road.",
        needs={"quote": TOLD},
    )
    built_year: Year = fact(
        ask="When was it built, roughly?",
        trade="Year built",
        look="A guess within ten years helps.",
        between=(1000, 2100),
        step=10,
        agree=Agree(10.0, "lower"),
    )
    new_home: bool = fact(
        ask="Is it a new house whose builder must put in the point?",
        trade="Point asked for by the rules for new homes",
        look="The building control's approval names it; a point added later is no.",
    )
    storeys: Count = fact(
        ask="How many floors has it, without the loft?",
        trade="Storeys",
        look="Photo from the road.",
        between=(1, 10),
    )
    wall_kind: WallKind = fact(
        ask="What is the outside wall made of?",
        trade="Wall construction",
        look="Bricks all lengthwise are a cavity; short ends in each row are solid.",
        who="photo",
        values={
            "brick cavity": 0.6,
            "solid brick": 0.18,
            "stone": 0.07,
            "block": 0.09,
            "timber frame": 0.04,
            "rubble stone": 0.02,
        },
        known_as={"cavity": "brick cavity", "brick": "brick cavity"},
    )
    wall_face: WallFace = fact(
        ask="Is the wall bare, rendered, clad or hung with tiles?",
        trade="Wall finish",
        look="Photo of the wall with someone standing by it for scale.",
        who="photo",
        values={"bare": 0.65, "render": 0.25, "cladding": 0.06, "tiles": 0.04},
    )
    wall_mm: Millimetres = fact(
        ask="How thick is the outside wall, at a window or a door?",
        trade="Wall thickness",
        look="From the inside face to the outside face, with a tape.",
        between=(50.0, 2000.0),
        step=10.0,
        agree=Agree(20.0, "higher"),
        symbol="wall",
    )
    listed_building: bool = fact(
        ask="Is the house listed?",
        trade="Listed building or curtilage",
        look="The national list is free to search by address.",
        values={False: 0.98, True: 0.02},
        needs={"quote": TOLD, "fit": SEEN},
    )
    listing_grade: str = fact(
        ask="Which grade does the list give?",
        trade="Listing grade",
        look="From the list entry.",
    )
    conservation_area: bool = fact(
        ask="Is it in a conservation area or a national park?",
        trade="Conservation area or other designated land",
        look="The council's planning map.",
        values={False: 0.93, True: 0.07},
        needs={"fit": TOLD},
    )
    heating: Heating = fact(
        ask="What heats the house?",
        trade="Main heating",
        look="Gas, oil, a heat pump, electricity.",
        values={
            "gas": 0.75,
            "oil": 0.06,
            "LPG": 0.02,
            "electric": 0.09,
            "heat pump": 0.03,
            "solid fuel": 0.02,
            "shared heat network": 0.03,
            "none": 0.0,
        },
    )
    cooking: str = fact(
        ask="What do you cook on: hob and oven, gas or electric?",
        trade="Cooking",
        look="Each with its fuel; electric ones are listed among the loads.",
    )
    parking: str = fact(
        ask="Where does the car stand?",
        trade="Parking",
        look="Photo from where the car stands towards the house.",
        needs={"quote": TOLD},
        on_papers=True,
    )
    own_parking: bool = fact(
        ask="Is the place where the car stands yours?",
        trade="Off-street parking in the customer's control",
        look="Title plan or lease.",
        values={True: 0.95, False: 0.05},
        needs={"quote": TOLD},
    )
    asbestos: str = fact(
        ask="Do you know of any asbestos, by the meter, in the garage or under the eaves?",
        trade="Asbestos known or suspected",
        look="Grey board behind an old fuse board, corrugated roofs. Only look; touch nothing.",
        needs={"fit": TOLD},
        on_papers=True,
    )
    buried: str = fact(
        ask="Are there drains, pipes, cables or protected trees where we might dig?",
        trade="Buried services and trees",
        look="Covers, old plans, the neighbours.",
        needs={"fit": TOLD},
        on_papers=True,
    )
    last_report: str = fact(
        ask="Is there a certificate or a report from the last electrical work?",
        trade="Last certificate or report",
        look="Photo of its pages, or of the sticker on the board.",
        who="photo",
    )


class CandidatePlace(Thing):
    """A place where the point could go."""

    name: str = fact(
        ask="What do you call that spot?",
        trade="Name of the place",
        look="By the front window, on the garage: as they say it.",
        needs={"quote": TOLD},
    )
    outdoors: bool = fact(
        ask="Is it outside?",
        trade="Outdoors",
        look="A car port is outside; a garage with a door is not.",
        values={True: 0.9, False: 0.1},
        needs={"quote": TOLD, "fit": SEEN},
    )
    on: StandsOn = fact(
        ask="Would it hang on the house wall, a post, inside the garage or on another building?",
        trade="Mounted on",
        look="Photo of the wall with someone standing by it for scale.",
        who="photo",
        values={"wall": 0.85, "post": 0.05, "garage inside": 0.07, "outbuilding": 0.03},
        needs={"quote": TOLD, "fit": SEEN},
    )
    street_view: bool = fact(
        ask="Would it be seen from the road?",
        trade="Seen from the street",
        look="Photo from the pavement.",
    )
    metal_within_m: Metres = fact(
        ask="Is there anything metal near the car that is not part of the house: a lamp post, a "
        "neighbour's fence, a handrail?",
        trade="Distance from the car to metalwork on another earth",
        look="Measured from where the car's body would be to the nearest of it.",
        who="photo",
        between=(0.0, 100.0),
        step=0.5,
        agree=Agree(0.3, "lower"),
        needs={"fit": SEEN},
        symbol="reach",
    )
    wifi: Signal = fact(
        ask="Standing at that spot, how many bars of Wi-Fi does a phone show?",
        trade="Wi-Fi at the spot",
        look="Photo of the phone's screen, held where the point would be.",
        who="photo",
        values={"good": 0.6, "fair": 0.25, "none": 0.15},
    )
    mobile: Signal = fact(
        ask="And how many bars of mobile signal?",
        trade="Mobile data at the spot",
        look="Photo of the phone's screen, held where the point would be.",
        who="photo",
        values={"good": 0.6, "fair": 0.3, "none": 0.1},
    )
    height_m: Metres = fact(
        ask="How high above the ground would it hang?",
        trade="Height above ground",
        look="Within reach from a wheelchair, out of the way of a bumper.",
        between=(0.3, 3.0),
        step=0.1,
    )
    to_port_m: Metres = fact(
        ask="How far is it from there to the flap of the car, the way the lead would lie?",
        trade="Lead reach needed",
        look="Round the car, not across it, and not across a path others use.",
        between=(0.1, 50.0),
        step=0.5,
        agree=Agree(0.5, "higher"),
    )
    crosses_path: bool = fact(
        ask="Would the lead lie across a path that others use?",
        trade="Lead across a path",
        look="Photo from where the car stands.",
        who="photo",
        values={False: 0.9, True: 0.1},
    )
    near_gas: NearGas = fact(
        ask="Is there a gas meter, a flue, a vent, an oil tank or a gas bottle within arm's reach "
        "of it?",
        trade="Gas, flue or fuel near by",
        look="Photo of the wall two metres to each side.",
        who="photo",
        needs={"fit": SEEN},
    )
    metal_building: bool = fact(
        ask="Has that building a metal frame, or a pipe of its own from the ground?",
        trade="Outbuilding with extraneous metal",
        look="Photo of the frame and of any tap.",
        who="photo",
        values={False: 0.85, True: 0.15},
    )
    building_bond_mm2: SquareMm = fact(
        ask="Is a green-and-yellow wire clamped to that building's frame or pipe, and how thick "
        "is it?",
        trade="Bond of the outbuilding's own metal",
        look="Photo of the clamp, and where its wire goes.",
        who="photo",
        values={0: 0.75, 10: 0.25},
        rare=(2.5, 4, 6, 16),
        written_as={0: "none"},
        needs={"fit": SEEN},
        symbol="bond",
    )
