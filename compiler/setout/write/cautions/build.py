"""Which cautions this job calls for. The words, and where they come from, are in the template."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from setout.geometry import Axis
from setout.write.facts import Facts
from setout.write.facts.measures import KILOGRAMS
from setout.write.facts.paths import spoken
from setout.write.facts.sizes import Length, decimal, length

# ASTM F2057-23: free-standing clothing storage 27 in high and up; a fair bound for any tall box
TALL = Fraction(27)


@dataclass(frozen=True)
class Cautions:
    """`sheets`: some are longer than `sheet_alone`, and take two. `tall` names free-standing assemblies at least
    `tall_from` high; `on_wall` what is fixed to the room."""

    sheets: bool
    sheet_alone: Length
    milled: bool
    glue: bool
    screwed: bool
    on_wall: tuple[str, ...]
    tall: tuple[str, ...]
    tall_from: Length
    lift: str
    lift_kg: str
    drawers: bool


def build(facts: Facts) -> Cautions:
    on_wall = _on_wall(facts)
    lift, alone = (facts.project.practice.value(name) for name in ("lift_alone", "sheet_alone"))
    kinds = {f.kind for f in facts.joined.fastenings}
    return Cautions(
        sheets=any(
            p.stock.kind == "sheet" and max(p.stock.long or 0, p.stock.short) > alone for p in facts.plan.pieces.pieces
        ),
        sheet_alone=length(alone, facts.style),
        milled=any(board.cuts for board in facts.joined.boards.values()),
        glue="glue" in kinds,
        screwed=bool(kinds & {"pockets", "screws", "brads"}),
        on_wall=tuple(dict.fromkeys(spoken(_standing(facts, board) or board) for board in on_wall)),
        tall=tuple(spoken(name) for name in _tall(facts, on_wall)),
        tall_from=length(TALL, facts.style),
        lift=decimal(lift, 0),
        lift_kg=decimal(lift * KILOGRAMS, 0),
        drawers=bool(facts.scene.banks),
    )


def _on_wall(facts: Facts) -> tuple[str, ...]:
    """Boards joined to a wall of the room (its floor is none)."""
    return tuple(c.a for c in facts.joined.contacts if c.b is None and c.face_a.axis != Axis.HIGH)


def _standing(facts: Facts, board: str) -> str:
    """The outermost assembly a board belongs to; the job's own boards stand together as ""."""
    return facts.unit_of[board] if facts.scene.boards[board].owner else ""


def _tall(facts: Facts, on_wall: tuple[str, ...]) -> tuple[str, ...]:
    """What stands tall and isn't held to a wall through anything it is joined to."""
    held = _reached(facts, {_standing(facts, board) for board in on_wall})
    bottoms, tops = _outlines(facts)
    return tuple(name for name in tops if name not in held and tops[name] - bottoms[name] >= TALL)


def _reached(facts: Facts, start: set[str]) -> set[str]:
    pairs = [(_standing(facts, c.a), _standing(facts, c.b)) for c in facts.joined.contacts if c.b is not None]
    reached = set(start)
    while more := {b for a, b in pairs + [(b, a) for a, b in pairs] if a in reached} - reached:
        reached |= more
    return reached


def _outlines(facts: Facts) -> tuple[dict[str, Fraction], dict[str, Fraction]]:
    """Lowest and highest point of each thing that stands."""
    bottoms: dict[str, Fraction] = {}
    tops: dict[str, Fraction] = {}
    for path, joined in facts.joined.boards.items():
        name = _standing(facts, path)
        bottoms[name] = min(joined.box.lo[Axis.HIGH], bottoms.get(name, joined.box.lo[Axis.HIGH]))
        tops[name] = max(joined.box.hi[Axis.HIGH], tops.get(name, joined.box.hi[Axis.HIGH]))
    return bottoms, tops
