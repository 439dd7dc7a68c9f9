"""How the packet's pages are filled and headed, on both papers."""

from __future__ import annotations

import re

import pypdfium2
import pytest
from compiling import SPECS, compiled

from setout.write import assemblies, write
from setout.write.drawings import HEADING, SPARE, drawings
from setout.write.facts import facts
from setout.write.joinery.layout import lines_high
from setout.write.printing import pdf

SEWING = (SPECS / "sewing_wall.rod").read_text("utf-8")


@pytest.fixture(scope="module", params=["letter", "a4"])
def plan(request):
    return compiled(SEWING.replace("paper letter", f"paper {request.param}")).value


@pytest.fixture(scope="module")
def page(plan):
    return write(plan, frozenset({"html"}))["packet.html"].decode()


def printed(page: str, document: str) -> list[str]:
    """The text of each page of one document, printed alone. The printer has the fonts already."""
    head, rest = page[: page.index("<body>") + 6], page[page.index("<body>") :]
    head = re.sub(r"@font-face \{.*\}", "", head)
    title = re.search(r"<h1.*?</h1>", rest, re.S)[0]
    body = rest[rest.index(f'<section class="document" id="{document}"') :]
    end = body.find('<section class="document"', 1)
    made = pypdfium2.PdfDocument(pdf(f"{head}{title}{body[:end]}</body></html>"))
    return [sheet.get_textpage().get_text_range() for sheet in made]


def test_an_assembly_is_on_one_page_and_the_job_on_two_at_most(page):
    pages = printed(page, "assemblies")
    sheets = page.count('<section class="assembly">')
    assert sheets == 18 and len(pages) == sheets + 1
    heads = [re.search(r"(Assembly: .*|The job together)", text)[0].strip() for text in pages]
    assert len(set(heads)) == sheets  # no two bear the same title, but the job's second page


def test_assemblies_of_one_title_are_told_apart_by_their_names(plan):
    about = facts(plan, "00000000")
    made = assemblies.build(about, assemblies.groups(about), {}).sheets
    called = {sheet.names[0]: sheet.called for sheet in made if sheet.names}
    assert called["left base bay drawer 1"] == "left base bay drawer 1, 2"
    assert (called["left base"], called["fabric case"]) == ("left base", "")
    case = next(sheet for sheet in made if sheet.names == ("fabric case",))
    assert case.sub == ("drawer bay drawer 1–6", "tray bay drawer 1")


def test_the_head_of_a_page_of_boards_names_the_first_of_them(page):
    pages = printed(page, "joinery")
    tables, boards = pages[0], [text for text in pages if re.search(r"Joinery, from \w+\d", text)]
    assert "from" not in tables.partition("\n")[0] and len(boards) > 20
    for text in boards:
        mark = re.search(r"Joinery, from (\w+\d)", text)[1]
        assert re.search(r"^\W*(\w+\d) × \d+: ", text, re.M)[1] == mark


def test_a_narrow_board_worked_on_both_faces_takes_half_a_page(plan):
    """Its faces stand side by side where one below the other would be too high."""
    about = facts(plan, "00000000")
    made = drawings(about, (), lambda doing: "").pieces
    high = {mark: made[mark].height + lines_high(about.landings[mark]) for mark in ("C1", "C2", "C4", "C9", "C14")}
    assert max(high.values()) <= about.height / 2 - HEADING + SPARE, high
