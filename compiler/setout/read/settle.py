"""The words of a spec without mistakes, each settled to be what the parser takes it for."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass

from setout.read.machine import Action, Machine
from setout.read.model import Comment
from setout.read.scan import scan, taken
from setout.read.table import grammar_table
from setout.read.tokens import Token
from setout.source import Source


@dataclass(frozen=True)
class Words:
    """`tokens` end with `$END`; separators (`_SEP`) stand between statements and clauses only."""

    tokens: tuple[Token, ...]
    comments: tuple[Comment, ...]


def settled(source: Source) -> Words:
    """`read` must have found nothing wrong with the source."""
    table = grammar_table()
    scanned = scan(source, table)
    nothing: defaultdict[str, Action] = defaultdict(lambda: lambda parts, span, tell: None)
    machine = Machine(table, nothing, source.name, lambda *said, **lost: None)
    tokens = []
    for token in scanned.tokens:
        terminal = machine.choice(token)
        if terminal is None:
            raise ValueError(f"{source.name} has mistakes")
        machine.feed(token, terminal)
        tokens.append(taken(token, terminal))
    return Words(tuple(tokens), tuple(scanned.comments))
