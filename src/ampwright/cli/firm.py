"""``ampwright firm``: the firm's own data files, to be changed."""

from __future__ import annotations

from pathlib import Path

from ampwright.actions.firm_files import write_firm
from ampwright.actions.json_shape import json_of

from .common import AsJson
from .sheet import Sheet, marked


def firm(folder: Path, /, *, json: AsJson = False) -> None:
    """Write the shipped data of a firm into a folder, to be made the firm's own.

    Rates, prices, times, equipment, rules, operators; and a file for cells that the firm has
    read in its own copies of the published tables. A file that is there already stays as it is.
    Name the folder with --firm from then on. The limits of the law are not among them.

    Parameters
    ----------
    folder
        Where to write; made if it is not there.
    json
        As JSON, for a program.
    """
    found = write_firm(folder)
    if json:
        print(json_of(found))
        return
    sheet = Sheet()
    sheet.rows(
        (
            (each.path, each.about, marked("there already", "quiet") if each.there else "written")
            for each in found
        ),
        (22, None, 14),
        0,
    )
    sheet.gap()
    sheet.say(f"Change them, then say --firm {folder}", "quiet")
    sheet.show()
