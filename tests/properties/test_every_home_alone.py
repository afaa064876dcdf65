"""What is found over all the homes at once, beside what one of them alone comes to.

The oracle is the walk through a home with nothing open, over the same menu. Facts of shipped
homes are opened by drawing, among them those on which the size of the work hangs.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from itertools import combinations
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.journeys.homes import basis, records_of

from ampwright.foundations.checks import Outcome
from ampwright.options.cells import Cells, error_of
from ampwright.options.homes import Drawing, Homes
from ampwright.options.lifting import Lifter
from ampwright.options.menu import menu_of
from ampwright.options.open_homes import homes_of
from ampwright.options.outlook import outlook
from ampwright.options.ranking import rank
from ampwright.options.search import Option, Searched, Walk
from ampwright.options.work import work_of
from ampwright.survey.folding import as_found

OPENED: dict[str, dict[str, tuple[Any, ...]]] = {
    "quillbrook-close": {
        "services.water.bond_connected": (False, True),
        "services.water.bond_mm2": (0.0, 6.0, 10.0),
        "services.water.bond_route_m": (3.0, 9.0),
        "supply.main_fuse_a": (60, 80, 100),
        "supply.looped": (False, True),
        "supply.tails_mm2": (16.0, 25.0),
        "services.gas.bond_mm2": (0.0, 10.0),
        "boards.main.surge_protection": (False, True),
        "earthing.conductor_mm2": (6.0, 16.0),
    },
    "teazel-cottage": {
        "earthing.electrode_ohm": (40.0, 130.0, 260.0),
        "services.water.bond_mm2": (0.0, 10.0),
        "supply.main_fuse_a": (60, 80),
        "boards.main.spare_ways": (0, 2),
    },
}
"""Facts to open and the answers they may have, by home."""


@cache
def complete(name: str) -> Homes:
    """Return a shipped home with every fact fixed that it leaves open."""
    homes = homes_of(as_found(records_of(name)), basis("demo"))
    first = {key: values[0] for key, values in homes.open.items()}
    return Homes({**homes.known, **first}, {}, {}, homes.build)


def opened(name: str, keys: list[str]) -> Homes:
    """Return the home with some facts open, each answer as likely as another."""
    whole, answers = complete(name), OPENED[name]
    known = {key: value for key, value in whole.known.items() if key not in keys}
    values = {key: answers[key] for key in keys}
    return Homes(known, values, {k: (1.0,) * len(v) for k, v in values.items()}, whole.build)


def walked(homes: Homes, menu: Any = None) -> Searched[Any]:
    lifter = Lifter(homes)
    return Walk(lifter, menu or menu_of(lifter, basis("demo")), work_of(basis("demo"))).run()


def standing(option: Option[Any] | None, fixed: dict[str, Any]) -> Any:
    """Return what an option comes to in one home: its choice, its work there, its criteria."""
    if option is None:
        return None
    parts = (spread.in_home(fixed) for spread in option.design.criteria)
    choice = replace(option.choice, remedies=option.laid.in_home(fixed) or ())
    return choice, tuple(parts)


@pytest.mark.parametrize("name", OPENED)
@settings(max_examples=4, deadline=None)
@given(data=st.data())
def test_the_best_of_each_home_is_the_best_of_that_home_alone(name, data):
    keys = data.draw(st.lists(st.sampled_from(list(OPENED[name])), max_size=3, unique=True))
    homes = opened(name, keys)
    lifter = Lifter(homes)
    menu = menu_of(lifter, basis("demo"))
    ranking = rank(homes, walked(homes, menu).options)
    for fixed, _ in homes.each():
        alone = Homes({**homes.known, **fixed}, {}, {}, homes.build)
        expected = rank(alone, walked(alone, menu).options).best_in({})
        assert standing(ranking.best_in(fixed), fixed) == standing(expected, {}), fixed


@pytest.mark.parametrize("name", OPENED)
def test_work_is_laid_only_where_the_home_calls_for_it(name):
    homes = opened(name, list(OPENED[name])[:3])
    for option in walked(homes).options:
        for fixed, _ in homes.each():
            if option.laid.in_home(fixed) is None:
                assert option.sound.in_home(fixed) is Outcome.FAIL


def test_the_size_of_the_work_is_that_of_each_home():
    water = "services.water.bond_"
    keys = [f"{water}{name}" for name in ("connected", "mm2", "route_m")]
    homes = opened("quillbrook-close", keys)
    bonded = [o for o in walked(homes).options if o.id.endswith("+bond-water")]
    assert bonded
    for option in bonded:
        lengths = {
            (fixed[f"{water}route_m"], remedy.parts[0].quantity)
            for fixed, _ in homes.each()
            for remedy in option.laid.in_home(fixed) or ()
        }
        assert lengths == {(3.0, 3.0), (9.0, 9.0)}
        assert option.laid.in_home(dict(zip(keys, (True, 10.0, 3.0), strict=True))) is None


FEW = {
    "quillbrook-close": ["supply.main_fuse_a", "supply.looped", "services.gas.bond_mm2"],
    "teazel-cottage": list(OPENED["teazel-cottage"]),
}


@pytest.mark.parametrize("name", OPENED)
def test_what_is_said_of_drawn_homes_is_what_is_said_of_all_of_them(name):
    homes = opened(name, FEW[name])
    few = Homes(homes.known, homes.open, homes.chances, homes.build, Drawing(1, 400, 5))
    all_, some = outlook(homes, basis("demo")), outlook(few, basis("demo"))
    assert not all_.ranking.cells.draws
    cells = some.ranking.cells
    assert cells.draws == 400
    for cell, leading in enumerate(some.ranking.best.tolist()):
        fixed = cells.home(cell)
        mine = some.ranking.options[leading] if leading >= 0 else None
        theirs = all_.ranking.best_in(fixed)
        assert standing(mine, fixed) == standing(theirs, fixed)
    assert some.deciding == all_.deciding
    assert some.decisions.keys() == all_.decisions.keys()
    for decision, chance in all_.decisions.items():
        assert abs(some.decisions[decision] - chance) <= 5 * error_of(chance, cells.draws)


@pytest.mark.parametrize("name", OPENED)
def test_the_deciding_facts_are_those_whose_change_changes_the_decision(name):
    homes = opened(name, FEW[name])
    seen = outlook(homes, basis("demo"))
    decisions = {}
    for fixed, _ in homes.each():
        leading = int(seen.ranking.leading_in(Cells.one(homes, fixed))[0])
        led = seen.ranking.options[leading] if leading >= 0 else None
        decisions[tuple(fixed.values())] = led and (
            led.sound.in_home(fixed), led.design.decision.in_home(fixed)
        )  # fmt: skip
    turning = {
        fact
        for i, fact in enumerate(homes.open)
        for one, other in combinations(decisions, 2)
        if one[:i] + one[i + 1 :] == other[:i] + other[i + 1 :]
        and decisions[one] != decisions[other]
    }
    assert set(seen.deciding) == turning
    assert turning or name != "quillbrook-close"


def test_every_option_has_an_id_of_its_own():
    for name in OPENED:
        ids = [option.id for option in walked(opened(name, list(OPENED[name])[:3])).options]
        assert len(ids) == len(set(ids))
