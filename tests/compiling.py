"""A spec's text through the whole compiler, for tests of the whole."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from setout.diagnostics import Checked
from setout.pipeline import compile_spec
from setout.plan.model import Plan
from setout.source import Source

SPECS = Path(__file__).parents[1] / "specs"


def compiled(
    text: str,
    settings: Mapping[str, str] | None = None,
    marks: str = "",
    includes: Mapping[str, str] | None = None,
) -> Checked[Plan]:
    """What `build` would make of it. `includes`: file texts by name; without it, those beside the specs in specs/."""

    def reader(name: str) -> Source | None:
        if includes is not None:
            return Source(name, includes[name]) if name in includes else None
        return Source(name, (SPECS / name).read_text("utf-8"))

    return compile_spec(Source("spec.rod", text), reader, settings or {}, Source("marks", marks))


def sound(text: str, **more) -> Plan:
    """The plan of a spec of which nothing may be said, but that two lift what is heavy."""
    checked = compiled(text, **more)
    told = [(d.code, d.message) for d in checked.diagnostics if d.code != "rod550"]
    assert not told, told
    assert checked.value is not None
    return checked.value
