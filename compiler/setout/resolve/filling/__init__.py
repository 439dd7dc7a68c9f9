"""What openings hold, written out as the parts and placings that it is made of."""

from setout.resolve.filling.bound import bank_def, door_def, item_def, shelves_def
from setout.resolve.filling.stage import filled

__all__ = ["bank_def", "door_def", "filled", "item_def", "shelves_def"]
