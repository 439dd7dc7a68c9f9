"""Sources cut up by hand, a cut at a time, as the cutting plan tells it."""

from __future__ import annotations

from fractions import Fraction as F

from setout.plan.cutting.model import Cut, Falls, Laid, Leftover, Source, SourcePlan
from setout.practice import standard
from setout.resolve.model import Saw
from setout.resolve.shop import usual_saws

K = F(1, 8)
RAIL, TABLE, MITRE = usual_saws(standard(), "sample.rod")
Board = tuple[F, F, F, F]  # x, y, length, width


class Bench:
    """One source under the saw: each call makes one cut and books what becomes of both sides."""

    def __init__(self, name: str, stock, kind: str, length, width, *, on_hand=False, price=None, number=1) -> None:
        self.source = Source(name, stock, kind, on_hand, F(length), F(width), "length", price)
        self.boards: dict[str, Board] = {name: (F(0), F(0), F(length), F(width))}
        self.laid: list[Laid] = []
        self.leftovers: list[Leftover] = []
        self.cuts: list[Cut] = []
        self.number = number

    def cut(self, board: str, across: str, setting, off: str, rest: str, kind: str, saw: Saw | None) -> None:
        """`off` and `rest`: a mark ("B3"), "reserved MARK", "board NAME", "offcut LETTER", "waste" or "" (nothing
        there)."""
        setting = F(setting)
        x, y, length, width = self.boards[board]
        on_x = across == "x"
        at = (x if on_x else y) + setting
        left = (length if on_x else width) - setting - K
        one: Board = (x, y, setting, width) if on_x else (x, y, length, setting)
        two: Board = (at + K, y, left, width) if on_x else (x, at + K, length, left)
        self.cuts.append(Cut(
            self.number, self.source.id, board, kind, across, setting, at, width if on_x else length, K, saw,
            self._fallen(off, one), self._fallen(rest, two) if left > 0 else None,
        ))  # fmt: skip
        self.number += 1

    def _fallen(self, what: str, at: Board) -> Falls:
        kind, _, name = what.partition(" ")
        if kind == "board":
            self.boards[name] = at
            return Falls("board", "", 0, name, at[2], at[3])
        if kind in ("offcut", "waste"):
            self.leftovers.append(Leftover(*at, kind == "offcut", name))
            return Falls(kind, "", 0, name, at[2], at[3])
        mark = name or kind
        copy = 1 + sum(one.mark == mark for one in self.laid)
        self.laid.append(Laid(mark, copy, *at, False, kind == "reserved"))
        return Falls("reserved" if kind == "reserved" else "piece", mark, copy, "", at[2], at[3])

    def plan(self) -> SourcePlan:
        return SourcePlan(self.source, tuple(self.laid), tuple(self.leftovers), tuple(self.cuts))
