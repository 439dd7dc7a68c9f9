"""What the scanner hands to the parser."""

from __future__ import annotations

from dataclasses import dataclass

from setout.diagnostics import Diagnostic
from setout.read.model import Number


@dataclass(frozen=True, slots=True)
class Token:
    """`types` are the grammar's terminals it may stand for; the parser takes the first that it can use there.

    `number` is set on a LENGTH. `fault` is what is wrong with it, when that is for the parser to tell. `first`: it is
    the first on its line.
    """

    types: tuple[str, ...]
    text: str
    start: int
    end: int
    first: bool = False
    number: Number | None = None
    fault: Diagnostic | None = None
    told: bool = False  # something was said about it already: what follows from it is not worth saying
    type: str = ""  # the terminal it was taken for
