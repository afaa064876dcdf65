"""Everything we may want to know about a home, as one tree of typed parts.

An attribute is a fact and its path is the fact's key: ``home.supply.main_fuse_a`` is
``supply.main_fuse_a``. The parts are declared in the modules beside this one.
"""

from __future__ import annotations

from .home_boards import Board
from .home_earthing import STANDARD_SERVICES, Earthing, Service
from .home_laid import LaidCable
from .home_legs import Leg
from .home_loads import STANDARD_LOADS, Load, Source
from .home_operator import Operator
from .home_papers import Note, Photo
from .home_people import Car, Customer, Tariff, Wishes
from .home_property import CandidatePlace, Property
from .home_supply import Supply
from .register import TOLD, Many, Part, many


class Home(Part):
    """One home."""

    customer: Customer
    property: Property
    supply: Supply
    operator: Operator
    earthing: Earthing
    services: Many[Service] = many(
        ask="Is that every pipe and every metal part that comes in from the ground?",
        trade="Whether every extraneous service was looked for",
        look="Water, gas, oil, bottled gas, a steel frame.",
        who="photo",
        found=True,
        closed=True,
        standard=STANDARD_SERVICES,
        needs={"fit": TOLD},
    )
    boards: Many[Board] = many(
        ask="Is there another fuse board anywhere: a garage, an annexe, by the shower?",
        trade="Whether every board is listed",
        look="Yes means that the list holds them all.",
        needs={"quote": TOLD},
    )
    loads: Many[Load] = many(
        ask="Is that everything that heats, cooks or turns on electricity?",
        trade="Whether every load of weight is listed",
        look="Walk through the house room by room, the garage and the garden too. Yes means "
        "that the list holds them all.",
        standard=STANDARD_LOADS,
        needs={"quote": TOLD, "fit": TOLD},
    )
    sources: Many[Source] = many(
        ask="Are there solar panels, a battery or anything else that makes electricity? Is that "
        "all of it on the list?",
        trade="Whether every source is listed",
        look="None, and the list is empty: yes.",
        needs={"quote": TOLD, "fit": TOLD},
    )
    cars: Many[Car] = many(
        ask="Is that every car that will charge here?",
        trade="Whether every car is listed",
        look="One that is ordered counts.",
    )
    places: Many[CandidatePlace] = many(
        ask="Are those all the spots you would be happy with?",
        trade="Whether every candidate place is listed",
        look="Each spot that would do is worth a look.",
    )
    legs: Many[Leg] = many(
        ask="Is that the whole of the way, from meter and fuse board to each spot?",
        trade="Whether every leg is listed",
        look="From the meter and from each fuse board to each place, turn by turn.",
        needs={"quote": TOLD},
    )
    laid: Many[LaidCable] = many(
        ask="Did the builder, another firm or an old point leave any cable for charging?",
        trade="Whether every cable already laid for a point is listed",
        look="A coil on the garage wall, a blank plate by the drive, an old point.",
        who="photo",
    )
    wishes: Wishes
    tariff: Tariff
    photos: Many[Photo] = many(
        ask="Is that every photograph?",
        trade="Whether every photograph is listed",
        look="Count them against the list of what was asked for.",
    )
    notes: Many[Note] = many(
        ask="Is there anything else we should know?",
        trade="Whether every note is listed",
        look="Pets, stairs, working hours, the neighbours.",
    )


__all__ = ["Home"]
