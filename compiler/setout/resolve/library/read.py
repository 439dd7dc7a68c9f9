"""The leaves of the shipped library, as trees."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass, replace
from functools import cache
from importlib.resources import files
from typing import TypeVar

from setout.read import model as r
from setout.read import read
from setout.source import Source, Span

T = TypeVar("T")


@cache
def leaves(name: str) -> Mapping[str, r.AssemblyStatement]:
    """The assemblies of `name`.rod by name."""
    text = (files("setout.resolve.library") / f"{name}.rod").read_text("utf-8")
    checked = read(Source(f"{name}.rod", text))
    assert checked.value is not None and not checked.diagnostics, checked.diagnostics
    return {s.name.text: s for s in checked.value.statements if isinstance(s, r.AssemblyStatement)}


def at(node: T, span: Span) -> T:
    """The tree with every place in it moved to `span`: what is told about it is told of the spec's own words."""
    if isinstance(node, Span):
        return span  # type: ignore[return-value]
    if isinstance(node, tuple):
        return tuple(at(each, span) for each in node)  # type: ignore[return-value]
    if is_dataclass(node) and not isinstance(node, type):
        return replace(node, **{f.name: at(getattr(node, f.name), span) for f in fields(node)})  # type: ignore
    return node
