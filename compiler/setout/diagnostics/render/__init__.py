"""Diagnostics as text for people and as JSON for programs."""

from setout.diagnostics.render.json import render_json
from setout.diagnostics.render.text import render_text

__all__ = ["render_json", "render_text"]
