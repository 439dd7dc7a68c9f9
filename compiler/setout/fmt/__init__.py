"""A spec's text in the one canonical layout."""

from __future__ import annotations

from setout.diagnostics import Checked
from setout.fmt.group import grouped
from setout.fmt.lay import laid_out
from setout.fmt.proof import difference
from setout.read import MAX_BYTES, read
from setout.source import Source

__all__ = ["fmt"]


def fmt(source: Source) -> Checked[str]:
    """The same statements, comments and groups, laid out anew; nothing when the spec has syntax errors.

    What comes out was read again and says the same. That it doesn't is a fault of ours, and raises.
    """
    before = read(source)
    if before.failed or before.value is None:
        return Checked(None, before.diagnostics)
    text = laid_out(grouped(source))
    if text == source.text:
        return Checked(text, before.diagnostics)
    after = read(Source(source.name, text))
    if len(text) > MAX_BYTES:  # blanks put in made a file too long that just was not
        return Checked(None, after.diagnostics)
    if after.value is None or (found := difference(before.value, after.value)):
        raise RuntimeError(f"the layout would change the meaning: {found if after.value else after.diagnostics}")
    return Checked(text, before.diagnostics)
