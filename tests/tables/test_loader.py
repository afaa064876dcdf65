"""A table that does not match its card is refused, with file, field and what to do."""

import hashlib

import pytest

from ampwright.foundations.errors import NotFoundError, TableCardError
from ampwright.foundations.source import Trust
from ampwright.tables.card import OTHER_FIELDS, TEXT_FIELDS
from ampwright.tables.loader import data_folder, read_table, table

NAME = "fruit/apples"
FILE = "size_mm,weight_g,trust,doubtful\n60,100,,\n70,,memory,yes\n80,240,derived,\n"
CARD = """
title = "Apples"
document = "Orchard notes"
edition = "3"
at = "Table 1"
trust = "published"
found_at = ["a shelf"]
transcribed = { on = 2026-11-25, by = "the authors" }
second_reading = { none = "there was one shelf" }
keys = ["size_mm"]
between_rows = "none"
conditions = "Ripe."
in_force = { from = 2020-01-01 }
replace_by = "a scale"
licence = "Facts."
sha256 = "SUM"

[columns]
size_mm = { symbol = "d", unit = "mm", meaning = "diameter" }
weight_g = { symbol = "m", unit = "g", meaning = "weight" }
"""


def read(file=FILE, card=CARD, fresh=True):
    """Read a table made of texts; ``fresh`` puts the right sum on the card."""
    if fresh:
        card = card.replace("SUM", hashlib.sha256(file.encode()).hexdigest())
    return read_table(NAME, file.encode(), card)


def test_a_good_table_is_read():
    apples = read()
    assert apples.numbers["weight_g"] == {(60.0,): 100.0, (80.0,): 240.0}
    assert str(apples.rows[60.0,].place) == "Orchard notes, 3, Table 1, 60 mm"
    assert str(apples.rows[70.0,].place) == "Orchard notes, 3, Table 1, 70 mm (memory, doubtful)"
    assert apples.rows[80.0,].place.trust is Trust.DERIVED


def test_a_changed_cell_is_refused():
    with pytest.raises(TableCardError, match=r"apples\.csv: sha256 .* Orchard notes, Table 1"):
        read(FILE.replace("240", "250"), CARD.replace("SUM", "0" * 64), fresh=False)


@pytest.mark.parametrize("name", ["capacity/flat_70", "devices/let_through"])
def test_a_changed_cell_of_a_packaged_table_is_refused(name):
    raw = data_folder().joinpath(f"{name}.csv").read_bytes()
    card = data_folder().joinpath(f"{name}.toml").read_text("utf-8")
    read_table(name, raw, card)
    with pytest.raises(TableCardError, match="sha256"):
        read_table(name, raw.replace(b"0", b"9", 1), card)


@pytest.mark.parametrize("field", [*TEXT_FIELDS, *OTHER_FIELDS])
def test_every_field_of_the_card_is_needed(field):
    lines = [line for line in CARD.splitlines() if not line.startswith(f"{field} =")]
    card = "\n".join(lines)
    if field == "columns":
        card = card.replace("[columns]", "[others]")
    with pytest.raises(TableCardError, match=rf"apples\.toml: {field} is missing"):
        read(card=card)


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('keys = ["size_mm"]', 'keys = ["colour"]', "keys"),
        ('keys = ["size_mm"]', "keys = []", "keys"),
        ('between_rows = "none"', 'between_rows = "cubic"', "between_rows"),
        ('between_rows = "none"', 'between_rows = "linear"', "between_key"),
        ('between_rows = "none"', 'between_rows = "none"\nbetween_key = "size_mm"', "between_key"),
        ('trust = "published"', 'trust = "sure"', "trust is 'sure'"),
        ('title = "Apples"', "title = 3", "title is 3"),
        ("from = 2020-01-01", 'from = "2020"', "in_force"),
        ("on = 2026-11-25", 'on = "today"', "transcribed"),
        ('{ none = "there was one shelf" }', '{ by = "us" }', "second_reading"),
        ('unit = "g", ', "", r"columns\.weight_g\.unit is missing"),
        (', meaning = "weight"', "", r"columns\.weight_g\.meaning is missing"),
        ('replace_by = "a scale"', "", "replace_by"),
        ("weight_g = {", 'note = { symbol = "", unit = "", meaning = "" }\nweight_g = {', "note"),
        ("[columns]", "[columns", "TOML"),
    ],
)
def test_a_bad_card_is_refused(old, new, says):
    assert old in CARD
    with pytest.raises(TableCardError, match=says):
        read(card=CARD.replace(old, new, 1))


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("size_mm,weight_g", "size_mm,weight_g,colour", "colour has no unit"),
        ("size_mm,weight_g", "size_mm,heft", "heft has no unit"),
        ("size_mm,weight_g,trust,doubtful\n", "size_mm\n", "weight_g is missing"),
        ("70,,memory", "60,,memory", r"line 3: size_mm is \(60.0,\)"),
        ("70,,memory", ",,memory", "line 3: size_mm"),
        ("60,100,,", "60,heavy,,", "line 2: weight_g is 'heavy'"),
        ("memory,yes", "memory,perhaps", "line 3: doubtful is 'perhaps'"),
        ("memory,yes", "hearsay,yes", "line 3: trust is 'hearsay'"),
        ("60,100,,", "60", "line 2: weight_g is missing"),
    ],
)
def test_a_bad_file_is_refused(old, new, says):
    assert old in FILE
    with pytest.raises(TableCardError, match=says):
        read(file=FILE.replace(old, new, 1))


def test_recalled_rows_need_something_to_replace_them():
    card = CARD.replace('trust = "published"', 'trust = "memory"')
    card = card.replace('replace_by = "a scale"', "")
    with pytest.raises(TableCardError, match="replace_by is missing"):
        read("size_mm,weight_g\n60,100\n", card)


def test_an_unknown_table_is_named():
    with pytest.raises(NotFoundError, match="'capacity/flax'"):
        table("capacity/flax")


def test_a_table_is_read_once():
    assert table("capacity/flat_70") is table("capacity/flat_70")
