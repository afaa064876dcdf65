"""Numbers that keep their working, and plain numbers that do not."""

from __future__ import annotations

import pickle

from ampwright.foundations.quantity import Amperes, Ohms
from ampwright.foundations.source import Evidence, Place, Said, SetBy, Trust
from ampwright.foundations.working import Worked, computes, given, orphans, working

BOOK = Place("a book", "2018", "41.1", Trust.MEMORY)


@computes("Zs", "Ω", formula="Ze + R1R2", place=BOOK)
def loop(Ze: Ohms, R1R2: Ohms) -> Ohms:
    return Ohms(Ze + R1R2)


@computes("I", "A", formula="max(I) + s * (sum(I) - max(I))", place=BOOK)
def sockets(I: tuple[Amperes, ...], s: float) -> Amperes:
    return Amperes(max(I) + s * (sum(I) - max(I)))


def said(symbol: str, value: float) -> Ohms:
    return given(symbol, Ohms(value), "Ω", Said("supply.ze_ohm", Evidence.SEEN, "photo 2"))


def test_plain_in_gives_plain_out() -> None:
    assert type(loop(Ohms(0.35), Ohms(0.12))) is float


def test_any_working_in_gives_working_out() -> None:
    Zs = loop(said("Ze", 0.35), Ohms(0.12))
    assert type(Zs) is Worked
    assert orphans(Zs) == [0.12]


def test_keywords_keep_their_places() -> None:
    made = loop(R1R2=said("R1R2", 0.12), Ze=said("Ze", 0.35))
    assert str(list(working(made))[-1]).startswith("Zs = Ze + R1R2 = 0.35 + 0.12 = 0.47 Ω")


def test_a_tuple_of_inputs_is_followed_number_by_number() -> None:
    points = (given("I", Amperes(15.0), "A", SetBy("test")), Amperes(10.0))
    made = sockets(points, 0.4)
    assert orphans(made) == [10.0, 0.4]
    line = list(working(made))[-1]
    assert line.numbers == "max(15, 10) + 0.4 * (sum(15, 10) - max(15, 10))"
    assert line.result == "19"


def test_working_survives_a_copy_through_pickle() -> None:
    made = pickle.loads(pickle.dumps(loop(said("Ze", 0.35), said("R1R2", 0.12))))
    assert [str(line) for line in working(made)] == [
        str(line) for line in working(loop(said("Ze", 0.35), said("R1R2", 0.12)))
    ]


def test_a_number_used_twice_is_printed_once() -> None:
    shared = said("Ze", 0.35)
    assert len(list(working((loop(shared, shared), shared)))) == 2


def test_trust_prints_unless_published() -> None:
    assert str(BOOK) == "a book, 2018, 41.1 (memory)"
    row = BOOK.at_row("6 mm²", Trust.PUBLISHED)
    assert str(row) == "a book, 2018, 41.1, 6 mm²"


def test_a_colon_belongs_to_the_number_of_a_standard() -> None:
    assert Place("BS 7671", "2018+A2:2022").name == "BS 7671:2018+A2:2022"
    assert Place("EREC G100", "Issue 2").name == "EREC G100, Issue 2"
    assert Place("Approved Document S", "2021").name == "Approved Document S, 2021"
    assert Place("a handbook").name == "a handbook"
