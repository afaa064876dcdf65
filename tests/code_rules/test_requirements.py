"""The pins fit the declaration, each other, and any mirror."""

from __future__ import annotations

import re
import tomllib

import pytest

from .tree import ROOT

FILES = ("installer", "runtime", "dev")
DECLARED = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))


def pins(name: str) -> dict[str, set[str]]:
    """The versions pinned for each package, which may differ by version of Python."""
    text = (ROOT / "requirements" / f"{name}.txt").read_text(encoding="utf-8")
    found: dict[str, set[str]] = {}
    for package, version in re.findall(r"^([a-z0-9._-]+)==(\S+)", text, flags=re.MULTILINE):
        found.setdefault(package, set()).add(version)
    return found


@pytest.mark.parametrize("name", FILES)
def test_every_line_is_a_pin_or_a_hash(name):
    for line in (ROOT / "requirements" / f"{name}.txt").read_text(encoding="utf-8").splitlines():
        assert re.fullmatch(
            r"[a-z0-9._-]+==[\w.]+( ; [^:/]+)? \\|    --hash=sha256:[0-9a-f]{64}( \\)?", line
        )


def test_the_tools_stand_on_the_same_pins_as_the_program():
    assert pins("runtime").items() <= pins("dev").items()


@pytest.mark.parametrize(
    ("wanted", "name"),
    [
        (DECLARED["project"]["dependencies"], "runtime"),
        (DECLARED["dependency-groups"]["dev"], "dev"),
    ],
    ids=["runtime", "dev"],
)
def test_everything_declared_is_pinned(wanted, name):
    assert {re.match(r"[\w.-]+", requirement)[0] for requirement in wanted} <= pins(name).keys()


def test_the_build_backend_is_the_one_inside_the_pinned_uv():
    low, high = re.findall(r"\d+\.\d+", *DECLARED["build-system"]["requires"])
    (version,) = pins("installer")["uv"]
    major, minor = map(int, version.split(".")[:2])
    assert (low, high) == (f"{major}.{minor}", f"{major}.{minor + 1}")
