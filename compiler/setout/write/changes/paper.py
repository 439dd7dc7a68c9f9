"""The change sheet on paper, to clip into the packet."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields
from math import sqrt

from setout.compare.model import Changes
from setout.plan.model import Plan
from setout.units import printed
from setout.write.changes.build import Names, build
from setout.write.changes.model import Sheet, Table
from setout.write.changes.views import Views, views
from setout.write.facts import facts
from setout.write.fonts import FAMILY, Embedded, embedded
from setout.write.packet.build import shortened
from setout.write.render import render

LINE = 95  # letters in a line as wide as the page
TICKED = 7  # letters' room for the boxes to tick
LONG = 60  # a longer cell is broken in any case


NO_REVISION = ""
"""A packet's hangs on its cutting plan too, and none is made for a comparison: no packet could be told by it."""


@dataclass(frozen=True)
class Page:
    """`widths_of`: by table, each column's share in percent; none where all cells have room. `mark` as text, with no
    unit."""

    sheet: Sheet
    widths_of: Mapping[str, tuple[int, ...]]
    views: Views
    short_title: str
    paper: str
    metric: bool
    mark: str
    family: str


def files(changes: Changes, names: Names, old: Plan, new: Plan, formats: frozenset[str]) -> Mapping[str, bytes]:
    """changes.pdf and changes.html, whichever is asked for ("pdf", "html"). The same plans give the same bytes."""
    page = _page(changes, names, old, new)
    return {f"changes.{name}": make(page) for name, make in _MAKERS if name in formats}


def _page(changes: Changes, names: Names, old: Plan, new: Plan) -> Page:
    before, after = (facts(plan, NO_REVISION) for plan in (old, new))
    sheet = build(changes, names)
    return Page(
        sheet=sheet,
        widths_of={table.id: _widths(table) for table in sheet.tables},
        views=views(changes, before, after),
        short_title=shortened(sheet.title),
        paper=after.project.paper,
        metric=after.style.metric,
        mark=printed(after.style.mark, after.style).text,
        family=FAMILY,
    )


def _widths(table: Table) -> tuple[int, ...]:
    """What can't be broken has room, and what is left goes by the longest cell and the usual one."""
    line = LINE - TICKED * bool(table.ticks)
    columns = [[_wide(head, row[n]) for row in table.rows] for n, head in enumerate(table.heads)]
    if sum(map(max, columns)) <= line:
        return ()
    least = [max(_longest(head, row[n]) for row in table.rows) + 2 for n, head in enumerate(table.heads)]
    wants = [sqrt(min(max(c), LONG) * sum(c) / len(c)) for c in columns]
    more = [max(want - need, 0.0) for want, need in zip(wants, least)]
    share = max(line - sum(least), 0) / (sum(more) or 1)
    close = min(1, line / sum(least))  # too much for one line: what is longest is broken after all
    return tuple(int(100 * close * (need + some * share) / LINE) for need, some in zip(least, more))


def _longest(head: str, cell: str) -> int:
    """What is printed on one line. `A4 × 2 → A7` is kept together."""
    if head == "Mark":
        return max(_wide(head, word) for word in cell.split(", "))
    return max(map(len, [head, *cell.split()]))


def _wide(head: str, text: str) -> int:
    """In letters of the usual size. Marks are bold and larger."""
    return len(text) * 4 // 3 if head == "Mark" else len(text)


def _html(page: Page) -> bytes:
    return _rendered(page, embedded(_rendered(page, ()))).encode("utf-8")


def _pdf(page: Page) -> bytes:
    from setout.write.printing import pdf

    return pdf(_rendered(page, ()))


def _rendered(page: Page, fonts: tuple[Embedded, ...]) -> str:
    data = {field.name: getattr(page, field.name) for field in fields(page)}
    return render("changes/page.html.j2", fonts=fonts, **data)


_MAKERS: tuple[tuple[str, Callable[[Page], bytes]], ...] = (("pdf", _pdf), ("html", _html))
