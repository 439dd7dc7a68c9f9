"""Why no spec can be made of a table."""

from __future__ import annotations

from collections.abc import Sequence

from setout.diagnostics import Diagnostic, error
from setout.new.model import LeftOut, Row
from setout.new.names import cleaned


def no_table(name: str, fault: str) -> Diagnostic:
    return error(
        "rod922",
        f"Can't read the table {cleaned(name)}: {fault}",
        None,
        help="Name a file of values with commas, semicolons or tabs between them, as spreadsheets save it.",
    )


def no_sizes(name: str, rows: Sequence[Row]) -> Diagnostic:
    first = ", ".join(cleaned(cell)[:24] for cell in rows[0].cells[:8])
    return error(
        "rod923",
        f"No boards can be made of {cleaned(name)}: no row names a length and a width; it begins with `{first}`",
        None,
        help="Put a row of heads above the values, such as `part, length (in), width (in), qty, material`.",
    )


def no_boards(name: str, left_out: Sequence[LeftOut]) -> Diagnostic:
    why = f"; row {left_out[0].row}: {left_out[0].why}" if left_out else ", there is nothing below its heads"
    return error(
        "rod923",
        f"No boards can be made of {cleaned(name)}{why}",
        None,
        help="Each row wants a length and a width, such as `23-1/4`, `23 1/4 in` or `600 mm`.",
    )
