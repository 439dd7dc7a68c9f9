"""The packet: every document that this job calls for, in the order of the shop."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from setout.units import Style, printed
from setout.write import (
    assemblies,
    build_order,
    buy_list,
    cautions,
    cutting,
    drawers,
    installing,
    job_sheet,
    joinery,
    pieces,
    to_measure,
    weights,
)
from setout.write.assemblies import Group
from setout.write.drawings import Drawings
from setout.write.facts import Facts
from setout.write.fonts import FAMILY

SHORT = 56  # letters of the title that a page's head has room for


@dataclass(frozen=True)
class Made:
    """What the documents are built from."""

    facts: Facts
    groups: tuple[Group, ...]
    drawings: Drawings


@dataclass(frozen=True)
class Document:
    """`build` gives the template's data, or None when the job has no use for the document."""

    id: str
    template: str
    build: Callable[[Made], Any]


@dataclass(frozen=True)
class Bound:
    id: str
    template: str
    data: Any


DOCUMENTS = (
    Document("job-sheet", "job_sheet/page.html.j2", lambda m: job_sheet.build(m.facts, m.drawings.job)),
    Document("buy-list", "buy_list/page.html.j2", lambda m: buy_list.build(m.facts)),
    Document("cutting", "cutting/page.html.j2", lambda m: cutting.build(m.facts, m.drawings.cutting)),
    Document("pieces", "pieces/page.html.j2", lambda m: pieces.build(m.facts)),
    Document("joinery", "joinery/page.html.j2", lambda m: joinery.build(m.facts, m.drawings.pieces)),
    Document("build-order", "build_order/page.html.j2", lambda m: build_order.build(m.facts, m.drawings.order)),
    Document(
        "assemblies", "assemblies/page.html.j2", lambda m: assemblies.build(m.facts, m.groups, m.drawings.exploded)
    ),
    Document("drawers", "drawers/page.html.j2", lambda m: drawers.build(m.facts, m.drawings.banks)),
    Document("installing", "installing/page.html.j2", lambda m: installing.build(m.facts, m.drawings.room)),
    Document("weights", "weights/page.html.j2", lambda m: weights.build(m.facts)),
    Document("to-measure", "to_measure/page.html.j2", lambda m: to_measure.build(m.facts)),
    Document("cautions", "cautions/page.html.j2", lambda m: cautions.build(m.facts)),
)


@dataclass(frozen=True)
class Packet:
    """`short_title` for the head of a page; `mark` as text, with no unit."""

    title: str
    short_title: str
    revision: str
    paper: str
    metric: bool
    unit: str
    mark: str
    family: str
    documents: tuple[Bound, ...]


def build(made: Made) -> Packet:
    facts = made.facts
    bound = (Bound(document.id, document.template, document.build(made)) for document in DOCUMENTS)
    title = facts.project.title
    return Packet(
        title=title,
        short_title=shortened(title),
        revision=facts.revision,
        paper=facts.project.paper,
        metric=facts.style.metric,
        unit=facts.unit,
        mark=_mark(facts.style),
        family=FAMILY,
        documents=tuple(document for document in bound if document.data is not None),
    )


def shortened(title: str) -> str:
    """As much of a title as a page's head has room for."""
    return title if len(title) <= SHORT else title[: SHORT - 1].rstrip() + "…"


def _mark(style: Style) -> str:
    return printed(style.mark, style).text


__all__ = ["DOCUMENTS", "Bound", "Document", "Made", "Packet", "build", "shortened"]
