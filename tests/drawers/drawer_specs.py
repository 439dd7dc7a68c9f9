"""A case with an opening of a known size, and its bank of drawers."""

from __future__ import annotations

from fractions import Fraction

from compiling import compiled

from setout.diagnostics import Checked
from setout.place import DrawerBank, Scene

SLIDES = """
hardware slide18 "slides" { slides side; length 18; clearance 1/2; height 1-3/4; setback 1/8; load 75 }
hardware slide20 "slides" { slides side; length 20; clearance 1/2; height 1-3/4; setback 1/8; load 75 }
hardware under18 "slides" { slides under; length 18; clearance 3/16; height 1/2 clear 9/16 }
"""


def case(
    inside: str, wide: Fraction | int = 18, high: Fraction | int = 24, deep: Fraction | int = 22, ply="3/4"
) -> str:
    """A spec whose opening `bay` is exactly so large."""
    return f"""
project "Case" {{ units inch }}
stock ply "plywood" {{ sheet 96 x 48 x {ply}; grain along 96 }}
stock half "box plywood" {{ sheet 96 x 48 x 5/8; grain along 96 }}
stock thin "bottom plywood" {{ sheet 96 x 48 x 1/4; grain along 96 }}
{SLIDES}
let t = {ply}
assembly box "Case" {{
  size wide {wide} + 2 * t, high {high} + 2 * t, deep {deep}
  part left_side of ply {{ upright at left; grain high }}
  part right_side mirrors left_side
  part floor of ply {{ level at bottom; wide between left_side and right_side }}
  part lid of ply {{ level at top; wide between left_side and right_side }}
  joint floor, lid to left_side, right_side {{ pockets on bottom; glue }}
  opening bay {{ wide between left_side and right_side; high between floor and lid; deep from front to back }}
  {inside}
}}
size wide 90, high 96, deep 40
place box {{ at left, bottom, back }}
"""


def drawers(heights: str, more: str = "fronts of ply inset reveal 1/16", slides: str = "slide20") -> str:
    return f"drawers in bay {{ {heights}; slides {slides}; box of half; bottom of thin in groove; {more} }}"


def drawn(text: str) -> Scene:
    """The scene of a spec of which nothing is said that is an error."""
    checked = compiled(text)
    assert checked.value is not None and not checked.failed, [(d.code, d.message) for d in checked.diagnostics]
    return checked.value.pieces.joined.drawn.scene


def the_bank(text: str) -> DrawerBank:
    return drawn(text).banks[0]


def steps(text: str) -> list[str]:
    """The build order as order lines name its steps."""
    checked = compiled(text)
    assert checked.value is not None and not checked.failed, [(d.code, d.message) for d in checked.diagnostics]
    return [f"{s.id.verb} {s.id.target}" for s in checked.value.order.steps]


def codes(checked: Checked) -> list[str]:
    return [d.code for d in checked.diagnostics if d.severity.value == "error"]
