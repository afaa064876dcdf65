"""What is wrong with a file is said plainly, and a file is written whole or not at all."""

from __future__ import annotations

import pytest

from ampwright.actions.files import read_text, write_whole
from ampwright.foundations.errors import InputError, NotFoundError


def test_reads_text_with_or_without_a_mark_at_its_head(tmp_path):
    plain, marked = tmp_path / "a.toml", tmp_path / "b.toml"
    plain.write_text("ze = '≤ 0.35 Ω'", encoding="utf-8")
    marked.write_text("ze = '≤ 0.35 Ω'", encoding="utf-8-sig")
    assert read_text(plain) == read_text(marked) == "ze = '≤ 0.35 Ω'"


def test_a_wrong_name_is_answered_with_the_nearest_that_is_there(tmp_path):
    (tmp_path / "quillbrook.toml").touch()
    with pytest.raises(NotFoundError, match=r"Did you mean .*quillbrook\.toml"):
        read_text(tmp_path / "quilbrook.toml")


def test_a_folder_and_a_picture_are_refused_in_words(tmp_path):
    picture = tmp_path / "photo.toml"
    picture.write_bytes(b"\xff\xd8\xff\xe0")
    with pytest.raises(InputError, match="expected text in UTF-8"):
        read_text(picture)
    with pytest.raises(InputError, match="expected a file that can be read"):
        read_text(tmp_path)


def test_writes_over_what_was_there(tmp_path):
    paper = tmp_path / "paper.pdf"
    write_whole(paper, b"first")
    write_whole(paper, b"second")
    assert paper.read_bytes() == b"second"
    assert list(tmp_path.iterdir()) == [paper]


def test_nothing_half_done_is_left(tmp_path):
    (tmp_path / "paper.pdf").mkdir()
    (tmp_path / "paper.pdf" / "kept").touch()
    with pytest.raises(InputError, match="expected a file that can be written"):
        write_whole(tmp_path / "paper.pdf", b"content")
    assert [each.name for each in tmp_path.iterdir()] == ["paper.pdf"]


def test_a_folder_that_is_not_there_is_named(tmp_path):
    with pytest.raises(InputError, match="Make it first"):
        write_whole(tmp_path / "out" / "paper.pdf", b"content")
