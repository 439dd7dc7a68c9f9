"""Everything to be bought, in the order of a shopping trip: material, hardware, what joints and edges use up."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

from setout.piece.model import Pieces
from setout.plan.buying.materials import materials
from setout.plan.buying.model import BuyLine, BuyList
from setout.plan.buying.packs import pack_price, packs
from setout.plan.buying.used_up import edging, fasteners, glue
from setout.plan.cutting.model import Cutting


def buying(pieces: Pieces, cutting: Cutting | None = None) -> BuyList:
    """The buy list. Without a cutting plan, sheets and sticks are the least that could do, and said to be."""
    lines = (
        *materials(pieces, cutting),
        *_hardware(pieces),
        *fasteners(pieces),
        *glue(pieces),
        *edging(pieces),
    )
    return BuyList(tuple(line for line in lines if line.need))


def _hardware(pieces: Pieces) -> list[BuyLine]:
    """What is fitted by the piece, in the order in which the spec names it."""
    most: Counter = Counter()
    for scene in pieces.joined.scenes:
        count: Counter = Counter()
        for fitting in scene.scene.fittings:
            count[fitting.hardware.name] += fitting.count
        most |= count
    kinds = {f.hardware.name: f.hardware for scene in pieces.joined.scenes for f in scene.scene.fittings}
    lines = []
    for name, one in sorted(kinds.items(), key=lambda item: (item[1].span.file, item[1].span.start, item[0])):
        need, on_hand, pack = Fraction(most[name]), Fraction(one.on_hand), Fraction(one.pack)
        many = packs(need, on_hand, pack)
        lines.append(BuyLine("hardware", name, one.title, need, on_hand, pack, many, pack_price(one)))
    return lines
