"""Two plans of one job: what changed by meaning, and what becomes of the boards that are cut already."""

from setout.compare.marks import carried_on
from setout.compare.model import Changes
from setout.compare.stage import compare

__all__ = ["Changes", "carried_on", "compare"]
