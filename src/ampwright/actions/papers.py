"""The paper "Options and working" of a home, from the same answers that the screen shows."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from importlib.metadata import version
from typing import Final

from ampwright.documents.options_and_working import content
from ampwright.documents.render import render
from ampwright.foundations.source import Said
from ampwright.survey.layout import slot
from ampwright.survey.views import Rest

from .comparing import MOST_COMPARED
from .design_run import DesignRun, run_design
from .facts import alike, how, known, of_things
from .seeing import Seen
from .shapes import Confirm, FoundFact, InHand, OpenFact, OptionLine, OptionsAnswer, Work
from .words import all_of, capital, count, day, small
from .working import told_stages

TEMPLATE: Final = "options_and_working"
SIGNS: Final[dict[str, content.Sign]] = {
    "tell_after": "tell_after",
    "tell_after_with_limit": "tell_after_limit",
    "ask_first": "ask_first",
    "stop_until": "stop_until",
    "undetermined": "tell_or_ask",
}
WHYS: Final[dict[str, content.Why]] = {
    "open": "open", "assumed": "assumed", "operator": "told", "see first": "told",
    "memory": "memory", "doubtful": "memory",
}  # fmt: skip
NO_FIRM: Final = "Firm not named"
FIRST: Final = re.compile(
    r"supply\.(phases|main_fuse_a|looped|earthing|ze_ohm|fault_current_ka|isolator)"
    r"|services\.[^.]+\.bond_mm2|earthing\.electrode_ohm"
    r"|boards\.[^.]+\.(spare_ways|protection|spare_behind_rcd)"
    r"|sources\.[^.]+\.amps_a|cars\.[^.]+\.(takes_kw|miles_a_year)"
)
"""The facts that anyone opening the paper wants to see first."""
HEAD: Final = ("customer.name", "property.address", "property.postcode")
"""Facts that stand at the head of the paper."""


def paper_of(seen: Seen, answer: OptionsAnswer) -> bytes:
    """Return the paper as PDF; the same home on the same day gives the same bytes."""
    return render(TEMPLATE, content_of(seen, answer), stamp=seen.basis.design_date)


def content_of(seen: Seen, answer: OptionsAnswer) -> content.OptionsPaper:
    """Return what the paper says."""
    best = seen.best
    run = run_design(seen.home.folded, seen.basis, best) if best else None
    return content.OptionsPaper(
        decision=content.DecisionBlock(
            SIGNS[answer.decision.value],
            answer.decision.words,
            answer.decision.sentence,
            answer.decision.customer_words,
        ),
        home=home_block(answer),
        found=tuple(found_lines(answer, run)),
        rests_on=tuple(rest_lines(answer, run)),
        also_held=tuple(also_lines(answer, run)),
        options=tuple(content.OptionColumn(o.letter, o.name, o.id) for o in compared(answer)),
        rows=tuple(
            content.CompareRow(row.question, row.answers, leads=row.question == "decision")
            for row in answer.rows
        ),
        recommended=recommended(answer),
        work=tuple(work_items(answer)),
        confirm=tuple(map(confirm_line, answer.confirm)),
        cautions=answer.cautions,
        prove=tuple(
            content.ProveLine(capital(each.what), each.limit, each.how, each.place)
            for each in answer.prove
        ),
        rejected=tuple(rejected(answer)),
        working=tuple(g for _, g in told_stages(run) if g.figures or g.rulings or g.checks)
        if run
        else (),
        edition=answer.basis.edition,
        stages=(
            *((answer.two_visits.words,) if answer.two_visits else ()),
            *(capital(each.words) for each in answer.turns),
        ),
        in_hand=tuple(map(in_hand_line, answer.in_hand)),
    )


def in_hand_line(each: InHand) -> str:
    """Write one thing to have in hand, from whom and by what rule."""
    maybe = "" if each.certain else "Perhaps: "
    return f"{maybe}{each.says}, from {each.from_whom} [{each.place}]"


def home_block(answer: OptionsAnswer) -> content.HomeBlock:
    """Return whose home it is; the design stays a draft until somebody puts a name to it."""
    head = answer.home
    return content.HomeBlock(
        customer=head.customer,
        address=head.address,
        postcode=head.postcode,
        date=day(answer.basis.design_date),
        firm=NO_FIRM,
        prepared_by=f"Ampwright {version('ampwright')}; data {answer.basis.digest}",
    )


def found_lines(answer: OptionsAnswer, run: DesignRun | None) -> Iterator[content.FoundLine]:
    """Yield what to know first: the supply, the bonds, the board, the cars; then what is open."""
    first = {each.key: each for each in answer.found if FIRST.fullmatch(each.key)}
    used = first if run is None else [key for key in run.reads if key in first]
    yield from (found_line(first[key]) for key in used)
    yield from map(open_line, answer.open)


def rest_lines(answer: OptionsAnswer, run: DesignRun | None) -> Iterator[content.FoundLine]:
    """Yield every fact that the design rests on, or all that was found.

    Things with one answer stand together; who the customer is stands at the head.
    """
    if run is None:
        yield from (found_line(f) for f in answer.found if f.key not in HEAD)
        return
    found = {each.key: each for each in answer.found}
    as_found = {key for key, rest in run.reads.items() if shown_by_itself(rest, found.get(key))}
    yield from map(alike_line, alike(r for key, r in run.reads.items() if key not in as_found))
    yield from (found_line(found[key]) for key in run.reads if key in as_found)


def also_lines(answer: OptionsAnswer, run: DesignRun | None) -> Iterator[content.FoundLine]:
    """Yield every fact that is held and that the design does not rest on."""
    if run is not None:
        shown = {*run.reads, *HEAD}
        yield from (found_line(each) for each in answer.found if each.key not in shown)


def shown_by_itself(rest: Rest, found: FoundFact | None) -> bool:
    """Say whether a fact is shown as it was found: it is overruled in part, or work changes it."""
    return found is not None and bool(found.overruled or not isinstance(rest.source, Said))


def found_line(each: FoundFact) -> content.FoundLine:
    """Return one answered fact."""
    return content.FoundLine(each.what, each.answer, each.known, each.how, each.overruled)


def alike_line(reads: Sequence[Rest]) -> content.FoundLine:
    """Return one fact of several things that rest on the same."""
    source, trade = reads[0].source, slot(reads[0].key).fact.trade
    if isinstance(source, Said):
        return content.FoundLine(trade, of_things(reads), known(source), how(source))
    return content.FoundLine(trade, of_things(reads), "assumed", str(source))


def open_line(each: OpenFact) -> content.FoundLine:
    """Return one question that is left."""
    may_be = f"may be {', '.join(each.may_be)}" if each.may_be else "not asked"
    return content.FoundLine(each.what, may_be, "not asked", each.ask)


def compared(answer: OptionsAnswer) -> tuple[OptionLine, ...]:
    """Return the options that stand beside each other."""
    return answer.options[:MOST_COMPARED]


def recommended(answer: OptionsAnswer) -> content.Recommendation | None:
    """Return the option recommended and why."""
    advice = answer.recommended
    if advice is None:
        return None
    name = next(each.name for each in answer.options if each.letter == advice.letter)
    return content.Recommendation(
        advice.letter,
        name,
        advice.to_customer,
        advice.to_electrician,
        advice.would_change,
        advice.heading,
        small(advice.heading),
    )


def work_items(answer: OptionsAnswer) -> Iterator[content.WorkItem]:
    """Yield the work that the leading option needs, then what it may need."""
    for option in answer.options:
        if option.recommended:
            yield from map(work_item, option.work)
            yield from (
                replace(work_item(each), because="what is still open may call for it")
                for each in option.may_need
            )


def work_item(each: Work) -> content.WorkItem:
    """Return one piece of work that comes first."""
    return content.WorkItem(
        does=each.does, parts=each.parts, time=each.time, by=each.by, remedy=True,
        steps=each.steps, chart=each.chart,
    )  # fmt: skip


def confirm_line(each: Confirm) -> content.ConfirmLine:
    """Return one thing to confirm."""
    return content.ConfirmLine(each.what, WHYS[each.why])


def rejected(answer: OptionsAnswer) -> Iterator[content.RejectedRow]:
    """Yield what ruled choices out, then what beats the options that are sound."""
    for each in answer.ruled_out:
        reason = f"{each.says}: {each.case}" if each.case else each.says
        yield content.RejectedRow(reason, count(each.choices, "choice"), each.place)
    winners: dict[tuple[str, tuple[str, ...]], int] = {}
    for each_beaten in answer.beaten:
        key = each_beaten.loses_to, each_beaten.in_what
        winners[key] = winners.get(key, 0) + 1
    letters = {each.id: each.letter for each in answer.options}
    for (winner, in_what), many in winners.items():
        yield content.RejectedRow(
            f"sound, but {all_of(in_what)}", count(many, "choice"),
            loses_to=letters.get(winner, winner),
        )  # fmt: skip
