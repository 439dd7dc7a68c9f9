"""`drawers in bay { … }` as placings of an assembly made of the library's leaves."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from setout.read import model as r
from setout.resolve.filling.shop import Shop
from setout.resolve.filling.wording import Ex, Pen
from setout.resolve.library.read import at, leaves

MOST = 20
"""Drawers in one opening: more is a slip of the pen."""


@dataclass(frozen=True)
class Layout:
    """The clauses of a bank as expressions. `heights` of fronts from the top; `reveal` between them, `edge` from the
    opening's edges to the fronts (below nothing where they lap over); `front` from the opening's front to the box's."""

    pen: Pen
    bay: str
    heights: Sequence[Ex]
    reveal: Ex
    edge: Ex
    front: Ex
    length: Ex
    clearance: Ex
    under: Ex
    over: Ex

    def face(self, word: str) -> Ex:
        return self.pen.path(self.bay, word)


def made(s: r.DrawersStatement, n: int, owner: str, title: str, shop: Shop) -> tuple[list, list]:
    """What stands in the body, and the assemblies it needs at the top level."""
    pen = Pen(s.head)
    layout = _layout(s, n, pen, shop)
    box, blind = (f"{owner}.{s.opening.text}.{kind}".lstrip(".") for kind in ("drawer", "dummy"))
    dummies = {int(d.value) for d in s.dummies if isinstance(d, r.Number)}
    body = [
        (_dummy if i + 1 in dummies else _drawer)(s, layout, i, blind if i + 1 in dummies else box, shop)
        for i in range(n)
    ]
    needed = [_assembly(s, box, f"Drawer of {title}", _leaves(s))] if len(dummies) < n else []
    if dummies:
        needed.append(
            _assembly(s, blind, f"Dummy front of {title}", ["dummy_over" if s.style == "overlay" else "dummy"])
        )
    return body, needed


def _layout(s: r.DrawersStatement, n: int, pen: Pen, shop: Shop) -> Layout:
    bay, slide = s.opening.text, s.slides[0].text
    reveal = _reveal(s, pen, shop)
    edge = pen.plain(0) - pen.ex(s.overlay) if s.overlay is not None else reveal
    thick = pen.path(s.fronts.text, "thick") if s.fronts is not None and s.style != "overlay" else pen.plain(0)
    setback = shop.number(pen, slide, "setback") or pen.plain(0)
    deep = pen.path(bay, "deep") - thick - setback
    return Layout(
        pen,
        bay,
        _heights(s, n, pen, pen.path(bay, "high"), reveal, edge),
        reveal,
        edge,
        thick,
        _longest(s, pen, deep, shop),
        shop.number(pen, slide, "clearance") or pen.plain(0),
        shop.number(pen, slide, "height", 1) or shop.row(pen, "drawer_under"),
        shop.row(pen, "drawer_over"),
    )


def _reveal(s: r.DrawersStatement, pen: Pen, shop: Shop) -> Ex:
    """Between fronts; trays have none, and share the opening out among themselves."""
    if s.fronts is None:
        return pen.plain(0)
    row = "overlay_reveal" if s.style == "overlay" else "inset_reveal"
    return pen.ex(s.reveal) if s.reveal is not None else shop.row(pen, row)


def _heights(s: r.DrawersStatement, n: int, pen: Pen, high: Ex, reveal: Ex, edge: Ex) -> list[Ex]:
    left = high - 2 * edge - (n - 1) * reveal
    if s.mode == "given":
        given = [pen.ex(h) if h is not None else None for h in s.heights]
        rest = left
        for h in given:
            rest = rest - h if h is not None else rest
        return [h if h is not None else rest for h in given]
    if s.mode == "shares":
        shares = [pen.ex(h) for h in s.heights if h is not None]
        total = shares[0]
        for share in shares[1:]:
            total = total + share
        return [left * share / total for share in shares]
    return [left / n for _ in range(n)]


def _longest(s: r.DrawersStatement, pen: Pen, deep: Ex, shop: Shop) -> Ex:
    """The longest of the slides that fits; the shortest where none does, which is told once its size is known."""
    lengths = [x for path in s.slides if (x := shop.number(pen, path.text, "length")) is not None]
    if len(lengths) == 1:
        return lengths[0]
    zero, one = pen.plain(0), pen.plain(1)
    lengths = [pen.inches(Fraction(0)) + x for x in lengths]  # a bare number would divide as one
    fitting = [x * pen.call("max", zero, pen.call("min", one, pen.call("floor", deep / x))) for x in lengths]
    return pen.call("max", pen.call("min", *lengths), *fitting)


def _drawer(s: r.DrawersStatement, at_: Layout, i: int, definition: str, shop: Shop) -> r.PlaceStatement:
    pen, trays = at_.pen, s.fronts is None
    top = at_.face("top") - at_.edge
    for h in at_.heights[:i]:
        top = top - h - at_.reveal
    low = top - at_.heights[i]
    overlay, last = s.style == "overlay", i == len(at_.heights) - 1
    beyond_top, beyond_floor = overlay and i == 0, overlay and last
    floor = at_.face("bottom") if beyond_floor else low
    room = at_.heights[i]  # of the front, that is within the opening
    for beyond in (beyond_top, beyond_floor):
        room = room + at_.edge if beyond else room
    integral = s.style == "integral"
    args = {
        "w": at_.face("wide") - 2 * at_.clearance,
        "h": room - at_.under - at_.over,
        "l": at_.length + at_.front if integral else at_.length,
        "fw": at_.face("wide") - 2 * at_.edge,
        "fh": at_.heights[i],
        "fx": at_.clearance - at_.edge,
        "fy": at_.under - at_.edge if beyond_floor else at_.under,
        **{key: shop.row(pen, row) for key, row in _ROWS.items()},
        "into": _groove(s, pen, shop),
    }
    stocks = {"body": s.box, "base": s.bottom, **({} if trays else {"face": s.fronts})}
    deep = at_.face("front") if integral else at_.face("front") + at_.front
    given = [(key, x.expr) for key, x in args.items() if not (trays and key in ("fw", "fh", "fx", "fy"))]
    given += [(key, path) for key, path in stocks.items() if path is not None]
    used = {p.name.text for p in _parameters(_leaves(s))}
    return r.PlaceStatement(
        assembly=r.Path((definition,), pen.span),
        args=tuple((pen.name(key), x) for key, x in given if key in used),
        turned=None,
        mirrored=False,
        name=pen.name(f"{at_.bay}.drawer.{i + 1}"),
        spans=(
            pen.at("wide", at_.face("left") + at_.clearance),
            pen.at("high", floor + at_.under),
            pen.at("deep", deep),
        ),
        positions=(),
        repeat=None,
        span=s.span,
        head=pen.span,
    )


def _dummy(s: r.DrawersStatement, at_: Layout, i: int, definition: str, shop: Shop) -> r.PlaceStatement:
    """Its box is that part of the front which lies within the opening."""
    pen, overlay = at_.pen, s.style == "overlay"
    low = at_.face("top") - at_.edge - at_.heights[i]
    for h in at_.heights[:i]:
        low = low - h - at_.reveal
    room, last = at_.heights[i], i == len(at_.heights) - 1
    for beyond in (overlay and i == 0, overlay and last):
        room = room + at_.edge if beyond else room
    args = {
        "w": at_.face("wide"),
        "h": room,
        "fw": at_.face("wide") - 2 * at_.edge,
        "fh": at_.heights[i],
        "fx": pen.plain(0) - at_.edge,
        "fy": pen.plain(0) - at_.edge if overlay and last else pen.plain(0),
    }
    given: list[tuple[str, r.Expr]] = [(key, x.expr) for key, x in args.items()]
    given += [("face", s.fronts)] if s.fronts is not None else []
    return r.PlaceStatement(
        assembly=r.Path((definition,), pen.span),
        args=tuple((pen.name(key), x) for key, x in given),
        turned=None,
        mirrored=False,
        name=pen.name(f"{at_.bay}.drawer.{i + 1}"),
        spans=(
            pen.at("wide", at_.face("left")),
            pen.at("high", at_.face("bottom") if overlay and last else low),
            pen.at("deep", at_.face("front")),
        ),
        positions=(),
        repeat=None,
        span=s.span,
        head=pen.span,
    )


def _groove(s: r.DrawersStatement, pen: Pen, shop: Shop) -> Ex:
    """The practice's depth, but no more than half the side, on a mark that a saw is set to."""
    assert s.box is not None
    half = pen.path(s.box.text, "thick") / 2
    return pen.call(
        "min", shop.row(pen, "drawer_groove_depth"), pen.call("floor", half, shop.row(pen, "drawer_groove_step"))
    )


_ROWS = {"up": "drawer_groove_up", "free": "drawer_groove_gap", "inside": "drawer_back_in"}


def _leaves(s: r.DrawersStatement) -> list[str]:
    """The library's leaves that this bank's drawers are made of."""
    corners, integral = s.corners or "pockets", s.style == "integral"
    names = ["sides", "box_back_inside" if corners == "dado" else "box_back"]
    names.append("dado_back" if corners == "dado" else f"{corners}_back")
    front = "rabbet" if corners == "dado" else corners
    if integral:
        names += ["integral_face", f"{front}_integral"]
        names += ["grooved_integral"] if s.groove else ["applied", "applied_integral"]
        return names
    names += ["box_front", f"{front}_front"]
    names += ["grooved", "grooved_front"] if s.groove else ["applied", "applied_front"]
    if s.fronts is not None:
        names += ["applied_face", "on_sides"]
        names += [] if s.groove else ["on_applied_bottom"]
    return [*names, "brace"] if s.brace else names


def _parameters(names: Sequence[str]) -> list[r.Parameter]:
    library = leaves("drawer")
    mentioned = {path.parts[0] for name in names for path in _paths(library[name].body)}
    return [p for p in library["parameters"].parameters if p.name.text in mentioned]


def _paths(node: object) -> list[r.Path]:
    if isinstance(node, r.Path):
        return [node]
    if isinstance(node, tuple):
        return [path for each in node for path in _paths(each)]
    return [path for each in vars(node).values() for path in _paths(each)] if hasattr(node, "__dict__") else []


def _assembly(s: r.DrawersStatement, name: str, title: str, names: Sequence[str]) -> r.AssemblyStatement:
    library, pen = leaves("drawer"), Pen(s.head)
    body = tuple(statement for leaf in names for statement in library[leaf].body)
    made = r.AssemblyStatement(
        pen.name(name), r.Text(title, pen.span), tuple(_parameters(names)), body, pen.span, pen.span, derived=True
    )
    return replace(at(made, pen.span), span=s.span)
