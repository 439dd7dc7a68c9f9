"""The solver under the cutting plan: whole numbers in, guillotine trees and patterns out.

>>> solve([Item(3, 2, count=4)], [Bin(6, 4, cost=24)]).cost
24
"""

from setout.plan.cutting.search.bounds import bound
from setout.plan.cutting.search.layout import leftovers
from setout.plan.cutting.search.model import (
    Bin,
    Bound,
    Budget,
    Item,
    Layout,
    Leftover,
    Piece,
    Progress,
    Region,
    Stick,
    StickLayout,
    Used,
    UsedStick,
)
from setout.plan.cutting.search.solve import solve
from setout.plan.cutting.search.sticks import solve_sticks

__all__ = [
    "Bin",
    "Bound",
    "Budget",
    "Item",
    "Layout",
    "Leftover",
    "Piece",
    "Progress",
    "Region",
    "Stick",
    "StickLayout",
    "Used",
    "UsedStick",
    "bound",
    "leftovers",
    "solve",
    "solve_sticks",
]
