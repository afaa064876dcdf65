"""Worked homes and a way to write one down as facts by key.

The homes are invented and their answers were worked by hand from the rules written with them;
nobody licensed has read them. Figures agree within 1.2 per cent, the tolerance they state.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from ampwright.foundations.answers import Unanswered
from ampwright.foundations.source import Evidence, Said
from ampwright.foundations.working import given
from ampwright.survey.home import Home
from ampwright.survey.home_loads import STANDARD_LOADS
from ampwright.survey.layout import build_home

TOLERANCE = 0.012


def home_of(facts: Mapping[str, Any], *, documented: bool = False) -> Home:
    """A home with exactly these facts; quantities carry a working if documented."""
    absent = {f"loads.{each}.present": False for each in STANDARD_LOADS}
    facts = {**absent, **facts}

    def read(key: str) -> Any:
        if key not in facts:
            raise Unanswered(key)
        value = facts[key]
        if documented and isinstance(value, float):
            return given(key, value, "", Said(key, Evidence.SEEN))
        return value

    ids: dict[str, tuple[str, ...]] = {}
    for key in facts:
        *path, thing, _ = key.split(".")
        if path:
            ids[".".join(path)] = (*ids.get(".".join(path), ()), thing)
    return build_home(read, ids)


def loads(*each: tuple[Any, ...]) -> dict[str, Any]:
    """Loads by id, kind, amps and, on three phases, line."""
    facts: dict[str, Any] = {"loads.all_listed": True}
    for id_, kind, amps, *line in each:
        facts[f"loads.{id_}.present"] = True
        facts[f"loads.{id_}.kind"] = kind
        facts[f"loads.{id_}.amps_a"] = amps
        if kind == "cooking":
            facts[f"loads.{id_}.socket_on_switch"] = False
        if line:
            facts[f"loads.{id_}.phase"] = line[0]
    return facts


def car(kw: float, phases: int, kwh: float, miles: float) -> dict[str, Any]:
    return {
        "cars.all_listed": True,
        "cars.a.present": True,
        "cars.a.takes_kw": kw,
        "cars.a.takes_phases": phases,
        "cars.a.usable_kwh": kwh,
        "cars.a.miles_a_year": miles,
    }


SOUND = {
    "supply.fuse_label_readable": True,
    "supply.looped": False,
    "supply.condition": "sound",
    "supply.metered": True,
    "supply.isolator": "two pole",
    "supply.isolator_a": 100.0,
    "supply.tails_mm2": 25.0,
    "supply.lowest_v": 216.2,
    "supply.highest_v": 253.0,
    "boards.main.present": True,
    "boards.main.main_switch_a": 100.0,
    "tariff.day_p": 26.1,
    "tariff.night_p": 8.0,
    "tariff.night_h": 5.0,
    "tariff.night_from": "00:30",
}

# Worked home 1: a plain semi, everything modern, the water bond cut.
PLAIN = {
    **SOUND,
    "supply.phases": 1,
    "supply.main_fuse_a": 80.0,
    "supply.fault_current_ka": 1.30,
    **loads(
        ("lighting", "lighting", 2.5),
        ("kitchen-sockets", "sockets", 15.0),
        ("other-sockets", "sockets", 10.0),
        ("boiler", "fixed", 1.0),
    ),
    **car(7.4, 1, 57.0, 8000.0),
}

# Worked home 8: a three-phase smallholding whose supply arrives in the yard store.
THREE_PHASE = {
    **SOUND,
    "supply.phases": 3,
    "supply.main_fuse_a": 80.0,
    "supply.fault_current_ka": 1.21,
    "supply.isolator": "four pole",
    "boards.main.main_switch_a": 125.0,
    **loads(
        ("kitchen-sockets", "sockets", 20.0, "L1"),
        ("lighting", "lighting", 4.0, "L1"),
        ("borehole-pump", "fixed", 6.0, "L1"),
        ("floor-heating", "floor heating", 5.0, "L1"),
        ("hob", "cooking", 32.0, "L2"),
        ("immersion", "stored hot water", 13.0, "L2"),
        ("utility-sockets", "sockets", 20.0, "L2"),
        ("other-sockets", "sockets", 13.0, "L3"),
        ("lighting-up", "lighting", 3.0, "L3"),
        ("treatment-plant", "fixed", 2.0, "L3"),
    ),
    **car(22.0, 3, 75.0, 15000.0),
}

# Worked home 11: a cottage at the end of a weak overhead line.
WEAK_LINE = {
    **SOUND,
    "supply.phases": 1,
    "supply.main_fuse_a": 60.0,
    "supply.fault_current_ka": 0.42,
    "supply.tails_mm2": 16.0,
    "supply.readings.all_listed": True,
    **{
        f"supply.readings.{id_}.{name}": value
        for id_, at, volts in (
            ("night", "01:00", 228.0), ("noon", "12:00", 224.0), ("evening", "18:30", 217.0)
        )
        for name, value in (("present", True), ("at", at), ("volts_v", volts))
    },
    **loads(
        ("lighting", "lighting", 3.0),
        ("kitchen-sockets", "sockets", 20.0),
        ("other-sockets", "sockets", 10.0),
        ("oven", "cooking", 13.0),
    ),
    **car(7.4, 1, 45.0, 7000.0),
}  # fmt: skip

# Worked home 21: half speed is enough; the car comes before the network could answer.
HALF_SPEED = {
    **SOUND,
    "supply.phases": 1,
    "supply.main_fuse_a": 80.0,
    "supply.fault_current_ka": 1.10,
    **loads(
        ("lighting", "lighting", 3.0),
        ("kitchen-sockets", "sockets", 20.0),
        ("other-sockets", "sockets", 10.0),
        ("oven", "cooking", 13.0),
        ("boiler", "fixed", 1.0),
    ),
    **car(11.0, 3, 55.0, 7400.0),
}
