"""Workings turned into lines: each once, numbered, and pointed back to."""

from __future__ import annotations

from ampwright.documents.options_and_working.from_checks import Stage, working_of
from ampwright.documents.symbols import plain
from ampwright.foundations.source import Evidence, Said, SetBy
from ampwright.foundations.working import given, working

from . import sample


def lines(groups):
    for group in groups:
        for part in (*group.figures, *group.checks):
            yield from part.lines


def test_lines_are_numbered_in_order_and_printed_once():
    found = list(lines(working_of(sample.stages())))
    assert [line.number for line in found] == [str(n) for n in range(1, len(found) + 1)]
    assert len({(line.alone, line.source) for line in found}) == len(found)


def test_every_line_of_every_number_is_printed_somewhere():
    stages = sample.stages()
    results = {line.alone.rpartition(" = ")[2] for line in lines(working_of(stages))}
    shown = " | ".join(results)
    for stage in stages:
        for check in stage.checks:
            for line in check.working():
                assert line.result in shown


def test_a_figure_used_again_points_back_to_its_line():
    _, _, circuit, _ = working_of(sample.stages())
    first, second = circuit.checks[:2]
    device = first.lines[-1]
    assert plain(device.symbol) == "In"
    assert plain(second.carried) == f"In from line {device.number}"


def test_starting_figures_that_differ_only_in_size_share_a_line():
    _, _, circuit, _ = working_of(sample.stages())
    listed = circuit.checks[0].lines[1]
    assert listed.result == "6, 10, 16, 20, 25, 32, 40, 50 A"
    assert listed.source == "catalogue"


def test_both_numbers_stand_in_every_check_that_has_them():
    *_, earth = working_of(sample.stages())
    assert [check.numbers for check in earth.checks] == [
        "0.2807 Ω against 1.093 Ω",
        "2.5 mm² against 1.167 mm²",
        "0 mm² against 10 mm²",
        "214.3 V against 207 V",
        "",
    ]


def test_shares_are_written_in_per_cent():
    _, _, circuit, _ = working_of(sample.stages())
    assert circuit.checks[2].numbers == "0.81 % against 5 %"


def test_a_fact_goes_by_the_name_it_is_given():
    fact = given("Ze", 0.18, "Ω", Said("supply.ze_ohm", Evidence.MEASURED, "tester 2"))
    names = {"supply.ze_ohm": "outside part of the earth loop"}
    (group,) = working_of([Stage("Earth", figures=(("Ze", fact),))], names.__getitem__)
    (line,) = group.figures[0].lines
    assert line.source == "outside part of the earth loop: measured, tester 2"
    assert line.known == "measured"


def test_a_number_without_a_working_prints_no_lines():
    (group,) = working_of([Stage("Plain", figures=(("Ways", 2.0),))])
    assert group.figures[0].result == "2"
    assert group.figures[0].lines == ()


def test_alone_is_the_line_the_working_itself_would_print():
    bare = given("In", 40.0, "A", SetBy("choice"))
    (group,) = working_of([Stage("Plain", figures=(("In", bare),))])
    (printed,) = working(bare)
    assert f"{group.figures[0].lines[0].alone}  [{printed.source}]" == str(printed)


def test_a_ruling_is_printed_row_by_row_with_the_one_that_decided():
    _, network, *_ = working_of(sample.stages())
    states = [row.state for row in network.rulings[0].rows]
    assert states == ["did not apply", "did not apply", "decided"]
