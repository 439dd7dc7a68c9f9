"""Joined scenes and pieces made by hand, so that drawings are tested without the stages above."""

from __future__ import annotations

from fractions import Fraction as F

from setout.geometry import IDENTITY, Axis, Box, Face, face_named
from setout.join.model import Bore, Cavity, Contact, Fastening, JoinedBoard, JoinedScene
from setout.piece.model import Piece, Size
from setout.place.model import Board, Fitting, Hole, Instance, Mitre, Notch, Scene
from setout.plan.order.model import Order, Reason, Step, StepId
from setout.resolve.model import Hardware, Stock
from setout.source import Span
from setout.units import Style
from setout.values import Trace

INCH = Style(False, F(1, 32))
MM = Style(True, F(1, 254) * 10)
HERE = Span("sample.rod", 0, 1)
NONE = frozenset()

PLY = Stock("ply", "3/4 birch plywood", "sheet", F(96), F(48), F(23, 32), "long", (), (), HERE)
THIN = Stock("thin", "1/4 birch plywood", "sheet", F(96), F(48), F(7, 32), "long", (), (), HERE)
POST = Stock("post", "2x4 fir", "stick", None, F(7, 2), F(3, 2), "long", (F(96),), (), HERE)
W, H, D = Axis.WIDE, Axis.HIGH, Axis.DEEP


def trace(amount: F) -> Trace:
    return Trace("literal", str(amount), amount, 1)


def box(*ends) -> Box:
    """Six numbers: from and to on wide, high and deep."""
    e = [F(x) for x in ends]
    return Box((e[0], e[2], e[4]), (e[1], e[3], e[5]))


def board(
    path: str, where: Box, thick: Axis, *, stock=PLY, grain=None, run=None, show=None, features=(), held=()
) -> Board:
    owner, _, name = path.rpartition(".") if not path.rpartition(".")[2].isdigit() else _member(path)
    sizes = where.sizes
    long = max((a for a in Axis if a != thick), key=lambda a: sizes[a])
    return Board(
        path, name, owner, path, stock, where, thick, run, grain if grain is not None else long,
        face_named(show) if show else None, NONE, tuple(features), tuple(map(trace, sizes)),
        tuple(frozenset({"bed"}) if a in held else NONE for a in Axis), HERE, HERE,
    )  # fmt: skip


def _member(path: str):
    head, _, number = path.rpartition(".")
    owner, _, name = head.rpartition(".")
    return owner, ".", f"{name}.{number}"


def joined(b: Board, *, grown=(), cuts=(), bores=()) -> JoinedBoard:
    where = b.box
    for word, by in grown:
        where = where.stretched(face_named(word), F(by))
    features = tuple(f for f in b.features if not isinstance(f, Hole))
    return JoinedBoard(b, where, {face_named(w): F(n) for w, n in grown}, tuple(cuts), tuple(bores), features)


def instance(path: str, where: Box | None, title: str = "", parent: str | None = "") -> Instance:
    return Instance(path, path or "", title or path, parent if path else None, where, IDENTITY, HERE)


def scene(boards, instances, *, fittings=(), room=None, contacts=(), fastenings=()) -> JoinedScene:
    plain = {j.board.path: j.board for j in boards}
    s = Scene({}, plain, (), {i.path: i for i in instances}, {}, (), (), tuple(fittings), room)
    return JoinedScene(s, {j.board.path: j for j in boards}, tuple(contacts), tuple(fastenings))


def dado(face: str, where: Box, run: Axis, width, depth, for_board: str, kind="dado") -> Cavity:
    return Cavity(kind, face_named(face), where, run, F(depth), F(width), for_board, (), "j")


def bore(kind, face, at, diameter, depth=None, toward=None, fastener="", source="j/a/b") -> Bore:
    return Bore(kind, face_named(face), tuple(F(x) for x in at), F(diameter), None if depth is None else F(depth),
                face_named(toward) if toward else None, fastener, source)  # fmt: skip


def piece_of(j: JoinedBoard, mark: str = "B3", count: int = 2, measures=()) -> Piece:
    b = j.board
    long, short = sorted((a for a in Axis if a != b.thick), key=lambda a: -j.box.size(a))
    grain = None if b.grain is None else "length" if b.grain == long else "width"
    return Piece(
        mark, b.stock, Size(j.box.size(long)), Size(j.box.size(short)), b.box.size(b.thick), grain, count, (b.path,), j,
        None, "", tuple(measures), (), trace(j.box.size(long)), trace(j.box.size(short)),
    )  # fmt: skip


# --- a bookcase: 32 x 48 x 11-1/4 --------------------------------------------------------------------------

T, B = F(23, 32), F(7, 32)
SHELVES = (F(13, 1), F(24), F(35))


def bookcase() -> JoinedScene:
    inner = (T, 32 - T)
    deep = F(45, 4) - B
    levels = [("bottom_panel", F(3)), *((f"shelf.{i}", y) for i, y in enumerate(SHELVES, 1)), ("top_panel", 48 - T)]
    toe = Notch("notch", box(0, T, 0, 3, 0, 2), HERE)
    left = board("bookcase.left_side", box(0, T, 0, 48, 0, "45/4"), W, show="left", grain=H, features=[toe])
    right = board("bookcase.right_side", box(32 - T, 32, 0, 48, 0, "45/4"), W, show="right", grain=H)
    out = [
        joined(left, cuts=[*_housings("right", T - F(1, 4), T, levels, deep)]),
        joined(right, cuts=[*_housings("left", 32 - T, 32 - T + F(1, 4), levels, deep)]),
    ]
    for name, y in levels:
        shelf = board(f"bookcase.{name}", box(*inner, y, y + T, 0, deep), H)
        out.append(joined(shelf, grown=[("left", "1/4"), ("right", "1/4")]))
    out.append(joined(board("bookcase.kick", box(*inner, 0, 3, 2, 2 + T), D, show="front")))
    back = board("bookcase.back_panel", box(*inner, 3, 48, deep, "45/4"), D, stock=THIN, grain=H, show="front")
    out.append(joined(back, grown=[("left", "3/8"), ("right", "3/8")]))
    return scene(out, [instance("", None), instance("bookcase", box(0, 32, 0, 48, 0, "45/4"), "Bookcase")])


def _housings(face, lo, hi, levels, deep):
    for name, y in levels:
        yield dado(face, box(lo, hi, y, y + T, 0, deep), D, T, "1/4", f"bookcase.{name}")
    ends = (lo - F(1, 8), hi) if face == "right" else (lo, hi + F(1, 8))
    yield dado(face, box(*ends, 3, 48, deep, "45/4"), H, B, "3/8", "bookcase.back_panel", kind="rabbet")


BOOK_MARKS = {
    "bookcase.left_side": "A1", "bookcase.right_side": "A2", "bookcase.top_panel": "A3", "bookcase.bottom_panel": "A3",
    "bookcase.shelf.1": "A3", "bookcase.shelf.2": "A3", "bookcase.shelf.3": "A3", "bookcase.kick": "A4",
    "bookcase.back_panel": "A5",
}  # fmt: skip

# --- a bench: two bases, a worktop over both, a held board and feet ---------------------------------------------------


def base_at(x, path: str, wide=F(24)):
    """A case with sides, bottom, rails and back, standing on one-inch feet."""
    x, high, deep = F(x), F(29), F(22)
    i = (x + T, x + wide - T)
    parts = [
        board(f"{path}.left_side", box(x, x + T, 1, high, 0, deep), W, grain=H),
        board(f"{path}.right_side", box(x + wide - T, x + wide, 1, high, 0, deep), W, grain=H),
        board(f"{path}.bottom_panel", box(*i, 1, 1 + T, 0, deep - B), H),
        board(f"{path}.front_rail", box(*i, high - T, high, 0, 4), H),
        board(f"{path}.back_rail", box(*i, high - T, high, deep - B - 4, deep - B), H),
        board(f"{path}.back_panel", box(*i, 1, high, deep - B, deep), D, stock=THIN, grain=H),
    ]
    return [joined(p) for p in parts], instance(path, box(x, x + wide, 1, high, 0, deep), "Base")


def bench() -> JoinedScene:
    one, left = base_at(0, "left_base")
    two, right = base_at(48, "right_base", F(30))
    hole = Notch("cutout", box(30, 42, 29, 30, 6, 14), HERE)
    top = joined(board("worktop", box(0, 78, 29, "119/4", -1, 22), H, features=[hole]))
    cleat = joined(board("cleat", box(24, 48, "51/2", 29, "85/4", 22), D, stock=POST, run=W))
    deck = joined(board("machine_deck", box(26, 46, 25, "103/4", 0, 20), H, held=[D]))
    foot = Hardware("foot", "levelling foot", None, 4, None, F(1), HERE)
    feet = [
        Fitting(f"{p}#f", p, foot, 4, f"{p}.bottom_panel", face_named("bottom"),
                tuple((F(x), F(1), F(z)) for x in (x0 + 2, x1 - 2) for z in (2, 20)), HERE)
        for p, x0, x1 in (("left_base", 0, 24), ("right_base", 48, 78))
    ]  # fmt: skip
    instances = [instance("", None), left, right]
    return scene([*one, *two, top, cleat, deck], instances, fittings=feet, room=box(-20, 100, 0, 96, -108, 22))


def bench_marks() -> dict[str, str]:
    return {p: f"B{n}" for n, p in enumerate(bench().boards, 1)}


# --- single boards ---------------------------------------------------------------------------------------------


def pocketed() -> JoinedBoard:
    """A bottom panel with pockets toward both ends, clearance holes, dowels in the front edge and foot holes."""
    b = board("base.bottom_panel", box(T, 24 - T, 1, 1 + T, 0, 21), H, show="top")
    bores = [
        bore(
            "pocket", "bottom", (x, 1, z), "3/8", None, toward, "pocket screw 1-1/4 in", "j/base.bottom_panel/base.side"
        )
        for x, toward in ((T, "left"), (24 - T, "right"))
        for z in ("3/2", "15/2", "27/2", "39/2")
    ]
    bores += [
        bore("dowel", "front", (x, 1 + T / 2, 0), "3/8", "3/4", None, "dowel 3/8 x 1-1/2 in") for x in (3, 9, 15, 21)
    ]
    bores += [bore("hardware", "bottom", (x, 1, z), "5/16", 1, source="base#f") for x in (2, 22) for z in (2, 19)]
    bores += [bore("clearance", "top", (x, 1 + T, 20), "11/64", None, None, "screw #8 x 1-1/4 in") for x in (4, 12, 20)]
    return joined(b, bores=bores)


def notched() -> JoinedBoard:
    """A side with a toe notch, a cut-out, a stopped groove and pilots in its edges."""
    notch = Notch("notch", box(0, T, 0, "7/2", 0, 3), HERE)
    cut = Notch("cutout", box(0, T, 12, 16, 8, 14), HERE)
    b = board("base.left_side", box(0, T, 0, 28, 0, 22), W, show="left", grain=H, features=[notch, cut])
    cuts = [
        dado("right", box(T - F(1, 4), T, "7/2", F(7, 2) + T, 0, 22), D, T, "1/4", "base.bottom_panel"),
        dado("right", box(T - F(1, 4), T, 20, 20 + T, 2, 22), D, T, "1/4", "base.shelf"),
        dado("right", box(T - F(3, 8), T, "7/2", 28, 22 - B, 22), H, B, "3/8", "base.back_panel", kind="rabbet"),
    ]
    bores = [bore("pilot", "top", (T / 2, 28, z), "3/32", "3/4", None, "screw #8 x 2 in") for z in (2, 8, 14, 20)]
    bores += [bore("hole", "right", (T, y, z), "1/4", "3/8") for y in range(6, 20, 2) for z in (2, 20)]
    return joined(b, cuts=cuts, bores=bores)


def stick() -> JoinedBoard:
    """A leg, with a mitred end and a few holes on its broad face and its edge."""
    mitre = Mitre(face_named("top"), F(45), face_named("front"), HERE)
    b = board("bench.leg", box(0, "3/2", 0, 34, 0, "7/2"), W, stock=POST, run=H, features=[mitre])
    bores = [
        bore("clearance", "left", (0, y, z), "3/16", None, None, "screw #8 x 3 in") for y in (3, 30) for z in (1, "5/2")
    ]
    bores += [bore("dowel", "front", ("3/4", y, 0), "3/8", "3/4") for y in (8, 10)]
    return joined(b, bores=bores)


def contact(a: str, b: str, source: str = "j/a/b") -> Contact:
    return Contact(source, "j", a, b, Face(W, -1), Face(W, 1), box(0, 0, 0, 1, 0, 1), "butt")


def pocket_screws(contact_id: str) -> Fastening:
    return Fastening(contact_id, "j", "pockets", 4, 8, F(5, 4), F(3, 8), F(3, 4), "base.bottom_panel", None, F(15))


# --- an order of steps -----------------------------------------------------------------------------------------


def order_of(links: dict[str, tuple[str, ...]]) -> Order:
    """Steps "verb target", each with those it comes after, in order."""
    ids = {name: StepId(*name.split(" ", 1)) for name in links}
    steps = [
        Step(n, ids[name], "", (), (), (), F(0), tuple(Reason(ids[a], "declared") for a in after))
        for n, (name, after) in enumerate(links.items(), 1)
    ]
    return Order(tuple(steps))


def long_order(bases: int = 4) -> Order:
    """Cutting two stocks, then for each base its own steps, then a worktop over all of them."""
    links: dict[str, tuple[str, ...]] = {"measure bed": (), "cut ply": (), "cut thin": (), "cut half": ()}
    for n in range(1, bases + 1):
        base = f"base_{n}"
        links[f"machine {base}.left_side and the other boards of {base}"] = ("cut ply",)
        links[f"machine {base}.rails"] = ("cut ply", "cut half")
        links[f"assemble {base}"] = (
            f"machine {base}.left_side and the other boards of {base}",
            f"machine {base}.rails",
        )
        links[f"cure {base}"] = (f"assemble {base}", "cut ply")
        links[f"fit {base}.back_panel"] = (f"cure {base}", "cut thin")
        links[f"set {base}"] = (f"fit {base}.back_panel", f"set base_{n - 1}") if n > 1 else (f"fit {base}.back_panel",)
    links["cut worktop"] = ("measure bed", *(f"set base_{n}" for n in range(1, bases + 1)))
    links["fasten worktop"] = ("cut worktop",)
    return order_of(links)


def step_words(order: Order) -> dict[StepId, str]:
    return {s.id: f"{s.id.verb} {s.id.target}".replace("_", " ").capitalize() for s in order.steps}
