"""What several documents say about one plan, worked out once."""

from setout.write.facts.model import Facts, facts

__all__ = ["Facts", "facts"]
