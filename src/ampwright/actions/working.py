"""How one option is worked out: stage by stage, each check with its numbers and their working."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

from ampwright.design.earthing.bonding import Bonding
from ampwright.design.earthing.point import PointEarth
from ampwright.documents.options_and_working.content import (
    CheckLine,
    FigureLine,
    NoteLine,
    RulingLine,
    WorkingGroup,
    WorkingLine,
)
from ampwright.documents.options_and_working.from_checks import Stage
from ampwright.documents.options_and_working.from_checks import working_of as groups_of
from ampwright.documents.symbols import plain, symbol
from ampwright.foundations.checks import Check
from ampwright.foundations.notes import Note
from ampwright.foundations.rulings import Ruled, Ruling
from ampwright.network.connection import Connection
from ampwright.network.generation import Generation
from ampwright.standards.network.connection import TELL_OR_ASK
from ampwright.standards.network.generation import GENERATION
from ampwright.standards.wiring.earthing_kind import COUNTS_AS_EARTHING, PME_PROOF

from .design_run import DesignRun, StageNoted, run_design
from .facts import fact_name, rests, words_of
from .heads import basis_head
from .naming import find_option
from .seeing import Terms, see
from .words import against, capital
from .working_shapes import (
    CheckAnswer,
    FigureAnswer,
    LineAnswer,
    NoteAnswer,
    RulingAnswer,
    RulingRowAnswer,
    StageAnswer,
    Taken,
    WorkingAnswer,
)

FIGURES = {
    "now_a": "demand without the point",
    "rating_a": "what the supply can carry",
    "fits_a": "room left before the point",
    "car_a": "what the car is sure to get",
    "margin_a": "room left before the operator must be asked",
    "lowest_v": "lowest volts",
    "highest_v": "highest volts",
    "length_m": "length of the way",
    "kwh_a_year": "energy in a year",
    "kwh_a_day": "energy on an average day",
    "offered_kw": "power offered",
    "hours_a_day": "hours on an average day",
    "needed_h": "hours needed, with the firm's margin",
    "cheap_h": "cheap hours",
    "at_night_p": "a year's charging at night",
    "by_day_p": "a year's charging by day",
    "usual_min": "usual time on site",
    "duty": "duty of the pilot",
    "lines_v": "volts that the loads of each line then see",
    "needed_ohm": "electrode that would hold the earth terminal down",
    "held_v": "earth terminal to the ground, with the electrode that is joined",
    "notice_days": "days to tell the operator in",
    "line_a": "what adds up on a line",
    "total_kw": "what the sources can give together",
    "breaking_ka": "fault current that the device can break",
    "touch_v": "earth terminal to the ground with the street's neutral broken",
    "terminal_mm2": "largest conductor the point's terminals take",
    "terminal_c": "temperature its terminals bear",
    "gland_least_mm": "smallest cable its entry takes",
    "gland_mm": "largest cable its entry takes",
    "capacity_a": "current the cable carries as it lies",
    "drop_to_neutral_v": "volts lost on the way, line to neutral",
    "r1r2_ohm": "line and protective conductor together, at 20 °C",
    "r1r2_cold_ohm": "the same on a cold day",
    "offered_a": "current the pilot offers",
    "low_min": "time on site when all goes well",
    "high_min": "time on site when it does not",
    "mate_min": "time of a second person",
    "net": "price before VAT",
    "tax": "VAT",
    "total": "to pay",
}
"""What the numbers are called that a stage comes to, by the name of their field."""
TITLES = {"entry of": "Terminals and entry of the point", "route": "Way of the cable"}
"""What a stage is called where its own name does not say it."""


def working_of(path: Path, terms: Terms, name: str) -> WorkingAnswer:
    """Return the working of the option with a letter, an id or the beginning of one.

    Raises like ``read_home``, and ``NotFoundError`` for an option that is not there.
    """
    seen = see(path, terms)
    option = find_option(seen.outlook, seen.offered, name)
    run = run_design(seen.home.folded, seen.basis, option)
    return WorkingAnswer(
        home=seen.home.head,
        basis=basis_head(seen.basis),
        letter=seen.letter(option.id),
        id=option.id,
        name=seen.name(option.choice),
        outcome=run.outcome.value,
        taken=tuple(
            Taken(key, fact_name(key), words_of(key, value)) for key, value in run.taken.items()
        ),
        stages=stage_answers(run),
    )


def stage_answers(run: DesignRun) -> tuple[StageAnswer, ...]:
    """Return every stage that says something, with its working."""
    return tuple(stage_answer(stage, group) for stage, group in told_stages(run))


def told_stages(run: DesignRun) -> Iterator[tuple[StageNoted, WorkingGroup]]:
    """Yield every stage that says something; a figure told before is not told again."""
    groups = groups_of(map(paper_stage, run.stages), fact_name)
    for stage, whole in zip(run.stages, groups, strict=True):
        group = replace(whole, figures=tuple(each for each in whole.figures if each.lines))
        says = group.rests_on, group.figures, group.rulings, group.checks, group.notes
        if any(says) or stage.run.lacking:
            yield stage, group


def paper_stage(stage: StageNoted) -> Stage:
    """Return a stage in the form in which papers take it."""
    return Stage(
        title=TITLES.get(stage.run.title) or capital(stage.run.title),
        checks=stage.checks,
        notes=stage.run.notes,
        figures=tuple((figure_name(name), each) for name, each in stage.figures),
        rulings=tuple(rulings_of(stage.run.out)),
        rests_on=rests(each for each in stage.read if not isinstance(each.value, float)),
    )


def figure_name(name: str) -> str:
    """Return what a number is called that a stage came to.

    Examples
    --------
    >>> figure_name("fits_a"), figure_name("drop_v")
    ('room left before the point', 'drop')
    """
    return FIGURES.get(name) or plain(symbol(name))


def rulings_of(out: object) -> Iterable[tuple[Ruling[Any, Any], Ruled[Any]]]:
    """Yield each clause that decided in a stage, with what it decided."""
    if isinstance(out, Connection):
        yield TELL_OR_ASK, Ruled(out.outcome, out.row, out.words, out.place)
    if isinstance(out, Generation) and out.row:
        yield GENERATION, Ruled(out.step, out.row, out.words, out.place)
    if isinstance(out, Bonding):
        yield COUNTS_AS_EARTHING, out.counts
    if isinstance(out, PointEarth) and out.proof:
        yield PME_PROOF, out.proof


def stage_answer(stage: StageNoted, group: WorkingGroup) -> StageAnswer:
    """Return one stage in plain pieces."""
    return StageAnswer(
        title=group.title,
        rests_on=group.rests_on,
        figures=tuple(map(figure_answer, group.figures)),
        rulings=tuple(map(ruling_answer, group.rulings)),
        checks=tuple(map(check_answer, stage.checks, group.checks)),
        notes=tuple(map(note_answer, stage.run.notes, group.notes)),
        lacking=tuple(map(fact_name, stage.run.lacking)),
    )


def check_answer(check: Check, line: CheckLine) -> CheckAnswer:
    """Return one check in plain pieces."""
    return CheckAnswer(
        id=check.requirement.id,
        outcome=check.outcome.value,
        says=plain(line.says),
        actual=check.actual,
        limit=check.limit,
        unit=check.requirement.unit,
        numbers=numbers_of(check, line.numbers),
        place=line.place,
        why=line.why,
        caution=line.caution,
        mended_by=line.mended_by,
        uses=plain(line.carried),
        lines=tuple(map(line_answer, line.lines)),
    )


def note_answer(note: Note, line: NoteLine) -> NoteAnswer:
    """Return one note in plain pieces."""
    return NoteAnswer(
        id=note.telling.id,
        caution=line.caution,
        says=line.says,
        place=line.place,
        uses=plain(line.carried),
        lines=tuple(map(line_answer, line.lines)),
    )


def numbers_of(check: Check, written: str) -> str:
    """Return both numbers as written, with more figures where they would read the same."""
    actual, limit = check.actual, check.limit
    if actual is None or limit is None or actual == limit:
        return written
    found, _, held_to = written.partition(" against ")
    return against(actual, limit, check.requirement.unit) if found == held_to else written


def figure_answer(line: FigureLine) -> FigureAnswer:
    """Return one figure in plain pieces."""
    lines = tuple(map(line_answer, line.lines))
    return FigureAnswer(line.what, line.result, plain(line.carried), lines)


def line_answer(line: WorkingLine) -> LineAnswer:
    """Return one line of a working in plain pieces."""
    return LineAnswer(
        number=line.number,
        symbol=plain(line.symbol),
        formula=plain(line.formula),
        numbers=plain(line.numbers),
        result=line.result,
        source=line.source,
        known=line.known,
    )


def ruling_answer(line: RulingLine) -> RulingAnswer:
    """Return a clause that decides in plain pieces."""
    rows = tuple(RulingRowAnswer(r.words, r.follows, r.place, r.state) for r in line.rows)
    return RulingAnswer(line.name, rows)
