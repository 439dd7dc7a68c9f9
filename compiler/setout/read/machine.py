"""The LALR(1) machine: tokens in, whatever the actions make of each rule out."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from setout.read.scan import taken
from setout.read.table import Table
from setout.read.tokens import Token
from setout.source import Span

Tell = Callable[..., None]
"""Takes a Diagnostic, and `lost=True` when what it is about cannot be made anything of."""
Action = Callable[[list[Any], Span, Tell], Any]
"""Takes the parts of a rule (tokens, and what other rules made), the span of it all, and whom to tell of mistakes."""


class Machine:
    """A stack of states, and beside each state what was read to get there with where it starts and ends."""

    def __init__(self, table: Table, actions: Mapping[str, Action], file: str, tell: Tell) -> None:
        self.table, self.actions, self.file, self.tell = table, actions, file, tell
        self.states = [table.start]
        self.values: list[tuple[Any, int, int]] = []

    def choice(self, token: Token) -> str | None:
        """The first of the token's terminals that can stand here."""
        row = self.table.actions[self.states[-1]]
        return next((t for t in token.types if t in row and self.accepts(t)), None)

    def accepts(self, terminal: str) -> bool:
        """Whether that terminal can stand here."""
        action = self.table.actions[self.states[-1]].get(terminal, -1)
        return action >= 0 or self._after(self.states, terminal) is not None

    def _after(self, states: list[int], terminal: str) -> list[int] | None:
        """The states once that terminal is read, the values left alone; None when it can't stand there."""
        table = self.table
        action = table.actions[states[-1]].get(terminal)
        if action is None:
            return None
        states = states.copy()
        while action is not None and action < 0:
            rule = table.rules[-1 - action]
            if rule.size:
                del states[-rule.size :]
            states.append(table.gotos[states[-1]][rule.origin])
            if terminal == "$END" and states[-1] == table.end:
                return states
            action = table.actions[states[-1]].get(terminal)
        return None if action is None else [*states, action]

    def bridge(self, goal: str, through: Sequence[str], most: int) -> tuple[str, ...] | None:
        """The fewest of the terminals `through`, at most `most`, that could stand here before `goal`."""
        ways: list[tuple[tuple[str, ...], list[int]]] = [((), self.states)]
        for way, states in ways:  # grows as it is walked, shorter ways first
            if self._after(states, goal) is not None:
                return way
            if len(way) < most:
                on = ((terminal, self._after(states, terminal)) for terminal in through)
                ways += [((*way, terminal), after) for terminal, after in on if after is not None]
        return None

    def expected(self) -> tuple[str, ...]:
        """All terminals that can stand here."""
        return tuple(t for t in self.table.actions[self.states[-1]] if self.accepts(t))

    def feed(self, token: Token, terminal: str) -> None:
        """Read the token as that terminal, which must be acceptable."""
        action = self.table.actions[self.states[-1]].get(terminal)
        while action is not None and action < 0:
            self._reduce(-1 - action)
            if terminal == "$END" and self.states[-1] == self.table.end:
                return
            action = self.table.actions[self.states[-1]].get(terminal)
        assert action is not None, terminal
        self.states.append(action)
        self.values.append((taken(token, terminal), token.start, token.end))

    def _reduce(self, number: int) -> None:
        rule = self.table.rules[number]
        popped = self.values[-rule.size :] if rule.size else []
        if popped:
            del self.values[-rule.size :], self.states[-rule.size :]
        start, end = (popped[0][1], popped[-1][2]) if popped else (0, 0)
        made: Any = _Spliced(value for value, _, _ in popped)
        if not rule.splice:
            parts = made.flat()
            lifted = rule.lift and len(parts) == 1
            made = parts[0] if lifted else self.actions[rule.name](parts, Span(self.file, start, end), self.tell)
        self.values.append((made, start, end))
        self.states.append(self.table.gotos[self.states[-1]][rule.origin])

    def retreat(self) -> None:
        """Give up the statement or clause being read: back to the brace or separator before it."""
        while not self.at_boundary:
            self.values.pop()
            self.states.pop()

    @property
    def at_boundary(self) -> bool:
        """Whether a statement or clause may begin here and nothing of it has been read."""
        value = self.values[-1][0] if self.values else None
        return value is None or (type(value) is Token and value.type in ("LBRACE", "_SEP"))

    def openers(self) -> list[Token]:
        """The braces and parentheses that are open, the innermost last."""
        found: list[Token] = []
        for value, _, _ in self.values:
            if type(value) is Token and value.type in ("LBRACE", "LPAR"):
                found.append(value)
            elif type(value) is Token and value.type in ("RBRACE", "RPAR") and found:
                found.pop()
        return found


class _Spliced(tuple):
    """Parts that go into the rule above, other such among them: a long list nests as deep as it is long, and is laid
    flat once, when it is whole."""

    def flat(self) -> list[Any]:
        parts, waiting = [], list(self)
        while waiting:
            last = waiting.pop()
            if type(last) is _Spliced:
                waiting += last
            else:
                parts.append(last)
        parts.reverse()
        return parts
