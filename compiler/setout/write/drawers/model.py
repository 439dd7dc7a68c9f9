"""What the drawers' sheet is printed from."""

from __future__ import annotations

from dataclasses import dataclass

from setout.drawing import Drawing
from setout.write.facts.sizes import Length


@dataclass(frozen=True)
class Front:
    mark: str
    sizes: tuple[Length, ...]
    low: Length


@dataclass(frozen=True)
class Row:
    """One drawer of every copy of a bank. `front` None for a tray; `box`, `bottom`, `slide` empty or None for a dummy.
    `bottom` as it is cut, tongues and all; `boards` the marks of all but the front, and how many in one drawer."""

    number: int
    front: Front | None
    box: tuple[Length, ...]
    bottom: tuple[Length, ...]
    slide: Length | None
    boards: tuple[tuple[str, int], ...]


@dataclass(frozen=True)
class Slides:
    """`load` and `each` (what one drawer is to carry) in pounds or kilograms as the spec has it, "" where not said.
    `screws` from the slide's front end; `pairs` in all the copies of the bank."""

    title: str
    kind: str
    length: Length
    pairs: int
    setback: Length
    screws: tuple[Length, ...]
    load: str
    each: str


@dataclass(frozen=True)
class Block:
    """`number` the drawer whose slides stand on it; None between fronts."""

    size: Length
    number: int | None
    count: int


@dataclass(frozen=True)
class Bank:
    """`names` of the openings alike. `sides` the marks that the slides are screwed to, left and right; `packers` the
    marks that fill up to the opening, with how many in one bank."""

    names: tuple[str, ...]
    drawing: Drawing | None
    opening: tuple[Length, ...]
    style: str
    reveal: Length
    clearance: Length
    rows: tuple[Row, ...]
    slides: Slides | None
    sides: tuple[str, ...]
    packers: tuple[tuple[str, int], ...]
    blocks: tuple[Block, ...]
    gaps: tuple[Block, ...]
    waits: bool


@dataclass(frozen=True)
class Leaf:
    """A door's mark and that of the `side` it hangs on. `plate`: from that board's front edge back to the plates' two
    screws as they are drilled, so an inset door's thickness is in it; None without plates."""

    mark: str
    side: str
    plate: Length | None


@dataclass(frozen=True)
class Door:
    """One opening's doors. `cups` above the door's lower edge; `inward` from the door's hinge edge to the middle of the
    cup; `apart`: between a plate's two screws; `backs`: how far back the plates are, once where all are alike."""

    name: str
    leaves: tuple[Leaf, ...]
    size: tuple[Length, ...]
    overlay: bool
    hinge: str
    cup: Length | None
    deep: Length | None
    inward: Length | None
    apart: Length | None
    cups: tuple[Length, ...]

    @property
    def backs(self) -> tuple[Length, ...]:
        return tuple(dict.fromkeys(leaf.plate for leaf in self.leaves if leaf.plate is not None))


@dataclass(frozen=True)
class Shelves:
    """`pins` heights above the opening's floor; `every` when they are evenly spaced."""

    name: str
    marks: tuple[tuple[str, int], ...]
    pins: tuple[Length, ...]
    every: Length | None


@dataclass(frozen=True)
class Kept:
    title: str
    name: str
    sizes: tuple[Length, ...]
    spare: tuple[Length, ...]


@dataclass(frozen=True)
class Drawers:
    """`drawers` how many there are in all, trays counted, dummies not."""

    drawers: int
    banks: tuple[Bank, ...]
    doors: tuple[Door, ...]
    shelves: tuple[Shelves, ...]
    kept: tuple[Kept, ...]
