"""Facts of the people: who they are, their cars, what they wish for, what they pay."""

from __future__ import annotations

from typing import Literal

from ampwright.foundations.quantity import Count, Hours, KilowattHours, Kilowatts, Miles
from ampwright.foundations.quantity import PencePerKwh as Price

from .register import TOLD, USUAL, Part, Thing, fact

Holds = Literal["owner", "tenant", "leaseholder"]
Corner = Literal[
    "front left", "front right", "front middle", "rear left", "rear right", "side left",
    "side right",
]  # fmt: skip
Nose = Literal["in", "out", "either"]
Lead = Literal["tethered", "socket", "either"]
Priority = Literal["price", "wait", "speed", "sight", "room to grow", "none stated"]


class Customer(Part):
    """Who asks for the work, and how to reach them."""

    OF_THE_PERSON = True

    name: str = fact(
        ask="What name shall we put on the papers?",
        trade="Name",
        look="As they want it written.",
        needs={"quote": TOLD},
        on_papers=True,
    )
    phone: str = fact(
        ask="Which number reaches you best?",
        trade="Telephone",
        look="Say it back to them.",
        needs={"quote": TOLD},
        on_papers=True,
    )
    email: str = fact(
        ask="Where shall we send the papers?",
        trade="E-mail",
        look="Spell it back to them.",
        needs={"quote": TOLD},
        on_papers=True,
    )
    best_time: str = fact(
        ask="When are you best rung?",
        trade="Best time to ring",
        look="Mornings, evenings, not on Fridays: as they say it.",
    )
    holds: Holds = fact(
        ask="Is the house yours, rented, or on a lease?",
        trade="Tenure",
        look="A lease often gives a right to park, not the wall or the ground.",
        values={"owner": 0.88, "tenant": 0.05, "leaseholder": 0.07},
        known_as={"own": "owner", "rent": "tenant", "rents": "tenant", "lease": "leaseholder"},
        needs={"quote": TOLD, "fit": TOLD},
    )
    own_words: str = fact(
        ask="What would you like us to do?",
        trade="In the customer's own words",
        look="As they said it; these are claims, not yet facts.",
    )
    power_cut_matters: str = fact(
        ask="Does anything in the house mind the power being off for an hour or two?",
        trade="Sensitive to an interruption",
        look="Medical kit, a fish tank, working from home, an alarm.",
        needs={"fit": TOLD},
        on_papers=True,
    )


class Wishes(Part):
    """What the customer wishes for: not what is there."""

    OF_THE_PERSON = True

    point_kw: Kilowatts = fact(
        ask="How fast would you like to charge?",
        trade="Output asked for",
        look="Many say the fast one; what the miles need is worked out beside it.",
        between=(1.0, 50.0),
        step=0.1,
    )
    lead: Lead = fact(
        ask="Would you like the lead fixed to the point, or a socket for the car's own lead?",
        trade="Tethered or socketed",
        look="A fixed lead is quicker every day; a socket hides away and takes any car.",
        values={"tethered": 0.7, "socket": 0.2, "either": 0.1},
        said_as={
            "tethered": "fixed to the point",
            "socket": "a socket",
            "either": "either",
        },
    )
    on_post: bool = fact(
        ask="Is there a wall for it, or does it need a post?",
        trade="On a post",
        look="A post needs a footing and a trench.",
        values={False: 0.95, True: 0.05},
    )
    follow_sun: bool = fact(
        ask="Shall it be able to charge from your own solar power?",
        trade="Solar following",
        look="Worth it only where a sold unit fetches less than a night unit costs.",
        values={False: 0.8, True: 0.2},
    )
    priority: Priority = fact(
        ask="What matters most: the price, no waiting, speed, how it looks, or room for more "
        "later?",
        trade="Priority stated",
        look="One only; nothing said is an answer too.",
        said_as={
            "price": "the price",
            "wait": "no waiting",
            "speed": "speed",
            "sight": "how it looks",
            "room to grow": "room for more later",
            "none stated": "nothing more than the rest",
        },
    )
    place: str = fact(
        ask="Where would you like it?",
        trade="Place asked for",
        look="The name of one of the places looked at.",
        refers="places",
    )
    declines_surge: bool = fact(
        ask="Having heard what surge protection does and costs, would you rather go without, in "
        "writing?",
        trade="Surge protection declined in writing by the owner",
        look="The owner's own letter or message, kept with the job.",
    )
    later: str = fact(
        ask="What may come later: a second car, a heat pump, a hot tub, solar, a battery?",
        trade="Plans",
        look="And roughly when.",
    )
    why_now: str = fact(
        ask="Is there a date it must be ready by?",
        trade="Reason for the date",
        look="The car comes, a tariff ends, the house is being sold.",
    )
    charges_today: str = fact(
        ask="How is the car charged today?",
        trade="Charging now",
        look="An extension lead needs a word about safety today, not on the day of fitting.",
    )
    other_quotes: str = fact(
        ask="Has anyone else quoted, and what did they say needed doing?",
        trade="Other quotations",
        look="What they left out matters more than their price.",
    )


class Car(Thing):
    """A car of the house, here or on its way."""

    OF_THE_PERSON = True

    name: str = fact(
        ask="What do you call it?", trade="Name", look="So that two cars are told apart."
    )
    takes_kw: Kilowatts = fact(
        ask="What is the most it takes from a home charge point, in kilowatts?",
        trade="Most the car takes on a.c.",
        look="The handbook's charging page; photo of the page or the plate.",
        values={3.6: 0.05, 7.4: 0.35, 11.0: 0.55, 22.0: 0.05},
        between=(1.0, 50.0),
        needs={"fit": TOLD},
        symbol="P car",
    )
    takes_phases: Count = fact(
        ask="Does its handbook say one phase or three?",
        trade="Phases the car takes",
        look="11 kW and 22 kW are three; 7.4 kW is one.",
        values={1: 0.4, 3: 0.6},
        needs={"fit": TOLD},
        said_as={1: "one", 3: "three"},
    )
    usable_kwh: KilowattHours = fact(
        ask="How many kilowatt-hours does its battery hold?",
        trade="Usable battery",
        look="The handbook or the maker's page; usable, not total.",
        between=(5.0, 250.0),
        step=1.0,
        symbol="E battery",
    )
    miles_a_year: Miles = fact(
        ask="How many miles does it do in a year?",
        trade="Miles a year",
        look="From the last two test certificates, or the insurance.",
        values={5000.0: 0.3, 8000.0: 0.4, 12000.0: 0.2, 18000.0: 0.1},
        between=(0.0, 100000.0),
        step=500.0,
        ages_after=365,
        symbol="miles",
    )
    longest_day_miles: Miles = fact(
        ask="What is the longest drive from home you do more than twice a month?",
        trade="Longest usual day",
        look="There and back, before it is plugged in again.",
        between=(0.0, 1000.0),
        step=10.0,
    )
    home_by: str = fact(
        ask="When is it usually back for the night?",
        trade="Plugged in from",
        look="A usual weekday.",
        form="time",
    )
    leaves_at: str = fact(
        ask="When does it usually leave in the morning?",
        trade="Needed by",
        look="A usual weekday.",
        form="time",
    )
    port: Corner = fact(
        ask="Which corner is the flap on?",
        trade="Position of the charging port",
        look="Standing behind the car, looking forward. Not here yet: the maker's drawing.",
        needs={"quote": TOLD},
        on_papers=True,
    )
    parks_nose: Nose = fact(
        ask="Do you park nose in or nose out?",
        trade="Parked nose in or out",
        look="Photo of the car where it stands.",
    )
    stands: str = fact(
        ask="Where does it stand at night?",
        trade="Bay",
        look="Photo of the bay, with the wall in view.",
    )
    arrives_on: str = fact(
        ask="When does it come?",
        trade="Date of delivery",
        look="The order's date; nothing if it is here.",
        form="date",
    )


class Tariff(Part):
    """What electricity costs this home and what it is paid for."""

    OF_THE_PERSON = True

    day_p: Price = fact(
        ask="What do you pay for a unit by day?",
        trade="Day rate",
        look="The bill's second page, in pence for a kWh, VAT included.",
        between=(0.0, 200.0),
        step=0.5,
        ages_after=90,
        symbol="p day",
    )
    night_p: Price = fact(
        ask="Is there a cheaper rate at night, and what is it?",
        trade="Night rate",
        look="The bill's second page; no cheap rate: the same as by day.",
        between=(-50.0, 200.0),
        step=0.5,
        ages_after=90,
        symbol="p night",
    )
    night_h: Hours = fact(
        ask="How many hours a night is it cheap?",
        trade="Hours of the night rate",
        look="From the supplier's page for your tariff.",
        values={5.0: 0.5, 6.0: 0.2, 7.0: 0.3},
        prior=USUAL,
        between=(0.0, 24.0),
        step=1.0,
        ages_after=365,
        symbol="t night",
    )
    night_from: str = fact(
        ask="When does the cheap rate begin?",
        trade="Start of the night rate",
        look="From the supplier's page for your tariff.",
        form="time",
        ages_after=365,
    )
    export_p: Price = fact(
        ask="Are you paid for what you send back, and how much a unit?",
        trade="Export rate",
        look="From the export statement; nothing paid is 0.",
        between=(0.0, 200.0),
        step=0.5,
        ages_after=90,
        needs={"fit": TOLD},
        on_papers=True,
        symbol="p export",
    )
