"""A firm's own copy of a table lies over the packaged one, cell by cell, and says who read it."""

import re

import pytest

from ampwright.firm.basis import load_basis, own_cells
from ampwright.firm.own_cells import HEADER, read_own_cells
from ampwright.foundations.errors import BadFileError, InputError, NotFoundError
from ampwright.foundations.working import working
from tests.journeys.homes import DESIGNED

TABLE = "capacity/flat_70"
ROW = f"{TABLE},size_mm2=10; method=102; loaded=2,capacity_a,46,BS 7671,2018+A4:2026,Table 4D5"


def text(*rows: str) -> str:
    return "\n".join([HEADER, *rows]) + "\n"


def firm_in(tmp_path, *rows):
    (tmp_path / "own_cells.csv").write_text(text(*rows), "utf-8")
    return load_basis(design_date=DESIGNED, profile="neutral", folder=tmp_path)


def test_a_cell_of_the_firms_copy_is_used_and_printed(tmp_path):
    basis = firm_in(tmp_path, f"{ROW},R Quince,2026-11-02")
    keys = {"size_mm2": 10.0, "method": "102", "loaded": 2.0}
    assert basis.book.number(TABLE, "capacity_a", **keys) == 46
    kept = basis.documented().book.number(TABLE, "capacity_a", **keys)
    (line,) = working(kept)
    assert "BS 7671:2018+A4:2026, Table 4D5, read by R Quince on 2026-11-02" in str(line)
    (changed,) = own_cells(tmp_path)
    assert (changed.packaged, changed.override.value) == (47, 46)


def test_the_digest_tells_two_firms_apart(tmp_path):
    shipped = load_basis(design_date=DESIGNED, profile="neutral")
    assert firm_in(tmp_path, f"{ROW},R Quince,2026-11-02").digest != shipped.digest


@pytest.mark.parametrize(
    ("row", "says"),
    [
        (f"{ROW},,2026-11-02", "a value"),
        (f"{ROW},R Quince,yesterday", "a date such as"),
        (ROW.replace(TABLE, "capacity/flat") + ",R Quince,2026-11-02", "a published table"),
        (ROW.replace("size_mm2=10", "size_mm2=11") + ",R Quince,2026-11-02", "a row of"),
        (ROW.replace("size_mm2=10", "size_mm2=ten") + ",R Quince,2026-11-02", "a number for"),
        (ROW.replace("; loaded=2", "") + ",R Quince,2026-11-02", "method=…; loaded=…; size_mm2=…"),
        (ROW.replace("capacity_a", "capacity") + ",R Quince,2026-11-02", "one of capacity_a"),
    ],
)
def test_a_row_that_lays_nothing_over_anything_is_refused(row, says):
    with pytest.raises(BadFileError) as refused:
        read_own_cells("own_cells", text(row))
    (problem,) = refused.value.problems
    assert problem.line == 2
    assert re.search(says, problem.expected)


def test_a_cell_stands_once():
    row = f"{ROW},R Quince,2026-11-02"
    with pytest.raises(BadFileError, match="a cell that stands once"):
        read_own_cells("own_cells", text(row, row))


def test_a_folder_that_is_not_there_and_a_file_nobody_reads_are_refused(tmp_path):
    with pytest.raises(InputError, match="a folder that is there"):
        own_cells(tmp_path / "nowhere")
    (tmp_path / "rate.csv").write_text("id\n", "utf-8")
    with pytest.raises(NotFoundError, match="Did you mean rates"):
        own_cells(tmp_path)
