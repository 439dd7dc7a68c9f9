"""What an assembly's sheet is printed from."""

from __future__ import annotations

from dataclasses import dataclass

from setout.drawing import Drawing
from setout.write.facts.lines import FastenerLine
from setout.write.facts.paths import Where
from setout.write.facts.sizes import Length


@dataclass(frozen=True)
class Part:
    mark: str
    names: tuple[str, ...]
    count: int
    length: Length
    width: Length
    thick: Length


@dataclass(frozen=True)
class Side:
    """One side of a joint: boards as seen from within the assembly, their marks, and walls ("bottom" the floor)."""

    where: tuple[Where, ...]
    marks: tuple[str, ...]
    walls: tuple[str, ...]


@dataclass(frozen=True)
class Housing:
    kind: str
    depth: Length
    width: Length


@dataclass(frozen=True)
class Joint:
    """`meets` contact kinds as in join.model.Contact; `places` how many contacts."""

    entering: Side
    receiving: Side
    meets: tuple[str, ...]
    places: int
    housings: tuple[Housing, ...]
    fasteners: tuple[FastenerLine, ...]
    glued: bool


@dataclass(frozen=True)
class Hardware:
    """`count` 0: it is counted where its other half goes. `pairs`: by the pair. `on` marks with the face it goes on."""

    title: str
    count: int
    pairs: bool
    on: tuple[tuple[str, str], ...]
    diameter: Length | None
    depth: Length | None


@dataclass(frozen=True)
class Square:
    """The diagonal of what is seen from `side`, "front", "above" or "side", its `sizes` those beside each other there;
    both alike within `tolerance`. `box`: of a drawer without its front. `waits` when a size hangs on a measure."""

    side: str
    box: bool
    sizes: tuple[Length, Length]
    diagonal: Length
    tolerance: Length
    waits: bool


@dataclass(frozen=True)
class Sheet:
    """`sub` assemblies standing in it. `sizes` wide, high, deep. `beside`: drawing and parts stand side by side; in
    that case `parts_wide` is the width of their table in points. `called` what is built by it, where other sheets have
    the same title."""

    title: str
    letter: str
    names: tuple[str, ...]
    sizes: tuple[Length, ...]
    drawing: Drawing | None
    beside: bool
    parts: tuple[Part, ...]
    sub: tuple[str, ...]
    joints: tuple[Joint, ...]
    hardware: tuple[Hardware, ...]
    square: Square | None
    parts_wide: int
    called: str = ""


@dataclass(frozen=True)
class Assemblies:
    sheets: tuple[Sheet, ...]
