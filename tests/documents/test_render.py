"""The renderer: same in, same bytes out; archival and accessible marks; loud about faults."""

from __future__ import annotations

import io
import json
import os
import subprocess
import sys
import time
from dataclasses import replace
from datetime import date
from hashlib import sha256

import pypdf
import pytest

from ampwright.documents import render as renderer
from ampwright.documents.render import PaperError, render, spread, templates
from ampwright.foundations.errors import InputError, NotFoundError

from ..code_rules.tree import ROOT
from . import sample

STAMP = date(2026, 11, 25)
WARM_LIMIT_S = 0.7  # the time a paper may take


@pytest.fixture(scope="module")
def made() -> bytes:
    return render("options_and_working", sample.paper(), stamp=STAMP)


@pytest.fixture(scope="module")
def pdf(made) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(made))


def test_same_content_and_date_give_the_same_bytes(made):
    assert render("options_and_working", sample.paper(), stamp=STAMP) == made


def test_another_process_gives_the_same_bytes(made):
    say = (
        "from tests.documents.test_render import *; from hashlib import sha256;"
        "print(sha256(render('options_and_working', sample.paper(), stamp=STAMP)).hexdigest())"
    )
    env = {**os.environ, "PYTHONHASHSEED": "7", "TZ": "Pacific/Auckland"}
    shown = subprocess.run(
        [sys.executable, "-c", say], cwd=ROOT, env=env, capture_output=True, text=True, check=True
    )
    assert shown.stdout.strip() == sha256(made).hexdigest()


def test_another_date_gives_other_bytes(made):
    assert render("options_and_working", sample.paper(), stamp=date(2026, 11, 26)) != made


def test_quick_once_warm(made):
    assert made
    times = []
    for reference in ("a", "b", "c"):  # a fresh paper each time: the setter remembers old ones
        paper = replace(sample.paper(), home=replace(sample.HOME, reference=reference))
        began = time.perf_counter()
        render("options_and_working", paper, stamp=STAMP)
        times.append(time.perf_counter() - began)
    assert min(times) < WARM_LIMIT_S


def test_content_travels_inside(pdf):
    (held,) = pdf.attachments["content.json"]
    assert json.loads(held) == spread(sample.paper())


def test_claims_the_archival_and_the_accessible_profile(pdf):
    about = pdf.metadata
    assert about is not None
    assert about.title == "Options and working: 14 Quillbrook Close, Sandermere"
    catalogue = pdf.root_object
    described = catalogue["/Metadata"].get_data().decode()
    for claim in ("pdfaid:part>3<", "pdfaid:conformance>A<", "pdfuaid:part>1<"):
        assert claim in described
    assert catalogue["/Lang"] == "en-GB"
    assert catalogue["/MarkInfo"]["/Marked"]


def structure(node):
    """Every element of the structure tree."""
    node = node.get_object()
    if isinstance(node, list):
        for each in node:
            yield from structure(each)
    elif isinstance(node, dict):
        yield node
        if "/K" in node:
            yield from structure(node["/K"])


def test_every_formula_and_figure_is_described(pdf):
    elements = list(structure(pdf.root_object["/StructTreeRoot"]))
    kinds = [element.get("/S") for element in elements]
    assert kinds.count("/Formula") >= 8
    for element in elements:
        if element.get("/S") in ("/Formula", "/Figure"):
            assert element.get("/Alt")


def test_only_shipped_faces_are_inside(pdf):
    names = {
        font.get_object()["/BaseFont"].partition("+")[2]
        for page in pdf.pages
        for font in page["/Resources"]["/Font"].values()
    }
    assert names
    assert all(name.startswith(("AtkinsonHyperlegibleNext", "AmpwrightSigns")) for name in names)


def test_an_unknown_paper_names_the_known():
    with pytest.raises(NotFoundError, match="options_and_working"):
        render("lettre", sample.paper(), stamp=STAMP)
    assert "options_and_working" in templates()


def test_a_letter_no_face_holds_is_refused_with_its_place():
    paper = replace(sample.paper(), home=replace(sample.HOME, customer="田中"))
    with pytest.raises(InputError, match=r"home\.customer .*U\+4E2D.*Latin"):
        render("options_and_working", paper, stamp=STAMP)


@pytest.mark.parametrize(
    ("template", "fault"),
    [
        ('#set text(font: ("Ampwright Signs", "Nowhere Sans"))\nx', "unknown font family"),
        ("#nothing", "unknown variable"),
        ('#image("missing.svg", alt: "x")', "not found"),
        ("= \n#set document(title: [x])\n", "heading"),
    ],
)
def test_a_faulty_template_is_loud(template, fault, tmp_path, monkeypatch):
    (tmp_path / "bad").mkdir()
    place = tmp_path / "bad" / "template.typ"
    place.write_text('#set document(title: [t])\n#set text(font: "Ampwright Signs")\n' + template)
    monkeypatch.setattr(renderer, "ROOT", tmp_path)
    with pytest.raises(PaperError, match=fault):
        renderer.typeset(place, {}, STAMP)


def test_a_drawing_is_set_with_its_description():
    from ampwright.documents.options_and_working.content import Picture

    svg = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 3"><path d="M0 1h9"/></svg>'
    picture = Picture("line", "From meter to point", "One line from the meter to the point", 120)
    made = render(
        "options_and_working", replace(sample.paper(), pictures=(picture,)),
        drawings={"line": svg}, stamp=STAMP,
    )  # fmt: skip
    tree = pypdf.PdfReader(io.BytesIO(made)).root_object["/StructTreeRoot"]
    described = [element.get("/Alt") for element in structure(tree)]
    assert "One line from the meter to the point" in described


def test_nothing_heavy_is_loaded_before_a_paper_is_asked_for():
    say = "import sys, ampwright.documents.render; print('typst' in sys.modules)"
    shown = subprocess.run(
        [sys.executable, "-c", say], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert shown.stdout.strip() == "False"
