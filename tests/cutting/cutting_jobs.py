"""Small jobs for the tests of the cutting plan: spec text in, pieces or a checked plan out."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from checker import faults

from setout.join import join
from setout.piece import parse_register, piece
from setout.piece.model import Pieces
from setout.place import place
from setout.plan.cutting import Budget, Cutting, cutting
from setout.read import read
from setout.resolve import resolve
from setout.source import Source

SPECS = Path(__file__).parents[2] / "specs"
QUICK = Budget(work=4000)
PLY = 'stock ply "3/4 plywood" { sheet 96 x 48 x 23/32; grain along 96; price 70 }'


def pieces_of(text: str, folder: Path | None = None) -> Pieces:
    def reader(name: str) -> Source | None:
        return Source(name, (folder / name).read_text("utf-8")) if folder is not None else None

    project = resolve(read(Source("job.rod", text)).value, reader, {}).value
    joined = join(place(project).value).value
    found = piece(joined, parse_register(Source("marks", "")).value).value
    assert found is not None
    return found


def of_spec(name: str) -> Pieces:
    return pieces_of((SPECS / name).read_text("utf-8"), SPECS)


def loose(sizes: Iterable[tuple], stock: str = "ply") -> str:
    """Loose parts: (length, width, count) or (length, width, count, "any")."""
    lines = []
    for n, (length, width, count, *grain) in enumerate(sizes, 1):
        lines.append(
            f"part p{n} of {stock} {{ size ({length}) x ({width}); count {count}; {'grain any' if grain else ''} }}"
        )
    return "\n".join(lines)


def plan_of(text: str, budget: Budget = QUICK, **more) -> Cutting:
    """The plan, found right by the independent checker."""
    pieces = pieces_of(text)
    made = cutting(pieces, budget, **more).value
    assert made is not None
    assert faults(made, pieces) == []
    return made


def codes_of(text: str) -> list[str]:
    return [d.code for d in cutting(pieces_of(text), QUICK).diagnostics]
