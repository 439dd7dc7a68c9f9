"""That two texts of a spec say the same, and have the same comments in the same places."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from itertools import zip_longest
from typing import Any

from setout.read import Tree, settled
from setout.source import Span

_NOWHERE = object()


def difference(before: Tree, after: Tree) -> str:
    """The first thing that is not the same, for whoever has to find our fault; "" when all is."""
    pairs = (
        ("meaning", _meaning(before.statements), _meaning(after.statements)),
        ("words and comments", _written(before), _written(after)),
    )
    for what, one, other in pairs:
        for a, b in zip_longest(one, other, fillvalue=_NOWHERE):
            if a != b:
                return f"{what}: {a!r} became {b!r}"
    return ""


def _meaning(node: Any) -> Iterator[Any]:
    """All that the tree says, in order, but for where it was said."""
    waiting = [node]
    while waiting:
        at = waiting.pop()
        if isinstance(at, Span):
            yield "a place"
        elif isinstance(at, tuple):
            yield len(at)
            waiting += reversed(at)
        elif is_dataclass(at):
            yield type(at).__name__
            waiting += [getattr(at, field.name) for field in reversed(fields(at))]
        else:
            yield at


def _written(tree: Tree) -> Iterator[tuple[str, ...]]:
    """Each word, and each comment at its place among them: behind one, or on a line of its own."""
    words = settled(tree.source)
    parts: list[tuple[int, tuple[str, ...]]] = [(t.start, ("word", t.text)) for t in words.tokens if t.type != "_SEP"]
    parts += [(c.span.start, ("comment", c.text, "own line" if c.own_line else "behind")) for c in words.comments]
    return (part for _, part in sorted(parts))
