"""The decision of a job, its options and what was ruled out: one answer from one file."""

from __future__ import annotations

from pathlib import Path
from typing import Any, cast

from ampwright.foundations.answers import Missing
from ampwright.foundations.checks import Check
from ampwright.foundations.remedies import Part, Remedy
from ampwright.options.held import known_values
from ampwright.options.outlook import Outlook, Reason
from ampwright.options.ranking import Loss
from ampwright.options.search import Option
from ampwright.options.work import Design

from .advising import advice_on
from .along import in_hand, turns, two_visits
from .cautions import cautions_for
from .comparing import MOST_COMPARED, rows_of
from .confirming import confirm_first
from .deciding import certain, decided, open_facts
from .design_run import DesignRun, run_design
from .facts import found_facts
from .figures import figures_of
from .files import write_whole
from .heads import basis_head
from .naming import WORSE, behind, may_need
from .proving import to_prove
from .seeing import Seen, Terms, see
from .shapes import (
    Beaten,
    Chosen,
    Counts,
    Figure,
    OptionLine,
    OptionsAnswer,
    Ruled,
    Sign,
    Sure,
    Work,
)
from .standing import standing_of
from .sums import worth_saying
from .words import against, amount, minutes


def options_of(path: Path, terms: Terms, pdf: Path | None = None) -> OptionsAnswer:
    """Return everything that follows from the facts of a home's file; raises like ``read_home``.

    With ``pdf`` the paper "Options and working" is written there, whole or not at all.
    """
    seen = see(path, terms)
    answer = answer_for(seen)
    if pdf is not None:
        from .papers import paper_of  # the typesetter is slow to load and seldom wanted

        write_whole(pdf, paper_of(seen, answer))
    return answer


def answer_for(seen: Seen) -> OptionsAnswer:
    """Return everything that follows from a home that was worked out."""
    home, offered, best = seen.home, tuple(seen.offered.values()), seen.best
    figures = [figures_of(option) for option in offered]
    run = run_design(home.folded, seen.basis, best) if best else None
    worse = behind(seen.outlook)
    return OptionsAnswer(
        home=home.head,
        basis=basis_head(seen.basis),
        decision=decided(seen),
        certain=certain(seen.outlook),
        now=standing_of(seen),
        open=open_facts(seen),
        options=tuple(
            option_line(seen, letter, option, each, worse.get(option.id, ()))
            for (letter, option), each in zip(seen.offered.items(), figures, strict=True)
        ),
        rows=rows_of(seen, offered[:MOST_COMPARED], figures[:MOST_COMPARED]),
        recommended=advice_on(seen, best, figures[0], worth_saying(seen, run))
        if best and run
        else None,
        two_visits=two_visits(seen),
        turns=turns(seen, best.choice) if best else (),
        in_hand=in_hand(best) if best else (),
        confirm=confirm_first(run) if run else (),
        prove=to_prove(run) if run else (),
        cautions=cautions_of(run),
        counts=counts_of(seen.outlook),
        ruled_out=tuple(ruled(each) for each in seen.outlook.reasons if each.choices),
        beaten=tuple(map(beaten, seen.outlook.ranking.losses)),
        found=found_facts(home.folded),
    )


def option_line(
    seen: Seen,
    letter: str,
    option: Option[Design],
    figures: dict[str, Figure],
    worse: tuple[str, ...],
) -> OptionLine:
    """Return one option in plain pieces; ``worse`` says in what it is behind, if it is."""
    choice = option.choice
    decisions = known_values(option, option.design.decision)  # type: ignore[arg-type]
    return OptionLine(
        letter=letter,
        id=option.id,
        name=seen.name(choice),
        recommended=option is seen.outlook.recommended,
        behind=worse,
        sure=sureness(option),
        decision=tuple(cast(Sign, each.file_value) for each in decisions),
        chosen=Chosen(
            place=choice.place,
            tap=choice.tap,
            point=choice.point.id,
            phases=int(choice.point.phases),
            setting_a=float(choice.setting_a),
            house_limit=choice.house_limit,
            hours=choice.hours,
            family=choice.family.value,
            earthing=choice.earthing,
        ),
        figures=figures,
        work=tuple(map(work_line, choice.remedies)),
        may_need=tuple(map(work_line, may_need(seen.outlook, option))),
        rests_on=rests_on(option),
    )


def sureness(option: Option[Design]) -> Sure:
    """Say in which of the possible homes an option holds."""
    if option.sound.always:
        return "in every home"
    return "in some homes" if (option.sound.severity == 0).any() else "not certain yet"


def rests_on(option: Option[Design]) -> tuple[str, ...]:
    """Return the readings of the operator that an option turns on, in words."""
    connections = known_values(option, option.design.connection)  # type: ignore[arg-type]
    return tuple(dict.fromkeys(words for each in connections for words in each.rests_on))


def work_line(remedy: Remedy) -> Work:
    """Return one piece of work in plain pieces."""
    low, usual, high = (float(each) for each in remedy.minutes)
    parts = tuple(map(part_words, remedy.parts))
    time = minutes(low, high)
    return Work(
        remedy.slug, remedy.does, parts, low, usual, high, time, remedy.by,
        remedy.steps, remedy.chart,
    )  # fmt: skip


def part_words(part: Part) -> str:
    """Write a part with how much of it."""
    if part.unit:
        return f"{part.what}, {amount(part.quantity, part.unit)}"
    return part.what if part.quantity == 1 else f"{amount(part.quantity, '×')} {part.what}"


def cautions_of(run: DesignRun | None) -> tuple[str, ...]:
    """Return the cautions of a design, or only the usual ones without one."""
    if run is None:
        return cautions_for((), ())
    own = [caution for stage in run.stages for caution in stage.cautions]
    route: Any = run.design.route
    legs = () if isinstance(route, Missing) else route.legs
    return cautions_for([leg.how for leg in legs], own)


def counts_of(seen: Outlook) -> Counts:
    """Return how many full choices were looked at and what became of them."""
    return Counts(
        considered=seen.searched.considered,
        ruled_out=sum(each.stands_for for each in seen.searched.rejections),
        beaten=len(seen.ranking.losses),
        left=len(seen.ranking.front),
    )


def ruled(reason: Reason) -> Ruled:
    """Return one reason for rejections in plain pieces."""
    requirement = reason.requirement
    case = case_of(reason.example)
    return Ruled(
        requirement=requirement.id,
        says=requirement.says,
        case=case,
        place=str(requirement.place),
        choices=reason.choices,
        mended_by=tuple(remedy.does for remedy in reason.example.remedies),
    )


def case_of(check: Check) -> str:
    """Write one failed check: both numbers, and why."""
    unit = check.requirement.unit
    numbers = ""
    if check.actual is not None and check.limit is not None:
        numbers = against(check.actual, check.limit, unit)
    return "; ".join(part for part in (numbers, check.why) if part)


def beaten(loss: Loss) -> Beaten:
    """Return one option that loses to another in plain pieces."""
    return Beaten(loss.option.id, loss.winner.id, tuple(WORSE[name] for name in loss.better_in))
