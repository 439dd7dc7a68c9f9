"""Frozen data into text. The only importer of jinja2."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from typing import Any


def render(template: str, **data: Any) -> str:
    """The template `template` (a path below this folder) with `data` put in, escaped for HTML."""
    return _environment().get_template(template).render(**data)


def macro(template: str, name: str, *args: Any) -> str:
    """What one macro of a template says, as plain text."""
    module = _environment().get_template(template).module
    return getattr(module, name)(*args).unescape()


@cache
def _environment():
    from jinja2 import Environment, FunctionLoader, StrictUndefined

    return Environment(
        loader=FunctionLoader(_source),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )


def _source(name: str) -> str:
    return files("setout.write").joinpath(*name.split("/")).read_text("utf-8")
