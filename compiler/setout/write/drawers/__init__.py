"""What goes into the openings: drawers, doors, shelves on pins, things kept."""

from setout.write.drawers.banks import alike_banks
from setout.write.drawers.build import build
from setout.write.drawers.model import Drawers

__all__ = ["Drawers", "alike_banks", "build"]
