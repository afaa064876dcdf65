"""The faces: whole, refused when altered, and holding every character the project can print."""

from __future__ import annotations

import shutil

import pytest

from ampwright.documents import render
from ampwright.documents.faces import (
    FOLDER,
    FaceError,
    characters,
    characters_of,
    shipped,
)

from ..code_rules.tree import texts

# Counted with fontTools 4.68, an independent reader of the same files.
COUNTED = {"AtkinsonHyperlegibleNext": 362, "AmpwrightSigns": 452}
PRINTED = (".py", ".csv", ".toml", ".typ", ".svg", ".css", ".html", ".js")


@pytest.mark.parametrize("name", sorted(face.file for face in shipped()))
def test_holds_as_many_characters_as_another_reader_counts(name):
    held = set(characters_of((FOLDER / name).read_bytes()))
    assert len(held) == COUNTED[name.partition("-")[0]]


@pytest.mark.parametrize("letters", ["ŵŷŴŶâêîôûẁẃẅ", "≤≥√ΩΔ−²³×·°µ", "₀₁₂αηλρπθ→←Σ", "łőșğđżňť"])
def test_holds_welsh_signs_greek_and_names(letters):
    assert set(letters) <= characters()


@pytest.mark.parametrize("letter", ["あ", "ж", "🚗"])
def test_does_not_claim_what_it_lacks(letter):
    assert letter not in characters()


def test_every_character_the_project_could_print_is_held():
    lacking = {
        place: "".join(sorted(set(text) - characters()))
        for place, text in texts().items()
        if place.startswith(("src/", "examples/")) and place.endswith(PRINTED)
    }
    assert not {place: odd for place, odd in lacking.items() if odd}


@pytest.fixture
def copied(tmp_path):
    return shutil.copytree(FOLDER, tmp_path / "fonts")


@pytest.mark.parametrize(
    ("file", "why"),
    [
        ("AtkinsonHyperlegibleNext-600.ttf", "is missing"),
        ("AmpwrightSigns-400.ttf", "is missing"),
        ("LICENSE-AmpwrightSigns.txt", "licence"),
        ("faces.toml", "is missing"),
    ],
)
def test_a_missing_file_is_refused_by_name(copied, file, why):
    (copied / file).unlink()
    with pytest.raises(FaceError, match=why) as refused:
        shipped(copied)
    assert file in str(refused.value)


def test_an_altered_face_is_refused(copied):
    face = copied / "AmpwrightSigns-700.ttf"
    face.write_bytes(face.read_bytes() + b"x")
    with pytest.raises(FaceError, match="differs from its card"):
        shipped(copied)


def test_a_paper_cannot_be_set_without_its_faces(copied, monkeypatch):
    (copied / "AtkinsonHyperlegibleNext-400.ttf").unlink()
    monkeypatch.setattr(render, "FOLDER", copied)
    render.fonts.cache_clear()
    try:
        with pytest.raises(FaceError, match="AtkinsonHyperlegibleNext-400"):
            render.fonts()
    finally:
        render.fonts.cache_clear()


def test_no_face_keeps_a_reserved_name():
    for face in shipped():
        if face.family == "Ampwright Signs":
            assert "Source Sans".encode("utf-16-be") not in (FOLDER / face.file).read_bytes()
