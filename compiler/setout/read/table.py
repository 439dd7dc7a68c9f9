"""The grammar made into a parse table.

Lark works the table out from `setout.lark`. That takes longer than all the rest of reading, so the result lies beside
the grammar as `setout.table.json`, with the grammar's text, and is used as long as that is still the same; otherwise it
is made anew in memory. `generate.py` writes it.
"""

from __future__ import annotations

import json
import re
from dataclasses import dataclass
from functools import cache, cached_property
from importlib.resources import files
from importlib.resources.abc import Traversable

GRAMMAR = "setout.lark"
TABLE = "setout.table.json"


@dataclass(frozen=True)
class Rule:
    """`origin -> size symbols`. `name` is what its node is called. `splice`: its parts go into the node above it;
    `lift`: a single part stands for the whole."""

    origin: str
    size: int
    name: str
    splice: bool
    lift: bool


@dataclass(frozen=True)
class Table:
    """An LALR(1) table. `actions[state][terminal]` is the next state when it is 0 or more, else rule `-1 - action`."""

    start: int
    actions: tuple[dict[str, int], ...]
    gotos: tuple[dict[str, int], ...]
    end: int  # the state that has read a whole file, before its end
    rules: tuple[Rule, ...]
    literals: dict[str, str]  # spelling -> terminal: keywords and marks
    patterns: dict[str, str]  # terminal -> regular expression

    @cached_property
    def spelling(self) -> dict[str, str]:
        """Terminal -> spelling, in the order of the grammar."""
        return {terminal: text for text, terminal in self.literals.items()}

    @cached_property
    def keywords(self) -> dict[str, str]:
        """Spelling -> terminal, of the words alone."""
        return {text: terminal for text, terminal in self.literals.items() if text[0].isalpha()}

    @cached_property
    def functions(self) -> tuple[str, ...]:
        """The names that the pattern of FUNCTION takes, which begins `(?:min|max|`."""
        return tuple(self.patterns["FUNCTION"].removeprefix("(?:").partition(")")[0].split("|"))

    @cached_property
    def master(self) -> re.Pattern[str]:
        """One expression that matches the next token, white space or comment."""
        marks = sorted((text for text in self.literals if not text[0].isalpha()), key=len, reverse=True)
        order = ("BLANK", "COMMENT", "_SEP", "STRING", "LENGTH", "PATH", "MINUS", "NEGATIVE")
        parts = [f"(?P<{name}>{self.patterns[name]})" for name in order]
        return re.compile("|".join([*parts, f"(?P<MARK>{'|'.join(map(re.escape, marks))})"]))


@cache
def grammar_table() -> Table:
    grammar = (grammar_folder() / GRAMMAR).read_text("utf-8")
    ready = grammar_folder() / TABLE
    if ready.is_file():
        data = json.loads(ready.read_text("utf-8"))
        if data.get("grammar") == grammar:
            return _load(data)
    from setout.read.generate import generate  # late: lark is needed only here

    return _load(generate(grammar))


def grammar_folder() -> Traversable:
    """In an installed package, `setout/grammar`; in a checkout, the top-level `grammar/`."""
    inside = files("setout") / "grammar"
    if (inside / GRAMMAR).is_file():
        return inside
    return files("setout") / ".." / ".." / "grammar"


def _load(data: dict) -> Table:
    terminals, origins = data["terminals"], data["origins"]
    return Table(
        start=data["start"],
        actions=tuple(_row(row, terminals) for row in data["actions"]),
        gotos=tuple(_row(row, origins) for row in data["gotos"]),
        end=data["end"],
        rules=tuple(Rule(*rule) for rule in data["rules"]),
        literals=data["literals"],
        patterns=data["patterns"],
    )


def _row(flat: list[int], names: list[str]) -> dict[str, int]:
    return {names[flat[i]]: flat[i + 1] for i in range(0, len(flat), 2)}
