"""Everything counted: boards, material, holes, screws, glue."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from fractions import Fraction

from setout.join.model import Fastening, JoinedScene
from setout.piece.model import Piece
from setout.plan.model import Plan
from setout.resolve.model import Stock
from setout.write.facts.sizes import Count, rounded_up

Kind = tuple[str, int | None, Fraction | None, Fraction | None]
"""What tells one fastener in a box from another: method, gauge, length, diameter."""


@dataclass(frozen=True)
class Material:
    """One stock's share. `area` (sheets) or `run` (sticks) in inches, held sizes at the largest they may be;
    `least` so many sheets, or sticks of `longest`, at the very least."""

    stock: Stock
    pieces: int
    boards: int
    area: Fraction
    run: Fraction
    longest: Fraction | None
    least: int


@dataclass(frozen=True)
class Bored:
    """`kind` as in join.model.Bore."""

    kind: str
    diameter: Fraction
    count: Count


@dataclass(frozen=True)
class Fasteners:
    """One size of screw, brad or dowel. `gauge` for screws, `diameter` for dowels."""

    kind: str
    gauge: int | None
    length: Fraction | None
    diameter: Fraction | None
    count: Count


@dataclass(frozen=True)
class Fitted:
    title: str
    count: int


@dataclass(frozen=True)
class Totals:
    """`glue` in square inches of joint, at the most."""

    pieces: int
    boards: int
    materials: tuple[Material, ...]
    bores: tuple[Bored, ...]
    fasteners: tuple[Fasteners, ...]
    fitted: tuple[Fitted, ...]
    glue: Fraction


def totals(plan: Plan) -> Totals:
    pieces, scenes = plan.pieces.pieces, plan.pieces.joined.scenes
    return Totals(
        pieces=len(pieces),
        boards=sum(piece.count for piece in pieces),
        materials=tuple(_material(stock, of) for stock, of in by_stock(pieces)),
        bores=_bores(scenes),
        fasteners=fasteners([scene.fastenings for scene in scenes]),
        fitted=_fitted(plan),
        glue=max(sum((f.area for f in scene.fastenings if f.kind == "glue"), Fraction(0)) for scene in scenes),
    )


def by_stock(pieces: tuple[Piece, ...]) -> tuple[tuple[Stock, tuple[Piece, ...]], ...]:
    """Pieces under their stock, stocks in the order in which marks first ask for them."""
    of: dict[str, list[Piece]] = {}
    for piece in pieces:
        of.setdefault(piece.stock.name, []).append(piece)
    return tuple((group[0].stock, tuple(group)) for group in of.values())


def fasteners(scenes: list[tuple[Fastening, ...]]) -> tuple[Fasteners, ...]:
    """The same joints' fasteners counted in every scene; glue is no fastener."""
    counts = [_count(fastenings) for fastenings in scenes]
    kinds = sorted(set().union(*counts), key=_in_order)
    return tuple(Fasteners(*kind, _between([count[kind] for count in counts])) for kind in kinds)


def _count(fastenings: tuple[Fastening, ...]) -> Counter[Kind]:
    count: Counter[Kind] = Counter()
    for f in fastenings:
        if f.kind != "glue":
            count[(f.kind, f.gauge, f.length, f.diameter)] += f.count
    return count


def _in_order(kind: Kind) -> tuple:
    return tuple((part is None, part or 0) if n else part for n, part in enumerate(kind))


def _between(counts: list[int]) -> Count:
    return Count(min(counts), max(counts))


def _bores(scenes: tuple[JoinedScene, ...]) -> tuple[Bored, ...]:
    counts = [Counter((b.kind, b.diameter) for board in s.boards.values() for b in board.bores) for s in scenes]
    kinds = sorted(set().union(*counts))
    return tuple(Bored(kind, diameter, _between([c[kind, diameter] for c in counts])) for kind, diameter in kinds)


def _fitted(plan: Plan) -> tuple[Fitted, ...]:
    count: Counter[str] = Counter()
    for fitting in plan.pieces.joined.drawn.scene.fittings:
        count[fitting.hardware.title or fitting.hardware.name] += fitting.count
    return tuple(Fitted(title, n) for title, n in sorted(count.items()))


def _material(stock: Stock, pieces: tuple[Piece, ...]) -> Material:
    boards = sum(piece.count for piece in pieces)
    area = sum((p.length.reserve * p.width.reserve * p.count for p in pieces), Fraction(0))
    run = sum((p.length.reserve * p.count for p in pieces), Fraction(0))
    longest = max(stock.lengths, default=None)
    whole = stock.long * stock.short if stock.kind == "sheet" and stock.long else None
    least = rounded_up(area / whole) if whole else rounded_up(run / longest) if longest else 0
    return Material(stock, len(pieces), boards, area, run, longest, least)
