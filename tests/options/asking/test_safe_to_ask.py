"""No question or photograph asks a customer to undo a screw, to take off a cover or to climb."""

from __future__ import annotations

import re

from ampwright.survey.folding import ids_of
from ampwright.survey.layout import frozen, slots_of

UNSAFE = re.compile(
    r"\b(unscrew|undo|screwdriver|take off|take the lid off|remove|prise|climb|ladder|roof)\b", re.I
)
FORBIDDEN = re.compile(r"\b(never|not|nothing|only|do not|stay)\b", re.I)
"""Words by which a sentence forbids what it names."""

EVERYTHING = ids_of(
    f"{path}.x.present"
    for path in ("boards", "loads", "sources", "cars", "places", "legs", "laid", "boards.x.outlets")
)


def test_what_a_customer_is_asked_needs_neither_screw_nor_ladder() -> None:
    # Facts that need either are for the electrician: `who="site"`.
    unsafe = []
    for slot in slots_of(frozen(EVERYTHING)):
        if slot.fact.who == "site":
            continue
        words = [slot.fact.ask, slot.fact.look]
        if slot.standard is not None:
            words += [slot.standard.ask, slot.standard.look]
        for sentence in re.split(r"[.;:?]", " . ".join(words)):
            if UNSAFE.search(sentence) and not FORBIDDEN.search(sentence):
                unsafe.append((slot.key, sentence.strip()))
    assert not unsafe
