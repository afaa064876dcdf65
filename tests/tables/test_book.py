"""Looking up: inside, between rows as the card says, and never outside."""

import pickle
from datetime import date

import pytest
from hypothesis import given as drawn
from hypothesis import strategies as st

from ampwright.foundations.errors import InputError, NotFoundError, OutOfTableError
from ampwright.foundations.quantity import Celsius
from ampwright.foundations.source import Evidence, Place, Said, SetBy, Trust
from ampwright.foundations.working import Worked, given, orphans, working
from ampwright.tables.book import Book, Override, straight_line
from ampwright.tables.capacity import CableFamily, tabulated_capacity
from ampwright.tables.factors import ambient_factor, insulation_factor
from ampwright.tables.loader import table, table_names
from ampwright.tables.network import operator_of
from ampwright.tables.regulation import vat_rate

PLAIN = Book()
KEPT = Book(keeps_working=True)
FLAT = "capacity/flat_70"


def test_a_plain_book_gives_plain_floats():
    assert type(PLAIN.number(FLAT, "capacity_a", method="C", loaded=2, size_mm2=6)) is float


def test_the_order_of_keys_does_not_matter():
    assert PLAIN.number(FLAT, "capacity_a", size_mm2=6, loaded=2, method="C") == 47


def test_every_number_is_found_again_and_says_where_it_stands():
    for name in table_names():
        found = table(name)
        for column, cells in found.numbers.items():
            for keys, value in cells.items():
                named = dict(zip(found.keys, keys, strict=True))
                assert PLAIN.number(name, column, **named) == value
                kept = KEPT.number(name, column, **named)
                assert kept == value
                assert isinstance(kept, Worked)
                assert kept.step.source == found.rows[keys].place


@pytest.mark.parametrize(
    ("family", "method", "loaded", "size", "says"),
    [
        (
            CableFamily.FLAT,
            "E",
            2,
            6,
            r"no row with method = E; it covers 100, 101, 102, 103, C, A",
        ),
        (CableFamily.FLAT, "C", 3, 6, r"loaded = 3; it covers 2"),
        (
            CableFamily.FLAT,
            "C",
            2,
            25,
            r"size_mm2 = 25 mm²; it covers 1, 1.5, 2.5, 4, 6, 10, 16 mm²",
        ),
        (CableFamily.ARMOURED, "C", 2, 1, r"size_mm2 = 1 mm²; it covers 1.5"),
    ],
)
def test_outside_the_table_is_refused_and_says_what_it_covers(family, method, loaded, size, says):
    for book in (PLAIN, KEPT):
        with pytest.raises(OutOfTableError, match=says):
            tabulated_capacity(book, family, method, loaded, size)


def test_the_refusal_names_table_and_document():
    with pytest.raises(OutOfTableError, match=r"flat cable .* \(BS 7671:2018\+A2:2022, Table 4D5"):
        tabulated_capacity(PLAIN, CableFamily.FLAT, "C", 2, 50)


def test_an_empty_cell_is_refused():
    with pytest.raises(OutOfTableError, match="x_mv = a value at phases 1, 6 mm²"):
        PLAIN.number("voltage_drop/armoured_90", "x_mv", phases=1, size_mm2=6)


@pytest.mark.parametrize(("ambient", "factor"), [(-5, 1.03), (25, 1.03), (30, 1), (30.1, 0.94)])
def test_between_rows_the_next_is_taken_where_the_card_says_so(ambient, factor):
    assert ambient_factor(PLAIN, 70, ambient) == factor


@pytest.mark.parametrize("ambient", [60.1, float("nan"), float("inf")])
def test_beyond_the_last_row_is_refused(ambient):
    with pytest.raises(OutOfTableError, match="it covers up to 60 °C"):
        ambient_factor(PLAIN, 70, ambient)


def test_the_working_names_the_row_taken_and_the_fact_that_chose_it():
    ambient = given("ambient", Celsius(33), "°C", Said("legs.a.ambient_c", Evidence.TOLD))
    lines = [str(line) for line in working(ambient_factor(KEPT, 70, ambient))]
    assert lines == [
        "ambient = 33 °C  [legs.a.ambient_c: told]",
        "Ca = 0.94  [BS 7671:2018+A2:2022, Table 4B1, 70 °C, 35 °C, for 33 °C (memory)]",
    ]


def test_a_straight_line_is_drawn_where_the_card_says_so_and_shows_itself():
    day = given("ambient", Celsius(12), "°C", Said("readings.day_c", Evidence.MEASURED))
    kept = KEPT.number("conductors/ambient_of_test", "multiplier", ambient_c=day)
    assert kept == pytest.approx(0.968)
    assert orphans(kept) == []
    last = list(working(kept))[-1]
    assert last.formula == "low + (high - low) * (asked - below) / (above - below)"
    assert last.numbers == "0.96 + (0.98 - 0.96) * (12 - 10) / (15 - 10)"
    assert (last.symbol, last.result) == ("Ct", "0.968")


@pytest.mark.parametrize("ambient", [4.9, 30.1])
def test_a_straight_line_is_never_drawn_beyond_the_ends(ambient):
    with pytest.raises(OutOfTableError, match="it covers 5 to 30 °C"):
        PLAIN.number("conductors/ambient_of_test", "multiplier", ambient_c=ambient)


@drawn(st.floats(5, 30))
def test_a_straight_line_is_the_same_with_and_without_working(ambient):
    book = (PLAIN, KEPT)
    plain, kept = (
        each.number("conductors/ambient_of_test", "multiplier", ambient_c=ambient) for each in book
    )
    assert plain == kept
    assert 0.94 <= plain <= 1.04


@drawn(st.floats(-100, 100), st.floats(-100, 100), st.floats(0, 1))
def test_a_straight_line_stays_between_its_ends(low, high, share):
    value = straight_line(low, high, share, 0.0, 1.0)
    assert min(low, high) - 1e-9 <= value <= max(low, high) + 1e-9


@drawn(st.floats(0, 2000), st.floats(0, 2000))
def test_more_insulation_never_carries_more(a, b):
    short, long = sorted((a, b))
    assert insulation_factor(PLAIN, long) <= insulation_factor(PLAIN, short)


def test_names_that_do_not_exist_are_refused():
    with pytest.raises(NotFoundError, match="table"):
        PLAIN.number("capacity/none", "capacity_a", size_mm2=6)
    with pytest.raises(NotFoundError, match="capacity_b"):
        PLAIN.number(FLAT, "capacity_b", method="C", loaded=2, size_mm2=6)
    with pytest.raises(InputError, match="method, loaded, size_mm2"):
        PLAIN.number(FLAT, "capacity_a", method="C", size_mm2=6)
    with pytest.raises(NotFoundError, match="colour"):
        PLAIN.rows(FLAT, colour="red")


def test_texts_and_places():
    assert PLAIN.text("charging/pilot_states", "meaning", state="A") == "no car"
    assert PLAIN.text("network/meter_points", "group", distributor_id="24") == ""
    assert PLAIN.place("charging/section_722", item="(iv)").at == "722.411.4.1 (iv)"
    with pytest.raises(NotFoundError):
        PLAIN.text("charging/pilot_states", "pilot_v", state="A")
    with pytest.raises(OutOfTableError, match="it covers A, B, C, D, E, F"):
        PLAIN.text("charging/pilot_states", "meaning", state="Z")


OWN = Override(
    FLAT,
    (("size_mm2", 10), ("method", "102"), ("loaded", 2)),
    "capacity_a",
    46.0,
    Place("BS 7671", "2018+A4:2026", "Table 4D5, the firm's copy"),
)


def test_a_cell_of_the_firms_own_copy_lies_over_the_row_and_says_so():
    book = Book(keeps_working=True, overrides=(OWN,))
    laid = tabulated_capacity(book, CableFamily.FLAT, "102", 2, 10)
    assert str(next(working(laid))) == (
        "It = 46 A  [BS 7671:2018+A4:2026, Table 4D5, the firm's copy]"
    )
    assert tabulated_capacity(book, CableFamily.FLAT, "102", 2, 6) == 35
    assert tabulated_capacity(PLAIN, CableFamily.FLAT, "102", 2, 10) == 47
    assert tabulated_capacity(book.plain(), CableFamily.FLAT, "102", 2, 10) == 46
    (change,) = book.changed()
    assert (change.packaged, change.override.value) == (47, 46)
    assert change.place.trust is Trust.MEMORY


def test_an_override_may_be_set_by_somebody_and_reaches_rows_taken_for_others():
    own = Override(
        "factors/ambient_air", (("insulation_c", 70), ("ambient_c", 35)), "factor", 0.93,
        SetBy("the firm", "its own copy, page 422"),
    )  # fmt: skip
    book = Book(keeps_working=True, overrides=(own,))
    (line,) = working(ambient_factor(book, 70, 33))
    assert str(line) == "Ca = 0.93  [the firm: its own copy, page 422]"


@pytest.mark.parametrize(
    "keys", [(("size_mm2", 10), ("method", "102"), ("loaded", 3)), (("size_mm2", 10),)]
)
def test_an_override_of_a_cell_that_is_not_there_is_refused(keys):
    book = Book(overrides=(Override(FLAT, keys, "capacity_a", 46.0, SetBy("the firm")),))
    with pytest.raises(InputError):
        tabulated_capacity(book, CableFamily.FLAT, "C", 2, 6)


def test_books_are_compared_by_identity():
    assert Book() != Book()
    assert len({PLAIN, PLAIN, Book()}) == 2


def test_numbers_of_a_book_survive_being_copied():
    kept = tabulated_capacity(KEPT, CableFamily.FLAT, "C", 2, 6)
    again = pickle.loads(pickle.dumps(kept))
    assert again == kept
    assert list(map(str, working(again))) == list(map(str, working(kept)))


def test_a_book_travels_without_its_tables():
    book = Book(keeps_working=True, overrides=(OWN,))
    laid = tabulated_capacity(book, CableFamily.FLAT, "102", 2, 10)
    sent = pickle.dumps(book)
    assert len(sent) < 1000
    assert tabulated_capacity(pickle.loads(sent), CableFamily.FLAT, "102", 2, 10) == laid


@pytest.mark.parametrize("number", ["", "1012", "9912345678903", "10123456789O3"])
def test_a_meter_point_of_nobody_is_refused(number):
    with pytest.raises(InputError, match=r"supply\.meter_point"):
        operator_of(number)


@pytest.mark.parametrize(
    ("on", "rate"), [(date(2024, 1, 31), None), (date(2027, 3, 31), 0), (date(2027, 4, 1), 0.05)]
)
def test_a_rate_holds_from_its_first_day_to_its_last(on, rate):
    if rate is None:
        with pytest.raises(OutOfTableError, match="2024-02-01 to 2027-03-31"):
            vat_rate(PLAIN, "battery, fitted", on)
    else:
        assert vat_rate(PLAIN, "battery, fitted", on) == rate
