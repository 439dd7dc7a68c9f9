"""What the cutting plan has to say, in words."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from setout.diagnostics import Diagnostic, Label, error, warning
from setout.piece.model import Piece
from setout.plan.cutting.model import Cut
from setout.resolve.model import Saw, Stock
from setout.source import Span
from setout.units import Style, exact, said

_SHOWN = 8

Size = tuple[Fraction, Fraction]


def too_large_once_trimmed(style: Style, piece: Piece, usable: Size, trim: Fraction, at: Span) -> Diagnostic:
    sizes = _size(style, piece.length.reserve, piece.width.reserve)
    return error(
        "rod510",
        f"{piece.mark} is too large for a sheet once its edges are trimmed",
        at,
        f"it is {sizes}; trimmed, a sheet is {_size(style, *usable)}",
        Label(piece.stock.span, f"`{piece.stock.name}`"),
        help=f"{said(trim, style)} is taken off each edge. Make it smaller or of two boards, or say "
        "`practice { edge_trim 1/8 }` where the sheets' edges are good",
    )


def run_too_large(
    style: Style, name: str, a: Fraction, b: Fraction, stock: Stock, usable: Size, at: Span
) -> Diagnostic:
    return error(
        "rod511",
        f"No sheet is large enough to cut `{name}` in sequence",
        at,
        f"side by side they take {_size(style, a, b)}, cuts included; a sheet has {_size(style, *usable)}",
        Label(stock.span, f"`{stock.name}`"),
        help="split the repeat into two parts, each in sequence, or leave out `in sequence`",
    )


def stock_is_short(style: Style, stock: Stock, missing: Sequence[tuple[str, int]], used: int, more: int) -> Diagnostic:
    count = sum(n for _, n in missing)
    word = "sheet" if stock.kind == "sheet" else "stick"
    advice = f"{_many(more, f'more {word}')} would hold what is missing" if more else f"there is no {word} to be bought"
    finds = "1 board finds" if count == 1 else f"{count} boards find"
    return warning(
        "rod512",
        f"There isn't enough of `{stock.name}`",
        stock.span,
        f"{finds} no place when {'all' if used else 'none'} of it is used: {_marks(missing)}",
        help=f"{advice}. Raise `at most`, put more on the rack, or make fewer boards",
    )


def no_saw(
    style: Style,
    stock: Stock,
    marks: Sequence[str],
    cut: Cut,
    extent: Fraction,
    count: int,
    saws: Sequence[Saw],
    at: Span,
) -> Diagnostic:
    """`cut` is the first of `count` such cuts, on a board `extent` long along the setting."""
    rows = ", ".join(marks[:_SHOWN]) + (" …" if len(marks) > _SHOWN else "")
    board = _size(style, extent, cut.cut_length)
    if stock.kind == "sheet":
        advice = "Have the sheets cut down where they are bought, or name a saw that `breaks down sheets`"
    else:
        advice = f"Name a saw that `cuts sticks up to {exact(stock.short)}`, or rip wider boards to it"
    return warning(
        "rod513",
        f"No saw of the shop can make {_many(count, 'cut')} in `{stock.name}`",
        at,
        f"{rows} hang{'s' if len(marks) == 1 else ''} on it; one parts a board {board} at {said(cut.setting, style)}",
        help=f"{_nearest(style, saws)}. {advice}",
    )


def _nearest(style: Style, saws: Sequence[Saw]) -> str:
    """What the saws can do at best."""
    does = [_does(style, saw) for saw in saws]
    return "; ".join(one for one in does if one) or "no saw of the shop is for this"


def _does(style: Style, saw: Saw) -> str:
    able = []
    if saw.rips is not None:
        able.append(f"rips up to {said(saw.rips, style)}")
    if saw.crosscuts is not None:
        able.append(f"crosscuts up to {said(saw.crosscuts, style)}")
    if saw.sticks is not None:
        able.append(f"cuts sticks up to {said(saw.sticks, style)}")
    if saw.takes is not None:
        able.append(f"takes {_size(style, *saw.takes)}")
    return f"the {saw.title} {', '.join(able)}" if able else ""


def _size(style: Style, one: Fraction, other: Fraction) -> str:
    return f"{said(one, style)} x {said(other, style)}"


def _marks(missing: Sequence[tuple[str, int]]) -> str:
    named = [mark if n == 1 else f"{n} of {mark}" for mark, n in missing]
    return ", ".join(named[:_SHOWN]) + (" …" if len(named) > _SHOWN else "")


def _many(n: int, what: str, after: str = "") -> str:
    return f"{n} {what}{'' if n == 1 else 's'}{' ' + after if after else ''}"
