"""An opening among the boards of its scene."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from setout.geometry import Axis, Box, Face, Motion, Vec
from setout.place.model import Board, Scene
from setout.place.site import Scope, Site
from setout.resolve.model import BoundExpr
from setout.values import Value

LEFT, RIGHT = Face(Axis.WIDE, -1), Face(Axis.WIDE, 1)
FARTHEST = Fraction(12)
"""A case side is looked for so far behind the edge of the opening, in inches."""


@dataclass(frozen=True)
class Ground:
    """`box` is the opening in its own assembly's coordinates, `to` takes them to the job's."""

    site: Site
    scene: Scene
    scope: Scope
    name: str
    box: Box
    to: Motion

    @property
    def path(self) -> str:
        return self.scope.path_of(self.name)

    def amount(self, expr: BoundExpr | None) -> Fraction | None:
        """The length that an expression makes in the opening's assembly."""
        if expr is None:
            return None
        value: Value | None = self.site.engine.answer(("amount", self.scope, expr))
        return value.amount if value is not None else None

    def number(self, expr: BoundExpr | None) -> Fraction | None:
        """The plain number that an expression makes there."""
        if expr is None:
            return None
        value: Value | None = self.site.engine.answer(("plain", self.scope, expr))
        return value.amount if value is not None else None

    def own(self, path: str) -> Box | None:
        """A board of the scene, seen from the opening's assembly."""
        board = self.scene.boards.get(path)
        return inverse(self.to).box(board.box) if board is not None else None

    def point(self, wide: Fraction, high: Fraction, deep: Fraction) -> Vec:
        return self.to.point((wide, high, deep))

    def is_inside(self, path: str) -> bool:
        """Whether that board fills the opening."""
        return path.startswith(f"{self.path}.")

    def behind(self, face: Face, region: Box) -> tuple[Board, Fraction] | None:
        """The nearest board beyond the opening's `face` that stands across `region`, and how far it stands back."""
        region, out = self.to.box(region), self.to.face(face)
        plane = self.to.box(self.box).face(out)
        found: list[tuple[Fraction, str]] = []
        for path, board in self.scene.boards.items():
            back = (board.box.face(out.opposite) - plane) * out.sign
            if 0 <= back <= FARTHEST and not self.is_inside(path) and _across(board.box, region, out.axis):
                found.append((back, path))
        if not found:
            return None
        back, path = min(found)
        return self.scene.boards[path], back


def ground_of(site: Site, scene: Scene, scope: Scope, name: str) -> Ground | None:
    box: Box | None = site.engine.answer(("box", scope, name, 0))
    to: Motion | None = site.engine.answer(("motion", scope))
    return Ground(site, scene, scope, name, box, to) if box is not None and to is not None else None


def inverse(motion: Motion) -> Motion:
    """The motion back."""
    to, sign = [0, 0, 0], [1, 1, 1]
    shift = [Fraction(0)] * 3
    for i in range(3):
        to[motion.to[i]], sign[motion.to[i]] = i, motion.sign[i]
        shift[i] = -motion.sign[i] * motion.shift[motion.to[i]]
    return Motion(tuple(to), tuple(sign), tuple(shift))  # type: ignore[arg-type]


def _across(a: Box, b: Box, but: Axis) -> bool:
    return all(a.lo[k] < b.hi[k] and b.lo[k] < a.hi[k] for k in Axis if k != but)
