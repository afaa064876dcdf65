"""The project's files name no package host, no one machine's folders and no outside notes."""

from __future__ import annotations

import re

import pytest

from .tree import texts

# Names kept for examples by RFC 2606, this machine, and schema or licence identifiers that nothing
# ever fetches.
HARMLESS = re.compile(
    r"(www\.)?example\.(com|org|net)|.*\.(example|invalid|test)|localhost|127\.0\.0\.1"
    r"|json-schema\.org|www\.w3\.org|www\.apache\.org|ns\.adobe\.com"
)
LICENCE = re.compile(r"(LICENSE|OFL)[^/]*$")
ADDRESS = re.compile(r"[a-z]+://([\w.-]+)|\b((?:[a-z0-9-]+\.)+(?:org|com|io))\b")
OUTSIDE = {
    "a folder of one machine": r"(?<![\w./])/(?:work|tmp|root|opt|mnt|Users|home/\w+)/\w",
    "notes kept elsewhere": r"\bshared[/](?:design|style|stack|look|reference|homes)|\bS\d\d\b",
    "how the work was organised": r"\bCE[O]\b|\bsub-?agen[t]s?\b|\bchat-?bo[t]s?\b|\bLL[M]s?\b",
}


def lines():
    for place, text in texts().items():
        if LICENCE.search(place):
            continue  # its words are not ours to change
        for number, line in enumerate(text.splitlines(), 1):
            yield f"{place}:{number}", line


def test_no_host_is_named():
    named = [
        f"{place} {host}"
        for place, line in lines()
        for match in ADDRESS.finditer(line)
        if not HARMLESS.fullmatch(host := match[1] or match[2])
    ]
    assert not named


@pytest.mark.parametrize("pattern", OUTSIDE.values(), ids=OUTSIDE)
def test_nothing_points_outside(pattern):
    assert not [f"{place} {line}" for place, line in lines() if re.search(pattern, line)]


@pytest.mark.parametrize(
    "line", ["see https://{}.net/x", "git+ssh://{}/a", "from {}.io", "{}.org:"]
)
def test_a_host_would_be_found(line):
    match = ADDRESS.search(line.format("somewhere"))
    assert match
    assert not HARMLESS.fullmatch(match[1] or match[2])
