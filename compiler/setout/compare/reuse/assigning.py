"""Which old piece serves as which new one: an assignment of copies, the most material first, then the least work.

A transportation problem, solved as a linear programme by HiGHS: its corners are whole numbers. First the material that
is saved is made the most it can be; then, among all the ways to save so much (those that use edges of reduced cost
nought alone, and fill every piece that has a price), the work is made the least.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

_SLIGHT = 1e-6


@dataclass(frozen=True)
class Edge:
    """`saves` material when one copy of `old` (an index) serves as `new`, at most `most` copies, `effort` each."""

    old: int
    new: int
    saves: float
    effort: float
    most: int


def assign(old: Sequence[int], new: Sequence[int], edges: Sequence[Edge]) -> list[int]:
    """How many copies go along each edge. `old`, `new`: how many copies there are of each."""
    if not edges:
        return []
    free = [(0, count) for count in (*old, *new)]
    prices, reduced, _ = _solved(free, [-e.saves for e in edges], edges, len(old), False)
    tight = [k for k, cost in enumerate(reduced) if abs(cost) < _SLIGHT]
    full = [(count if abs(price) > _SLIGHT else 0, count) for (_, count), price in zip(free, prices)]
    _, _, found = _solved(full, [edges[k].effort for k in tight], [edges[k] for k in tight], len(old), True)
    flows = [0] * len(edges)
    for k, flow in zip(tight, found):
        flows[k] = flow
    return flows


def _solved(
    rows: Sequence[tuple[int, int]], costs: Sequence[float], edges: Sequence[Edge], shift: int, bounded: bool
) -> tuple[list[float], list[float], list[int]]:
    """The rows' prices, the edges' reduced costs, and the flows. `bounded`: edges have bounds of their own too; the
    rows alone do when prices are asked for, so that every price is a row's."""
    from setout.plan.cutting.search.quiet import Quiet, highspy

    programme = Quiet()
    programme.setOptionValue("random_seed", 1)
    for low, high in rows:
        programme.addRow(float(low), float(high), 0, [], [])
    for cost, edge in zip(costs, edges):
        most = float(edge.most) if bounded else highspy.kHighsInf
        programme.addCol(cost, 0.0, most, 2, [edge.old, shift + edge.new], [1.0, 1.0])
    programme.run()
    found = programme.getSolution()
    return list(found.row_dual), list(found.col_dual), [round(x) for x in found.col_value]
