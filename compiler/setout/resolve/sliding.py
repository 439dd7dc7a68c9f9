"""Drawer slides and cup hinges, described by their own numbers."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import TYPE_CHECKING

from setout.read import model as r
from setout.resolve import problems
from setout.resolve.model import Hinge, Slide
from setout.resolve.sized import sized

if TYPE_CHECKING:
    from setout.resolve.constants import Amounts

KINDS = ("side", "under", "runner")
_MOST = Fraction(96)
_MOST_CLEAR = Fraction(6)
_MOST_LOAD = 2000
_NEEDED = ("length", "clearance", "height")

Clauses = Mapping[str, r.StockClause]


def slide_of(hardware: r.HardwareStatement, clauses: Clauses, amounts: Amounts) -> Slide | None:
    """None for what is no slide, or once a mistake has been reported."""
    kind = next((k for k in KINDS if f"slide_{k}" in clauses), None)
    if kind is None:
        _check_belongs(hardware, clauses, amounts)
        return None
    missing = [key for key in _NEEDED if key not in clauses]
    if missing:
        amounts.ctx.say(problems.slides_lack(hardware, missing))
        return None

    def size(key: str, what: str, i: int = 0, most: Fraction = _MOST_CLEAR, least: Fraction | None = None):
        return sized(clauses.get(key), i, hardware.name.text, what, most, amounts, least)

    length = size("length", "length", most=_MOST, least=Fraction(0))
    clearance, height = size("clearance", "clearance"), size("height", "height", least=Fraction(0))
    if length is None or clearance is None or height is None:
        return None
    return Slide(
        kind,
        length,
        clearance,
        size("clearance", "clearance", 1) or Fraction(0),
        height,
        size("height", "room below the box", 1),
        size("setback", "setback") or Fraction(0),
        _load(clauses.get("slideload"), amounts),
        _screws(hardware, clauses.get("screws"), length, amounts),
    )


def hinge_of(hardware: r.HardwareStatement, clauses: Clauses, amounts: Amounts) -> Hinge | None:
    cup, plate = clauses.get("cup"), clauses.get("plate")
    if cup is None:
        return None
    name = hardware.name.text
    diameter, depth = (sized(cup, i, name, what, _MOST_CLEAR, amounts) for i, what in ((0, "cup"), (1, "depth")))
    edge = sized(cup, 2, name, "distance from the edge", _MOST_CLEAR, amounts)
    at = [sized(plate, i, name, "plate", _MOST_CLEAR, amounts) for i in (0, 1)]
    if diameter is None or depth is None or edge is None:
        return None
    return Hinge(diameter, depth, edge, (at[0], at[1]) if at[0] is not None and at[1] is not None else None)


def _check_belongs(hardware: r.HardwareStatement, clauses: Clauses, amounts: Amounts) -> None:
    """Numbers of slides on what isn't said to be slides."""
    wrong = next((clauses[k] for k in ("length", "clearance", "height", "setback", "screws") if k in clauses), None)
    if wrong is not None:
        amounts.ctx.say(problems.slides_unsaid(hardware, wrong))


def _load(clause: r.StockClause | None, amounts: Amounts) -> Fraction | None:
    load = amounts.plain(clause.values[0], "a load") if clause is not None else None
    if load is not None and clause is not None and not 0 < load <= _MOST_LOAD:
        amounts.ctx.say(problems.odd_number(int(load), 1, _MOST_LOAD, clause.values[0].span))
        return None
    return load


def _screws(
    hardware: r.HardwareStatement, clause: r.StockClause | None, length: Fraction, amounts: Amounts
) -> tuple[Fraction, ...]:
    if clause is None:
        return ()
    places = [sized(clause, i, hardware.name.text, "screw", length, amounts) for i in range(len(clause.values))]
    return tuple(sorted(set(p for p in places if p is not None)))
