"""Included files."""

from __future__ import annotations

from collections.abc import Sequence

from setout.diagnostics import Diagnostic, error
from setout.read import model as r

__all__ = ["include_loop", "include_missing", "include_odd", "include_outside", "too_many_files"]


def include_missing(include: r.IncludeStatement, path: str) -> Diagnostic:
    return error(
        "rod165",
        f"Can't read the included file {path}",
        include.path.span,
        "looked for from this file's own folder",
        help="look at the spelling; the path starts at the folder of the file that holds the `include`",
    )


def include_outside(include: r.IncludeStatement) -> Diagnostic:
    return error(
        "rod166",
        "An included file may not lie outside the spec's folder",
        include.path.span,
        "`..` leads out of it",
        help="copy the file into the spec's folder, or below it, and write its path from here",
    )


def include_odd(include: r.IncludeStatement) -> Diagnostic:
    written = include.path.value
    says = "this names no file" if not written.strip() else "this is no path from the spec's folder"
    return error(
        "rod166",
        "An included file is named by its path from here",
        include.path.span,
        says,
        help='write folders with `/`, and start at this file\'s own folder: `include "parts/rack.rod"`',
    )


def include_loop(include: r.IncludeStatement, chain: Sequence[str]) -> Diagnostic:
    itself = len(chain) == 2
    return error(
        "rod167",
        "A file includes itself" if itself else "Files include one another in a loop",
        include.path.span,
        " → ".join(chain),
        help="take this `include` out; what both files need can stand in a third one",
    )


def too_many_files(include: r.IncludeStatement, most: int) -> Diagnostic:
    return error(
        "rod168",
        f"More than {most} files",
        include.path.span,
        "this one and those behind it were not read",
        help="put some of the included files together",
    )
