"""Text as it was read, and places in it."""

from setout.source.model import Source, Span

__all__ = ["Source", "Span"]
