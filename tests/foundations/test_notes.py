"""What is only told keeps what it is about, and is put in words when somebody reads it."""

from __future__ import annotations

from ampwright.foundations.checks import Outcome, verdict
from ampwright.foundations.notes import Note, tells
from ampwright.foundations.quantity import Metres
from ampwright.foundations.source import Place
from ampwright.foundations.stages import Made
from ampwright.foundations.working import given

AT = Place("example")
WRITTEN: list[str] = []


@tells(AT)
def reads(what: str, length: Metres) -> str:
    """Say how long something is."""
    WRITTEN.append(what)
    return f"{what} is {length:g} m long"


@tells(AT, caution=True)
def see_to(what: str) -> str:
    """Ask somebody to see to something."""
    return f"see to {what}"


class TestNote:
    def test_is_put_in_words_only_when_read(self):
        WRITTEN.clear()
        note = reads("the wall", Metres(3.0))
        assert WRITTEN == []
        assert note.says == "the wall is 3 m long"
        assert WRITTEN == ["the wall"]

    def test_only_what_is_to_be_seen_to_is_a_caution(self):
        assert reads("the wall", Metres(3.0)).caution == ""
        assert see_to("the wall").caution == "see to the wall"

    def test_is_the_same_about_the_same(self):
        assert reads("the wall", Metres(3.0)) == reads("the wall", length=Metres(3.0))
        assert reads("the wall", Metres(3.0)) != reads("the wall", Metres(4.0))
        assert hash(see_to("it")) == hash(see_to("it"))

    def test_keeps_the_numbers_whose_working_is_printed(self):
        length_m = given("L", Metres(3.0), "m", AT)
        assert reads("the wall", length_m).numbers == (length_m,)
        assert reads("the wall", Metres(3.0)).numbers == ()

    def test_says_its_name_and_place(self):
        telling = see_to("it").telling
        assert (telling.id, telling.place) == ("see_to", AT)


def test_nothing_is_judged_by_a_note():
    made = Made(None, notes=(see_to("it"),))
    assert isinstance(made.notes[0], Note)
    assert verdict(made.checks) is Outcome.PASS
