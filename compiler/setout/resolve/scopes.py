"""Which names there are, and where each may be used: the file's top level, and each assembly inside it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from setout.diagnostics import Diagnostic
from setout.geometry import AXIS_WORDS, FACE_WORDS
from setout.read import model as r
from setout.resolve import problems
from setout.source import Span
from setout.units import Style

RESERVED = (*FACE_WORDS, *AXIS_WORDS, "room", "self", "project")
STOCK_FIELDS = ("thick", "wide", "long")

_KINDS: dict[type, str] = {
    r.LetStatement: "let",
    r.MeasureStatement: "measure",
    r.StockStatement: "stock",
    r.HardwareStatement: "hardware",
    r.SawStatement: "saw",
    r.AssemblyStatement: "assembly",
    r.PartStatement: "part",
    r.OpeningStatement: "opening",
}
THINGS = ("part", "place", "opening")


@dataclass(frozen=True)
class Named:
    """A name and what it is given to. kind: let measure stock hardware assembly parameter part place opening."""

    kind: str
    name: str
    span: Span
    statement: Any


@dataclass
class Scope:
    """The names of one assembly, or with `owner` "" of the top level. `spoiled` names were given wrongly: reported."""

    owner: str
    outer: Scope | None = None
    derived: bool = False
    definitions: dict[str, Named] = field(default_factory=dict)
    things: dict[str, Named] = field(default_factory=dict)
    spoiled: set[str] = field(default_factory=set)

    def definition(self, name: str) -> Named | None:
        own = self.definitions.get(name)
        return own or (self.outer.definition(name) if self.outer else None)

    def own(self, name: str) -> Named | None:
        return self.things.get(name) or self.definitions.get(name)

    def is_spoiled(self, name: str) -> bool:
        return name in self.spoiled or (self.outer is not None and self.outer.is_spoiled(name))

    def names(self) -> list[str]:
        """Every name that can be used here, the nearest scope's first."""
        return [*self.things, *self.definitions, *(self.outer.definitions if self.outer else ())]


@dataclass
class World:
    """All scopes by owner, and what holds for the whole spec. `flex`: inches that a bare number makes, by file.

    `stock_parameters`: (assembly, name) of those that hold a stock. `broken_…`: those whose mistake has been reported
    (lets and measures; hardware). `incomplete`: an included file is missing, and an unknown name may well be in it.
    """

    scopes: dict[str, Scope]
    flex: Mapping[str, Fraction]
    style: Style
    incomplete: bool = False
    has_room: bool = False
    stock_parameters: set[tuple[str, str]] = field(default_factory=set)
    broken_lets: set[str] = field(default_factory=set)
    broken_hardware: set[str] = field(default_factory=set)

    def holds_stock(self, owner: str, name: str) -> bool:
        return (owner, name) in self.stock_parameters

    @property
    def top(self) -> Scope:
        return self.scopes[""]


def statements_within(body: tuple[r.Statement, ...]) -> Iterator[r.Statement]:
    """The statements of a body and of the `when`s in it, in the order written."""
    for statement in body:
        if isinstance(statement, r.WhenStatement):
            yield from statements_within(statement.body)
        else:
            yield statement


def collected(
    statements: tuple[r.Statement, ...],
    flex: Mapping[str, Fraction],
    style: Style,
    say: Callable[[Diagnostic], None],
) -> World:
    """The scopes of a whole spec, its includes merged in."""
    top = Scope("")
    world = World({"": top}, flex, style, has_room=any(isinstance(s, r.RoomStatement) for s in statements))
    for statement in statements_within(statements):
        _declare_statement(top, statement, say)
    for named in top.definitions.values():
        if named.kind == "assembly":
            world.scopes[named.name] = _assembly_scope(named.statement, top, say)
    return world


def _assembly_scope(assembly: r.AssemblyStatement, top: Scope, say: Callable[[Diagnostic], None]) -> Scope:
    scope = Scope(assembly.name.text, top, assembly.derived)
    for parameter in assembly.parameters:
        _declare(scope, "parameter", parameter.name, parameter, say)
    for statement in statements_within(assembly.body):
        _declare_statement(scope, statement, say)
    return scope


def _declare_statement(scope: Scope, statement: r.Statement, say: Callable[[Diagnostic], None]) -> None:
    if isinstance(statement, r.PlaceStatement):
        path = statement.assembly
        name = statement.name or r.Name(path.text, path.span)
        _declare(scope, "place", name, statement, say, borrowed=statement.name is None)
    elif type(statement) in _KINDS:
        _declare(scope, _KINDS[type(statement)], statement.name, statement, say)  # type: ignore[union-attr]


def _declare(
    scope: Scope, kind: str, name: r.Name, statement: Any, say: Callable[[Diagnostic], None], borrowed: bool = False
) -> None:
    """`borrowed`: the name is the definition's, and doesn't clash with it."""
    text = name.text
    if text in RESERVED:
        scope.spoiled.add(text)
        say(problems.reserved_name(kind, name))
        return
    earlier = scope.things.get(text) or (None if borrowed else scope.definitions.get(text))
    if earlier is not None and kind == "parameter":
        return  # `read` has reported it
    if earlier is not None:
        say(problems.name_twice(kind, text, name.span, earlier.kind, earlier.span, borrowed))
        return
    hidden = scope.outer.own(text) if scope.outer and not scope.derived else None
    if hidden is not None and not (borrowed and hidden.kind in ("assembly", "place")):
        say(problems.shadowed(kind, text, name.span, hidden.kind, hidden.span))
    table = scope.things if kind in THINGS else scope.definitions
    table[text] = Named(kind, text, name.span, statement)
