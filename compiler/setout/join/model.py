"""Boards with their joints cut into them. Coordinates are still the job's."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from setout.geometry import Axis, Box, Face, Vec
from setout.join.footprints import Footprint, Spot, footprints, unsettled
from setout.place.model import Board, Feature, Placed, Scene


@dataclass(frozen=True)
class Contact:
    """Two boards (or a board and a wall of the room) touching. `area` is flat on `face_a.axis`.

    `a` is the entering board, `b` the receiver or None for a wall. kind: "butt" (edge to face), "lap" (face to edge),
    "face" (face to face), "edge" (edge to edge).
    """

    id: str  # "JOINT/A/B"
    joint: str
    a: str
    b: str | None
    face_a: Face
    face_b: Face
    area: Box
    kind: str


@dataclass(frozen=True)
class Cavity:
    """A dado, rabbet or groove milled into a board: the `box` of material gone, cut from `face`, running along `run`.

    `depth` is how deep from `face`; `width` across the run; `for_board` the part that enters; `stopped` the faces
    it stops short of.
    """

    kind: str
    face: Face
    box: Box
    run: Axis
    depth: Fraction
    width: Fraction
    for_board: str
    stopped: tuple[Face, ...]
    joint: str


@dataclass(frozen=True)
class Bore:
    """A hole to drill.

    kind: "pocket" (slanting, drilled in `face`, coming out of the edge `toward`), "clearance" (through, for a
    screw), "pilot" (in the second piece), "dowel", "hardware", "hole" (the spec's own). `at` lies on `face`; for a
    pocket it lies on the line where `face` meets the edge `toward`. `depth` None is right through. `fastener` is a
    row of the screw list or "".
    """

    kind: str
    face: Face
    at: Vec
    diameter: Fraction
    depth: Fraction | None
    toward: Face | None
    fastener: str
    source: str  # contact id, fitting id, or "" for the spec's own


@dataclass(frozen=True)
class Fastening:
    """What holds one contact by one method, counted.

    `fastener`: "pocket screw 1-1/4 in", "screw #8 x 2 in", "brad 1 in", "dowel 3/8 x 1-1/2 in", "glue"; the kind
    and lengths stand apart in `kind`, `gauge`, `length` for printing in the builder's units. `setting` is the
    drill stop's scale setting for pockets. `driven` is the board the fastener is driven through; `face` the face
    it is driven or drilled from. `held` names measures the count hangs on (scenes disagree).
    """

    contact: str
    joint: str
    kind: str  # pockets screws brads glue dowels
    count: int
    gauge: int | None
    length: Fraction | None
    diameter: Fraction | None
    setting: Fraction | None
    driven: str
    face: Face | None
    area: Fraction  # square inches of contact, for glue
    also: tuple[str, ...] = ()  # boards in front of `driven` that a wall's screws pass first


@dataclass(frozen=True)
class JoinedBoard:
    """`box` is the board's box with its tongues, the size it is cut to. `cuts` are cavities others need in it."""

    board: Board
    box: Box
    grown: Mapping[Face, Fraction]  # by how much each face was moved out for a housing
    cuts: tuple[Cavity, ...]
    bores: tuple[Bore, ...]
    features: tuple[Feature, ...]  # the spec's notches, cut-outs and mitres (holes have become bores)


@dataclass(frozen=True)
class JoinedScene:
    scene: Scene
    boards: Mapping[str, JoinedBoard]
    contacts: tuple[Contact, ...]
    fastenings: tuple[Fastening, ...]

    @cached_property
    def footprints(self) -> Mapping[str, tuple[Footprint, ...]]:
        """Where others land on a board, by the board's path."""
        return footprints(self)


@dataclass(frozen=True)
class Joined:
    """Scenes as in Placed; the last is drawn."""

    placed: Placed
    scenes: tuple[JoinedScene, ...]

    @property
    def drawn(self) -> JoinedScene:
        return self.scenes[-1]

    @cached_property
    def unsettled(self) -> frozenset[Spot]:
        """Board, partner and face of the footprints that are elsewhere on the board in another scene."""
        return unsettled(self)


__all__ = ["Bore", "Cavity", "Contact", "Fastening", "Joined", "JoinedBoard", "JoinedScene", "Vec"]
