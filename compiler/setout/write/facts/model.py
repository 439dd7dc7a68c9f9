"""The plan with what every document asks of it at hand."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from typing import TypeVar

from setout.geometry import Box
from setout.inspect.model import CarriedUnit
from setout.join import Footprint
from setout.join.model import Cavity, Contact, Fastening, JoinedScene
from setout.piece.model import Piece
from setout.place.model import Fitting, Instance, Joint, LooseBoard, Scene
from setout.plan.model import Plan
from setout.resolve.model import Project
from setout.units import Style
from setout.write.facts.layout import Landing, landings
from setout.write.facts.paths import Where, fold
from setout.write.facts.scenes import InScene, in_scenes
from setout.write.facts.sizes import Length, over_scenes

T = TypeVar("T")


@dataclass(frozen=True)
class Facts:
    """`revision` is the hash of what the spec means; `width` and `height` a page's room for a drawing, in points."""

    plan: Plan
    style: Style
    revision: str
    width: float
    height: float

    @property
    def project(self) -> Project:
        return self.plan.pieces.joined.placed.project

    @property
    def joined(self) -> JoinedScene:
        return self.plan.pieces.joined.drawn

    @property
    def other_scenes(self) -> tuple[JoinedScene, ...]:
        """The job for other values of the measures not taken yet; none where all are."""
        return self.plan.pieces.joined.scenes[:-1]

    @property
    def scene(self) -> Scene:
        return self.joined.scene

    @property
    def unit(self) -> str:
        return "mm" if self.style.metric else "in"

    @property
    def mark_of(self) -> Mapping[str, str]:
        return self.plan.pieces.mark_of

    @cached_property
    def piece_by_mark(self) -> Mapping[str, Piece]:
        return {piece.mark: piece for piece in self.plan.pieces.pieces}

    @cached_property
    def outline(self) -> Box | None:
        """The true outline of all that stands in place; None when nothing does."""
        return self.in_scenes[-1].whole if self.in_scenes else None

    @cached_property
    def in_scenes(self) -> tuple[InScene, ...]:
        """What stands where in each scene, the one that is drawn last; none when nothing does."""
        return in_scenes(self.plan, self.style)

    def varying(self, of: Callable[[InScene], Fraction]) -> Length:
        """A length that is to be worked out from a scene."""
        return over_scenes(map(of, self.in_scenes), self.style)

    def sizes_over_scenes(self, instance: str) -> tuple[Length, ...]:
        """How wide, high and deep an assembly is in itself; it must say its size."""
        motion = self.scene.instances[instance].motion
        boxes = (joined.scene.instances[instance].box for joined in self.plan.pieces.joined.scenes)
        scenes = [motion.own_sizes(box.sizes) for box in boxes if box is not None]
        return tuple(over_scenes(values, self.style) for values in zip(*scenes))

    @cached_property
    def boards_of(self) -> Mapping[str, tuple[str, ...]]:
        """Paths of an assembly's own boards, by the assembly's path."""
        return _gathered((board.owner, board.path) for board in self.scene.boards.values())

    @property
    def unit_of(self) -> Mapping[str, str]:
        return self.scene.unit_of

    @cached_property
    def room_contacts_of(self) -> Mapping[str, tuple[Contact, ...]]:
        """By unit, its contacts with walls and floor."""
        return _gathered((self.unit_of[c.a], c) for c in self.joined.contacts if c.b is None)

    @cached_property
    def carried(self) -> tuple[CarriedUnit, ...]:
        """Assemblies placed in the job with the boards that go between them, else boards fixed to the room; in the
        order of the build."""
        found = self.plan.inspected
        if found is None:
            return ()
        steps = [step.id.target for step in self.plan.order.steps if step.id.verb in ("set", "hang")]
        turn = {target: n for n, target in enumerate(steps)}
        assemblies = any(self.scene.instances)
        wanted = [unit for unit in found.carried if assemblies or unit.path in self.room_contacts_of]
        return tuple(sorted(wanted, key=lambda unit: turn.get(unit.path, len(turn))))

    @cached_property
    def loose_of(self) -> Mapping[str, tuple[LooseBoard, ...]]:
        """By assembly, as are joints and hardware."""
        return _gathered((loose.owner, loose) for loose in self.scene.loose)

    @cached_property
    def joints_of(self) -> Mapping[str, tuple[Joint, ...]]:
        return _gathered((joint.owner, joint) for joint in self.scene.joints)

    @cached_property
    def joint_by_id(self) -> Mapping[str, Joint]:
        return {joint.id: joint for joint in self.scene.joints}

    @cached_property
    def steps_of(self) -> Mapping[str, int]:
        """In how many steps a joint is made."""
        return Counter(joint for step in self.plan.order.steps for joint in step.joints)

    @cached_property
    def fittings_of(self) -> Mapping[str, tuple[Fitting, ...]]:
        return _gathered((fitting.owner, fitting) for fitting in self.scene.fittings)

    @cached_property
    def instances_in(self) -> Mapping[str, tuple[Instance, ...]]:
        """Assemblies by the one that they stand in."""
        return _gathered((i.parent, i) for i in self.scene.instances.values() if i.parent is not None)

    @cached_property
    def contacts_of(self) -> Mapping[str, tuple[Contact, ...]]:
        """By joint."""
        return _gathered((contact.joint, contact) for contact in self.joined.contacts)

    @cached_property
    def fastenings_of(self) -> tuple[Mapping[str, tuple[Fastening, ...]], ...]:
        """By joint, in each scene; the last is drawn."""
        return tuple(_gathered((f.joint, f) for f in scene.fastenings) for scene in self.plan.pieces.joined.scenes)

    @cached_property
    def pocketed(self) -> Mapping[tuple[str, str], Fastening]:
        """Pocket screws by contact and the board drilled."""
        return {(f.contact, f.driven): f for f in self.joined.fastenings if f.kind == "pockets"}

    @cached_property
    def cavities_of(self) -> Mapping[str, tuple[Cavity, ...]]:
        """By joint."""
        return _gathered((cut.joint, cut) for board in self.joined.boards.values() for cut in board.cuts)

    @cached_property
    def cut_from(self) -> Mapping[str, tuple[tuple[str, int], ...]]:
        """The sources that the boards of each mark come from, and how many from each."""
        stocks = () if self.plan.cutting is None else self.plan.cutting.stocks
        count = Counter((laid.mark, p.source.id) for s in stocks for p in s.sources for laid in p.laid)
        return _gathered((mark, (source, n)) for (mark, source), n in count.items())

    @property
    def footprints(self) -> Mapping[str, tuple[Footprint, ...]]:
        """Where others land on a board, by the board's path."""
        return self.joined.footprints

    @cached_property
    def landings(self) -> Mapping[str, tuple[Landing, ...]]:
        """What is pencilled on each piece, by mark."""
        return {piece.mark: landings(self, piece) for piece in self.plan.pieces.pieces}

    @property
    def open_measures(self) -> tuple[str, ...]:
        return self.plan.pieces.joined.placed.open_measures

    @cached_property
    def loose_by_path(self) -> Mapping[str, LooseBoard]:
        return {loose.path: loose for loose in self.scene.loose}

    def letter(self, definition: str) -> str:
        return self.plan.pieces.letters.get(definition, "")

    def definition_title(self, definition: str) -> str:
        """What an assembly is called; the job by its own title."""
        known = self.project.assemblies.get(definition)
        return self.project.title if known is None else known.title or known.name

    def where(self, piece: Piece) -> tuple[Where, ...]:
        return self.places(piece.boards)

    def places(self, paths: Iterable[str]) -> tuple[Where, ...]:
        return fold(self.place(path) for path in paths)

    def place(self, path: str) -> tuple[str, str]:
        """Owner and name of a board, loose ones too."""
        board = self.scene.boards.get(path) or self.loose_by_path[path]
        return board.owner, board.name


def _gathered(pairs: Iterable[tuple[str, T]]) -> dict[str, tuple[T, ...]]:
    under: dict[str, list[T]] = {}
    for key, thing in pairs:
        under.setdefault(key, []).append(thing)
    return {key: tuple(things) for key, things in under.items()}


# a page less its margins, and a little air (style.css.j2 sets the margins)
_ROOM = {"letter": (490.0, 640.0), "a4": (476.0, 700.0)}


def facts(plan: Plan, revision: str) -> Facts:
    project = plan.pieces.joined.placed.project
    width, height = _ROOM[project.paper]
    return Facts(plan, Style(project.metric, project.mark), revision, width, height)
