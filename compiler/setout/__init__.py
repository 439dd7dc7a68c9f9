"""Setout: a compiler from a furniture spec to the shop's documents."""

__version__ = "0.1.0"
