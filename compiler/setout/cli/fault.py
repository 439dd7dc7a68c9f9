"""The last word when setout itself fails."""

from __future__ import annotations

import sys
import traceback
from pathlib import Path

from setout import __version__


def report(fault: Exception) -> str:
    """What to print instead of a traceback: the fault in one line, and what to do."""
    return (
        "error rod900: Setout itself failed\n"
        f"  {_in_a_line(fault)}\n"
        f"  setout {__version__}, Python {sys.version.split()[0]}, {sys.platform}\n"
        "  help: This is a fault in setout, not in your spec. Please report it with these lines and the spec.\n"
        "        SETOUT_DEBUG=1 in the environment prints where it happened.\n"
    )


def _in_a_line(fault: Exception) -> str:
    steps = traceback.extract_tb(fault.__traceback__)
    where = f" in {Path(steps[-1].filename).name}, line {steps[-1].lineno}" if steps else ""
    said = " ".join(str(fault).split())[:200]
    said = "".join(c if c.isprintable() else "?" for c in said)
    return f"{type(fault).__name__}{where}: {said}"
