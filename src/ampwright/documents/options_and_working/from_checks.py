"""The working of a design, turned from checks and worked numbers into lines of the paper.

Each line is printed once, where it is first needed, and numbered; later checks point back to it.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from typing import Any, Final, Literal, cast

from ampwright.documents.formulas import drawn, listed, number, row
from ampwright.documents.symbols import Drawn, plain, symbol, words
from ampwright.foundations.checks import Check
from ampwright.foundations.errors import InputError
from ampwright.foundations.notes import Note
from ampwright.foundations.rulings import Ruled, Ruling
from ampwright.foundations.source import Said, Source
from ampwright.foundations.working import Line, Worked, figure, walk, working

from .content import (
    CheckLine,
    FigureLine,
    Known,
    NoteLine,
    RulingLine,
    RulingRow,
    WorkingGroup,
    WorkingLine,
)

WORKS: Final = frozenset(" (*")
"""A formula without any of these is the number it is made from, and says nothing."""

NameOfFact = Callable[[str], str]


@dataclass(frozen=True, slots=True)
class Stage:
    """What one stage of the work hands to the paper.

    ``figures`` are worked numbers with what they are; ``rulings`` pair a ruling with what it
    decided; ``rests_on`` are ready words for the facts that carry no number; ``notes`` are what
    is only told.
    """

    title: str
    checks: tuple[Check, ...] = ()
    figures: tuple[tuple[str, float], ...] = ()
    rulings: tuple[tuple[Ruling[Any, Any], Ruled[Any]], ...] = ()
    rests_on: tuple[str, ...] = ()
    notes: tuple[Note, ...] = ()


def plain_key(key: str) -> str:
    """Name a fact by its key when nobody has better words.

    Examples
    --------
    >>> plain_key("supply.main_fuse_a"), plain_key("supply.ze_ohm")
    ('main fuse', 'Ze')
    """
    drawn_name = plain(symbol(key.rpartition(".")[2]))
    return {"ze": "Ze", "ra": "RA"}.get(drawn_name, drawn_name)


def working_of(
    stages: Iterable[Stage], name_of_fact: NameOfFact = plain_key
) -> tuple[WorkingGroup, ...]:
    """Turn stages into groups of the paper; ``name_of_fact`` gives the words for a fact's key."""
    ledger = Ledger(name_of_fact)
    return tuple(group(stage, ledger) for stage in stages)


def group(stage: Stage, ledger: Ledger) -> WorkingGroup:
    """Turn one stage into a group; its figures come before its checks."""
    figures = tuple(figure_line(what, value, ledger) for what, value in stage.figures)
    return WorkingGroup(
        stage.title,
        stage.rests_on,
        figures,
        tuple(ruling_line(ruling, ruled) for ruling, ruled in stage.rulings),
        tuple(check_line(check, ledger) for check in stage.checks),
        tuple(note_line(note, ledger) for note in stage.notes),
    )


@dataclass(slots=True)
class Ledger:
    """The lines printed so far, each with its number."""

    name_of_fact: NameOfFact
    printed: dict[Line, str] = field(default_factory=dict)

    def enter(self, *ends: float | None) -> tuple[tuple[WorkingLine, ...], Drawn]:
        """Return the new lines behind some numbers, and words for the earlier ones they use."""
        walks = [steps(end) for end in ends]
        pairs = [pair for walk_of_end in walks for pair in walk_of_end]
        line_of = {id(node): line for node, line in pairs}
        before = dict(self.printed)
        fresh = [line for line in line_of.values() if line not in before]
        used = [
            line_of[id(part)] for node, line in pairs if line not in before for part in inputs(node)
        ]
        used += [walk_of_end[-1][1] for walk_of_end in walks if walk_of_end]
        back = tuple(
            row(called(line.symbol), f" from line {before[line]}")
            for line in dict.fromkeys(used)
            if line in before
        )
        new = tuple(self.set_line(alike) for alike in runs(dict.fromkeys(fresh)))
        return new, row(*listed(back))

    def number(self, lines: Sequence[Line]) -> str:
        """Give the next number to some lines that print as one."""
        following = str(len(set(self.printed.values())) + 1)
        self.printed.update(dict.fromkeys(lines, following))
        return following

    def set_line(self, alike: Sequence[Line]) -> WorkingLine:
        """Number a line, or starting figures that differ only in size, and set them as one."""
        line = alike[0]
        name = called(line.symbol)
        works = bool(set(line.formula) & WORKS)
        formula = drawn(line.formula) if works else ""
        numbers = drawn(line.numbers) if works else ""
        result = amount(", ".join(each.result for each in alike), line.unit)
        shown = [plain(part) for part in (name, formula, numbers) if part]
        return WorkingLine(
            self.number(alike), name, formula, numbers, result,
            source_words(line.source, self.name_of_fact),
            " = ".join((*shown, result)), known(line.source),
        )  # fmt: skip


def steps(end: float | None) -> list[tuple[Worked, Line]]:
    """Return the worked numbers behind one, each with its line, inputs before results."""
    nodes = [node for node in walk(end) if isinstance(node, Worked)]
    return list(zip(nodes, working(end), strict=True))


def called(name: str) -> Drawn:
    """Set the symbol of a line; some are themselves a ratio or a sum.

    Examples
    --------
    >>> called("dU/U0"), called("main switch")
    (('over', 'ΔU', ('sub', 'U', '0')), 'main switch')
    """
    try:
        return drawn(name)
    except InputError:
        return name


def runs(lines: Iterable[Line]) -> list[list[Line]]:
    """Part lines where they differ in more than the size of a starting figure."""
    parted: list[list[Line]] = []
    for line in lines:
        last = parted[-1][0] if parted else None
        if last and not line.formula and replace(line, result=last.result) == last:
            parted[-1].append(line)
        else:
            parted.append([line])
    return parted


def inputs(node: Worked) -> Iterator[Worked]:
    """Yield each worked number that went straight into one."""
    for each in node.inputs:
        for part in each if isinstance(each, tuple) else (each,):
            if isinstance(part, Worked):
                yield part


def check_line(check: Check, ledger: Ledger) -> CheckLine:
    """Turn one check into its line, with the working of both its numbers."""
    lines, carried = ledger.enter(check.actual, check.limit)
    return CheckLine(
        check.outcome.value,
        words(check.requirement.says),
        both(check),
        str(check.requirement.place),
        check.why,
        check.caution,
        lines,
        carried,
        tuple(remedy.does for remedy in check.remedies),
    )


def note_line(note: Note, ledger: Ledger) -> NoteLine:
    """Turn one note into its line, with the working of its numbers."""
    lines, carried = ledger.enter(*note.numbers)
    telling = note.telling
    return NoteLine(telling.caution, note.says, str(telling.place), lines, carried)


def both(check: Check) -> str:
    """Write the number found and the one it is held to."""
    sides = [each for each in (check.actual, check.limit) if each is not None]
    if "Share" in check.requirement.body.__annotations__.values():
        return " against ".join(percent(each) for each in sides)
    unit = check.requirement.unit
    return " against ".join(amount(figure(each), unit) for each in sides)


def percent(share: float) -> str:
    """Write a share as print has it.

    Examples
    --------
    >>> percent(0.0081), percent(0.05)
    ('0.81 %', '5 %')
    """
    return f"{share:.2%}".removesuffix("%").rstrip("0").rstrip(".") + " %"


def figure_line(what: str, value: float, ledger: Ledger) -> FigureLine:
    """Turn one worked number into its line; a number without a working prints no lines."""
    lines, carried = ledger.enter(value)
    unit = value.step.unit if isinstance(value, Worked) else ""
    return FigureLine(what, amount(figure(value), unit), lines, carried)


def ruling_line(ruling: Ruling[Any, Any], ruled: Ruled[Any]) -> RulingLine:
    """Turn a ruling into its rows, each with whether it decided."""
    return RulingLine(ruling.name, tuple(ruling_rows(ruling, ruled)))


def ruling_rows(ruling: Ruling[Any, Any], ruled: Ruled[Any]) -> Iterator[RulingRow]:
    """Yield the rows of a ruling in order."""
    for count, each in enumerate(ruling.rows, 1):
        follows = str(getattr(each.outcome, "value", each.outcome)).replace("_", " ")
        place = str(each.place)
        if count < ruled.row:
            yield RulingRow(each.words, follows, place, "did not apply")
        elif count == ruled.row:
            yield RulingRow(each.words, follows, place, "decided")
        else:
            yield RulingRow(each.words, follows, place, "not reached")


def amount(result: str, unit: str) -> str:
    """Write a figure with its unit; true minus, powers of ten written out.

    Examples
    --------
    >>> amount("-0.5", "V"), amount("1.2e-05", "Ω"), amount("15, 10", "A")
    ('−0.5 V', '1.2 × 10⁻⁵ Ω', '15, 10 A')
    """
    numbers = [tidy(part) for part in result.split(", ")]
    return f"{', '.join(numbers)} {unit}".rstrip()


def tidy(text: str) -> str:
    """Write one figure as print has it."""
    sign, size = ("−", text[1:]) if text.startswith("-") else ("", text)
    return sign + plain(number(size)[0]) if re.match(r"\d", size) else text


def known(source: Source) -> Known | Literal[""]:
    """Say how a starting figure is known, when it is a fact of the home."""
    return cast(Known, source.evidence.word) if isinstance(source, Said) else ""


def source_words(source: Source, name_of_fact: NameOfFact) -> str:
    """Write where a line comes from, with the fact's own name instead of its key."""
    text = str(source)
    if isinstance(source, Said):
        return f"{name_of_fact(source.key)}: {text.removeprefix(f'{source.key}: ')}"
    return text
