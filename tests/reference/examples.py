"""The runnable examples of grammar/REFERENCE.md, each as a whole spec."""

from __future__ import annotations

import re
from pathlib import Path

REFERENCE = Path(__file__).resolve().parents[2] / "grammar" / "REFERENCE.md"
_FENCE = re.compile(r"^```rod( preamble)?\n(.*?)^```$", re.MULTILINE | re.DOTALL)


def examples() -> dict[str, str]:
    """Spec text by the number of the line where the example begins; the preamble put before those without a project."""
    page = REFERENCE.read_text("utf-8")
    found = {page.count("\n", 0, m.start()) + 1: (bool(m[1]), m[2]) for m in _FENCE.finditer(page)}
    preamble = next(text for is_preamble, text in found.values() if is_preamble)
    whole = {
        line: text if text.startswith("project") else preamble + text
        for line, (is_preamble, text) in found.items()
        if not is_preamble
    }
    return {f"line {line}": text for line, text in whole.items()}
