"""Things that an opening is for: whether they go in, and what is left clear. And openings that aren't open."""

from __future__ import annotations

from fractions import Fraction

from setout.geometry import Axis, Face
from setout.place import problems
from setout.place.filling.ground import Ground, ground_of
from setout.place.filling.made import Made
from setout.place.model import ItemFit, Scene
from setout.place.site import Scope, Site
from setout.resolve.model import ItemDef


def item(ground: Ground, written: ItemDef, made: Made) -> None:
    sizes = [ground.amount(expr) for expr in written.sizes]
    clear = ground.amount(written.clear) or Fraction(0)
    if any(size is None for size in sizes):
        return
    wide, high, deep = (size for size in sizes if size is not None)
    spare = tuple(ground.box.size(axis) - size for axis, size in zip(Axis, (wide, high, deep)))
    # What lies at both sides needs its room twice; above it and behind it once.
    wanted = (2 * clear, clear, clear)
    short = [(axis, wanted[axis] - spare[axis]) for axis in Axis if spare[axis] < wanted[axis]]
    if short:
        ground.site.report(
            problems.item_too_large(
                ground.site.style,
                written.title,
                ground.path,
                short,
                (wide, high, deep),
                ground.box.sizes,
                clear,
                written.span,
            )
        )
    made.items.append(ItemFit(written.title, ground.path, (wide, high, deep), spare, written.span))  # type: ignore[arg-type]


def clear_of_parts(site: Site, scene: Scene, scope: Scope) -> None:
    """Reports each opening that is to hold something and that a board stands in which doesn't fill it."""
    body = scope.body
    used = {d.opening[0] for d in (*body.banks, *body.doors, *body.shelves, *body.items)}
    filling = tuple(f"{scope.path_of(opening.name)}." for opening in scope.body.openings)
    for opening in scope.body.openings:
        known = scene.openings.get(scope.path_of(opening.name)) if opening.name in used else None
        ground = ground_of(site, scene, scope, opening.name) if known is not None else None
        if known is None or ground is None:
            continue
        for path, board in scene.boards.items():
            if board.box.overlaps(known.box) and not path.startswith(filling):
                shared = board.box.shared(known.box)
                assert shared is not None
                site.report(
                    problems.opening_not_clear(
                        site.style, known.path, path, shared.sizes, _ends(ground, path), opening.span, board.head
                    )
                )
                break


def _ends(ground: Ground, path: str) -> tuple[str, str, str] | None:
    """The axis on which the opening loses least when it ends at that board, and its two ends then. None where nothing
    would be left of it, or the board has no name in its assembly."""
    board, prefix = ground.own(path), f"{ground.scope.path}." if ground.scope.path else ""
    if board is None or not path.startswith(prefix):
        return None
    name, ways = path.removeprefix(prefix), []
    around = ground.scene.instances.get(ground.scope.path)
    whole = around.motion.own_sizes(around.box.sizes) if around is not None and around.box is not None else (None,) * 3
    for axis in Axis:
        low, high = ground.box.lo[axis], ground.box.hi[axis]
        start = "…" if low else Face(axis, -1).word
        end = Face(axis, 1).word if high == whole[axis] else "…"
        for face, left in ((Face(axis, -1), board.lo[axis] - low), (Face(axis, 1), high - board.hi[axis])):
            ends = (start, f"{name}.{face.word}") if face.sign < 0 else (f"{name}.{face.word}", end)
            hidden = face == Face(Axis.DEEP, 1)  # what is put in comes from the front: not past a board
            if left > 0:
                ways.append(((not hidden, left / (high - low)), (axis.word, *ends)))
    return max(ways, key=lambda way: way[0])[1] if ways else None
