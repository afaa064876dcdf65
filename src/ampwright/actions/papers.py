"""The paper "Options and working" of a home, from the same answers that the screen shows."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from importlib.metadata import version
from typing import Final

from ampwright.documents.options_and_working import content
from ampwright.documents.render import render
from ampwright.foundations.errors import NotFoundError
from ampwright.foundations.source import Said
from ampwright.survey.layout import slot, things_in
from ampwright.survey.views import Rest

from .comparing import MOST_COMPARED, is_blank
from .design_run import DesignRun, run_design
from .facts import (
    PRESENT,
    YES_NO,
    alike,
    fact_name,
    how,
    known,
    name_among,
    name_of_several,
    of_things,
)
from .homes import HEAD
from .seeing import Seen
from .shapes import Confirm, Decided, FoundFact, InHand, OpenFact, OptionLine, OptionsAnswer, Work
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
    "memory": "memory", "doubtful": "doubtful",
}  # fmt: skip
MOST_WINNERS: Final = 5
APART: Final = ("notes.", "photos.")
"""Things that stand in a line of their own."""
LISTED: Final = "all_listed"
NO_FIRM: Final = "Firm not named"
FIRST: Final = re.compile(
    r"supply\.(phases|main_fuse_a|looped|earthing|ze_ohm|fault_current_ka|isolator)"
    r"|services\.[^.]+\.bond_mm2|earthing\.electrode_ohm"
    r"|boards\.[^.]+\.(spare_ways|protection|spare_behind_rcd)"
    r"|sources\.[^.]+\.amps_a|cars\.[^.]+\.(takes_kw|miles_a_year)"
)
"""The facts that anyone opening the paper wants to see first."""


def paper_of(seen: Seen, answer: OptionsAnswer) -> bytes:
    """Return the paper as PDF; the same home on the same day gives the same bytes."""
    return render(TEMPLATE, content_of(seen, answer), stamp=seen.basis.design_date)


def content_of(seen: Seen, answer: OptionsAnswer) -> content.OptionsPaper:
    """Return what the paper says."""
    best = seen.best
    run = run_design(seen.home.folded, seen.basis, best) if best else None
    return content.OptionsPaper(
        decision=decision_block(answer.decision),
        home=home_block(answer),
        found=tuple(found_lines(answer, run)),
        rests_on=tuple(rest_lines(answer, run)),
        also_held=tuple(also_lines(answer, run)),
        options=tuple(content.OptionColumn(o.letter, o.name, o.id) for o in compared(answer)),
        rows=tuple(
            content.CompareRow(row.question, row.answers, leads=row.question == "decision")
            for row in answer.rows
            if not is_blank(row)
        ),
        recommended=recommended(answer),
        work=tuple(work_items(answer)),
        confirm=tuple(confirm_lines(answer.confirm)),
        cautions=answer.cautions,
        prove=tuple(
            content.ProveLine(capital(each.what), each.limit, each.how, each.place)
            for each in answer.prove
        ),
        rejected=tuple(rejected(answer)),
        working=working_groups(run) if run else (),
        edition=answer.basis.edition,
        stages=(
            *((answer.two_visits.words,) if answer.two_visits else ()),
            *(capital(each.words) for each in answer.turns),
        ),
        in_hand=tuple(map(in_hand_line, answer.in_hand)),
        not_known=tuple(row.question for row in answer.rows if is_blank(row)),
    )


def decision_block(decided: Decided) -> content.DecisionBlock:
    """Return the decision in the words of both."""
    return content.DecisionBlock(
        SIGNS[decided.value], decided.words, decided.sentence, decided.customer_words
    )


def working_groups(run: DesignRun) -> tuple[content.WorkingGroup, ...]:
    """Return the working of each stage that has any."""
    groups = (group for _, group in told_stages(run))
    return tuple(g for g in groups if g.figures or g.rulings or g.checks or g.notes)


def in_hand_line(each: InHand) -> str:
    """Write one thing to have in hand, from whom and by what rule."""
    says = each.says if each.certain else f"Perhaps: {small(each.says)}"
    return f"{says}, from {each.from_whom} [{each.place}]"


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
        reached_by=tuple(filter(None, (head.telephone, head.email, ring_at(head.best_time)))),
    )


def ring_at(best_time: str) -> str:
    """Say when to ring, if anybody said."""
    return f"best time to ring: {best_time}" if best_time else ""


def found_lines(answer: OptionsAnswer, run: DesignRun | None) -> Iterator[content.FoundLine]:
    """Yield what to know first: the supply, the bonds, the board, the cars; then what is open."""
    first = {each.key: each for each in answer.found if FIRST.fullmatch(each.key)}
    used = first if run is None else [key for key in run.reads if key in first]
    yield from (found_line(first[key]) for key in used)
    yield from map(open_line, answer.open)


def rest_lines(answer: OptionsAnswer, run: DesignRun | None) -> Iterator[content.FoundLine]:
    """Yield every fact that the design rests on, things with one answer together."""
    if run is None:
        return
    found = {each.key: each for each in answer.found}
    as_found = {key for key, rest in run.reads.items() if shown_by_itself(rest, found.get(key))}
    yield from map(alike_line, alike(r for key, r in run.reads.items() if key not in as_found))
    yield from (found_line(found[key]) for key in run.reads if key in as_found)


def also_lines(answer: OptionsAnswer, run: DesignRun | None) -> Iterator[content.FoundLine]:
    """Yield every fact that is held and that the design does not rest on.

    Who the customer is stands at the head; notes and photographs come last, each in a line.
    """
    shown = {*HEAD, *(run.reads if run else ())}
    rest = [each for each in answer.found if each.key not in shown]
    apart = [each for each in rest if slot(each.key).thing.startswith(APART)]
    yield from together(each for each in rest if each not in apart)
    yield from things_of_paper(apart)


def things_of_paper(found: Sequence[FoundFact]) -> Iterator[content.FoundLine]:
    """Yield each note with what it is about, and each photograph with who took and read it when."""
    things: dict[str, dict[str, FoundFact]] = {}
    for each in found:
        things.setdefault(slot(each.key).thing, {})[slot(each.key).fact.name] = each
    for thing, facts in things.items():
        if note := facts.get("text"):
            about = facts["about"].answer if "about" in facts else ""
            what = f"Note: {small(about_words(about))}" if about else "Note"
            yield replace(found_line(note), what=what)
        elif photo := facts.get("shows"):
            said = {name: each.answer for name, each in facts.items()}
            number = thing.rpartition(".")[2]
            yield replace(
                found_line(photo), what=f"Photograph or paper {number}", answer=of_photo(said)
            )


def of_photo(said: Mapping[str, str]) -> str:
    """Say what a photograph shows, when it was taken and whether it could be read.

    Examples
    --------
    >>> of_photo({"shows": "the board", "taken_on": "Mon 23 Nov 2026", "state": "unreadable"})
    'the board; taken on Mon 23 Nov 2026; unreadable'
    >>> of_photo({"shows": "the board", "read_by": "Ro", "state": "read"})
    'the board; read by Ro'
    """
    reader = said.get("read_by", "")
    parts = (
        said["shows"],
        f"taken on {said['taken_on']}" if "taken_on" in said else "",
        f"read by {reader}" if reader else "",
        "" if reader and said.get("state") == "read" else said.get("state", ""),
    )
    return "; ".join(filter(None, parts))


def about_words(about: str) -> str:
    """Say what a note is about: a fact by its name, anything else as it was said.

    Examples
    --------
    >>> about_words("supply.main_fuse_a"), about_words("the gate")
    ('Cut-out fuse-link rating', 'the gate')
    """
    try:
        return fact_name(about)
    except NotFoundError:
        return about


def together(found: Iterable[FoundFact]) -> Iterator[content.FoundLine]:
    """Yield found facts; what is known alike of several things of one kind stands in one line."""
    alike_found: dict[tuple[str, ...], list[FoundFact]] = {}
    for each in found:
        apart = each.overruled or not slot(each.key).thing or slot(each.key).fact.name == LISTED
        kind = each.key if apart else slot(each.key).thing.rpartition(".")[0]
        same = (kind, slot(each.key).fact.name, each.known, each.how)
        alike_found.setdefault(same, []).append(each)
    for several in alike_found.values():
        alone = len(several) == 1 and slot(several[0].key).fact.name != PRESENT
        yield found_line(several[0]) if alone else of_several(several)


def of_several(several: Sequence[FoundFact]) -> content.FoundLine:
    """Return one fact of several things: each answer with its things, unless it names them."""
    first = several[0]
    *around, _ = (thing for _, thing in things_in(first.key))
    by_answer: dict[str, list[str]] = {}
    for each in several:
        by_answer.setdefault(each.answer, []).append(things_in(each.key)[-1][1])
    answers = (
        said if things == [said] else f"{said} ({', '.join(things)})"
        for said, things in by_answer.items()
    )
    if slot(first.key).fact.name == PRESENT:
        said = [", ".join(by_answer[each]) for each in YES_NO if each in by_answer]
        name = name_among(first.key, there=YES_NO[0] in by_answer)
        return content.FoundLine(name, "; not there: ".join(said), first.known, first.how)
    trade = slot(first.key).fact.trade
    what = f"{trade} ({', '.join(around)})" if around else trade
    return content.FoundLine(what, "; ".join(answers), first.known, first.how)


def shown_by_itself(rest: Rest, found: FoundFact | None) -> bool:
    """Say whether a fact is shown as it was found: it is overruled in part, or work changes it."""
    return found is not None and bool(found.overruled or not isinstance(rest.source, Said))


def found_line(each: FoundFact) -> content.FoundLine:
    """Return one answered fact."""
    return content.FoundLine(each.what, each.answer, each.known, each.how, each.overruled)


def alike_line(reads: Sequence[Rest]) -> content.FoundLine:
    """Return one fact of several things that rest on the same."""
    source, name = reads[0].source, name_of_several(reads)
    if isinstance(source, Said):
        return content.FoundLine(name, of_things(reads), known(source), how(source))
    return content.FoundLine(name, of_things(reads), "assumed", str(source))


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
                replace(work_item(each), remedy=False, because="what is still open may call for it")
                for each in option.may_need
            )


def work_item(each: Work) -> content.WorkItem:
    """Return one piece of work that comes first."""
    return content.WorkItem(
        does=each.does, parts=each.parts, time=each.time, by=each.by, remedy=True,
        steps=each.steps, chart=each.chart,
    )  # fmt: skip


def confirm_lines(confirm: Sequence[Confirm]) -> Iterator[content.ConfirmLine]:
    """Yield what to confirm, a place that is recalled and in doubt as well in one line."""
    both = {each.what for each in confirm if each.why == "doubtful"}
    both &= {each.what for each in confirm if each.why == "memory"}
    for each in confirm:
        if each.what not in both:
            yield content.ConfirmLine(each.what, WHYS[each.why])
        elif each.why == "memory":
            yield content.ConfirmLine(each.what, "memory and doubtful")


def most_often(names: Sequence[str]) -> str:
    """Return the letters that stand most often, and how many others there are.

    Examples
    --------
    >>> most_often("ABBC"), most_often("GABBCDEF")
    ('B, A, C', 'B, G, A, C, D and 2 others')
    """
    ranked = [name for name, _ in Counter(names).most_common()]
    shown, rest = ranked[:MOST_WINNERS], ranked[MOST_WINNERS:]
    others = f" and {count(len(rest), 'other')}" if rest else ""
    return f"{', '.join(shown)}{others}"


def rejected(answer: OptionsAnswer) -> Iterator[content.RejectedRow]:
    """Yield what ruled choices out, then what beats the options that are sound."""
    for each in answer.ruled_out:
        reason = f"{each.says}: {each.case}" if each.case else each.says
        yield content.RejectedRow(reason, f"{each.choices:,}", each.place)
    letters = {each.id: each.letter for each in answer.options}
    lost: dict[tuple[str, ...], list[str]] = {}
    for each_beaten in answer.beaten:
        lost.setdefault(each_beaten.in_what, []).append(each_beaten.loses_to)
    for in_what, winners in sorted(lost.items(), key=lambda each: -len(each[1])):
        named = [letters[winner] for winner in winners if winner in letters]
        yield content.RejectedRow(
            f"sound, but {all_of(in_what)}", f"{len(winners):,}",
            loses_to=most_often(named),
        )  # fmt: skip
