"""A cutting plan made by hand: two sheets cut alike, one on its own, an offcut and three sticks of the sample's
boards."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction as F

import sample
from sawing import MITRE, RAIL, TABLE, Bench, K

from setout.plan.cutting.model import Cutting, Setting, SourcePlan, StockPlan
from setout.plan.model import Plan
from setout.resolve.model import Saw


def cutting(price: F | None = F(68)) -> Cutting:
    one, two = _alike("ply 1", 1, price), _alike("ply 2", 9, price)
    three = _mixed("ply 3", 17, price)
    rest = _offcut("ply offcut 1", 28)
    sheets = StockPlan(
        sample.PLY, (rest, one, two, three), 3, 3 * price if price else None, (), 3 * price if price else None,
        Decimal("0.71"), K, F(1, 4), True,
    )  # fmt: skip
    sticks = tuple(_stick(f"lath {n}", 30 + 5 * n) for n in (1, 2, 3))
    lath = StockPlan(sample.LATH, sticks, 2, None, (("A3", 2),), None, Decimal("0.92"), K)
    plans = (*sheets.sources, *sticks)
    return Cutting((sheets, lath), _settings(plans), (("ply", F(375, 4), F(21, 2), "length"),), True)


def planned(**more) -> Plan:
    return replace(sample.plan(**more), cutting=cutting())


def _alike(name: str, number: int, price: F | None) -> SourcePlan:
    """A sheet that becomes four sides and a leftover."""
    b = Bench(name, sample.PLY, "sheet", 96, 48, price=price, number=number)
    b.cut(name, "y", F(1, 8), "waste", f"board {name} trimmed", "trim", RAIL)
    b.cut(f"{name} trimmed", "x", F(1, 8), "waste", f"board {name} A", "trim", RAIL)
    b.cut(f"{name} A", "x", 61, f"board {name} B", "offcut b", "break down", RAIL)
    b.cut(f"{name} B", "y", 12, f"board {name} D", f"board {name} E", "rip", TABLE)
    b.cut(f"{name} E", "y", 12, f"board {name} F", "offcut a", "rip", TABLE)
    b.cut(f"{name} D", "x", 30, "B1", f"board {name} G", "crosscut", TABLE)
    b.cut(f"{name} G", "x", 30, "B2", "waste", "crosscut", TABLE)
    b.cut(f"{name} F", "x", 60, "A1", "waste", "crosscut", TABLE)
    return b.plan()


def _mixed(name: str, number: int, price: F | None) -> SourcePlan:
    """Narrow strips, a blank that waits for a measure, and a cut that no saw can make."""
    b = Bench(name, sample.PLY, "sheet", 96, 48, price=price, number=number)
    b.cut(name, "y", 24, f"board {name} A", f"board {name} B", "break down", None)
    b.cut(f"{name} A", "y", F(3, 2), "A3", f"board {name} C", "rip", TABLE)
    b.cut(f"{name} C", "y", F(3, 2), "A3", f"board {name} D", "rip", TABLE)
    b.cut(f"{name} D", "y", 12, f"board {name} E", "offcut b", "rip", TABLE)
    b.cut(f"{name} E", "x", 12, "reserved A2", f"board {name} F", "crosscut", TABLE)
    b.cut(f"{name} F", "x", F(361, 16), "B4", f"board {name} G", "crosscut", TABLE)
    b.cut(f"{name} G", "x", F(369, 16), "B3", f"board {name} H", "crosscut", TABLE)
    b.cut(f"{name} H", "x", F(369, 16), "B3", "waste", "crosscut", TABLE)
    b.cut(f"{name} B", "x", 4, f"board {name} I", "offcut c", "crosscut", RAIL)
    b.cut(f"{name} I", "y", 3, "B4", f"board {name} J", "rip", TABLE)
    b.cut(f"{name} J", "y", 3, "B4", "waste", "rip", TABLE)
    return b.plan()


def _offcut(name: str, number: int) -> SourcePlan:
    b = Bench(name, sample.PLY, "offcut", 41, F(45, 2), on_hand=True, price=F(0), number=number)
    b.cut(name, "y", 12, f"board {name} A", "waste", "rip", TABLE)
    b.cut(f"{name} A", "x", 30, "B1", "waste", "crosscut", TABLE)
    return b.plan()


def _stick(name: str, number: int) -> SourcePlan:
    b = Bench(name, sample.LATH, "stick", 72, F(3, 2), number=number)
    at = name
    for n in range(4):
        rest = "waste" if n == 3 else f"board {name} {n + 1}"
        b.cut(at, "x", F(1417, 96), "A3", rest, "crosscut", MITRE)
        at = f"{name} {n + 1}"
    return b.plan()


def _settings(plans: tuple[SourcePlan, ...]) -> tuple[Setting, ...]:
    made: dict[tuple[Saw, str, F], list[int]] = {}
    for cut in (cut for plan in plans for cut in plan.cuts if cut.saw is not None):
        made.setdefault((cut.saw, cut.kind, cut.setting), []).append(cut.number)
    return tuple(Setting(*key, tuple(sorted(cuts))) for key, cuts in made.items())
