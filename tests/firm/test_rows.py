"""Rows of a file are read by the types of their fields, or refused whole."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import pytest

from ampwright.firm.rows import column, columns_of, read_rows, with_sources
from ampwright.foundations.errors import BadFileError
from ampwright.foundations.quantity import Amperes, Count
from ampwright.foundations.source import SetBy
from ampwright.foundations.working import working


class Colour(StrEnum):
    RED = "red"
    GREEN = "green"


@dataclass(frozen=True, slots=True)
class Lamp:
    id: str = column(says="id")
    draws_a: Amperes = column("Ilamp", "current")
    ways: Count = column(says="ways")
    colour: Colour = column(says="colour")
    dims: bool | None = column(says="dims; blank if not known")


GOOD = "id,draws_a,ways,colour,dims\nhall,0.5,2,red,yes\nloft,1,1,green,\n"


def test_reads_each_kind_of_cell():
    hall, loft = read_rows("lamps", GOOD, Lamp)
    assert hall == Lamp("hall", Amperes(0.5), Count(2), Colour.RED, True)
    assert loft.dims is None
    assert len({hall, loft}) == 2


def test_the_unit_comes_from_the_type():
    assert {each.name: each.unit for each in columns_of(Lamp)}["draws_a"] == "A"


@pytest.mark.parametrize(
    ("was", "bad", "expected"),
    [
        ("0.5", "half", "line 2: draws_a is 'half'; expected a number"),
        ("2,red", "2.5,red", "expected a whole number"),
        ("red", "blue", "expected one of red, green"),
        ("yes", "true", "expected yes or no"),
        ("hall,0.5", "hall,", "expected a value"),
        ("loft", "hall", "line 3: id is 'hall'; expected an id that stands once"),
        ("dims", "dim", "line 1: the header"),
        ("loft,1,", "loft,1,9,", "line 3: the row .*expected 5 cells, got 6"),
    ],
)
def test_refuses_what_does_not_read(was, bad, expected):
    with pytest.raises(BadFileError, match=expected):
        read_rows("lamps", GOOD.replace(was, bad, 1), Lamp)


def test_every_problem_is_told_at_once():
    with pytest.raises(BadFileError, match="2 problems"):
        read_rows("lamps", GOOD.replace("0.5", "half").replace("green", "blue"), Lamp)


def test_only_quantities_carry_a_working():
    hall, _ = read_rows("lamps", GOOD, Lamp)
    worked = with_sources(hall, lambda name: SetBy("catalogue", name))
    assert worked == hall
    assert [str(line) for line in working(worked.draws_a)] == [
        "Ilamp = 0.5 A  [catalogue: draws_a]"
    ]
    assert not list(working(worked.ways))
