"""The packet as paper and as a page: complete, safe, the same every time."""

from __future__ import annotations

import re
from collections import Counter
from html.parser import HTMLParser

import pypdfium2
import pytest
from sample import plan

from setout.write import FORMATS, write


@pytest.fixture(scope="module")
def made():
    return write(plan("Ann's <b>bench</b> & more"), frozenset(FORMATS))


@pytest.fixture(scope="module")
def page(made):
    return made["packet.html"].decode()


def test_same_plan_same_bytes(made):
    assert write(plan("Ann's <b>bench</b> & more"), frozenset(FORMATS)) == made


def test_only_what_was_asked_for_is_made():
    assert list(write(plan(), frozenset({"csv"}))) == ["cutlist.csv", "buy.csv"]


def test_every_document_that_the_job_calls_for_is_bound(page):
    ids = re.findall(r'<section class="document" id="([^"]*)"', page)
    assert ids == ["job-sheet", "pieces", "joinery", "build-order", "assemblies", "to-measure", "cautions"]


def test_text_of_the_spec_is_escaped(page):
    assert "<b>bench</b>" not in page
    assert "<title>Ann&#39;s &lt;b&gt;bench&lt;/b&gt; &amp; more</title>" in page


def test_the_page_stands_alone(page):
    """No script, nothing to fetch, no id twice."""
    found = _Seen()
    found.feed(page)
    assert not found.tags & {"script", "link", "img", "iframe", "object"}
    assert all(address.startswith(("#", "data:")) for address in found.addresses)
    assert not [i for i, n in Counter(found.ids).items() if n > 1]
    assert set(re.findall(r"url\((\w+):", page)) == {"data"}


class _Seen(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.tags: set[str] = set()
        self.addresses: list[str] = []
        self.ids: list[str] = []

    def handle_starttag(self, tag, attrs):
        self.tags.add(tag)
        self.addresses += [v for k, v in attrs if k in ("src", "href", "xlink:href", "action") and v]
        self.ids += [v for k, v in attrs if k == "id" and v]


def test_a_tick_box_for_each_board(page):
    """Two boards of B1: two boxes in its row of the cut list; fourteen loose ones: a tally instead."""
    pieces = page[page.index('id="pieces"') : page.index('id="joinery"')]
    found = (row for row in re.findall(r"<tr>(.*?)</tr>", pieces, re.S) if 'td class="mark"' in row)
    rows = {re.search(r'class="mark">(\w+)<', row)[1]: row for row in found}
    assert rows["B1"].count('class="tick"') == 2
    assert "of 14" in rows["A3"] and 'class="tick"' not in rows["A3"]


def test_a_held_size_is_a_formula_with_a_blank(page):
    assert "12" in page and "− bed" in page
    assert 'Don’t cut <b class="n">A2</b> to size before' in page


def test_pdf_pages_carry_title_document_number_and_revision(made):
    pdf = pypdfium2.PdfDocument(made["packet.pdf"])
    revision = re.search(rb'"revision": "(\w+)"', made["job.json"])[1].decode()
    for number, sheet in enumerate(pdf, 1):
        text = sheet.get_textpage().get_text_range()
        assert f"page {number} of {len(pdf)}" in text
        assert f"revision {revision}" in text
    assert pdf.get_metadata_dict()["Title"] == "Ann's <b>bench</b> & more"


def test_pdf_has_no_dates_and_bundled_fonts_alone(made):
    data = made["packet.pdf"]
    assert b"/CreationDate" not in data and b"/ModDate" not in data
    names = {n for n in re.findall(rb"/FontName\s*/([^\s/]+)", data)}
    assert all(b"IBM-Plex-Sans-Condensed" in n for n in names)


def test_no_printing_smaller_than_nine_points(made):
    pdf = pypdfium2.PdfDocument(made["packet.pdf"])
    sizes = {round(size, 1) for sheet in pdf for size in _sizes(sheet)}
    assert min(sizes) >= 9


def _sizes(sheet):
    """Effective font size of every character on a page, drawings included."""
    text = sheet.get_textpage()
    raw = pypdfium2.raw
    for i in range(text.count_chars()):
        matrix = raw.FS_MATRIX()
        raw.FPDFText_GetMatrix(text, i, matrix)
        scale = (matrix.a**2 + matrix.b**2) ** 0.5
        if raw.FPDFText_GetUnicode(text, i) > 32:
            yield raw.FPDFText_GetFontSize(text, i) * scale


@pytest.mark.parametrize(("paper", "size"), [("letter", (612, 792)), ("a4", (595, 842))])
def test_paper(paper, size):
    made = write(plan(paper=paper), frozenset({"pdf"}))
    assert tuple(round(n) for n in pypdfium2.PdfDocument(made["packet.pdf"])[0].get_size()) == size
