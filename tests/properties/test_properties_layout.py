"""The layout of generated specs: the same meaning, twice is once, every comment kept where it was."""

from __future__ import annotations

import re

from breaking import spoiled
from hypothesis import strategies as st
from judging import over
from laying import same
from respacing import blanks_only, respaced
from speccing import jobs

from setout.fmt import fmt
from setout.read import read
from setout.source import Source

SOUND = jobs(order=True).map(lambda job: job.text())


def laid(text: str) -> str:
    checked = fmt(Source("spec.rod", text))
    assert checked.value is not None, checked.diagnostics
    return checked.value


@over(respaced(SOUND), few=30, many=2000)
def test_any_layout_becomes_the_one_layout(text):
    once = laid(text)
    assert laid(once) == once
    same(text, once)
    assert not re.search(r"\n\n\n|[ \t]\n|^\n|\{\n\n|\n\n *\}", once)
    assert once.endswith("\n")


@over(SOUND, few=15, many=500)
def test_blanks_between_words_make_no_difference(text):
    assert laid(blanks_only(text)) == laid(text)


@over(spoiled(st.one_of(SOUND, respaced(SOUND))), few=30, many=2000)
def test_a_spoiled_spec_is_laid_out_or_left_alone(text):
    checked, as_it_is = fmt(Source("spec.rod", text)), read(Source("spec.rod", text))
    assert (checked.value is None) == (as_it_is.failed or as_it_is.value is None)
    if checked.value is not None:
        assert laid(checked.value) == checked.value
        same(text, checked.value)
