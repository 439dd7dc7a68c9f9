"""Lark's work on the grammar, put into plain data; the only importer of lark.

After a change to the grammar: `python -m setout.read.generate grammar`
"""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

from setout.read.table import GRAMMAR, TABLE


def generate(grammar: str) -> dict[str, Any]:
    """The table of `setout.read.table.Table` as JSON can hold it: rows are flat lists of name number, value."""
    from lark import Lark
    from lark.lexer import PatternStr

    lark = Lark(grammar, parser="lalr", lexer=_no_lexer(), keep_all_tokens=True, maybe_placeholders=False)
    rules = sorted(lark.rules, key=lambda r: (str(r.origin.name), [s.name for s in r.expansion], r.alias or ""))
    states, start, end = _states(lark, {rule: i for i, rule in enumerate(rules)})
    terminals = sorted({name for row in states for name, _ in row if _is_terminal(name)})
    origins = sorted({str(rule.origin.name) for rule in rules})
    return {
        "grammar": grammar,
        "start": start,
        "end": end,
        "terminals": terminals,
        "origins": origins,
        "rules": [_rule(rule) for rule in rules],
        "literals": {t.pattern.value: t.name for t in lark.terminals if isinstance(t.pattern, PatternStr)},
        "patterns": {t.name: t.pattern.value for t in lark.terminals if not isinstance(t.pattern, PatternStr)},
        "actions": [_flat(row, terminals) for row in states],
        "gotos": [_flat(row, origins) for row in states],
    }


def _no_lexer() -> type:
    from lark.lexer import Lexer

    class NoLexer(Lexer):
        """The scanner of setout.read takes its place."""

        def __init__(self, conf: object) -> None: ...

        def lex(self, *given: object) -> Any:
            yield from ()

    return NoLexer


def _states(lark: Any, numbers: dict[Any, int]) -> tuple[list[list[tuple[str, int]]], int, int]:
    """Rows of (symbol, what to do), renumbered from the start outwards: lark's own numbers differ from run to run."""
    table = lark.parser.parser._parse_table
    start, end = table.start_states["start"], table.end_states["start"]
    new = {start: 0}
    queue = [start]
    rows: list[list[tuple[str, int]]] = []
    for state in queue:  # grows as it is walked
        row = []
        for symbol, (action, argument) in sorted(table.states[state].items()):
            if action.name == "Shift":
                if argument not in new:
                    new[argument] = len(new)
                    queue.append(argument)
                row.append((str(symbol), new[argument]))
            else:
                row.append((str(symbol), -1 - numbers[argument]))
        rows.append(row)
    return rows, new[start], new[end]


def _rule(rule: Any) -> list[Any]:
    origin = str(rule.origin.name)
    lift = bool(rule.options.expand1) and not rule.alias
    return [origin, len(rule.expansion), str(rule.alias or origin), origin.startswith("_"), lift]


def _flat(row: list[tuple[str, int]], names: list[str]) -> list[int]:
    place = {name: i for i, name in enumerate(names)}
    return [n for name, action in row if name in place for n in (place[name], action)]


def _is_terminal(name: str) -> bool:
    return name.lstrip("_").isupper() or name == "$END"


if __name__ == "__main__":
    folder = Path(sys.argv[1])
    made = generate((folder / GRAMMAR).read_text("utf-8"))
    (folder / TABLE).write_text(json.dumps(made, separators=(",", ":")) + "\n", "utf-8")
