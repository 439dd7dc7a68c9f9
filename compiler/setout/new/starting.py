"""Templates with a title filled in."""

from __future__ import annotations

from importlib.resources import files

from setout.new.laying import laid_out
from setout.new.names import cleaned, quoted

_UNTITLED = '"TITLE"'


def started(template: str, title: str) -> str:
    """The text of a spec made of the template (list, bookcase or base)."""
    text = (files("setout.new") / "templates" / f"{template}.rod").read_text("utf-8")
    return laid_out(text.replace(_UNTITLED, quoted(title), 1))


def titled(stem: str) -> str:
    """`hall_shelves` as people write it: `Hall shelves`."""
    text = cleaned(stem.replace("_", " ").replace("-", " "))
    return text[:1].upper() + text[1:]
