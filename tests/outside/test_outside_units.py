"""Inch and millimetre: 1 in = 25.4 mm exactly (NIST SP 811, appendix B.8; check-values.md section 8, row R/M).

A spec is spelled anew in the other unit by a text replacement that knows nothing of the compiler, and means the same.
"""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction

import pytest
from compiling import SPECS, sound

IN = Fraction("25.4")
# A number that stands free: no unit glued to it, no part of a name or path.
NUMBER = r"(?<![\w.])(?:\d+-\d+/\d+|\d+/\d+|\d+\.\d+|\d+)(?![\w.'\"]|[-/]\d)"
# Numbers that count or pay: behind these words and signs.
PLAIN = r"(?:mark to|price|count|repeat|fit|turned|pack|load|shelves =|dividers =|shelf\w*\.|/|\*)\s*$"
TOKEN = re.compile(rf'#[^\n]*|"[^"\n]*"|{NUMBER}')


def respelled(text: str, number) -> str:
    """`text` with every bare length written as `number(length)` says; words in quotes and comments stay."""

    def one(match: re.Match) -> str:
        word = match.group()
        if word[0] in '#"' or re.search(PLAIN, text[: match.start()][-20:]):
            return word
        return number(sum(map(Fraction, word.split("-"))))

    return TOKEN.sub(one, text)


def decimal(value: Fraction) -> str:
    """All its digits: every binary fraction of an inch is a finite decimal of millimetres."""
    text = format(Decimal(value.numerator) / value.denominator, "f")
    assert Fraction(text) == value
    return text


def in_millimetres(text: str) -> str:
    text = respelled(text, lambda value: decimal(value * IN))
    return re.sub(r"mark to \S+", "mark to 1\n", text).replace("units inch", "units mm")  # the other tape's division


def in_inches(text: str) -> str:
    text = respelled(text, lambda value: str(value / IN))
    return re.sub(r"mark to \S+", "mark to 1/32\n", text).replace("units mm", "units inch")


def with_units_glued(text: str) -> str:
    """Still an inch file, each length in millimetres."""
    return respelled(text, lambda value: decimal(value * IN) + "mm")


def meaning(plan) -> dict:
    """All that is cut, drilled, marked, joined and done, exactly; words of the spec and places in it left out."""
    return {
        "pieces": [(p.mark, p.count, p.boards, p.shape) for p in plan.pieces.pieces],
        "register": plan.pieces.new_entries,
        "fastenings": [scene.fastenings for scene in plan.pieces.joined.scenes],
        "contacts": [scene.contacts for scene in plan.pieces.joined.scenes],
        "boards": [
            [(path, b.box, b.cuts, b.bores) for path, b in scene.boards.items()] for scene in plan.pieces.joined.scenes
        ],
        "steps": [(s.id, s.marks, s.joints, s.wait, s.needs) for s in plan.order.steps],
    }


def spec(name: str) -> str:
    return (SPECS / name).read_text("utf-8")


def test_the_replacement_itself():
    line = 'stock a "1/4 ply" { sheet 96 x 48 x 23/32; price 68 }  # 96 long\nrepeat 3 every 1-1/2 from b.2\n'
    assert in_millimetres(line) == (
        'stock a "1/4 ply" { sheet 2438.4 x 1219.2 x 18.25625; price 68 }  # 96 long\nrepeat 3 every 38.1 from b.2\n'
    )
    assert in_inches("deep 600mm - 25.4") == "deep 600mm - 1"


@pytest.mark.parametrize("spelling", [in_millimetres, with_units_glued])
@pytest.mark.parametrize("name", ["sewing_wall.rod", "bookcase.rod", "shelf_list.rod"])
def test_an_inch_spec_means_the_same_in_millimetres(name, spelling):
    text = spelling(spec(name))
    assert text != spec(name)
    assert meaning(sound(text)) == meaning(sound(spec(name)))


def test_a_metric_spec_means_the_same_in_inches():
    timber = "parts/garden_timber.rod"
    text, included = in_inches(spec("potting_bench.rod")), {timber: in_inches(spec(timber))}
    assert "/127" in text and "/127" in included[timber]
    assert meaning(sound(text, includes=included)) == meaning(sound(spec("potting_bench.rod")))


def test_a_measurement_taken_with_either_tape():
    taken = [sound(spec("sewing_wall.rod"), settings={"bed": bed}) for bed in ("3-7/16", "3-7/16in", "87.3125mm")]
    assert meaning(taken[0]) == meaning(taken[1]) == meaning(taken[2])
    metric = sound(in_millimetres(spec("sewing_wall.rod")), settings={"bed": "87.3125"})
    assert meaning(metric) == meaning(taken[0])
