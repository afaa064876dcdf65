"""Sums of every column of every table, one plain and one weighted by the number of the row.

The weighted sum notices two cells that changed places; of texts it sums their characters. Run as
``python -m tests.tables.pin`` to write them anew.
"""

import csv
from functools import cache
from math import isinf
from pathlib import Path

from ampwright.tables.loader import table, table_names

PINS = Path(__file__).with_name("pins.csv")


@cache
def pins_now():
    """The sums as the tables are."""
    pins = {}
    for name in table_names():
        rows = list(table(name).rows.values())
        for column in table(name).card.columns:
            pins[name, column] = sums([_value(row, column) for row in rows])
        doubts = sum(n for n, row in enumerate(rows, 1) if row.place.doubtful)
        recalled = sum(n for n, row in enumerate(rows, 1) if row.place.trust.value == "memory")
        pins[name, "doubtful and memory"] = (str(len(rows)), str(doubts), str(recalled))
    return pins


@cache
def pins_on_file():
    """The sums as they were last written."""
    with PINS.open(encoding="utf-8", newline="") as file:
        return {(r["table"], r["column"]): (r["rows"], r["sum"], r["weighted"])
                for r in csv.DictReader(file)}  # fmt: skip


def sums(values):
    """How many, their sum, and their sum weighted by place."""
    weighted = sum(number * value for number, value in enumerate(values, 1))
    return str(len(values)), f"{sum(values):.6f}", f"{weighted:.6f}"


def _value(row, column):
    """A cell as a number: nought if empty, a million if it has no end, characters if it is text."""
    if column in row.numbers:
        value = row.numbers[column]
        return 1e6 if isinf(value) else value
    return float(sum(map(ord, row.texts.get(column, ""))))


if __name__ == "__main__":
    lines = sorted(",".join((*pin, *sums)) for pin, sums in pins_now().items())
    PINS.write_text("table,column,rows,sum,weighted\n" + "\n".join(lines) + "\n", encoding="utf-8")
