"""A survey stops where somebody tells of danger, and is not stopped by what is not so."""

from __future__ import annotations

import pytest

from ampwright.survey.danger import tells_of_danger


@pytest.mark.parametrize(
    "words",
    [
        "burnt", "it is cracked", "Wet.", "80, and it buzzes", "no, it is a bit burnt",
        "No. Cracked on one side", "not new, but wet below", "there's a burning smell",
        "water in the meter box", "it hums and gets too hot", "two, one of them melted",
        "not sure, scorched maybe",
    ],
)  # fmt: skip
def test_danger_is_heard(words):
    assert tells_of_danger(words)


@pytest.mark.parametrize(
    "words",
    [
        "no", "nothing", "80", "none of it is wet", "no, nothing cracked, wet or burnt",
        "it isn't burnt", "a wet room shower", "a smoke alarm", "hot tub", "garage or store",
        "no burning smell", "never buzzed", "dry, with no damp", "on the hummock",
    ],
)  # fmt: skip
def test_what_is_not_so_is_no_danger(words):
    assert not tells_of_danger(words)
