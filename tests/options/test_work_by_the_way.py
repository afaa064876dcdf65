"""Notices go up while handing over: they make no other job of a home that wants much already."""

from __future__ import annotations

from tests.journeys.homes import adding, journey, saying

from ampwright.options.search import MOST_REMEDIES

FOUR = {
    "services.gas.bond_mm2": 0.0,
    "boards.main.surge_protection": False,
    "earthing.conductor_mm2": 6.0,
}


def slugs(more):
    def change(records):
        told = {"services.gas.bond_route_m": 4.0, **more}
        return adding(told)(saying(FOUR)(records))

    made = journey("quillbrook-close", change=change)
    return [each.slug for each in made.best.choice.remedies]


def test_as_much_work_as_one_job_takes_and_the_notices_besides():
    four = slugs({})
    assert len(four) == MOST_REMEDIES
    assert sorted(slugs({"boards.main.chart": False})) == sorted([*four, "notices-main"])
