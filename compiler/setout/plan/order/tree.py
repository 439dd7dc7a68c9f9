"""Which thing a board belongs to, and how things lie in one another."""

from __future__ import annotations

from collections.abc import Mapping

from setout.join.model import JoinedScene
from setout.place.model import Scene


class Tree:
    """`boards` and `loose` by thing, `of_board` the way back. A thing is an instance, or boards of the job's own that
    are joined to each other, named by the first of them ("" when the whole job is one such)."""

    def __init__(self, joined: JoinedScene) -> None:
        scene = joined.scene
        self.instances = scene.instances
        owner = {path: b.owner for path, b in scene.boards.items()}
        self.apart = {path: owner[path] for path in set_apart(scene) if path in owner}
        groups = _job_groups(joined, [path for path, o in owner.items() if o == ""])
        self.of_board = {p: p if p in self.apart else o or groups[p] for p, o in owner.items()}
        self.boards: dict[str, list[str]] = {}
        for path, thing in self.of_board.items():
            self.boards.setdefault(thing, []).append(path)
        self.loose: dict[str, list[str]] = {}
        for part in scene.loose:
            self.loose.setdefault(part.owner, []).append(part.path)
            self.of_board[part.path] = part.owner
        self._chains: dict[str, tuple[str, ...]] = {}

    def definition(self, thing: str) -> str:
        return self.instances[thing].definition if thing and thing in self.instances else ""

    def within(self, thing: str) -> tuple[str, ...]:
        """The instances that hold a thing, itself first; the job is not among them."""
        if thing not in self._chains:
            chain, at = [], thing if thing in self.instances else self.apart.get(thing, "")
            while at:
                chain.append(at)
                at = self.instances[at].parent or ""
            self._chains[thing] = tuple(chain)
        return self._chains[thing]

    def meeting(self, a: str, b: str) -> str | None:
        """The nearest thing that holds both; None for two that only the job holds."""
        if a == b:
            return a
        if a in self.apart or b in self.apart:
            return None
        holds_b = set(self.within(b))
        return next((thing for thing in self.within(a) if thing in holds_b), None)

    def child(self, outer: str, thing: str) -> str:
        """The instance directly in `outer` that holds `thing`."""
        chain = self.within(thing)
        return chain[chain.index(outer) - 1]

    def unit(self, thing: str, inner: Mapping[str, str]) -> str:
        """What a thing is put in place with: the outermost one that it is joined into."""
        while thing in inner:
            thing = inner[thing]
        return thing

    def order(self, inner: Mapping[str, str]) -> list[str]:
        """All things in the order of work: boxes as placed, what is joined into one before it, what stands loosely in
        it after it; then the job's own boards, which go over and between the boxes."""
        children: dict[str, list[str]] = {}
        for path, instance in self.instances.items():
            if path:
                children.setdefault(instance.parent or "", []).append(path)
        own = dict.fromkeys(t for t in (*self.boards, *self.loose) if t not in self.instances or not t)
        order: list[str] = []
        waiting = [(t, False) for t in reversed([*children.get("", ()), *own])]
        while waiting:
            thing, ready = waiting.pop()
            if ready:
                order.append(thing)
                continue
            below = children.get(thing, []) if thing else []
            joined = [(c, False) for c in below if c in inner]
            loose = [(c, False) for c in below if c not in inner]
            waiting.extend(reversed([*joined, (thing, True), *loose]))
        return order


def set_apart(scene: Scene) -> tuple[str, ...]:
    """Boards that are put in when all else stands, each by itself: drawer fronts, doors, shelves on pins."""
    fronts = [f"{d.path}.front_panel" for bank in scene.banks if bank.style != "integral" for d in bank.drawers]
    doors = [path for door in scene.doors for path in door.boards]
    return (*fronts, *doors, *(path for bay in scene.shelves if bay.pins for path in bay.boards))


def _job_groups(joined: JoinedScene, own: list[str]) -> dict[str, str]:
    """The name of the group each of the job's own boards belongs to. Beside assemblies, a board that is fastened to the
    room is on its own: a cleat is hung before what goes on it."""
    alone = len(joined.scene.instances) == 1
    to_room = set() if alone else {c.a for c in joined.contacts if c.b is None}
    leader = {path: path for path in own}

    def lead(path: str) -> str:
        while leader[path] != path:
            leader[path] = leader[leader[path]]
            path = leader[path]
        return path

    place = {path: i for i, path in enumerate(own)}
    for c in joined.contacts:
        if c.a in leader and c.b in leader and c.a not in to_room and c.b not in to_room:
            a, b = sorted((lead(c.a), lead(c.b)), key=place.__getitem__)  # type: ignore[type-var]
            leader[b] = a
    groups = {path: lead(path) for path in own}
    whole = alone and len(own) > 1 and len(set(groups.values())) == 1
    return {path: "" for path in own} if whole else groups
