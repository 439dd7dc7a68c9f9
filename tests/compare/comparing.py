"""Two specs compared as two revisions of one file: the later is built with the marks of the earlier."""

from __future__ import annotations

from functools import lru_cache

from compiling import compiled

from setout.compare import Changes, compare
from setout.diagnostics import Checked
from setout.piece import register_text
from setout.plan.model import Plan

STOCKS = """stock ply "3/4 plywood" { sheet 96 x 48 x 3/4; grain along 96 }
stock half "1/2 MDF" { sheet 96 x 48 x 1/2 }
stock post "2x2" { stick 2 x 2 long 96 }
stock rail "1x4" { stick 4 x 3/4 long 96 }
hardware tape "edge tape" { edging 7/8 x 1/32 long 300 }
"""


def both(old: str, new: str) -> tuple[Checked[Plan], Checked[Plan]]:
    first = _compiled(old)
    assert first.value is not None and not first.failed, [d.message for d in first.diagnostics]
    second = compiled(new, marks=register_text(first.value.pieces.new_entries))
    assert second.value is not None and not second.failed, [d.message for d in second.diagnostics]
    return first, second


_compiled = lru_cache(maxsize=4)(compiled)  # many revisions of one spec


def compared_plans(old: str, new: str) -> tuple[Plan, Plan, Changes]:
    first, second = both(old, new)
    assert first.value and second.value
    return first.value, second.value, compare(first.value, second.value, first.diagnostics, second.diagnostics)


def compared(old: str, new: str) -> Changes:
    return compared_plans(old, new)[2]


def shop(*parts: str) -> str:
    """A spec of boards; LOW in each is a level of its own."""
    lines = (part.replace("LOW", f"bottom + {3 * n + 1}") for n, part in enumerate(parts))
    return STOCKS + "size wide 100, high 100, deep 100\n" + "\n".join(lines) + "\n"
