"""Rules of thumb: one table, each row with its source."""

from setout.practice.model import Practice, Row, standard

__all__ = ["Practice", "Row", "standard"]
