"""A price rests on each of its rates and on no other: change one, and only its lines change."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from ampwright.costing.lines import OWN_WORK, Group
from ampwright.firm.catalogue import Hands
from ampwright.firm.rates import LEVELS, Rate, card_columns
from ampwright.foundations.remedies import Part, Remedy
from tests.design.homes import basis, changed

from .jobs import POST_JOB, STANDARD, STANDARD_JOB, YARD_JOB, priced, with_rates

RATES = basis().rates
ALL_IN_WORDS = Remedy(
    slug="everything",
    does="Everything a work item may ask for",
    changes=(),
    parts=tuple(Part(words.replace("*", "80"), 2.0) for words in RATES.in_words),
    minutes=(10.0, 20.0, 30.0),
)
OTHERS = tuple(Remedy(slug, "Have it done", (), by="others") for slug in sorted(RATES.charges))
BARE = {
    "standard": STANDARD_JOB,
    "yard": YARD_JOB,
    "post": POST_JOB,
    "beside": STANDARD_JOB._replace(
        cable="sheathed-3-6", rcd="rcd-a-40", rcd_beside=True, isolator_by_point=True
    ),
}
HIGH = changed(STANDARD, legs__plaster__how="clipped outside", legs__plaster__highest_m=5.0)
BARE["high"] = STANDARD_JOB._replace(facts=HIGH)
JOBS = BARE | {"items": STANDARD_JOB._replace(remedies=(ALL_IN_WORDS, *OTHERS))}
CATALOGUE = sorted(set(RATES.goods) - {good.id for good in RATES.in_words.values()})
MATES = {task.id for task in basis().tasks if task.hands is not Hands.ELECTRICIAN}
OWN = {task.id for task in basis().tasks if task.hands is not Hands.MATE}
GROUPS = {
    "point_markup_share": {Group.POINT},
    "materials_markup_share": {Group.MATERIALS},
    "overheads_share": {Group.OVERHEADS},
}
LINES = {
    "office_h": {"office_h"}, "office_p_per_h": {"office_h"}, "papers_p": {"papers_p"},
    "travel_miles": {"travel_miles"}, "travel_p_per_mile": {"travel_miles"},
    "travel_h": {"travel_h"}, "travel_p_per_h": {"travel_h"},
    "revisit_h": set(),  # of a second visit alone
}  # fmt: skip


@cache
def before(name):
    return priced(JOBS[name]).price


def name_of(line):
    """What tells a line from others: its id, with a mark for work, which may share one."""
    return f"{line.id} (work)" if line.group is Group.LABOUR else line.id


def changed_lines(job, was, on):
    """The lines that differ, those that are new among them."""
    now = priced(job, on).price
    old, new = (dict(enumerate(each.lines)) for each in (was, now))
    if len(old) == len(new):
        return {name_of(new[i]) for i in new if old[i] != new[i]}
    return {name_of(line) for line in now.lines} ^ {name_of(line) for line in was.lines}


def dearer(row):
    """A row with other prices."""
    more = {f"{level}_p": getattr(row, f"{level}_p") + 1000 for level in LEVELS}
    return replace(row, **more)


def in_place(job, id_):
    """A job that takes a thing of the catalogue."""
    catalogue = basis().catalogue
    for rows, field in (
        (catalogue.points, "point"), (catalogue.devices, "device"), (catalogue.boards, "board"),
        (catalogue.origin_devices, "rcd"), (catalogue.cables, "cable"),
    ):  # fmt: skip
        if any(row.id == id_ for row in rows):
            return job._replace(**{field: id_})
    raise AssertionError(id_)


@pytest.mark.parametrize("id_", CATALOGUE)
def test_a_price_of_the_catalogue_changes_the_line_of_what_it_prices(id_):
    job = in_place(STANDARD_JOB, id_)
    goods = {**RATES.goods, id_: dearer(RATES.goods[id_])}
    on = with_rates(basis(), goods=goods)
    assert changed_lines(job, priced(job).price, on) == {id_}
    if id_ not in {line.id for line in before("standard").lines}:
        assert changed_lines(STANDARD_JOB, before("standard"), on) == set()


@pytest.mark.parametrize("id_", sorted(good.id for good in RATES.in_words.values()))
def test_a_price_of_a_material_changes_its_line_wherever_it_is_used(id_):
    goods = {**RATES.goods, id_: dearer(RATES.goods[id_])}
    on = with_rates(basis(), goods=goods)
    for name, job in JOBS.items():
        used = {line.id for line in before(name).lines} & {id_}
        assert changed_lines(job, before(name), on) == used
    assert id_ in {line.id for line in before("items").lines}


@pytest.mark.parametrize("at", sorted(RATES.kits, key=str), ids=str)
def test_a_kit_changes_the_lines_of_what_it_holds(at):
    work, phases = at
    kits = {**RATES.kits, at: tuple(replace(e, quantity=9 * e.quantity) for e in RATES.kits[at])}
    on = with_rates(basis(), kits=kits)
    items = {each.item for each in RATES.kits[at]}
    for name, job in BARE.items():
        done = {task.task for task in priced(job).tasks.each} | ENDS[name]
        here = basis().catalogue.point(job.point).phases == phases and work in done
        assert changed_lines(job, before(name), on) == (items if here else set())


ENDS = {
    "standard": set(),
    "yard": {"own-board-tails", "data-run"},
    "post": {"own-board-tails", "data-run"},
    "beside": {"sheathed-ends"},
    "high": set(),
}


@pytest.mark.parametrize("name", [each.name for each in card_columns()])
@pytest.mark.parametrize("job", JOBS)
def test_a_rate_of_the_card_changes_exactly_the_lines_that_use_it(name, job):
    rate = getattr(RATES.card, name)
    larger = Rate(*(getattr(rate, level) * 2 + 1 for level in LEVELS))
    on = with_rates(basis(), card=replace(RATES.card, **{name: larger}))
    was = before(job)
    hours = [line for line in was.lines if line.group is Group.LABOUR]
    if name == "offcuts_share":
        expected = {line.id for line in was.lines if line.unit == "m"}
    elif name == "overheads_share":
        expected = {"overheads_share"}
    elif name == "mate_p_per_h":
        expected = {name_of(line) for line in hours if line.id in MATES}
    elif name == "labour_p_per_h":
        expected = {name_of(line) for line in hours if line.id not in MATES - OWN}
    elif name in GROUPS:
        expected = {name_of(line) for line in was.lines if line.group in GROUPS[name]}
    else:
        expected = LINES[name]
    none = name == "revisit_h" or (name == "mate_p_per_h" and job not in ("post", "high"))
    assert bool(expected) is not none
    assert changed_lines(JOBS[job], was, on) == expected


def test_overheads_are_a_share_of_the_firms_own_work():
    card = replace(RATES.card, overheads_share=Rate(0.1, 0.1, 0.1))
    made = priced(STANDARD_JOB, with_rates(basis(), card=card)).price
    own = sum(each.amount.usual_p for each in made.subtotals if each.group in OWN_WORK)
    (line,) = [line for line in made.lines if line.group is Group.OVERHEADS]
    assert line.amount.usual_p == round(own * 0.1)


@pytest.mark.parametrize("slug", sorted(RATES.charges))
def test_a_charge_of_others_changes_its_line(slug):
    charges = {**RATES.charges, slug: dearer(RATES.charges[slug])}
    on = with_rates(basis(), charges=charges)
    assert changed_lines(JOBS["items"], before("items"), on) == {slug}
    assert changed_lines(STANDARD_JOB, before("standard"), on) == set()
