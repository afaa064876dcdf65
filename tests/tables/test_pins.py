"""A second record of every column, so that a changed cell fails even if its card was renewed.

A pin that no longer holds means that a value changed: read it a second time against the document
on its card, then renew the pin with ``python -m tests.tables.pin``.
"""

import pytest

from .pin import PINS, pins_now, pins_on_file, sums


def test_every_column_is_pinned():
    assert pins_now().keys() == pins_on_file().keys()


@pytest.mark.parametrize("pin", sorted(pins_on_file()), ids="/".join)
def test_no_cell_has_changed(pin):
    assert pins_now()[pin] == pins_on_file()[pin]


def test_pins_are_in_order():
    lines = PINS.read_text("utf-8").splitlines()[1:]
    assert lines == sorted(lines)


@pytest.mark.parametrize("other", [[1.0, 2.5], [2.5, 1.0, 0.0], [2.5, 1.001]])
def test_a_changed_or_exchanged_cell_would_be_noticed(other):
    assert sums(other) != sums([2.5, 1.0])
