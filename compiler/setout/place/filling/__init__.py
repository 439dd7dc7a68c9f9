"""What openings hold, once everything has its place: facts, hardware, and whether it goes in."""

from setout.place.filling.stage import fill

__all__ = ["fill"]
