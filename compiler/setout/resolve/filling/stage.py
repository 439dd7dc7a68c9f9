"""Every body gone through for what fills its openings: checked as far as names go, and written out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace

from setout.diagnostics import Diagnostic
from setout.read import model as r
from setout.resolve import problems
from setout.resolve.filling import checks, doors, drawers, shelving
from setout.resolve.filling.shop import Shop
from setout.resolve.scopes import statements_within

Say = Callable[[Diagnostic], None]
Filling = r.DrawersStatement | r.DoorStatement | r.ShelvesStatement | r.ItemStatement


@dataclass
class Work:
    shop: Shop
    say: Say
    assemblies: list[r.AssemblyStatement] = field(default_factory=list)


@dataclass
class Body:
    """One body under way: its openings by name, and what has been said to fill them."""

    owner: str
    title: str
    openings: dict[str, r.OpeningStatement]
    inset_doors: dict[str, r.DoorStatement]  # by opening: shelves stand behind them
    filled: dict[str, list[Filling]] = field(default_factory=dict)


def filled(statements: tuple[r.Statement, ...], say: Say) -> tuple[r.Statement, ...]:
    """The spec with drawers, doors and shelves written out beside their own statements, their assemblies last."""
    if not any(isinstance(s, Filling) for s in _everything(statements)):
        return statements
    work = Work(Shop(statements), say)
    found = _body(statements, Body("", "the job", _openings(statements), _inset_doors(statements)), work)
    return (*found, *work.assemblies)


def _everything(statements: tuple[r.Statement, ...]) -> list[r.Statement]:
    inner = [s for a in statements if isinstance(a, r.AssemblyStatement) for s in statements_within(a.body)]
    return [*statements_within(statements), *inner]


def _openings(body: tuple[r.Statement, ...]) -> dict[str, r.OpeningStatement]:
    return {s.name.text: s for s in statements_within(body) if isinstance(s, r.OpeningStatement)}


def _inset_doors(body: tuple[r.Statement, ...]) -> dict[str, r.DoorStatement]:
    doors = [s for s in statements_within(body) if isinstance(s, r.DoorStatement) and s.overlay is None]
    return {s.opening.text: s for s in doors}


def _body(statements: tuple[r.Statement, ...], body: Body, work: Work) -> tuple[r.Statement, ...]:
    made: list[r.Statement] = []
    for s in statements:
        if isinstance(s, r.AssemblyStatement):
            title = s.title.value if s.title else s.name.text
            inner = _body(s.body, Body(s.name.text, title, _openings(s.body), _inset_doors(s.body)), work)
            made.append(replace(s, body=inner))
        elif isinstance(s, r.WhenStatement):
            made.append(replace(s, body=_body(s.body, body, work)))
        elif isinstance(s, Filling):
            made += _one(s, body, work)
        else:
            made.append(s)
    return tuple(made)


def _one(s: Filling, body: Body, work: Work) -> list[r.Statement]:
    """The statement and what it is written out as; nothing once a mistake has been reported."""
    if s.opening.text not in body.openings:
        work.say(problems.not_an_opening(s.opening, list(body.openings)))
        return []
    if isinstance(s, r.ItemStatement):
        return [s]
    before = body.filled.setdefault(s.opening.text, [])
    other = next((b for b in before if _at_odds(b, s)), None)
    before.append(s)
    if other is not None:
        work.say(problems.filled_twice(s.opening, s.head, other.head))
        return []
    if isinstance(s, r.DrawersStatement):
        n = checks.drawers(s, work.shop, work.say)
        if n is None:
            return []
        placings, assemblies = drawers.made(s, n, body.owner, body.title, work.shop)
        work.assemblies += assemblies
        return [*placings, s]
    if isinstance(s, r.DoorStatement):
        return [*doors.made(s, work.shop), s] if checks.door(s, work.shop, work.say) else []
    return (
        [*shelving.made(s, body.inset_doors.get(s.opening.text), work.shop), s]
        if checks.shelves(s, work.shop, work.say)
        else []
    )


def _at_odds(a: Filling, b: Filling) -> bool:
    """A door and shelves go together; nothing else does."""
    return {type(a), type(b)} != {r.DoorStatement, r.ShelvesStatement}
