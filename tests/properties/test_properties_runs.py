"""No spec, sound or spoiled, makes the compiler raise: there is a packet, or an error that says why not."""

from __future__ import annotations

import json
from html.parser import HTMLParser

from breaking import NUMBERS, WORDS, spoiled
from compiling import compiled
from hypothesis import event
from hypothesis import strategies as st
from judging import over
from speccing import jobs

from setout.diagnostics.render import render_json, render_text
from setout.source import Source
from setout.write import write

SOUND = st.builds(lambda job, how: job.wrapped(how) if how else job.text(), jobs(order=True), st.sampled_from(
    ("", "", "mirrored", "turned 180")))  # fmt: skip


def run(text: str, formats: set[str]) -> dict[str, bytes]:
    """All that `build` does but for the files. What can't be built must have been told of."""
    checked = compiled(text, includes={})
    sources = {"spec.rod": Source("spec.rod", text)}
    said = render_text(checked.diagnostics, sources)
    assert len(json.loads(render_json(checked.diagnostics, sources))["diagnostics"]) == len(checked.diagnostics)
    assert bool(said) == bool(checked.diagnostics)
    event("an error" if checked.failed else "sound")
    if checked.failed or checked.value is None:
        assert checked.failed, "nothing was built and nothing was said"
        return {}
    return dict(write(checked.value, frozenset(formats)))


@over(spoiled(SOUND), few=80, many=3000)
def test_any_spec_is_compiled_or_refused(text):
    made = run(text, {"csv", "json"})
    if made:
        assert json.loads(made["job.json"])["pieces"] is not None
        made["cutlist.csv"].decode()


@over(spoiled(SOUND), few=3, many=80)
def test_any_spec_is_printed_or_refused(text):
    made = run(text, {"html", "svg"})
    if made:
        page = made["packet.html"].decode()
        HTMLParser().feed(page)
        assert page.rstrip().endswith("</html>")


WORD_SALAD = st.lists(st.sampled_from((*WORDS, *NUMBERS, "\n", "a", "stock", "project", "size", "x")), max_size=60)


@over(st.text(max_size=200) | WORD_SALAD.map(" ".join), few=60, many=5000)
def test_any_text_is_refused_or_read(text):
    run(text, set())
