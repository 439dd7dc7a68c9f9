"""Assemblies within assemblies: none may hold itself."""

from __future__ import annotations

from collections.abc import Callable

from setout.diagnostics import Diagnostic
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.scopes import World
from setout.source import Span

Say = Callable[[Diagnostic], None]


def check_nesting(world: World, say: Say) -> list[str]:
    """Report assemblies that would hold themselves, each loop once; the assemblies that are in one."""
    inner = {owner: _placed_in(world, owner) for owner in world.scopes if owner}
    done: set[str] = set()
    looped: list[str] = []
    for start in inner:
        way, waiting = [start], [list(inner[start])]
        while way and start not in done:
            if not waiting[-1]:
                done.add(way.pop())
                waiting.pop()
                if not way:
                    break
                continue
            name = waiting[-1].pop(0)
            if name in way:
                loop = way[way.index(name) :]
                if not all(n in looped for n in loop):
                    say(problems.assembly_loop([*loop, name], inner[loop[-1]][name]))
                looped += [n for n in loop if n not in looped]
            elif name not in done:
                way.append(name)
                waiting.append(list(inner[name]))
    return looped


def _placed_in(world: World, owner: str) -> dict[str, Span]:
    """The assemblies placed in a scope, with where."""
    found: dict[str, Span] = {}
    for named in world.scopes[owner].things.values():
        if named.kind == "place":
            statement: r.PlaceStatement = named.statement
            if statement.assembly.text in world.scopes and statement.assembly.text:
                found.setdefault(statement.assembly.text, statement.head)
    return found
