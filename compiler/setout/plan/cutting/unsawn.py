"""Cuts that the shop can't make."""

from __future__ import annotations

from collections.abc import Sequence

from setout.diagnostics import Diagnostic
from setout.plan.cutting import problems
from setout.plan.cutting.saws import able
from setout.plan.cutting.sequence.model import blanks
from setout.plan.cutting.sequence.order import Failed
from setout.resolve.model import Project
from setout.units import Style


def no_saw_for(project: Project, failed: Sequence[Failed]) -> list[Diagnostic]:
    """One warning a stock: the boards that hang on cuts no saw can make."""
    style = Style(project.metric, project.mark)
    of: dict[str, list[Failed]] = {}
    for one in failed:
        of.setdefault(one.board.bench.source.stock.name, []).append(one)
    found = []
    for several in of.values():
        stock = several[0].board.bench.source.stock
        marks = tuple(dict.fromkeys(blank.mark for one in several for blank in blanks(one.part)))
        saws = able(project.saws, stock)
        found.append(
            problems.no_saw(
                style, stock, marks, several[0].cut, several[0].board.extent, len(several), saws, stock.span
            )
        )
    return found
