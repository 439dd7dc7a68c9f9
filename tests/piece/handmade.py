"""Small hand-made Joined values: boards by their boxes, without the stages before."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from setout.geometry import IDENTITY, Axis, Box, Face, Motion, face_named
from setout.join.model import Bore, Cavity, Contact, Joined, JoinedBoard, JoinedScene
from setout.place.model import (
    Board,
    Fitting,
    Instance,
    Joint,
    LooseBoard,
    Method,
    Mitre,
    Notch,
    Placed,
    Rest,
    Scene,
    Side,
)
from setout.practice import standard
from setout.resolve.model import Body, Hardware, MeasureDef, OrderLine, Project, Stock
from setout.source import Source, Span
from setout.values import Trace

F = Fraction
THREE_EIGHTHS, HALF, MARK = F(3, 8), F(1, 2), F(1, 32)
SPAN = Span("spec.rod", 0, 1)
PLY = Stock("ply", "3/4 plywood", "sheet", F(96), F(48), F(23, 32), "long", (), (), SPAN)
LATH = Stock("lath", "1x2", "stick", None, F(3, 2), F(3, 4), None, (F(96),), (), SPAN)
POST = Stock("post", "2x2", "stick", None, F(3, 2), F(3, 2), None, (F(96),), (), SPAN)
FREE = frozenset[str]()
NOBODY = (FREE, FREE, FREE)


def trace(amount) -> Trace:
    return Trace("literal", str(amount), F(amount), 1)


def box(*sizes, at=(0, 0, 0)) -> Box:
    """A box of these sizes with its low corner at `at`."""
    lo = tuple(F(x) for x in at)
    return Box(lo, tuple(a + F(s) for a, s in zip(lo, sizes)))  # type: ignore[arg-type]


def board(path: str, where: Box, *, stock: Stock = PLY, thick=Axis.DEEP, run=None, grain=Axis.WIDE, show=None,
          bores=(), cuts=(), features=(), held=NOBODY, grown=None, span=SPAN, why=None) -> JoinedBoard:  # fmt: skip
    """A machined board; its owner is what stands before the last dot of `path`."""
    owner, _, name = path.rpartition(".")
    why = why or tuple(trace(s) for s in where.sizes)
    definition = f"{owner or 'job'}.{name}"
    made = Board(path, name, owner, definition, stock, where, thick, run, grain, show, frozenset(), tuple(features),
                 why, held, span, span)  # fmt: skip
    return JoinedBoard(made, where, grown or {}, tuple(cuts), tuple(bores), tuple(features))


def loose(path: str, length, width, count=1, stock: Stock = PLY, grain="length") -> LooseBoard:
    owner, _, name = path.rpartition(".")
    return LooseBoard(path, name, owner, name, stock, F(length), F(width), count, grain,
                      (trace(length), trace(width)), (FREE, FREE), SPAN)  # fmt: skip


def bore(face: str, at, diameter=THREE_EIGHTHS, depth: object = HALF, toward: str | None = None, source="") -> Bore:
    kind = "pocket" if toward else "hole"
    end = face_named(toward) if toward else None
    point = tuple(F(x) for x in at)
    return Bore(kind, face_named(face), point, F(diameter), depth, end, "", source)  # type: ignore[arg-type]


def dado(face: str, gone: Box, run=Axis.DEEP) -> Cavity:
    axis = face_named(face).axis
    return Cavity("dado", face_named(face), gone, run, gone.size(axis), F(3, 4), "", (), "")


def notch(gone: Box) -> Notch:
    return Notch("notch", gone, SPAN)


def mitre(end: str, long: str, angle=45) -> Mitre:
    return Mitre(face_named(end), F(angle), face_named(long), SPAN)


def moved(made: JoinedBoard, by: Motion) -> JoinedBoard:
    """The board with all that is on it, carried through a motion."""

    def end(face: Face | None) -> Face | None:
        return None if face is None else by.face(face)

    def feature(f):
        if isinstance(f, Notch):
            return replace(f, box=by.box(f.box))
        return replace(f, end=end(f.end), long=end(f.long))

    old = made.board
    grain = by.axis(old.grain) if isinstance(old.grain, Axis) else old.grain
    run = None if old.run is None else by.axis(old.run)
    features = tuple(feature(f) for f in made.features)
    new = replace(old, box=by.box(old.box), thick=by.axis(old.thick), run=run, grain=grain, show=end(old.show),
                  features=features)  # fmt: skip
    return replace(
        made,
        board=new,
        box=by.box(made.box),
        cuts=tuple(replace(c, face=end(c.face), box=by.box(c.box), run=by.axis(c.run)) for c in made.cuts),
        bores=tuple(replace(b, face=end(b.face), at=by.point(b.at), toward=end(b.toward)) for b in made.bores),
        features=features,
    )


def instance(path: str, definition: str | None = None, where: Box | None = None) -> Instance:
    parent = path.rpartition(".")[0]
    return Instance(path, definition or path, definition or path, parent, where, IDENTITY, SPAN)


def joint(ident: str, owner: str, contacts: Sequence[Contact], *kinds: str, span=SPAN) -> Joint:
    """The joint that those contacts belong to."""
    methods = tuple(Method(k, None, frozenset(), False, None, None, None, (), span) for k in kinds)
    entering = tuple(dict.fromkeys(c.a for c in contacts))
    receiving = tuple(dict.fromkeys(c.b for c in contacts if c.b))
    walls = [c.face_b.opposite for c in contacts if c.b is None]
    sides = (Side("", receiving, walls[0] if walls else None, True, span),)
    return Joint(ident, owner, (Side("", entering, None, True, span),), sides, methods, None, span)


def contact(joint_id: str, a: str, b: str | None, face: str = "bottom") -> Contact:
    at = face_named(face)
    return Contact(f"{joint_id}/{a}/{b or 'wall'}", joint_id, a, b, at, at.opposite, box(1, 0, 1), "butt")


def fitting(ident: str, owner: str, on: str, hardware: Hardware, count=1) -> Fitting:
    return Fitting(ident, owner, hardware, count, on, face_named("bottom"), (), SPAN)


def hardware(name: str, raises=0) -> Hardware:
    return Hardware(name, name, None, 1, None, F(raises), SPAN)


def scene(boards: Sequence[JoinedBoard] = (), loose: Sequence[LooseBoard] = (), instances: Sequence[Instance] = (),
          contacts: Sequence[Contact] = (), joints: Sequence[Joint] = (), rests: Sequence[Rest] = (),
          fittings: Sequence[Fitting] = (), room: Box | None = None,
          taken: Mapping[str, Fraction] | None = None) -> JoinedScene:  # fmt: skip
    job = Instance("", "", "Job", None, room, IDENTITY, SPAN)
    known = {i.path: i for i in (job, *instances)}
    for b in boards:
        if b.board.owner not in known:
            known[b.board.owner] = instance(b.board.owner)
    placed = Scene(dict(taken or {}), {b.board.path: b.board for b in boards}, tuple(loose), known, {}, tuple(joints),
                   tuple(rests), tuple(fittings), room)  # fmt: skip
    return JoinedScene(placed, {b.board.path: b for b in boards}, tuple(contacts), ())


def joined(*scenes: JoinedScene, measures: Mapping[str, tuple] | None = None, taken: Mapping[str, object] | None = None,
           order: Sequence[OrderLine] = (), hardware: Mapping[str, Hardware] | None = None, mark=MARK,
           source: str = "") -> Joined:  # fmt: skip
    """`measures` name -> (low, high); those in `taken` have their value."""
    measures, taken = measures or {}, taken or {}
    known = {
        name: MeasureDef(name, name, F(low), F(high), F(taken[name]) if name in taken else None, SPAN)
        for name, (low, high) in measures.items()
    }
    body = Body({}, None, {}, (), (), (), (), (), ())
    stocks = {s.name: s for s in (PLY, LATH, POST)}
    project = Project("Job", False, mark, "letter", stocks, dict(hardware or {}), {}, {}, known, standard(), None, {},
                      body, tuple(order), {"spec.rod": Source("spec.rod", source)}, {})  # fmt: skip
    placed = Placed(project, tuple(s.scene for s in scenes), tuple(m for m in known if m not in taken))
    return Joined(placed, tuple(scenes))


def scenes_of(make, measures: Mapping[str, tuple], taken: Mapping[str, object] | None = None, **more) -> Joined:
    """`make(values) -> JoinedScene` called for every scene that `place` would make."""
    taken = {m: F(v) for m, v in (taken or {}).items()}
    waiting = [m for m in measures if m not in taken]
    low = {m: F(measures[m][0]) for m in waiting}
    every = [low, *({**low, m: F(measures[m][1])} for m in waiting)] if waiting else [{}]
    if len(waiting) > 1:
        every.append({m: F(measures[m][1]) for m in waiting})
    values = [{**taken, **v} for v in every]
    made = [make(v) for v in values]
    made = [replace(s, scene=replace(s.scene, taken=v)) for s, v in zip(made, values)]
    return joined(*made, measures=measures, taken=taken, **more)
