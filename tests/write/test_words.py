"""Every verb and every kind of reason has words of its own."""

from __future__ import annotations

import re

from setout.pipeline import compile_spec
from setout.plan.order import steps
from setout.source import Source
from setout.write.build_order.build import Doing, Why, build
from setout.write.facts import facts
from setout.write.render import macro

WORDS = "build_order/words.html.j2"
VERBS = ("measure", "cut", "machine", "assemble", "cure", "fit", "set", "hang", "fasten")


def test_every_kind_of_reason_that_the_order_knows_is_explained():
    kinds = re.findall(r"^    ([a-z]+(?:-[a-z]+)*)  ", steps.__doc__, re.M)
    assert len(kinds) > 8
    for kind in kinds:
        assert macro(WORDS, "why", Why(kind, (1,), "", 0)) != "it needs that step", kind


def test_every_verb_has_its_sentence():
    said = {macro(WORDS, "doing", Doing(verb, "assembly", "Base", "left base")) for verb in VERBS}
    assert len(said) == len(VERBS)
    assert all(("Base" in s) or ("left base" in s) for s in said)


def test_own_steps_stand_as_written():
    assert macro(WORDS, "doing", Doing("step", "own", 'Paint "A" & <B>', "")) == 'Paint "A" & <B>'


def test_an_order_line_is_told_with_its_file_where_the_spec_has_several():
    """As the spec's own folder has it: paper knows no other folder."""
    text = 'project "T" { units inch }\nstock ply "p" { sheet 96 x 48 x 3/4 }\nsize wide 9, high 9, deep 9\n'
    text += 'part a of ply { upright at left }\norder { step "One" after cut a }\n'
    for more, file in (("", ""), ('include "more.rod"\n', "spec.rod")):
        for folder in ("", "my/specs/"):
            spec = Source(f"{folder}spec.rod", text + more)
            plan = compile_spec(spec, lambda name: Source(name, "let spare = 1\n"), {}, Source("marks", "")).value
            whys = [why for row in build(facts(plan, "00000000"), ()).rows for why in row.whys if why.line]
            assert [(why.file, why.line) for why in whys] == [(file, 5)]
    assert macro(WORDS, "why", whys[0]) == "the spec orders it so (line 5 of spec.rod)"
