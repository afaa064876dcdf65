"""How a symbol of the book is set: a letter with a lowered rest, or plain words."""

from __future__ import annotations

import re
from typing import TypeAlias, Union

Drawn: TypeAlias = Union[str, "tuple[Drawn, ...]"]
"""Text, or a node whose first item says what it is.

``("row", …)`` pieces one after another; ``("sub", base, lowered)``; ``("sup", base, raised)``;
``("over", top, below)`` a fraction; ``("root", under)`` a square root.
"""

OWN_WAY: dict[str, Drawn] = {
    "R1R2": ("row", "(", ("sub", "R", "1"), " + ", ("sub", "R", "2"), ")"),
    "dU": "ΔU",
    "dU_share": "ΔU",
    "I_dn": ("sub", "I", "Δn"),
    "Idn": ("sub", "I", "Δn"),
    "Idn_a": ("sub", "I", "Δn"),
    "I2t": ("row", ("sup", "I", "2"), "t"),
    "RA": ("sub", "R", "A"),
    "IRA": ("sub", "I", "RA"),
    "IN": ("sub", "I", "N"),
    "a20": ("sub", "α", "20"),
    "IΔn": ("sub", "I", "Δn"),
    "kt": ("sub", "k", "t"),
    "kz": ("sub", "k", "z"),
    "tfull": ("sub", "t", "full"),
    "tneed": ("sub", "t", "need"),
    "eta": "η",
    "lam": "λ",
    "rho": "ρ",
    "mv": "mV",
}
"""Symbols that the general rule would set wrongly."""

UNIT_ENDINGS = (
    "ohm_per_km", "ohms", "ohm", "amps", "a", "ma", "ka", "v", "mv", "kw", "kwh", "w", "m", "mm",
    "mm2", "km", "s", "ms", "h", "min", "c", "p", "pence", "share",
)  # fmt: skip
LETTER_AND_REST = re.compile(r"([A-Z])([a-z0-9][a-zA-Z0-9]{0,6})$|([a-z])(\d+)$")
NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_]*")
BARE = re.compile(r"[A-Za-z0-9.]+")
RELATION = tuple("≤≥=<>×+−/")
LONGEST_RUN_ON = 3
"""So many lowered letters may follow theirs without a space when written on one line."""


def symbol(name: str) -> Drawn:
    """Set one name of a formula.

    Examples
    --------
    >>> symbol("Ib"), symbol("Zs_max"), symbol("r1"), symbol("house_limit_a")
    (('sub', 'I', 'b'), ('sub', 'Z', 's max'), ('sub', 'r', '1'), 'house limit')
    """
    if name in OWN_WAY:
        return OWN_WAY[name]
    first, rest = split(name)
    if first in OWN_WAY:
        return lowered_more(OWN_WAY[first], rest)
    found = LETTER_AND_REST.match(first)
    if found is None:
        if len(first) == 1 and rest:
            return ("sub", first, rest)
        return f"{first} {rest}".strip()
    base, lowered = (found[1], found[2]) if found[1] else (found[3], found[4])
    return ("sub", base, f"{lowered} {rest}".strip())


def lowered_more(node: Drawn, rest: str) -> Drawn:
    """Add to what stands lowered behind a symbol.

    Examples
    --------
    >>> lowered_more(("sub", "R", "A"), "max")
    ('sub', 'R', 'A max')
    """
    if not rest:
        return node
    if node[0] == "sub" and isinstance(node[2], str):
        return ("sub", node[1], f"{node[2]} {rest}")
    return ("sub", node, rest)


def split(name: str) -> tuple[str, str]:
    """Part a name at its first low line and drop the unit it ends in.

    Examples
    --------
    >>> split("Zs_max"), split("house_limit_a"), split("Ipf_ka"), split("RA_ohm")
    (('Zs', 'max'), ('house', 'limit'), ('Ipf', ''), ('RA', ''))
    """
    for ending in UNIT_ENDINGS:
        if name.endswith(f"_{ending}"):
            name = name.removesuffix(f"_{ending}")
            break
    first, _, rest = name.strip("_").partition("_")
    return first, rest.replace("_", " ")


def plain(node: Drawn) -> str:
    """Write a drawn piece on one line, as a voice or a copy would have it.

    Examples
    --------
    >>> plain(("over", ("row", "0.95 × ", ("sub", "U", "0")), ("row", "m × ", ("sub", "I", "n"))))
    '(0.95 × U0) / (m × In)'
    """
    if isinstance(node, str):
        return node
    kind, parts = node[0], [plain(part) for part in node[1:]]
    if kind == "row":
        return "".join(parts)
    if kind == "over":
        return " / ".join(part if whole(part) else f"({part})" for part in parts)
    if kind == "root":
        return f"√{parts[0]}" if BARE.fullmatch(parts[0]) else f"√({parts[0]})"
    if kind == "sup":
        raised = parts[1].translate(str.maketrans("0123456789-−", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁻"))
        return parts[0] + raised
    between = " " if len(parts[1].split()[0]) > LONGEST_RUN_ON else ""
    return f"{parts[0]}{between}{parts[1]}"


def whole(text: str) -> bool:
    """Say whether a piece of text needs no brackets around it.

    Examples
    --------
    >>> whole("1000"), whole("(a + b)"), whole("a × b"), whole("(a) + (b)")
    (True, True, False, False)
    """
    if not text.startswith("(") or not text.endswith(")"):
        return not any(sign in text for sign in " ×−+/")
    depth = 0
    for at, letter in enumerate(text):
        depth += (letter == "(") - (letter == ")")
        if depth == 0 and at < len(text) - 1:
            return False
    return True


def words(text: str) -> Drawn:
    """Set a requirement in words: symbols beside a relation, and names with a low line.

    A short word beside a relation is taken for a symbol only if it looks like one.

    Examples
    --------
    >>> plain(words("Zs_max >= Zs")), words("In a bath room, no point")
    ('Zs max ≥ Zs', 'In a bath room, no point')
    """
    tidy = text.replace(">=", "≥").replace("<=", "≤").replace(" * ", " × ").replace(" - ", " − ")
    pieces: list[Drawn] = []
    done = 0
    for found in NAME.finditer(tidy):
        drawn = symbol(found[0])
        if drawn == found[0] or not (marked(found[0]) or beside_relation(tidy, found)):
            continue
        pieces += [tidy[done : found.start()], drawn]
        done = found.end()
    if not pieces:
        return tidy
    return ("row", *(piece for piece in (*pieces, tidy[done:]) if piece))


def marked(name: str) -> bool:
    """Say whether a name could not be an English word."""
    return "_" in name or name in OWN_WAY


def beside_relation(text: str, found: re.Match[str]) -> bool:
    """Say whether a relation, an operator or a factor stands next to a short name.

    Examples
    --------
    >>> plain(words("I2 ≤ 1.45 Iz")), words("In ≤ Iz")[1]
    ('I2 ≤ 1.45 Iz', ('sub', 'I', 'n'))
    """
    if len(found[0]) > LONGEST_RUN_ON + 1:
        return False
    before, after = text[: found.start()].rstrip(), text[found.end() :].lstrip()
    return before[-1:].isdigit() or before.endswith(RELATION) or after.startswith(RELATION)
