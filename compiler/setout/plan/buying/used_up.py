"""What joints and edges use up: fasteners by the box, glue by area, banding by the roll; the most of all scenes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from fractions import Fraction
from math import ceil

from setout.join.model import Fastening, JoinedBoard, JoinedScene
from setout.piece.model import Pieces
from setout.plan.buying.model import BuyLine
from setout.plan.buying.packs import pack_price, packs
from setout.practice import Practice
from setout.resolve.model import Hardware

_KINDS = ("pockets", "screws", "brads", "dowels")
Size = tuple[str, int | None, "Fraction | None", "Fraction | None"]


def fasteners(pieces: Pieces) -> list[BuyLine]:
    """One line for each size, kinds in the order of `_KINDS`, small sizes first."""
    project = pieces.joined.placed.project
    most = _most(_counted(scene.fastenings) for scene in pieces.joined.scenes)
    return [
        _fastener(size, most[size], project.hardware.values(), project.practice)
        for size in sorted(most, key=lambda s: (_KINDS.index(s[0]), s[1] or 0, s[3] or 0, s[2] or 0))
    ]


def glue(pieces: Pieces) -> list[BuyLine]:
    scenes, project = pieces.joined.scenes, pieces.joined.placed.project
    area = max(sum((f.area for f in scene.fastenings if f.kind == "glue"), Fraction(0)) for scene in scenes)
    if not area:
        return []
    serving = next((h for h in project.hardware.values() if h.serves and h.serves.kind == "glue"), None)
    need = area * (1 + project.practice.value("glue_waste"))
    if serving is None or serving.serves is None or serving.serves.covers is None:
        covers = project.practice.value("glue_covers")
        return [BuyLine("glue", "", "wood glue", need, Fraction(0), covers, packs(need, Fraction(0), covers), None)]
    return [_of(serving, "glue", need, serving.serves.covers)]


def edging(pieces: Pieces) -> list[BuyLine]:
    """Every banded edge, and for each the bit by which it is cut too long."""
    project = pieces.joined.placed.project
    most = _most(_edges(scene, project.practice) for scene in pieces.joined.scenes)
    lines = []
    for name, length in most.items():
        hardware = project.hardware[name]
        assert hardware.edging is not None
        need = length * (1 + project.practice.value("banding_waste"))
        line = _of(hardware, "edging", need, hardware.edging.length)
        lines.append(line)
    return lines


def edge_length(board: JoinedBoard, face_axis: int) -> Fraction:
    """How long the banded edge is: the longer side of that face."""
    return max(board.box.size(axis) for axis in range(3) if axis not in (face_axis, board.board.thick))


def _edges(scene: JoinedScene, practice: Practice) -> Counter:
    found: Counter = Counter()
    over = practice.value("banding_over")
    for board in scene.boards.values():
        for band in board.board.bands:
            found[band.edging.name] += edge_length(board, band.face.axis) + over
    return found


def _most(counts: Iterable[Counter]) -> Counter:
    most: Counter = Counter()
    for count in counts:
        most |= count
    return most


def _counted(fastenings: tuple[Fastening, ...]) -> Counter:
    count: Counter = Counter()
    for f in fastenings:
        if f.kind in _KINDS and f.count:
            count[(f.kind, f.gauge, f.length, f.diameter)] += f.count
    return count


def _fastener(size: Size, count: int, hardware: Iterable[Hardware], practice: Practice) -> BuyLine:
    kind, gauge, length, diameter = size
    need = Fraction(ceil(count * (1 + practice.value("spare"))))
    serving = next((h for h in hardware if _serves(h, size)), None)
    if serving is not None:
        line = _of(serving, kind, need, Fraction(1))
        return BuyLine(**{**line.__dict__, "gauge": gauge, "length": length, "diameter": diameter})
    box = practice.value(f"{kind}_box")
    many = packs(need, Fraction(0), box)
    return BuyLine(kind, "", "", need, Fraction(0), box, many, None, (), gauge, length, diameter)


def _serves(hardware: Hardware, size: Size) -> bool:
    kind, gauge, length, diameter = size
    serves = hardware.serves
    if serves is None or serves.kind != kind or serves.length != length:
        return False
    return (kind != "screws" or serves.gauge == gauge) and (kind != "dowels" or serves.diameter == diameter)


def _of(hardware: Hardware, kind: str, need: Fraction, one: Fraction) -> BuyLine:
    """`one` of the hardware is worth so much of the need."""
    on_hand, pack = hardware.on_hand * one, hardware.pack * one
    sizes = (hardware.edging.length, hardware.edging.width) if hardware.edging is not None else ()
    return BuyLine(
        kind,
        hardware.name,
        hardware.title,
        need,
        on_hand,
        pack,
        packs(need, on_hand, pack),
        pack_price(hardware),
        sizes,
    )
