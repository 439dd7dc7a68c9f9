"""What a good foreman looks at before the first cut: weights, lifts, sag, the wall, the room. Pieces -> Inspected."""

from setout.inspect.model import CarriedUnit, Hung, Inspected, Lifted, Moves, Sag, Standing
from setout.inspect.stage import inspect
from setout.inspect.view import View
from setout.strength import CAUTION

__all__ = ["CAUTION", "CarriedUnit", "Hung", "Inspected", "Lifted", "Moves", "Sag", "Standing", "View", "inspect"]
