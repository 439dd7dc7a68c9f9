"""Places for a small graph's boxes, worked out by Graphviz. Only ids and numbers of ours go into its text."""

from __future__ import annotations

import json
import shutil
import sys
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from pathlib import Path

INCH = 72.0


@dataclass(frozen=True)
class Layout:
    """Middles of the boxes by id, and the bends of each edge from tail to head; points, y downwards."""

    boxes: Mapping[int, tuple[float, float]]
    edges: Mapping[tuple[int, int], tuple[tuple[float, float], ...]]
    width: float
    height: float


@cache
def program() -> str | None:
    """The program to lay out with: the one that came with setout, else the system's; None when there is neither."""
    beside = Path(sys.executable).parent
    for name in ("graphviz-pure", "graphviz-pure.exe"):
        if (beside / name).is_file():
            return str(beside / name)
    return shutil.which("graphviz-pure") or shutil.which("dot")


def laid_out(
    levels: Sequence[Sequence[int]],
    edges: Sequence[tuple[int, int]],
    box: tuple[float, float],
    apart: tuple[float, float],
) -> Layout | None:
    """Boxes of one size, level below level; None when the program is missing or fails."""
    found = program()
    if found is None:
        return None
    import graphviz  # type: ignore[import-untyped]  # late: only this drawing needs it

    text = _source(levels, edges, box, apart)
    with _using(graphviz, found):
        try:
            answer = graphviz.Source(text, engine="dot").pipe(format="json", encoding="utf-8", quiet=True)
        except (graphviz.ExecutableNotFound, graphviz.CalledProcessError, OSError):
            return None
    return _read(json.loads(answer))


@contextmanager
def _using(graphviz: object, found: str) -> Iterator[None]:
    """graphviz keeps the program's name in a global; it is put back, for the process is not only ours."""
    command = graphviz.backend.dot_command  # type: ignore[attr-defined]
    before = command.DOT_BINARY
    command.DOT_BINARY = Path(found)
    try:
        yield
    finally:
        command.DOT_BINARY = before


def _source(
    levels: Sequence[Sequence[int]],
    edges: Sequence[tuple[int, int]],
    box: tuple[float, float],
    apart: tuple[float, float],
) -> str:
    wide, high = (f"{x / INCH:.4f}" for x in box)
    lines = [
        "digraph {",
        f"graph [rankdir=TB nodesep={apart[0] / INCH:.4f} ranksep={apart[1] / INCH:.4f} splines=polyline]",
        f'node [shape=box fixedsize=true width={wide} height={high} label=""]',
        "edge [arrowhead=none]",
    ]
    for level in levels:
        lines.append("{rank=same " + " ".join(f"n{n}" for n in level) + "}")
    # the levels are kept below each other by an unseen line through the first of each
    lines.append("edge [style=invis weight=0]")
    lines += [f"n{a[0]} -> n{b[0]}" for a, b in pairwise(levels) if (a[0], b[0]) not in set(edges)]
    lines.append('edge [style="" weight=2]')
    lines += [f"n{a}:s -> n{b}:n" for a, b in edges]
    return "\n".join([*lines, "}"])


def _read(answer: dict) -> Layout:  # type: ignore[type-arg]
    _, _, right, top = map(float, answer["bb"].split(","))
    names = {o["_gvid"]: int(o["name"][1:]) for o in answer["objects"] if "pos" in o}
    boxes = {}
    for o in answer["objects"]:
        if "pos" in o:
            x, y = map(float, o["pos"].split(","))
            boxes[names[o["_gvid"]]] = (x, top - y)
    edges = {}
    for e in answer.get("edges", ()):
        if e.get("style") != "invis" and "pos" in e:
            edges[names[e["tail"]], names[e["head"]]] = _bends(e["pos"], top)
    return Layout(boxes, edges, right, top)


def _bends(pos: str, top: float) -> tuple[tuple[float, float], ...]:
    """A polyline comes as a curve whose every third point is a corner."""
    points = [tuple(map(float, p.split(","))) for p in pos.split() if p[0] not in "se"]
    return tuple((x, top - y) for x, y in points[::3])
