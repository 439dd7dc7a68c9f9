"""Diagnostics for programs keep their documented shape."""

import json
from importlib.resources import files

import jsonschema

from setout.diagnostics import Label, error, note
from setout.diagnostics.render import render_json
from setout.source import Source, Span

SCHEMA = json.loads((files("setout") / "diagnostics" / "render" / "diagnostics.schema.json").read_text("utf-8"))
SOURCES = {"a.rod": Source("a.rod", "let a\nlet b\n")}


def test_the_shape_is_the_documented_one():
    found = [
        error("rod301", "x", Span("a.rod", 4, 7), "here", Label(Span("gone.rod", 1, 2), "there"), help="mend"),
        note("rod302", "\x1b[31m \u202e", None),
    ]
    text = render_json(found, SOURCES)
    data = json.loads(text)
    jsonschema.validate(data, SCHEMA)
    assert text.isascii() and "\x1b" not in text
    assert data["summary"] == {"errors": 1, "warnings": 0, "notes": 1}
    assert data["diagnostics"][0]["place"] == {
        **{"file": "a.rod", "text": "here", "line": 1, "column": 5},
        **{"end_line": 2, "end_column": 2},
    }
    assert data["diagnostics"][0]["related"] == [{"file": "gone.rod", "text": "there"}]
    assert data["diagnostics"][1]["place"] is None


def test_nothing_found_is_an_empty_list():
    data = json.loads(render_json([], {}))
    jsonschema.validate(data, SCHEMA)
    assert data["diagnostics"] == []
