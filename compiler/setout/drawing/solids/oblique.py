"""The cabinet maker's oblique: the front square on, depth running up to the right at half its length (a 3-4-5 slope).

Top and right faces show besides the front. What is hidden is worked out, not painted over: for every edge the stretches
that some block lies in front of.
"""

from __future__ import annotations

from collections.abc import Sequence

from setout.drawing.solids.solid import P3, Block

ACROSS, UP = 0.4, 0.3  # what one unit of depth moves a point on the page
TOWARD = (ACROSS, UP, -1.0)  # the direction from a point to the eye

_SKIN = 1e-6  # blocks are taken this much smaller, so that an edge is not hidden by its own faces
Flat = tuple[float, float]


def flat(p: P3) -> Flat:
    """A point on the page, in the solid's unit, y upwards."""
    return p[0] + ACROSS * p[2], p[1] + UP * p[2]


def bounds(block: Block) -> tuple[float, float, float, float]:
    """Left, low, right, high of the block on the page."""
    left, low = flat(block.lo)
    right, high = flat(block.hi)
    return left, low, right, high


def visible(
    a: P3, b: P3, blocks: Sequence[Block], rims: Sequence[tuple[float, float, float, float]]
) -> list[tuple[float, float]]:
    """The stretches of the line from `a` (0) to `b` (1) that no block hides. `rims` holds each block's `bounds`."""
    (ax, ay), (bx, by) = flat(a), flat(b)
    left, right, low, high = min(ax, bx), max(ax, bx), min(ay, by), max(ay, by)
    hidden = []
    for block, rim in zip(blocks, rims):
        if (rim[0] < right and left < rim[2] and rim[1] < high and low < rim[3]) or _inside(
            rim, left, right, low, high
        ):
            found = shadow(a, b, block)
            if found:
                hidden.append(found)
    return _rest(hidden)


def _inside(rim: tuple[float, float, float, float], left: float, right: float, low: float, high: float) -> bool:
    """For lines along an axis of the page, whose own rectangle has no width."""
    return rim[0] <= left and right <= rim[2] and rim[1] <= high and low <= rim[3]


def shadow(a: P3, b: P3, block: Block) -> tuple[float, float] | None:
    """Between which t the point a + t (b - a) has the block in front of it.

    The point moved by s towards the eye is inside when lo < p + t d + s v < hi on every axis and s > 0. Every lower
    bound on s must lie below every upper bound, which leaves bounds on t alone.
    """
    over: list[tuple[float, float]] = [(0.0, 0.0)]  # s > m + n t
    under: list[tuple[float, float]] = []  # s < m + n t
    for k in range(3):
        lo, hi = block.lo[k] + _SKIN, block.hi[k] - _SKIN
        if lo >= hi:
            return None
        n = -(b[k] - a[k]) / TOWARD[k]
        m1, m2 = (lo - a[k]) / TOWARD[k], (hi - a[k]) / TOWARD[k]
        over.append((min(m1, m2), n))
        under.append((max(m1, m2), n))
    start, end = 0.0, 1.0
    for m1, n1 in over:
        for m2, n2 in under:
            m, n = m2 - m1, n2 - n1  # m + n t > 0
            if n > 1e-12:
                start = max(start, -m / n)
            elif n < -1e-12:
                end = min(end, -m / n)
            elif m <= 0:
                return None
    return (start, end) if start < end else None


def _rest(hidden: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """0 to 1 less the hidden stretches; slits narrower than the skin stay shut."""
    out, at = [], 0.0
    for start, end in sorted(hidden):
        if start > at + 1e-4:
            out.append((at, start))
        at = max(at, end)
    if at < 1 - 1e-4:
        out.append((at, 1.0))
    return out


def looked_at(
    blocks: Sequence[tuple[Block, int]], xs: Sequence[float], ys: Sequence[float]
) -> list[list[tuple[int, str, float] | None]]:
    """For points of the page: the owner of the nearest block, the face of it that is seen ("front", "top", "right") and
    where that face lies on its axis; None where there is nothing."""
    rows: list[list[tuple[int, str, float] | None]] = [[None] * len(xs) for _ in ys]
    near = [[float("inf")] * len(xs) for _ in ys]
    for block, owner in blocks:
        left, low, right, high = bounds(block)
        columns = [i for i, x in enumerate(xs) if left <= x <= right]
        for j, y in enumerate(ys):
            for i in columns if low <= y <= high else ():
                found = _hit(block, xs[i], y)
                if found and found[0] < near[j][i]:
                    near[j][i], rows[j][i] = found[0], (owner, *found[1:])
    return rows


def _hit(block: Block, x: float, y: float) -> tuple[float, str, float] | None:
    """How deep the block is first met behind a point of the page, and by which face."""
    z = block.lo[2]
    if block.lo[0] <= x - ACROSS * z <= block.hi[0] and block.lo[1] <= y - UP * z <= block.hi[1]:
        return z, "front", z
    z = (y - block.hi[1]) / UP
    if block.lo[2] <= z <= block.hi[2] and block.lo[0] <= x - ACROSS * z <= block.hi[0]:
        return z, "top", block.hi[1]
    z = (x - block.hi[0]) / ACROSS
    if block.lo[2] <= z <= block.hi[2] and block.lo[1] <= y - UP * z <= block.hi[1]:
        return z, "right", block.hi[0]
    return None
