"""Which board comes out of which sheet, offcut or stick, and the cuts in the order to make them."""

from __future__ import annotations

from importlib import import_module

from setout.plan.cutting.model import Cut, Cutting, Falls, Laid, Leftover, Setting, Source, SourcePlan, StockPlan

_LATE = {
    "DEFAULT": "stage",
    "Budget": "search",
    "Told": "stage",
    "cutting": "stage",
    "larger_than_usable": "checks",
    "rack_text": "rack",
}

__all__ = [
    "DEFAULT",
    "Budget",
    "Cut",
    "Cutting",
    "Falls",
    "Laid",
    "Leftover",
    "Setting",
    "Source",
    "SourcePlan",
    "StockPlan",
    "Told",
    "cutting",
    "larger_than_usable",
    "rack_text",
]


def __getattr__(name: str) -> object:
    """The planner is large, and most commands never plan: it is imported when it is asked for."""
    if name not in _LATE:
        raise AttributeError(name)
    return getattr(import_module(f"setout.plan.cutting.{_LATE[name]}"), name)
