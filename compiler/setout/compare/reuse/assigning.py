"""Which old piece serves as which new one: an assignment of copies, the most material first, then the least work.

A transportation problem, solved as a linear programme by HiGHS: its corners are whole numbers. First the material that
is saved is made the most it can be; then, among all the ways to save so much (those that use no edge whose reduced cost
is above nought and all there is of one below, and fill every piece that has a price), the work is made the least.
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
    every = [(0, edge.most) for edge in edges]
    prices, reduced, _ = _solved(free, [-e.saves for e in edges], edges, every, len(old))
    tight = [k for k, cost in enumerate(reduced) if cost < _SLIGHT]
    full = [(count if abs(price) > _SLIGHT else 0, count) for (_, count), price in zip(free, prices)]
    some = [edges[k] for k in tight]
    bounds = [(edges[k].most if reduced[k] < -_SLIGHT else 0, edges[k].most) for k in tight]
    _, _, found = _solved(full, [edge.effort for edge in some], some, bounds, len(old))
    flows = [0] * len(edges)
    for k, flow in zip(tight, found):
        flows[k] = flow
    return flows


def _solved(
    rows: Sequence[tuple[int, int]],
    costs: Sequence[float],
    edges: Sequence[Edge],
    bounds: Sequence[tuple[int, int]],
    shift: int,
) -> tuple[list[float], list[float], list[int]]:
    """The rows' prices, the edges' reduced costs, and the flows. `rows`, `bounds`: the least and most copies."""
    from setout.plan.cutting.search.quiet import Quiet

    programme = Quiet()
    programme.setOptionValue("random_seed", 1)
    for low, high in rows:
        programme.addRow(float(low), float(high), 0, [], [])
    for cost, edge, (least, most) in zip(costs, edges, bounds):
        programme.addCol(cost, float(least), float(most), 2, [edge.old, shift + edge.new], [1.0, 1.0])
    programme.run()
    found = programme.getSolution()
    return list(found.row_dual), list(found.col_dual), [round(x) for x in found.col_value]
