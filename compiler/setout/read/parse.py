"""Tokens read one by one, with help where one can't stand."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from setout.diagnostics import Diagnostic
from setout.read.limits import MAX_MISTAKES
from setout.read.machine import Action, Machine
from setout.read.table import Table
from setout.read.tokens import Token
from setout.source import Span


class Parse:
    """One file being parsed. `lost`: something was skipped. `result` is what the rule `start` made."""

    def __init__(self, table: Table, actions: Mapping[str, Action], tokens: Sequence[Token], file: str) -> None:
        self.machine = Machine(table, actions, file, self.tell)
        self.tokens, self.file = tokens, file
        self.diagnostics: list[Diagnostic] = []
        self.lost = False
        self.result: Any = None
        self.closed_for_them = 0  # braces put in where one was missing: as many may turn up later

    def run(self, repairs: Sequence[Repair]) -> None:
        """Read all tokens; where one can't stand, the first of the repairs that has an answer says where to read on."""
        at = 0
        while at < len(self.tokens) and len(self.diagnostics) <= MAX_MISTAKES:
            token = self.tokens[at]
            terminal = self.machine.choice(token)
            if terminal:
                self.machine.feed(token, terminal)
                at += 1
                if terminal == "$END":
                    self.result = self.machine.values[-1][0]
            else:
                at = next(on for repair in repairs if (on := repair(self, at)) is not None)

    def tell(self, fault: Diagnostic, lost: bool = False) -> None:
        self.diagnostics.append(fault)
        self.lost = self.lost or lost

    def span(self, token: Token) -> Span:
        return Span(self.file, token.start, token.end)

    @property
    def before(self) -> Token | None:
        """The token just read."""
        value = self.machine.values[-1][0] if self.machine.values else None
        return value if type(value) is Token else None


Repair = Callable[[Parse, int], "int | None"]
"""Looks at the token at that index, which can't stand there. Either passes (None), or tells what is wrong, does
something about it and gives the index to read on from."""
