"""A comparison of two plans on the screen, for a review, for other programs, and to clip into the packet."""

from setout.write.changes.build import Names, build
from setout.write.changes.document import as_json
from setout.write.changes.text import as_markdown, as_text

__all__ = ["Names", "as_json", "as_markdown", "as_text", "build"]
