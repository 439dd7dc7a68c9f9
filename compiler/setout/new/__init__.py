"""A new spec: from a short template, or from a table of boards."""

from __future__ import annotations

from setout.diagnostics import Checked
from setout.new import problems
from setout.new.boards import boards_of
from setout.new.columns import header
from setout.new.model import Listed
from setout.new.rows import MAX_BYTES, rows_of
from setout.new.starting import started, titled
from setout.new.telling import told
from setout.new.writing import written

__all__ = ["MAX_BYTES", "Listed", "listed", "started", "titled"]


def listed(name: str, data: bytes, title: str) -> Checked[Listed]:
    """Loose parts of the table called `name`, whatever can be made out of it."""
    table = rows_of(data)
    if table.fault:
        return Checked(None, (problems.no_table(name, table.fault),))
    head = header(table.rows)
    if head is None:
        return Checked(None, (problems.no_sizes(name, table.rows),))
    found = boards_of(table, head)
    if not found.boards:
        return Checked(None, (problems.no_boards(name, found.left_out),))
    return Checked(Listed(written(found, title, name), tuple(told(table, head, found))))
