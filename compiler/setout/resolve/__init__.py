"""Names bound, constants worked out: Tree -> Project."""

from setout.resolve.evaluate import Unworkable, as_condition, as_count, as_length, as_plain, evaluate
from setout.resolve.model import Project
from setout.resolve.project import resolve

__all__ = ["Project", "Unworkable", "as_condition", "as_count", "as_length", "as_plain", "evaluate", "resolve"]
