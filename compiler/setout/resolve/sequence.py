"""In which order constants are worked out: each behind those it hangs on."""

from __future__ import annotations

from dataclasses import dataclass

from setout.resolve import problems
from setout.resolve.context import Context
from setout.resolve.model import BoundExpr, FaceRef, LetRef, MeasureRef, Op, SizeRef, StockRef
from setout.source import Span

Key = tuple[str, str]
"""("let", name), ("stock", name), ("measure", name) or ("room", ""); ("placed", "") is what no constant may hang on."""


@dataclass
class Node:
    """A constant: the statement, what a let is bound to, and what it hangs on with where it says so."""

    statement: object
    expr: BoundExpr | None
    needs: dict[Key, Span]
    spoiled: bool


def needs_of(exprs: list[BoundExpr | None]) -> dict[Key, Span]:
    """What expressions hang on, in the order written."""
    found: dict[Key, Span] = {}
    waiting = [e for e in reversed(exprs) if e is not None]
    while waiting:
        node = waiting.pop()
        if isinstance(node, Op):
            waiting.extend(reversed(node.args))
        elif isinstance(node, LetRef):
            found.setdefault(("let", node.name), node.span)
        elif isinstance(node, MeasureRef):
            found.setdefault(("measure", node.name), node.span)
        elif isinstance(node, StockRef):
            found.setdefault(("stock", node.stock), node.span)
        elif isinstance(node, FaceRef):
            if (node.thing, node.face.word) != ((), "left"):
                found.setdefault(("placed", ""), node.span)
        elif isinstance(node, SizeRef) and node.thing != ("room",):
            found.setdefault(("placed", ""), node.span)
        elif isinstance(node, SizeRef):
            found.setdefault(("room", ""), node.span)
    return found


def in_order(nodes: dict[Key, Node], ctx: Context) -> list[Key]:
    """Every constant behind those it hangs on. A loop is reported once and spoils what is in it."""
    order: list[Key] = []
    state: dict[Key, int] = {}  # 1: on the way, 2: done
    for start in nodes:
        way: list[tuple[Key, list[Key]]] = [(start, list(nodes[start].needs))] if start not in state else []
        state.setdefault(start, 1)
        while way:
            key, waiting = way[-1]
            if not waiting:
                way.pop()
                state[key] = 2
                order.append(key)
                continue
            after = waiting.pop(0)
            if state.get(after) == 1:
                _report_loop([k for k, _ in way], after, nodes, ctx)
            elif after in nodes and after not in state:
                state[after] = 1
                way.append((after, list(nodes[after].needs)))
    return order


def _report_loop(way: list[Key], after: Key, nodes: dict[Key, Node], ctx: Context) -> None:
    loop = way[way.index(after) :]
    if not any(nodes[key].spoiled for key in loop):
        names = [name or "room" for _, name in (*loop, after)]
        spans = [nodes[key].needs[nxt] for key, nxt in zip(loop, (*loop[1:], after))]
        ctx.say(problems.let_loop(names, spans[0], spans[1:]))
    for key in loop:
        nodes[key].spoiled = True
