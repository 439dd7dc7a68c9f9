"""`door in bay of ply { … }` as the parts it is made of."""

from __future__ import annotations

from setout.read import model as r
from setout.resolve.filling.shop import Shop
from setout.resolve.filling.wording import Ex, Pen


def made(s: r.DoorStatement, shop: Shop) -> list[r.Statement]:
    pen, bay = Pen(s.head), s.opening.text
    row = "overlay_reveal" if s.overlay is not None else "inset_reveal"
    reveal = pen.ex(s.reveal) if s.reveal is not None else shop.row(pen, row)
    edge = pen.plain(0) - pen.ex(s.overlay) if s.overlay is not None else reveal
    low, high = pen.path(bay, "left") + edge, pen.path(bay, "right") - edge
    if not s.pair:
        return [_part(s, pen, f"{bay}.door", pen.spread("wide", low, high), edge)]
    half = (pen.path(bay, "wide") - 2 * edge - reveal) / 2
    left = _part(s, pen, f"{bay}.door.left", pen.sized("wide", half, low), edge)
    right = _part(s, pen, f"{bay}.door.right", pen.sized("wide", half, high - half), edge)
    return [left, right]


def _part(s: r.DoorStatement, pen: Pen, name: str, wide: r.SpanClause, edge: Ex) -> r.PartStatement:
    bay = s.opening.text
    face = "front" if s.overlay is None else "back"
    high = pen.spread("high", pen.path(bay, "bottom") + edge, pen.path(bay, "top") - edge)
    at = r.Position("face_at", pen.name(face), pen.path(bay, "front").expr, pen.span)
    return board(pen, name, s.of, "facing", (wide, high), (at,), show="front", grain="high", proud=_FACES, span=s.span)


_FACES = ("left", "right", "bottom", "top", "front")


def board(
    pen: Pen,
    name: str,
    of: r.Path,
    lie: str,
    spans: tuple[r.SpanClause, ...],
    positions: tuple[r.Position, ...],
    *,
    show: str,
    grain: str,
    span: object,
    proud: tuple[str, ...] = (),
    repeat: r.Repeat | None = None,
) -> r.PartStatement:
    """A panel."""
    return r.PartStatement(
        name=pen.name(name),
        of=of,
        mirrors=None,
        across=None,
        orient=(pen.name(lie),),
        spans=spans,
        positions=positions,
        repeat=repeat,
        grain=pen.name(grain),
        show=pen.name(show),
        proud=tuple(pen.name(face) for face in proud),
        rip=None,
        loose_size=(),
        count=None,
        features=(),
        span=span,  # type: ignore[arg-type]
        head=pen.span,
    )
