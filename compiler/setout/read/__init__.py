"""From a spec's text to its tree."""

from __future__ import annotations

from setout.diagnostics import Checked, Diagnostic
from setout.read import problems
from setout.read.build import ACTIONS
from setout.read.decode import decode
from setout.read.limits import MAX_BYTES, MAX_MISTAKES
from setout.read.model import Tree
from setout.read.parse import Parse
from setout.read.repair import REPAIRS
from setout.read.scan import scan
from setout.read.settle import Words, settled
from setout.read.table import grammar_table
from setout.source import Source, Span

__all__ = ["MAX_BYTES", "Tree", "Words", "decode", "read", "settled"]


def read(source: Source) -> Checked[Tree]:
    """The tree of one file. There is none when a statement could not be read at all; a misspelt one is put right."""
    whole = Span(source.name, 0, len(source.text))
    if len(source.text) > MAX_BYTES:
        return Checked(None, (problems.text_too_large(Span(source.name, 0, 0), len(source.text)),))
    scanned = scan(source, grammar_table())
    if scanned.fatal:
        return Checked(None, _limited(scanned.diagnostics))
    parse = Parse(grammar_table(), ACTIONS, scanned.tokens, source.name)
    parse.run(REPAIRS)
    found = _limited(scanned.diagnostics + parse.diagnostics)
    if parse.lost or parse.result is None:
        return Checked(None, found)
    if not parse.result:
        return Checked(None, found or (problems.nothing_there(whole),))
    return Checked(Tree(source, parse.result, tuple(scanned.comments)), found)


def _limited(found: list[Diagnostic]) -> tuple[Diagnostic, ...]:
    """In the order of the text, and not too many."""
    ordered = sorted(found, key=lambda d: (d.label.span.start, d.code) if d.label else (0, d.code))
    if len(ordered) <= MAX_MISTAKES:
        return tuple(ordered)
    last = ordered[MAX_MISTAKES].label
    return (*ordered[:MAX_MISTAKES], problems.too_many_mistakes(last.span if last else None))
