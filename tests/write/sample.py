"""A small plan made by hand, so that documents are tested without the stages above.

Two boxes 24 x 30 x 12 with a top over both, pockets, dados, glue, a board held by a measure, a loose shelf, one hook.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as F

from setout.geometry import IDENTITY, Axis, Box, face_named
from setout.join.model import Bore, Cavity, Contact, Fastening, Joined, JoinedBoard, JoinedScene
from setout.piece.model import Piece, Pieces, Size
from setout.place.model import Board, Fitting, Instance, Joint, LooseBoard, Method, Notch, Placed, Scene, Side
from setout.plan.model import Plan
from setout.plan.order.model import Order, Reason, Step, StepId
from setout.practice import standard
from setout.resolve.model import AssemblyDef, Body, Hardware, MeasureDef, Project, Stock
from setout.source import Source, Span
from setout.values import Trace

HERE = Span("sample.rod", 0, 1)
NONE: frozenset = frozenset()
T = F(23, 32)
PLY = Stock("ply", "3/4 birch plywood", "sheet", F(96), F(48), T, "long", (), (), HERE)
LATH = Stock("lath", "1x2 poplar", "stick", None, F(3, 2), F(3, 4), "long", (F(72), F(96)), (), HERE)
HOOK = Hardware("hook", "coat hook", None, 1, (F(1, 8), F(1, 2)), F(0), HERE)
BED = MeasureDef("bed", "height of the bed above the table", F(2), F(5), None, HERE)
W, H, D = Axis.WIDE, Axis.HIGH, Axis.DEEP
BODY = Body({}, None, {}, (), (), (), (), (), ())


def plan(title: str = "Sample", paper: str = "letter", **project) -> Plan:
    scenes = tuple(_scene(title, bed) for bed in (F(2), F(5)))
    placed = Placed(replace(_project(title, paper), **project), tuple(s.scene for s in scenes), ("bed",))
    joined = Joined(placed, scenes)
    pieces = Pieces(joined, _pieces(scenes[-1]), _marks(scenes[-1]), {"": "A", "case": "B"}, ())
    return Plan(pieces, Order(_steps()))


def _project(title: str, paper: str) -> Project:
    assemblies = {"case": AssemblyDef("case", "Case", {}, BODY, HERE, HERE)}
    return Project(
        title=title, metric=False, mark=F(1, 32), paper=paper, stocks={"ply": PLY, "lath": LATH},
        hardware={"hook": HOOK}, lets={}, let_spans={}, measures={"bed": BED}, practice=standard(), room=None,
        assemblies=assemblies, job=BODY,
        order=(), sources={"sample.rod": Source("sample.rod", "# nothing\n")}, settings={},
    )  # fmt: skip


def _box(*ends) -> Box:
    e = [F(x) for x in ends]
    return Box((e[0], e[2], e[4]), (e[1], e[3], e[5]))


def _board(owner: str, name: str, box: Box, thick: Axis, show: str | None = None, held=NONE, features=()) -> Board:
    path = f"{owner}.{name}" if owner else name
    long = max((a for a in Axis if a != thick), key=lambda a: box.size(a))
    why = tuple(Trace("literal", str(n), n, 1) for n in box.sizes)
    return Board(
        path, name, owner, name, PLY, box, thick, None, long, face_named(show) if show else None, NONE, features, why,
        tuple(held if a == D else NONE for a in Axis), HERE, HERE,
    )  # fmt: skip


def _case(path: str, x: F) -> list[JoinedBoard]:
    """Sides dadoed for a shelf, a bottom pocketed into them."""
    i = (x + T, x + 24 - T)
    left = _board(path, "left_side", _box(x, x + T, 0, 30, 0, 12), W, "left")
    right = _board(path, "right_side", _box(x + 24 - T, x + 24, 0, 30, 0, 12), W, "right")
    shelf = _board(path, "shelf", _box(*i, 15, 15 + T, 0, 12), H)
    bottom = _board(path, "bottom_panel", _box(*i, 3, 3 + T, 0, 12), H)
    cut = lambda face, lo, hi: Cavity(  # noqa: E731
        "dado", face_named(face), _box(lo, hi, 15, 15 + T, 0, 12), D, F(1, 4), T, f"{path}.shelf", (), f"{path}#1"
    )
    grown = {face_named("left"): F(1, 4), face_named("right"): F(1, 4)}
    tongued = shelf.box.with_span(W, i[0] - F(1, 4), i[1] + F(1, 4))
    pockets = tuple(
        Bore("pocket", face_named("bottom"), (end, F(3), z), F(3, 8), None, face_named(side), "pocket screw 1-1/4 in",
             f"{path}#2/{path}.bottom_panel/{path}.{side}_side")
        for end, side in ((i[0], "left"), (i[1], "right")) for z in (F(2), F(10))
    )  # fmt: skip
    return [
        JoinedBoard(left, left.box, {}, (cut("right", x + T - F(1, 4), x + T),), (), ()),
        JoinedBoard(right, right.box, {}, (cut("left", x + 24 - T, x + 24 - T + F(1, 4)),), (), ()),
        JoinedBoard(shelf, tongued, grown, (), (), ()),
        JoinedBoard(bottom, bottom.box, {}, (), pockets, ()),
    ]


def _contacts(path: str) -> list[Contact]:
    flat = _box(0, 0, 15, 15 + T, 0, 12)
    return [
        Contact(f"{path}#{n}/{path}.{part}/{path}.{side}_side", f"{path}#{n}", f"{path}.{part}", f"{path}.{side}_side",
                face_named(side), face_named(side).opposite, flat, "butt")
        for n, part in ((1, "shelf"), (2, "bottom_panel")) for side in ("left", "right")
    ]  # fmt: skip


def _fastenings(path: str) -> list[Fastening]:
    glue = [
        Fastening(c.id, c.joint, "glue", 1, None, None, None, None, c.a, None, F(12) * T)
        for c in _contacts(path) if c.joint.endswith("#1")
    ]  # fmt: skip
    screws = [
        Fastening(c.id, c.joint, "pockets", 2, 8, F(5, 4), None, F(3, 4), c.a, face_named("bottom"), F(0))
        for c in _contacts(path) if c.joint.endswith("#2")
    ]  # fmt: skip
    return glue + screws


def _scene(title: str, bed: F) -> JoinedScene:
    hole = Notch("cutout", _box(4, 10, 30, 30 + T, 3, 8), HERE)
    top = _board("", "top_board", _box(0, 60, 30, 30 + T, 0, 12), H, "top", features=(hole,))
    deck = _board("", "deck", _box(24, 36, 20, 20 + T, 0, F(12) - bed), H, held=frozenset({"bed"}))
    boards = [*_case("left", F(0)), *_case("right", F(36)), JoinedBoard(top, top.box, {}, (), (), (hole,)),
              JoinedBoard(deck, deck.box, {}, (), (), ())]  # fmt: skip
    instances = [
        Instance("", "", title, None, _box(0, 60, 0, 31, 0, 12), IDENTITY, HERE),
        Instance("left", "case", "Case", "", _box(0, 24, 0, 30, 0, 12), IDENTITY, HERE),
        Instance("right", "case", "Case", "", _box(36, 60, 0, 30, 0, 12), IDENTITY, HERE),
    ]
    side = lambda path, text: Side(text, (f"{path}.{text}",), None, True, HERE)  # noqa: E731
    joints = tuple(
        Joint(f"{path}#{n}", path, (side(path, part),), (side(path, "left_side"), side(path, "right_side")),
              (Method(kind, None, NONE, False, None, None, None, (), HERE),), None, HERE)
        for path in ("left", "right") for n, part, kind in ((1, "shelf", "dado"), (2, "bottom_panel", "pockets"))
    )  # fmt: skip
    loose = LooseBoard("spare_shelf", "spare_shelf", "", "spare_shelf", LATH, F(59, 4) + F(1, 96), F(3, 2), 14,
                       "length", (Trace("literal", "14-3/4", F(59, 4), 1),) * 2, (NONE, NONE), HERE)  # fmt: skip
    hook = Fitting(
        "#f1", "", HOOK, 2, "top_board", face_named("top"), ((F(2), F(31), F(2)), (F(20), F(31), F(2))), HERE
    )
    scene = Scene({"bed": bed}, {b.board.path: b.board for b in boards}, (loose,), {i.path: i for i in instances}, {},
                  joints, (), (hook,), None)  # fmt: skip
    contacts = tuple(c for path in ("left", "right") for c in _contacts(path))
    made = tuple(f for path in ("left", "right") for f in _fastenings(path))
    return JoinedScene(scene, {b.board.path: b for b in boards}, contacts, made)


MARKS = (
    ("A1", "top_board"),
    ("A2", "deck"),
    ("B1", "left_side"),
    ("B2", "right_side"),
    ("B3", "shelf"),
    ("B4", "bottom_panel"),
)


def _marks(scene: JoinedScene) -> dict[str, str]:
    by_name = {name: mark for mark, name in MARKS}
    return {path: by_name[b.board.name] for path, b in scene.boards.items()} | {"spare_shelf": "A3"}


def _pieces(scene: JoinedScene) -> tuple[Piece, ...]:
    made = [_piece(mark, [b for b in scene.boards.values() if b.board.name == name]) for mark, name in MARKS]
    loose = scene.scene.loose[0]
    spare = Piece("A3", LATH, Size(loose.length), Size(loose.width), LATH.thick, "length", 14, ("spare_shelf",), None,
                  loose, "", (), (), *loose.why)  # fmt: skip
    return tuple(sorted([*made, spare], key=lambda p: p.mark))


def _piece(mark: str, boards: list[JoinedBoard]) -> Piece:
    one = boards[0]
    long, short = sorted((a for a in Axis if a != one.board.thick), key=lambda a: -one.box.size(a))
    length, width = Size(one.box.size(long)), Size(one.box.size(short))
    measures: tuple[str, ...] = ()
    if mark == "A2":
        width, measures = Size(F(7), F(10), (F(12), (("bed", F(-1)),))), ("bed",)
    return Piece(mark, PLY, length, width, T, "length", len(boards), tuple(b.board.path for b in boards), one, None, "",
                 measures, (), one.board.why[long], one.board.why[short])  # fmt: skip


def _steps() -> tuple[Step, ...]:
    measure, cut, joins = StepId("measure", "bed"), StepId("cut", ""), StepId("assemble", "left")
    own = StepId("step", "Paint the insides")
    four = (("B1", 1), ("B2", 1), ("B3", 1), ("B4", 1))
    return (
        Step(1, measure, "", (), (), (), F(0), ()),
        Step(2, cut, "", (("A1", 1), ("A2", 1)), (), (), F(0), (Reason(measure, "measure-first"),)),
        Step(3, joins, "left", four, ("left#1", "left#2"), (), F(24), (Reason(cut, "cut-first"),)),
        Step(4, own, "", (), (), (), F(0), (Reason(joins, "declared", HERE),)),
        Step(5, StepId("fit", "hook"), "", (), (), ("#f1",), F(0), (Reason(own, "declared", HERE),)),
    )
