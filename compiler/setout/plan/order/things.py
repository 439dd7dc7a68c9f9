"""What is put together and what is put in place: the job as the builder's hands meet it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from setout.geometry import Axis, Face
from setout.join.model import JoinedScene
from setout.place.model import Scene
from setout.plan.order.tree import Tree

FLOOR = Face(Axis.HIGH, -1)


@dataclass(frozen=True)
class Thing:
    """Boards that become one: an instance, or boards of the job itself that are joined ("": the job is one assembly).

    `boards` and `loose` are its own, `inner` the things joined into it, `within` the instances that hold it, itself
    first. `joints` are made when it is put together.
    `unit`: it is put in place on its own, and then `fastened` to its neighbours; `hung` on the wall, or else set.
    `wall` are its joints to the room, `fastened` pairs (joint, the neighbouring unit or None for the room).
    """

    path: str
    definition: str
    within: tuple[str, ...]
    boards: tuple[str, ...]
    loose: tuple[str, ...]
    inner: tuple[str, ...]
    joints: tuple[str, ...]
    unit: bool
    hung: bool
    wall: tuple[str, ...]
    fastened: tuple[tuple[str, str | None], ...]
    apart: bool = False  # a front, a door or a shelf on pins, put into what holds it when that stands

    @property
    def is_assembled(self) -> bool:
        return len(self.boards) + len(self.inner) > 1


@dataclass(frozen=True)
class Things:
    """By path, in the order in which they are worked on: what is joined into another thing before it, what stands in it
    loosely after it. `of_board` gives each board (loose ones too) its thing, `unit_of` each thing its unit."""

    by_path: Mapping[str, Thing]
    of_board: Mapping[str, str]
    unit_of: Mapping[str, str]

    @property
    def units(self) -> tuple[Thing, ...]:
        return tuple(t for t in self.by_path.values() if t.unit)


def things(joined: JoinedScene) -> Things:
    """All things of the job that have boards of their own or things joined into them."""
    tree = Tree(joined)
    found = _Found(joined, tree)
    unit_of = {path: tree.unit(path, found.inner) for path in tree.order(found.inner)}
    on_floor = _on_floor(joined.scene, tree, unit_of)
    made = {path: found.thing(path, on_floor) for path in unit_of}
    kept = {path: t for path, t in made.items() if t.boards or t.loose or t.inner}
    return Things(kept, tree.of_board, {path: unit_of[path] for path in kept})


class _Found:
    """What the contacts say about each thing: joints made in it, things joined into it, joints to its neighbours."""

    def __init__(self, joined: JoinedScene, tree: Tree) -> None:
        self.tree = tree
        self.inner: dict[str, str] = {}  # thing -> the thing it is joined into
        self.joints: dict[str, dict[str, None]] = {}
        outside: list[tuple[str, str, str | None, Face]] = []
        for contact in joined.contacts:
            a = tree.of_board[contact.a]
            b = None if contact.b is None else tree.of_board[contact.b]
            meet = None if b is None else tree.meeting(a, b)
            if meet is None:
                outside.append((contact.joint, a, b, contact.face_a))
                continue
            self.joints.setdefault(meet, {})[contact.joint] = None
            self.inner.update({tree.child(meet, t): meet for t in (a, b) if t is not None and t != meet})
        self.wall: dict[str, dict[str, None]] = {}
        self.fastened: dict[str, dict[tuple[str, str | None], None]] = {}
        self.hangs: set[str] = set()
        for joint, a, b, face in outside:
            self._outside(joint, a, b, face)
        self.holds: dict[str, list[str]] = {}
        for part, whole in self.inner.items():
            self.holds.setdefault(whole, []).append(part)

    def _outside(self, joint: str, a: str, b: str | None, face: Face) -> None:
        unit = self.tree.unit(a, self.inner)
        other = None if b is None else self.tree.unit(b, self.inner)
        self.fastened.setdefault(unit, {})[joint, other] = None
        if b is None:
            self.wall.setdefault(unit, {})[joint] = None
            if face != FLOOR:
                self.hangs.add(unit)

    def thing(self, path: str, on_floor: Iterable[str]) -> Thing:
        tree = self.tree
        return Thing(
            path=path,
            definition=tree.definition(path),
            within=tree.within(path),
            boards=tuple(tree.boards.get(path, ())),
            loose=tuple(tree.loose.get(path, ())),
            inner=tuple(self.holds.get(path, ())),
            joints=tuple(self.joints.get(path, ())),
            unit=path not in self.inner,
            hung=path in self.hangs and path not in on_floor,
            wall=tuple(self.wall.get(path, ())),
            fastened=tuple(self.fastened.get(path, ())),
            apart=path in tree.apart,
        )


def _on_floor(scene: Scene, tree: Tree, unit_of: Mapping[str, str]) -> set[str]:
    """Units that stand on the floor, with or without feet."""
    lows = [b.box.lo[Axis.HIGH] for b in scene.boards.values()]
    floor = scene.room.lo[Axis.HIGH] if scene.room else min(lows, default=None)
    standing = {unit_of[tree.of_board[p]] for p, b in scene.boards.items() if b.box.lo[Axis.HIGH] == floor}
    footed = {unit_of[tree.of_board[f.board]] for f in scene.fittings if f.hardware.raises and f.board in tree.of_board}
    return standing | footed
