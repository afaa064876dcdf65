"""What somebody holds or has heard that no other fact takes up: photographs and notes."""

from __future__ import annotations

from typing import Literal

from .register import Thing, fact


class Photo(Thing):
    """A photograph or a paper that somebody holds."""

    shows: str = fact(
        ask="What does it show?",
        trade="Subject",
        look="In a few words, with what can be read on it.",
    )
    taken_on: str = fact(
        ask="When was it taken?", trade="Date taken", look="The phone knows.", form="date"
    )
    read_by: str = fact(
        ask="Who has read it?",
        trade="Read by",
        look="A picture nobody has read is not evidence.",
    )
    state: Literal["read", "unreadable", "not sent"] = fact(
        ask="Can what it should show be read on it?",
        trade="State",
        look="Too dark, cut off, blurred: ask for it again and say how.",
    )


class Note(Thing):
    """Something said or seen that no other fact holds."""

    text: str = fact(
        ask="What else was said?",
        trade="Note",
        look="In their words.",
    )
    about: str = fact(
        ask="What is it about?",
        trade="About: the key of a fact or the name of a part",
        look="So that whoever works on that part sees it.",
    )
