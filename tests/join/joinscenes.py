"""Scenes put together by hand: a few lines for what `place` would make of a spec."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from setout.geometry import Axis, Box, Face, face_named
from setout.join import join
from setout.place.model import (
    Board,
    Feature,
    Fitting,
    Hole,
    Instance,
    Joint,
    Method,
    Notch,
    Placed,
    Rest,
    Scene,
    Side,
)
from setout.practice import standard
from setout.resolve.model import Body, Hardware, Project, Room, Stock
from setout.source import Span
from setout.values import Trace

NONE = frozenset()
PLY = Fraction(23, 32)
_TRACE = Trace("rule", "by hand", Fraction(0), 1)


def frac(text) -> Fraction:
    if not isinstance(text, str):
        return Fraction(text)
    sign = -1 if text.startswith("-") else 1
    return sign * sum(Fraction(part) for part in text.lstrip("-").split("-"))


def span(n: int) -> Span:
    return Span("spec.rod", n, n + 1)


def stock(thick: Fraction) -> Stock:
    return Stock("ply", "ply", "sheet", Fraction(96), Fraction(48), thick, "long", (), (), span(0))


def board(path: str, wide, high, deep, *features: Feature, thick="", show: str | None = None, at: int = 0) -> Board:
    """A board from three (low, high) pairs. Its thickness is along `thick`, else along its shortest side."""
    pairs = [tuple(map(frac, pair)) for pair in (wide, high, deep)]
    box = Box(tuple(p[0] for p in pairs), tuple(p[1] for p in pairs))
    axis = Axis[thick.upper()] if thick else min(Axis, key=lambda k: box.size(k))
    place = span(1000 + (at or sum(map(ord, path))))
    name, owner = path.rpartition(".")[2], path.rpartition(".")[0]
    shown, clear, traces = face_named(show) if show else None, (NONE,) * 3, (_TRACE,) * 3
    return Board(
        path, name, owner, path.split(".")[0], stock(box.size(axis)), box, axis, None, None, shown, NONE,
        features, traces, clear, place, place,
    )  # fmt: skip


def notch(wide, high, deep, kind: str = "notch") -> Notch:
    pairs = [tuple(map(frac, pair)) for pair in (wide, high, deep)]
    return Notch(kind, Box(tuple(p[0] for p in pairs), tuple(p[1] for p in pairs)), span(5))


def hole(face: str, at, diameter, depth=None) -> Hole:
    return Hole(face_named(face), tuple(map(frac, at)), frac(diameter), None if depth is None else frac(depth), span(6))


def method(kind: str, *, on: str | None = None, through=(), studs=False, every=None, depth=None, gap=None, stopped=()):
    return Method(
        kind,
        face_named(on) if on else None,
        frozenset(through),
        studs,
        None if every is None else frac(every),
        None if depth is None else frac(depth),
        None if gap is None else frac(gap),
        tuple((face_named(face), frac(short)) for face, short in stopped),
        span(sum(map(ord, kind))),
    )


def side(thing) -> Side:
    """A part's name, a wall (`room.back`), or a tuple of paths for a whole assembly."""
    if isinstance(thing, tuple):
        return Side(" ".join(thing), thing, None, False, span(sum(map(len, thing))))
    wall = face_named(thing[5:]) if thing.startswith("room.") else None
    return Side(thing, () if wall else (thing,), wall, True, span(sum(map(ord, thing))))


_count = [0]


def joint(entering, receiving, *methods: Method | str, only: str | None = None) -> Joint:
    _count[0] += 1
    made = tuple(method(m) if isinstance(m, str) else m for m in methods)
    as_sides = [tuple(map(side, x)) if isinstance(x, list) else (side(x),) for x in (entering, receiving)]
    return Joint(f"#{_count[0]}", "", *as_sides, made, only, span(5000 + _count[0]))


def rest(upper: str, lower: str) -> Rest:
    return Rest((upper,), (lower,), span(7))


def fitting(path: str, face: str, points, diameter, depth=None) -> Fitting:
    hole = (frac(diameter), None if depth is None else frac(depth))
    hardware = Hardware("foot", "foot", None, 1, hole, Fraction(0), span(8))
    at = tuple(tuple(map(frac, point)) for point in points)
    return Fitting("fit#1", "", hardware, len(at), path, face_named(face), at, span(9))


def scene(boards, *joints: Joint, rests=(), fittings=(), room: Box | None = None, taken=None) -> Scene:
    job = Instance("", "", "Job", None, None, None, span(0))
    return Scene(
        taken or {}, {b.path: b for b in boards}, (), {"": job}, {}, joints, tuple(rests), tuple(fittings), room
    )


def placed(*scenes: Scene, measures=(), room: Room | None = None, **overrides) -> Placed:
    body = Body({}, None, {}, (), (), (), (), (), ())
    practice = standard().overridden({name: frac(value) for name, value in overrides.items()})
    project = Project(
        "Job", False, Fraction(1, 64), "letter", {}, {}, {}, {}, {}, practice, room, {}, body, (), {}, {}
    )  # fmt: skip
    return Placed(project, scenes, tuple(measures))


def joined(boards, *joints: Joint, **more):
    """The one scene joined, and its diagnostics."""
    room = more.pop("room_of", None)
    overrides = more.pop("practice", {})
    checked = join(placed(scene(boards, *joints, **more), room=room, **overrides))
    return checked.value.drawn, checked.diagnostics


def codes(diagnostics, *, notes: bool = False) -> list[str]:
    return sorted(d.code for d in diagnostics if notes or d.severity.value != "note")


def mirrored(b: Board) -> Board:
    """The board seen in a mirror across wide = 0."""

    def flip(box: Box) -> Box:
        return Box((-box.hi[0], *box.lo[1:]), (-box.lo[0], *box.hi[1:]))

    features = tuple(replace(f, box=flip(f.box)) for f in b.features)
    return replace(b, box=flip(b.box), features=features)


def turned_face(face: Face) -> Face:
    return face.opposite if face.axis == Axis.WIDE else face
