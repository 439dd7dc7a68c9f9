"""The checker itself: each kind of damage to a good plan is found."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from checker import faults, layout_faults
from cutting_jobs import PLY, QUICK, loose, pieces_of

from setout.plan.cutting import cutting
from setout.plan.cutting.search import Bin, Budget, Item, solve

JOB = f"{PLY}\nrack {{ ply: 40 x 24 }}\n" + loose([(30, 11, 3), (60, 14, 6), (20, 5, 4, "any")])
TINY = Fraction(1, 64)


def changed(plan, what):
    """The plan with its first source, that has cuts, changed."""
    stock = plan.stocks[0]
    return replace(plan, stocks=(replace(stock, sources=(what(stock.sources[0]), *stock.sources[1:])),))


def cut_changed(**by):
    def change(source):
        at = len(source.cuts) // 2
        return replace(source, cuts=(*source.cuts[:at], replace(source.cuts[at], **by), *source.cuts[at + 1 :]))

    return change


def moved(source):
    cut = source.cuts[-1]
    return replace(source, cuts=(*source.cuts[:-1], replace(cut, at=cut.at + TINY, setting=cut.setting + TINY)))


DAMAGE = {
    "a cut elsewhere": moved,
    "a cut not through": cut_changed(cut_length=Fraction(1)),
    "a cut of a board that isn't there": cut_changed(board="ply 9"),
    "another kerf": cut_changed(kerf=Fraction(1, 16)),
    "a cut left out": lambda source: replace(source, cuts=source.cuts[:-1]),
    "the cuts turned round": lambda source: replace(source, cuts=source.cuts[::-1]),
    "a board not laid": lambda source: replace(source, laid=source.laid[1:]),
    "a board twice": lambda source: replace(source, laid=(source.laid[0], *source.laid)),
    "a leftover larger": lambda source: replace(
        source, leftovers=(replace(source.leftovers[0], length=source.leftovers[0].length + 1), *source.leftovers[1:])
    ),
    "a source larger": lambda source: replace(source, source=replace(source.source, length=source.source.length + 1)),
    "another grain": lambda source: replace(source, source=replace(source.source, grain="width")),
}


@pytest.mark.parametrize("damage", DAMAGE)
def test_damage_is_found(damage):
    pieces = pieces_of(JOB)
    plan = cutting(pieces, QUICK).value
    assert faults(plan, pieces) == []
    assert faults(changed(plan, DAMAGE[damage]), pieces)


def test_more_than_there_is_is_found():
    """One whole sheet on hand is all there is; the plan was made for as many as wanted."""
    plan = cutting(pieces_of(JOB), QUICK).value
    assert faults(plan, pieces_of(JOB.replace("price 70", "price 70; at most 1")))


def test_a_solvers_layout_is_checked_too():
    items, bins = [Item(3, 2, 4, True), Item(5, 1, 3)], [Bin(10, 6, 60)]
    layout = solve(items, bins, Budget(work=500))
    assert layout_faults(items, bins, layout) == []
    assert layout_faults([Item(3, 2, 5, True), items[1]], bins, layout)
    assert layout_faults(items, [Bin(10, 6, 60, 0)], layout)
