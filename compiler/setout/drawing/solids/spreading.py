"""How far to pull the parts of an assembly apart, and along which axes, so that each can be seen.

Parts that touch are told apart along the axis on which they meet; parts in a row keep their order.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from setout.geometry import Box


class Touch(NamedTuple):
    """Two boxes that share a face: the one lower on `axis`, the higher, and the flat area they share."""

    low: int
    high: int
    axis: int
    area: Box


def ranks(boxes: Sequence[Box], touches: Sequence[Touch]) -> list[tuple[float, float, float]]:
    """For each box how many gaps it is moved on each axis; 0 for what stays."""
    per_axis = [_axis_ranks(boxes, touches, axis) for axis in range(3)]
    return [(w, h, d) for w, h, d in zip(*per_axis)]


def touching(boxes: Sequence[Box]) -> list[Touch]:
    """Every pair that shares a face."""
    order = sorted(range(len(boxes)), key=lambda i: (boxes[i].lo[0], i))
    out = []
    for n, i in enumerate(order):
        for j in order[n + 1 :]:
            if boxes[j].lo[0] > boxes[i].hi[0]:
                break
            touch = _meeting(boxes, i, j)
            if touch:
                out.append(touch)
    return sorted(out, key=lambda t: t[:3])


def _meeting(boxes: Sequence[Box], i: int, j: int) -> Touch | None:
    a, b = boxes[i], boxes[j]
    shared = a.shared(b)
    if shared is None:
        return None
    thin = [k for k in range(3) if shared.size(k) == 0]
    if len(thin) != 1:
        return None
    axis = thin[0]
    return Touch(i, j, axis, shared) if a.hi[axis] == shared.lo[axis] else Touch(j, i, axis, shared)


def _axis_ranks(boxes: Sequence[Box], touches: Sequence[Touch], axis: int) -> list[float]:
    above: dict[int, list[int]] = {i: [] for i in range(len(boxes))}
    for touch in touches:
        if touch.axis == axis:
            above[touch.low].append(touch.high)
    groups = _connected(len(boxes), [(t.low, t.high) for t in touches if t.axis == axis])
    middle = (min(b.lo[axis] for b in boxes) + max(b.hi[axis] for b in boxes)) / 2
    out: dict[int, float] = {}
    for group in groups:
        if len(group) > 1:
            level = _levels(group, above, boxes, axis)
            stays = min(group, key=lambda i: (abs(boxes[i].lo[axis] + boxes[i].hi[axis] - 2 * middle), i))
            out.update({i: float(level[i] - level[stays]) for i in group})
    return _gone_along(len(boxes), out, [(t.low, t.high) for t in touches if t.axis != axis])


def _connected(count: int, links: Sequence[tuple[int, int]]) -> list[list[int]]:
    head = list(range(count))

    def top(i: int) -> int:
        while head[i] != i:
            head[i] = head[head[i]]
            i = head[i]
        return i

    for a, b in links:
        head[max(top(a), top(b))] = min(top(a), top(b))
    groups: dict[int, list[int]] = {}
    for i in range(count):
        groups.setdefault(top(i), []).append(i)
    return list(groups.values())


def _levels(
    group: Sequence[int], above: Mapping[int, Sequence[int]], boxes: Sequence[Box], axis: int
) -> dict[int, int]:
    """How many parts lie below each, one on the other; what has none below it keeps close to what lies on it."""
    level = dict.fromkeys(group, 0)
    lowest = set(group)
    for i in sorted(group, key=lambda i: (boxes[i].lo[axis], boxes[i].hi[axis], i)):
        for j in above[i]:
            level[j] = max(level[j], level[i] + 1)
            lowest.discard(j)
    for i in lowest:
        level[i] = min((level[j] for j in above[i]), default=1) - 1
    return level


def _gone_along(count: int, fixed: Mapping[int, float], links: Sequence[tuple[int, int]]) -> list[float]:
    """Parts with no neighbour on this axis go with most of those they touch on the others."""
    near: dict[int, list[int]] = {i: [] for i in range(count)}
    for a, b in links:
        near[a].append(b)
        near[b].append(a)
    at = dict(fixed)
    while True:
        known = {i: [at[j] for j in near[i] if j in at] for i in range(count) if i not in at}
        surest = max(known, key=lambda i: (len(known[i]), -i), default=None)
        if surest is None or not known[surest]:
            return [at.get(i, 0.0) for i in range(count)]
        at[surest] = _commonest(known[surest])


def _commonest(values: Sequence[float]) -> float:
    """What most neighbours do; pulled both ways alike, a part stays between them."""
    most = max(values.count(v) for v in values)
    tied = sorted({v for v in values if values.count(v) == most})
    return 0.0 if 0.0 in tied else sum(tied) / len(tied)
