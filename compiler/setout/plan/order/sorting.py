"""Sorting what must come after what: pure functions on any nodes, knowing nothing of furniture."""

from __future__ import annotations

from collections import deque
from collections.abc import Collection, Hashable, Iterable, Mapping, Sequence
from heapq import heapify, heappop, heappush
from typing import Any, TypeVar

N = TypeVar("N", bound=Hashable)


def stable_order(nodes: Sequence[N], edges: Iterable[tuple[N, N]], priority: Mapping[N, Any]) -> list[N]:
    """Nodes so that every edge points onwards; of those that may come next, the least by priority does, then the first
    named. Nodes on a loop, and what comes after one, are left out."""
    after = _after(nodes, edges)
    waits = {n: 0 for n in nodes}
    for later in after.values():
        for n in later:
            waits[n] += 1
    place = {n: i for i, n in enumerate(nodes)}
    ready = [(priority[n], place[n]) for n in nodes if not waits[n]]
    heapify(ready)
    order = []
    while ready:
        node = nodes[heappop(ready)[1]]
        order.append(node)
        for n in after[node]:
            waits[n] -= 1
            if not waits[n]:
                heappush(ready, (priority[n], place[n]))
    return order


def urgency(order: Sequence[N], edges: Iterable[tuple[N, N]], priority: Mapping[N, Any]) -> dict[N, Any]:
    """Each node's priority, or that of the most urgent node that waits for it. `order` is a valid one."""
    after = _after(order, edges)
    found: dict[N, Any] = {}
    for node in reversed(order):
        found[node] = min([priority[node], *(found[n] for n in after[node])])
    return found


def loops(nodes: Sequence[N], edges: Collection[tuple[N, N]], through: Collection[tuple[N, N]] = ()) -> list[list[N]]:
    """For every knot of nodes that come before themselves, one short loop [a, b, …], the last coming before the first.

    Where the knot has an edge of `through`, the loop runs along the first of these.
    """
    after = _after(nodes, edges)
    found = []
    for knot in _knots(nodes, after):
        inside = set(knot)
        if len(knot) == 1 and knot[0] not in after[knot[0]]:
            continue
        start = next(((a, b) for a, b in through if a in inside and b in inside), None)
        if start is None:
            start = (knot[0], next(n for n in after[knot[0]] if n in inside))
        found.append(_path(start[1], start[0], after, inside))
    return found


def _after(nodes: Sequence[N], edges: Iterable[tuple[N, N]]) -> dict[N, list[N]]:
    """What comes directly after each node, each once, in the order of the edges."""
    after: dict[N, dict[N, None]] = {n: {} for n in nodes}
    for a, b in edges:
        after[a][b] = None
    return {n: list(later) for n, later in after.items()}


def _path(start: N, end: N, after: Mapping[N, list[N]], inside: Collection[N]) -> list[N]:
    """The shortest way from start to end (both ends in it) that stays inside."""
    came: dict[N, N | None] = {start: None}
    queue = deque([start])
    while queue and end not in came:
        node = queue.popleft()
        for n in after[node]:
            if n in inside and n not in came:
                came[n] = node
                queue.append(n)
    path: list[N] = []
    step: N | None = end
    while step is not None:
        path.append(step)
        step = came[step]
    return path[::-1]


def _knots(nodes: Sequence[N], after: Mapping[N, list[N]]) -> list[list[N]]:
    """Strongly connected components, by two walks without recursion; nodes in the order given."""
    done: list[N] = []
    seen: set[N] = set()
    for root in nodes:
        stack = [] if root in seen else [(root, iter(after[root]))]
        seen.add(root)
        while stack:
            node, rest = stack[-1]
            step = next((n for n in rest if n not in seen), None)
            if step is None:
                done.append(node)
                stack.pop()
            else:
                seen.add(step)
                stack.append((step, iter(after[step])))
    before: dict[N, list[N]] = {n: [] for n in nodes}
    for a in nodes:
        for b in after[a]:
            before[b].append(a)
    return _gathered(nodes, done, before)


def _gathered(nodes: Sequence[N], done: list[N], before: Mapping[N, list[N]]) -> list[list[N]]:
    place = {n: i for i, n in enumerate(nodes)}
    taken: set[N] = set()
    knots = []
    for root in reversed(done):
        if root in taken:
            continue
        taken.add(root)
        knot, stack = [], [root]
        while stack:
            node = stack.pop()
            knot.append(node)
            for n in before[node]:
                if n not in taken:
                    taken.add(n)
                    stack.append(n)
        knots.append(sorted(knot, key=place.__getitem__))
    return sorted(knots, key=lambda knot: place[knot[0]])
