"""Fronts and doors against each other and against the case. They stand in front of everything, and so meet from one
cabinet to the next."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from setout.geometry import Axis, Box
from setout.place import problems
from setout.place.filling.made import Front, Made
from setout.place.model import Scene
from setout.place.site import Site


def collisions(site: Site, scene: Scene, made: Made) -> set[str]:
    """Reports what collides; the paths of the boards that are left out for it, and for what was reported before."""
    lost = set(made.lost)
    fronts = [f for f in made.fronts if f.path not in lost]
    for a, b in _near(fronts):
        gap = _gap(a.box, b.box)
        if gap is None:
            continue
        lost.update((a.path, b.path))
        if a.door and b.door:
            site.report(problems.doors_foul(site.style, a.path, b.path, gap, a.span, b.span))
        else:
            site.report(problems.fronts_collide(site.style, a.path, b.path, gap, a.span, b.span))
    for front in (f for f in fronts if f.path not in lost):
        hit = _hit(scene, front)
        if hit is not None:
            lost.add(front.path)
            board, shared = scene.boards[hit[0]], hit[1]
            site.report(problems.front_hits(site.style, front.path, board.path, shared, front.span, board.head))
    return lost


def _near(fronts: list[Front]) -> Iterator[tuple[Front, Front]]:
    """Pairs whose boxes meet or overlap, of one bank or of two."""
    ordered = sorted(fronts, key=lambda f: (f.box.lo[Axis.WIDE], f.path))
    for i, a in enumerate(ordered):
        for b in ordered[i + 1 :]:
            if b.box.lo[Axis.WIDE] > a.box.hi[Axis.WIDE]:
                break
            if a.box.shared(b.box) is not None:
                yield a, b


def _gap(a: Box, b: Box) -> Fraction | None:
    """By how much two fronts overlap: 0 where they rub edge to edge, None where they only meet at a corner."""
    shared = a.shared(b)
    if shared is None:
        return None
    flat = [axis for axis in Axis if shared.size(axis) == 0]
    if len(flat) > 1:
        return None
    return min(shared.size(axis) for axis in Axis)


def _hit(scene: Scene, front: Front) -> tuple[str, tuple[Fraction, Fraction, Fraction]] | None:
    """The first board that the front stands in, but for its own drawer's."""
    own = front.path.rpartition(".")[0] if not front.door else front.bank
    for path, board in scene.boards.items():
        if path != front.path and not path.startswith(f"{own}.") and board.box.overlaps(front.box):
            shared = board.box.shared(front.box)
            assert shared is not None
            return path, shared.sizes
    return None
